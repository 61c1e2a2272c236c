using CareRecords.Import.Reading;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Notes;

/// <summary>Makes uncertain times of settled mentions, parts of the day, stamps and bare days.</summary>
internal static class TimesOfEvents
{
    // Rooms chosen by CareRecords: how far an event can lie from the time that it borrows.
    private const int BeforeRoomMinutes = 30;
    private const int AfterRoomMinutes = 60;
    private const int ReckonedRoomMinutes = 5;
    private const int StampRoomMinutes = 120;

    /// <summary>The time of an event; null when its mention is not settled.</summary>
    public static UncertainTime? Of(TimeRef time, CheckPhase phase = CheckPhase.None)
    {
        if (time.Stamp is { } stamp) return Stamped(stamp, time.Taken ?? TimePrecision.MessageStamp);
        if (time.Mention is { } mention)
        {
            if (mention.Settled is not { } settled || mention.Unsettled) return null;
            return Around(settled.PlusMinutes((long)Math.Round(time.OffsetMinutes)), mention.Written, time.Taken, phase);
        }
        if (time.Date is not { } date) return null;
        return time.PartKind is { } part ? OfPart(date, part, time.Part ?? "") : UncertainTime.OnDay(date);
    }

    /// <summary>A time taken from the stamp of a message: the event lies at or before it.</summary>
    public static UncertainTime Stamped(LocalDateTime stamp, TimePrecision why = TimePrecision.MessageStamp) =>
        why == TimePrecision.Reckoned ? UncertainTime.Between(stamp.PlusMinutes(-ReckonedRoomMinutes), stamp, stamp.PlusMinutes(ReckonedRoomMinutes), why)
        : UncertainTime.Between(stamp.PlusMinutes(-StampRoomMinutes), stamp, stamp, why);

    /// <summary>A time borrowed from another event.</summary>
    public static UncertainTime Borrowed(LocalDateTime at, CheckPhase phase) => phase switch
    {
        CheckPhase.Before => UncertainTime.Between(at.PlusMinutes(-BeforeRoomMinutes), at, at, TimePrecision.Borrowed),
        CheckPhase.After => UncertainTime.Between(at, at, at.PlusMinutes(AfterRoomMinutes), TimePrecision.Borrowed),
        _ => UncertainTime.Between(at.PlusMinutes(-BeforeRoomMinutes), at, at.PlusMinutes(AfterRoomMinutes), TimePrecision.Borrowed),
    };

    /// <summary>
    /// The time of a reading before or after a session: the session's, as for every borrowed time. After a session whose end is written it may be as late as the room after that end.
    /// </summary>
    /// <param name="start">When the session began.</param>
    /// <param name="end">When it ended; null when that is not written.</param>
    /// <param name="phase">Before or after it.</param>
    public static UncertainTime OfSession(LocalDateTime start, UncertainTime? end, CheckPhase phase) =>
        phase == CheckPhase.After && end is not null ? UncertainTime.Between(start, start, end.Latest.PlusMinutes(AfterRoomMinutes), TimePrecision.Borrowed) : Borrowed(start, phase);

    private static UncertainTime Around(LocalDateTime at, ClockTime written, TimePrecision? taken, CheckPhase phase) => taken switch
    {
        TimePrecision.Borrowed => Borrowed(at, phase),
        TimePrecision.Reckoned => UncertainTime.Between(at.PlusMinutes(-ReckonedRoomMinutes), at, at.PlusMinutes(ReckonedRoomMinutes), TimePrecision.Reckoned),
        _ when written.Precision == TimePrecision.About => UncertainTime.Between(at.PlusMinutes(-TimeGrammar.RoomMinutes), at, at.PlusMinutes(TimeGrammar.RoomMinutes), TimePrecision.About),
        _ => UncertainTime.Exactly(at),
    };

    /// <summary>The interval of a part of a day (hours chosen by CareRecords; night is that of the date's early hours or its late ones).</summary>
    public static UncertainTime OfPart(LocalDate date, string part, string words)
    {
        var (from, stated, until) = part switch
        {
            "morning" => (5.0, 9.0, 12.0),
            "mid morning" => (9, 10.5, 12),
            "afternoon" => (12, 15, 18),
            "evening" => (17, 19, 22.98),
            "night" => (0, 3, 23.98),
            "bed" => (18, 20, 23.98),
            "breakfast" => (5.5, 8, 11),
            "lunch" => (11, 12.5, 15),
            "tea" => (15, 17, 19.5),
            "dinner" => (11, 18, 20.5),
            "supper" => (16.5, 18.5, 21.5),
            "snack" => (9, 15, 17),
            "school" => (8, 15.5, 17.5),
            "nap" => (10, 14, 17),
            _ => (0, 12, 23.98),
        };
        if (words.Contains("after", StringComparison.Ordinal)) (from, until) = (stated, Math.Min(23.98, until + 2));
        return UncertainTime.Between(At(from), At(stated), At(until), TimePrecision.PartOfDay);

        LocalDateTime At(double hours) => date.AtMidnight().PlusMinutes((long)Math.Round(hours * 60));
    }
}
