using NodaTime;

namespace CareRecords.Findings;

/// <summary>
/// Recovery as the record brackets it: the last moment that shows illness, and the first after it that shows the child in
/// band on usual oxygen, from which 48 hours pass without another that shows illness. Where the record (or the next
/// episode) ends the look before those 48 hours, recovery is not established: censored. A moment may be an interval
/// (a flow written for the whole day): illness is then known at its beginning only, and being well at its end only, and nothing
/// within an interval of illness shows the child well.
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
    /// <param name="moments">Moments in order of their beginnings.</param>
    /// <param name="onset">When the episode begins.</param>
    /// <param name="lastDayEnds">When its last day with evidence ends.</param>
    /// <param name="until">How far to look.</param>
    public static RecoveryBracket Of(IReadOnlyList<CourseMoment> moments, Instant onset, Instant lastDayEnds, Instant until)
    {
        var look = moments.Where(m => m.Latest >= onset && (m.IsIll ? m.Earliest < until : m.Latest <= until)).ToList();
        var (lastIll, illUntil) = (onset, onset);
        void Ill(CourseMoment moment) => (lastIll, illUntil) = (Instant.Max(lastIll, moment.Earliest), Instant.Max(illUntil, moment.Latest));
        var from = look.FindLastIndex(m => m.IsIll && m.Earliest < lastDayEnds);
        foreach (var moment in look.Take(from + 1).Where(m => m.IsIll)) Ill(moment);
        Instant? firstWell = null;
        foreach (var moment in look.Skip(from + 1))
        {
            if (moment.IsIll)
            {
                Ill(moment);
                firstWell = null;
                continue;
            }

            if (moment.Earliest < illUntil) continue;
            firstWell ??= moment.Latest;
            if (moment.Latest >= firstWell + Held) return new(lastIll, firstWell);
        }

        return new(lastIll, null);
    }
}
