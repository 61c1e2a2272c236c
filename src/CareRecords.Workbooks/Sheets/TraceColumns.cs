using CareRecords.Records;
using CareRecords.Workbooks.Building;
using Heading = CareRecords.Workbooks.WorkbookLayout.Heading;

namespace CareRecords.Workbooks.Sheets;

/// <summary>The columns that say where a row comes from, how it was read and what its time allows.</summary>
internal static class TraceColumns
{
    public static Column<Numbered<T>> RowId<T>() => new(Heading.RowId, 7, r => CellContent.Of(r.Id)) { Role = ColumnRole.Trace };

    /// <summary>File, place and words as written, then how read and how exact.</summary>
    public static IEnumerable<Column<Numbered<T>>> Reading<T>(ReviewRows rows)
        where T : CareEntry =>
    [
        .. Sources<Numbered<T>>(rows, r => r.Item.Sources),
        .. HowRead<T>(),
    ];

    /// <summary>How read and how exact.</summary>
    public static IEnumerable<Column<Numbered<T>>> HowRead<T>()
        where T : CareEntry =>
    [
        new(Heading.HowRead, 23, r => CellContent.Of(r.Item.HowRead)) { Role = ColumnRole.Trace, Wrap = true },
        new(Heading.HowExact, 13, r => CellContent.Of(WorkbookLayout.PrecisionWords[r.Item.When.Precision])) { Role = ColumnRole.Trace, Wrap = true },
    ];

    /// <summary>File, place (leading to the sheet of lines) and words as written.</summary>
    public static IEnumerable<Column<T>> Sources<T>(ReviewRows rows, Func<T, IReadOnlyList<SourceLine>> sources) =>
    [
        new(Heading.SourceFile, 19.5, r => CellContent.Of(Join(sources(r), s => s.File))) { Role = ColumnRole.Trace, Wrap = true },
        new(Heading.SourcePlace, 23.5, r => CellContent.Of(Join(sources(r), WorkbookLayout.PlaceInFile)).To(rows.Read.LinkTo(sources(r) is [var first, ..] ? first : null))) { Role = ColumnRole.Trace, Wrap = true },
        new(Heading.SourceText, 34, r => CellContent.Of(Join(sources(r), s => s.Text))) { Role = ColumnRole.Trace, Wrap = true },
    ];

    private static string? Join(IReadOnlyList<SourceLine> sources, Func<SourceLine, string> part) =>
        sources.Count == 0 ? null : string.Join(WorkbookLayout.SourceSeparator, sources.Select(part));
}
