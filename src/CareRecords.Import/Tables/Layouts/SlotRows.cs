using CareRecords.Import.Reading;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>Reads the rows of a block whose columns say which events they are: one event a row or several, one day a row, dates across.</summary>
internal sealed class SlotRows(BlockReading reading, RowTimesReader times, SessionCells sessions, MeasureCells measures, FreeWords words)
{
    /// <summary>Reads one row. True when it gave anything.</summary>
    public void Read(BlockRow row, RowWhen when)
    {
        var slots = reading.Slots;
        var ofRow = new Dictionary<Slot, List<Session>>();
        foreach (var slot in slots.Slots.Where(s => s.Kind == TableKind.Sessions)) ofRow[slot] = Sessions(row, slot, when);
        foreach (var slot in slots.Slots)
        {
            switch (slot.Kind)
            {
                case TableKind.Sessions:
                    measures.AddChecks(row, [.. slot.Values.Where(IsMeasure)], null, ofRow[slot]);
                    break;
                case TableKind.Feeds: Feeds(row, slot, when); break;
                case TableKind.Medicines: Doses(row, slot, when); break;
                case TableKind.Checks: Checks(row, slot, when, [.. ofRow.Values.SelectMany(s => s)]); break;
                case TableKind.Signs:
                    foreach (var column in slot.Values) measures.AddSign(row, column, slots.Time >= 0 && when.Start is not null ? when.Start : null, when.Day);
                    break;
            }
        }
    }

    private List<Session> Sessions(BlockRow row, Slot slot, RowWhen when)
    {
        var found = new List<Session>();
        var cell = row[slot.Time];
        var areas = slot.Time >= 0 ? reading.Block.Columns[slot.Time].Areas : [];
        if (slot.Time < 0)
        {
            if (!SessionCells.HasValues(row, slot) && (Others(row, slot) || row[reading.Slots.Time].Cell.IsEmpty)) return found;
            if (slot.Values.Where(v => !IsMeasure(v)).All(v => row[v].Cell.IsEmpty) && SaysNotDone(row, when)) return found;
            var start = when.Start ?? DayOnly(row, slot, when);
            if (start is not null && sessions.Add(row, slot, start, slot.End >= 0 ? times.EndAfter(start, row[slot.End], RowTimesReader.MostHours(slot.Kind)) : when.End, reading.SourceOf(row, -1)) is { } session) found.Add(session);
            return found;
        }

        if (cell.Cell.IsEmpty || NotSaid.Is(cell.Cell.Text.Trim()))
        {
            if (row[slot.Done].Cell.Words is { } said)
            {
                reading.Saw(row[slot.Done]);
                if (SmallWords.ReadYesNo(said) == false) return found;
                if (SmallWords.ReadYesNo(said) is null) reading.Cells.Ask(reading.SourceOf(row, slot.Done), $"'{said}' does not say whether this session was.", "Write yes or no, or the time.");
                else if (PartOrDay(slot, when) is { } then && sessions.Add(row, slot, then, null, reading.SourceOf(row, slot.Done)) is { } ticked) found.Add(ticked);
                return found;
            }

            // Values without a time: the session was, its time was not written.
            if (slot.Values.Any(v => !IsMeasure(v) && !row[v].Cell.IsEmpty && !NotSaid.Is(row[v].Cell.Text.Trim())) && PartOrDay(slot, when) is { } unknown)
            {
                reading.Cells.Ask(reading.SourceOf(row, slot.Values[0]), "No time is written for when this session started.", "Write the time of the session.");
                if (sessions.Add(row, slot, unknown, null, reading.SourceOf(row, slot.Values[0])) is { } untimed) found.Add(untimed);
            }

            return found;
        }

        reading.Saw(row[slot.Done]);
        if (CellTimes.Read(cell.Cell) is { Outcome: Outcome.Certain, Clock: not null } written)
        {
            if (times.On(cell, Half(slot), null) is { } start)
            {
                var end = slot.End >= 0 ? times.EndAfter(start, row[slot.End], RowTimesReader.MostHours(slot.Kind)) : written.Clock.End is { } to ? to.In(HalfFor(start, to)).On(start.Stated.Date) : null;
                if (sessions.Add(row, slot, start, end, reading.SourceOf(row, slot.Time)) is { } session)
                {
                    reading.Use(cell);
                    found.Add(session);
                }
            }

            return found;
        }

        // A time that cannot be, beside a yes: it was, some time in that part of the day.
        if (CellTimes.Read(cell.Cell).Outcome == Outcome.Impossible && SmallWords.ReadYesNo(row[slot.Done].Cell.Text) == true)
        {
            times.On(cell, Half(slot), null);
            if (PartOrDay(slot, when) is { } then && sessions.Add(row, slot, then, null, reading.SourceOf(row, slot.Time)) is { } untimed) found.Add(untimed);
            return found;
        }

        if (SmallWords.ReadYesNo(cell.Cell.Text) is { } done)
        {
            if (done && PartOrDay(slot, when) is { } part && sessions.Add(row, slot, part, null, reading.SourceOf(row, slot.Time)) is { } session)
            {
                reading.Use(cell);
                found.Add(session);
            }

            return found;
        }

        if ((SameAs.IsNo(cell.Cell.Text) || SameAs.SaysNotDone(cell.Cell.Text)) && EventCell.Read(cell.Cell.Text) is null && PartOrDay(slot, when) is { } due)
        {
            reading.Into.Omitted.Add(new OmittedSession(due, cell.Cell.Words, cell.Source));
            reading.Use(cell);
            return found;
        }

        return Several(row, slot, cell, areas, when);
    }

    private List<Session> Several(BlockRow row, Slot slot, CellAt cell, IReadOnlyList<AreaName> order, RowWhen when)
    {
        var found = new List<Session>();
        if (EventCell.Read(cell.Cell.Text) is not { } events || !events.All(e => SessionWords(e.Words, order) is not null))
        {
            var before = reading.Into.Entries.Count;
            if (!words.Read(cell, reading.Block.Columns[slot.Time].Heading, when.Day, null, keepAll: true) && !when.IsBad)
                reading.Cells.Ask(cell.Source, $"'{cell.Cell.Words}' could not be read as sessions.", "Write each as a time and its minutes, such as 07:10 3/3/2/2.");
            found.AddRange(reading.Into.Entries.Skip(before).OfType<Session>());
            reading.SessionsOfDay.AddRange(found);
            return found;
        }

        LocalTime? previous = null;
        IReadOnlyList<AreaMinutes>? last = null;
        foreach (var item in events)
        {
            if (item.Impossible is { } why)
            {
                reading.Cells.Refuse(cell.Source, why, "Correct the time.");
                continue;
            }

            if (item.BareHours && item.Clock!.Start.Half == HalfOfDay.Unknown && Half(slot) == HalfOfDay.Unknown)
            {
                reading.Cells.Ask(cell.Source, $"'{cell.Cell.Words}': nothing tells whether these hours are before or after noon.", "Write am or pm, or use the 24-hour clock.");
                return found;
            }

            if (times.Settled(item.Clock!.Start, Half(slot), previous, cell) is not { } start) continue;
            previous = start.Stated.TimeOfDay;
            var minutes = SameAs.PointsBack(item.Words) ? last ?? reading.LastSession?.Areas ?? [] : SessionWords(item.Words, order)!(why => reading.Cells.Refuse(cell.Source, why, "Correct the minutes."));
            last = minutes;
            var session = new Session
            {
                Sources = [reading.SourceOf(row, slot.Time)],
                Start = start,
                End = item.Clock.End is { } to ? to.In(HalfFor(start, to)).On(start.Stated.Date) : null,
                Areas = minutes,
            };
            reading.Add(session, cell);
            found.Add(session);
        }

        return found;
    }

    // What the words after a time say of areas, as a reading to be done later; null when they are not about areas alone.
    private Func<Action<string>, IReadOnlyList<AreaMinutes>>? SessionWords(string text, IReadOnlyList<AreaName> order)
    {
        var bracket = text.IndexOf('(', StringComparison.Ordinal);
        var figures = (bracket < 0 ? text : text[..bracket]).Trim(' ', '.', '-');
        if (figures.Length == 0 || SameAs.PointsBack(figures)) return _ => [];
        var names = order.Count > 1 ? order : reading.AreaOrder;
        if (AreaNumbers.Read(figures, names, _ => { }) is not null) return refuse => AreaNumbers.Read(figures, names, refuse) ?? [];
        return AreasReader.Read(figures, reading.Context.Words).TryGet(out var written) ? _ => written.Areas : null;
    }

    private void Feeds(BlockRow row, Slot slot, RowWhen when)
    {
        var (ml, route) = (slot.Values.FirstOrDefault(v => reading.Block.Columns[v].Role is Role.Millilitres or Role.Amount, -1), slot.Values.FirstOrDefault(v => reading.Block.Columns[v].Role == Role.Route, -1));
        if (slot.Time < 0 && slot.End < 0)
        {
            if (!SessionCells.HasValues(row, slot) && (Others(row, slot) || (when.Start is null && when.End is null))) return;
            if (slot.Part is not null) AddFeed(row, slot, row[ml].Cell.IsEmpty ? null : PartOrDayOf(slot), null, ml, route, ml);
            else AddFeed(row, slot, when.Start, when.End, ml, route, null);
            return;
        }

        var cell = row[slot.Time];
        var endCell = row[slot.End];
        if (slot.Time >= 0 && !cell.Cell.IsEmpty && CellTimes.Read(cell.Cell).Clock is null && CellTimes.Read(cell.Cell).Outcome == Outcome.Nothing)
        {
            FeedWords(row, slot, cell, when);
            return;
        }

        if (slot.Time < 0 && !endCell.Cell.IsEmpty && CellTimes.Read(endCell.Cell).Clock is null && CellTimes.Read(endCell.Cell).Outcome == Outcome.Nothing)
        {
            FeedWords(row, slot, endCell, when);
            return;
        }

        if (slot.StartsWithRow && when.IsBad) return;
        var start = slot.Time >= 0 ? times.On(cell, Half(slot), null) : slot.StartsWithRow ? when.Start : null;
        var end = slot.End < 0 ? null : start is null ? times.On(endCell, Half(slot), null) : times.EndAfter(start, endCell, RowTimesReader.MostHours(slot.Kind));
        if (start is not null && end is null && CellTimes.Read(cell.Cell).Clock?.End is { } to) end = to.In(HalfFor(start, to)).On(start.Stated.Date);
        if (start is null && end is null && !SessionCells.HasValues(row, slot)) return;
        AddFeed(row, slot, start, end, ml, route, slot.Time >= 0 && start is not null ? slot.Time : slot.End);
    }

    private void AddFeed(BlockRow row, Slot slot, UncertainTime? start, UncertainTime? end, int ml, int route, int? at)
    {
        var source = reading.SourceOf(row, at ?? -1);
        var beginning = start ?? (end is null && !row[ml].Cell.IsEmpty ? PartOrDayOf(slot) : null);
        if (start is null && end is null && beginning is not null) reading.Cells.Ask(source, "No time is written for when this feed started or ended.", "Write the time in the row.");
        if (beginning is null && end is null) return;
        if (beginning is not null && end is not null && end.Latest < beginning.Earliest)
        {
            reading.Cells.Refuse(source, "It ends before it starts.", "Correct the start or the end.");
            return;
        }

        var how = row[route].Cell.Words;
        var headed = slot.Time >= 0 ? reading.Block.Columns[slot.Time].Route : slot.End >= 0 ? reading.Block.Columns[slot.End].Route : FeedRoute.Unknown;
        reading.Add(new Feed
        {
            Sources = [source],
            Start = beginning,
            End = end,
            Millilitres = ml < 0 ? null : Millilitres(row[ml], reading.Block.Columns[ml]),
            Route = (how is null ? null : SmallWords.ReadRoute(how) ?? KindWords.Read(how, FamilyWords.None)?.Route) ?? headed,
            By = row[reading.Slots.By].Cell.Words,
        }, [row[ml], row[route], row[at ?? -1], row[slot.End]]);
    }

    private double? Millilitres(CellAt cell, ColumnMeaning column) =>
        column.Unit == "oz" && VolumeReader.Read(cell.Cell.Words + " oz").TryGet(out var fromOunces) && !cell.Cell.Text.Any(char.IsLetter) ? fromOunces : reading.Cells.Millilitres(cell);

    private void FeedWords(BlockRow row, Slot slot, CellAt cell, RowWhen when)
    {
        if (EventCell.Read(cell.Cell.Text) is { } events && events.All(e => FeedAmount(e.Words) is not null))
        {
            LocalTime? previous = null;
            foreach (var item in events)
            {
                if (item.Impossible is { } why)
                {
                    reading.Cells.Refuse(cell.Source, why, "Correct the time.");
                    continue;
                }

                if (times.Settled(item.Clock!.Start, Half(slot), previous, cell) is not { } at) continue;
                previous = at.Stated.TimeOfDay;
                var ends = item.Ends || reading.Block.Columns[cell.Column >= 0 && !reading.Block.IsAcross ? cell.Column : 0].Role == Role.FeedEnd;
                reading.Add(new Feed
                {
                    Sources = [reading.SourceOf(row, slot.Time >= 0 ? slot.Time : slot.End)],
                    Start = ends ? null : at,
                    End = ends ? at : item.Clock.End is { } to ? to.In(HalfFor(at, to)).On(at.Stated.Date) : null,
                    Millilitres = FeedAmount(item.Words)!.Value.Ml,
                    Route = FeedAmount(item.Words)!.Value.Route,
                }, cell);
            }

            return;
        }

        if (!words.Read(cell, reading.Block.Columns[slot.Time >= 0 ? slot.Time : slot.End].Heading, when.Day, null, keepAll: true) && cell.Cell.Text.Any(char.IsAsciiDigit))
            reading.Cells.Ask(cell.Source, $"'{cell.Cell.Words}' could not be read as feeds.", "Write each as a time and millilitres, such as 12:00-12:30 150 ml.");
    }

    private static (double? Ml, FeedRoute Route)? FeedAmount(string text)
    {
        if (text.Length == 0) return (null, FeedRoute.Unknown);
        if (VolumeReader.Read(text).TryGet(out var ml)) return (ml, FeedRoute.Unknown);
        if (SmallWords.ReadRoute(text) is { } route) return (null, route);
        var space = text.IndexOf(' ', StringComparison.Ordinal);
        return space > 0 && VolumeReader.Read(text[..space]).TryGet(out var first) && SmallWords.ReadRoute(text[(space + 1)..]) is { } how ? (first, how) : null;
    }

    private void Doses(BlockRow row, Slot slot, RowWhen when)
    {
        var medicineColumn = slot.Values.FirstOrDefault(v => reading.Block.Columns[v].Role == Role.Medicine, -1);
        var amountColumn = slot.Values.FirstOrDefault(v => reading.Block.Columns[v].Role == Role.Amount, -1);
        var heading = reading.Block.Columns[slot.Time >= 0 ? slot.Time : Math.Max(medicineColumn, 0)];
        var source = reading.SourceOf(row, slot.Time);
        if (slot.Time < 0)
        {
            if (row[medicineColumn].Cell.IsEmpty) return;
            if ((when.Start ?? DayOnly(row, slot, when)) is not { } given || reading.Cells.Medicine(row[medicineColumn]) is not { } named) return;
            reading.Add(Dose(source, given, named, row[medicineColumn].Cell.Words, row[amountColumn].Cell.Words, row), row[medicineColumn], row[amountColumn]);
            return;
        }

        var cell = row[slot.Time];
        if (cell.Cell.IsEmpty || NotSaid.Is(cell.Cell.Text.Trim())) return;
        var medicine = Headed(heading);
        if (AmountAndTime.Read(cell.Cell.Text) is { } amounts)
        {
            DoseEvents(row, slot, amounts, medicine, heading, source);
            return;
        }

        if (IsAmount(cell.Cell, heading))
        {
            if ((when.Start is { } beside ? Notes.TimesOfEvents.Borrowed(beside.Stated, CheckPhase.None) : PartOrDay(slot, when)) is { } during)
                reading.Add(Dose(source, during, Medicine(medicine, heading, source), heading.MedicineWords, Amount(cell, heading), row), cell);
            return;
        }

        if (CellTimes.Read(cell.Cell) is { Outcome: not Outcome.Nothing })
        {
            if (times.On(cell, Half(slot), null) is { } at)
                reading.Add(Dose(source, at, Medicine(medicine, heading, source), heading.MedicineWords, Amount(row[amountColumn], reading.Block.Columns[Math.Max(amountColumn, 0)]) ?? medicine?.Amount, row), cell, row[amountColumn]);
            return;
        }

        if (EventCell.Read(cell.Cell.Text) is { } events)
        {
            DoseEvents(row, slot, events, medicine, heading, source);
            return;
        }

        // "2 puffs" or a tick under a medicine's name: given, at the time of the row.
        var tick = SmallWords.ReadYesNo(cell.Cell.Text);
        if (tick == false) return;
        if (tick is null && words.Read(cell, heading.Heading, when.Day, when.Start, keepAll: true)) return;
        if ((when.Start ?? PartOrDay(slot, when)) is { } then)
            reading.Add(Dose(source, then, Medicine(medicine, heading, source), heading.MedicineWords, tick is true ? medicine?.Amount : cell.Cell.Words, row), cell);
    }

    private void DoseEvents(BlockRow row, Slot slot, IReadOnlyList<CellEvent> events, MedicineWritten? medicine, ColumnMeaning heading, SourceLine source)
    {
        var cell = row[slot.Time];
        LocalTime? previous = null;
        foreach (var item in events)
        {
            if (item.Impossible is { } why) reading.Cells.Refuse(cell.Source, why, "Correct the time.");
            else if (times.Settled(item.Clock!.Start, Half(slot), previous, cell) is { } at)
            {
                previous = at.Stated.TimeOfDay;
                var own = item.Words.Length > 0 && MedicineReader.Read(item.Words, reading.Context.Words) is { Outcome: Outcome.Certain, Value: { } inCell } && inCell.Generic != Medicines.Unknown ? inCell : null;
                reading.Add(Dose(source, at, own ?? Medicine(medicine, heading, source), own?.AsWritten ?? heading.MedicineWords, own?.Amount ?? (item.Words.Length > 0 && own is null ? AmountWords(item.Words, heading) : medicine?.Amount), row), cell);
            }
        }
    }

    // A bare number under "puffs" is how many, not when.
    private static bool IsAmount(Cell cell, ColumnMeaning heading) =>
        IsOfPuffs(heading) && cell.Text.Trim() is { Length: <= 2 } text && text.All(char.IsAsciiDigit);

    private static bool IsOfPuffs(ColumnMeaning heading) => Lexicon.Find(heading.Heading, out _).Any(k => k.Concept == Concept.Puffs);

    private static string AmountWords(string words, ColumnMeaning heading) => words.All(char.IsAsciiDigit) && IsOfPuffs(heading) ? words + " puffs" : words;

    private MedicineWritten? Headed(ColumnMeaning heading)
    {
        if (heading.Medicine is { } generic) return new MedicineWritten(generic, heading.MedicineWords ?? heading.Heading, null, null);
        foreach (var word in new[] { heading.MedicineWords, heading.MedicineWords?.Split(' ')[0] })
            if (word is not null && reading.Context.Words.MeaningOf(word) is { } means && MedicineReader.Read(means, FamilyWords.None).TryGet(out var read))
                return read;
        return heading.MedicineWords is { } text && MedicineReader.Read(text, reading.Context.Words).TryGet(out var found) ? found : null;
    }

    private MedicineWritten Medicine(MedicineWritten? known, ColumnMeaning heading, SourceLine source)
    {
        if (known is not null) return known;
        var text = heading.MedicineWords ?? heading.Heading;
        var name = "what-is:" + text.ToLowerInvariant();
        reading.Into.Questions.TryAdd(name, new Notes.AskedQuestion($"Which medicine is '{text}'?", []));
        reading.Cells.Ask(source, $"'{text}' names no medicine known here.", $"Say which medicine it is in a words table: {text}, its generic name.", name);
        return new MedicineWritten(Medicines.Unknown, text, null, null);
    }

    private static string? Amount(CellAt cell, ColumnMeaning column) =>
        cell.Cell.Words is not { } text || NotSaid.Is(text) ? null
        : text.All(c => char.IsAsciiDigit(c) || c is '.' or ',') && Lexicon.Find(column.Heading, out _).Any(k => k.Concept == Concept.Puffs) ? text + " puffs"
        : text;

    private Dose Dose(SourceLine source, UncertainTime at, MedicineWritten medicine, string? asWritten, string? amount, BlockRow row) => new()
    {
        Sources = [source],
        Start = at,
        Medicine = medicine.Generic,
        MedicineAsWritten = asWritten ?? medicine.AsWritten,
        Amount = amount ?? medicine.Amount,
        Route = medicine.Route,
        By = row[reading.Slots.By].Cell.Words,
    };

    private void Checks(BlockRow row, Slot slot, RowWhen when, IReadOnlyList<Session> ofRow)
    {
        if (!SessionCells.HasValues(row, slot)) return;
        var own = slot.Time >= 0 ? times.On(row[slot.Time], Half(slot), null) : when.Start;
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

        measures.AddChecks(row, slot.Values, own, own is null || ofRow.Count > 0 && slot.Time < 0 && reading.Slots.Time < 0 ? ofRow : []);
    }

    private bool SaysNotDone(BlockRow row, RowWhen when)
    {
        foreach (var column in reading.Slots.Words)
        {
            if (row[column].Cell.Words is not { } text || !SameAs.SaysNotDone(text) || when.Day is not { } day) continue;
            reading.Into.Omitted.Add(new OmittedSession(when.Start ?? UncertainTime.OnDay(day), text, row[column].Source));
            reading.Use(row[column]);
            return true;
        }

        return false;
    }

    private UncertainTime? DayOnly(BlockRow row, Slot slot, RowWhen when)
    {
        if (when.IsBad || !SessionCells.HasValues(row, slot) || slot.Values.Where(v => !IsMeasure(v)).All(v => row[v].Cell.IsEmpty)) return null;
        reading.Cells.Ask(reading.SourceOf(row, -1), "No time is written in this row.", "Write the time of the event.");
        return when.Day is { } day ? UncertainTime.OnDay(day) : null;
    }

    private UncertainTime? PartOrDay(Slot slot, RowWhen when) => when.Day is null ? null : PartOrDayOf(slot);

    private UncertainTime? PartOrDayOf(Slot slot)
    {
        if (reading.Day is not { } day) return null;
        var part = slot.Part ?? Half(slot) switch { HalfOfDay.Am => "morning", HalfOfDay.Pm => "evening", _ => reading.Part };
        return part is not null && ClockReader.Read(part).TryGet(out var span) ? span.Start.On(day) : UncertainTime.OnDay(day);
    }

    // Whether another event of the row has values: then this one, without any, did not happen.
    private bool Others(BlockRow row, Slot slot) =>
        reading.Slots.Slots.Any(s => s != slot && (SessionCells.HasValues(row, s) || !row[s.Time].Cell.IsEmpty || !row[s.End].Cell.IsEmpty))
        || reading.Slots.Slots.Count(s => s.Time < 0) > 1;

    private bool IsMeasure(int column) => reading.Block.Columns[column].Role is Role.Saturation or Role.Pulse or Role.Oxygen or Role.Phase;

    private static HalfOfDay Half(Slot slot) => slot.Half;

    // The half in which an end lies: the first one not before the start.
    private static HalfOfDay HalfFor(UncertainTime start, ClockTime end) =>
        end.Half != HalfOfDay.Unknown ? end.Half : end.In(HalfOfDay.Am).Time >= start.Stated.TimeOfDay ? HalfOfDay.Am : HalfOfDay.Pm;
}
