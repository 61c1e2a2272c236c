using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>What the row and the heading of an event say where the event's own cells do not.</summary>
internal sealed partial class SlotFacts(BlockReading reading)
{
    /// <summary>True when a remark of the row says that the session was not done; then it is kept as left out.</summary>
    public bool SaysNotDone(BlockRow row, RowWhen when)
    {
        // "nobody - at the clinic, skipped" may stand under who did it.
        foreach (var column in reading.Slots.By < 0 ? reading.Slots.Words : [.. reading.Slots.Words, reading.Slots.By])
        {
            if (row[column].Cell.Words is not { } text || !SameAs.SaysNotDone(text) || when.Day is not { } day) continue;
            reading.Into.Omitted.Add(new OmittedSession(when.Start ?? UncertainTime.OnDay(day), text, row[column].Source));
            reading.Use(row[column]);
            return true;
        }

        return false;
    }

    /// <summary>True where a remark says that it is still to come: "to do - Gran's turn".</summary>
    public bool IsToCome(BlockRow row) => reading.Slots.Words.Any(c => row[c].Cell.Words is { } text && ToCome().IsMatch(text));

    [System.Text.RegularExpressions.GeneratedRegex(@"^\W*(?:still )?(?:to do|to be done|todo|due|planned|tbc|not yet)\b(?!.*\bdone\b)", System.Text.RegularExpressions.RegexOptions.IgnoreCase)]
    private static partial System.Text.RegularExpressions.Regex ToCome();

    /// <summary>True when a session's own cells, or a remark beside no values of it, say that it was not done; then it is kept as left out.</summary>
    public bool WasLeftOut(BlockRow row, Slot slot, UncertainTime due, RowWhen when)
    {
        var own = slot.Values.Where(v => !IsMeasure(v) && !row[v].Cell.IsEmpty).ToList();
        if (own.Count > 0 && own.TrueForAll(v => NotSaid.Is(row[v].Cell.Text.Trim()) || SameAs.SaysNotDone(row[v].Cell.Text) || SameAs.IsNo(row[v].Cell.Text)) && own.FirstOrDefault(v => SameAs.SaysNotDone(row[v].Cell.Text) || SameAs.IsNo(row[v].Cell.Text), -1) is >= 0 and var said)
        {
            reading.Into.Omitted.Add(new OmittedSession(due, row[said].Cell.Words, row[said].Source));
            foreach (var value in own) reading.Use(row[value]);
            return true;
        }

        return own.Count == 0 && (slot.Values.Count > 0 || slot.Time >= 0) && IsAlone(slot) && slot.Values.TrueForAll(v => row[v].Cell.IsEmpty || NotSaid.Is(row[v].Cell.Text.Trim())) && SaysNotDone(row, when with { Start = due });
    }

    /// <summary>True for the only session of a row.</summary>
    public bool IsAlone(Slot slot) => !reading.Slots.Slots.Exists(s => s != slot && s.Kind == TableKind.Sessions);

    /// <summary>The row's day, asked about, where it has values and no time.</summary>
    public UncertainTime? DayOnly(BlockRow row, Slot slot, RowWhen when)
    {
        if (when.IsBad || !SessionCells.HasValues(row, slot) || slot.Values.Where(v => !IsMeasure(v)).All(v => row[v].Cell.IsEmpty)) return null;
        // Under "Morning" or "AM" a part of the day is all that the layout asks for.
        if (slot.Half == HalfOfDay.Unknown && slot.Part is null && reading.Part is null && !slot.Values.Exists(v => reading.Block.Columns[v].At is not null)) reading.Cells.Ask(reading.SourceOf(row, -1), "No time is written in this row.", "Write the time of the event.");
        return PartOrDay(slot, when);
    }

    /// <summary>The part of the day that the event's heading or the row names, else the day; null without a day.</summary>
    public UncertainTime? PartOrDay(Slot slot, RowWhen when) => when.Day is null ? null : PartOrDayOf(slot);

    /// <summary>The same on the open day.</summary>
    public UncertainTime? PartOrDayOf(Slot slot)
    {
        if (reading.Day is not { } day) return null;
        // "6am physio" over a tick: about then.
        if (Due(slot) is { } due) return due;
        var part = slot.Part ?? slot.Half switch { HalfOfDay.Am => "morning", HalfOfDay.Pm => "evening", _ => reading.Part };
        // A night lies on two days: only the day under which it is written is known.
        return part is not null and not "night" && ClockReader.Read(part).TryGet(out var span) ? span.Start.On(day) : UncertainTime.OnDay(day);
    }

    /// <summary>About the time of day that the event's heading fixes, on the open day; null where it fixes none.</summary>
    public UncertainTime? Due(Slot slot) => reading.Day is { } day && slot.Values.Prepend(slot.End).Prepend(slot.Time).Where(c => c >= 0).Select(c => reading.Block.Columns[c].At).FirstOrDefault(a => a is not null) is { } at
        ? About(at.In(slot.Half == HalfOfDay.Unknown ? at.Half == HalfOfDay.Unknown ? HalfOfDay.Am : at.Half : slot.Half).On(day)) : null;

    // A time that the layout fixes is when it was due; half an hour either way is chosen by CareRecords.
    private static UncertainTime About(UncertainTime due) => UncertainTime.Between(due.Stated.PlusMinutes(-30), due.Stated, due.Stated.PlusMinutes(30), TimePrecision.About);

    /// <summary>Whether another event of the row has values: then this one, without any, did not happen.</summary>
    public bool Others(BlockRow row, Slot slot) =>
        reading.Slots.Slots.Any(s => s != slot && (SessionCells.HasValues(row, s) || !row[s.Time].Cell.IsEmpty || !row[s.End].Cell.IsEmpty))
        || reading.Slots.Slots.Count(s => s.Time < 0) > 1;

    /// <summary>True for a column of saturation, pulse, oxygen or phase.</summary>
    public bool IsMeasure(int column) => reading.Block.Columns[column].Role is Role.Saturation or Role.Pulse or Role.Oxygen or Role.Phase;
}
