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
internal sealed class BlockFinder
{
    private const int MostOfDayLine = 6;

    private readonly Place _place;
    private readonly IReadOnlyList<GridRow> _rows;
    private readonly List<Block> _blocks = [];
    private readonly List<LooseRow> _loose = [];
    private readonly List<GridRow> _headless = [];
    private readonly List<string> _titles = [];

    private BlockFinder(Place place, IReadOnlyList<GridRow> rows) => (_place, _rows) = (place, rows);

    /// <summary>The parts of a sheet.</summary>
    public static SheetParts Find(Place place, IReadOnlyList<GridRow> rows)
    {
        var finder = new BlockFinder(place, rows);
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
            else if (IsDayLine(row)) i = Loose(i, null);
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

    private int Beside(int at, List<GridRow> labels)
    {
        var columns = labels.Select(l => HeadingReader.Read(l[0].Text.Trim().TrimEnd(':'))).ToList();
        var rows = Enumerable.Range(1, labels.Max(l => l.Cells.Length) - 1).Select(c => new BlockRow([.. labels.Select(l => new CellAt(_place, l, c))])).Where(r => !r.IsBlank).ToList();
        _blocks.Add(new Block { Columns = columns, Rows = rows, About = About(_place.Sheet), IsAcross = true, IsOfOneDay = true, Titles = [.. _titles] });
        _titles.Clear();
        return at + labels.Count;
    }

    private (int Rows, IReadOnlyList<ColumnMeaning> Columns)? HeadingAt(int at) => HeadingStack.At(_rows, at);

    private int Down(int at, (int Rows, IReadOnlyList<ColumnMeaning> Columns) heading)
    {
        for (var i = 0; i < heading.Rows; i++) _loose.Add(new LooseRow(_rows[at + i], "the heading"));
        for (var i = 0; i < heading.Rows - 1; i++) _titles.AddRange(_rows[at + i].Cells.Where(c => !c.IsEmpty && Lexicon.Find(c.Text, out _).Count > 0 && c.Text.Length > 12).Select(c => c.Text));
        var rows = new List<BlockRow>();
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
            else if (row.Text == last && !(IsOneCell(_rows[next - 1]) && TitleDay.InLine(_rows[next - 1].Text.Trim(' ', '|', ',', ';')) is not null)) _loose.Add(new LooseRow(row, "the heading again"));
            else if (RowShape.IsDatesAcross(row) || HoursAcross.IsHeading(row) || (HeadingAt(next) is not null && EndsTable(next, words, heading.Columns.Count))) break;
            else if (IsDayLine(row) && NextHasHeading(next + 1)) break;
            else if (RowShape.IsTotal(row)) _loose.Add(new LooseRow(row, "a total or average"));
            else if (IsOneCell(row) && (IsOutside(row, heading.Columns) || IsMarkedDay(row)) && TitleDay.InLine(row.Text.Trim(' ', '|', ',', ';')) is { } day)
            {
                if (NextHasHeading(next + 1)) break;
                // A day on a line of its own holds for the rows under it.
                rows.Add(DayRow(row, day, heading.Columns));
            }
            else if (IsOneCell(row) && IsOutside(row, heading.Columns))
            {
                _loose.Add(new LooseRow(row, null));
                _titles.Add(row.Text);
                if (RowShape.IsKeyHeading(row.Cells.First(c => !c.IsEmpty).Text))
                {
                    next = Key(next + 1);
                    break;
                }
            }
            else rows.Add(new BlockRow([.. Enumerable.Range(0, Math.Max(heading.Columns.Count, row.Cells.Length)).Select(c => new CellAt(_place, row, c))]));
        }

        _blocks.Add(new Block
        {
            Columns = Widened(heading.Columns, rows),
            Rows = rows,
            About = About(rows.Count == 0 ? null : _place.Sheet),
            Titles = titles,
            Contract = heading.Rows == 1 ? CanonicalHeader.Read(_rows[at]) : null,
        });
        _titles.Clear();
        return next;
    }

    // "TIME | MON |  | TUE |" over " | PT | SATS | PT | SATS": under each day the same few columns.
    private bool IsDaysOverColumns(int at)
    {
        var row = _rows[at];
        if (!RowShape.IsDayLabels(row with { Cells = [Cell.Of("time"), .. row.Cells.Skip(1)] }) || at + 1 >= _rows.Count || CellTimes.Read(row[0]).Date is not null) return false;
        var under = _rows[at + 1];
        var (filled, dated) = (under.Cells.Skip(1).Where(c => !c.IsEmpty).ToList(), row.Cells.Skip(1).Count(c => !c.IsEmpty));
        return under[0].Kind is CellKind.Empty or CellKind.Text && RowShape.IsWordsOnly(under) && filled.Count > dated && !filled.TrueForAll(c => PartOfRow.Read(c.Text) is not null)
            && filled.Count(c => HeadingReader.Read(c.Text) is { IsKnown: true } or { Phase: not Records.CheckPhase.None }) * 3 >= filled.Count * 2;
    }

    private int DaysOverColumns(int at)
    {
        var (days, under) = (_rows[at], _rows[at + 1]);
        var starts = Enumerable.Range(1, days.Cells.Length - 1).Where(c => !days[c].IsEmpty).ToList();
        var width = Enumerable.Range(0, starts.Count).Max(i => (i + 1 < starts.Count ? starts[i + 1] : under.Cells.Length) - starts[i]);
        var first = !under[0].IsEmpty ? under[0] : days[0];
        var headings = Enumerable.Range(0, width).Select(w => under[starts[0] + w].Words ?? "").ToList();
        var records = new List<BlockRow>();
        var next = at + 2;
        _loose.Add(new LooseRow(days, "the heading of dates"));
        _loose.Add(new LooseRow(under, "the heading"));
        for (; next < _rows.Count && !_rows[next].IsBlank && !RowShape.IsDatesAcross(_rows[next]); next++)
        {
            var row = _rows[next];
            if (RowShape.IsTotal(row) || IsOneCell(row)) _loose.Add(new LooseRow(row, RowShape.IsTotal(row) ? "a total or average" : null));
            else
                foreach (var (start, i) in starts.Select((s, i) => (s, i)))
                {
                    var to = i + 1 < starts.Count ? starts[i + 1] : start + width;
                    if (Enumerable.Range(start, to - start).Any(c => !row[c].IsEmpty))
                        records.Add(new BlockRow([new CellAt(_place, days, start), new CellAt(_place, row, 0), .. Enumerable.Range(start, width).Select(c => new CellAt(_place, c < to ? row : under, c < to ? c : -1))]));
                }
        }

        // Days one after another, each from its first row on.
        var label = first.IsEmpty ? new ColumnMeaning("", Role.Unknown) : HeadingReader.Read(first.Text.Trim());
        if (!label.IsKnown) label = label with { Role = Role.Time };
        _blocks.Add(new Block { Columns = [new("Date", Role.Date), label, .. headings.Select(h => HeadingReader.Read(h))], Rows = [.. records.OrderBy(r => r[0].Column)], About = About(_place.Sheet), IsAcross = true, Titles = [.. _titles] });
        _titles.Clear();
        return next;
    }

    // One day or two over lines that are headed at their side.
    private bool IsFewDays(int at)
    {
        var row = _rows[at];
        if (!RowShape.IsDayLabels(row, fewest: 1) || HeadingAt(at) is not null) return false;
        var next = at + 1;
        while (next < _rows.Count && _rows[next].IsBlank) next++;
        if (next < _rows.Count && _rows[next].Cells.Skip(1).Count(c => PartOfRow.Read(c.Text) is not null) is > 1 and var named && named == _rows[next].Cells.Count(c => !c.IsEmpty)) return true;
        while (next < _rows.Count && (IsOneCell(_rows[next]) || _rows[next].IsBlank)) next++;
        return LabelsBeside(next).Count >= 2;
    }

    // "Medicine | Dose | 1 | 2 | 3 ..." under "November 2025": the days of that month. Null for numbers of another kind.
    private GridRow? DaysOfMonth(GridRow row)
    {
        if (row[0].Kind is not (CellKind.Text or CellKind.Empty) || TitleDay.Months(_place, _rows).Count != 1) return null;
        if (Lexicon.Split(row[0].Text).Any(w => w is "hour" or "hours" or "time" or "clock")) return null;
        var (cells, last, count) = (row.Cells.ToArray(), 0, 0);
        for (var c = 0; c < cells.Length; c++)
        {
            if (cells[c].IsEmpty || (cells[c].Kind == CellKind.Text && !cells[c].Text.Any(char.IsAsciiDigit))) continue;
            if (!int.TryParse(cells[c].Text.Trim(), System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var day) || day is < 1 or > 31 || day <= last || (last > 0 && day != last + 1)) return null;
            (last, count) = (day, count + 1);
            cells[c] = Cell.Of(FormattableString.Invariant($"{day}{(day is 1 or 21 or 31 ? "st" : day is 2 or 22 ? "nd" : day is 3 or 23 ? "rd" : "th")}"));
        }

        return count >= 3 ? row with { Cells = cells } : null;
    }

    /// <summary>True for "Date | 18/8/2025 |  | Carer: | Mum": what stands over a table of one day, or of one week.</summary>
    public static bool IsDayLine(GridRow row)
    {
        var filled = row.Cells.Where(c => !c.IsEmpty).Take(MostOfDayLine + 1).ToList();
        if (filled.Count is < 2 or > MostOfDayLine || filled[0].Kind != CellKind.Text || CellTimes.Read(filled[0]).Date is not null) return false;
        var dates = filled.Where(c => CellTimes.Read(c).Date is not null).ToList();
        return dates.Count == 1 && filled.Zip(filled.Skip(1)).Any(p => IsDayLabel(p.First) && CellTimes.Read(p.Second).Date is not null)
            && filled.TrueForAll(c => c == dates[0] || c.Kind == CellKind.Text);
    }

    private static bool IsDayLabel(Cell cell) => cell.Kind == CellKind.Text && cell.Text.Trim().Length < 25
        && Lexicon.Split(cell.Text) is { Count: > 0 and <= 3 } words && words.Any(w => w is "date" or "day" or "week" or "today" or "today's" or "wc" or "w" or "commencing" or "beginning");

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
    private bool EndsTable(int at, bool words, int columns)
    {
        var row = _rows[at];
        if (_rows[at - 1].IsBlank || CanonicalHeader.Read(row) is not null || IsOneCell(_rows[at - 1])) return true;
        return !words && (row.Cells.Count(c => !c.IsEmpty) is > 2 and var filled || (filled = 2) * 2 >= columns);
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

    // Dates across: each column of dates is one record, the labels down the side are its headings.
    private int Across(int at, GridRow? days = null)
    {
        var dates = days ?? _rows[at];
        var labels = new List<GridRow>();
        var next = at + 1;
        // "am | pm" under each date: two records a day.
        var parts = next < _rows.Count && _rows[next].Cells.Skip(1).Count(c => PartOfRow.Read(c.Text) is not null) is > 1 and var named && named == _rows[next].Cells.Skip(1).Count(c => !c.IsEmpty) ? _rows[next++] : null;
        if (parts is not null) _loose.Add(new LooseRow(parts, "the heading of parts of the day"));
        var deep = TwoLabels(dates, next);
        string? over = null;
        for (; next < _rows.Count; next++)
        {
            var row = _rows[next];
            if (deep && !row.IsBlank && !row[1].IsEmpty)
            {
                over = row[0].Words ?? over;
                labels.Add(row with { Cells = [Cell.Of(row[1].Text), Cell.Empty, .. row.Cells.Skip(2)], Text = over ?? "", Written = row.Written ?? row.Text });
                continue;
            }

            if (RowShape.IsDatesAcross(row) || (!row.IsBlank && HourGrid.HourOf(row[0]) is null && PartOfRow.Read(row[0].Text) is null && HeadingAt(next) is not null && row.Cells.Skip(1).All(c => c.IsEmpty || c.Kind == CellKind.Text) && labels.Count > 2 && row.Cells.Count(c => !c.IsEmpty) > 2)) break;
            if (row.IsBlank) continue;
            if (labels.Count > 0 && _rows[next - 1].IsBlank && RowShape.IsDayLabels(row)) break;
            if (labels.Count > 0 && RowShape.IsTotal(row) && HeadingReader.Read(row[0].Text).Role is Role.Ignore or Role.Unknown)
            {
                _loose.Add(new LooseRow(row, "a total or average"));
                continue;
            }

            if (row.Cells.Skip(1).All(c => c.IsEmpty) && row[0].Text.Trim() is ['1', '9', _, _] or ['2', '0', _, _]) _loose.Add(new LooseRow(row, null));
            else if (RowShape.IsRule(row) || row[0].IsEmpty) _loose.Add(new LooseRow(row, row[0].IsEmpty ? null : "a drawn line"));
            else if (row.Cells.Skip(1).All(c => c.IsEmpty) && !HeadingReader.Read(row[0].Text).IsKnown && !AnyLabelBelow(next)) _loose.Add(new LooseRow(row, null));
            else labels.Add(row);
        }

        // "OXYGEN LEVEL | Mon | Tue": what stands in the corner is what the whole table is about.
        var corner = KindWords.Read(dates[0].Text, Reading.FamilyWords.None) is null ? null : dates[0].Words;
        if (corner is not null) _titles.Add(corner);
        if (HourGrid.IsHours([.. labels.Select(l => l[0])]) || (corner is not null && labels.Count > 0 && labels.TrueForAll(l => HourGrid.HourOf(l[0]) is not null))) return Grid(dates, labels, next);
        var columns = new List<ColumnMeaning> { new("Date", Role.Date) };
        columns.AddRange(AcrossColumns(labels, Array.FindIndex(dates.Cells, c => CellTimes.Read(c).Date is not null), corner, deep).Select((c, i) => c with { DefaultAmount = AmountBeside(dates, labels[i]) ?? c.DefaultAmount }));
        if (parts is not null) columns.Insert(1, new ColumnMeaning("Part", Role.Part));
        var rows = new List<BlockRow>();
        var dated = -1;
        for (var c = 1; c < Math.Max(dates.Cells.Length, parts?.Cells.Length ?? 0); c++)
        {
            if (CellTimes.Read(dates[c]).Date is not null) dated = c;
            else if (parts is null || !dates[c].IsEmpty || parts[c].IsEmpty) dated = -1;
            if (dated < 0) continue;
            CellAt[] head = parts is null ? [new CellAt(_place, dates, dated)] : [new CellAt(_place, dates, dated), new CellAt(_place, parts, c)];
            rows.Add(new BlockRow([.. head, .. labels.Select(l => new CellAt(_place, l, c))]));
        }

        _loose.Add(new LooseRow(dates, "the heading of dates"));
        foreach (var (label, column) in labels.Zip(columns.Skip(parts is null ? 1 : 2)))
            if (column.Role == Role.Ignore || rows.All(r => r.Cells.First(c => c.Row == label).Cell.IsEmpty))
                _loose.Add(new LooseRow(label, column.Role == Role.Ignore ? "not of this record" : "a label with nothing beside it"));
        _blocks.Add(new Block { Columns = columns, Rows = rows, About = About(_place.Sheet), IsAcross = true, Titles = [.. _titles] });
        _titles.Clear();
        return next;
    }

    // Dates down, hours across.
    private int Hours(int at)
    {
        var rows = new List<GridRow>();
        var next = at + 1;
        for (; next < _rows.Count && !RowShape.IsDatesAcross(_rows[next]) && !HoursAcross.IsHeading(_rows[next]); next++)
        {
            var row = _rows[next];
            if (row.IsBlank) continue;
            if (_rows[next - 1].IsBlank && HeadingAt(next) is not null) break;
            if (RowShape.IsRule(row)) _loose.Add(new LooseRow(row, "a drawn line"));
            else if (RowShape.IsTotal(row)) _loose.Add(new LooseRow(row, "a total or average"));
            else if (IsOneCell(row) && row.Cells[Array.FindIndex(row.Cells, c => !c.IsEmpty)].Kind == CellKind.Text && CellTimes.Read(row[0]).Outcome == Reading.Outcome.Nothing) _loose.Add(new LooseRow(row, null));
            else rows.Add(row);
        }

        _loose.Add(new LooseRow(_rows[at], "the heading of hours"));
        List<string> titles = [.. _titles];
        _blocks.AddRange(HoursAcross.Blocks(_place, HoursAcross.Unwound(_rows[at]) ?? _rows[at], rows, About(_place.Sheet)).Select(b => b with { Titles = titles }));
        foreach (var row in rows.Where(r => !_blocks.Exists(b => b.Rows.Any(x => x.Cells.Any(c => c.Row == r))))) _loose.Add(new LooseRow(row, "a day with nothing else"));
        _titles.Clear();
        return next;
    }

    // Hours down, dates across: every filled cell is a record of its own.
    private int Grid(GridRow dates, List<GridRow> labels, int next)
    {
        // Hours that begin again after noon: counted to 24 as in a heading.
        if (HoursAcross.Unwound(new GridRow(0, 1, [.. labels.Select(l => l[0])], "")) is { } unwound)
            labels = [.. labels.Select((l, i) => l with { Cells = [unwound.Cells[i], .. l.Cells.Skip(1)] })];
        _loose.Add(new LooseRow(dates, "the heading of dates"));
        foreach (var label in labels.Where(l => HourGrid.HourOf(l[0]) is null || l.Cells.Skip(1).All(c => c.IsEmpty)))
            _loose.Add(new LooseRow(label, HourGrid.HourOf(label[0]) is null ? "beside the hours: a total or a remark" : "an hour with nothing beside it"));
        var rows = from column in Enumerable.Range(1, dates.Cells.Length - 1)
                   where CellTimes.Read(dates[column]).Date is not null
                   from label in labels
                   where HourGrid.HourOf(label[0]) is not null && !label[column].IsEmpty
                   select new BlockRow([new CellAt(_place, dates, column), new CellAt(_place, label, 0), new CellAt(_place, label, column)]);
        _blocks.Add(new Block { Columns = [new("Date", Role.Date), new("Hour", Role.Time), new("", Role.Unknown)], Rows = [.. rows], About = About(_place.Sheet), IsAcross = true, IsGrid = true });
        _titles.Clear();
        return next;
    }

    // "SESSION 1 | TIME", under it " | LEFT": a group and its labels in two columns.
    private bool TwoLabels(GridRow dates, int from)
    {
        if (!dates[1].IsEmpty || RowShape.IsDayLabels(dates with { Cells = [dates[0], dates[1]] }, fewest: 1)) return false;
        var rows = _rows.Skip(from).TakeWhile(r => !RowShape.IsDatesAcross(r)).Where(r => !r.IsBlank && !IsOneCell(r)).Take(40).ToList();
        return rows.Count >= 2 && rows.Count(r => r[1].Kind == CellKind.Text && PartOfRow.Read(r[1].Text) is null && HeadingReader.Read(r[1].Text, rows[0][0].Words).IsKnown) * 3 >= rows.Count * 2;
    }

    // "Salbutamol | 2 puffs" down the side: the amount of every dose of the line.
    private static string? AmountBeside(GridRow dates, GridRow label)
    {
        for (var i = 1; i < dates.Cells.Length && CellTimes.Read(dates[i]).Date is null; i++)
            if (!label[i].IsEmpty && Lexicon.Find(dates[i].Text, out _).Any(k => k.Concept is Concept.Amount or Concept.Puffs))
                return label[i].Words;
        return null;
    }

    private bool AnyLabelBelow(int at) => _rows.Skip(at + 1).Take(3).Any(r => !r.IsBlank && r.Cells.Skip(1).Any(c => !c.IsEmpty));

    // A label with nothing beside it ("Morning") is the group heading of those under it.
    private static IEnumerable<ColumnMeaning> AcrossColumns(List<GridRow> labels, int firstDate, string? corner, bool deep)
    {
        var (group, number) = (corner, 0);
        string? before = null;
        foreach (var label in labels)
        {
            if (deep && label.Text != before) (group, before, number) = (label.Text, label.Text, number + 1);
            if (!deep && label.Cells.Skip(1).All(c => c.IsEmpty)) (group, number) = (label[0].Words, number + 1);
            var beside = Enumerable.Range(1, Math.Max(0, firstDate - 1)).Where(i => label[i].Kind == CellKind.TimeOfDay || (label[i].Kind == CellKind.Text && (PartOfRow.Read(label[i].Text) is not null || HeadingTime.Read(label[i].Text) is not null))).Select(i => label[i].Text.Trim());
            var own = string.Join(' ', beside.Prepend(label[0].Text.Trim()));
            // A part of the day under "CHEST PT" is a session of that part.
            var part = corner is not null && group == corner ? PartOfRow.Read(own) : null;
            var meaning = HeadingReader.Read(part is null ? own : corner!, part is null ? group : null) with { Group = number };
            yield return part is null ? meaning : meaning with { Heading = $"{corner} {own}", Own = own, Part = part, Half = part == "midday" ? Reading.HalfOfDay.Unknown : part == "morning" ? Reading.HalfOfDay.Am : Reading.HalfOfDay.Pm };
        }
    }

    private static List<ColumnMeaning> Widened(IReadOnlyList<ColumnMeaning> columns, List<BlockRow> rows)
    {
        var widest = rows.Count == 0 ? 0 : rows.Max(r => r.Cells.Count);
        return [.. columns, .. Enumerable.Range(columns.Count, Math.Max(0, widest - columns.Count)).Select(_ => new ColumnMeaning("", Role.Unknown))];
    }

    private TableKind? About(string? sheet) =>
        _titles.AsEnumerable().Reverse().Append(sheet ?? "").Append(System.IO.Path.GetFileNameWithoutExtension(_place.File))
            .Select(t => KindWords.Read(t, Reading.FamilyWords.None)?.Kind).FirstOrDefault(k => k is not null);

    private int Loose(int at, string? why)
    {
        _loose.Add(new LooseRow(_rows[at], why));
        if (why is null) _titles.Add(_rows[at].Text);
        return at + 1;
    }

    private static bool IsOneCell(GridRow row) => row.Cells.Count(c => !c.IsEmpty) == 1;
}
