using CsCheck;

namespace CareRecords.Statistics.Tests.MetaAnalysis;

public class RandomEffectsTests
{
    private static readonly Gen<StudyEffect[]> Studies =
        Gen.Select(Gen.Double[-3, 3], Gen.Double[0.01, 2]).Select(t => new StudyEffect(t.Item1, t.Item2)).Array[2, 12];

    [Fact]
    public void Two_studies_by_hand()
    {
        // y = 0, 2 with v = 1: mean 1, Q = 2; every moment estimate gives τ² = 1; I² = (2 − 1)/2.
        StudyEffect[] two = [new(0, 1), new(2, 1)];
        foreach (var method in new[] { HeterogeneityMethod.DerSimonianLaird, HeterogeneityMethod.PauleMandel, HeterogeneityMethod.Hedges, HeterogeneityMethod.RestrictedMaximumLikelihood })
        {
            var r = RandomEffects.Fit(two, method, hartungKnapp: false).Value;
            Near.Equal(1, r.Mean.Value);
            Near.Equal(1, r.TauSquared, 1e-10);
            Near.Equal(1, r.StandardError, 1e-10);
            Near.Equal(50, r.ISquaredPercent, 1e-10);
        }

        // Maximum likelihood divides by k instead of k − 1: (1 + 1)/2 − 1 = 0.
        Near.Equal(0, RandomEffects.Fit(two, HeterogeneityMethod.MaximumLikelihood).Value.TauSquared, 1e-7);
        Near.Equal(2, RandomEffects.Fit(two, HeterogeneityMethod.CommonEffect).Value.Q);
    }

    [Fact]
    public void Equal_effects_leave_no_heterogeneity_and_one_study_is_a_named_outcome()
    {
        var equal = RandomEffects.Fit([new(0.5, 0.1), new(0.5, 0.2), new(0.5, 0.3)]).Value;
        Assert.Equal((0.0, 0.0), (equal.TauSquared, equal.ISquaredPercent));
        Assert.Equal(0.5, equal.Mean.Value, 12);
        Assert.False(double.IsNaN(equal.Test.PValue));
        Assert.False(double.IsNaN(RandomEffects.Fit([new(0, 0.1), new(0, 0.2)], HeterogeneityMethod.SidikJonkman).Value.Test.PValue));
        Assert.False(RandomEffects.Fit([new(0.5, 0.1)]).IsKnown);
        Assert.Throws<ArgumentException>(() => RandomEffects.Fit([new(0.5, 0), new(1, 1)]));
        Assert.Throws<ArgumentException>(() => RandomEffects.Fit([new(double.NaN, 1), new(1, 1)]));
    }

    [Fact]
    public void Restricted_likelihood_is_at_its_maximum() => Studies.Holds(studies =>
    {
        var r = RandomEffects.Fit(studies).Value;
        var here = Heterogeneity.RestrictedLogLikelihood(studies, r.TauSquared);
        return new[] { 0.5, 0.9, 0.99, 1.01, 1.1, 2 }.All(f => Heterogeneity.RestrictedLogLikelihood(studies, r.TauSquared * f) <= here + 1e-9)
            && Heterogeneity.RestrictedLogLikelihood(studies, r.TauSquared + 1e-4) <= here + 1e-9;
    });

    [Fact]
    public void Moving_all_effects_moves_the_mean_only_and_intervals_hold_their_estimates() => Studies.Holds(studies =>
        Enum.GetValues<HeterogeneityMethod>().All(method =>
        {
            var plain = RandomEffects.Fit(studies, method).Value;
            var moved = RandomEffects.Fit([.. studies.Select(s => s with { Value = s.Value + 7 })], method).Value;
            var (tau, prediction) = (plain.TauSquaredInterval, plain.PredictionInterval);
            return Math.Abs(moved.Mean.Value - plain.Mean.Value - 7) < 1e-6
                && Math.Abs(moved.TauSquared - plain.TauSquared) < 1e-6 * Math.Max(1, plain.TauSquared)
                && tau.Low <= tau.High && prediction.Low <= plain.Mean.Low + 1e-12 && plain.Mean.High <= prediction.High + 1e-12;
        }));

    [Fact]
    public void Hartung_Knapp_covers_with_few_unequal_studies_in_simulation() => Coverage.Between(0.93, 0.975, 2000, random =>
    {
        var studies = Enumerable.Range(1, 8).Select(i => new StudyEffect(0.4 + (Math.Sqrt(0.1 + (0.05 * i)) * random.Gaussian()), 0.05 * i));
        return RandomEffects.Fit([.. studies]).Value.Mean.Covers(0.4);
    });

    [Fact]
    public void Proportions_come_back_from_every_scale()
    {
        foreach (var kind in Enum.GetValues<ProportionScaleKind>())
        {
            for (var x = 0; x <= 9; x++)
            {
                var back = ProportionScale.Proportion(kind, ProportionScale.Effect(kind, x, 9).Value, [9]);
                var half = kind is ProportionScaleKind.Logit or ProportionScaleKind.Raw && x is 0 or 9 ? (x + 0.5) / 10 : x / 9.0;
                Near.Equal(kind is ProportionScaleKind.FreemanTukey or ProportionScaleKind.Arcsine ? x / 9.0 : half, back, 1e-9);
            }
        }
    }

    [Fact]
    public void Ratios_of_tables_without_events_say_nothing_and_an_empty_cell_gets_a_half()
    {
        Assert.Null(RatioEffect.LogOddsRatio(new(0, 5, 0, 6)));
        Assert.Null(RatioEffect.LogRiskRatio(new(0, 5, 0, 6)));
        Assert.Null(RatioEffect.LogOddsRatio(new(5, 0, 6, 0)));
        Near.Equal(Math.Log(0.5 * 4.5 / (5.5 * 2.5)), RatioEffect.LogOddsRatio(new(0, 5, 2, 4))!.Value.Value);
        Assert.Throws<ArgumentException>(() => RatioEffect.LogOddsRatio(new(0, 0, 2, 4)));
    }
}
