namespace CareRecords.Statistics;

/// <summary>
/// Where the log odds of a further cluster would lie by a random-intercept logistic regression without covariates, when the deviation σ between clusters is
/// not taken as known: σ runs through its confidence distribution, as in <see cref="FurtherEffect"/>, here that of the signed root of the profile likelihood,
/// P(σ ≤ s) = Φ(±√(2(ℓ(σ̂) − ℓ(s)))), minus below σ̂. Maximum likelihood makes σ² between k clusters too small by about (k − 1)/k: σ and the error of
/// the intercept widen by √(k/(k − 1)); t on k − 1.
/// Source: Nagashima K, Noma H, Furukawa TA (2019), Stat Methods Med Res 28:1689-1702, for letting the deviation run; Xie M, Singh K (2013), Int Stat Rev
/// 81:3-39, for confidence distributions and their likelihood form. Assumes normal intercepts. Smallest data: those of <see cref="RandomInterceptLogistic"/>.
/// </summary>
public static class FurtherCluster
{
    private const int Points = 100;
    private const int Grid = 24;
    private const double Furthest = 40;

    /// <summary>The interval, as log odds.</summary>
    /// <param name="rows">The trials.</param>
    /// <param name="fit">Their fit, without covariates.</param>
    /// <param name="level">The level.</param>
    public static Interval Of(IReadOnlyCollection<ClusterRow> rows, RandomInterceptFit fit, double level = 0.95)
    {
        ArgumentNullException.ThrowIfNull(rows);
        ArgumentNullException.ThrowIfNull(fit);
        Require.Level(level);
        if (fit.Coefficients.Count != 1 || rows.Any(r => r.Covariates.Count > 0))
        {
            throw new ArgumentException("A further cluster is told of without covariates only.", nameof(fit));
        }

        var widened = Math.Sqrt(fit.Clusters / (fit.Clusters - 1.0));
        var profile = Profile(new MarginalLikelihood(rows, fit.Clusters > 100 ? 7 : 15), fit);
        return PredictiveMixture.Between(
            [.. Enumerable.Range(0, Points).Select(j => Where(profile, Gaussian.Quantile((j + 0.5) / Points))).Select(p => new PredictivePoint(p.Intercept, p.Error * widened, p.Sigma * widened))],
            fit.Clusters - 1, level);
    }

    /// <summary>A point of the profile: the best intercept at a deviation, its error there, and the deviation's normal deviate.</summary>
    private readonly record struct Profiled(double Sigma, double Intercept, double Error, double LogLikelihood, double Deviate);

    /// <summary>The profile from σ = 0 to where the deviate passes the last of the points wanted.</summary>
    private static List<Profiled> Profile(MarginalLikelihood likelihood, RandomInterceptFit fit)
    {
        var last = Gaussian.Quantile(1 - (0.5 / Points));
        var best = At(likelihood, fit.Deviation, fit.Coefficients[0]);
        var top = Math.Max(0.05, 1.5 * fit.Deviation);
        while (top < Furthest && Deviate(At(likelihood, top, best.Intercept), best).Deviate < last) top *= 1.5;
        var (profile, intercept) = (new List<Profiled>(), best.Intercept);
        foreach (var share in Enumerable.Range(0, Grid + 1).Select(i => (double)i / Grid))
        {
            var point = Deviate(At(likelihood, top * share, intercept), best);
            profile.Add(point);
            intercept = point.Intercept;
        }

        return profile;
    }

    private static Profiled Deviate(Profiled point, Profiled best) =>
        point with { Deviate = Math.CopySign(Math.Sqrt(2 * Math.Max(0, best.LogLikelihood - point.LogLikelihood)), point.Sigma - best.Sigma) };

    /// <summary>Newton's steps in the intercept at a given deviation, with slope and curvature from differences.</summary>
    private static Profiled At(MarginalLikelihood likelihood, double sigma, double near)
    {
        const double h = 1e-3;
        var (at, here, bend) = (near, 0.0, 0.0);
        for (var step = 0; step < 20; step++)
        {
            here = likelihood.At([at, sigma]);
            var (up, down) = (likelihood.At([at + h, sigma]), likelihood.At([at - h, sigma]));
            bend = Math.Min((up - (2 * here) + down) / (h * h), -1e-6);
            var move = Math.Clamp(-(up - down) / (2 * h) / bend, -1, 1);
            if (Math.Abs(move) < 1e-5) break;
            at += move;
        }

        return new(sigma, at, Math.Sqrt(-1 / bend), here, 0);
    }

    /// <summary>The profile where its deviate passes a value, straight between its points; σ = 0 where it never was so low.</summary>
    private static Profiled Where(List<Profiled> profile, double deviate)
    {
        var after = profile.FindIndex(p => p.Deviate >= deviate);
        if (after <= 0) return after == 0 ? profile[0] : profile[^1];
        var (a, b) = (profile[after - 1], profile[after]);
        var share = (deviate - a.Deviate) / (b.Deviate - a.Deviate);
        double Mixed(double from, double to) => from + (share * (to - from));
        return new(Mixed(a.Sigma, b.Sigma), Mixed(a.Intercept, b.Intercept), Mixed(a.Error, b.Error), 0, deviate);
    }
}
