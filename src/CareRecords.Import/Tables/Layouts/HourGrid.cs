using CareRecords.Import.Reading;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>Reads grids of hours by days: each filled cell is what happened in that hour of that day.</summary>
internal sealed class HourGrid(BlockReading reading, FreeWords words)
{
    private readonly bool _exact = AreTimes([.. reading.Block.Rows.Select(r => r[1].Cell)]);

    private const int FewestHours = 3;

    private readonly HourCells _cells = new(reading, words);

    /// <summary>True when labels are the hours of a day: most of them whole hours or times, at least three.</summary>
    public static bool IsHours(IReadOnlyList<Cell> labels)
    {
        var filled = labels.Where(c => !c.IsEmpty).ToList();
        var hours = filled.Count(c => HourOf(c) is not null);
        return hours >= FewestHours && hours * 5 >= filled.Count * 4;
    }

    /// <summary>True when labels are times to the minute and not whole hours that something happened within: one of them has minutes.</summary>
    public static bool AreTimes(IReadOnlyList<Cell> labels) => labels.Any(l => HourOf(l) is { Minute: not 0 });

    /// <summary>The time that a label names; null when it names none. Hours over 24 are given as they stand.</summary>
    public static (int Hour, int Minute)? HourOf(Cell label)
    {
        if (label.Kind == CellKind.TimeOfDay) return (label.At.Hour, label.At.Minute);
        if (label.Kind == CellKind.Number && label.Number == Math.Floor(label.Number) && label.Number is >= 0 and < 100) return ((int)label.Number, 0);
        if (label.Kind != CellKind.Text) return null;
        var text = label.Text.Trim();
        if (text.Length <= 2 && int.TryParse(text, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var bare)) return (bare, 0);
        if (text.ToLowerInvariant() is "noon" or "midday" or "12 noon") return (12, 0);
        if (text.ToLowerInvariant() is "midnight" or "12 midnight") return (0, 0);
        if (text.Length == 0 || !char.IsAsciiDigit(text[0])) return null;
        return CellTimes.Clock(text.Split('-', '–')[0]) is { Outcome: Outcome.Certain, Value.Start: { Precision: TimePrecision.Exact } start }
            // Twelve of neither half is noon.
            ? (start is { Half: HalfOfDay.Unknown, Time.Hour: 0 } ? 12 : start.Time.Hour, start.Time.Minute) : null;
    }

    /// <summary>
    /// Which of the hours, in the order in which they stand, come after midnight at the end of a day that begins in the morning: 06 to 23, then 00 to 05.
    /// Empty where they do not run so, or where an hour would stand twice.
    /// </summary>
    public static IEnumerable<int> AfterMidnight(IReadOnlyList<(int Place, Cell Label)> labels)
    {
        var hours = labels.Where(l => HourOf(l.Label) is not null).Select(l => (l.Place, Minutes: HourOf(l.Label)!.Value.Hour * 60 + HourOf(l.Label)!.Value.Minute)).ToList();
        var turn = Enumerable.Range(1, Math.Max(0, hours.Count - 1)).Where(i => hours[i].Minutes < hours[i - 1].Minutes).ToList();
        return turn is [var at] && hours[at - 1].Minutes >= Evening && hours[^1].Minutes < hours[0].Minutes && hours[0].Minutes is >= FirstMorning and < LastMorning ? hours.Skip(at).Select(h => h.Place) : [];
    }

    // A day on paper that begins between these and runs past the evening begins with the morning (chosen by CareRecords).
    private const int FirstMorning = 4 * 60;
    private const int LastMorning = 12 * 60;
    private const int Evening = 20 * 60;

    /// <summary>Reads one cell: a row of date, hour and cell.</summary>
    public void Read(BlockRow row)
    {
        var (date, label, cell) = (row[0], row[1], row[2]);
        if (CellTimes.Read(date.Cell).Date is { } written) reading.Open(reading.Settle(written, date));
        if (reading.Day is null && HourOf(label.Cell) is not null) reading.Cells.Ask(cell.Source, $"'{cell.Cell.Words}' has no date.", "Write a date above the table, such as: week beginning 3 March 2025.", "week-of:" + cell.Place.File);
        if (reading.Day is not { } day || HourOf(label.Cell) is not { } hour) return;
        if (hour.Hour > 24 || hour.Minute > 59)
        {
            reading.Cells.Refuse(cell.Source, $"There is no hour '{label.Cell.Words}'.", "Correct the hour.");
            return;
        }

        var start = (hour.Hour == 24 || reading.Block.IsNextDay(label) ? day.PlusDays(1) : day).At(new LocalTime(hour.Hour % 24, hour.Minute));
        if (row.Cells.Count > 3)
        {
            Dose(row, start);
            return;
        }

        // "P ?? ask": the family itself does not know.
        if (cell.Cell.Text.Contains("??", StringComparison.Ordinal))
        {
            reading.Cells.Ask(cell.Source, $"'{cell.Cell.Words}' leaves open whether it was.", "Write what was done, or leave the cell empty.");
            return;
        }

        if (_cells.Read(cell, start, Within(start))) return;
        if (reading.Block.About == TableKind.Checks && CheckCell.Read(cell.Cell.Text, why => reading.Cells.Refuse(cell.Source, why, "Correct the saturation.")) is { } checks)
        {
            foreach (var check in checks)
                reading.Add(new Check { Sources = [cell.Source], Start = Within(start), SpO2 = check.Saturation?.Percent, SpO2High = check.Saturation?.High, Pulse = check.Pulse, OxygenLitresPerMinute = check.Oxygen, Phase = check.Phase }, cell);
            return;
        }

        var before = reading.Into.Entries.Count;
        words.Read(cell, null, day, UncertainTime.Exactly(start), keepAll: true);
        Widen(reading.Into.Entries, before, start, Within(start));
    }

    /// <summary>Gives what took the time of its hour the room of the hour.</summary>
    public static void Widen(List<CareEntry> entries, int from, LocalDateTime start, UncertainTime within)
    {
        for (var i = from; i < entries.Count; i++) entries[i] = Widened(entries[i], start, within);
    }

    // A tick, an amount or somebody's initials under an hour, in the line of a medicine: given at that time.
    private void Dose(BlockRow row, LocalDateTime start)
    {
        var (cell, named, amount) = (row[2], row[3], row[4]);
        var text = cell.Cell.Text.Trim();
        if (NotSaid.Is(text) && text is not ("x" or "X") || SmallWords.ReadYesNo(text) == false || SameAs.SaysNotDone(text) || SameAs.IsNo(text))
        {
            reading.Saw(cell);
            return;
        }

        if (named.Cell.IsEmpty || reading.Cells.Medicine(named) is not { } medicine) return;
        var at = CellTimes.Clock(text) is { Outcome: Outcome.Certain, Value.Start: { Half: not HalfOfDay.Unknown } own } && text.Length > 3 ? own.On(start.Date) : UncertainTime.Exactly(start);
        var ofCell = SmallWords.ReadYesNo(text) is null && text.Any(char.IsAsciiDigit) && at == UncertainTime.Exactly(start) ? text : null;
        reading.Add(new Dose { Sources = [cell.Source], Start = at, Medicine = medicine.Generic, MedicineAsWritten = named.Cell.Words, Amount = ofCell ?? amount.Cell.Words ?? medicine.Amount, Route = medicine.Route }, cell, named, amount);
    }

    // An hour's cell tells the hour, not the minute.
    private UncertainTime Within(LocalDateTime start) => _exact ? UncertainTime.Exactly(start) : Within59(start);

    /// <summary>Some time in the hour from a start on.</summary>
    public static UncertainTime Within59(LocalDateTime start) => UncertainTime.Between(start, start, start.PlusMinutes(59), TimePrecision.Rounded);

    private static CareEntry Widened(CareEntry entry, LocalDateTime start, UncertainTime within) =>
        entry is Feed { Start: null, End: { IsExact: true } end } feed ? end.Stated == start ? feed with { End = within } : feed
        : entry.Start is { IsExact: true } at && at.Stated == start ? entry with { Start = within } : entry;
}
