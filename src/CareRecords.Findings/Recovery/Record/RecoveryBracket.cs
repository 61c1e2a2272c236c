using NodaTime;

namespace CareRecords.Findings;

/// <summary>
/// Recovery as the record brackets it: the last moment that shows illness, and the first after it that shows the child in
/// band on usual oxygen, from which 48 hours pass without another that shows illness. Where the record (or the next
/// episode) ends the look before those 48 hours, recovery is not established: censored.
/// </summary>
/// <param name="LastIll">Last moment known not recovered.</param>
/// <param name="FirstWell">First moment known recovered; null when censored.</param>
internal readonly record struct RecoveryBracket(Instant LastIll, Instant? FirstWell)
{
    private static readonly Duration Held = Duration.FromHours(48);

    /// <summary>
    /// The bracket of an episode whose last day with evidence ends at <paramref name="lastDayEnds"/>, looking no further
    /// than <paramref name="until"/> (the next onset).
    /// </summary>
    public static RecoveryBracket Of(IReadOnlyList<CourseMoment> moments, Instant onset, Instant lastDayEnds, Instant until)
    {
        var look = moments.SkipWhile(m => m.At < onset).TakeWhile(m => m.At < until).ToList();
        var from = look.FindLastIndex(m => m.IsIll && m.At < lastDayEnds);
        var lastIll = from < 0 ? onset : look[from].At;
        Instant? firstWell = null;
        foreach (var moment in look.Skip(from + 1))
        {
            if (moment.IsIll)
            {
                (lastIll, firstWell) = (moment.At, null);
                continue;
            }

            firstWell ??= moment.At;
            if (moment.At >= firstWell + Held) return new(lastIll, firstWell);
        }

        return new(lastIll, null);
    }
}
