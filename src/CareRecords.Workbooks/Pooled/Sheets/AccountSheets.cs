using CareRecords.Pooling;
using CareRecords.Workbooks.Building;

namespace CareRecords.Workbooks.Pooled.Sheets;

/// <summary>What was kept back, and which inputs were left out.</summary>
internal static class AccountSheets
{
    public const string KeptBack = "Kept back";
    public const string LeftOut = "Left out";

    public static void Write(Book book, PooledFindings findings)
    {
        PooledPage.Table(
            book, KeptBack,
            FormattableString.Invariant($"No figure rests on fewer than {findings.Disclosure.SmallestGroup} children, nor can one be worked out by subtraction. Two pools that differ by a few children can still give them away: do not publish both."),
            "KeptBack",
            [
                new Column<SuppressedCell>("table", 36, c => CellContent.Of(c.Table)) { Wrap = true },
                new("row", 40, c => CellContent.Of(c.Row)) { Wrap = true },
                new("why", 60, c => CellContent.Of(c.Why)) { Wrap = true },
            ],
            findings.Disclosure.Suppressed, Look.Orange);
        PooledPage.Table(
            book, LeftOut, "Inputs that were not pooled, each with its reason. File names are those of this computer: look them over before passing the workbook on.", "LeftOut",
            [
                new Column<RefusedInput>("input", 60, r => CellContent.Of(r.File)) { Wrap = true },
                new("why", 90, r => CellContent.Of(r.Why)) { Wrap = true },
            ],
            findings.Refused, Look.Orange);
    }
}
