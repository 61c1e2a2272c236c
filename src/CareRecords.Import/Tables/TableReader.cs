using CareRecords.Import.Accounting;
using CareRecords.Import.Notes;
using CareRecords.Records;

namespace CareRecords.Import.Tables;

/// <summary>Reads one delimited text or sheet: as a table of the contract, row by row, where its headings name one; else with the free layout reader.</summary>
internal static class TableReader
{
    // How far down the heading may stand, under titles and legends.
    private const int RowsAboveHeading = 30;

    /// <summary>What the rows give.</summary>
    /// <param name="place">The text or sheet.</param>
    /// <param name="rows">Gives its rows from the first on; asked twice where a table of the contract turns out to be written in its own way.</param>
    /// <param name="context">What is known already.</param>
    /// <param name="everyRow">Told now and then how many rows were read.</param>
    public static Gathered Read(Place place, Func<IEnumerable<GridRow>> rows, SourceContext context, Action<long>? everyRow = null) =>
        TryCanonical(place, rows(), context, everyRow) ?? LayoutReader.Read(place, [.. rows()], context);

    /// <summary>The same from a table of the contract only; null when the rows are no such table.</summary>
    private static Gathered? TryCanonical(Place place, IEnumerable<GridRow> rows, SourceContext context, Action<long>? everyRow)
    {
        var into = new Gathered { File = place.File, Sheet = place.Sheet };
        var above = new List<GridRow>();
        CanonicalRows? table = null;
        foreach (var row in rows)
        {
            if (table is null)
            {
                if (CanonicalHeader.Read(row) is { } header)
                {
                    foreach (var title in above) SetAside(into, place, title, "above the table");
                    SetAside(into, place, row, "the heading");
                    table = new CanonicalRows(place, header, into, new CellReaders(into, context.Words));
                    continue;
                }

                above.Add(row);
                if (above.Count > RowsAboveHeading) return null;
                continue;
            }

            if (!table.TryRead(row)) return null;
            if ((row.Line & 0xFFFF) == 0) everyRow?.Invoke(row.Line);
        }

        return table is null ? null : into;
    }

    private static void SetAside(Gathered into, Place place, GridRow row, string why)
    {
        if (row.IsBlank)
        {
            into.Ledger.Mark(row.Line, row.LineCount, LineFate.Blank);
            return;
        }

        into.SetAside.Add(new SetAsideLine(place.Of(row), why));
        into.Ledger.Mark(row.Line, row.LineCount, LineFate.NotRecord);
    }
}
