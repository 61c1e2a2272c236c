using CareRecords.Findings;

namespace CareRecords.Pooling;

/// <summary>The table "steps": one row a step as done.</summary>
internal static class StepTable
{
    private const string NotInPlan = "the plan does not say";

    public static SharedTable<SharedStep> Table { get; } = new(
        "steps", "One step of sessions and minutes, as found in what was done.", findings => findings.Steps,
        new ColumnList<SharedStep>()
            .Integer("step", s => s.Number, "Number in order, from 1")
            .Integer("from_day", s => s.FromDay, "First day", unit: "d")
            .Integer("to_day", s => s.ToDay, "Last day, included", unit: "d")
            .Number("sessions_per_day", s => s.SessionsPerDay, "/d", "Sessions a day, median over days with records")
            .Number("minutes_per_area", s => s.MinutesPerArea, "min", "Minutes per area, median", "not known")
            .Number("planned_sessions_per_day", s => s.PlannedSessionsPerDay, "/d", "The plan on most of its days", NotInPlan)
            .Number("planned_minutes_per_area", s => s.PlannedMinutesPerArea, "min", "The plan's minutes per area on most of its days", NotInPlan)
            .Code("direction", s => s.Direction, "Direction from the step before")
            .Integer("episode", s => s.Episode, "The main definition's episode in which, or after which, it began", "none")
            .Integer("day_of_episode", s => s.DayOfEpisode, "Day of that episode on which it began, from 0", "none", "d")
            .Number("stable_hours_before", s => s.StableHoursBefore, "h", "Hours in band, on usual or unchanged oxygen and without signs, before it began", "cannot be told")
            .Code("followed_by", s => s.FollowedBy, "What followed within seven days"),
        cells => new SharedStep
        {
            Number = cells.Integer("step"),
            FromDay = cells.Integer("from_day"),
            ToDay = cells.Integer("to_day"),
            SessionsPerDay = cells.Number("sessions_per_day"),
            MinutesPerArea = cells.NumberOrNull("minutes_per_area"),
            PlannedSessionsPerDay = cells.NumberOrNull("planned_sessions_per_day"),
            PlannedMinutesPerArea = cells.NumberOrNull("planned_minutes_per_area"),
            Direction = cells.Code<StepDirection>("direction"),
            Episode = cells.IntegerOrNull("episode"),
            DayOfEpisode = cells.IntegerOrNull("day_of_episode"),
            StableHoursBefore = cells.NumberOrNull("stable_hours_before"),
            FollowedBy = cells.Code<StepOutcome>("followed_by"),
        });
}
