using CareRecords.Records;
using NodaTime;

namespace CareRecords.Findings.Tests;

public sealed class SinceLastReviewTests
{
    private static readonly LocalDate First = new(2026, 3, 1);

    /// <summary>Ten days with every feed gap kept, then four with every one short.</summary>
    private static CareLog Log()
    {
        var log = new LogBuilder().Plan(PlanItem.FeedGapMinutes, "30");
        for (var n = 0; n < 14; n++) log.On(First.PlusDays(n)).Feed("06:00", n < 10 ? "07:00" : "07:50").Dose("07:40").Session("08:00", perArea: 3);
        return log.Build();
    }

    [Fact]
    public void Without_an_earlier_review_there_is_nothing_to_compare() => Assert.Null(Reviewer.Review(Log()).SinceLastReview);

    [Fact]
    public void Days_and_shares_stand_apart_before_and_after_the_last_review()
    {
        var since = Reviewer.Review(Log() with { LastReview = new("review.xlsx", First.PlusDays(9).At(new(20, 0))) }).SinceLastReview!;
        Assert.Equal((First.PlusDays(9), 4, 4), (since.LastDay, since.NewDays, since.NewDaysWritten));
        Assert.Equal((10, 10, 0, 4), (since.FeedGapThen.Kept, since.FeedGapThen.Judged, since.FeedGapSince.Kept, since.FeedGapSince.Judged));
        Assert.Equal((10, 4), (since.InhalerGapThen.Kept, since.InhalerGapSince.Kept));
        Assert.True(since.FeedGapSince.High < since.FeedGapThen.Low);
    }

    [Fact]
    public void An_entry_after_midnight_belongs_to_the_care_day_before()
    {
        var since = Reviewer.Review(Log() with { LastReview = new("review.xlsx", First.PlusDays(10).At(new(0, 30))) }).SinceLastReview!;
        Assert.Equal(First.PlusDays(9), since.LastDay);
    }

    [Fact]
    public void Corrections_and_answers_are_counted()
    {
        var at = SourceLine.InText("n.txt", 1, "x");
        var since = Reviewer.Review(Log() with
        {
            LastReview = new("review.xlsx", First.PlusDays(13).At(new(20, 0))),
            Corrections = [new(at, "started", "07:00", "07:10")],
            Questions = [new("what-is:x", "?", [], [at], "salbutamol"), new("what-is:y", "?", [], [at])],
        }).SinceLastReview!;
        Assert.Equal((0, 1, 1), (since.NewDays, since.Corrections, since.Answers));
        Assert.Null(since.FeedGapSince.Proportion);
    }
}
