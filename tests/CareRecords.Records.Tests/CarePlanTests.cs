using NodaTime;

namespace CareRecords.Records.Tests;

public sealed class CarePlanTests
{
    private static readonly CarePlan Plan = new()
    {
        Rows =
        [
            new PlanRow(null, PlanItem.SessionsPerDay, "2", 2, 2, null),
            new PlanRow(new LocalDate(2026, 3, 17), PlanItem.SessionsPerDay, "3-5", 3, 5, null),
        ],
    };

    [Fact]
    public void NumberFor_LaterRow_HoldsFromItsDateOn()
    {
        Assert.Equal(2, Plan.NumberFor(PlanItem.SessionsPerDay, new LocalDate(2026, 3, 16)));
        Assert.Equal(3, Plan.NumberFor(PlanItem.SessionsPerDay, new LocalDate(2026, 3, 17)));
    }

    /// <summary>Thirty minutes after a feed and fifteen after the inhaler: common practice, no source.</summary>
    [Theory]
    [InlineData(PlanItem.FeedGapMinutes, 30)]
    [InlineData(PlanItem.InhalerGapMinutes, 15)]
    public void ValueFor_PlanSilent_IsALabelledDefault(PlanItem item, double expected)
    {
        var value = Plan.ValueFor(item, new LocalDate(2026, 3, 16));

        Assert.NotNull(value);
        Assert.True(value.IsDefault);
        Assert.Equal(expected, value.Low);
        Assert.NotEqual("", PlanItems.Describe(item).DefaultSource);
    }

    [Fact]
    public void ValueFor_ItemWithoutDefault_IsUnknown() => Assert.Null(Plan.ValueFor(PlanItem.StopSaturation, new LocalDate(2026, 3, 16)));
}
