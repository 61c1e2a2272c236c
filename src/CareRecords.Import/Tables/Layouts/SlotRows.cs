using CareRecords.Records;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>Reads the rows of a block whose columns say which events they are: one event a row or several, one day a row, dates across.</summary>
internal sealed class SlotRows(BlockReading reading, RowTimesReader times, SessionCells sessions, MeasureCells measures, FreeWords words)
{
    private readonly SlotFacts _of = new(reading);
    private readonly SessionSlots _sessions = new(reading, times, sessions, words, new SlotFacts(reading));
    private readonly FeedSlots _feeds = new(reading, times, words, new SlotFacts(reading));
    private readonly DoseSlots _doses = new(reading, times, words, new SlotFacts(reading));

    /// <summary>Reads one row. True when it gave anything.</summary>
    public void Read(BlockRow row, RowWhen when)
    {
        var slots = reading.Slots;
        var ofRow = new Dictionary<Slot, List<Session>>();
        foreach (var slot in slots.Slots.Where(s => s.Kind == TableKind.Sessions))
        {
            reading.SlotPart = slot.Part ?? (slot.Time >= 0 ? reading.Block.Columns[slot.Time].Part : null);
            ofRow[slot] = _sessions.Read(row, slot, when);
        }

        foreach (var slot in slots.Slots)
        {
            reading.SlotPart = slot.Part ?? (slot.Time >= 0 ? reading.Block.Columns[slot.Time].Part : null);
            switch (slot.Kind)
            {
                case TableKind.Sessions:
                    // Where the physio of the row was not done, what was measured at its time stands all the same.
                    measures.AddChecks(row, [.. slot.Values.Where(_of.IsMeasure)], ofRow[slot].Count == 0 && !when.IsBad ? slots.Time >= 0 ? when.Start : row[slot.Time].Cell.IsEmpty && !slot.Values.Any(v => !_of.IsMeasure(v) && !row[v].Cell.IsEmpty) ? _of.PartOrDay(slot, when) : null : null, ofRow[slot]);
                    foreach (var session in ofRow[slot]) measures.AddSecretions(row, slot.Values, session);
                    break;
                case TableKind.Feeds: _feeds.Read(row, slot, when); break;
                case TableKind.Medicines: _doses.Read(row, slot, when); break;
                case TableKind.Checks: Checks(row, slot, when, [.. ofRow.Values.SelectMany(s => s)]); break;
                case TableKind.Signs:
                    foreach (var column in slot.Values) measures.AddSign(row, column, slots.Time >= 0 && when.Start is not null ? when.Start : null, when.Day);
                    break;
            }
        }

        reading.SlotPart = null;
    }

    private void Checks(BlockRow row, Slot slot, RowWhen when, IReadOnlyList<Session> ofRow)
    {
        if (!SessionCells.HasValues(row, slot)) return;
        var slots = reading.Slots;
        if (slot.Part is not null && when.Day is not null && _of.PartOrDayOf(slot) is { } part)
        {
            measures.AddChecks(row, slot.Values, part, []);
            return;
        }

        var own = slot.Time >= 0 ? times.On(row[slot.Time], slot.Half, null) : when.Start;
        if (own is null && ofRow.Count == 0)
        {
            if (when.IsBad || slot.Values.All(v => row[v].Cell.IsEmpty || NotSaid.Is(row[v].Cell.Text.Trim()))) return;
            if (slot.Time >= 0 || reading.Slots.Time >= 0 || when.Day is null)
            {
                reading.Cells.Ask(reading.SourceOf(row, -1), "No time is written for when this was checked.", "Write the date and time in the row.");
                return;
            }

            own = UncertainTime.OnDay(when.Day.Value);
        }

        measures.AddChecks(row, slot.Values, own, own is null || ofRow.Count > 0 && slot.Time < 0 && reading.Slots.Time < 0 ? ofRow : [], KindRows.PhaseIn(slots.Words.Select(c => row[c]).Where(c => !c.Cell.IsEmpty)));
    }
}
