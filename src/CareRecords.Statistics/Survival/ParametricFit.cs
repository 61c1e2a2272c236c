namespace CareRecords.Statistics;

/// <summary>A fitted family of survival times: log T = Location + Scale·W.</summary>
public sealed record ParametricFit
{
    private readonly StandardLaw _law;

    // Covariance of location and log scale.
    private readonly double _varLocation;
    private readonly double _covariance;
    private readonly double _varLogScale;

    private ParametricFit(SurvivalFamily family, double location, double scale, (double LL, double LS, double SS) v, double logLikelihood, int count, int? clusters = null)
    {
        (Family, Location, Scale, LogLikelihood, Count, Clusters) = (family, location, scale, logLikelihood, count, clusters);
        (_varLocation, _covariance, _varLogScale) = v;
        _law = StandardLaw.Of(family);
    }

    /// <summary>The family.</summary>
    public SurvivalFamily Family { get; }

    /// <summary>The location of log time (the intercept).</summary>
    public double Location { get; }

    /// <summary>The scale of log time; 1 for the exponential. A Weibull's shape is 1/Scale.</summary>
    public double Scale { get; }

    /// <summary>Standard error of the location.</summary>
    public double LocationError => Math.Sqrt(_varLocation);

    /// <summary>Standard error of log(Scale); 0 for the exponential, whose scale is fixed.</summary>
    public double LogScaleError => Math.Sqrt(_varLogScale);

    /// <summary>The log-likelihood reached.</summary>
    public double LogLikelihood { get; }

    /// <summary>How many observations.</summary>
    public int Count { get; }

    /// <summary>How many clusters the standard errors and intervals respect; null when observations are taken as independent.</summary>
    public int? Clusters { get; }

    /// <summary>Akaike's criterion, smaller is better: 2·parameters − 2·log-likelihood.</summary>
    public double Aic => (Family == SurvivalFamily.Exponential ? 2 : 4) - (2 * LogLikelihood);

    /// <summary>The time by which a share <paramref name="share"/> has had the event, with a delta-method interval made on the log scale.</summary>
    /// <param name="share">Above 0 and below 1; 0.5 for the median.</param>
    /// <param name="level">The confidence level.</param>
    public Estimate Quantile(double share, double level = 0.95)
    {
        if (!(share > 0 && share < 1))
        {
            throw new ArgumentOutOfRangeException(nameof(share), share, "A share lies between 0 and 1, both excluded.");
        }

        var w = Scale * _law.Quantile(share);
        var log = Location + w;
        var half = Critical(level) * Math.Sqrt(_varLocation + (2 * w * _covariance) + (w * w * _varLogScale));
        return new Estimate(log, log - half, log + half, level, Count, "log quantile").OnScale(Math.Exp, $"quantile, {ParametricSurvival.Name(Family)}");
    }

    /// <summary>The median time with its interval.</summary>
    /// <param name="level">The confidence level.</param>
    public Estimate Median(double level = 0.95) => Quantile(0.5, level);

    /// <summary>The chance of a time beyond <paramref name="time"/>, with a delta-method interval made on the scale of W.</summary>
    /// <param name="time">A time above 0.</param>
    /// <param name="level">The confidence level.</param>
    public Estimate Survival(double time, double level = 0.95)
    {
        if (!(time > 0) || double.IsInfinity(time))
        {
            throw new ArgumentOutOfRangeException(nameof(time), time, "A time above 0 is wanted.");
        }

        // dw/dlocation = −1/scale, dw/dlog(scale) = −w.
        var w = (Math.Log(time) - Location) / Scale;
        var half = Critical(level)
            * Math.Sqrt((_varLocation / (Scale * Scale)) + (2 * w * _covariance / Scale) + (w * w * _varLogScale));
        return new Estimate(_law.Upper(w), _law.Upper(w + half), _law.Upper(w - half), level, Count, $"survival, {ParametricSurvival.Name(Family)}");
    }

    internal static ParametricFit FromConcaveForm(SurvivalFamily family, double a, double r, CensoredLikelihood at, int count)
    {
        var (location, scale) = (a / r, 1 / r);
        if (family == SurvivalFamily.Exponential)
        {
            return new(family, location, scale, (-1 / at.AA, 0, 0), at.Value, count);
        }

        // Information in (location, log scale): da = r·dlocation − a·dlog scale, dr = −r·dlog scale; the gradient is zero here.
        var ll = -at.AA * r * r;
        var ls = ((at.AA * a) + (at.AR * r)) * r;
        var ss = -((at.AA * a * a) + (2 * at.AR * a * r) + (at.RR * r * r));
        var determinant = (ll * ss) - (ls * ls);
        return new(family, location, scale, (ss / determinant, -ls / determinant, ll / determinant), at.Value, count);
    }

    /// <summary>The same fit with the covariance of clustered observations: naive·(Σ over clusters of score·scoreᵀ)·naive.</summary>
    /// <param name="scores">Each cluster's sum of the scores in location and log scale.</param>
    internal ParametricFit Robust(IReadOnlyCollection<(double L, double S)> scores)
    {
        var (vLL, vLS, vSS) = (_varLocation, _covariance, _varLogScale);
        var moves = scores.Select(s => (L: (vLL * s.L) + (vLS * s.S), S: (vLS * s.L) + (vSS * s.S))).ToList();
        return new(Family, Location, Scale, (moves.Sum(m => m.L * m.L), moves.Sum(m => m.L * m.S), moves.Sum(m => m.S * m.S)), LogLikelihood, Count, scores.Count);
    }

    private double Critical(double level) => Clusters is { } k ? StudentT.Critical(level, k - 1) * Math.Sqrt(k / (k - 1.0)) : Gaussian.Critical(level);
}
