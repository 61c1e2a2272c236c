using CsCheck;

namespace CareRecords.Statistics.Tests.Survival;

public class KaplanMeierTests
{
    private static readonly Gen<FollowUp[]> Subjects =
        Gen.Select(Gen.Int[0, 12], Gen.Bool).Select(t => new FollowUp(t.Item1, t.Item2)).Array[1, 25];

    [Fact]
    public void Five_subjects_with_a_tie_and_a_censored_one_by_hand()
    {
        // Unsorted; at 2 two events of five, at 3 one censored, at 4 one of two, at 7 the last.
        FollowUp[] subjects = [new(4, true), new(2, true), new(7, true), new(3, false), new(2, true)];
        var curve = KaplanMeier.Fit(subjects).Value;
        Assert.Equal([2.0, 4, 7], curve.Steps.Select(s => s.Time));
        Assert.Equal([5, 2, 1], curve.Steps.Select(s => s.AtRisk));
        Near.Equal(3 / 5.0, curve.Steps[0].Survival);
        Near.Equal(3 / 10.0, curve.Steps[1].Survival);
        Assert.Equal(0, curve.Steps[2].Survival);

        // Greenwood: S·sqrt(2/(5·3) + 1/(2·1)).
        Near.Equal(0.3 * Math.Sqrt((2 / 15.0) + 0.5), curve.Steps[1].StandardError!.Value);
        Assert.Null(curve.Steps[2].StandardError);
        Assert.Equal(4, curve.Median.Value);

        // Area to 7: 2·1 + 2·3/5 + 3·3/10 = 4.1.
        Near.Equal(4.1, curve.RestrictedMean(7).Value.Value);
    }

    [Fact]
    public void A_curve_exactly_on_a_half_has_its_median_in_the_middle_of_that_stretch() =>
        Assert.Equal(3, KaplanMeier.Fit([new(2, true), new(4, true)]).Value.Median.Value);

    [Fact]
    public void Upper_limits_that_rise_again_give_the_quantile_limit_of_survfit()
    {
        // R 4.2.2, survival 3.5.3: quantile(survfit(Surv(time, status) ~ 1, conf.type = "log"), 0.25)$upper is 25, not 12.
        double[] times = [2, 12, 9, 2, 3, 4, 9, 4, 25, 8, 12, 17, 1, 7, 2, 2, 7, 1, 2, 7, 27];
        int[] status = [0, 1, 1, 1, 0, 1, 0, 0, 1, 1, 1, 0, 1, 1, 1, 0, 0, 1, 0, 1, 0];
        var quartile = KaplanMeier.Fit([.. times.Zip(status, (t, s) => new FollowUp(t, s == 1))], scale: LimitScale.Log).Value.Quantile(0.25);
        Assert.Equal((4.0, 2.0, 25.0), (quartile.Value, quartile.Low, quartile.High));
    }

    [Fact]
    public void A_same_day_event_counts_and_no_event_leaves_a_flat_curve()
    {
        Assert.Equal(0.5, KaplanMeier.Fit([new(0, true), new(5, false)]).Value.SurvivalAt(0));
        var flat = KaplanMeier.Fit([new(3, false), new(5, false)]).Value;
        Assert.Empty(flat.Steps);
        Assert.Equal((1.0, null, null), (flat.SurvivalAt(5), flat.SurvivalAt(6), flat.Median.Value));
        Near.Equal(4, flat.RestrictedMean(4).Value.Value);
        Assert.False(flat.RestrictedMean(6).IsKnown);
    }

    [Fact]
    public void Nobody_is_a_named_outcome_and_odd_times_are_refused()
    {
        Assert.False(KaplanMeier.Fit([]).IsKnown);
        Assert.Throws<ArgumentException>(() => KaplanMeier.Fit([new(-1, true)]));
        Assert.Throws<ArgumentException>(() => KaplanMeier.Fit([new(double.NaN, true)]));
    }

    [Fact]
    public void Curve_falls_and_limits_hold_it() => Subjects.Holds(subjects =>
    {
        foreach (var scale in Enum.GetValues<LimitScale>())
        {
            var previous = 1.0;
            foreach (var s in KaplanMeier.Fit(subjects, 0.9, scale).Value.Steps)
            {
                if (s.Survival >= previous || s.Limits is { } l && !(l.Covers(s.Survival) && l is { Low: >= 0, High: <= 1 }))
                {
                    return false;
                }

                previous = s.Survival;
            }
        }

        return true;
    });

    [Fact]
    public void Without_censoring_the_restricted_mean_is_the_mean_of_the_times() => Gen.Int[0, 30].Array[1, 20].Where(a => a.Max() > 0).Holds(times =>
        Math.Abs(KaplanMeier.Fit([.. times.Select(t => new FollowUp(t, true))]).Value.RestrictedMean(times.Max()).Value.Value - times.Average()) < 1e-9);

    [Fact]
    public void Log_log_limits_cover_in_simulation() => Coverage.Between(0.93, 0.975, 3000, random =>
    {
        // Exponential times of mean 10 censored uniformly up to 20; S(5) = exp(−1/2).
        var subjects = Enumerable.Range(0, 40).Select(_ =>
        {
            var (time, end) = (-10 * Math.Log(random.Uniform()), 20 * random.Uniform());
            return new FollowUp(Math.Min(time, end), time <= end);
        });
        return KaplanMeier.Fit([.. subjects]).Value.Steps.Last(s => s.Time <= 5).Limits!.Covers(Math.Exp(-0.5));
    });

    [Fact]
    public void Log_rank_of_two_pairs_by_hand()
    {
        // Times 1, 2 in one group, 3, 4 in the other: E1 = 1/2 + 1/3, V = 1/4 + 2/9, chi-square = (2 − 5/6)²/(17/36) = 49/17.
        var test = LogRank.Test([[new(1, true), new(2, true)], [new(3, true), new(4, true)]]).Value;
        Near.Equal(5 / 6.0, test.Expected[0]);
        Near.Equal(17 / 36.0, test.Variance[0][0]);
        Near.Equal(49 / 17.0, test.ChiSquare);
        Assert.Equal(1, test.Freedom);
    }

    [Fact]
    public void Log_rank_needs_two_groups_at_risk_and_ignores_an_empty_one()
    {
        Assert.False(LogRank.Test([[new(1, true)]]).IsKnown);
        Assert.False(LogRank.Test([[new(1, false)], [new(2, false)]]).IsKnown);
        Assert.False(LogRank.Test([]).IsKnown);
        var (a, b) = (new FollowUp[] { new(1, true), new(2, true) }, new FollowUp[] { new(3, true), new(4, true) });
        Near.Equal(LogRank.Test([a, b]).Value.ChiSquare, LogRank.Test([a, [], b]).Value.ChiSquare);
        Near.Equal(2 * LogRank.Test([a, b]).Value.ChiSquare, LogRank.Stratified([[a, b], [a, b]]).Value.ChiSquare);
    }

    [Fact]
    public void Log_rank_does_not_care_for_the_order_of_groups() => Gen.Select(Subjects, Subjects, Subjects).Holds(t =>
    {
        var (forward, back) = (LogRank.Test([t.Item1, t.Item2, t.Item3]), LogRank.Test([t.Item3, t.Item1, t.Item2]));
        return forward.IsKnown == back.IsKnown && (!forward.IsKnown || Math.Abs(forward.Value.ChiSquare - back.Value.ChiSquare) < 1e-7 * Math.Max(1, back.Value.ChiSquare));
    });
}
