using CareRecords.Findings;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Workbooks.Charts.Pictures;

/// <summary>A feed's stretch on one care day, hours from the day's start (0 to 24).</summary>
/// <param name="From">From.</param>
/// <param name="To">To.</param>
/// <param name="BothEndsWritten">False: drawn over the usual feed minutes, and hollow.</param>
internal readonly record struct FeedStretch(double From, double To, bool BothEndsWritten);

/// <summary>What one care day's strip holds; times are hours of local wall-clock time from the day's start.</summary>
internal sealed class DayStripRow(DayFinding day)
{
    public DayFinding Day { get; } = day;
    public List<SessionFinding> Sessions { get; } = [];
    public List<FeedStretch> Feeds { get; } = [];
    public List<(double At, Dose Dose)> Doses { get; } = [];
    public List<(double At, OmittedSession Session)> Omitted { get; } = [];

    /// <summary>Sessions whose gap could not be marked in the picture for want of room.</summary>
    public int Unmarked { get; set; }

    /// <summary>Sorts a log's sessions, feeds, doses and omitted sessions into the care days of the findings.</summary>
    public static IReadOnlyList<DayStripRow> Of(CareLog log, ChildFindings findings)
    {
        var rows = new DayStripRow[findings.Days.Count];
        for (var i = 0; i < rows.Length; i++) rows[i] = new DayStripRow(findings.Days[i]);
        var sorter = new Sorter(rows, findings.Span.From, findings.Span.DayStarts);
        foreach (var session in findings.Sessions) sorter.RowAt(sorter.Hours(session.Start))?.Sessions.Add(session);
        foreach (var omitted in log.Omitted)
        {
            var hours = sorter.Hours(omitted.When.Stated);
            sorter.RowAt(hours)?.Omitted.Add((hours % 24, omitted));
        }
        foreach (var entry in log.Entries)
        {
            if (entry is Feed feed) sorter.Add(feed, log.Plan, findings.Span.DayStarts);
            if (entry is Dose dose)
            {
                var hours = sorter.Hours(dose.When.Stated);
                sorter.RowAt(hours)?.Doses.Add((hours % 24, dose));
            }
        }
        return rows;
    }

    private sealed class Sorter(DayStripRow[] rows, LocalDate first, LocalTime dayStarts)
    {
        private const double UsualFeedMinutes = 60;
        private const double LongestFeedHours = 24;

        public double Hours(LocalDateTime at) =>
            Period.DaysBetween(first, at.Date) * 24.0 + (double)(at.TimeOfDay.NanosecondOfDay - dayStarts.NanosecondOfDay) / NodaConstants.NanosecondsPerHour;

        public DayStripRow? RowAt(double hours) =>
            hours >= 0 && hours < rows.Length * 24.0 ? rows[(int)(hours / 24)] : null;

        public void Add(Feed feed, CarePlan plan, LocalTime starts)
        {
            var day = CareDay.Of(feed.When.Stated, starts);
            var usual = (plan.NumberFor(PlanItem.UsualFeedMinutes, day) ?? UsualFeedMinutes) / 60;
            var from = feed.Start is { } start ? Hours(start.Stated) : Hours(feed.When.Stated) - usual;
            var to = feed.End is { } end ? Hours(end.Stated) : from + usual;
            var written = feed is { Start: not null, End: not null };
            to = Math.Clamp(to, from, from + LongestFeedHours);
            for (var row = (int)Math.Floor(from / 24); row <= (int)Math.Floor(to / 24); row++)
            {
                if (row < 0 || row >= rows.Length) continue;
                var (left, right) = (Math.Max(from - row * 24, 0), Math.Min(to - row * 24, 24));
                if (right > left || from == to) rows[row].Feeds.Add(new FeedStretch(left, right, written));
            }
        }
    }
}
