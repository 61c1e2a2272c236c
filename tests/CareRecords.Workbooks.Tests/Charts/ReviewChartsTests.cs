using CareRecords.Findings;
using CareRecords.Records;
using CareRecords.Workbooks.Charts;
using NodaTime;

namespace CareRecords.Workbooks.Tests.Charts;

[Collection("pictures")] // One at a time: each draws on every processor already.
public sealed class ReviewChartsTests
{
    [Fact]
    public void An_interesting_month_gives_every_chart_in_order()
    {
        var (log, findings) = InventedMonth.Of();
        var charts = ReviewCharts.DrawAll(log, findings);
        KeepToLookAt(charts);
        Assert.Equal(
            ["days-1", "saturation", "gaps", "weeks", "taper", "recovery-e1", "recovery-e2", "recovery-all", "runs", "rounding"],
            charts.Select(c => c.Name));
    }

    [Fact]
    public void The_same_findings_give_the_same_bytes()
    {
        var (log, findings) = InventedMonth.Of();
        var (first, second) = (ReviewCharts.DrawAll(log, findings), ReviewCharts.DrawAll(log, findings));
        Assert.Equal(first.Select(c => Convert.ToHexString(c.Png)), second.Select(c => Convert.ToHexString(c.Png)));
        Assert.Equal(first.Select(c => c.AltText), second.Select(c => c.AltText));
    }

    [Fact]
    public void Titles_hold_the_true_counts()
    {
        var (log, findings) = InventedMonth.Of();
        var titles = ReviewCharts.DrawAll(log, findings).ToDictionary(c => c.Name, c => c.Title.Replace('\u00A0', ' '));
        var feed = findings.Sessions.Select(s => s.FeedGap.Verdict).ToList();
        var (kept, unknown) = (feed.Count(v => v == GapVerdict.Kept), feed.Count(v => v == GapVerdict.Unknown));
        var readings = log.Entries.OfType<Check>().Where(c => c.SpO2 is not null).ToList();
        Assert.Contains($"{feed.Count} sessions on 29 days with records; feed gap short before {feed.Count(v => v == GapVerdict.Short)}, cannot tell before {unknown}", titles["days-1"]);
        Assert.Contains($"Feed gap kept before {kept} of {feed.Count - unknown} sessions that could be judged ({unknown} cannot tell)", titles["gaps"]);
        Assert.Contains($"{readings.Count} readings, {readings.Count(c => c.OxygenLitresPerMinute == 0.5)} at usual oxygen (0.5 L/min), {readings.Count(c => c.OxygenLitresPerMinute is null)} with no oxygen written", titles["saturation"]);
        Assert.Contains($"lowest {readings.Min(c => c.SpO2)} %", titles["saturation"]);
        Assert.Contains("3 down and 2 up; setback within 7 days after 1 of 3 down", titles["taper"]);
        Assert.Contains("recovered between day 7.4 and day 8.8 by the record; model: day 8.2 (95 % interval 6.9 to 9.9)", titles["recovery-e1"]);
        Assert.Contains("2 illnesses, 0 not recovered by the end of the record", titles["recovery-all"]);
    }

    [Fact]
    public void An_illness_that_outlasts_the_record_is_told_as_not_recovered()
    {
        var (log, findings) = InventedMonth.Of(days: 12);
        var recovery = ReviewCharts.DrawAll(log, findings).Single(c => c.Name == "recovery-e1");
        Assert.Contains("not recovered by the end of the record", recovery.Title);
        Assert.Contains("upper end open", recovery.Title);
    }

    [Fact]
    public void A_year_and_more_is_split_into_pages_of_at_most_a_month()
    {
        var (log, findings) = InventedMonth.Of(days: 400);
        var charts = Sound(ReviewCharts.DrawAll(log, findings));
        KeepToLookAt(charts, "year-");
        Assert.Equal(13, charts.Count(c => c.Name.StartsWith("days-", StringComparison.Ordinal)));
        Assert.Equal(4, charts.Count(c => c.Name.StartsWith("saturation-", StringComparison.Ordinal)));
        Assert.Equal(4, charts.Count(c => c.Name.StartsWith("gaps-", StringComparison.Ordinal)));
    }

    [Fact]
    public void Pages_of_a_long_span_count_every_session_and_reading_once()
    {
        var (log, findings) = InventedMonth.Of(days: 205);
        var charts = ReviewCharts.DrawAll(log, findings);
        Assert.Equal(findings.Sessions.Count, Sum("days-", " sessions on"));
        Assert.Equal(log.Entries.OfType<Check>().Count(c => c.SpO2 is not null), Sum("saturation-", " readings"));

        int Sum(string name, string before) => charts.Where(c => c.Name.StartsWith(name, StringComparison.Ordinal))
            .Sum(c => int.Parse(c.Title[..c.Title.IndexOf(before, StringComparison.Ordinal)].Split(' ')[^1], System.Globalization.CultureInfo.InvariantCulture));
    }

    [Fact]
    public void One_day_is_drawn()
    {
        var (log, findings) = InventedMonth.Of(days: 1);
        var charts = Sound(ReviewCharts.DrawAll(log, findings));
        KeepToLookAt(charts, "one-");
        Assert.Contains("2 sessions on 1 day with records", charts[0].Title);
    }

    [Fact]
    public void No_records_give_no_chart() =>
        Assert.Empty(ReviewCharts.DrawAll(SampleMonth.Empty, Reviewer.Review(SampleMonth.Empty)));

    [Fact]
    public void No_sessions_leaves_out_the_charts_that_would_be_empty()
    {
        var log = SampleMonth.Log();
        log = log with { Entries = [.. log.Entries.Where(e => e is Feed or Check)], Omitted = [] };
        var charts = Sound(ReviewCharts.DrawAll(log, Reviewer.Review(log)));
        Assert.Contains("0 sessions on 20 days with records", charts[0].Title);
        Assert.DoesNotContain(charts, c => c.Name is "gaps" or "weeks" or "runs");
    }

    [Fact]
    public void Two_thousand_sessions_in_a_day_are_drawn()
    {
        var start = SampleMonth.First.At(new LocalTime(4, 0));
        var log = SampleMonth.Empty with
        {
            Entries = [.. Enumerable.Range(0, 2000).Select(i => new Session { Sources = [], Start = UncertainTime.Exactly(start.PlusSeconds(i * 43)), MinutesWritten = 10 })],
        };
        var charts = Sound(ReviewCharts.DrawAll(log, Reviewer.Review(log)));
        KeepToLookAt(charts, "many-");
        Assert.Contains("2000 sessions on 1 day with records", charts[0].Title);
    }

    [Fact]
    public void Saturations_that_are_all_equal_are_drawn()
    {
        var (log, findings) = InventedMonth.Of();
        log = log with { Entries = [.. log.Entries.Select(e => e is Check c ? c with { SpO2 = 100, OxygenLitresPerMinute = 0 } : e)] };
        findings = findings with { Baseline = new Baseline(100, 100, 100, null, null, 0, false, 20, 60, false, "") };
        var charts = Sound(ReviewCharts.DrawAll(log, findings));
        KeepToLookAt(charts, "equal-");
        Assert.Contains("lowest 100\u00A0%", charts.Single(c => c.Name == "saturation").Title);
    }

    [Fact]
    public void Sessions_alone_leave_every_gap_unknown()
    {
        var log = SampleMonth.Log();
        log = log with { Entries = [.. log.Entries.Where(e => e is Session)] };
        var charts = Sound(ReviewCharts.DrawAll(log, Reviewer.Review(log)));
        KeepToLookAt(charts, "unknown-");
        Assert.Contains("kept before 0 of 0 sessions", charts.Single(c => c.Name == "gaps").Title);
    }

    [Fact]
    public void The_sample_month_is_drawn_from_its_own_analysis()
    {
        var log = SampleMonth.Log();
        var findings = Reviewer.Review(log);
        var charts = Sound(ReviewCharts.DrawAll(log, findings));
        KeepToLookAt(charts, "sample-");
        var feed = findings.Adherence.Overall.FeedGap;
        Assert.Contains($"Feed gap kept before {feed.Kept} of {feed.Judged} sessions that could be judged ({feed.Unknown} cannot tell)", charts.Single(c => c.Name == "gaps").Title);
    }

    private static IReadOnlyList<DrawnChart> Sound(IReadOnlyList<DrawnChart> charts)
    {
        Assert.NotEmpty(charts);
        Assert.All(charts, c => Assert.Equal(new byte[] { 0x89, 0x50, 0x4E, 0x47 }, c.Png[..4]));
        Assert.All(charts, c => Assert.True(c.AltText.Length > 20 && c.Title.Length > 10));
        Assert.Equal(charts.Count, charts.Select(c => c.Name).Distinct().Count());
        return charts;
    }

    /// <summary>Writes the pictures where a person who asked for them by CHART_PICTURES can look at them.</summary>
    private static void KeepToLookAt(IReadOnlyList<DrawnChart> charts, string prefix = "")
    {
        if (Environment.GetEnvironmentVariable("CHART_PICTURES") is not { Length: > 0 } folder) return;
        Directory.CreateDirectory(folder);
        foreach (var chart in charts) File.WriteAllBytes(Path.Combine(folder, prefix + chart.Name + ".png"), chart.Png);
    }
}
