using CareRecords.Pooling;
using CareRecords.Workbooks.Building;
using ClosedXML.Excel;

namespace CareRecords.Workbooks.Pooled.Sheets;

/// <summary>The front page for a study meeting: what was pooled, the main figures with their limits, the tests, what was left out and kept back.</summary>
internal static class FrontSheet
{
    public const string Name = "Summary";
    private const double Width = 130;

    public static void Write(Book book, PooledFindings findings)
    {
        var sheet = book.Add(Name);
        sheet.Column(1).Width = Width;
        var row = 1;
        book.Put(sheet.Cell(row, 1), "Pooled care records of many children");
        Look.Title(sheet.Cell(row++, 1));
        foreach (var (heading, sentences) in Parts(findings))
        {
            row++;
            book.Put(sheet.Cell(row, 1), heading);
            Look.Band(sheet.Range(row, 1, row, 1));
            row++;
            foreach (var sentence in sentences)
            {
                book.Put(sheet.Cell(row, 1), sentence);
                sheet.Cell(row, 1).Style.Alignment.WrapText = true;
                sheet.Cell(row, 1).Style.Alignment.Vertical = XLAlignmentVerticalValues.Top;
                sheet.Row(row).Height = 3 + (13 * TableSheet.LinesOf(sentence, Width));
                row++;
            }
        }

        PooledPage.Dress(sheet, Look.Blue);
    }

    private static IEnumerable<(string Heading, IEnumerable<string> Sentences)> Parts(PooledFindings findings)
    {
        yield return ("What was pooled", What(findings));
        yield return ("Gaps kept", [PooledWords.Of(findings.FeedGap), PooledWords.Of(findings.InhalerGap)]);
        yield return ("Recovery from illness", [PooledWords.Of(findings.Recovery.All), .. findings.Recovery.ByStudyGroup.Select(PooledWords.Of), .. findings.Recovery.ByAgeBand.Select(PooledWords.Of), .. findings.Recovery.ByStability.Select(c => PooledWords.Of(c with { Label = $"children usually stable {c.Label} before steps down" }))]);
        yield return ("Setbacks after steps down, by hours stable before", [.. findings.Setbacks.Bands.Select(PooledWords.Of), PooledWords.Of(findings.Setbacks.Trend)]);
        if (findings.GroupTests.Count > 0) yield return ("Between groups (whole children permuted)", findings.GroupTests.Select(PooledWords.Of).Append("Several tests were made: one small p among many is expected by chance."));
        yield return ("Before you use these figures", findings.Notes.Append("With few children the limits are wide, and the range of a further child is wider still: read the limits, not the middle."));
    }

    private static IEnumerable<string> What(PooledFindings findings)
    {
        yield return findings.Children is { } children
            ? FormattableString.Invariant($"{children} children; {findings.Completeness.Days} care days, {findings.Completeness.DaysWithRecords} of them with records (half of the children wrote on at least {findings.Completeness.MedianShareOfDays:0 %} of their days).")
            : FormattableString.Invariant($"Fewer than {findings.Disclosure.SmallestGroup} children: all figures are kept back.");
        yield return findings.Refused.Count == 0
            ? "No input was left out."
            : FormattableString.Invariant($"{findings.Refused.Count} inputs were left out; the sheet \"{AccountSheets.LeftOut}\" names each with its reason.");
        yield return findings.Disclosure.Suppressed.Count == 0
            ? FormattableString.Invariant($"Figures of fewer than {findings.Disclosure.SmallestGroup} children would be kept back; there were none.")
            : FormattableString.Invariant($"{findings.Disclosure.Suppressed.Count} figures of fewer than {findings.Disclosure.SmallestGroup} children, or that would give such figures away, are kept back; see \"{AccountSheets.KeptBack}\".");
    }
}
