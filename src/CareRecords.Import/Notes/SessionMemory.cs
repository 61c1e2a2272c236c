using System.Globalization;
using CareRecords.Import.Reading;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Notes;

/// <summary>A session already told.</summary>
/// <param name="At">When it was, or noon of its day when only the day is known.</param>
/// <param name="Areas">Its areas.</param>
/// <param name="Line">Zero-based line.</param>
/// <param name="Item">The number of its line in a list; null when none.</param>
/// <param name="Partial">Whether it was told as less than the rest ("only the lowers"): a plain "same" later does not mean it, unless it follows at once.</param>
internal sealed record ToldSession(LocalDateTime At, IReadOnlyList<AreaMinutes> Areas, int Line, int? Item, bool Partial = false);

/// <summary>Remembers the sessions of the last days, so that "same", "as am", "as yesterday" and "same as 2)" can be filled in.</summary>
internal sealed class SessionMemory
{
    private const int Kept = 200;
    private readonly List<ToldSession> _told = [];

    /// <summary>The last session told; null when none was.</summary>
    public ToldSession? Last => _told.Count > 0 ? _told[^1] : null;

    /// <summary>The last session told that fits; null when none does.</summary>
    public ToldSession? FindLast(Predicate<ToldSession> fits) => _told.FindLast(fits);

    /// <summary>Keeps a session.</summary>
    public void Keep(ToldSession session)
    {
        if (_told.Count >= 2 * Kept) _told.RemoveRange(0, Kept);
        _told.Add(session);
    }

    /// <summary>Changes the last session's areas, after a line that gave details of it.</summary>
    public void Replace(ToldSession old, ToldSession now)
    {
        var at = _told.LastIndexOf(old);
        if (at >= 0) _told[at] = now;
    }

    /// <summary>Sessions of a calendar day in the order told.</summary>
    public IReadOnlyList<ToldSession> Of(LocalDate day) => _told.Where(s => s.At.Date == day).ToList();

    /// <summary>The session that a reference means; null when there is none.</summary>
    public ToldSession? Find(Term reference, LocalDateTime at, int? index, int line)
    {
        var to = Enum.Parse<ReferTo>(reference.ValueOf(Sense.Same)!);
        switch (to)
        {
            case ReferTo.Time when reference.Clock is { } clock:
                return _told.FindLast(s => s.At.Date == at.Date && Same(s.At.TimeOfDay, clock.Start)) ?? _told.FindLast(s => Same(s.At.TimeOfDay, clock.Start));
            case ReferTo.Item:
                return _told.FindLast(s => s.Item == (int)reference.Number && s.At.Date == at.Date) ?? _told.FindLast(s => s.Item == (int)reference.Number)
                    // Without numbered lines, "as 7" is the session at seven, and "as 1" the first of the day.
                    ?? _told.FindLast(s => s.At < at && s.At.Hour % 12 == (int)reference.Number % 12 && s.At.Minute == 0) ?? Of(at.Date).OrderBy(s => s.At).ElementAtOrDefault((int)reference.Number - 1);
            case ReferTo.Part:
                var part = GroupReader.PartKind(reference);
                return _told.FindLast(s => s.At < at && s.At.Date == at.Date && IsIn(s.At, part)) ?? _told.FindLast(s => s.At < at && IsIn(s.At, part));
            case ReferTo.Day:
                var sessions = Of(DayOf(reference, at.Date));
                if (sessions.Count == 0) return null;
                if (reference.Clock is { } named && sessions.FirstOrDefault(s => Same(s.At.TimeOfDay, named.Start)) is { } then) return then;
                if ((reference.Is(Sense.DayPart) || reference.Is(Sense.AmPm)) && reference.Is(Sense.Weekday) && sessions.LastOrDefault(s => IsIn(s.At, GroupReader.PartKind(reference))) is { } inPart) return inPart;
                return (index is { } k && k < sessions.Count ? sessions.OrderBy(s => s.At).ElementAt(k) : null) ?? sessions.FirstOrDefault(s => s.At.TimeOfDay == at.TimeOfDay) ?? sessions[^1];
            default:
                return _told.FindLast(s => s.Areas.Count > 0 && s.Line <= line && !(s.Partial && s.At.Date < at.Date)) ?? _told.FindLast(s => s.Areas.Count > 0 && s.Line <= line) ?? Last;
        }
    }

    /// <summary>The day that "yesterday", "Monday" or "8th" means, seen from a day.</summary>
    public static LocalDate DayOf(Term reference, LocalDate from)
    {
        if (reference.Is(Sense.DayRef)) return from.PlusDays(int.Parse(reference.ValueOf(Sense.DayRef)!, CultureInfo.InvariantCulture));
        if (reference.Is(Sense.Weekday)) { var day = DayTimes.OtherDay(reference, from); return day == from ? from.PlusDays(-7) : day; }
        if (reference.Parts is [var one, var two]) return DayBefore((int)one, (int)two, from) ?? from.PlusDays(-1);
        return DateReader.Settle(new DateWritten(null, null, null, null, (int)reference.Number, IsoDayOfWeek.None), null, from, from, false) is { Outcome: Outcome.Certain } found ? found.Value : from.PlusDays(-1);
    }

    // "same as 6/10": the day of either order that lies nearest before.
    private static LocalDate? DayBefore(int one, int two, LocalDate from)
    {
        LocalDate? best = null;
        foreach (var (month, day) in new[] { (one, two), (two, one) })
            foreach (var year in new[] { from.Year, from.Year - 1 })
                if (month <= 12 && day <= CalendarSystem.Iso.GetDaysInMonth(year, month) && new LocalDate(year, month, day) is var date && date < from && (best is null || date > best)) best = date;
        return best;
    }

    private static bool Same(LocalTime time, ClockTime written) => time == written.Time || (written.Half == HalfOfDay.Unknown && time == written.Time.PlusHours(12));

    private static bool IsIn(LocalDateTime at, string part) => part switch
    {
        "morning" or "breakfast" or "mid morning" => at.Hour < 12,
        "afternoon" or "lunch" or "tea" => at.Hour is >= 12 and < 18,
        "evening" or "dinner" or "supper" or "bed" => at.Hour >= 16,
        "night" => at.Hour is >= 19 or < 7,
        _ => true,
    };
}
