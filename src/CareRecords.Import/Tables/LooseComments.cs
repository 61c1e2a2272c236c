using CareRecords.Import.Accounting;
using CareRecords.Import.Notes;
using CareRecords.Import.Tables.Layouts;
using CareRecords.Records;

namespace CareRecords.Import.Tables;

/// <summary>Accounts for comments that stand on no record: on empty cells below, between or beside the rows, on headings and on titles.</summary>
internal static class LooseComments
{
    /// <summary>Says each: asked about where it tells of care, else set aside. The row of one on an empty row counts with it.</summary>
    public static void Account(Place place, IReadOnlyDictionary<int, List<CellComment>>? comments, Gathered into)
    {
        if (comments is null) return;
        var spoken = into.Problems.Select(p => p.Source.Cell).Concat(into.Entries.SelectMany(e => e.Sources).Select(s => s.Cell)).ToHashSet();
        foreach (var (row, ofRow) in comments.OrderBy(c => c.Key))
        {
            if (into.Ledger.FateOf(row) is LineFate.InRecords or LineFate.Problem) continue;
            // A row below the last used one counts as one more, without the empty rows between.
            var line = Math.Min(row, into.Ledger.Entered + 1);
            foreach (var comment in ofRow)
            {
                var source = SourceLine.InSheet(place.File, place.Sheet ?? "", Place.CellName(comment.Column, row), comment.Text);
                if (spoken.Contains(source.Cell)) continue;
                if (LeftOvers.HoldsEvent(comment.Text))
                {
                    into.Problems.Add(new ImportProblem(source, $"The comment '{comment.Text}' stands on no record; it may tell of something that happened.", "Write it in a row of its own, if it does.", ProblemSeverity.Ask));
                    into.Ledger.Mark(line, 1, LineFate.Problem);
                }
                else
                {
                    into.SetAside.Add(new SetAsideLine(source, "a comment on no record"));
                    into.Ledger.Mark(line, 1, LineFate.NotRecord);
                }
            }
        }
    }
}
