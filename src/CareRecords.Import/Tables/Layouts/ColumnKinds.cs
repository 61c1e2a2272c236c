namespace CareRecords.Import.Tables.Layouts;

/// <summary>Which kind of event each column of times is of, and whether the kinds stand in groups ("chest, chest, puffer, puffer") or in the order of the day ("puffer, chest, puffer, chest").</summary>
internal sealed class ColumnKinds
{
    private readonly bool _across;
    private readonly Dictionary<int, TableKind> _kinds = [];

    private ColumnKinds(bool across) => _across = across;

    /// <summary>True when no kind comes again after another, and there is more than one kind.</summary>
    public bool AreGrouped { get; private set; }

    /// <summary>The kinds of a block.</summary>
    public static ColumnKinds Of(Block block)
    {
        var kinds = new ColumnKinds(block.IsAcross);
        var order = new List<TableKind>();
        for (var i = 0; i < block.Columns.Count; i++)
        {
            TableKind? kind = block.Columns[i].Role switch
            {
                Role.Session or Role.SessionEnd => TableKind.Sessions,
                Role.Feed or Role.FeedStart or Role.FeedEnd => TableKind.Feeds,
                Role.Dose => TableKind.Medicines,
                Role.Amount when block.Columns[i].Medicine is not null => TableKind.Medicines,
                _ => null,
            };
            if (kind is not { } known) continue;
            if (!block.IsAcross) kinds._kinds[i] = known;
            else if (block.Rows.Count > 0) kinds._kinds[block.Rows[0][i].Row.Line] = known;
            if (order.Count == 0 || order[^1] != known) order.Add(known);
        }

        kinds.AreGrouped = order.Count > 1 && order.Distinct().Count() == order.Count;
        return kinds;
    }

    /// <summary>The kind of a cell; null when its heading names none.</summary>
    public TableKind? this[CellAt cell] => _kinds.TryGetValue(_across ? cell.Row.Line : cell.Column, out var kind) ? kind : null;
}
