using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Reading;

/// <summary>Whether a clock time is known to be before or after noon.</summary>
internal enum HalfOfDay
{
    /// <summary>"7.15": could be either.</summary>
    Unknown,

    /// <summary>Before noon, or 24-hour writing.</summary>
    Am,

    /// <summary>From noon on, or 24-hour writing.</summary>
    Pm,
}

/// <summary>A time of day as written, before a date and the context settle it.</summary>
/// <param name="Time">The time; for <see cref="HalfOfDay.Unknown"/> the reading before noon (12:xx stays 12:xx).</param>
/// <param name="Half">Which half of the day is known. For a part of the day alone it is not used.</param>
/// <param name="Precision"><see cref="TimePrecision.Exact"/>, <see cref="TimePrecision.About"/> or <see cref="TimePrecision.PartOfDay"/>.</param>
/// <param name="DayPart">The part of day or meal as written ("after lunch"); null when a clock time was written.</param>
/// <param name="From">Earliest time of day that the words allow, included (equal to <paramref name="Time"/> when exact).</param>
/// <param name="To">Latest time of day that the words allow, included.</param>
internal sealed record ClockTime(LocalTime Time, HalfOfDay Half, TimePrecision Precision, string? DayPart, LocalTime From, LocalTime To)
{
    /// <summary>True when written with an hour of 13 or more: the writer counts to 24.</summary>
    public bool TwentyFourHour { get; init; }

    /// <summary>The same, settled before or after noon; a time whose half is known is returned unchanged.</summary>
    public ClockTime In(HalfOfDay half) =>
        Half != HalfOfDay.Unknown || half == HalfOfDay.Unknown ? this
        : half == HalfOfDay.Am ? this with { Half = half, Time = Morning(Time), From = Morning(From), To = Morning(To) }
        : this with { Half = half, Time = Afternoon(Time), From = Afternoon(From), To = Afternoon(To) };

    /// <summary>Written on a date: an exact point, or the interval that the words allow.</summary>
    public UncertainTime On(LocalDate date) =>
        Precision == TimePrecision.Exact
            ? UncertainTime.Exactly(date.At(Time))
            : UncertainTime.Between(date.At(From <= Time ? From : LocalTime.Midnight), date.At(Time), date.At(To >= Time ? To : new LocalTime(23, 59)), Precision);

    private static LocalTime Morning(LocalTime t) => t.Hour >= 12 ? t.PlusHours(-12) : t;

    private static LocalTime Afternoon(LocalTime t) => t.Hour < 12 ? t.PlusHours(12) : t;
}

/// <summary>A time or a range of times as written ("7-7.30", "1530–1550").</summary>
/// <param name="Start">The time, or where the range starts.</param>
/// <param name="End">Where it ends; null when one time was written.</param>
internal sealed record ClockSpan(ClockTime Start, ClockTime? End);
