namespace CareRecords.Records;

/// <summary>
/// The plan items' written names and starting values. A starting value is shown as "default, not your plan".
/// </summary>
public static class PlanItems
{
    /// <summary>An item's written name, its starting value (null: none), its unit, and where the starting value is from.</summary>
    /// <param name="Item">The item.</param>
    /// <param name="Name">The name in plan tables.</param>
    /// <param name="Default">The starting value as text; null when the item has none.</param>
    /// <param name="Unit">Unit in words; empty when it has none.</param>
    /// <param name="DefaultSource">Where the starting value comes from; empty when there is none.</param>
    public sealed record Description(PlanItem Item, string Name, string? Default, string Unit, string DefaultSource);

    /// <summary>Every item, in the order in which a plan is read.</summary>
    public static IReadOnlyList<Description> All { get; } =
    [
        new(PlanItem.TimeZone, "time zone", null, "", ""),
        new(PlanItem.DayStarts, "day starts", "04:00", "clock time", "chosen by CareRecords: a session after midnight belongs to the evening before"),
        new(PlanItem.FeedGapMinutes, "feed gap minutes", "30", "minutes", "common practice for a pump feed, no source; many teams ask 60 to 120 after a bolus or a meal"),
        new(PlanItem.InhalerGapMinutes, "inhaler gap minutes", "15", "minutes", "common practice for a bronchodilator, no source"),
        new(PlanItem.InhalerWindowMinutes, "inhaler window minutes", "60", "minutes", "chosen by CareRecords; a bronchodilator lasts 4 to 6 hours (product text, salbutamol, 2018)"),
        new(PlanItem.MedicineBeforeSession, "medicine before session", null, "", ""),
        new(PlanItem.SessionsPerDay, "sessions per day", null, "sessions a day", ""),
        new(PlanItem.MinutesPerArea, "minutes per area", null, "minutes", ""),
        new(PlanItem.MinutesLower, "minutes lower", null, "minutes", ""),
        new(PlanItem.MinutesUpper, "minutes upper", null, "minutes", ""),
        new(PlanItem.MinutesVibration, "minutes vibration", null, "minutes", ""),
        new(PlanItem.TargetSaturationLow, "target saturation low", null, "%", ""),
        new(PlanItem.TargetSaturationHigh, "target saturation high", null, "%", ""),
        new(PlanItem.StopSaturation, "stop saturation", null, "%", ""),
        new(PlanItem.UsualOxygen, "usual oxygen", null, "L/min", ""),
        new(PlanItem.UsualFeedMinutes, "usual feed minutes", "60", "minutes", "chosen by CareRecords: a feed with no end written lasts at most this long"),
        new(PlanItem.SameEventMinutes, "same-event minutes", "10", "minutes", "chosen by CareRecords"),
        new(PlanItem.TargetShareKept, "target share kept", null, "%", ""),
        new(PlanItem.ChildCalled, "child", null, "", ""),
        new(PlanItem.AgeBand, "age band", null, "years", ""),
        new(PlanItem.StudyGroup, "study group", null, "", ""),
    ];

    private static readonly Dictionary<PlanItem, Description> ByItem = All.ToDictionary(d => d.Item);

    /// <summary>The items that set minutes for one part of the chest; the other parts have those of <see cref="PlanItem.MinutesPerArea"/>.</summary>
    public static IReadOnlyList<PlanItem> MinutesOfParts { get; } = [PlanItem.MinutesLower, PlanItem.MinutesUpper, PlanItem.MinutesVibration];

    /// <summary>The description of an item.</summary>
    public static Description Describe(PlanItem item) => ByItem[item];
}
