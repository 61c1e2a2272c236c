using CareRecords.Findings;

namespace CareRecords.Pooling;

/// <summary>The table "sessions": one row a session.</summary>
internal static class SessionTable
{
    private const string NotWritten = "not written";
    private const string NotInPlan = "the plan does not say";

    public static SharedTable<SharedSession> Table { get; } = new(
        "sessions", "One session that was written down.", findings => findings.Sessions,
        new ColumnList<SharedSession>()
            .Integer("session", s => s.Number, "Number in order, from 1")
            .Integer("day", s => s.Day, "Care day; the first with a record is 0", unit: "d")
            .Number("minutes", s => s.Minutes, "min", "Minutes in all", NotWritten)
            .Number("minutes_per_area", s => s.MinutesPerArea, "min", "Median minutes per area and technique", NotWritten)
            .Number("minutes_per_area_planned", s => s.MinutesPerAreaPlanned, "min", "Planned minutes per area", NotInPlan)
            .Integer("areas_left_out", s => s.AreasLeftOut, "Areas that other sessions treat and this one left out")
            .Number("feed_gap_low", s => s.FeedGapLow, "min", "Least minutes since the end of the last feed", "no feed written in the 12 hours before")
            .Number("feed_gap_high", s => s.FeedGapHigh, "min", "Most minutes since the end of the last feed", "no feed written in the 12 hours before, or no upper end known")
            .Number("feed_gap_limit", s => s.FeedGapLimit, "min", "The limit used; exactly the limit is kept")
            .Boolean("feed_gap_limit_is_default", s => s.FeedGapLimitIsDefault, "The limit is a starting value and not the plan's")
            .Code("feed_gap", s => s.FeedGap, "Verdict on the feed gap")
            .Boolean("feed_running", s => s.FeedRunning, "The feed certainly ran at the session's start")
            .Number("inhaler_gap_low", s => s.InhalerGapLow, "min", "Least minutes since the inhaler due before a session", "no such dose written that counts")
            .Number("inhaler_gap_high", s => s.InhalerGapHigh, "min", "Most minutes since it", "no such dose written that counts, or no upper end known")
            .Number("inhaler_gap_limit", s => s.InhalerGapLimit, "min", "The least gap used")
            .Number("inhaler_window", s => s.InhalerWindow, "min", "The most minutes that still count")
            .Boolean("inhaler_limit_is_default", s => s.InhalerLimitIsDefault, "The limits are starting values and not the plan's")
            .Code("inhaler_gap", s => s.InhalerGap, "Verdict on the inhaler gap")
            .Number("spo2_before", s => s.SpO2Before, "%", "Saturation before", NotWritten, OpenCodes.Saturation)
            .Number("oxygen_before", s => s.OxygenBefore, "L/min", "Oxygen beside it; 0 is air", NotWritten, OpenCodes.OxygenFlow)
            .Number("spo2_after", s => s.SpO2After, "%", "Saturation after", NotWritten, OpenCodes.Saturation)
            .Number("oxygen_after", s => s.OxygenAfter, "L/min", "Oxygen beside it; 0 is air", NotWritten, OpenCodes.OxygenFlow)
            .Integer("episode", s => s.Episode, "Episode of the main definition", "well")
            .Integer("step", s => s.Step, "Step as done", "no step"),
        cells => new SharedSession
        {
            Number = cells.Integer("session"),
            Day = cells.Integer("day"),
            Minutes = cells.NumberOrNull("minutes"),
            MinutesPerArea = cells.NumberOrNull("minutes_per_area"),
            MinutesPerAreaPlanned = cells.NumberOrNull("minutes_per_area_planned"),
            AreasLeftOut = cells.Integer("areas_left_out"),
            FeedGapLow = cells.NumberOrNull("feed_gap_low"),
            FeedGapHigh = cells.NumberOrNull("feed_gap_high"),
            FeedGapLimit = cells.Number("feed_gap_limit"),
            FeedGapLimitIsDefault = cells.Boolean("feed_gap_limit_is_default"),
            FeedGap = cells.Code<GapVerdict>("feed_gap"),
            FeedRunning = cells.Boolean("feed_running"),
            InhalerGapLow = cells.NumberOrNull("inhaler_gap_low"),
            InhalerGapHigh = cells.NumberOrNull("inhaler_gap_high"),
            InhalerGapLimit = cells.Number("inhaler_gap_limit"),
            InhalerWindow = cells.Number("inhaler_window"),
            InhalerLimitIsDefault = cells.Boolean("inhaler_limit_is_default"),
            InhalerGap = cells.Code<GapVerdict>("inhaler_gap"),
            SpO2Before = cells.NumberOrNull("spo2_before"),
            OxygenBefore = cells.NumberOrNull("oxygen_before"),
            SpO2After = cells.NumberOrNull("spo2_after"),
            OxygenAfter = cells.NumberOrNull("oxygen_after"),
            Episode = cells.IntegerOrNull("episode"),
            Step = cells.IntegerOrNull("step"),
        });
}
