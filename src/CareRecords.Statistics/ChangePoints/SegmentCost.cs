namespace CareRecords.Statistics;

/// <summary>
/// What it costs to describe a stretch of a series by one level: minus twice the log-likelihood at its best level, without
/// the part that no segmentation changes.
/// </summary>
public abstract class SegmentCost
{
    private SegmentCost(int count) => Count = count;

    /// <summary>How many points the series has.</summary>
    public int Count { get; }

    /// <summary>
    /// Counts from a Poisson distribution with one rate a stretch: 2(s − s·log(s/m)), s the sum and m the length (or
    /// exposure) of the stretch; 0 when s is 0.
    /// </summary>
    /// <param name="counts">Counts, none negative.</param>
    /// <param name="exposures">The exposure of each count, positive; null for 1 each.</param>
    public static SegmentCost Poisson(IReadOnlyList<double> counts, IReadOnlyList<double>? exposures = null) =>
        new PoissonCost(NotNegative(counts, nameof(counts)), exposures is null ? null : Require.Finite([.. exposures]));

    /// <summary>Values with a normal error of known variance and one mean a stretch: Σ(x − mean)²/variance.</summary>
    /// <param name="values">Finite values.</param>
    /// <param name="variance">The error variance, for example <see cref="NoiseVariance"/>; 1 gives the residual sum of squares.</param>
    public static SegmentCost Gaussian(IReadOnlyList<double> values, double variance = 1) =>
        variance > 0 ? new GaussianCost(Require.Finite([.. values]), variance) : throw new ArgumentOutOfRangeException(nameof(variance), variance, "A variance is positive.");

    /// <summary>Successes of trials with one chance a stretch.</summary>
    /// <param name="successes">Successes.</param>
    /// <param name="trials">Trials; 0 is allowed and says nothing.</param>
    public static SegmentCost Binomial(IReadOnlyList<double> successes, IReadOnlyList<double> trials)
    {
        var (x, n) = Require.Pairs([.. successes], [.. trials]);
        return x.Zip(n).All(p => p.First >= 0 && p.First <= p.Second) ? new BinomialCost(x, n) : throw new ArgumentException("Successes lie between 0 and the trials.", nameof(successes));
    }

    /// <summary>Any other cost.</summary>
    /// <param name="count">How many points.</param>
    /// <param name="cost">The cost of the points from the first index up to, not including, the second; finite.</param>
    public static SegmentCost Custom(int count, Func<int, int, double> cost) => new CustomCost(count, cost);

    /// <summary>The cost of the points from <paramref name="first"/> up to, not including, <paramref name="end"/>.</summary>
    /// <param name="first">Index from 0.</param>
    /// <param name="end">Index after the last.</param>
    public abstract double Of(int first, int end);

    /// <summary>The level of a stretch: its rate, mean or proportion; null where it has none.</summary>
    /// <param name="first">Index from 0.</param>
    /// <param name="end">Index after the last.</param>
    public virtual double? Level(int first, int end) => null;

    private static double[] NotNegative(IReadOnlyList<double> values, string name)
    {
        var copy = Require.Finite([.. values]);
        return Array.TrueForAll(copy, v => v >= 0) ? copy : throw new ArgumentException("A count is not negative.", name);
    }

    private static double[] Running(IEnumerable<double> values)
    {
        List<double> sums = [0];
        foreach (var value in values)
        {
            sums.Add(sums[^1] + value);
        }

        return [.. sums];
    }

    private sealed class PoissonCost : SegmentCost
    {
        private readonly double[] _sums;
        private readonly double[] _exposures;

        public PoissonCost(double[] counts, double[]? exposures)
            : base(counts.Length)
        {
            if (exposures is not null && (exposures.Length != counts.Length || Array.Exists(exposures, e => e <= 0)))
            {
                throw new ArgumentException("Each count has an exposure above 0.", nameof(exposures));
            }

            (_sums, _exposures) = (Running(counts), Running(exposures ?? [.. counts.Select(_ => 1.0)]));
        }

        public override double Of(int first, int end)
        {
            var (s, m) = (_sums[end] - _sums[first], _exposures[end] - _exposures[first]);
            return s <= 0 ? 0 : 2 * (s - (s * Math.Log(s / m)));
        }

        public override double? Level(int first, int end) => (_sums[end] - _sums[first]) / (_exposures[end] - _exposures[first]);
    }

    private sealed class GaussianCost : SegmentCost
    {
        private readonly double _centre;
        private readonly double _variance;
        private readonly double[] _sums;
        private readonly double[] _squares;

        public GaussianCost(double[] values, double variance)
            : base(values.Length)
        {
            // About the mean, so that sums of squares do not swallow the digits.
            _centre = values.Length == 0 ? 0 : values.Average();
            _variance = variance;
            (_sums, _squares) = (Running(values.Select(v => v - _centre)), Running(values.Select(v => (v - _centre) * (v - _centre))));
        }

        public override double Of(int first, int end)
        {
            var s = _sums[end] - _sums[first];
            return Math.Max(0, _squares[end] - _squares[first] - (s * s / (end - first))) / _variance;
        }

        public override double? Level(int first, int end) => _centre + ((_sums[end] - _sums[first]) / (end - first));
    }

    private sealed class BinomialCost(double[] successes, double[] trials) : SegmentCost(successes.Length)
    {
        private readonly double[] _successes = Running(successes);
        private readonly double[] _trials = Running(trials);

        public override double Of(int first, int end)
        {
            var (x, n) = (_successes[end] - _successes[first], _trials[end] - _trials[first]);
            return x <= 0 || x >= n ? 0 : -2 * ((x * Math.Log(x / n)) + ((n - x) * Math.Log(1 - (x / n))));
        }

        public override double? Level(int first, int end) => _trials[end] > _trials[first] ? (_successes[end] - _successes[first]) / (_trials[end] - _trials[first]) : null;
    }

    private sealed class CustomCost(int count, Func<int, int, double> cost) : SegmentCost(count)
    {
        public override double Of(int first, int end) => cost(first, end);
    }
}
