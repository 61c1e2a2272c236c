using CareRecords.Import.Notes;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Merging;

/// <summary>
/// Notices a session of one book exactly twelve hours from one of another book on the same day: the same session may have been read, or written, in the
/// wrong half of the day. Sessions on the hour or half hour are often twelve hours apart by plan, and are not asked about.
/// </summary>
internal static class HalfDayTwins
{
    private const int MinutesOfHalf = 12 * 60;
    private const int PlannedEvery = 30;

    /// <summary>Pairs, the morning first; none where either book has a session of its own near the other's, or another book bears one out.</summary>
    public static IReadOnlyList<(int Morning, int Evening)> Find(IReadOnlyList<CareEntry?> entries, int sameEventMinutes)
    {
        var days = new Dictionary<LocalDate, List<int>>();
        for (var i = 0; i < entries.Count; i++)
        {
            if (entries[i] is not Session { Start: { IsExact: true } start }) continue;
            if (!days.TryGetValue(start.Stated.Date, out var ofDay)) days[start.Stated.Date] = ofDay = [];
            ofDay.Add(i);
        }

        var pairs = new List<(int, int)>();
        foreach (var ofDay in days.Values)
            for (var a = 0; a < ofDay.Count; a++)
                for (var b = a + 1; b < ofDay.Count; b++)
                    if (Are((Session)entries[ofDay[a]]!, (Session)entries[ofDay[b]]!) && !Borne(entries, ofDay, ofDay[a], ofDay[b], sameEventMinutes))
                        pairs.Add((ofDay[a], ofDay[b]));
        return pairs;
    }

    private static bool Are(Session one, Session other) =>
        Minutes(one, other) == MinutesOfHalf && one.Start!.Stated.Minute % PlannedEvery != 0 && one.Sources[0].File != other.Sources[0].File
        && one.Sources.Select(s => s.File).Distinct().Count() == 1 && other.Sources.Select(s => s.File).Distinct().Count() == 1
        && !(one.By is { } a && other.By is { } b && string.Equals(a, b, StringComparison.OrdinalIgnoreCase));

    // A book with a session of its own near the other's time knows of both.
    private static bool Borne(IReadOnlyList<CareEntry?> entries, List<int> ofDay, int one, int other, int room) =>
        ofDay.Exists(i => i != one && i != other && entries[i] is Session session
            && ((Near(session, (Session)entries[other]!, room) && session.Sources.Any(s => s.File == entries[one]!.Sources[0].File))
                || (Near(session, (Session)entries[one]!, room) && session.Sources.Any(s => s.File == entries[other]!.Sources[0].File))));

    private static bool Near(Session one, Session other, int room) => Minutes(one, other) <= Math.Max(room, 1) * 6L;

    private static long Minutes(Session one, Session other) => Math.Abs(Period.Between(one.Start!.Stated, other.Start!.Stated, PeriodUnits.Minutes).Minutes);

    /// <summary>The question of a pair.</summary>
    public static (string Name, AskedQuestion Asked) Question(Session morning, Session evening) =>
        ($"half-day:{morning.Sources[0].Place}+{evening.Sources[0].Place}",
            new AskedQuestion($"Is '{morning.Sources[0].Text}' ({morning.Sources[0].Place}) the same session as '{evening.Sources[0].Text}' ({evening.Sources[0].Place}), twelve hours later to the minute?",
                ["two sessions", $"one, at {Time(morning)}", $"one, at {Time(evening)}"]));

    /// <summary>Whether an answer says that the pair is one session, and which of the two times is right; null for two sessions.</summary>
    public static bool? IsMorning(string answer, Session morning, Session evening) =>
        !answer.TrimStart().StartsWith("one", StringComparison.OrdinalIgnoreCase) ? null
        : answer.Contains(Time(morning), StringComparison.Ordinal) ? true : answer.Contains(Time(evening), StringComparison.Ordinal) ? false : null;

    private static string Time(Session session) => NodaTime.Text.LocalTimePattern.CreateWithInvariantCulture("HH:mm").Format(session.Start!.Stated.TimeOfDay);
}
