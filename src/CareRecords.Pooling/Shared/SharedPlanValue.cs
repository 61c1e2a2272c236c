namespace CareRecords.Pooling;

/// <summary>The plan's items that are numbers; the others (zone, names, clock times) are never shared.</summary>
public enum SharedPlanItem
{
    /// <summary>Least minutes between the end of a feed and a session.</summary>
    FeedGapMinutes,

    /// <summary>Least minutes between the inhaler and a session.</summary>
    InhalerGapMinutes,

    /// <summary>Most minutes between the inhaler and a session.</summary>
    InhalerWindowMinutes,

    /// <summary>Sessions a day.</summary>
    SessionsPerDay,

    /// <summary>Minutes for each area and technique.</summary>
    MinutesPerArea,

    /// <summary>Minutes for the lower chest, where they differ.</summary>
    MinutesLower,

    /// <summary>Minutes for the upper chest, where they differ.</summary>
    MinutesUpper,

    /// <summary>Minutes of vibration, where they differ.</summary>
    MinutesVibration,

    /// <summary>Lower end of the target saturation, per cent.</summary>
    TargetSaturationLow,

    /// <summary>Upper end of the target saturation, per cent.</summary>
    TargetSaturationHigh,

    /// <summary>Saturation below which the plan says to stop, per cent.</summary>
    StopSaturation,

    /// <summary>Usual oxygen, L/min.</summary>
    UsualOxygen,

    /// <summary>How long a feed usually takes, minutes.</summary>
    UsualFeedMinutes,

    /// <summary>How close two entries must be to be the same event, minutes.</summary>
    SameEventMinutes,

    /// <summary>Share of gaps to be kept that the team asked for, per cent.</summary>
    TargetShareKept,
}

/// <summary>A plan value from a day on.</summary>
/// <param name="Item">What it states.</param>
/// <param name="FromDay">From which day; null from the first.</param>
/// <param name="Low">The value, or the lower end of a range.</param>
/// <param name="High">The upper end; equal to <paramref name="Low"/> for one number.</param>
/// <param name="IsDefault">True when it is a starting value of the program and not the plan's.</param>
public sealed record SharedPlanValue(SharedPlanItem Item, int? FromDay, double Low, double High, bool IsDefault);
