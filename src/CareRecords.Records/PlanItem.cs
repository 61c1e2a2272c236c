using NodaTime;

namespace CareRecords.Records;

/// <summary>What a plan can state. The names as families write them are in <see cref="PlanItems"/>.</summary>
public enum PlanItem
{
    /// <summary>IANA time zone.</summary>
    TimeZone,

    /// <summary>Clock time at which a care day starts.</summary>
    DayStarts,

    /// <summary>Least minutes between the end of a feed and a session.</summary>
    FeedGapMinutes,

    /// <summary>Least minutes between the inhaler and a session.</summary>
    InhalerGapMinutes,

    /// <summary>Most minutes between the inhaler and a session.</summary>
    InhalerWindowMinutes,

    /// <summary>Which medicine the inhaler check uses.</summary>
    MedicineBeforeSession,

    /// <summary>Sessions a day.</summary>
    SessionsPerDay,

    /// <summary>Minutes for each area and technique, each side.</summary>
    MinutesPerArea,

    /// <summary>Minutes of percussion of the lower chest, each side, where they differ from <see cref="MinutesPerArea"/>.</summary>
    MinutesLower,

    /// <summary>Minutes of percussion of the upper chest, each side, where they differ.</summary>
    MinutesUpper,

    /// <summary>Minutes of vibration, each side (and each area, where areas are vibrated one by one), where they differ.</summary>
    MinutesVibration,

    /// <summary>Lower end of the target saturation, per cent.</summary>
    TargetSaturationLow,

    /// <summary>Upper end of the target saturation, per cent.</summary>
    TargetSaturationHigh,

    /// <summary>Saturation below which the plan says to stop, per cent.</summary>
    StopSaturation,

    /// <summary>Usual oxygen, litres a minute.</summary>
    UsualOxygen,

    /// <summary>How long a feed usually takes, minutes.</summary>
    UsualFeedMinutes,

    /// <summary>How close two entries must be to be the same event, minutes.</summary>
    SameEventMinutes,

    /// <summary>Share of gaps to be kept that the team asked for, per cent.</summary>
    TargetShareKept,

    /// <summary>How the family calls the child on the front page; never shared.</summary>
    ChildCalled,

    /// <summary>The child's age band ("1-4"), for shared copies when given.</summary>
    AgeBand,

    /// <summary>Study group, for shared copies when given.</summary>
    StudyGroup,
}

/// <summary>One dated row of a plan. It holds from its date until a later row for the same item.</summary>
/// <param name="From">The first care day on which it holds; null when the plan gave no date: it holds from the first record.</param>
/// <param name="Item">What it states.</param>
/// <param name="Value">The value as written.</param>
/// <param name="Low">Its number, or the lower end of a range ("3-5"); null when it is not a number.</param>
/// <param name="High">The upper end of a range; equal to <paramref name="Low"/> for one number; null when it is not a number.</param>
/// <param name="Source">Where it was written; null for a value given as an option on the command line.</param>
public sealed record PlanRow(LocalDate? From, PlanItem Item, string Value, double? Low, double? High, SourceLine? Source);
