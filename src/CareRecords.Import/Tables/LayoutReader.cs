using CareRecords.Import.Accounting;
using CareRecords.Import.Notes;
using CareRecords.Import.Reading;
using CareRecords.Import.Tables.Layouts;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Tables;

/// <summary>Reads tables of any layout.</summary>
internal static class LayoutReader
{
    private const int MostOfDayLine = 6;

    /// <summary>What the rows give. Every row that is not blank ends as record, problem or set aside.</summary>
    public static Gathered Read(Place place, IReadOnlyList<GridRow> rows, SourceContext context)
    {
        var into = new Gathered { File = place.File, Sheet = place.Sheet };
        into.Key = SheetKey.Of(rows);
        (rows, var key) = KeyBeside.Apart(rows);
        into.Words.AddRange(key);
        rows = DrugCharts.Plain(PlannedHalves.Apart(DaysInHeadings.Apart(OrdinalSessions.Named(NumberedHeadings.Plain(rows)))));
        var year = TitleYear.Of(place, rows) ?? YearOfDates(rows) ?? TitleYear.OfWeekdays(rows, context.NotAfter) ?? context.WeekOf;
        var apart = SideBySide.Apart(place, rows);
        LocalDate? week = null;
        var all = apart.Select(a => (a.Place, a.Rows, Parts: BlockFinder.Find(a.Place, a.Rows, year))).ToList();
        var order = Order(place, [.. all.Select(a => a.Parts)], into, context, TitleDay.Months(place, rows));
        foreach (var (part, ofPart, parts) in all) week = ReadPart(part, ofPart, parts, rows, into, context, order, year, week);
        Account(place, rows, into);
        // A row of two tables is set aside only where it is no record of either.
        if (apart.Count > 1) Once(into);
        return into;
    }

    // One table, or several under one another. Gives the first day of the last one with days.
    private static LocalDate? ReadPart(Place place, IReadOnlyList<GridRow> rows, SheetParts parts, IReadOnlyList<GridRow> sheet, Gathered into, SourceContext context, DateOrder? order, LocalDate? year, LocalDate? week)
    {
        var from = TitleDay.Of(place, sheet, order, year ?? context.NotAfter);
        var areaOrder = LooseRows.Read(place, parts, into, context, order, year ?? context.NotAfter, from);
        into.FirstDay ??= from;
        var around = parts.Loose.Where(l => l.Why is null).SelectMany(l => l.Row.Cells).Where(c => c.Kind == CellKind.Text && c.Text.Length > 12).Select(c => c.Text).ToList();
        // "key is on Wk 1"
        var other = into.Key.Lines.Count == 0 ? context.Keys.GetValueOrDefault(place.File) : null;
        if (other is not null)
        {
            into.Borrowed = other;
            around.AddRange(other.Lines);
            if (areaOrder.Count == 0) areaOrder = other.Lines.Select(Legends.AreaOrder).LastOrDefault(o => o.Count > 0) ?? [];
        }

        foreach (var block in parts.Blocks) week = ReadBlock(place, block, into, context, order, areaOrder, year, week ?? from, around) ?? week;
        if (parts.Blocks.Count == 0) AsNotes(place, rows, parts, into, context, order);
        else foreach (var row in parts.Headless) Headless(place, row, into, context);
        return week;
    }

    // Where no title names the year, the real dates of the sheet do.
    private static LocalDate? YearOfDates(IReadOnlyList<GridRow> rows)
    {
        var years = rows.SelectMany(r => r.Cells).Where(c => c.Kind is CellKind.Date or CellKind.Moment).Select(c => c.At.Date).Take(1000).ToList();
        return years.Count > 0 && years.TrueForAll(d => d.Year == years[0].Year) ? years[0] : null;
    }

    private static void Once(Gathered into)
    {
        var kept = into.SetAside.DistinctBy(s => s.Source.Place).Where(s => SourceLines.NumberOf(s.Source) is not (> 0 and var line) || into.Ledger.FateOf(line) is null or LineFate.NotRecord or LineFate.Blank).ToList();
        into.SetAside.Clear();
        into.SetAside.AddRange(kept);
    }

    private static DateOrder? Order(Place place, IReadOnlyList<SheetParts> all, Gathered into, SourceContext context, IReadOnlyList<int> months)
    {
        var dates = new List<DateWritten>();
        foreach (var block in all.SelectMany(p => p.Blocks))
        {
            // "5.10" where the heading is not known may be a time: it is a day only where no other column has the days.
            var dated = block.Columns.Any(c => c.Role == Role.Date);
            foreach (var row in block.Rows)
                for (var i = 0; i < block.Columns.Count; i++)
                    if (block.Columns[i].Role is Role.Date or Role.Time or Role.Start or Role.End || (!dated && block.Columns[i].Role == Role.Unknown))
                        if (CellTimes.Read(row[i].Cell).Date is { } date)
                            dates.Add(date);
        }

        // Days on lines of their own, between the rows.
        dates.AddRange(all.SelectMany(p => p.Loose).OrderBy(l => l.Row.Line).Where(l => l.Why is null).SelectMany(l => l.Row.Cells.Where(c => !c.IsEmpty).Take(MostOfDayLine)).Select(c => CellTimes.Read(c).Date).OfType<DateWritten>());
        var needed = DayOrder.IsNeeded(dates);
        var settled = needed ? DayOrder.OfMonths(dates, months) ?? DayOrder.Decide(dates, null) : null;
        into.OrderSettled = settled ?? into.OrderSettled;
        into.OrderIsOpen |= needed && settled is null && context.OrderFor(place.File) is null;
        return context.OrderFor(place.File) ?? settled ?? context.OrderOfNeighbours;
    }

    // Gives the first day of the block that is written with its month; null when none is.
    private static LocalDate? ReadBlock(Place place, Block block, Gathered into, SourceContext context, DateOrder? order, IReadOnlyList<AreaName> areaOrder, LocalDate? year, LocalDate? from, IReadOnlyList<string> around)
    {
        if (ContractBlock.TryRead(place, block, into, context, order, year)) return null;
        if (IsSummary(place, block))
        {
            foreach (var row in block.Rows.Where(r => !r.IsBlank)) SetAside(row, into, "a summary: its figures are counted, and the records stand in other sheets");
            return null;
        }

        if (IsWords(block))
        {
            Words(block, into);
            return null;
        }

        block = CodedSessions.Joined(PairedColumns.Apart(Postures.Without(PlannedColumns.Joined(DoneTimes.Taken(InstantTimes.Local(block, context.Zone), around), TitleTechnique.AllPlaces(around)))), context.Words);
        block = PlaceColumns.Joined(Dittos.Filled(Crosses.AsTicks(MinutesPast.Written(SpacedHours.Closed(block)), around)));
        block = NumberTimes.Mended(UnitColumns.Joined(EntryNumbers.Named(StampDays.Taken(StampColumns.Without(block), order, year ?? context.NotAfter))));
        block = FamilyHeadings.Named(TitleAreas.Applied(block, around), context.Words);
        block = SessionDetails.Beside(KindColumn.Named(ColumnContent.Named(ColumnAnswers.Applied(block, place.File, context.Answers), context.Words), context.Words));
        var saturations = block.Columns.Where(c => c.Role == Role.Saturation).ToList();
        block = block with { InAir = saturations.Count > 0 && saturations.TrueForAll(c => AirByDefault.HeadingSays(c.Heading)) || around.Any(AirByDefault.Says) };
        var reading = new BlockReading(place, block, into, context, order, areaOrder, year, from) { PlacesOfAll = TitleTechnique.AllPlaces(around), MinutesEachPlace = TitleTechnique.SaysMinutesEachPlace(around), ShakesEachPlace = TitleTechnique.SaysShakesEachPlace(around) };
        // The day directly above the table, else the one that the sheet is named after, else the title's: for rows before the first with a day.
        if ((reading.Slots.Date < 0 && !block.IsAcross || block.IsOfOneDay || block.AreHours || block.IsGrid) && (TitleDay.Above(block, order, year ?? context.NotAfter) ?? TitleDay.OfSheet(place.Sheet, order, year ?? context.NotAfter, from ?? context.WeekOf) ?? from) is { } above && !BeginsWithDate(block)) reading.Open(above);
        else if (TitleDay.OfSheet(place.Sheet, order, year ?? context.NotAfter, from ?? context.WeekOf) is { } named) reading.Open(named);
        into.FirstDay ??= reading.Day;
        if (!IsOfCare(reading))
        {
            foreach (var row in block.Rows.Where(r => !r.IsBlank)) SetAside(row, into, "a table without days or times: not of this record");
            return null;
        }

        Notice(reading);
        var words = new FreeWords(reading);
        var times = new RowTimesReader(reading);
        var sessions = new SessionCells(reading);
        var measures = new MeasureCells(reading, words);
        var slotRows = new SlotRows(reading, times, sessions, measures, words);
        var kindRows = new KindRows(reading, times, sessions, measures, words);
        var leftOvers = new LeftOvers(reading);
        var numbers = new EntryNumbers(reading, measures);
        var grid = block.IsGrid ? new HourGrid(reading, words) : null;
        var nights = ShiftNights.Of(block);
        var first = into.Entries.Count;
        foreach (var row in block.Rows.Where(r => !r.IsBlank))
        {
            var (entries, problems, omitted) = (into.Entries.Count, into.Problems.Count, into.Omitted.Count);
            reading.NextRow();
            if (grid is not null) grid.Read(row);
            else ReadRow(row, reading, times, slotRows, kindRows, words, numbers);
            if (nights.Contains(row[0].Row.Line) && reading.Day is { } evening)
                for (var i = entries; i < into.Entries.Count; i++) into.Entries[i] = ShiftNights.Moved(into.Entries[i], evening);
            numbers.Note(row, entries, into.Entries.Count);
            foreach (var (cell, comment) in reading.CommentsOf(row))
                if (words.Read(cell, !block.IsAcross && block.Columns.ElementAtOrDefault(cell.Column) is { Role: Role.Dose } dose && FreeWords.HasClock(comment.Text) ? dose.MedicineWords ?? dose.Own : null, reading.Day, into.Entries.Skip(entries).Select(e => e.Start).FirstOrDefault(s => s is not null), keepAll: into.Entries.Count == entries, comment.Text)) reading.SawComment(cell);
            leftOvers.Ask(row, problems, entries, into.Entries.Count > entries || into.Problems.Count > problems || into.Omitted.Count > omitted || reading.Joined);
            if (!block.IsAcross && !into.Ledger.IsMarked(row[0].Row.Line) && into.Problems.Count == problems)
                SetAside(row, into, row.Cells.Count(c => !c.Cell.IsEmpty) == 1 ? "a day with nothing else" : "no record in this row");
        }

        if (block.InAir) InAir(into.Entries, first);
        TitlePlaces.Apply(into.Entries, first, around);
        if (TitleTechnique.SaysPercussion(around)) TitleTechnique.Apply(into.Entries, first);
        into.FirstDay ??= reading.FirstDay;
        return reading.FirstDay;
    }

    private static void ReadRow(BlockRow row, BlockReading reading, RowTimesReader times, SlotRows slotRows, KindRows kindRows, FreeWords words, EntryNumbers numbers)
    {
        var into = reading.Into;
        var (entries, problems) = (into.Entries.Count, into.Problems.Count);
        var when = times.Read(row);
        if (when.Words is { } text && when.Start is null && !reading.Block.IsAcross)
        {
            var inWords = into.Problems.Count == problems && row.Cells.Where(c => !c.Cell.IsEmpty).Skip(1).Any(c => c.Cell.Text.Any(char.IsAsciiDigit));
            if (!inWords) SetAside(row, into, "a remark or legend beside the table");
            else reading.Cells.Ask(row.Source, $"'{text}' is not a date or time.", "Write the date and time of the row.");
            return;
        }

        if (reading.Slots.Of(Role.Withdrawn).Any(c => SaysTakenBack(row[c].Cell.Text.Trim(), reading.Block.Columns[c].Own)))
        {
            SetAside(row, into, "taken back by the family");
            reading.Joined = true;
            foreach (var cell in row.Cells) reading.Saw(cell);
            return;
        }

        if (SentTwice.Is(reading.Block, row))
        {
            SetAside(row, into, "sent twice, as the family says");
            reading.Joined = true;
            foreach (var cell in row.Cells) reading.Saw(cell);
            return;
        }

        if (when.IsBad && when.Day is null) return;
        if (when.Start is { } hour && (reading.RowsAreHours && hour.Precision is TimePrecision.Rounded || hour is { IsExact: true, Stated.Minute: 0 } && reading.Slots.Time >= 0 && HourRows.SaysHour(reading.Block.Columns[reading.Slots.Time].Own))) row = HourRows.WithoutOwnClocks(row, hour, reading, words);
        (row, when) = OwnTimes.Taken(row, when, reading);
        if (numbers.Read(row, when))
        {
            reading.Joined = true;
            foreach (var entry in into.Entries.Skip(entries)) Mark(entry.Sources, into, LineFate.InRecords);
            return;
        }

        if (reading.Slots.Kind >= 0) kindRows.Read(row, when);
        else slotRows.Read(row, when);
        // A remark stands beside one event; in a row of several it is of the day.
        var own = reading.Slots.Time >= 0 || reading.Slots.Slots.Count(s => s.Time >= 0 || s.End >= 0) == 1;
        var main = own && into.Entries.Count > entries ? into.Entries[entries].Start : null;
        var corrections = reading.Slots.Words.Where(c => RowCorrections.Apply(into.Entries, entries, row[c])).ToList();
        corrections.ForEach(c => reading.Use(row[c]));
        corrections.AddRange(reading.Slots.Words.Except(corrections).Where(c => PhaseRemarks.Read(reading, row[c]) || SaturationRemarks.Read(reading, row[c]) || FlowRemarks.Read(reading, row[c])));
        // A remark without a figure in a row of one session is of it.
        var ofSession = main is null && when.Start is null && into.Entries.Skip(entries).OfType<Session>().ToList() is [{ Start: { IsExact: true } alone }] ? alone : null;
        if (reading.Slots.Kind < 0)
            foreach (var column in reading.Slots.Words.Except(corrections).Where(c => reading.Block.Columns[c].Role != Role.Unknown || !LeftOvers.IsFigure(row[c].Cell)))
                words.Read(row[column], HeadingOf(reading.Block, column), when.Day, main ?? when.Start ?? (row[column].Cell.Text.Any(char.IsAsciiDigit) ? null : ofSession), keepAll: into.Entries.Count == entries || HeadingReader.TellsWhat(reading.Block.Columns[column].Own) || HeadingReader.NamesSeveral(reading.Block.Columns[column].Own));
        ToldSessions.Complete(reading, times, row, entries, when);
        foreach (var entry in into.Entries.Skip(entries)) Mark(entry.Sources, into, LineFate.InRecords);
    }

    // Readings without a flow, where the table says that they were all in air; not while the oxygen may still be on.
    private static void InAir(List<CareEntry> entries, int from)
    {
        Check? turned = null;
        for (var i = from; i < entries.Count; i++)
            if (entries[i] is Check { SpO2: null, OxygenLitresPerMinute: not null } flow) turned = flow;
            else if (entries[i] is Check { SpO2: not null, OxygenLitresPerMinute: null } check && !AirByDefault.MayBeOnOxygen(turned, check.When.Stated)) entries[i] = check with { OxygenLitresPerMinute = 0, HowRead = check.HowRead ?? "In air: the table says so of its readings." };
    }

    // "Evening | notes" beside "Morning | notes" says which; the only remarks of a table are of the whole day, whatever heading is drawn over them.
    private static string? HeadingOf(Block block, int column)
    {
        var meaning = block.Columns[column];
        var heading = meaning.Role == Role.Note && block.Columns.Count(c => c.Role == Role.Note) == 1 ? meaning.Own : meaning.Heading;
        // "Chest / meds / sats" is over any of them.
        return HeadingReader.NamesEvent(heading) && !HeadingReader.NamesSeveral(heading) ? heading : null;
    }

    // A tick under "undone"; "deleted" or "duplicate" under "status".
    private static bool SaysTakenBack(string text, string heading) => Lexicon.Split(heading).Any(w => w is "status" or "state")
        ? Lexicon.Split(text).Any(w => w is "deleted" or "duplicate" or "dup" or "void" or "voided" or "cancelled" or "canceled" or "removed" or "undone" or "withdrawn" or "rejected" or "discarded")
        : SmallWords.ReadYesNo(text) == true || text is "x" or "X";

    // A sheet called "Summary" or "Totals" of days with nothing but counts beside them.
    private static bool IsSummary(Place place, Block block) => place.Sheet is { } sheet && Lexicon.Split(sheet).Any(w => w is "summary" or "totals" or "total" or "overview")
        && block.Rows.All(r => r.Cells.All(c => c.Cell.IsEmpty || c.Cell.Kind == CellKind.Number || CellTimes.Read(c.Cell) is { Date: not null, Clock: null } || c.Cell.Text.Trim().TrimEnd('%').All(x => char.IsAsciiDigit(x) || x is '.' or ',')));

    // "Word | Means", "Code | Account | Note": a column of words, and others that explain them.
    private static bool IsWords(Block block) => block.Columns.Any(c => c.Role == Role.Word) && Explanations(block).Count > 0 && !block.Columns.Any(c => c.Role is Role.Date or Role.Time or Role.Start or Role.Session or Role.Saturation);

    private static List<int> Explanations(Block block)
    {
        var means = Enumerable.Range(0, block.Columns.Count).Where(i => block.Columns[i].Role == Role.Means).ToList();
        // "Code | Meaning | Qty is in": the unit of its amounts explains it too.
        if (means.Count > 0) means.AddRange(Enumerable.Range(0, block.Columns.Count).Where(i => block.Columns[i].Role is Role.Amount or Role.Unknown or Role.Detail && block.Rows.Any(r => !r[i].Cell.IsEmpty) && block.Rows.Where(r => !r[i].Cell.IsEmpty).All(r => r[i].Cell.Text.Length <= 10 && (CodeWords.UnitIn(r[i].Cell.Text) is not null || TemperatureReader.Read("38 " + r[i].Cell.Text).Outcome == Outcome.Certain))));
        return means.Count > 0 ? means : [.. Enumerable.Range(0, block.Columns.Count).Where(i => block.Columns[i].Role is Role.Unknown or Role.Note or Role.Detail or Role.Kind && block.Rows.Any(r => r[i].Cell.Kind == CellKind.Text))];
    }

    private static void Words(Block block, Gathered into)
    {
        var (word, means) = (block.Columns.ToList().FindIndex(c => c.Role == Role.Word), Explanations(block));
        foreach (var row in block.Rows.Where(r => !r.IsBlank))
        {
            var meaning = string.Join(": ", means.Select(m => row[m].Cell.Words).OfType<string>());
            if (row[word].Cell.Words is { } ours && meaning.Length > 0)
            {
                into.Words.Add(new FamilyWord(ours, meaning));
                // What an explanation explains in passing: "minutes clapping. S = shakes".
                into.Words.AddRange(means.Select(m => row[m].Cell.Words).OfType<string>().Where(m => m.Contains('=', StringComparison.Ordinal)).SelectMany(Legends.Words));
                into.Ledger.Mark(row[0].Row.Line, row[0].Row.LineCount, LineFate.InRecords);
            }
            else SetAside(row, into, "a word without a meaning");
        }
    }

    private static bool IsOfCare(BlockReading reading) =>
        reading.Slots.Date >= 0 || reading.Slots.Time >= 0 || reading.Slots.End >= 0 || reading.Slots.Slots.Any(s => s.Time >= 0 || s.End >= 0)
        || reading.Block.Rows.Any(r => r.Cells.Any(c => c.Cell.Kind is CellKind.Moment or CellKind.Date or CellKind.TimeOfDay));

    private static bool BeginsWithDate(Block block) => block.Rows.FirstOrDefault(r => !r.IsBlank) is { } first
        && first.Cells.Any(c => c.Cell.Kind is CellKind.Date or CellKind.Moment || (c.Cell.Kind == CellKind.Text && CellTimes.Read(c.Cell).Date is not null));

    private static void Notice(BlockReading reading)
    {
        foreach (var row in reading.Block.Rows)
            for (var i = 0; i < reading.Block.Columns.Count; i++)
                if (reading.Block.Columns[i].Role is Role.Date or Role.Time or Role.Start or Role.End or Role.Session or Role.SessionEnd or Role.Feed or Role.FeedStart or Role.FeedEnd or Role.Dose && !row[i].Cell.IsEmpty)
                {
                    if (CellTimes.Read(row[i].Cell).Clock is { } clock) reading.Halves.Notice(row[i].Cell, clock);
                    else if (EventCell.Read(row[i].Cell.Text) is { } events)
                        foreach (var item in events)
                            if (item.Clock is not null)
                                reading.Halves.Notice(row[i].Cell, item.Clock);
                }
    }

    // Rows with cells and no heading above them: read as sentences, each with its own date.
    private static void Headless(Place place, GridRow row, Gathered into, SourceContext context)
    {
        var reading = NotesReader.Read(new SourceText(place.File, [string.Join(' ', row.Cells.Where(c => !c.IsEmpty).Select(c => c.Words))]), context.ForNotes(place.File, null));
        var source = place.Of(row);
        if (reading.Entries.Count > 0)
        {
            into.Entries.AddRange(reading.Entries.Select(e => e with { Sources = [source] }));
            into.Ledger.Mark(row.Line, row.LineCount, LineFate.InRecords);
            return;
        }

        if (!SaysAnything(row))
        {
            into.SetAside.Add(new SetAsideLine(source, "no heading, day, time or word of care: not of this record"));
            into.Ledger.Mark(row.Line, row.LineCount, LineFate.NotRecord);
            return;
        }

        into.Problems.Add(new ImportProblem(source, "No known heading stands above this row.", "Give the table headings such as date, time, what, sats, oxygen.", ProblemSeverity.Ask, "headings:" + place.File));
        into.Questions.TryAdd("headings:" + place.File, new AskedQuestion($"What do the columns of {place.File} hold?", []));
    }

    // No heading anywhere: the rows are lines of notes with separators in them.
    private static void AsNotes(Place place, IReadOnlyList<GridRow> rows, SheetParts parts, Gathered into, SourceContext context, DateOrder? order)
    {
        var lines = rows.Select(r => string.Join(' ', r.Cells.Where(c => !c.IsEmpty).Select(c => c.Words!.ReplaceLineEndings(" ")))).ToList();
        var reading = NotesReader.Read(new SourceText(place.File, lines), context.ForNotes(place.File, context.NotAfter) with { DateOrder = order });
        if (reading.Entries.Count == 0)
        {
            foreach (var row in parts.Headless) Headless(place, row, into, context);
            return;
        }

        SourceLine Of(SourceLine source) => source.Line is { } line and > 0 && line <= rows.Count ? place.Of(rows[line - 1]) : source;
        into.SetAside.Clear();
        into.Take(reading with
        {
            Entries = [.. reading.Entries.Select(e => e with { Sources = [.. e.Sources.Select(Of)] })],
            Omitted = [.. reading.Omitted.Select(o => o with { Source = Of(o.Source) })],
            FamilyQuestions = [.. reading.FamilyQuestions.Select(Of)],
            SetAside = [.. reading.SetAside.Select(s => s with { Source = Of(s.Source) })],
            Problems = [.. reading.Problems.Select(p => p with { Source = Of(p.Source) })],
        });
        for (var i = 0; i < rows.Count; i++) into.Ledger.Mark(rows[i].Line, rows[i].LineCount, reading.Fates[i]);
    }

    private static bool SaysAnything(GridRow row) => row.Cells.Any(c =>
        c.Kind is CellKind.Date or CellKind.Moment or CellKind.TimeOfDay
        || (c.Kind == CellKind.Text && (CellTimes.Read(c) is { Date: not null } or { Clock: not null } || Lexicon.Find(c.Text, out _).Any(k => k.Medicine is not null || k.Concept is Concept.Session or Concept.Percussion or Concept.Feed or Concept.Inhaler or Concept.Saturation or Concept.Temperature))));

    private static void SetAside(BlockRow row, Gathered into, string why)
    {
        into.SetAside.Add(new SetAsideLine(row.Source, why));
        into.Ledger.Mark(row[0].Row.Line, row[0].Row.LineCount, LineFate.NotRecord);
    }

    // The fate of every row: by its records, its problems, or said to hold nothing that could be read.
    private static void Account(Place place, IReadOnlyList<GridRow> rows, Gathered into)
    {
        Mark(into.Entries.SelectMany(e => e.Sources), into, LineFate.InRecords);
        Mark(into.Omitted.Select(o => o.Source), into, LineFate.InRecords);
        Mark(into.Problems.Select(p => p.Source), into, LineFate.Problem);
        foreach (var row in rows)
        {
            if (row.IsBlank) into.Ledger.Mark(row.Line, row.LineCount, LineFate.Blank);
            else if (!into.Ledger.IsMarked(row.Line))
            {
                into.SetAside.Add(new SetAsideLine(place.Of(row), "no record in this row"));
                into.Ledger.Mark(row.Line, row.LineCount, LineFate.NotRecord);
            }
            else if (row.LineCount > 1) into.Ledger.Mark(row.Line, row.LineCount, into.Ledger.FateOf(row.Line) ?? LineFate.NotRecord);
        }
    }

    private static void Mark(IEnumerable<SourceLine> sources, Gathered into, LineFate fate)
    {
        foreach (var source in sources)
            if (SourceLines.NumberOf(source) is > 0 and var line)
                into.Ledger.Mark(line, 1, fate);
    }
}
