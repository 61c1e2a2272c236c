using CareRecords.Findings;
using CareRecords.Records;
using CareRecords.Workbooks.Charts.Paper;

namespace CareRecords.Workbooks.Charts.Pictures;

/// <summary>One strip a care day against the clock: sessions, feeds and inhalers where they lay, and the feed gaps that were short or cannot be told.</summary>
internal static class DayStripsChart
{
    private const int MostDays = 31;
    private const double ClockRow = 16;

    /// <summary>Pages of at most 31 days, as even in length as they can be; empty when there is no day.</summary>
    public static IReadOnlyList<ChartPage> Pages(CareLog log, ChildFindings findings)
    {
        var rows = DayStripRow.Of(log, findings);
        if (rows.Count == 0) return [];
        var pages = (rows.Count + MostDays - 1) / MostDays;
        var perPage = (rows.Count + pages - 1) / pages;
        var result = new List<ChartPage>(pages);
        for (var first = 0; first < rows.Count; first += perPage)
        {
            var part = new List<DayStripRow>(perPage);
            for (var i = first; i < Math.Min(first + perPage, rows.Count); i++) part.Add(rows[i]);
            result.Add(Page(part, log, findings, FormattableString.Invariant($"days-{result.Count + 1}")));
        }
        return result;
    }

    private static ChartPage Page(List<DayStripRow> rows, CareLog log, ChildFindings findings, string name)
    {
        var (sessions, shortGaps, unknown, inhalers, withRecords) = (0, 0, 0, 0, 0);
        foreach (var row in rows)
        {
            sessions += row.Sessions.Count;
            if (row.Day.HasRecords) withRecords++;
            foreach (var session in row.Sessions)
            {
                if (session.FeedGap.Verdict == GapVerdict.Short) shortGaps++;
                if (session.FeedGap.Verdict == GapVerdict.Unknown) unknown++;
                if (session.InhalerGap.Verdict is GapVerdict.Short or GapVerdict.Early or GapVerdict.None) inhalers++;
            }
        }
        var days = ChartWords.Days(rows[0].Day.Day, rows[^1].Day.Day);
        var counts = FormattableString.Invariant(
            $"{ChartWords.Count(sessions, "session")} on {ChartWords.Count(withRecords, "day")} with records; feed gap short before {shortGaps}, cannot tell before {unknown}; inhaler late, early or not written for {inhalers}");
        var rowHeight = rows.Count switch { > 27 => 11.8, > 20 => 13.5, _ => 17.0 };
        var drawing = new DayStripDrawing(log, findings, rowHeight);
        return new ChartPage
        {
            Name = name,
            Title = $"Day by day, {days}: {counts}",
            AltText = $"Each care day from {days} as a strip of clock time with its sessions, feeds and inhalers: {counts}. "
                + AboutDays(rows),
            SmallPrint = $"A care day starts at {ChartWords.Clock(findings.Span.DayStarts)}. Clock time in {findings.Span.Zone}. At the right: sessions done of planned, then what else was written.",
            Key = drawing.Key,
            BodyHeight = ClockRow + rows.Count * rowHeight + 4,
            Body = (ink, body) => drawing.Draw(ink, body, rows, ClockRow),
        };
    }

    private static string AboutDays(List<DayStripRow> rows)
    {
        var (ill, missing) = (0, 0);
        foreach (var row in rows)
        {
            if (row.Day.Episode is not null) ill++;
            if (!row.Day.HasRecords) missing++;
        }
        return $"{ChartWords.Count(ill, "illness day")} shaded; nothing was written on {ChartWords.Count(missing, "day")}.";
    }
}
