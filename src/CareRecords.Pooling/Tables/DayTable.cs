namespace CareRecords.Pooling;

/// <summary>The table "days": one row a care day.</summary>
internal static class DayTable
{
    public static SharedTable<SharedDay> Table { get; } = new(
        "days", "One care day; none is left out. A day without records is a day of which nothing is known.", findings => findings.Days,
        new ColumnList<SharedDay>()
            .Integer("day", d => d.Day, "Care day; the first with a record is 0", unit: "d")
            .Boolean("has_records", d => d.HasRecords, "Whether anything was written for it")
            .Integer("sessions_done", d => d.SessionsDone, "Sessions written; on a day without records not known to be none")
            .Number("sessions_planned", d => d.SessionsPlanned, "1", "Sessions planned", "the plan does not say")
            .Integer("omitted_with_reason", d => d.OmittedWithReason, "Sessions that did not take place, with a reason given")
            .Integer("omitted_without_reason", d => d.OmittedWithoutReason, "Sessions that did not take place, no reason given")
            .Number("minutes", d => d.Minutes, "min", "Minutes of all sessions whose minutes are known", "none known")
            .Integer("sessions_without_minutes", d => d.SessionsWithoutMinutes, "Sessions whose minutes are not known")
            .Integer("readings", d => d.Readings, "Saturation readings")
            .Number("median_spo2_usual_oxygen", d => d.MedianSpO2AtUsualOxygen, "%", "Median of resting readings at usual oxygen", "no such reading", OpenCodes.Saturation)
            .Number("lowest_spo2", d => d.LowestSpO2, "%", "Lowest reading at any oxygen", "no reading", OpenCodes.Saturation)
            .Number("highest_oxygen", d => d.HighestOxygen, "L/min", "Highest oxygen written", "none written", OpenCodes.OxygenFlow)
            .Integer("feeds", d => d.Feeds, "Feeds written")
            .Integer("doses", d => d.Doses, "Doses written")
            .Integer("signs", d => d.Signs, "Signs of illness written, counted")
            .Integer("episode", d => d.Episode, "Episode of the main definition", "well")
            .Integer("step", d => d.Step, "Step as done", "no step"),
        cells => new SharedDay
        {
            Day = cells.Integer("day"),
            HasRecords = cells.Boolean("has_records"),
            SessionsDone = cells.Integer("sessions_done"),
            SessionsPlanned = cells.NumberOrNull("sessions_planned"),
            OmittedWithReason = cells.Integer("omitted_with_reason"),
            OmittedWithoutReason = cells.Integer("omitted_without_reason"),
            Minutes = cells.NumberOrNull("minutes"),
            SessionsWithoutMinutes = cells.Integer("sessions_without_minutes"),
            Readings = cells.Integer("readings"),
            MedianSpO2AtUsualOxygen = cells.NumberOrNull("median_spo2_usual_oxygen"),
            LowestSpO2 = cells.NumberOrNull("lowest_spo2"),
            HighestOxygen = cells.NumberOrNull("highest_oxygen"),
            Feeds = cells.Integer("feeds"),
            Doses = cells.Integer("doses"),
            Signs = cells.Integer("signs"),
            Episode = cells.IntegerOrNull("episode"),
            Step = cells.IntegerOrNull("step"),
        });
}
