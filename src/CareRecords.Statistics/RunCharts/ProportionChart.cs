namespace CareRecords.Statistics;

/// <summary>One sample of a p-chart.</summary>
/// <param name="Proportion">Its proportion.</param>
/// <param name="Low">Its lower control limit, not below 0.</param>
/// <param name="High">Its upper control limit, not above 1.</param>
public sealed record ControlPoint(double Proportion, double Low, double High)
{
    /// <summary>The proportion lies outside the limits.</summary>
    public bool Outside => Proportion < Low || Proportion > High;
}

/// <summary>A p-chart.</summary>
/// <param name="Successes">All successes together.</param>
/// <param name="Trials">All trials together.</param>
/// <param name="Points">One point for each sample, in order.</param>
public sealed record ControlChart(int Successes, int Trials, IReadOnlyList<ControlPoint> Points)
{
    /// <summary>The centre line: the proportion of all samples together.</summary>
    public double Centre => (double)Successes / Trials;
}

/// <summary>
/// Shewhart's p-chart: control limits p̄ ± k·sqrt(p̄(1−p̄)/nᵢ), cut to 0 and 1, with nᵢ of each sample.
/// Source: Montgomery DC, Introduction to Statistical Quality Control, Wiley. Assumes independent trials with one chance;
/// day-to-day variation beyond that makes the limits too narrow. Smallest data: two samples of at least one trial.
/// </summary>
public static class ProportionChart
{
    /// <summary>The chart of samples given as successes and trials, in time order.</summary>
    /// <param name="samples">Successes of trials; a sample without trials is refused: leave it out.</param>
    /// <param name="sigmas">How many standard deviations out the limits lie.</param>
    public static Outcome<ControlChart> Of(IReadOnlyList<(int Successes, int Trials)> samples, double sigmas = 3)
    {
        ArgumentNullException.ThrowIfNull(samples);
        if (!(sigmas > 0))
        {
            throw new ArgumentOutOfRangeException(nameof(sigmas), sigmas, "Limits lie a positive number of standard deviations out.");
        }

        foreach (var (successes, trials) in samples)
        {
            Require.Counts(successes, trials);
            ArgumentOutOfRangeException.ThrowIfZero(trials);
        }

        if (samples.Count < 2)
        {
            return new TooLittleData("p-chart", samples.Count, 2, "one sample is no chart");
        }

        var (total, size) = (samples.Sum(s => s.Successes), samples.Sum(s => s.Trials));
        var (low, high) = (Limits(total, size, sigmas).Low, Limits(total, size, sigmas).High);
        return new ControlChart(total, size, [.. samples.Select(s => new ControlPoint((double)s.Successes / s.Trials, low(s.Trials), high(s.Trials)))]);
    }

    private static (Func<int, double> Low, Func<int, double> High) Limits(int total, int size, double sigmas)
    {
        var centre = (double)total / size;
        double Half(int trials) => sigmas * Math.Sqrt(centre * (1 - centre) / trials);
        return (n => Math.Max(0, centre - Half(n)), n => Math.Min(1, centre + Half(n)));
    }
}
