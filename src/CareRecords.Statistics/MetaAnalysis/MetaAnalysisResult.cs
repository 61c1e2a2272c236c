namespace CareRecords.Statistics;

/// <summary>A pooled effect and how much studies differ.</summary>
public sealed class MetaAnalysisResult
{
    private readonly StudyEffect[] _studies;
    private readonly double _mean;
    private readonly double _critical;
    private readonly bool _hartungKnapp;

    internal MetaAnalysisResult(StudyEffect[] studies, double mean, double error, double tau2, HeterogeneityMethod method, bool hartungKnapp, double level)
    {
        (_studies, _mean, StandardError, TauSquared, Method, _hartungKnapp, Level) = (studies, mean, error, tau2, method, hartungKnapp, level);
        _critical = hartungKnapp ? StudentT.Critical(level, studies.Length - 1) : Gaussian.Critical(level);
        var common = WeightedMean.Of(studies, 0);
        Q = common.Q;

        // The "typical" sampling variance of Higgins and Thompson (2002).
        var squares = studies.Sum(s => 1 / (s.Variance * s.Variance));
        TypicalVariance = (studies.Length - 1) * common.Weight / ((common.Weight * common.Weight) - squares);
    }

    /// <summary>The confidence level of the intervals.</summary>
    public double Level { get; }

    /// <summary>How τ² was estimated.</summary>
    public HeterogeneityMethod Method { get; }

    /// <summary>How many studies.</summary>
    public int Count => _studies.Length;

    /// <summary>The pooled effect with its interval.</summary>
    public Estimate Mean => new(
        _mean, _mean - (_critical * StandardError), _mean + (_critical * StandardError), Level, Count, _hartungKnapp ? "random effects, Hartung-Knapp" : "inverse-variance mean");

    /// <summary>The standard error of the pooled effect.</summary>
    public double StandardError { get; }

    /// <summary>The test that the pooled effect is 0: t on k − 1 degrees of freedom (Hartung-Knapp) or z.</summary>
    public TestResult Test
    {
        get
        {
            // Equal effects make Hartung and Knapp's error 0: no test of a mean of 0 with them, a certain one otherwise.
            var t = StandardError > 0 ? _mean / StandardError : _mean == 0 ? 0 : Math.CopySign(double.PositiveInfinity, _mean);
            return new(t, _hartungKnapp ? StudentT.TwoSided(t, Count - 1) : Gaussian.TwoSided(t), Count, _hartungKnapp ? "t test, Hartung-Knapp" : "z test");
        }
    }

    /// <summary>The variance of true effects between studies.</summary>
    public double TauSquared { get; }

    /// <summary>Cochran's Q about the common-effect mean.</summary>
    public double Q { get; }

    /// <summary>P of Q on k − 1 degrees of freedom, were all true effects equal.</summary>
    public double QPValue => ChiSquare.Upper(Q, Count - 1);

    /// <summary>
    /// The share of variation between studies beyond sampling, 0 to 100 %: τ²/(τ² + typical variance); of a common-effect
    /// analysis (Q − (k−1))/Q.
    /// </summary>
    public double ISquaredPercent => Method == HeterogeneityMethod.CommonEffect ? Q > 0 ? 100 * Math.Max(0, (Q - (Count - 1)) / Q) : 0 : Percent(TauSquared);

    /// <summary>Total over sampling variance: (τ² + typical variance)/typical variance, or Q/(k−1) for a common effect.</summary>
    public double HSquared => Method == HeterogeneityMethod.CommonEffect ? Q / (Count - 1) : (TauSquared + TypicalVariance) / TypicalVariance;

    /// <summary>Where the true effect of a further study would lie: mean ± critical·√(error² + τ²).</summary>
    public Interval PredictionInterval
    {
        get
        {
            var half = _critical * Math.Sqrt((StandardError * StandardError) + TauSquared);
            return new(_mean - half, _mean + half, Level);
        }
    }

    /// <summary>The Q-profile interval of τ²: the values at which Q lies at its chi-square quantiles, cut at 0.</summary>
    public Interval TauSquaredInterval => new(
        Heterogeneity.WhereQIs(_studies, ChiSquare.Quantile((1 + Level) / 2, Count - 1)),
        Heterogeneity.WhereQIs(_studies, ChiSquare.Quantile((1 - Level) / 2, Count - 1)),
        Level);

    /// <summary>The interval of I², from that of τ², 0 to 100 %.</summary>
    public Interval ISquaredPercentInterval => new(Percent(TauSquaredInterval.Low), Percent(TauSquaredInterval.High), Level);

    /// <summary>The standard error of τ² by restricted maximum likelihood.</summary>
    public double TauSquaredError => Math.Sqrt(2 / Heterogeneity.RestrictedInformation(_studies, TauSquared));

    /// <summary>The restricted log-likelihood at the estimate.</summary>
    public double RestrictedLogLikelihood => Heterogeneity.RestrictedLogLikelihood(_studies, TauSquared);

    private double TypicalVariance { get; }

    private double Percent(double tau2) => 100 * tau2 / (tau2 + TypicalVariance);
}
