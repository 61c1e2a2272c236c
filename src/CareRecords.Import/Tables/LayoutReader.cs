using CareRecords.Import.Accounting;
using CareRecords.Import.Notes;
using CareRecords.Records;

namespace CareRecords.Import.Tables;

/// <summary>Reads tables of any layout.</summary>
internal static class LayoutReader
{
    /// <summary>What the rows give. Every row that is not blank ends as record, problem or set aside.</summary>
    public static Gathered Read(Place place, IReadOnlyList<GridRow> rows, SourceContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        var into = new Gathered { File = place.File, Sheet = place.Sheet };
        foreach (var row in rows)
        {
            if (!row.IsBlank)
                into.Problems.Add(new ImportProblem(place.Of(row), "No known heading stands above this row.", "Give the table headings such as started, ended, checked, spo2, medicine.", ProblemSeverity.Ask));
            into.Ledger.Mark(row.Line, row.LineCount, row.IsBlank ? LineFate.Blank : LineFate.Problem);
        }

        return into;
    }
}
