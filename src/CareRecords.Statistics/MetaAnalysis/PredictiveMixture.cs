namespace CareRecords.Statistics;

/// <summary>What is expected of a further unit at one of several equally likely values of τ: mean + t·error + z·τ.</summary>
/// <param name="Mean">The mean at that τ.</param>
/// <param name="Error">Its error.</param>
/// <param name="Tau">The standard deviation between units.</param>
internal readonly record struct PredictivePoint(double Mean, double Error, double Tau);

/// <summary>Quantiles over equally likely values of τ, summed over equally likely points of t instead of drawn: the same data give the same limits.</summary>
internal static class PredictiveMixture
{
    private const int PointsOfMean = 40;

    public static Interval Between(IReadOnlyList<PredictivePoint> points, int freedom, double level)
    {
        // The middle of each of equally likely slices of t.
        double[] slices = [.. Enumerable.Range(0, PointsOfMean / 2).Select(i => StudentT.Critical(1 - (((2 * i) + 1.0) / PointsOfMean), freedom)).SelectMany(t => new[] { t, -t })];
        var reach = points.Max(p => Math.Abs(p.Mean) + (slices.Max() * p.Error) + (40 * p.Tau)) + 1;
        double Limit(double share) => Bisection.Rising(x => points.Average(p => Lower(p, x, slices, freedom)) - share, -reach, reach);
        return new(Limit((1 - level) / 2), Limit((1 + level) / 2), level);
    }

    /// <summary>P(mean + t·error + z·τ ≤ x).</summary>
    private static double Lower(PredictivePoint p, double x, double[] slices, int freedom)
    {
        if (p.Tau > 0)
        {
            var sum = 0.0;
            foreach (var t in slices) sum += Gaussian.Lower((x - p.Mean - (t * p.Error)) / p.Tau);
            return sum / slices.Length;
        }

        return p.Error > 0 ? 1 - StudentT.Upper((x - p.Mean) / p.Error, freedom) : x >= p.Mean ? 1 : 0;
    }
}
