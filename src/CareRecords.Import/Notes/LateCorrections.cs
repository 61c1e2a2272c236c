using CareRecords.Import.Reading;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Notes;

/// <summary>Puts records of earlier days right, where exactly one record can be meant.</summary>
internal static class LateCorrections
{
    private const int EarlyHour = 6;

    /// <summary>Without a unit a smaller number is a flow, and neither a saturation nor a pulse.</summary>
    public const double LeastPercent = 20;

    /// <summary>Changes the record that is corrected, in place; false when none or several could be meant.</summary>
    /// <param name="entries">The records told so far.</param>
    /// <param name="late">The correction.</param>
    /// <param name="written">The day on which it was written.</param>
    /// <param name="source">Its line.</param>
    public static bool Apply(List<CareEntry> entries, LateCorrection late, LocalDate written, SourceLine source)
    {
        var day = late.Of(written);
        var found = new List<(int At, CareEntry Right)>();
        for (var i = 0; i < entries.Count; i++)
        {
            if (!IsOf(entries[i], day) || !IsKind(entries[i], late)) continue;
            if (Right(entries[i], late) is { } right) found.Add((i, right));
        }
        if (found.Count != 1) return false;
        var (at, changed) = found[0];
        Replace(entries, at, changed with { Sources = [.. changed.Sources, source], HowRead = Joined(changed.HowRead, $"'{late.Wrong.Text}' put right to '{late.Right.Text}' as {source.Place} says.") });
        return true;
    }

    /// <summary>Puts an entry in the place of another; readings that borrowed its time follow it.</summary>
    public static void Replace(List<CareEntry> entries, int at, CareEntry changed)
    {
        var before = entries[at];
        entries[at] = changed;
        if (before.Start is { } old && changed.Start is { } moved && old.Stated != moved.Stated) Follow(entries, old.Stated, moved.Stated);
    }

    private static string Joined(string? before, string now) => before is null ? now : before + " " + now;

    private static bool IsOf(CareEntry entry, LocalDate day) => entry.When.Stated.Date == day || (entry.When.Stated.Date == day.PlusDays(1) && entry.When.Stated.Hour < EarlyHour);

    private static bool IsKind(CareEntry entry, LateCorrection late)
    {
        if (late.Medicine is { } medicine && entry is Dose dose) return dose.Medicine == medicine;
        if (late.Kinds == CareKinds.None) return true;
        return (entry switch { Session => CareKinds.Session, Feed => CareKinds.Feed, Dose => CareKinds.Dose, Check => CareKinds.Check, _ => CareKinds.Sign } & late.Kinds) != 0;
    }

    // The record as it should be; null when it does not have the wrong value.
    private static CareEntry? Right(CareEntry entry, LateCorrection late)
    {
        if (late.Wrong.Clock is { } wrong && late.Right.Clock is { } right && (late.Wrong.Kind == TermKind.Time || late.Right.Kind == TermKind.Time))
            return WithTime(entry, wrong.Start, right.Start);
        if (late.At is { } at && !Is(entry.When.Stated, at)) return null;
        return WithValue(entry, late.Wrong.Number, late.Right.Number, late.Wrong.Unit == Unit.Litre || late.Right.Unit == Unit.Litre || late.Wrong.Number < LeastPercent);
    }

    /// <summary>The entry with its start, or else its end, put right; null when neither is at the wrong time.</summary>
    public static CareEntry? WithTime(CareEntry entry, ClockTime wrong, ClockTime right)
    {
        if (entry.Start is { Precision: not TimePrecision.Borrowed } start && Is(start.Stated, wrong)) return Begun(entry, Moved(start, right));
        return entry.End is { } end && Is(end.Stated, wrong) ? entry with { End = Moved(end, right) } : null;
    }

    /// <summary>The entry with another start; an end that would then lie before it is no longer known.</summary>
    public static CareEntry Begun(CareEntry entry, UncertainTime start) => entry with { Start = start, End = entry.End is { } end && end.Latest < start.Earliest ? null : entry.End };

    /// <summary>The entry with a value put right; null when it has no such value.</summary>
    /// <param name="entry">The entry.</param>
    /// <param name="old">The wrong value.</param>
    /// <param name="now">The right value.</param>
    /// <param name="isFlow">Whether the values are of oxygen.</param>
    public static CareEntry? WithValue(CareEntry entry, double old, double now, bool isFlow) => entry switch
    {
        Check check when check.OxygenLitresPerMinute == old && isFlow => check with { OxygenLitresPerMinute = now },
        Check check when check.SpO2 == old && !isFlow => check with { SpO2 = now },
        Check check when check.Pulse == old && !isFlow => check with { Pulse = now },
        Sign sign when sign.Number == old => sign with { Number = now, Value = sign.Value?.Replace(Doubts.Plain(old), Doubts.Plain(now), StringComparison.Ordinal) },
        Feed feed when feed.Millilitres == old => feed with { Millilitres = now },
        Feed feed when feed.MillilitresPerHour == old => feed with { MillilitresPerHour = now },
        _ => null,
    };

    private static bool Is(LocalDateTime stated, ClockTime clock)
    {
        var (a, b) = (stated.Hour * 60 + stated.Minute, clock.Time.Hour * 60 + clock.Time.Minute);
        return clock.Half == HalfOfDay.Unknown ? a % 720 == b % 720 : a == b;
    }

    /// <summary>The right time, in the half of the day that lies nearer the wrong one where it is not said.</summary>
    public static UncertainTime Moved(UncertainTime from, ClockTime to)
    {
        var minutes = to.Time.Hour * 60 + to.Time.Minute;
        var near = to.Half != HalfOfDay.Unknown ? from.Stated.Date.AtMidnight().PlusMinutes(minutes)
            : Enumerable.Range(-1, 4).Select(half => from.Stated.Date.AtMidnight().PlusMinutes(minutes % 720 + 720 * half)).MinBy(t => Math.Abs(Period.Between(from.Stated, t, PeriodUnits.Minutes).Minutes));
        return UncertainTime.Exactly(near);
    }

    private static void Follow(List<CareEntry> entries, LocalDateTime from, LocalDateTime to)
    {
        for (var i = 0; i < entries.Count; i++)
            if (entries[i].Start is { Precision: TimePrecision.Borrowed } start && start.Stated == from)
                entries[i] = entries[i] with { Start = TimesOfEvents.Borrowed(to, entries[i] is Check check ? check.Phase : CheckPhase.None) };
    }
}
