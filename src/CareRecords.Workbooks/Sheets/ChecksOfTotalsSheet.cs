using CareRecords.Findings;
using CareRecords.Records;
using CareRecords.Workbooks.Building;
using static CareRecords.Workbooks.Building.Look;

namespace CareRecords.Workbooks.Sheets;

/// <summary>Counts that must agree, the files that came in with their hashes, and versions.</summary>
internal static class ChecksOfTotalsSheet
{
    private sealed record TotalCheck(string What, CellContent One, string OneIs, CellContent Other, string OtherIs);

    public static TablePlace Write(Book book, ReviewRows rows)
    {
        var sheet = book.Add(WorkbookLayout.Sheet.ChecksOfTotals);
        var checks = Checks(rows);
        IReadOnlyList<Column<TotalCheck>> columns =
        [
            new("what", 44, c => CellContent.Of(c.What)) { Wrap = true },
            new("one count", 12, c => c.One) { Format = Format.Whole },
            new("counted as", 44, c => CellContent.Of(c.OneIs)) { Wrap = true },
            new("other count", 12, c => c.Other) { Format = Format.Whole },
            new("counted also as", 44, c => CellContent.Of(c.OtherIs)) { Wrap = true },
            new("agree", 16, c => CellContent.Of(Equals(c.One.Value, c.Other.Value) ? "agree" : "DO NOT AGREE").By("IF(TotalChecks[[#This Row],[one count]]=TotalChecks[[#This Row],[other count]],\"agree\",\"DO NOT AGREE\")")),
        ];
        TableSheet.Dress(sheet, "Checks of totals", "Every line that came in is accounted for once, and the same totals are reached by two ways.");
        var place = TableSheet.Write(book, sheet, "TotalChecks", columns, checks);
        var next = WriteInputs(book, sheet, rows.Log, place.LastRow + 3);
        WriteVersions(book, sheet, rows, next + 2);
        PageDress.Apply(sheet, landscape: true, Orange);
        return place;
    }

    private static List<TotalCheck> Checks(ReviewRows rows)
    {
        var lines = rows.Log.Lines;
        var findings = rows.Findings;
        var overall = findings.Adherence.Overall;
        return
        [
            new("Lines and rows that came in", CellContent.Of(lines.Read), "read", CellContent.Of(lines.Blank + lines.InRecords + lines.NotRecords + lines.Problems),
                $"{lines.Blank} blank + {lines.InRecords} in records + {lines.NotRecords} set aside + {lines.Problems} to check"),
            new("Lines set aside", CellContent.Of(lines.NotRecords), "counted at reading", CellContent.Of(rows.Read.Rows.Count(l => l.Became == "set aside")).By("COUNTIFS(WhatWasRead[became],\"set aside\")"), "rows of the sheet What was read"),
            new("Sessions", CellContent.Of(findings.Sessions.Count).By($"COUNTIFS(Sessions[care day],\">=\"&{ClockSheet.SpanFrom},Sessions[care day],\"<=\"&{ClockSheet.SpanTo})"), "rows of the sheet Sessions in the care days reviewed",
                CellContent.Of(findings.Sessions.Count).By("COUNTIFS(Gaps[session],\"?*\")"), "rows of the sheet Gaps"),
            new("Sessions by day", CellContent.Of(findings.Days.Sum(d => d.SessionsDone)).By("SUM(Days[sessions done])"), "sum over the sheet Days",
                CellContent.Of(findings.Sessions.Count).By("COUNTIFS(Gaps[session],\"?*\")"), "rows of the sheet Gaps"),
            new("Feed gaps", CellContent.Of(overall.FeedGap.Judged + overall.FeedGap.Unknown).By($"COUNTIFS(Gaps[feed gap],\"{FindingWords.Kept}\")+COUNTIFS(Gaps[feed gap],\"{FindingWords.Short}\")+COUNTIFS(Gaps[feed gap],\"{FindingWords.CannotTell}\")"),
                "kept + short + cannot tell", CellContent.Of(findings.Sessions.Count).By("COUNTIFS(Gaps[session],\"?*\")"), "rows of the sheet Gaps"),
            new("Feed gaps kept, by week", CellContent.Of(findings.Adherence.ByWeek.Sum(w => w.FeedGap.Kept)).By("SUM(Weeks[feed gap kept])"), "sum over the sheet Weeks",
                CellContent.Of(overall.FeedGap.Kept).By($"COUNTIFS(Gaps[feed gap],\"{FindingWords.Kept}\")"), "rows of the sheet Gaps that say kept"),
            new("Inhaler gaps kept, by week", CellContent.Of(findings.Adherence.ByWeek.Sum(w => w.InhalerGap.Kept)).By("SUM(Weeks[inhaler gap kept])"), "sum over the sheet Weeks",
                CellContent.Of(overall.InhalerGap.Kept).By($"COUNTIFS(Gaps[inhaler gap],\"{FindingWords.Kept}\")"), "rows of the sheet Gaps that say kept"),
            new("Care days", CellContent.Of(findings.Quality.Days), "days from first to last", CellContent.Of(findings.Days.Count).By("COUNT(Days[care day])"), "rows of the sheet Days"),
            new("Days with anything written", CellContent.Of(findings.Quality.DaysWithRecords), "counted in the records", CellContent.Of(findings.Days.Count(d => d.HasRecords)).By("COUNTIFS(Days[anything written],\"yes\")"), "rows of the sheet Days that say yes"),
        ];
    }

    private static int WriteInputs(Book book, ClosedXML.Excel.IXLWorksheet sheet, CareLog log, int at)
    {
        book.Put(sheet.Cell(at, 1), "Files that came in");
        sheet.Cell(at, 1).Style.Font.Bold = true;
        IReadOnlyList<Column<InputFile>> columns =
        [
            new("input file", 44, f => CellContent.Of(f.Name)) { Wrap = true },
            new("read as", 12, f => CellContent.Of(f.Kind)) { Wrap = true },
            new("SHA-256 of its bytes", 44, f => CellContent.Of(f.Sha256)) { Wrap = true },
            new("remark", 12, f => CellContent.Of(f.Note)) { Wrap = true },
        ];
        return TableSheet.Write(book, sheet, "InputFiles", columns, log.Inputs, at + 1, setWidths: false).LastRow;
    }

    private static void WriteVersions(Book book, ClosedXML.Excel.IXLWorksheet sheet, ReviewRows rows, int at)
    {
        (string What, string Value)[] versions =
        [
            ("CareRecords", typeof(ChecksOfTotalsSheet).Assembly.GetName().Version?.ToString(3) ?? "not known"),
            ("Definitions", ChildFindings.DefinitionsVersion),
            ("Workbook layout", WorkbookLayout.LayoutVersion),
            ("Time zone", $"{rows.Log.Zone}, from {rows.Log.ZoneFrom}"),
            ("Care day starts", rows.Findings.Span.DayStarts.ToString("HH:mm", System.Globalization.CultureInfo.InvariantCulture)),
        ];
        for (var i = 0; i < versions.Length; i++)
        {
            book.Put(sheet.Cell(at + i, 1), versions[i].What);
            book.Put(sheet.Cell(at + i, 2), versions[i].Value);
            sheet.Cell(at + i, 1).Style.Font.Bold = true;
        }
    }
}
