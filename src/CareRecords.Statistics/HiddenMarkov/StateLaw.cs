using MathNet.Numerics;

namespace CareRecords.Statistics;

/// <summary>How observations are distributed while a hidden state lasts.</summary>
public abstract record StateLaw
{
    private protected StateLaw()
    {
    }

    /// <summary>The mean of observations in this state.</summary>
    public abstract double Centre { get; }

    /// <summary>The log of the probability (density) of an observation.</summary>
    /// <param name="observation">A finite observation.</param>
    public abstract double LogDensity(double observation);

    /// <summary>How many parameters a fit estimates.</summary>
    internal abstract int Parameters { get; }

    /// <summary>The likeliest law of its kind for weighted observations.</summary>
    internal abstract StateLaw Refit(double[] observations, double[] weights);

    /// <summary>The parameters on an unbounded scale.</summary>
    internal abstract double[] Pack();

    internal abstract StateLaw Unpack(ReadOnlySpan<double> packed);

    /// <summary>Derivatives of <see cref="LogDensity"/> by the packed parameters.</summary>
    internal abstract double[] Score(double observation);
}

/// <summary>Counts from a Poisson distribution.</summary>
/// <param name="Mean">Its mean, above 0.</param>
public sealed record PoissonState(double Mean) : StateLaw
{
    // A state that meets only zeros keeps a mean that has a logarithm.
    private const double SmallestMean = 1e-8;

    /// <inheritdoc/>
    public override double Centre => Mean;

    internal override int Parameters => 1;

    /// <inheritdoc/>
    public override double LogDensity(double observation) =>
        (observation * Math.Log(Mean)) - Mean - SpecialFunctions.GammaLn(observation + 1);

    internal override StateLaw Refit(double[] observations, double[] weights) =>
        new PoissonState(Math.Max(SmallestMean, observations.Zip(weights, (x, w) => x * w).Sum() / Math.Max(1e-300, weights.Sum())));

    internal override double[] Pack() => [Math.Log(Mean)];

    internal override StateLaw Unpack(ReadOnlySpan<double> packed) => new PoissonState(Math.Max(SmallestMean, Math.Exp(packed[0])));

    internal override double[] Score(double observation) => [observation - Mean];
}

/// <summary>Values from a normal distribution.</summary>
/// <param name="Mean">Its mean.</param>
/// <param name="StandardDeviation">Its standard deviation, above 0.</param>
/// <param name="SmallestDeviation">
/// The least deviation a fit may give, above 0: without one a state can close in on a single value and the likelihood is
/// unbounded. A good choice is the rounding of the record, for example half a point.
/// </param>
public sealed record GaussianState(double Mean, double StandardDeviation, double SmallestDeviation) : StateLaw
{
    /// <inheritdoc/>
    public override double Centre => Mean;

    internal override int Parameters => 2;

    /// <inheritdoc/>
    public override double LogDensity(double observation)
    {
        var z = (observation - Mean) / StandardDeviation;
        return (-0.5 * z * z) - Math.Log(StandardDeviation) - (0.5 * Math.Log(2 * Math.PI));
    }

    internal override StateLaw Refit(double[] observations, double[] weights)
    {
        var all = Math.Max(1e-300, weights.Sum());
        var mean = observations.Zip(weights, (x, w) => x * w).Sum() / all;
        var variance = observations.Zip(weights, (x, w) => w * (x - mean) * (x - mean)).Sum() / all;
        return this with { Mean = mean, StandardDeviation = Math.Max(SmallestDeviation, Math.Sqrt(variance)) };
    }

    internal override double[] Pack() => [Mean, Math.Log(StandardDeviation)];

    internal override StateLaw Unpack(ReadOnlySpan<double> packed) =>
        this with { Mean = packed[0], StandardDeviation = Math.Max(SmallestDeviation, Math.Exp(packed[1])) };

    internal override double[] Score(double observation)
    {
        var z = (observation - Mean) / StandardDeviation;
        return [z / StandardDeviation, (z * z) - 1];
    }
}
