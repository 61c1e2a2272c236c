namespace CareRecords.Pooling;

/// <summary>The table "episodes": one row an illness episode under one definition.</summary>
internal static class EpisodeTable
{
    private const string NoEstimate = "too little for the model";

    public static SharedTable<SharedEpisode> Table { get; } = new(
        "episodes", "One illness episode under one definition; recovery lies in (recovery_low, recovery_high].", findings => findings.Episodes,
        new ColumnList<SharedEpisode>()
            .Code("definition", e => e.Definition, "The definition: main (used for linking and pooling), by the record, by the model")
            .Integer("episode", e => e.Number, "Number within the definition, from 1")
            .Integer("onset_day", e => e.OnsetDay, "Day of onset", unit: "d")
            .Integer("onset_day_low", e => e.OnsetDayLow, "Earliest day that the onset may have been", unit: "d")
            .Integer("onset_day_high", e => e.OnsetDayHigh, "Latest day that the onset may have been", unit: "d")
            .Integer("peak_day", e => e.PeakDay, "The worst day", "not known", "d")
            .Number("lowest_spo2", e => e.LowestSpO2, "%", "Lowest saturation", "no reading", OpenCodes.Saturation)
            .Number("highest_oxygen", e => e.HighestOxygen, "L/min", "Highest oxygen", "none written", OpenCodes.OxygenFlow)
            .Integer("most_sessions", e => e.MostSessions, "Most sessions on one day")
            .Integer("relapse_of", e => e.RelapseOf, "The episode of which it is a relapse within 7 days", "not a relapse")
            .Number("days_since_previous_recovery", e => e.DaysSincePreviousRecovery, "d", "Days from the previous recovery to this onset", "the first, or not known")
            .Number("recovery_low", e => e.RecoveryLow, "d", "Last moment known not recovered, days from onset")
            .Number("recovery_high", e => e.RecoveryHigh, "d", "First moment known recovered, days from onset", "not recovered by the end of the record")
            .Boolean("censored", e => e.Censored, "Not recovered by the end of the record")
            .Number("recovery_estimate", e => e.RecoveryEstimate, "d", "The model's estimate", NoEstimate)
            .Number("recovery_estimate_low", e => e.RecoveryEstimateLow, "d", "Its lower 95 % limit", NoEstimate)
            .Number("recovery_estimate_high", e => e.RecoveryEstimateHigh, "d", "Its upper 95 % limit", "open, or too little for the model")
            .Number("back_to_maintenance", e => e.BackToMaintenanceDays, "d", "Days from onset to the end of the wean", "not ended, or not known"),
        cells => new SharedEpisode
        {
            Definition = cells.Code<EpisodeDefinition>("definition"),
            Number = cells.Integer("episode"),
            OnsetDay = cells.Integer("onset_day"),
            OnsetDayLow = cells.Integer("onset_day_low"),
            OnsetDayHigh = cells.Integer("onset_day_high"),
            PeakDay = cells.IntegerOrNull("peak_day"),
            LowestSpO2 = cells.NumberOrNull("lowest_spo2"),
            HighestOxygen = cells.NumberOrNull("highest_oxygen"),
            MostSessions = cells.Integer("most_sessions"),
            RelapseOf = cells.IntegerOrNull("relapse_of"),
            DaysSincePreviousRecovery = cells.NumberOrNull("days_since_previous_recovery"),
            RecoveryLow = cells.Number("recovery_low"),
            RecoveryHigh = cells.NumberOrNull("recovery_high"),
            Censored = cells.Boolean("censored"),
            RecoveryEstimate = cells.NumberOrNull("recovery_estimate"),
            RecoveryEstimateLow = cells.NumberOrNull("recovery_estimate_low"),
            RecoveryEstimateHigh = cells.NumberOrNull("recovery_estimate_high"),
            BackToMaintenanceDays = cells.NumberOrNull("back_to_maintenance"),
        });
}
