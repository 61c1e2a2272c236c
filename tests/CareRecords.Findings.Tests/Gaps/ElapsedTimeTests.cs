using System.Globalization;
using CareRecords.Records;
using NodaTime;
using NodaTime.Text;

namespace CareRecords.Findings.Tests.Gaps;

public class ElapsedTimeTests
{
    public static IEnumerable<object[]> Rows() => File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Gaps", "timezones.csv"))
        .Where(l => !l.StartsWith('#') && !l.StartsWith("zone,", StringComparison.Ordinal)).Select(l => l.Split(',')).Select(c =>
            new object[] { c[0], c[1], c[2], c[5], c[6], c[8 + 1], c[10], double.Parse(c[11], CultureInfo.InvariantCulture) });

    [Theory]
    [MemberData(nameof(Rows))]
    public void Clock_changes_agree_with_the_time_zone_table(string zone, string start, string end, string startKind, string endKind, string startUtc, string endUtc, double elapsed)
    {
        var clock = new ElapsedTime(DateTimeZoneProviders.Tzdb[zone]);
        var (a, b) = (clock.Of(Exactly(start)), clock.Of(Exactly(end)));

        Assert.InRange(Utc(startUtc), a.Earliest, a.Latest);
        Assert.InRange(Utc(endUtc), b.Earliest, b.Latest);
        Assert.Equal(startKind == "ambiguous", a.Earliest != a.Latest);
        Assert.Equal(endKind == "ambiguous", b.Earliest != b.Latest);
        Assert.InRange(elapsed, (b.Earliest - a.Latest).TotalMinutes, (b.Latest - a.Earliest).TotalMinutes);
        if (startKind != "ambiguous" && endKind != "ambiguous") Assert.Equal(elapsed, (b.Earliest - a.Earliest).TotalMinutes);
    }

    [Fact]
    public void The_table_holds_rows_of_every_kind() =>
        Assert.Equal(["ambiguous", "normal", "skipped"], Rows().SelectMany(r => new[] { (string)r[3], (string)r[4] }).Distinct().Order());

    [Fact]
    public void Uncertain_time_with_both_ends_in_the_skipped_hour_becomes_the_moment_of_the_change()
    {
        var clock = new ElapsedTime(DateTimeZoneProviders.Tzdb["Europe/London"]);
        var time = UncertainTime.Between(new(2026, 3, 29, 1, 10), new(2026, 3, 29, 1, 20), new(2026, 3, 29, 1, 50), TimePrecision.About);
        var change = Instant.FromUtc(2026, 3, 29, 1, 0);
        Assert.Equal(new InstantRange(change, change), clock.Of(time));
    }

    [Fact]
    public void Uncertain_time_that_ends_in_the_repeated_hour_reaches_to_its_second_pass()
    {
        var clock = new ElapsedTime(DateTimeZoneProviders.Tzdb["Europe/London"]);
        var time = UncertainTime.Between(new(2026, 10, 25, 0, 30), new(2026, 10, 25, 1, 0), new(2026, 10, 25, 1, 30), TimePrecision.About);
        Assert.Equal(new InstantRange(Instant.FromUtc(2026, 10, 24, 23, 30), Instant.FromUtc(2026, 10, 25, 1, 30)), clock.Of(time));
    }

    private static UncertainTime Exactly(string local) => UncertainTime.Exactly(LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm").Parse(local).Value);

    private static Instant Utc(string text) => InstantPattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm'Z'").Parse(text).Value;
}
