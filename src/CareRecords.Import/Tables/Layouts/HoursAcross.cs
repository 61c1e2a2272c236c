namespace CareRecords.Import.Tables.Layouts;

/// <summary>Takes tables with days down and hours across apart into one record for each filled cell.</summary>
internal static class HoursAcross
{
    private const int FewestHours = 3;
    private const int FewestBareHours = 6;

    /// <summary>True for a heading row with three or more hours or times, most of its cells, that follow one another.</summary>
    public static bool IsHeading(GridRow row)
    {
        if (row.Cells.Length < 2 || row[0].Kind is not (CellKind.Text or CellKind.Empty) || row[0].Text.AsSpan().ContainsAnyInRange('0', '9')) return false;
        var hours = row.Cells.Where(IsHour).Select(c => HourGrid.HourOf(c)!.Value).ToList();
        if (hours.Count < FewestHours || row.Cells.Length < 2 || IsHour(row[0]) || row[0].Kind is not (CellKind.Text or CellKind.Empty) || CellTimes.Read(row[0]).Date is not null) return false;
        var words = row.Cells.Count(c => !c.IsEmpty && !IsHour(c));
        return words <= hours.Count + 1 && row.Cells.All(c => c.IsEmpty || IsHour(c) || (c.Kind == CellKind.Text && !c.Text.Any(char.IsAsciiDigit)))
            && (row[0].IsEmpty || HeadingReader.Read(row[0].Text).IsKnown) && (hours.Zip(hours.Skip(1)).Count(p => (p.First.Hour, p.First.Minute).CompareTo(p.Second) < 0) * 5 >= (hours.Count - 1) * 4 || Unwound(row) is not null)
            && (row.Cells.Any(IsWrittenAsTime) || (hours.Count >= FewestBareHours && !CountsSessions(row)));
    }

    /// <summary>True for "Session number | 1 | 2 | 3": the columns are counted.</summary>
    public static bool CountsSessions(GridRow row) =>
        row[0].Kind == CellKind.Text && HeadingReader.Read(row[0].Text).Role is not (Role.Time or Role.Date or Role.Start) && !Lexicon.Split(row[0].Text).Any(w => w is "hour" or "hours" or "clock")
        && row.Cells.Skip(1).Where(c => !c.IsEmpty).Select(c => c.Text.Trim()).ToList() is { Count: > 1 } numbers && numbers.Select((n, i) => n.Length <= 2 && n == FormattableString.Invariant($"{i + 1}")).All(counted => counted);

    /// <summary>One table for the hours; a second one, of ticks under the name of a medicine, where a column names the medicines.</summary>
    public static IEnumerable<Block> Blocks(Place place, GridRow heading, IReadOnlyList<GridRow> rows, TableKind? about)
    {
        var meanings = heading.Cells.Select(c => c.IsEmpty || IsHour(c) ? new ColumnMeaning("", Role.Unknown) : HeadingReader.Read(c.Text.Trim())).ToList();
        var medicine = meanings.FindIndex(m => m.Role is Role.Medicine or Role.Dose);
        var amount = meanings.FindIndex(m => m.Role == Role.Amount);
        var date = Math.Max(0, meanings.FindIndex(m => m.Role == Role.Date));
        // What happened stands beside the hours: each label is a column of a table whose rows are the hours.
        var label = Label(heading, meanings, rows, date);
        if (label >= 0 && medicine < 0)
        {
            foreach (var block in Chart(place, heading, rows, meanings, label, label == date ? -1 : date, about)) yield return block;
            yield break;
        }

        var records = new List<BlockRow>();
        GridRow? dated = null;
        // Without a column of days the day stands on a line of its own, or above the table.
        var alone = meanings[date].Role != Role.Date && medicine >= 0;
        foreach (var row in rows)
        {
            if (alone ? CellTimes.Read(row[date]).Date is not null : !row[date].IsEmpty) dated = row;
            if (alone && dated == row) continue;
            for (var column = 0; column < heading.Cells.Length; column++)
                if (IsHour(heading[column]) && !row[column].IsEmpty && (dated is not null || alone))
                    records.Add(medicine >= 0
                        ? new BlockRow([new(place, dated ?? row, dated is null ? -1 : date), new(place, heading, column), new(place, row, column), new(place, row, medicine), new(place, row, amount)])
                        : new BlockRow([new(place, dated!, date), new(place, heading, column), new(place, row, column)]));
        }

        List<ColumnMeaning> columns = [new("Date", Role.Date), new("Hour", Role.Time), new("", Role.Unknown)];
        if (medicine >= 0) columns.AddRange([new("Medicine", Role.Medicine), new("Amount", Role.Amount)]);
        yield return new Block { Columns = columns, Rows = records, About = about, IsAcross = true, IsGrid = true, AfterMidnight = HourGrid.AfterMidnight([.. heading.Cells.Select((c, i) => (i, c)).Where(c => IsHour(c.c))]).ToHashSet() };
    }

    /// <summary>The row with hours that begin again after noon (7 to 12, then 1 to 9) counted to 24; null where they do not.</summary>
    public static GridRow? Unwound(GridRow row)
    {
        var (cells, last, after, turns) = (row.Cells.ToArray(), (Hour: -1, Minute: -1), false, 0);
        for (var c = 0; c < cells.Length; c++)
        {
            if (!IsHour(cells[c]) || HourGrid.HourOf(cells[c]) is not { } hour) continue;
            if (hour.Hour > 12 || cells[c].Text.Contains('m', StringComparison.OrdinalIgnoreCase) || cells[c].Kind == CellKind.TimeOfDay) return null;
            if (hour.CompareTo(last) <= 0)
            {
                if (last.Hour < 10 || hour.Hour > 9) return null;
                (after, turns) = (true, turns + 1);
            }

            last = hour;
            if (after && hour.Hour < 12) cells[c] = Cell.Of(FormattableString.Invariant($"{hour.Hour + 12}:{hour.Minute:00}"));
        }

        return turns == 1 ? row with { Cells = cells } : null;
    }

    // The column of words that say what happened: headed so, or most of its cells are such words.
    private static int Label(GridRow heading, List<ColumnMeaning> meanings, IReadOnlyList<GridRow> rows, int date)
    {
        if (meanings.FindIndex(m => m.Role == Role.Kind) is >= 0 and var kind) return kind;
        for (var c = 0; c < heading.Cells.Length && !IsHour(heading[c]); c++)
        {
            if (c == date && meanings[c].Role == Role.Date) continue;
            var filled = rows.Select(r => r[c]).Where(x => !x.IsEmpty).ToList();
            if (filled.Count > 0 && filled.Count(x => x.Kind == CellKind.Text && CellTimes.Read(x).Date is null && (HeadingReader.Read(x.Text).IsKnown || KindWords.Read(x.Text, Reading.FamilyWords.None) is not null)) * 3 >= filled.Count * 2) return c;
        }

        return -1;
    }

    private static IEnumerable<Block> Chart(Place place, GridRow heading, IReadOnlyList<GridRow> rows, List<ColumnMeaning> meanings, int label, int date, TableKind? about)
    {
        var labels = rows.Where(r => !r[label].IsEmpty).Select(r => r[label].Words!).Distinct(StringComparer.OrdinalIgnoreCase).ToList();
        var days = new List<(GridRow? Dated, List<GridRow> Rows)>();
        foreach (var row in rows)
        {
            var own = row.Cells.Count(c => !c.IsEmpty) == 1 && CellTimes.Read(row.Cells.First(c => !c.IsEmpty)).Date is not null;
            if (own || (date >= 0 && !row[date].IsEmpty && CellTimes.Read(row[date]).Date is not null) || days.Count == 0) days.Add((date >= 0 || own ? row : null, []));
            if (!own) days[^1].Rows.Add(row);
        }

        var hours = Enumerable.Range(0, heading.Cells.Length).Where(c => IsHour(heading[c])).ToList();
        List<ColumnMeaning> columns = [new("Date", Role.Date), new("Hour", Role.Time), .. labels.Select((l, i) => Meaning(l, i + 1))];
        var records = new List<BlockRow>();
        foreach (var (dated, ofDay) in days)
            foreach (var hour in hours)
                if (ofDay.Exists(r => !r[hour].IsEmpty))
                    records.Add(new BlockRow([Date(place, dated ?? heading, dated is null ? -1 : Math.Max(date, 0)), new CellAt(place, heading, hour), .. labels.Select(l => ofDay.Find(r => string.Equals(r[label].Words, l, StringComparison.OrdinalIgnoreCase)) is { } row ? new CellAt(place, row, hour) : new CellAt(place, heading, -1))]));
        yield return new Block { Columns = columns, Rows = records, About = about, IsAcross = true, AreHours = true };

        var notes = Enumerable.Range(0, heading.Cells.Length).Where(c => c != label && c != date && !IsHour(heading[c]) && meanings[c].Role is not (Role.Ignore or Role.By or Role.Count)).ToList();
        var remarks = (from day in days from row in day.Rows from c in notes where row[c].Kind == CellKind.Text select new BlockRow([Date(place, day.Dated ?? heading, day.Dated is null ? -1 : Math.Max(date, 0)), new CellAt(place, row, c)])).ToList();
        if (remarks.Count > 0) yield return new Block { Columns = [new("Date", Role.Date), new("Remarks", Role.Note)], Rows = remarks, IsAcross = true };
    }

    private static CellAt Date(Place place, GridRow row, int column) => new(place, row, row.Cells.Count(c => !c.IsEmpty) == 1 ? Array.FindIndex(row.Cells, c => !c.IsEmpty) : column);

    // Each label is an event of its own; saturation, pulse and oxygen of an hour are one check.
    private static ColumnMeaning Meaning(string label, int number)
    {
        var meaning = HeadingReader.Read(label);
        return meaning with { Group = meaning.Role is Role.Saturation or Role.Pulse or Role.Oxygen ? 0 : number };
    }

    // "3 | 3 | 4" are minutes; "7am", "0600" and "12:00" are hours.
    private static bool IsWrittenAsTime(Cell cell) =>
        cell.Kind == CellKind.TimeOfDay || (cell.Kind == CellKind.Text && IsHour(cell) && (cell.Text.AsSpan().IndexOfAny(":hmnH") > 0 || cell.Text.Trim().Length == 4));

    private static bool IsHour(Cell cell) =>
        cell.Kind == CellKind.TimeOfDay || (cell.Kind == CellKind.Number && cell.Number == Math.Floor(cell.Number) && cell.Number is >= 0 and <= 24)
        || (cell.Kind == CellKind.Text && HourGrid.HourOf(cell) is { Hour: <= 24 } && cell.Text.Length <= 12);
}
