using CareRecords.Findings;
using CareRecords.Workbooks.Building;

namespace CareRecords.Workbooks.Sheets;

/// <summary>An episode's course in a sentence: what was written first, what was begun, hospital, and between which days it ended.</summary>
internal static class EpisodeWords
{
    private const int MostSigns = 3;
    private const int MostTeamLines = 2;
    private const int MostOfLine = 110;

    public static string Of(ChildFindings findings, EpisodeFinding episode)
    {
        var course = findings.Illness.Course.Where(e => e.Episode == episode.Id).ToList();
        var signs = course.Where(e => e.Kind == CourseKind.Sign).ToList();
        var parts = new List<string>
        {
            signs.Count == 0 ? "no sign was written" : "first written " + Listed(signs.Take(MostSigns)) + (signs.Count > MostSigns ? $" ({signs.Count - MostSigns} more)" : ""),
            OrNone(course, CourseKind.Medicine, "no antibiotic, steroid or fever medicine begun"),
        };
        if (course.LastOrDefault(e => e.Kind == CourseKind.Oxygen) is { } highest) parts.Add($"highest {highest.What} from {TimeWords.Moment(highest)}");
        if (course.Where(e => e.Kind == CourseKind.Team).ToList() is { Count: > 0 } team)
            parts.Add("lines that name the team, as written: " + string.Join(", ", team.Take(MostTeamLines).Select(e => $"{TimeWords.Day(e.Date)} \u201c{SummarySentences.Clip(e.What, MostOfLine)}\u201d")) + (team.Count > MostTeamLines ? $" ({team.Count - MostTeamLines} more)" : ""));
        parts.Add(OrNone(course, CourseKind.Hospital, "no admission written"));
        return $"{episode.Id}: {string.Join("; ", parts)}. {Recovered(findings.Illness.OfRecord(episode) ?? episode)} {BackToUsual(episode)} All in order: sheet {WorkbookLayout.Sheet.IllnessCourse}.";
    }

    private static string BackToUsual(EpisodeFinding episode) => episode.BackToMaintenanceDays is { } days
        ? $"Sessions and minutes first back to usual {TimeWords.Number(Math.Round(days, 1))} days after the first day."
        : "Sessions and minutes not yet back to usual.";

    private static string OrNone(IEnumerable<CourseEvent> course, CourseKind kind, string none)
    {
        var some = course.Where(e => e.Kind == kind).ToList();
        return some.Count == 0 ? none : Listed(some.Take(MostSigns)) + (some.Count > MostSigns ? $" ({some.Count - MostSigns} more)" : "");
    }

    private static string Listed(IEnumerable<CourseEvent> events) => string.Join(", ", events.Select(e => $"{Short(e.What)} {TimeWords.Day(e.Date)}"));

    private static string Short(string what) => what.Length <= 32 ? what : what[..32].TrimEnd() + "…";

    /// <summary>The days between which the record brackets the recovery.</summary>
    private static string Recovered(EpisodeFinding episode)
    {
        // Days are care days from the first.
        var low = episode.Onset.PlusDays((int)Math.Floor(episode.Recovery.RecordLow));
        return episode.Recovery.RecordHigh is { } high
            ? Math.Floor(high) == Math.Floor(episode.Recovery.RecordLow) ? $"By the record recovered on {TimeWords.Day(low)}."
            : $"By the record recovered between {TimeWords.Day(low)} and {TimeWords.Day(episode.Onset.PlusDays((int)Math.Floor(high)))}."
            : $"By the record not known to have recovered by {TimeWords.Day(low)}.";
    }
}
