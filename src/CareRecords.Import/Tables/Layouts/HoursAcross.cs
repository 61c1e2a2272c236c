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
            && (row[0].IsEmpty || HeadingReader.Read(row[0].Text).IsKnown) && hours.Zip(hours.Skip(1)).Count(p => (p.First.Hour, p.First.Minute).CompareTo(p.Second) < 0) * 5 >= (hours.Count - 1) * 4
            && (row.Cells.Any(IsWrittenAsTime) || hours.Count >= FewestBareHours);
    }

    /// <summary>One table for the hours; a second one, of ticks under the name of a medicine, where a column names the medicines.</summary>
    public static IEnumerable<Block> Blocks(Place place, GridRow heading, IReadOnlyList<GridRow> rows, TableKind? about)
    {
        var meanings = heading.Cells.Select(c => c.IsEmpty || IsHour(c) ? new ColumnMeaning("", Role.Unknown) : HeadingReader.Read(c.Text.Trim())).ToList();
        var medicine = meanings.FindIndex(m => m.Role is Role.Medicine or Role.Dose);
        var amount = meanings.FindIndex(m => m.Role == Role.Amount);
        var date = Math.Max(0, meanings.FindIndex(m => m.Role == Role.Date));
        var records = new List<BlockRow>();
        GridRow? dated = null;
        foreach (var row in rows)
        {
            if (!row[date].IsEmpty) dated = row;
            for (var column = 0; column < heading.Cells.Length; column++)
                if (IsHour(heading[column]) && !row[column].IsEmpty && dated is not null)
                    records.Add(medicine >= 0
                        ? new BlockRow([new(place, dated, date), new(place, heading, column), new(place, row, column), new(place, row, medicine), new(place, row, amount)])
                        : new BlockRow([new(place, dated, date), new(place, heading, column), new(place, row, column)]));
        }

        List<ColumnMeaning> columns = [new("Date", Role.Date), new("Hour", Role.Time), new("", Role.Unknown)];
        if (medicine >= 0) columns.AddRange([new("Medicine", Role.Medicine), new("Amount", Role.Amount)]);
        yield return new Block { Columns = columns, Rows = records, About = about, IsAcross = true, IsGrid = true };
    }

    // "3 | 3 | 4" are minutes; "7am", "0600" and "12:00" are hours.
    private static bool IsWrittenAsTime(Cell cell) =>
        cell.Kind == CellKind.TimeOfDay || (cell.Kind == CellKind.Text && IsHour(cell) && (cell.Text.AsSpan().IndexOfAny(":hmnH") > 0 || cell.Text.Trim().Length == 4));

    private static bool IsHour(Cell cell) =>
        cell.Kind == CellKind.TimeOfDay || (cell.Kind == CellKind.Number && cell.Number == Math.Floor(cell.Number) && cell.Number is >= 0 and <= 24)
        || (cell.Kind == CellKind.Text && HourGrid.HourOf(cell) is { Hour: <= 24 } && cell.Text.Length <= 12);
}
