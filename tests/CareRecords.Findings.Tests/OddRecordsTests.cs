using CareRecords.Records;
using NodaTime;

namespace CareRecords.Findings.Tests;

/// <summary>Odd records get an answer with a name, and findings.json of it is whole.</summary>
public class OddRecordsTests
{
    private static readonly LocalDate First = new(2026, 2, 1);

    private static ChildFindings Review(LogBuilder log)
    {
        var findings = log.Review();
        using var stream = new MemoryStream();
        FindingsJson.Write(findings, stream);
        Assert.DoesNotContain("NaN", System.Text.Encoding.UTF8.GetString(stream.ToArray()), StringComparison.Ordinal);
        return findings;
    }

    [Fact]
    public void Nothing_at_all()
    {
        var findings = Review(new LogBuilder());
        Assert.Empty(findings.Days);
        Assert.Equal("no saturation was written", findings.BaselineMissing);
        Assert.Null(findings.Adherence.Overall.FeedGap.Proportion);
        Assert.Equal("No session was written, so there are no steps.", findings.Taper.WeanInWords);
    }

    [Fact]
    public void One_day_of_records()
    {
        var findings = Review(new LogBuilder().Feed("06:00", "07:00").Dose("07:40").Check("07:50", 96, 0.5).Session("08:00", perArea: 3));
        Assert.Equal((1, 0), (findings.Span.DaysWithRecords, findings.Span.DaysMissing.Count));
        Assert.Equal((96d, true), (findings.Baseline!.SpO2, findings.Baseline.Provisional));
        Assert.Null(findings.Baseline.CentreLow);
        Assert.Equal((GapVerdict.Kept, GapVerdict.Kept), (findings.Sessions[0].FeedGap.Verdict, findings.Sessions[0].InhalerGap.Verdict));
        Assert.Equal("no episode", findings.Recovery.Method);
        Assert.Equal("One level throughout: 1 session a day of 3 minutes an area.", findings.Taper.WeanInWords);
    }

    [Fact]
    public void No_checks()
    {
        var findings = Review(Days(30, (log, _) => log.Session("08:00").Session("20:00")));
        Assert.Null(findings.Baseline);
        Assert.Equal("no saturation was written", findings.BaselineMissing);
        Assert.Contains("No saturation was written.", findings.Quality.Missing);
        Assert.Null(findings.SessionEffect.MedianChange);
    }

    [Fact]
    public void No_plan_labels_its_defaults()
    {
        var findings = Review(Days(10, (log, _) => log.Feed("06:00", "07:00").Session("08:00")));
        Assert.All(findings.Sessions, s => Assert.True(s.FeedGap.LimitIsDefault && s.InhalerGap.LimitIsDefault));
        Assert.Contains(findings.Plan, p => p is { Item: PlanItem.FeedGapMinutes, IsDefault: true, Value: "30" });
        Assert.Null(findings.Adherence.Overall.Sessions!.Planned);
        Assert.Null(findings.Adherence.Overall.DaysAllDone);
        Assert.Empty(findings.Taper.Planned);
    }

    [Fact]
    public void No_illness()
    {
        var findings = Review(Days(30, (log, n) => Checks(log, 95 + (n % 3))));
        Assert.Empty(findings.Illness.Episodes);
        Assert.All(findings.Days, d => Assert.Null(d.Episode));
        Assert.Equal(0, findings.Recovery.Episodes);
    }

    [Fact]
    public void Illness_from_the_first_day_to_the_last()
    {
        var findings = Review(Days(20, (log, _) => Checks(log, 91).Sign("18:00", SignKind.Unwell)));
        Assert.Null(findings.Baseline);
        Assert.Equal("every day with a reading at usual oxygen is an illness day", findings.BaselineMissing);
        var episode = Assert.Single(findings.Illness.Episodes);
        Assert.Equal((First, true), (episode.Onset, episode.Recovery.Censored));
        Assert.Contains("it may have begun before the record does", episode.Evidence, StringComparison.Ordinal);
    }

    [Fact]
    public void All_saturations_equal()
    {
        var findings = Review(Days(30, (log, _) => Checks(log, 96)));
        Assert.Equal((96d, 94d, 98d), (findings.Baseline!.SpO2, findings.Baseline.SpO2Low, findings.Baseline.SpO2High));
        Assert.Empty(findings.Illness.Episodes);
        Assert.Null(findings.Adherence.RunCharts.Single(c => c.Series.StartsWith("median saturation", StringComparison.Ordinal)).Signal);
    }

    [Fact]
    public void Oxygen_never_written()
    {
        var findings = Review(Days(30, (log, n) => Checks(log, n is >= 15 and < 19 ? 91 : 96, null)));
        Assert.Null(findings.Baseline!.Oxygen);
        Assert.Contains("oxygen was never written", findings.Baseline.Method, StringComparison.Ordinal);
        Assert.Equal(First.PlusDays(15), Assert.Single(findings.Illness.ByRecord).Onset);
        Assert.Null(Assert.Single(findings.SaturationByFlow).OxygenLitresPerMinute);
    }

    [Fact]
    public void A_year_without_a_gap()
    {
        var findings = Review(Days(365, (log, n) => Checks(log, 95 + (n % 3)).Feed("06:00", "07:00").Dose("07:40").Session("08:00").Session("20:00")));
        Assert.Empty(findings.Span.DaysMissing);
        Assert.Equal(365, findings.Adherence.Overall.FeedGap.Kept);
        Assert.Equal((1d, 1d), (findings.Adherence.Overall.FeedGap.Proportion, findings.Adherence.Overall.FeedGap.High));
        Assert.Equal(53, findings.Adherence.ByWeek.Count);
    }

    [Fact]
    public void One_bad_date_decades_away_leaves_days_missing_and_breaks_nothing()
    {
        var findings = Review(Days(10, (log, _) => Checks(log, 96).Session("08:00")).On(new(2016, 2, 1)).Session("08:00"));
        Assert.True(findings.Span.DaysMissing.Count > 3000);
        Assert.Equal(11, findings.Sessions.Count);
    }

    [Fact]
    public void Days_outside_the_span_asked_for_are_left_out_and_their_feeds_still_count()
    {
        var findings = Days(10, (log, _) => log.Feed("20:00", "22:00").Session("2026-02-05 04:10")).Review(new() { From = First.PlusDays(4), To = First.PlusDays(6) });
        Assert.Equal((First.PlusDays(4), First.PlusDays(6)), (findings.Span.From, findings.Span.To));
        Assert.All(findings.Sessions, s => Assert.Equal((GapVerdict.Kept, 370d), (s.FeedGap.Verdict, s.FeedGap.LowMinutes)));
    }

    [Fact]
    public void Twenty_years_are_read_whole()
    {
        var findings = Review(Years(20));
        Assert.Equal((7300, 14600), (findings.Days.Count, findings.Sessions.Count));
        Assert.All(findings.Sessions.Skip(2), s => Assert.NotEqual(GapVerdict.Unknown, s.InhalerGap.Verdict));
    }

    private static LogBuilder Years(int years) => Days(365 * years, (log, n) =>
        Checks(log, n % 90 is >= 40 and < 46 ? 91 : 95 + (n % 3)).Feed("06:00", "07:00").Feed("18:00", n % 4 == 0 ? null : "19:10").Dose("07:40").Session("08:00", perArea: 3).Session("19:30", perArea: 3));

    private static LogBuilder Days(int days, Action<LogBuilder, int> write)
    {
        var log = new LogBuilder();
        for (var n = 0; n < days; n++) write(log.On(First.PlusDays(n)), n);
        return log;
    }

    private static LogBuilder Checks(LogBuilder log, double spO2, double? oxygen = 0.5)
    {
        foreach (var at in new[] { "08:00", "12:00", "16:00", "20:00" }) log.Check(at, spO2, oxygen);
        return log;
    }
}
