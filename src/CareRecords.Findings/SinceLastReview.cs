using CareRecords.Records;
using NodaTime;

namespace CareRecords.Findings;

/// <summary>What is new since the last review workbook that came in again.</summary>
/// <param name="LastDay">The last care day that the last review held.</param>
/// <param name="NewDays">Care days after it.</param>
/// <param name="NewDaysWritten">Of them, days on which anything was written.</param>
/// <param name="NewEpisodes">The main definition's episodes that begin after it.</param>
/// <param name="FeedGapThen">Feed gaps up to <paramref name="LastDay"/>, as they are worked out today, corrections included.</param>
/// <param name="FeedGapSince">Feed gaps after it.</param>
/// <param name="InhalerGapThen">Inhaler gaps up to it.</param>
/// <param name="InhalerGapSince">Inhaler gaps after it.</param>
/// <param name="Corrections">Cells of the last review that a person changed.</param>
/// <param name="Answers">Questions that have an answer.</param>
public sealed record SinceLastReview(
    LocalDate LastDay, int NewDays, int NewDaysWritten, IReadOnlyList<string> NewEpisodes,
    ShareKept FeedGapThen, ShareKept FeedGapSince, ShareKept InhalerGapThen, ShareKept InhalerGapSince, int Corrections, int Answers)
{
    /// <summary>Null when no earlier review came in.</summary>
    internal static SinceLastReview? Of(ChildRecords records, IReadOnlyList<SessionFinding> sessions, IReadOnlyList<DayFinding> days, IReadOnlyList<EpisodeFinding> episodes)
    {
        if (records.Log.LastReview is not { } review) return null;
        var last = records.Plan.DayOf(UncertainTime.Exactly(review.LastEntry));
        var (then, since) = (sessions.Where(s => s.CareDay <= last).ToList(), sessions.Where(s => s.CareDay > last).ToList());
        ShareKept Feed(IEnumerable<SessionFinding> some) => Shares.Of(some.Select(s => (s.CareDay, s.FeedGap.Verdict)), records.Options);
        ShareKept Inhaler(IEnumerable<SessionFinding> some) => Shares.Of(some.Select(s => (s.CareDay, s.InhalerGap.Verdict)), records.Options);
        return new(
            last, days.Count(d => d.Day > last), days.Count(d => d.Day > last && d.HasRecords), [.. episodes.Where(e => e.Onset > last).Select(e => e.Id)],
            Feed(then), Feed(since), Inhaler(then), Inhaler(since), records.Log.Corrections.Count, records.Log.Questions.Count(q => q.Answer is not null));
    }
}
