using CsCheck;

namespace CareRecords.Statistics.Tests.MetaAnalysis;

public class FurtherEffectTests
{
    /// <summary>Improved, of, in 14 studies (tests/reference/data/pritz1997.csv).</summary>
    private static readonly (int X, int N)[] Vasospasm =
        [(16, 17), (10, 12), (4, 8), (43, 58), (10, 10), (25, 42), (13, 14), (12, 12), (22, 41), (4, 5), (5, 6), (18, 23), (58, 68), (6, 10)];

    /// <summary>
    /// Thirteen trials of cisapride: responders and patients, treated and control (Hartung J, Knapp G 2001, Stat Med 20:3875). The package pimeta 1.1.4
    /// (of the authors of the method) prints 4.141 [0.533, 33.692] for them as odds ratios with ½ added to every cell.
    /// </summary>
    private static readonly (int A, int N1, int C, int N2)[] Cisapride =
    [
        (15, 16, 9, 16), (12, 16, 1, 16), (29, 34, 18, 34), (42, 56, 31, 56), (14, 22, 6, 22), (44, 54, 17, 55), (14, 17, 7, 15),
        (29, 58, 23, 58), (10, 14, 3, 15), (17, 26, 6, 27), (38, 44, 12, 45), (19, 29, 22, 30), (21, 38, 19, 38),
    ];

    [Fact]
    public void Limits_agree_with_a_simulation_of_the_definition_in_R()
    {
        // R 4.2.2: τ² from uniroot(Q(τ²) = qchisq(1 − u, k − 1)) at 4,000 u's, 400,000 draws of mean + rt(k − 1)·error + rnorm·τ, quantiles. A quantile drawn so
        // has an error of about 0.01 of the width; 0.02 of the width are allowed.
        Agrees(-0.4026050355158, 3.107547768574, FurtherEffect.Of(EmpiricalLogit.Smoothed([.. Vasospasm.Select(v => new TrialCount(v.X, v.N))])).Value);
        Agrees(Math.Log(0.5630367417095), Math.Log(31.80345882547), FurtherEffect.Of(OddsRatios()).Value);
    }

    [Fact]
    public void Limits_are_near_those_of_the_published_method()
    {
        var range = FurtherEffect.Of(OddsRatios()).Value;
        var (low, high) = (Math.Log(0.533), Math.Log(33.692));
        Assert.InRange(range.Low, low - (0.02 * (high - low)), low + (0.02 * (high - low)));
        Assert.InRange(range.High, high - (0.02 * (high - low)), high + (0.02 * (high - low)));
    }

    [Fact]
    public void Range_of_studies_that_are_much_alike_holds_a_further_one()
    {
        // τ of 0.25 beside errors of 0.5 to 1: τ² is often estimated as 0.
        Coverage.Between(0.94, 0.97, 300, random =>
        {
            double Truth() => 0.25 * random.Gaussian();
            var studies = Enumerable.Range(0, 10).Select(i => 0.25 + (0.75 * i / 9)).Select(v => new StudyEffect(Truth() + (Math.Sqrt(v) * random.Gaussian()), v));
            var range = FurtherEffect.Of([.. studies]).Value;
            var further = Truth();
            return range.Low <= further && further <= range.High;
        });
    }

    [Fact]
    public void Moving_and_turning_all_effects_moves_and_turns_the_range() =>
        Gen.Select(Gen.Double[-3, 3], Gen.Double[0.01, 2]).Select(t => new StudyEffect(t.Item1, t.Item2)).Array[2, 10].Where(studies => studies.Max(s => s.Value) - studies.Min(s => s.Value) > 1e-6).Holds(studies =>
        {
            var plain = FurtherEffect.Of(studies).Value;
            var moved = FurtherEffect.Of([.. studies.Select(s => s with { Value = s.Value + 7 })]).Value;
            var turned = FurtherEffect.Of([.. studies.Select(s => s with { Value = -s.Value })]).Value;
            var near = 1e-6 * (1 + plain.High - plain.Low);
            return Math.Abs(moved.Low - plain.Low - 7) < near && Math.Abs(turned.High + plain.Low) < near && plain.Low < plain.High;
        }, count: 30);

    [Fact]
    public void Equal_effects_and_one_study_give_a_reason()
    {
        Assert.Equal("effects that are all the same say nothing of how studies differ", FurtherEffect.Of([new(0.5, 0.1), new(0.5, 0.2), new(0.5, 0.3)]).Missing?.Reason);
        Assert.Equal("effects that are all the same say nothing of how studies differ", FurtherEffect.Of([new(-2.661e-54, 1), new(0, 1.02), new(1.344e-28, 2)]).Missing?.Reason);
        Assert.Equal("one study says nothing of how studies differ", FurtherEffect.Of([new(0.5, 0.1)]).Missing?.Reason);
    }

    private static StudyEffect[] OddsRatios() =>
    [
        .. Cisapride.Select(t => (A: t.A + 0.5, B: t.N1 - t.A + 0.5, C: t.C + 0.5, D: t.N2 - t.C + 0.5))
            .Select(t => new StudyEffect(Math.Log(t.A * t.D / (t.B * t.C)), (1 / t.A) + (1 / t.B) + (1 / t.C) + (1 / t.D))),
    ];

    private static void Agrees(double low, double high, Interval range)
    {
        Assert.InRange(range.Low, low - (0.02 * (high - low)), low + (0.02 * (high - low)));
        Assert.InRange(range.High, high - (0.02 * (high - low)), high + (0.02 * (high - low)));
    }
}
