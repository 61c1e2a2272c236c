using CareRecords.Import.Accounting;
using CareRecords.Import.Reading;
using NodaTime;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>Reads a table of the contract that stands among others on one sheet or in one file.</summary>
internal static class ContractBlock
{
    /// <summary>True when every row could be read; false, with nothing taken, when its times are written in another way.</summary>
    public static bool TryRead(Place place, Block block, Gathered into, SourceContext context, DateOrder? order, LocalDate? year)
    {
        if (block.Contract is not { } header) return false;
        var rows = block.Rows.Select(r => r.Cells[0].Row).Select(r => header.Kind is TableKind.Plan or TableKind.NotDone ? WithDates(r, header, order, year) : r).ToList();
        var trial = new Gathered { File = place.File, Sheet = place.Sheet };
        if (!Read(place, header, rows, trial, context)) return false;
        Read(place, header, rows, into, context);
        return true;
    }

    private static bool Read(Place place, CanonicalHeader header, List<GridRow> rows, Gathered into, SourceContext context)
    {
        var table = new CanonicalRows(place, header, into, new CellReaders(into, context.Words));
        return rows.TrueForAll(table.TryRead);
    }

    // "1 May 2025" in a plan: a plan read as events would be worse than one read late.
    private static GridRow WithDates(GridRow row, CanonicalHeader header, DateOrder? order, LocalDate? year)
    {
        var at = header.ColumnOf[(int)(header.Kind == TableKind.Plan ? Field.From : Field.Started)];
        if (row[at].Kind is CellKind.Empty or CellKind.Date or CellKind.Moment) return row;
        var written = CellTimes.Read(row[at]);
        if (written.Date is null || !DateReader.Settle(written.Date, order, year).TryGet(out var day)) return row;
        var time = written.Clock?.Start;
        var cell = time is null || time.Half == HalfOfDay.Unknown ? new Cell(CellKind.Date, row[at].Text, 0, day.AtMidnight()) : new Cell(CellKind.Moment, row[at].Text, 0, day.At(time.Time));
        return row with { Cells = [.. row.Cells.Select((c, i) => i == at ? cell : c)] };
    }
}
