using NodaTime;

namespace CareRecords.Records;

/// <summary>Why a time is an interval and not a point.</summary>
public enum TimePrecision
{
    /// <summary>Written as a clock time with its date: a point.</summary>
    Exact,

    /// <summary>Written as "about", "ish", "~", "by", "around".</summary>
    About,

    /// <summary>Written to the hour or half hour in words that round ("half eight or so").</summary>
    Rounded,

    /// <summary>A part of the day or a meal ("morning", "after lunch").</summary>
    PartOfDay,

    /// <summary>Only the day is known.</summary>
    DayOnly,

    /// <summary>Taken from the session or event it was written beside.</summary>
    Borrowed,

    /// <summary>The stamp of a message written at or after the event.</summary>
    MessageStamp,

    /// <summary>Reckoned from another written time ("15 minutes before physio").</summary>
    Reckoned,
}

/// <summary>
/// A recorded local wall-clock time as the closed interval [<see cref="Earliest"/>, <see cref="Latest"/>].
/// An exact time has both equal. <see cref="Stated"/> is the time to show, and always lies inside.
/// </summary>
public sealed record UncertainTime
{
    private UncertainTime(LocalDateTime stated, LocalDateTime earliest, LocalDateTime latest, TimePrecision precision)
    {
        if (earliest > stated || stated > latest)
            throw new ArgumentException("A stated time lies between its earliest and its latest.", nameof(stated));
        (Stated, Precision) = (stated, precision);
        if (earliest < latest) _room = new Room(earliest, latest);
    }

    // Null for a point, as nearly every time is: a long log keeps a million of them.
    private readonly Room? _room;

    private sealed record Room(LocalDateTime Earliest, LocalDateTime Latest);

    /// <summary>The time to show: as written, or the middle of what was written.</summary>
    public LocalDateTime Stated { get; }

    /// <summary>The earliest local time that the words allow, included.</summary>
    public LocalDateTime Earliest => _room?.Earliest ?? Stated;

    /// <summary>The latest local time that the words allow, included.</summary>
    public LocalDateTime Latest => _room?.Latest ?? Stated;

    /// <summary>Why the interval is as wide as it is.</summary>
    public TimePrecision Precision { get; }

    /// <summary>True when earliest and latest coincide.</summary>
    public bool IsExact => _room is null;

    /// <summary>True when the time was not written as a clock time of its own (records.json <c>approximate</c>).</summary>
    public bool IsApproximate => Precision != TimePrecision.Exact;

    /// <summary>A point in local time.</summary>
    public static UncertainTime Exactly(LocalDateTime at) => new(at, at, at, TimePrecision.Exact);

    /// <summary>A point by its width, but not written there: borrowed or reckoned from another exact time.</summary>
    public static UncertainTime At(LocalDateTime at, TimePrecision why) => new(at, at, at, why);

    /// <summary>A time stated with room on both sides.</summary>
    /// <exception cref="ArgumentException"><paramref name="stated"/> lies outside the interval.</exception>
    public static UncertainTime Between(LocalDateTime earliest, LocalDateTime stated, LocalDateTime latest, TimePrecision why) =>
        new(stated, earliest, latest, why);

    /// <summary>The whole of a calendar day, shown as its noon.</summary>
    public static UncertainTime OnDay(LocalDate day) =>
        new(day.At(LocalTime.Noon), day.AtMidnight(), day.At(new LocalTime(23, 59)), TimePrecision.DayOnly);
}
