using System.Diagnostics;
using System.Globalization;
using CareRecords.Calibration;
using CareRecords.Findings.Modelling;
using CareRecords.Simulation;

var children = args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 40;
var seed = args.Length > 2 ? int.Parse(args[2], CultureInfo.InvariantCulture) : 100000;
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
        $"{name,-34} F1 {score.F1:0.000} (miss {score.Missed} inv {score.Invented}) on≤1 {(double)score.OnsetWithinDay / Math.Max(1, score.Hits):0.000} med {score.OnsetErrors.DefaultIfEmpty(0).Average():+0.00;-0.00} cov {(double)score.Covered / n:0.000} (<{score.TooEarly} >{score.TooLate} of {n}; mid {(double)score.CoveredFromMidnight / n:0.00}) w {Median(score.Widths):0.00} bias {Median(score.RecoveryErrors):+0.00;-0.00} fcens {score.FinishedCalledCensored} cens {score.UnfinishedCalledCensored}/{score.Unfinished} base {score.BaselineErrors.DefaultIfEmpty(0).Average(Math.Abs):0.00} max {score.BaselineErrors.DefaultIfEmpty(0).Max(Math.Abs):0.00} bcov {(double)score.BaselineCovered / children:0.00} {clock.ElapsedMilliseconds / (double)children:0} ms"));
}

foreach (var oxygen in new[] { false, true })
    foreach (var noise in new[] { 0.7, 1.0, 1.4 })
        Show($"easy o2={oxygen} sd={noise}", i => KnownChild.From(new SimulationOptions { Seed = seed + i, Noise = noise, GetsExtraOxygen = oxygen, OxygenWritten = 0.8 }));
foreach (var oxygen in new[] { false, true })
    Show($"hard o2={oxygen} sd=2 2/d", i => KnownChild.From(new SimulationOptions { Seed = seed + i, Noise = 2, ChecksPerDay = 2, FeedsWritten = 0.9, GetsExtraOxygen = oxygen, OxygenWritten = 0.6, DaysNotWritten = 0.05 }));
Show("AR .5 sd=1.4", i => KnownChild.From(new SimulationOptions { Seed = seed + i, Noise = 1.4, NoiseCorrelation = 0.5 }));
Show("AR .5 sd=2 2/d miss .1", i => KnownChild.From(new SimulationOptions { Seed = seed + i, Noise = 2, ChecksPerDay = 2, NoiseCorrelation = 0.5, DaysNotWritten = 0.1 }));
Show("O2 written 0.3 sd=1", i => KnownChild.From(new SimulationOptions { Seed = seed + i, Noise = 1, GetsExtraOxygen = true, OxygenWritten = 0.3 }));
