using CareRecords.Findings;
using CareRecords.Records;
using CareRecords.Workbooks.Building;

namespace CareRecords.Workbooks.Sheets;

/// <summary>What was written that a person should look at: a sentence, a time and its source; never advice.</summary>
internal static class LinesToLookAtSheet
{
    public const string Table = "LinesToLookAt";

    private const int MostSources = 3;
    private const int MostOfLine = 100;

    public static TablePlace Write(Book book, ReviewRows rows)
    {
        var sheet = book.Add(WorkbookLayout.Sheet.LinesToLookAt);
        IReadOnlyList<Column<Flag>> columns =
        [
            new("when", 17, f => CellContent.Of(f.When).To(rows.Read.LinkTo(f.Sources is [var first, ..] ? first : null))) { Format = Look.Format.Time },
            new("what was written", 46, f => CellContent.Of(f.What)) { Wrap = true },
            new("why it is listed", 46, f => CellContent.Of(f.Why)) { Wrap = true },
            // The link stands on the time: some programs do not break the words of a cell with a link.
            new("where it is written", 32, f => CellContent.Of(Some(f, s => $"{s.File}, {WorkbookLayout.PlaceInFile(s)}"))) { Role = ColumnRole.Trace, Wrap = true },
            new("as written", 62, f => CellContent.Of(Some(f, s => s.Text.Trim()))) { Role = ColumnRole.Trace, Wrap = true },
        ];
        TableSheet.Dress(sheet, "Lines to look at", "Written things that a person may want to look at, in order of time. A list, not a judgement and not advice. All lines as written: sheet What was read.");
        var place = TableSheet.Write(book, sheet, Table, columns, rows.Findings.Flags);
        PageDress.Apply(sheet, landscape: true, Look.Blue);
        return place;
    }

    /// <summary>The first few sources one under the other, so that a line holds on paper; how many more there are.</summary>
    private static string Some(Flag flag, Func<SourceLine, string> part)
    {
        var words = flag.Sources.Take(MostSources).Select(s => SummarySentences.Clip(part(s), MostOfLine)).ToList();
        if (flag.Sources.Count > MostSources) words.Add(FormattableString.Invariant($"and {flag.Sources.Count - MostSources} more"));
        return string.Join('\n', words);
    }
}
