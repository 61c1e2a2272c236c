namespace CareRecords.Statistics;

/// <summary>Mass of the Turnbull estimate, somewhere in (Left, Right] (at the time itself when the ends are equal).</summary>
/// <param name="Left">The left end.</param>
/// <param name="Right">The right end; infinity for mass beyond the last look.</param>
/// <param name="Mass">The probability, above 0.</param>
public sealed record TurnbullMass(double Left, double Right, double Mass);

/// <summary>Bounds of a probability that the data do not pin down further; no confidence interval.</summary>
/// <param name="Low">The smallest value that the estimate allows.</param>
/// <param name="High">The largest.</param>
public readonly record struct ProbabilityBounds(double Low, double High);

/// <summary>The Turnbull estimate.</summary>
/// <param name="Masses">The masses in order of time.</param>
/// <param name="LogLikelihood">The log-likelihood reached.</param>
/// <param name="KktExcess">Largest derivative of the log-likelihood less the number of observations; 0 at the maximum.</param>
/// <param name="Uniqueness">Tells whether the maximum is unique; asked only when somebody wants to know, for it costs more than the estimate.</param>
/// <param name="Count">How many observations.</param>
public sealed record TurnbullCurve(IReadOnlyList<TurnbullMass> Masses, double LogLikelihood, double KktExcess, Lazy<bool> Uniqueness, int Count)
{
    // Masses that should add up to a share exactly miss it by rounding.
    private const double Tie = 1e-10;

    /// <summary>True when the maximum is known to be unique (Gentleman and Geyer's sufficient condition).</summary>
    public bool IsUnique => Uniqueness.Value;

    /// <summary>The chance of a time beyond <paramref name="time"/>: bounds, equal outside the innermost intervals.</summary>
    /// <param name="time">The time.</param>
    public ProbabilityBounds SurvivalAt(double time)
    {
        var low = Masses.Where(m => Beyond(m, time)).Sum(m => m.Mass);
        var high = Masses.Where(m => m.Right > time).Sum(m => m.Mass);
        return new(Math.Min(1, low), Math.Min(1, high));
    }

    /// <summary>
    /// Where the share <paramref name="share"/> of times has been reached: the innermost interval in which the distribution
    /// passes it (from the one that reaches it exactly to the next one, when it does). The right end is infinite when the
    /// share lies beyond the last look.
    /// </summary>
    /// <param name="share">Above 0 and below 1.</param>
    public CensoredInterval Quantile(double share)
    {
        if (!(share > 0 && share < 1))
        {
            throw new ArgumentOutOfRangeException(nameof(share), share, "A share lies between 0 and 1, both excluded.");
        }

        var reached = 0.0;
        for (var i = 0; i < Masses.Count; i++)
        {
            reached += Masses[i].Mass;
            if (reached >= share - Tie)
            {
                var exactly = reached <= share + Tie && i + 1 < Masses.Count;
                return new(Masses[i].Left, exactly ? Masses[i + 1].Right : Masses[i].Right);
            }
        }

        return new(Masses[^1].Left, Masses[^1].Right);
    }

    /// <summary>Where the median lies.</summary>
    public CensoredInterval Median => Quantile(0.5);

    // Mass on (Left, Right] lies wholly beyond t when t <= Left; mass exactly at a time only when t is before it.
    private static bool Beyond(TurnbullMass m, double time) => m.Left == m.Right ? m.Left > time : m.Left >= time;
}
