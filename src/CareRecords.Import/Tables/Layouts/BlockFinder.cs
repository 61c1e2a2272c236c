namespace CareRecords.Import.Tables.Layouts;

/// <summary>A row that stands outside the records of a block, with the reason.</summary>
/// <param name="Row">The row.</param>
/// <param name="Why">Why it holds no record; null for words that may be a legend or a remark.</param>
internal readonly record struct LooseRow(GridRow Row, string? Why);

/// <summary>What a sheet is made of.</summary>
/// <param name="Blocks">Its tables from top to bottom.</param>
/// <param name="Loose">Rows that belong to none.</param>
/// <param name="Headless">Filled rows with several cells and no heading above them.</param>
internal sealed record SheetParts(IReadOnlyList<Block> Blocks, IReadOnlyList<LooseRow> Loose, IReadOnlyList<GridRow> Headless);

/// <summary>Finds the tables of a sheet: their headings, also in two rows, their rows, and what stands around them.</summary>
internal sealed partial class BlockFinder
{
    private const int MostOfDayLine = 6;
    private const int FewestOfForm = 4;

    private readonly Place _place;
    private readonly IReadOnlyList<GridRow> _rows;
    private readonly List<Block> _blocks = [];
    private readonly List<LooseRow> _loose = [];
    private readonly List<GridRow> _headless = [];
    private readonly List<string> _titles = [];

    private readonly NodaTime.LocalDate? _year;

    private BlockFinder(Place place, IReadOnlyList<GridRow> rows, NodaTime.LocalDate? year) => (_place, _rows, _year) = (place, rows, year);

    /// <summary>The parts of a sheet.</summary>
    /// <param name="place">The sheet or text.</param>
    /// <param name="rows">Its rows.</param>
    /// <param name="year">A day of the year that days without one are of; null when none is known.</param>
    public static SheetParts Find(Place place, IReadOnlyList<GridRow> rows, NodaTime.LocalDate? year = null)
    {
        var finder = new BlockFinder(place, rows, year);
        finder.Walk();
        return new SheetParts(finder._blocks, finder._loose, finder._headless);
    }

    private void Walk()
    {
        for (var i = 0; i < _rows.Count;)
        {
            var row = _rows[i];
            if (row.IsBlank) i++;
            else if (RowShape.IsRule(row)) i = Loose(i, "a drawn line");
            else if (Form(i) is { } form) i = Beside(i, form, oneDay: false);
            else if (DayOverParts(i) is { } day) i = Across(i, day);
            else if (IsDayLine(row)) i = Loose(i, null);
            else if (HoursAcross.CountsSessions(row) && i + 1 < _rows.Count && RowShape.IsDatesAcross(_rows[i + 1])) i = Loose(i, "the numbers of the columns");
            else if (IsDaysOverColumns(i)) i = DaysOverColumns(i);
            else if (DaysOfMonth(row) is { } days) i = Across(i, days);
            else if (RowShape.IsDatesAcross(row) || IsFewDays(i)) i = Across(i);
            else if (HoursAcross.IsHeading(row)) i = Hours(i);
            else if (HeadingAt(i) is { } headings) i = Down(i, headings);
            else if (IsOneCell(row)) i = Loose(i, null);
            else if (RowShape.IsTotal(row)) i = Loose(i, "a total or average");
            else if (LabelsBeside(i) is { Count: >= 2 } labels) i = Beside(i, labels);
            else
            {
                _headless.Add(row);
                i++;
            }
        }
    }

    // Rows of one day, each headed at its side: "Physio | 7:05 | 17:10", "Inhaler | 6:45 | 16:50".
    private List<GridRow> LabelsBeside(int at)
    {
        var labels = new List<GridRow>();
        for (; at < _rows.Count && !_rows[at].IsBlank && !IsOneCell(_rows[at]); at++)
        {
            var row = _rows[at];
            var meaning = row[0].Kind == CellKind.Text && CellTimes.Read(row[0]).Outcome == Reading.Outcome.Nothing ? HeadingReader.Read(row[0].Text.Trim().TrimEnd(':')) : new ColumnMeaning("", Role.Unknown);
            if (meaning.Role is not (Role.Session or Role.SessionEnd or Role.Feed or Role.FeedStart or Role.FeedEnd or Role.Dose or Role.Saturation or Role.Pulse or Role.Oxygen or Role.Temperature or Role.Millilitres or Role.Area or Role.Minutes or Role.Time or Role.Note) && !(meaning is { Role: Role.Amount, Medicine: not null })) break;
            if (meaning.Role is not Role.Note && !row.Cells.Skip(1).Any(c => !c.IsEmpty && (c.Kind != CellKind.Text || c.Text.AsSpan().ContainsAnyInRange('0', '9') || SmallWords.ReadYesNo(c.Text) is not null))) break;
            if (row.Cells.Skip(1).Any(c => c.Kind == CellKind.Text && !c.Text.Any(char.IsAsciiDigit) && meaning.Role is not Role.Note && HeadingReader.Read(c.Text).IsKnown)) break;
            labels.Add(row);
        }

        return labels;
    }

    // A form of one event: "Date | 4/3/2025", under it "Time started | 7:05", "Left lower | 3", one line a thing. Null where the rows are none.
    private List<GridRow>? Form(int at)
    {
        if (_rows[at].Cells.Length != 2 || HeadingAt(at) is not null) return null;
        var labels = new List<GridRow>();
        for (; at < _rows.Count && !_rows[at].IsBlank && _rows[at].Cells.Length <= 2 && _rows[at][0].Kind == CellKind.Text; at++)
        {
            var role = HeadingReader.Read(_rows[at][0].Text.Trim().TrimEnd(':')).Role;
            if (CellTimes.Read(_rows[at][0]).Date is not null || (labels.Count > 0 && role == Role.Date && CellTimes.Read(_rows[at][1]).Date is not null)) break;
            labels.Add(_rows[at]);
        }

        var roles = labels.Select(l => HeadingReader.Read(l[0].Text.Trim().TrimEnd(':')).Role).ToList();
        return labels.Count >= FewestOfForm && roles.Count(r => r != Role.Unknown) * 4 >= roles.Count * 3 && CellTimes.Read(labels[0][1]).Date is not null && roles[0] == Role.Date
            && roles.Exists(r => r is Role.Time or Role.Start or Role.Session) && labels.Count(l => HeadingReader.Read(l[1].Text).IsKnown && !l[1].Text.Any(char.IsAsciiDigit)) * 2 < labels.Count ? labels : null;
    }

    private int Beside(int at, List<GridRow> labels, bool oneDay = true)
    {
        var columns = labels.Select(l => HeadingReader.Read(l[0].Text.Trim().TrimEnd(':'))).ToList();
        var rows = Enumerable.Range(1, labels.Max(l => l.Cells.Length) - 1).Select(c => new BlockRow([.. labels.Select(l => new CellAt(_place, l, c))])).Where(r => !r.IsBlank).ToList();
        _blocks.Add(new Block { Columns = columns, Rows = rows, About = About(_place.Sheet), IsAcross = true, IsOfOneDay = oneDay, Titles = [.. _titles] });
        _titles.Clear();
        return at + labels.Count;
    }

    private (int Rows, IReadOnlyList<ColumnMeaning> Columns)? HeadingAt(int at) => HeadingStack.At(_rows, at);

    // "; 12:15; 150; 12:45" under "Date; Time; ml; until": a row of the table, whose day stands above.
    private static bool IsTimed(GridRow row, IReadOnlyList<ColumnMeaning> columns) =>
        Enumerable.Range(1, Math.Max(0, columns.Count - 1)).Any(c => columns[c].Role is Role.Time or Role.Start && CellTimes.Read(row[c]).Clock is not null) && columns[0].Role is Role.Date && row[0].IsEmpty;

    private int Down(int at, (int Rows, IReadOnlyList<ColumnMeaning> Columns) heading)
    {
        var headings = _loose.Count;
        for (var i = 0; i < heading.Rows; i++) _loose.Add(new LooseRow(_rows[at + i], "the heading"));
        var about = About(null);
        for (var i = 0; i < heading.Rows - 1; i++) _titles.AddRange(_rows[at + i].Cells.Where(c => !c.IsEmpty && Lexicon.Find(c.Text, out _).Count > 0 && c.Text.Length > 12).Select(c => c.Text));
        var rows = new List<BlockRow>();
        var below = new List<string>();
        List<string> titles = [.. _titles];
        // What a word means reads like a heading ("puff" beside "salbutamol inhaler").
        var words = heading.Columns.Any(c => c.Role == Role.Word) && heading.Columns.Any(c => c.Role == Role.Means);
        var last = _rows[at + heading.Rows - 1].Text;
        var next = at + heading.Rows;
        for (; next < _rows.Count; next++)
        {
            var row = _rows[next];
            if (row.IsBlank) continue;
            if (RowShape.IsRule(row)) _loose.Add(new LooseRow(row, "a drawn line"));
            // "x = given | - = not given" at the foot.
            else if (row.Cells.Where(c => !c.IsEmpty).All(c => c.Text.Contains(" = ", StringComparison.Ordinal))) _loose.Add(new LooseRow(row, null));
            else if (row.Text == last && !(IsOneCell(_rows[next - 1]) && TitleDay.InLine(_rows[next - 1].Text.Trim(' ', '|', ',', ';')) is not null)) _loose.Add(new LooseRow(row, "the heading again"));
            else if (RowShape.IsDatesAcross(row) || (HoursAcross.IsHeading(row) && !IsTimed(row, heading.Columns)) || (HeadingAt(next) is not null && EndsTable(next, words, heading.Columns))) break;
            else if (IsDayLine(row) && NextHasHeading(next + 1)) break;
            else if (RowShape.IsTotal(row) || RowShape.IsCount(row, heading.Columns)) _loose.Add(new LooseRow(row, "a total or average"));
            else if (IsOneCell(row) && (IsOutside(row, heading.Columns) || IsMarkedDay(row)) && TitleDay.InLine(row.Text.Trim(' ', '|', ',', ';'), _year) is { } day)
            {
                if (NextHasHeading(next + 1)) break;
                // A day on a line of its own holds for the rows under it.
                rows.Add(DayRow(row, day, heading.Columns));
            }
            else if (IsOneCell(row) && IsOutside(row, heading.Columns) && !CellTimes.IsUnreadDate(row.Cells.First(c => !c.IsEmpty).Text))
            {
                _loose.Add(new LooseRow(row, null));
                below.Add(row.Text);
                if (RowShape.IsKeyHeading(row.Cells.First(c => !c.IsEmpty).Text))
                {
                    next = Key(next + 1);
                    break;
                }
            }
            else
            {
                rows.Add(new BlockRow([.. Enumerable.Range(0, Math.Max(heading.Columns.Count, row.Cells.Length)).Select(c => new CellAt(_place, row, c))]));
                below.Clear();
            }
        }

        // "Pump | ran 21:00–06:00 at 70 mL/hr" reads like a heading, and nothing stands under it.
        if (rows.Count == 0 && heading.Rows == 1 && _rows[at].Cells.Any(c => c.Kind == CellKind.Text && FreeWords.HasClock(c.Text)))
        {
            _loose[headings] = new LooseRow(_rows[at], null);
            return next;
        }

        _blocks.Add(new Block
        {
            Columns = Widened(heading.Columns, rows),
            Rows = rows,
            About = about ?? About(rows.Count == 0 ? null : _place.Sheet),
            Titles = titles,
            Contract = heading.Rows == 1 ? CanonicalHeader.Read(_rows[at]) : null,
        });
        // What stands below the last row is the title of the next table.
        _titles.Clear();
        _titles.AddRange(below);
        return next;
    }

    /// <summary>True for "Date | 18/8/2025 |  | Carer: | Mum": what stands over a table of one day, or of one week.</summary>
    public static bool IsDayLine(GridRow row)
    {
        // Nearly every row of a long table begins with a figure: it is told before anything else is looked at.
        if (!Array.Exists(row.Cells, IsDayLabel)) return false;
        var filled = row.Cells.Where(c => !c.IsEmpty).Take(MostOfDayLine + 1).ToList();
        if (filled.Count is < 2 or > MostOfDayLine || filled[0].Kind != CellKind.Text || CellTimes.Read(filled[0]).Date is not null) return false;
        var dates = filled.Where(c => CellTimes.Read(c).Date is not null).ToList();
        return dates.Count == 1 && filled.Zip(filled.Skip(1)).Any(p => IsDayLabel(p.First) && CellTimes.Read(p.Second).Date is not null)
            && filled.TrueForAll(c => c == dates[0] || c.Kind == CellKind.Text);
    }

    private static bool IsDayLabel(Cell cell) => cell.Kind == CellKind.Text && cell.Text.Length < 40 && char.IsLetter(cell.Text.AsSpan().TrimStart()[0]) && cell.Text.Trim().Length < 25
        && Lexicon.Split(cell.Text) is { Count: > 0 and <= 3 } words && words.Any(w => w is "date" or "day" or "week" or "today" or "today's" or "starting" or "wc" or "w" or "commencing" or "beginning");

    private bool NextHasHeading(int at)
    {
        while (at < _rows.Count && _rows[at].IsBlank) at++;
        return at < _rows.Count && HeadingAt(at) is not null;
    }

    private BlockRow DayRow(GridRow row, NodaTime.LocalDate day, IReadOnlyList<ColumnMeaning> columns)
    {
        var at = Math.Max(0, columns.ToList().FindIndex(c => c.Role is Role.Date or Role.Time or Role.Start));
        var cells = Enumerable.Range(0, Math.Max(columns.Count, 1)).Select(i => i == at ? new Cell(CellKind.Date, row.Text, 0, day.AtMidnight()) : Cell.Empty).ToArray();
        var dated = row with { Cells = cells };
        return new BlockRow([.. Enumerable.Range(0, cells.Length).Select(c => new CellAt(_place, dated, c))]);
    }

    // Within a table a row of two words that could be headings is data ("mid | no - asleep"), as is what a word means.
    private bool EndsTable(int at, bool words, IReadOnlyList<ColumnMeaning> columns)
    {
        var row = _rows[at];
        if (_rows[at - 1].IsBlank || CanonicalHeader.Read(row) is not null || IsOneCell(_rows[at - 1])) return true;
        // A row that only lacks its time.
        if (row[0].IsEmpty && columns[0].Role is Role.Date or Role.Time or Role.Start && row.Cells.Count(c => !c.IsEmpty) * 2 <= columns.Count * 2 && row.Cells.Any(c => c.Kind == CellKind.Text && Lexicon.Split(c.Text).Count > 4)) return false;
        return !words && (row.Cells.Count(c => !c.IsEmpty) is > 2 and var filled || (filled = 2) * 2 >= columns.Count);
    }

    // What stands under "Key:" explains the table and is no row of it.
    private int Key(int from)
    {
        for (; from < _rows.Count; from++)
        {
            var row = _rows[from];
            if (row.IsBlank) continue;
            if (RowShape.IsDatesAcross(row) || HeadingAt(from) is not null) return from;
            _loose.Add(new LooseRow(row, RowShape.IsTotal(row) ? "a total or average" : null));
        }

        return from;
    }

    // "Day 2 - 4th Nov 2025" where a time would stand.
    private static bool IsMarkedDay(GridRow row) => row.Cells.First(c => !c.IsEmpty) is { Kind: CellKind.Text } cell && CellTimes.Read(cell).Outcome != Reading.Outcome.Certain;

    // A remark in the first column, or in a column that holds days or times: not a cell of the note column or of free words.
    private static bool IsOutside(GridRow row, IReadOnlyList<ColumnMeaning> columns)
    {
        var at = Array.FindIndex(row.Cells, c => !c.IsEmpty);
        if (row.Cells[at].Kind != CellKind.Text || CellTimes.Read(row.Cells[at]).Outcome != Reading.Outcome.Nothing) return false;
        return at >= columns.Count || at == 0 || columns[at].Role is Role.Date or Role.Time or Role.Start or Role.Area;
    }

    private static List<ColumnMeaning> Widened(IReadOnlyList<ColumnMeaning> columns, List<BlockRow> rows)
    {
        var widest = rows.Count == 0 ? 0 : rows.Max(r => r.Cells.Count);
        return [.. columns, .. Enumerable.Range(columns.Count, Math.Max(0, widest - columns.Count)).Select(_ => new ColumnMeaning("", Role.Unknown))];
    }

    private TableKind? About(string? sheet) =>
        _titles.Where(t => !t.Contains('=', StringComparison.Ordinal)).Reverse().Append(sheet ?? "").Append(System.IO.Path.GetFileNameWithoutExtension(_place.File))
            .Select(t => KindWords.Read(t, Reading.FamilyWords.None)?.Kind).FirstOrDefault(k => k is not null);

    private int Loose(int at, string? why)
    {
        _loose.Add(new LooseRow(_rows[at], why));
        if (why is null) _titles.Add(_rows[at].Text);
        return at + 1;
    }

    private static bool IsOneCell(GridRow row) => row.Cells.Count(c => !c.IsEmpty) == 1;
}
