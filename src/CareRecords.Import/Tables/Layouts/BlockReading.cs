using CareRecords.Import.Accounting;
using CareRecords.Import.Reading;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>What is known while the rows of one block are read: settled order, clock, the day, and the sessions so far.</summary>
internal sealed partial class BlockReading(Place place, Block block, Gathered into, SourceContext context, DateOrder? order, IReadOnlyList<AreaName> areaOrder, LocalDate? year, LocalDate? from)
{
    private readonly HashSet<(int Line, int Column)> _seen = [];
    private readonly List<(long Place, LocalTime Time, TableKind? Kind)> _timesOfRow = [];
    private readonly Dictionary<int, int> _filled = [];
    private readonly ColumnKinds _kinds = ColumnKinds.Of(block);

    /// <summary>The block's columns as events.</summary>
    public BlockSlots Slots { get; } = BlockSlots.Of(block);

    /// <summary>The block.</summary>
    public Block Block => block;

    /// <summary>Where what is read goes.</summary>
    public Gathered Into => into;

    /// <summary>What was known before.</summary>
    public SourceContext Context => context;

    /// <summary>Readers of single cells.</summary>
    public CellReaders Cells { get; } = new(into, context.Words);

    /// <summary>Settles morning and evening.</summary>
    public HalfOfDayRule Halves { get; } = new();

    /// <summary>The parts of the chest that bare numbers are for, from a legend of the source; empty when there is none.</summary>
    public IReadOnlyList<AreaName> AreaOrder => areaOrder;

    /// <summary>The day that rows without a date belong to; null when none is known.</summary>
    public LocalDate? Day { get; private set; }

    /// <summary>The first day of the block that is written with its month; null until one is.</summary>
    public LocalDate? FirstDay { get; private set; }

    /// <summary>The part of the day that the row is of ("morning"); null when it does not say.</summary>
    public string? Part { get; set; }

    /// <summary>The part of the day that the heading of the event being read names; null when it names none.</summary>
    public string? SlotPart { get; set; }

    /// <summary>"midday" where the table's title says that all of it was then; null in other tables.</summary>
    public string? TitlePart { get; } = block.Titles.Append(place.Sheet ?? "").Any(t => Lexicon.Split(t).Any(w => w is "midday" or "lunchtime")) && !block.Columns.Any(c => c.Part is not null || c.Role == Role.Part) ? "midday" : null;

    /// <summary>True where the line of the day says that it is a night's: its morning is of the next day.</summary>
    public bool IsNight { get; set; } = block.Titles.Count > 0 && SaysNight(block.Titles[^1]);

    /// <summary>True for words that name a night.</summary>
    public static bool SaysNight(string text) => Lexicon.Split(text).Any(w => w is "night" or "overnight" or "nights");

    /// <summary>The hour of the row of a tick chart; null in other tables.</summary>
    public LocalTime? Hour { get; set; }

    /// <summary>What the words around the tables say of their numbers: those of the sheet, or of the workbook's one sheet with a key.</summary>
    public SheetKey Key => into.Borrowed ?? into.Key;

    /// <summary>The row's own event, where each row is one: what else stands in the row was around it. Null in other tables.</summary>
    public UncertainTime? Anchor { get; set; }

    /// <summary>How many records there were before the row.</summary>
    public int RowFrom { get; private set; }

    /// <summary>True when what the row says went into a record of the rows above.</summary>
    public bool Joined { get; set; }

    /// <summary>The kind of event whose time a cell is; null when its heading does not say.</summary>
    public TableKind? KindOf(CellAt cell) => _kinds[cell];

    /// <summary>How many cells of a record's line or column are filled.</summary>
    public int FilledLike(CellAt cell) => block.IsAcross ? cell.Row.Cells.Skip(1).Count(c => !c.IsEmpty)
        : _filled.TryGetValue(cell.Column, out var filled) ? filled : _filled[cell.Column] = block.Rows.Count(r => !r[cell.Column].Cell.IsEmpty);

    /// <summary>True when each row is an event with a time of its own, several a day.</summary>
    public bool RowsAreEvents { get; } = AreEvents(block);

    /// <summary>What the table proves of times without a half of day.</summary>
    public ClockHabit Habit { get; } = ClockHabit.Of(block);

    /// <summary>Rows after midnight under the date of the evening.</summary>
    public (HashSet<int> Next, HashSet<int> Open) Nights { get; } = NightShifts.Of(block);

    /// <summary>True when cells under the sides tell lower from upper by letters.</summary>
    public bool NamesUpper { get; } = Enumerable.Range(0, block.Columns.Count).Where(c => block.Columns[c].Role == Role.Area).Any(c => block.Rows.Take(300).Any(r => r[c].Cell.Kind == CellKind.Text && TechniqueNumbers.NamesUpper(r[c].Cell.Text)));

    /// <summary>True when the rows are hours, and what is in a row happened within its hour.</summary>
    public bool RowsAreHours { get; } = HourRows.Are(block);

    /// <summary>How feeds go in where the table's title says so ("milk by the tube").</summary>
    public FeedRoute TitleRoute { get; } = block.Titles.Append(place.Sheet ?? "").SelectMany(t => t.Split(". ")).Select(t => KindWords.Read(t, FamilyWords.None)).FirstOrDefault(k => k is { Kind: TableKind.Feeds, Route: not FeedRoute.Unknown })?.Route ?? FeedRoute.Unknown;

    private static bool AreEvents(Block block)
    {
        var date = block.Columns.ToList().FindIndex(c => c.Role == Role.Date);
        if (block.IsAcross || ClockHabit.Anchors(block) is not [var anchor]) return false;
        var (written, ofDay) = ((string?)null, 0);
        foreach (var row in block.Rows.Where(r => !r[anchor].Cell.IsEmpty))
        {
            var dated = row[date].Cell.Words ?? written;
            ofDay = dated == written ? ofDay + 1 : 1;
            if (ofDay > 1) return true;
            written = dated;
        }

        return false;
    }

    /// <summary>The places that a session of this table is of, where the words around it say that it is of all; empty otherwise.</summary>
    public IReadOnlyList<AreaName> PlacesOfAll { get; init; } = [];

    /// <summary>Whether the words around the table say that its minutes are on each of those places.</summary>
    public bool MinutesEachPlace { get; init; }

    /// <summary>True where the words around the table say that the minutes of vibration are on each place that was treated.</summary>
    public bool ShakesEachPlace { get; init; }

    /// <summary>True where the sentences of a table write am and pm, whatever clock its own columns have ("chest at 6.40, and at 7.30pm" beside 19:15).</summary>
    public bool WordsSayHalf { get; } = block.Rows.Take(SampleRows).Sum(r => r.Cells.Count(c => c.Cell is { Kind: CellKind.Text, Text.Length: > LongSentence } && HalfInWords().IsMatch(c.Cell.Text))) > 1;

    private const int SampleRows = 300;
    private const int LongSentence = 60;

    [System.Text.RegularExpressions.GeneratedRegex(@"\b\d{1,2}(?:[.:]\d\d)?\s?[ap]\.?m\b", System.Text.RegularExpressions.RegexOptions.IgnoreCase)]
    private static partial System.Text.RegularExpressions.Regex HalfInWords();

    /// <summary>True when the hours of a tick chart are times to the minute.</summary>
    public bool HoursAreTimes { get; } = block.AreHours && HourGrid.AreTimes([.. block.Rows.Select(r => r[1].Cell)]);

    /// <summary>True when the table writes 0,5 for a half: a flow or a temperature in it does.</summary>
    public bool DecimalComma { get; } = block.Rows.Take(300).Any(r => Enumerable.Range(0, block.Columns.Count).Any(c => block.Columns[c].Role is Role.Oxygen or Role.Temperature && r[c].Cell.Kind == CellKind.Text && IsDecimal(r[c].Cell.Text.Trim())));

    /// <summary>True for "0,5", "38,2".</summary>
    public static bool IsDecimal(string text) => text.IndexOf(',', StringComparison.Ordinal) is > 0 and var comma && comma < text.Length - 1 && text.All(c => char.IsAsciiDigit(c) || c == ',') && text.Count(c => c == ',') == 1;

    /// <summary>Sessions of the day so far.</summary>
    public List<Session> SessionsOfDay { get; } = [];

    /// <summary>The last session of the block.</summary>
    public Session? LastSession { get; private set; }

    /// <summary>The latest time of the day in the rows above; null for the first row of a day.</summary>
    public LocalTime? Latest { get; private set; }

    /// <summary>The latest time of the day that stands before a cell: in the rows above, or before it in its own row, whichever was read first.</summary>
    public LocalTime? LatestBefore(CellAt cell)
    {
        var latest = Latest;
        // Columns of one kind after those of another need not follow them in time: "1st chest, 2nd chest, puffer".
        var kind = _kinds.AreGrouped ? _kinds[cell] : null;
        foreach (var (place, time, other) in _timesOfRow)
            if (place < PlaceOf(cell) && (kind is null || other is null || other == kind) && (latest is null || time > latest))
                latest = time;
        return latest;
    }

    /// <summary>True for a time shortly before one that stands before it in its row: a feed may have been stopped then, or in the other half of the day.</summary>
    public bool StepsBack(CellAt cell, LocalTime time) =>
        _timesOfRow.Exists(t => t.Place < PlaceOf(cell) && t.Time > time && Period.Between(time, t.Time, PeriodUnits.Minutes).Minutes <= HalfOfDayRule.StepBackMinutes);

    // Where a cell stands in its record: across, the records run down the lines.
    private long PlaceOf(CellAt cell) => block.IsAcross ? cell.Row.Line : cell.Column;

    /// <summary>Opens a day.</summary>
    public void Open(LocalDate? day)
    {
        if (day != Day || day is null)
        {
            Latest = null;
            _timesOfRow.Clear();
            SessionsOfDay.Clear();
        }

        Day = day;
    }

    /// <summary>Takes note of a time of the day.</summary>
    public void Saw(LocalTime time, CellAt at) => _timesOfRow.Add((PlaceOf(at), time, _kinds[at]));

    /// <summary>Settles a day as written; null, with a problem, when it cannot be.</summary>
    public LocalDate? Settle(DateWritten written, CellAt at)
    {
        // "Mon" and "3rd" need a day or month that is written somewhere: the file's year alone would give them a day out of the air.
        var bare = written is { First: null, Month: null };
        var settled = DateReader.Settle(written, order, Day ?? (bare ? from : year), year is null && !bare ? context.NotAfter : null, true);
        if (bare && settled.Outcome == Outcome.Nothing)
        {
            var week = "week-of:" + place.File;
            into.Questions.TryAdd(week, new Notes.AskedQuestion($"Which dates are the days in {place.File} (such as {at.Cell.Words})?", []));
            Cells.Ask(at.Source, $"'{at.Cell.Words}' has no date.", "Write a date above the table, such as: week beginning 3 March 2025.", week);
            return null;
        }

        if (settled.TryGet(out var day))
        {
            if (!bare && written.DaysFromContext is null) FirstDay ??= day;
            return day;
        }

        if (settled.Outcome == Outcome.Impossible)
        {
            Cells.Refuse(at.Source, settled.Why ?? $"There is no such day as '{at.Cell.Words}'.", "Correct the date.");
            return null;
        }

        var name = SourceContext.DateOrderQuestion(place.File);
        into.OrderIsOpen = true;
        into.Questions.TryAdd(name, new Notes.AskedQuestion($"Do the dates in {place.File} (such as {at.Cell.Words}) write the day first or the month first?", ["day first", "month first"]));
        Cells.Ask(at.Source, $"'{at.Cell.Words}' could be read with the day or the month first, and nothing in {place.File} settles it.",
            "Give --date-order dmy or --date-order mdy, or answer the question.", name);
        return null;
    }

    /// <summary>Adds a record and marks the lines of the cells it was made of.</summary>
    public void Add(CareEntry entry, params ReadOnlySpan<CellAt> madeOf)
    {
        into.Entries.Add(entry);
        foreach (var cell in madeOf) Use(cell);
        if (entry is not Session session) return;
        SessionsOfDay.Add(session);
        LastSession = session;
    }

    /// <summary>Puts a session that a later row made longer in its place.</summary>
    public void Replace(int at, Session old, Session longer)
    {
        into.Entries[at] = longer;
        LastSession = longer;
        if (SessionsOfDay.IndexOf(old) is >= 0 and var index) SessionsOfDay[index] = longer;
    }

    /// <summary>The session that words such as "same", "as am" or "same as Mon" point to; null when there is none.</summary>
    public Session? Same(string words, LocalTime? at = null) =>
        (Day is { } day ? SameAs.OfDay(words, into.Entries.OfType<Session>(), day, at) : null) ?? SameAs.Find(words, SessionsOfDay.Count > 0 || Day is not { } today ? SessionsOfDay : [.. into.Entries.OfType<Session>().Where(s => s.Start?.Stated.Date == today)], LastSession);

    /// <summary>The volume of a cell, whose heading may give the unit of its bare numbers ("In (oz)"); null when it is none.</summary>
    public double? Millilitres(CellAt cell, ColumnMeaning column) =>
        column.Unit == "oz" && !cell.Cell.Text.Any(char.IsLetter) && VolumeReader.Read(cell.Cell.Words + " oz").TryGet(out var fromOunces) ? fromOunces : Cells.Millilitres(cell);

    /// <summary>Marks a cell, and its line, as part of a record.</summary>
    public void Use(CellAt cell)
    {
        if (cell.Column < 0) return;
        Saw(cell);
        into.Ledger.Mark(cell.Row.Line, cell.Row.LineCount, Notes.LineFate.InRecords);
    }

    /// <summary>Marks a cell as understood: nothing in it is left to ask about.</summary>
    public void Saw(CellAt cell) => _seen.Add((cell.Row.Line, cell.Column));

    /// <summary>True when a cell went into a record or was understood.</summary>
    public bool IsUsed(CellAt cell) => _seen.Contains((cell.Row.Line, cell.Column));

    /// <summary>The comments on the cells of a record.</summary>
    public IEnumerable<(CellAt Cell, CellComment Comment)> CommentsOf(BlockRow row) =>
        from line in row.Cells.Select(c => c.Row).Distinct()
        from comment in line.Comments
        where !block.IsAcross || row.Cells.Any(c => c.Row == line && c.Column == comment.Column)
        select (new CellAt(place, line, comment.Column), comment);

    /// <summary>Marks a cell's comment as read.</summary>
    public void SawComment(CellAt cell) => _seen.Add((-cell.Row.Line, cell.Column));

    /// <summary>True when a cell's comment was read.</summary>
    public bool IsCommentRead(CellAt cell) => _seen.Contains((-cell.Row.Line, cell.Column));

    /// <summary>Forgets the cells of the row before.</summary>
    public void NextRow()
    {
        _seen.Clear();
        (Anchor, Joined, RowFrom) = (null, false, into.Entries.Count);
        foreach (var (_, time, _) in _timesOfRow)
            if (Latest is null || time > Latest)
                Latest = time;
        _timesOfRow.Clear();
    }

    /// <summary>The source of an event that stands in a column: the cell where a row holds several events, else the row.</summary>
    public SourceLine SourceOf(BlockRow row, int column) =>
        column >= 0 && (block.IsAcross || Slots.Slots.Count(s => s.Time >= 0 || s.End >= 0) > 1) ? row[column].Source
        : block.IsAcross ? (!row[Slots.Time].Cell.IsEmpty ? row[Slots.Time] : row[0]).Source
        : row.Source;
}
