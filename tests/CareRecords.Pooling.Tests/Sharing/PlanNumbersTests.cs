using CareRecords.Findings;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Pooling.Tests;

public sealed class PlanNumbersTests
{
    private static readonly LocalDate Monday = new(2031, 3, 10);

    [Fact]
    public void EveryNumericItemOfAPlanIsShared_AndNoOther()
    {
        PlanItem[] words = [PlanItem.TimeZone, PlanItem.DayStarts, PlanItem.MedicineBeforeSession, PlanItem.ChildCalled, PlanItem.AgeBand, PlanItem.StudyGroup];
        foreach (var item in Enum.GetValues<PlanItem>())
            Assert.Equal(!words.Contains(item), PlanNumbers.ByName.ContainsKey(PlanItems.Describe(item).Name));
    }

    [Theory]
    [InlineData("3", 3, 3)]
    [InlineData("3-5", 3, 5)]
    [InlineData("2 to 3", 2, 3)]
    [InlineData("92 %", 92, 92)]
    [InlineData("2.5", 2.5, 2.5)]
    public void ANumberOrARangeIsRead(string written, double low, double high)
    {
        var value = PlanNumbers.Read(Value("sessions per day", written), new DayNumbers(Monday));
        Assert.Equal(new SharedPlanValue(SharedPlanItem.SessionsPerDay, 3, low, high, false), value);
    }

    [Theory]
    [InlineData("as Dr Quill says")]
    [InlineData("5-3")]
    [InlineData("20310310")]
    [InlineData("1-2-3")]
    [InlineData("")]
    public void AnythingElseStaysAtHome(string written) => Assert.Null(PlanNumbers.Read(Value("sessions per day", written), new DayNumbers(Monday)));

    private static PlanValueInForce Value(string name, string written) => new(PlanItem.SessionsPerDay, name, Monday.PlusDays(3), written, "", false, "", null);
}
