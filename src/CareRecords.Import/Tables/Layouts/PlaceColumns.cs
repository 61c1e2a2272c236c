using CareRecords.Records;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>Puts the side and the part of the chest together where they stand in two columns: "Left | lower" is "Left lower".</summary>
internal static class PlaceColumns
{
    /// <summary>The block with both in the first of the two columns, and the second left out; as it is where it has no such two columns.</summary>
    public static Block Joined(Block block)
    {
        if (block.IsAcross) return block;
        var (sides, areas) = (Column(block, IsSide), Column(block, IsArea));
        if (sides < 0 || areas < 0) return block;
        // In rows of many kinds the place is a detail of its row.
        var role = block.Columns.Any(c => c.Role == Role.Kind) ? Role.Detail : Role.Side;
        return block with
        {
            Columns = [.. block.Columns.Select((c, i) => i == sides ? c with { Role = role } : i == areas ? c with { Role = Role.Ignore } : c)],
            Rows = [.. block.Rows.Select(r => Joined(r, sides, areas))],
        };
    }

    private static int Column(Block block, Func<AreaName, bool> fits) => Enumerable.Range(0, block.Columns.Count).FirstOrDefault(i =>
        block.Columns[i].Role is Role.Side or Role.Area or Role.Detail or Role.Unknown or Role.Note && block.Rows.Select(r => r[i].Cell).Where(c => !c.IsEmpty).ToList() is { Count: > 1 } filled
        && filled.TrueForAll(c => c.Kind == CellKind.Text && c.Text.Trim().Length <= LongestPlace && AreaNames.In(c.Text) is { Count: > 0 } names && names.All(fits)), -1);

    private const int LongestPlace = 14;

    private static bool IsSide(AreaName name) => name is { Side: not Side.Unknown, Area: ChestArea.Unknown };

    private static bool IsArea(AreaName name) => name is { Side: Side.Unknown, Area: not ChestArea.Unknown };

    // "Rt", "bilat" as the readers of places know them.
    private static string SideOf(Cell cell) => AreaNames.In(cell.Text) switch
    {
        [{ Side: Side.Left }] => "left",
        [{ Side: Side.Right }] => "right",
        { Count: 2 } => "both",
        _ => cell.Words!,
    };

    private static BlockRow Joined(BlockRow row, int sides, int areas)
    {
        if (row[sides].Cell.IsEmpty || row[areas].Cell.IsEmpty) return row;
        var place = Cell.Of($"{SideOf(row[sides].Cell)} {row[areas].Cell.Words}");
        var line = row[sides].Row with { Cells = [.. row[sides].Row.Cells.Select((c, i) => i == row[sides].Column ? place : c)] };
        return new BlockRow([.. row.Cells.Select(c => c with { Row = line })]);
    }
}
