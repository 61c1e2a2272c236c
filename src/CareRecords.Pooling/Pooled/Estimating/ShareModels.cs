using System.Globalization;
using CareRecords.Statistics;

namespace CareRecords.Pooling;

/// <summary>The pooled share by two models, both on the logit scale and both of the child in the middle of the distribution of children.</summary>
internal static class ShareModels
{
    private const double Level = 0.95;

    /// <summary>
    /// The logistic model with a random intercept by child (Stijnen T et al. 2010, Stat Med 29:3046). Maximum likelihood makes the variance between k
    /// children too small by about (k − 1)/k and treats it as known: the limits widen by √(k/(k − 1)) and take t on k − 1, so that with many sessions a
    /// child they become Student's limits for a mean of k children. docs/pooling.md has their measured coverage. The range of a further child does not take
    /// the variance between children as known (<see cref="FurtherCluster"/>).
    /// </summary>
    /// <param name="children">Children with a judged session.</param>
    /// <param name="further">Whether the range of a further child is wanted too.</param>
    public static PooledShare Model(IReadOnlyList<GapTally> children, bool further = false)
    {
        if (children.Count == 0) return new() { Method = "no session could be judged" };
        if (children.Count == 1) return OneChild(children[0]);
        if (AllOrNone(children) is { } same) return same;
        ClusterRow[] rows = [.. children.Select((c, i) => new ClusterRow(i, c.Kept, c.Judged, []))];
        var fitted = RandomInterceptLogistic.Fit(rows);
        if (!fitted.TryGet(out var fit)) return new() { Method = $"no figure: {fitted.Missing}" };
        var (middle, error) = (fit.Coefficients[0], fit.StandardErrors[0] * Math.Sqrt(children.Count / (children.Count - 1.0)));
        var half = StudentT.Critical(Level, children.Count - 1) * error;
        return WithRange(further ? FurtherCluster.Of(rows, fit, Level) : null) with
        {
            Pooled = Share(middle),
            Low = Share(middle - half),
            High = Share(middle + half),
            Tau2 = fit.Deviation * fit.Deviation,
            I2 = ISquared(children),
            Method = string.Create(CultureInfo.InvariantCulture, $"logistic model with a random intercept by child, limits by t on {children.Count - 1}"),
        };
    }

    /// <summary>
    /// Each child's logit share pooled by REML with Hartung and Knapp's limits (2001, Stat Med 20:3875). With a child's own variance few sessions would draw
    /// the share towards one half, so the variances are smoothed (<see cref="EmpiricalLogit"/>).
    /// </summary>
    /// <param name="children">Children with a judged session.</param>
    public static PooledShare TwoStep(IReadOnlyList<GapTally> children)
    {
        if (children.Count == 0) return new() { Method = "no session could be judged" };
        if (children.Count > 1 && AllOrNone(children) is { } same) return same;
        var logits = Logits(children);
        // Hartung and Knapp's limits are drawn from how the shares differ: of shares that are all the same they would have no width.
        var differ = Array.Exists(logits, l => l.Value != logits[0].Value);
        var fitted = RandomEffects.Fit(logits, HeterogeneityMethod.RestrictedMaximumLikelihood, hartungKnapp: differ, Level);
        if (!fitted.TryGet(out var fit)) return new() { Method = $"no figure: {fitted.Missing}" };
        return WithRange(FurtherEffect.Of(logits, Level).TryGet(out var further) ? further : null) with
        {
            Pooled = Share(fit.Mean.Value),
            Low = Share(fit.Mean.Low),
            High = Share(fit.Mean.High),
            Tau2 = fit.TauSquared,
            I2 = fit.ISquaredPercent / 100,
            Method = "two steps: each child's logit share with smoothed variance, REML between children, " + (differ ? "Hartung-Knapp limits" : "normal limits, as all shares are the same; no range for a further child"),
        };
    }

    /// <summary>The children's logit shares with smoothed variances.</summary>
    /// <param name="children">Children with a judged session.</param>
    public static StudyEffect[] Logits(IReadOnlyList<GapTally> children) => EmpiricalLogit.Smoothed([.. children.Select(c => new TrialCount(c.Kept, c.Judged))]);

    private static PooledShare OneChild(GapTally child)
    {
        var wilson = Wilson.Interval(child.Kept, child.Judged, Level).Value;
        return new() { Pooled = wilson.Value, Low = wilson.Low, High = wilson.High, Method = "one child: Wilson's limits over its sessions; nothing is known between children" };
    }

    /// <summary>
    /// No model can be fitted where nothing differs: Hartung and Knapp's limits would have no width. Children, not sessions, are counted as trials: limits
    /// that cannot be too narrow. Null where something differs.
    /// </summary>
    private static PooledShare? AllOrNone(IReadOnlyList<GapTally> children)
    {
        var all = children.All(c => c.Kept == c.Judged);
        if (!all && children.Any(c => c.Kept > 0)) return null;
        var wilson = Wilson.Interval(all ? children.Count : 0, children.Count, Level).Value;
        return new()
        {
            Pooled = wilson.Value,
            Low = wilson.Low,
            High = wilson.High,
            Method = all ? "all of every child: Wilson's limits with children as trials" : "none of any child: Wilson's limits with children as trials",
        };
    }

    private static PooledShare WithRange(Interval? further) =>
        new() { PredictionLow = further is { Low: var low } ? Share(low) : null, PredictionHigh = further is { High: var high } ? Share(high) : null, Method = "" };

    private static double? ISquared(IReadOnlyList<GapTally> children) =>
        RandomEffects.Fit(Logits(children)).TryGet(out var fit) ? fit.ISquaredPercent / 100 : null;

    private static double Share(double logit) => 1 / (1 + Math.Exp(-logit));
}
