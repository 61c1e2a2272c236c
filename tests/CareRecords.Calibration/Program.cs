using System.Diagnostics;
using System.Globalization;
using CareRecords.Calibration;
using CareRecords.Findings;
using CareRecords.Findings.Modelling;

// "report FILE CHILDREN" writes docs/calibration.md from seeds that nothing was tuned on; "try CHILDREN SEED [WORDS]" prints the same figures, for work on the model.
// Words choose the rows whose names hold them; a row does not depend on the others.
switch (args)
{
    case ["report", var file, var each, .. var words]:
        File.WriteAllText(file, new Report(Conditions.ReportSeed, int.Parse(each, CultureInfo.InvariantCulture), Console.Error).Write(Conditions.Named(words)));
        return 0;
    case ["try", var children, var seed, .. var words]:
        foreach (var condition in Conditions.Named(words))
        {
            var clock = Stopwatch.StartNew();
            var s = Conditions.Run(condition, int.Parse(children, CultureInfo.InvariantCulture), int.Parse(seed, CultureInfo.InvariantCulture));
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{condition.Group[..4]} {condition.Name,-44} F1 {s.F1:0.000} (-{s.Missed} +{s.Invented}) on {s.OnsetWithinDay.Value:0.000}/{s.OnsetCovered.Value:0.00} cov {s.Covered.Value:0.000} (<{s.TooLow} >{s.TooHigh} of {s.Covered.All}; mid {s.CoveredFromMidnight.Value:0.00} dur {s.CoveredAsDuration.Value:0.00}) w {Report.Median(s.Widths):0.00} bias {Report.Median(s.RecoveryErrors):0.00} fcens {s.FinishedCalledCensored.Yes} cens {s.UnfinishedCalledCensored.Yes}/{s.UnfinishedCalledCensored.All} base {s.BaselineErrors.Average(Math.Abs):0.00}<{s.BaselineErrors.Max(Math.Abs):0.00}/{s.BaselineCovered.Value:0.00} band {s.BandCovered.Value:0.00} main {s.Main.F1:0.000} {s.Main.OnsetWithinDay.Value:0.000} br {s.Main.Bracketed.Value:0.00} rec {s.ByRecord.F1:0.000} {s.ByRecord.OnsetWithinDay.Value:0.000} br {s.ByRecord.Bracketed.Value:0.00} cens {s.ByRecord.UnfinishedCalledCensored.Yes} {clock.ElapsedMilliseconds / (double)s.Children:0} ms"));
        }

        return 0;
    case ["time"]:
        foreach (var days in new[] { 30, 365, 20 * 365 })
        {
            var child = OtherChildren.Make(new OtherOptions { Seed = 7, Days = days });
            var records = ChildRecords.Of(child.Log, new ReviewOptions());
            var illness = new IllnessByRecord(records);
            for (var run = 0; run < 3; run++)
            {
                var before = Process.GetCurrentProcess().TotalProcessorTime;
                var found = DailySignals.Fit(records, illness).Episodes.Count;
                Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{days} days, {records.Checks.Count} checks, {found} episodes: {(Process.GetCurrentProcess().TotalProcessorTime - before).TotalMilliseconds:0} ms of processor"));
            }
        }

        return 0;
    default:
        Console.Error.WriteLine("Say: report FILE CHILDREN [WORDS] | try CHILDREN SEED [WORDS] | time");
        return 2;
}
