namespace CareRecords.Import.Tables.Layouts;

/// <summary>Tells a chart with a row for each hour from a list of times: what stands beside "0600" there happened within that hour.</summary>
internal static class HourRows
{
    private const int Fewest = 5;

    /// <summary>True where every time is a whole hour and either the heading says hour or hours stand with nothing beside them.</summary>
    public static bool Are(Block block)
    {
        if (block.IsAcross) return false;
        var columns = block.Columns.ToList();
        var time = columns.FindIndex(c => c.Role is Role.Time or Role.Start);
        if (time < 0 || columns.Exists(c => c.Role is Role.End or Role.Kind)) return false;
        var hours = block.Rows.Where(r => !r[time].Cell.IsEmpty && CellTimes.Read(r[time].Cell).Date is null).ToList();
        if (hours.Count < Fewest || !hours.TrueForAll(r => HourGrid.HourOf(r[time].Cell) is { Minute: 0 })) return false;
        return Lexicon.Split(columns[time].Own).Any(w => w is "hour" or "hours" or "hr" or "hrs" or "hourly" or "slot") || hours.Exists(r => r.Cells.Where((c, i) => i != time && columns.ElementAtOrDefault(i)?.Role != Role.Date).All(c => c.Cell.IsEmpty));
    }
}
