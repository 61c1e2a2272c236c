using System.Diagnostics;
using System.Globalization;
using CareRecords.Calibration;
using CareRecords.Findings.Modelling;

// "report FILE CHILDREN" writes docs/calibration.md from seeds that nothing was tuned on; "try CHILDREN SEED" prints the same figures, for work on the model.
switch (args)
{
    case ["report", var file, var each]:
        File.WriteAllText(file, new Report(Conditions.ReportSeed, int.Parse(each, CultureInfo.InvariantCulture), Console.Error).Write());
        return 0;
    case ["try", var children, var seed]:
        foreach (var condition in Conditions.All)
        {
            var clock = Stopwatch.StartNew();
            var s = Conditions.Run(condition, int.Parse(children, CultureInfo.InvariantCulture), int.Parse(seed, CultureInfo.InvariantCulture));
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{condition.Group[..4]} {condition.Name,-44} F1 {s.F1:0.000} (-{s.Missed} +{s.Invented}) on {s.OnsetWithinDay.Value:0.000}/{s.OnsetCovered.Value:0.00} cov {s.Covered.Value:0.000} (<{s.TooLow} >{s.TooHigh} of {s.Covered.All}; mid {s.CoveredFromMidnight.Value:0.00} dur {s.CoveredAsDuration.Value:0.00}) w {Report.Median(s.Widths):0.00} bias {Report.Median(s.RecoveryErrors):0.00} fcens {s.FinishedCalledCensored.Yes} cens {s.UnfinishedCalledCensored.Yes}/{s.UnfinishedCalledCensored.All} base {s.BaselineErrors.Average(Math.Abs):0.00}<{s.BaselineErrors.Max(Math.Abs):0.00}/{s.BaselineCovered.Value:0.00} band {s.BandCovered.Value:0.00} {clock.ElapsedMilliseconds / (double)s.Children:0} ms"));
        }

        return 0;
    case ["time"]:
        foreach (var days in new[] { 30, 365, 20 * 365 })
        {
            var child = OtherChildren.Make(new OtherOptions { Seed = 7, Days = days });
            for (var run = 0; run < 3; run++)
            {
                var before = Process.GetCurrentProcess().TotalProcessorTime;
                var found = IllnessModel.Fit(child.Observations, child.Input).Episodes.Count;
                Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{days} days, {child.Observations.Count} readings, {found} episodes: {(Process.GetCurrentProcess().TotalProcessorTime - before).TotalMilliseconds:0} ms of processor"));
            }
        }

        return 0;
    default:
        Console.Error.WriteLine("Say: report FILE CHILDREN | try CHILDREN SEED | time");
        return 2;
}
