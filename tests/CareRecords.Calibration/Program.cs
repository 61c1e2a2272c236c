using System.Diagnostics;
using System.Globalization;
using CareRecords.Calibration;
using CareRecords.Findings.Modelling;
using CareRecords.Simulation;

var children = args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 40;
var seed = args.Length > 2 ? int.Parse(args[2], CultureInfo.InvariantCulture) : 100000;
if (args[0] == "probe")
{
    for (var i = 0; i < children; i++)
    {
        var child = KnownChild.From(new SimulationOptions { Seed = seed + i, Noise = 1 });
        var rows = new List<string>();
        RecoveryTime.Probe = q => rows.Add(string.Join(' ', new[] { 0.005, 0.025, 0.1, 0.25, 0.5, 0.75, 0.9, 0.975, 0.995 }.Select(s => (q(s) ?? double.NaN).ToString("0.0", CultureInfo.InvariantCulture))));
        var r = IllnessModel.Fit(child.Observations, child.Input);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"base {r.Baseline!.Centre - child.Baseline:0.00} sd {r.Baseline.NoiseSd:0.00} f {r.Baseline.Dependence:0.00} well {r.Baseline.WellDays}"));
        foreach (var (e, row) in child.Episodes.Zip(rows)) Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"   {e.Kind,-12} onset {e.OnsetDay} truth {e.RecoveredAt:0.0}: {row}"));
    }
    return;
}

if (args.Length > 3) RecoveryTime.Tail = double.Parse(args[3], CultureInfo.InvariantCulture);
void Show(string name, Func<int, KnownChild> make)
{
    var score = new Score();
    var clock = new Stopwatch();
    for (var i = 0; i < children; i++)
    {
        var child = make(i);
        clock.Start();
        var result = IllnessModel.Fit(child.Observations, child.Input);
        clock.Stop();
        score.Add(child, result);
    }

    static double Median(List<double> x) => x.Count == 0 ? double.NaN : x.Order().ElementAt(x.Count / 2);
    var n = Math.Max(1, score.Finished);
    Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
        $"{name,-34} F1 {score.F1:0.000} (miss {score.Missed} inv {score.Invented}) on≤1 {(double)score.OnsetWithinDay / Math.Max(1, score.Hits):0.000} med {score.OnsetErrors.DefaultIfEmpty(0).Average():+0.00;-0.00} cov {(double)score.Covered / n:0.000} (<{score.TooEarly} >{score.TooLate} of {n}; mid {(double)score.CoveredFromMidnight / n:0.00} dur {(double)score.CoveredAsDuration / n:0.00}) w {Median(score.Widths):0.00} bias {Median(score.RecoveryErrors):+0.00;-0.00} fcens {score.FinishedCalledCensored} cens {score.UnfinishedCalledCensored}/{score.Unfinished} base {score.BaselineErrors.DefaultIfEmpty(0).Average(Math.Abs):0.00} max {score.BaselineErrors.DefaultIfEmpty(0).Max(Math.Abs):0.00} bcov {(double)score.BaselineCovered / children:0.00} {clock.ElapsedMilliseconds / (double)children:0} ms"));
}

if (args[0] is "quick" or "all")
{
foreach (var oxygen in new[] { false, true })
    foreach (var noise in new[] { 0.7, 1.0, 1.4 })
        Show($"easy o2={oxygen} sd={noise}", i => KnownChild.From(new SimulationOptions { Seed = seed + i, Noise = noise, GetsExtraOxygen = oxygen, OxygenWritten = 0.8 }));
foreach (var oxygen in new[] { false, true })
    Show($"hard o2={oxygen} sd=2 2/d", i => KnownChild.From(new SimulationOptions { Seed = seed + i, Noise = 2, ChecksPerDay = 2, FeedsWritten = 0.9, GetsExtraOxygen = oxygen, OxygenWritten = 0.6, DaysNotWritten = 0.05 }));
Show("AR .5 sd=1.4", i => KnownChild.From(new SimulationOptions { Seed = seed + i, Noise = 1.4, NoiseCorrelation = 0.5 }));
Show("AR .5 sd=2 2/d miss .1", i => KnownChild.From(new SimulationOptions { Seed = seed + i, Noise = 2, ChecksPerDay = 2, NoiseCorrelation = 0.5, DaysNotWritten = 0.1 }));
Show("O2 written 0.3 sd=1", i => KnownChild.From(new SimulationOptions { Seed = seed + i, Noise = 1, GetsExtraOxygen = true, OxygenWritten = 0.3 }));
}

if (args[0] is "other" or "all")
{
    foreach (var shape in OtherChildren.Shapes) Show("other " + shape, i => OtherChildren.Make(new OtherOptions { Seed = seed + i, Shape = shape }));
    Show("other sd=2 6/d", i => OtherChildren.Make(new OtherOptions { Seed = seed + i, Noise = 2, ChecksPerDay = 6 }));
    Show("other sd=1.4 miss .1", i => OtherChildren.Make(new OtherOptions { Seed = seed + i, Noise = 1.4, DaysMissing = 0.1 }));
    Show("other o2 sd=1", i => OtherChildren.Make(new OtherOptions { Seed = seed + i, Oxygen = true }));
    Show("other o2 sd=1 .3 no plan", i => OtherChildren.Make(new OtherOptions { Seed = seed + i, Oxygen = true, OxygenWritten = 0.3, PlanStatesOxygen = false }));
    Show("other o2 sd=1.4 raised only", i => OtherChildren.Make(new OtherOptions { Seed = seed + i, Oxygen = true, OxygenWritten = -0.7, Noise = 1.4 }));
    Show("other o2 sd=2 raised only no plan", i => OtherChildren.Make(new OtherOptions { Seed = seed + i, Oxygen = true, OxygenWritten = -0.7, Noise = 2, PlanStatesOxygen = false }));
    Show("other drift 1", i => OtherChildren.Make(new OtherOptions { Seed = seed + i, Drift = 1 }));
    Show("other circadian 1.5", i => OtherChildren.Make(new OtherOptions { Seed = seed + i, Circadian = 1.5 }));
    Show("other outliers .05", i => OtherChildren.Make(new OtherOptions { Seed = seed + i, Outliers = 0.05 }));
    Show("other OU 6h sd 1.4", i => OtherChildren.Make(new OtherOptions { Seed = seed + i, ErrorHours = 6, Noise = 1.4 }));
    Show("other OU 24h sd 1", i => OtherChildren.Make(new OtherOptions { Seed = seed + i, ErrorHours = 24 }));
    Show("other mild 3", i => OtherChildren.Make(new OtherOptions { Seed = seed + i, Depth = 3 }));
    Show("other top 100", i => OtherChildren.Make(new OtherOptions { Seed = seed + i, Top = 100 }));
    Show("other 4/d sd .7", i => OtherChildren.Make(new OtherOptions { Seed = seed + i, ChecksPerDay = 4, Noise = 0.7 }));
    Show("other 30 days", i => OtherChildren.Make(new OtherOptions { Seed = seed + i, Days = 30 }));
}
