using CareRecords.Findings;
using NodaTime;

namespace CareRecords.Workbooks.Charts.Pictures;

/// <summary>Cuts a long span into parts of a length that a picture can show, as even as they can be.</summary>
internal static class SpanParts
{
    private const int MostDays = 100;

    /// <summary>The findings themselves when the span is short; else one part for each stretch, with its own days and sessions.</summary>
    public static IReadOnlyList<ChildFindings> Of(ChildFindings findings)
    {
        var count = findings.Days.Count;
        var parts = (count + MostDays - 1) / MostDays;
        if (parts <= 1) return [findings];
        var perPart = (count + parts - 1) / parts;
        var result = new List<ChildFindings>(parts);
        for (var first = 0; first < count; first += perPart)
            result.Add(Part(findings, findings.Days[first].Day, findings.Days[Math.Min(first + perPart, count) - 1].Day));
        return result;
    }

    /// <summary>A chart's name in a part: numbered only when there are several.</summary>
    public static string Name(string chart, int part, int parts) =>
        parts == 1 ? chart : FormattableString.Invariant($"{chart}-{part + 1}");

    private static ChildFindings Part(ChildFindings findings, LocalDate from, LocalDate to)
    {
        var sessions = new List<SessionFinding>();
        foreach (var session in findings.Sessions)
        {
            if (session.CareDay >= from && session.CareDay <= to) sessions.Add(session);
        }
        var days = new List<DayFinding>();
        foreach (var day in findings.Days)
        {
            if (day.Day >= from && day.Day <= to) days.Add(day);
        }
        return findings with { Span = findings.Span with { From = from, To = to }, Sessions = sessions, Days = days };
    }
}
