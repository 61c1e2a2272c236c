using CareRecords.Records;
using NodaTime;

namespace CareRecords.Findings.Tests.Illness;

public sealed class IllnessSummaryTests
{
    private static readonly LocalDate First = new(2026, 9, 7);
    private static readonly double[] Errors = [0.4, -0.9, 1.1, -0.3, 0.8, -1.2, 0.1];

    private static Check CheckAt(int day, int hour, double spo2) => new()
    {
        Sources = [SourceLine.InText("checks.csv", (day * 24) + hour, "check")],
        Start = UncertainTime.Exactly(First.PlusDays(day).At(new LocalTime(hour, 0))),
        SpO2 = spo2,
    };

    private static Sign Unwell(int day) => new()
    {
        Sources = [SourceLine.InText("signs.csv", day + 1, "unwell")],
        Start = UncertainTime.Exactly(First.PlusDays(day).At(new LocalTime(9, 0))),
        Kind = SignKind.Unwell,
        What = "unwell",
    };

    /// <summary>Five checks a day; four points under usual from day 30 to day 35, then back within two days.</summary>
    private static IllnessFindings Review(int days, params CareEntry[] more) => ReviewDays(days, [30], more);

    private static IllnessFindings ReviewDays(int days, int[] onsets, params CareEntry[] more)
    {
        double Deficit(int day) => onsets.Max(o => day >= o && day < o + 6 ? 4 : day == o + 6 ? 2 : 0);
        var checks = from day in Enumerable.Range(0, days)
                     from n in Enumerable.Range(0, 5)
                     select CheckAt(day, 7 + (3 * n), Math.Round(96 - Deficit(day) + Errors[((day * 5) + n) % 7]));
        return Reviewer.Review(new CareLog { Zone = "Etc/UTC", ZoneFrom = "the plan", Entries = [.. checks, .. more] }).Illness;
    }

    [Fact]
    public void Both_definitions_stand_side_by_side_and_the_main_one_is_the_models()
    {
        var illness = Review(60);
        Assert.Single(illness.ByRecord);
        var main = Assert.Single(illness.Episodes);
        Assert.Equal(illness.ByModel, illness.Episodes);
        Assert.StartsWith("by the model", illness.MainDefinition, StringComparison.Ordinal);
        Assert.Null(illness.ModelMissing);
        Assert.InRange(main.Onset, First.PlusDays(29), First.PlusDays(31));
        Assert.False(main.Recovery.Censored);
        Assert.InRange(main.Recovery.Estimate!.Value, main.Recovery.Low!.Value, main.Recovery.High!.Value);
        Assert.True(main.Recovery.DaysLow <= main.Recovery.Low && main.Recovery.DaysHigh >= main.Recovery.High);
        Assert.NotEmpty(main.Recovery.Curve);
        Assert.NotEmpty(main.Sources);
        Assert.True(illness.IllnessDays.ByBoth > 0 && illness.IllnessDays.ByBoth <= Math.Min(illness.IllnessDays.ByRecord, illness.IllnessDays.ByModel));
    }

    [Fact]
    public void The_record_s_own_episode_is_found_by_the_days_it_shares()
    {
        var illness = ReviewDays(90, [30, 60]);
        Assert.Equal((2, 2), (illness.ByModel.Count, illness.ByRecord.Count));
        Assert.Equal(illness.ByRecord, illness.Episodes.Select(illness.OfRecord));
        Assert.Null((illness with { ByRecord = [illness.ByRecord[1]] }).OfRecord(illness.Episodes[0]));
    }

    /// <summary>Counted from its own first day, the record's bracket is the same moments as from the model's.</summary>
    [Fact]
    public void Both_rows_of_an_illness_bracket_the_same_recovery()
    {
        var illness = Review(60, Unwell(28));
        var (model, record) = (Assert.Single(illness.Episodes), Assert.Single(illness.ByRecord));
        var apart = NodaTime.Period.DaysBetween(model.Onset, record.Onset);
        Assert.Equal(model.Recovery.RecordHigh!.Value, record.Recovery.RecordHigh!.Value + apart, 9);
        Assert.Equal(record, illness.OfRecord(model));
    }

    [Fact]
    public void An_illness_that_only_signs_show_stands_beside_the_models()
    {
        var illness = Review(60, Unwell(50), Unwell(51), Unwell(52));
        Assert.Single(illness.ByModel);
        Assert.Equal([First.PlusDays(50)], illness.Episodes.Skip(1).Select(e => e.Onset));
        Assert.Equal(["E1", "E2"], illness.Episodes.Select(e => e.Id));
        Assert.EndsWith("by the record", illness.MainDefinition, StringComparison.Ordinal);
    }

    [Fact]
    public void With_too_little_for_the_model_the_record_is_the_main_definition_and_the_reason_is_given()
    {
        var illness = Reviewer.Review(new CareLog { Zone = "Etc/UTC", ZoneFrom = "the plan", Entries = [Unwell(0), Unwell(1)] }).Illness;
        Assert.Equal("no saturation was written", illness.ModelMissing);
        Assert.Equal(illness.ByRecord, illness.Episodes);
        Assert.Empty(illness.ByModel);
        Assert.Single(illness.Episodes);
    }

    [Fact]
    public void Ill_again_within_seven_days_of_recovery_is_a_relapse()
    {
        var illness = ReviewDays(70, [30, 41]);
        Assert.Equal(2, illness.Episodes.Count);
        Assert.Equal("E1", illness.Episodes[1].RelapseOf);
        Assert.InRange(illness.Episodes[1].DaysSincePreviousRecovery!.Value, 2, 7);
    }
}
