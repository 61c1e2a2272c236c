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
    /// child they become Student's limits for a mean of k children. docs/pooling.md has their measured coverage.
    /// </summary>
    public static PooledShare Model(IReadOnlyList<GapTally> children)
    {
        if (children.Count == 0) return new() { Method = "no session could be judged" };
        if (children.Count == 1) return OneChild(children[0]);
        if (children.Sum(c => c.Kept) is var kept && (kept == 0 || kept == children.Sum(c => c.Judged))) return AllOrNone(children.Count, kept > 0);
        var fitted = RandomInterceptLogistic.Fit([.. children.Select((c, i) => new ClusterRow(i, c.Kept, c.Judged, []))]);
        if (!fitted.TryGet(out var fit)) return new() { Method = $"no figure: {fitted.Missing}" };
        var (middle, tau2) = (fit.Coefficients[0], fit.Deviation * fit.Deviation);
        return OnShareScale(middle, fit.StandardErrors[0], tau2, children.Count) with
        {
            I2 = ISquared(children),
            Method = string.Create(CultureInfo.InvariantCulture, $"logistic model with a random intercept by child, limits by t on {children.Count - 1}"),
        };
    }

    /// <summary>Each child's logit share pooled by REML with Hartung and Knapp's limits (2001, Stat Med 20:3875).</summary>
    public static PooledShare TwoStep(IReadOnlyList<GapTally> children)
    {
        if (children.Count == 0) return new() { Method = "no session could be judged" };
        var fitted = RandomEffects.Fit([.. children.Select(Logit)], HeterogeneityMethod.RestrictedMaximumLikelihood, hartungKnapp: true, Level);
        if (!fitted.TryGet(out var fit)) return new() { Method = $"no figure: {fitted.Missing}" };
        return new()
        {
            Pooled = Share(fit.Mean.Value),
            Low = Share(fit.Mean.Low),
            High = Share(fit.Mean.High),
            Tau2 = fit.TauSquared,
            I2 = fit.ISquaredPercent / 100,
            PredictionLow = Share(fit.PredictionInterval.Low),
            PredictionHigh = Share(fit.PredictionInterval.High),
            Method = "two steps: each child's logit share, REML between children, Hartung-Knapp limits",
        };
    }

    /// <summary>A child's logit share with its variance; ½ is added to both counts where all or none were kept.</summary>
    public static StudyEffect Logit(GapTally child) => ProportionScale.Effect(ProportionScaleKind.Logit, child.Kept, child.Judged);

    private static PooledShare OneChild(GapTally child)
    {
        var wilson = Wilson.Interval(child.Kept, child.Judged, Level).Value;
        return new() { Pooled = wilson.Value, Low = wilson.Low, High = wilson.High, Method = "one child: Wilson's limits over its sessions; nothing is known between children" };
    }

    /// <summary>No model can be fitted where nothing differs. Children, not sessions, are counted as trials: limits that cannot be too narrow.</summary>
    private static PooledShare AllOrNone(int children, bool all)
    {
        var wilson = Wilson.Interval(all ? children : 0, children, Level).Value;
        return new()
        {
            Pooled = wilson.Value,
            Low = wilson.Low,
            High = wilson.High,
            Method = all ? "all of every child: Wilson's limits with children as trials" : "none of any child: Wilson's limits with children as trials",
        };
    }

    private static PooledShare OnShareScale(double middle, double error, double tau2, int children)
    {
        var t = StudentT.Critical(Level, children - 1) * Math.Sqrt(children / (children - 1.0));
        var further = t * Math.Sqrt((error * error) + tau2);
        return new()
        {
            Pooled = Share(middle),
            Low = Share(middle - (t * error)),
            High = Share(middle + (t * error)),
            Tau2 = tau2,
            PredictionLow = Share(middle - further),
            PredictionHigh = Share(middle + further),
            Method = "",
        };
    }

    private static double? ISquared(IReadOnlyList<GapTally> children) =>
        RandomEffects.Fit([.. children.Select(Logit)]).TryGet(out var fit) ? fit.ISquaredPercent / 100 : null;

    private static double Share(double logit) => 1 / (1 + Math.Exp(-logit));
}
