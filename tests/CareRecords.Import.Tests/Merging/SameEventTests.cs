using CareRecords.Records;

namespace CareRecords.Import.Tests.Merging;

public sealed class SameEventTests
{
    private const string Sessions = "started,ended,left lower,right lower,by\n";
    private const string Doses = "given,medicine,amount\n";
    private const string Feeds = "started,ended,ml,route\n";

    [Fact]
    public void SessionInTwoBooks_IsKeptOnceWithBothSourcesAndItsDifferences()
    {
        using var inputs = new Inputs().With("a.csv", Sessions + "2026-03-09 07:10,2026-03-09 07:30,3,3,mum\n").With("b.csv", Sessions + "2026-03-09 07:15,,3,2,dad\n");
        var log = inputs.Import();
        var session = Assert.IsType<Session>(Assert.Single(log.Entries));
        Assert.Equal(2, session.Sources.Count);
        var merged = Assert.Single(log.Merged);
        Assert.Equal("a.csv", merged.Kept.File);
        Assert.Contains(merged.Differences, d => d is { Field: "started", Kept: "2026-03-09 07:10", Other: "2026-03-09 07:15" });
        Assert.Contains(merged.Differences, d => d is { Field: "right lower percussion", Kept: "3", Other: "2" });
    }

    [Fact]
    public void SessionsFurtherApartThanThePlansSameEventMinutes_AreTwo()
    {
        using var inputs = new Inputs().With("a.csv", Sessions + "2026-03-09 07:10,,3,3,\n").With("b.csv", Sessions + "2026-03-09 07:18,,3,3,\n").With("plan.csv", "from,item,value\n2026-03-01,same-event minutes,5\n");
        Assert.Equal(2, inputs.Import().Entries.Count);
    }

    [Fact]
    public void DosesOfDifferentAmounts_AreAskedAboutAndBothKept()
    {
        using var inputs = new Inputs().With("a.csv", Doses + "2026-03-09 07:00,salbutamol,2 puffs\n").With("b.csv", Doses + "2026-03-09 07:05,salbutamol,4 puffs\n");
        var log = inputs.Import();
        Assert.Equal(2, log.Entries.Count);
        Assert.StartsWith("same-event:", Assert.Single(log.Questions).Name, StringComparison.Ordinal);
    }

    [Fact]
    public void TwoRowsOfOneBook_AreTwoEvents()
    {
        using var inputs = new Inputs().With("a.csv", Doses + "2026-03-09 07:00,salbutamol,2 puffs\n2026-03-09 07:04,salbutamol,2 puffs\n");
        var log = inputs.Import();
        Assert.Equal(2, log.Entries.Count);
        Assert.Empty(log.Merged);
    }

    [Fact]
    public void PumpOnInOneBookAndOffInAnother_IsOneFeed()
    {
        using var inputs = new Inputs().With("day.csv", Feeds + "2026-03-09 22:00,,,pump\n").With("night.csv", Feeds + ",2026-03-10 06:00,480,pump\n");
        var feed = Assert.IsType<Feed>(Assert.Single(inputs.Import().Entries));
        Assert.NotNull(feed.Start);
        Assert.NotNull(feed.End);
        Assert.Equal(480, feed.Millilitres);
    }

    [Fact]
    public void ClockThatRunsAhead_IsSaid()
    {
        var a = string.Concat(Enumerable.Range(9, 5).Select(d => $"2026-03-{d:00} 07:10,,3,3,\n"));
        var b = string.Concat(Enumerable.Range(9, 5).Select(d => $"2026-03-{d:00} 07:16,,3,3,\n"));
        using var inputs = new Inputs().With("a.csv", Sessions + a).With("b.csv", Sessions + b);
        var log = inputs.Import();
        Assert.Equal(5, log.Entries.Count);
        Assert.Contains(log.Problems, p => p.Why.Contains("6 minutes ahead", StringComparison.Ordinal));
    }

    [Fact]
    public void SessionTwelveHoursToTheMinuteFromAnotherBooks_IsAskedAndBothAreKept()
    {
        using var inputs = new Inputs().With("a.csv", Sessions + "2026-03-09 07:10,,3,3,mum\n").With("b.csv", Sessions + "2026-03-09 19:10,,3,3,dad\n");
        var log = inputs.Import();
        Assert.Equal(2, log.Entries.Count);
        var question = Assert.Single(log.Questions);
        Assert.StartsWith("half-day:", question.Name, StringComparison.Ordinal);
        inputs.With("answers.csv", $"question,answer\n\"{question.Name}\",\"one, at 07:10\"\n");
        var session = Assert.IsType<Session>(Assert.Single(inputs.Import().Entries));
        Assert.Equal(7, session.Start!.Stated.Hour);
        Assert.Equal(2, session.Sources.Count);
    }

    [Theory]
    [InlineData("2026-03-09 07:00,,3,3,mum\n", "2026-03-09 19:00,,3,3,dad\n")]
    [InlineData("2026-03-09 07:10,,3,3,mum\n", "2026-03-09 19:15,,3,3,dad\n")]
    [InlineData("2026-03-09 07:10,,3,3,mum\n2026-03-09 19:05,,3,3,mum\n", "2026-03-09 19:10,,3,3,dad\n")]
    [InlineData("2026-03-09 07:10,,3,3,mum\n", "2026-03-09 07:12,,3,3,dad\n2026-03-09 19:10,,3,3,dad\n")]
    [InlineData("2026-03-09 07:10,,3,3,mum\n", "2026-03-09 19:10,,3,3,mum\n")]
    public void SessionsTwelveHoursApartByPlanOrBorneOut_AreNotAsked(string a, string b)
    {
        using var inputs = new Inputs().With("a.csv", Sessions + a).With("b.csv", Sessions + b);
        Assert.DoesNotContain(inputs.Import().Questions, q => q.Name.StartsWith("half-day:", StringComparison.Ordinal));
    }
}
