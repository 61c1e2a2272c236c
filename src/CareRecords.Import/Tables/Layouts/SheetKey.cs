using CareRecords.Import.Notes;
using CareRecords.Import.Reading;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>
/// What the words around the tables of a sheet say of its numbers: "4/3 = 4 mins each side on the bases, 3 on the tops", "Sats = before/after", "sats in air unless it says". It holds for the
/// other sheets of the workbook that have no such words of their own ("key is on Wk 1").
/// </summary>
/// <param name="Lines">The cells that explain something.</param>
internal sealed record SheetKey(IReadOnlyList<string> Lines)
{
    // A key stands above its table, below or beside it.
    private const int MostRows = 200;

    // "Sats before/after" alone heads a column; a key says more.
    private const int ShortestKey = 20;

    /// <summary>No key.</summary>
    public static SheetKey None { get; } = new([]);

    /// <summary>What two numbers with a stroke between are of; empty where nothing says it.</summary>
    public IReadOnlyList<AreaName> PairOrder { get; } = PairExamples.Of(Lines);

    /// <summary>Whether two saturations with a stroke between are those before and after a session.</summary>
    public bool PairsAreBeforeAfter { get; } = Lines.Any(PairMeanings.IsPhaseKey);

    /// <summary>The key of a sheet; none where no cell of it explains anything.</summary>
    public static SheetKey Of(IReadOnlyList<GridRow> rows)
    {
        List<string>? lines = null;
        for (var i = 0; i < rows.Count; i++)
        {
            if (i == MostRows && rows.Count > 2 * MostRows) i = rows.Count - MostRows;
            foreach (var cell in rows[i].Cells)
                if (cell.Kind == CellKind.Text && cell.Text.Length >= ShortestKey && (cell.Text.Contains('=') || cell.Text.Contains('/') && PairMeanings.IsPhaseKey(cell.Text) || AirByDefault.Says(cell.Text))) (lines ??= []).Add(cell.Text);
        }

        return lines is null ? None : new SheetKey(lines);
    }
}
