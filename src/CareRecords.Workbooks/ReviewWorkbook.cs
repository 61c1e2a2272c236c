using CareRecords.Findings;
using CareRecords.Records;
using CareRecords.Workbooks.Building;
using CareRecords.Workbooks.Charts;
using CareRecords.Workbooks.Finishing;
using CareRecords.Workbooks.Sheets;

namespace CareRecords.Workbooks;

/// <summary>Writes the review workbook: the front page, charts, analysis sheets, the records as tables that are read back, and how everything was read.</summary>
public static class ReviewWorkbook
{
    /// <summary>Writes the workbook to a stream. The same log and findings give the same bytes.</summary>
    /// <param name="log">What was read.</param>
    /// <param name="findings">What the findings say of it.</param>
    /// <param name="output">A stream that can be written; it stays open.</param>
    public static void Write(CareLog log, ChildFindings findings, Stream output)
    {
        ArgumentNullException.ThrowIfNull(log);
        ArgumentNullException.ThrowIfNull(findings);
        ArgumentNullException.ThrowIfNull(output);
        var drawing = Task.Run(() => ReviewCharts.DrawAll(log, findings)); // The longest single piece of work, beside the sheets and their saving.
        var rows = new ReviewRows(log, findings);
        using var book = new Book();
        var placed = AddSheets(book, rows, drawing);
        DocumentProperties.Set(book.Workbook, log, findings.Span);
        PackagePass.Save(book, placed, output);
    }

    /// <summary>Writes the workbook to a file, which is replaced when it exists.</summary>
    /// <exception cref="IOException">The file cannot be written.</exception>
    /// <exception cref="UnauthorizedAccessException">The file may not be written.</exception>
    public static void Write(CareLog log, ChildFindings findings, string path)
    {
        using var file = File.Create(path);
        Write(log, findings, file);
    }

    /// <summary>Adds every sheet; sheets stand in <see cref="WorkbookLayout.Order"/> whatever the order in which they are built.</summary>
    private static IReadOnlyList<PlacedChart> AddSheets(Book book, ReviewRows rows, Task<IReadOnlyList<DrawnChart>> drawing)
    {
        SummarySheet.Write(book, rows);
        var days = DaysSheet.Write(book, rows);
        var weeks = WeeksSheet.Write(book, rows);
        GapsSheet.Write(book, rows);
        IllnessSheet.Write(book, rows);
        IllnessCourseSheet.Write(book, rows);
        TaperSheet.Write(book, rows);
        SaturationSheet.Write(book, rows);
        LinesToLookAtSheet.Write(book, rows);
        var questions = QuestionsSheets.WriteToCheck(book, rows);
        var forClinic = QuestionsSheets.WriteForClinic(book, rows);
        var plan = PlanSheet.Write(book, rows);
        var sessions = SessionsSheet.Write(book, rows);
        var feeds = FeedsSheet.Write(book, rows);
        var medicines = MedicinesSheet.Write(book, rows);
        var checks = ChecksSheet.Write(book, rows);
        var signs = SignsSheet.Write(book, rows);
        var notDone = NotDoneSheet.Write(book, rows);
        QuestionsSheets.WriteWords(book, rows);
        WhatWasReadSheet.Write(book, rows);
        ChecksOfTotalsSheet.Write(book, rows);
        HowWorkedOutSheet.Write(book, rows);
        ClockSheet.Write(book, rows);
        AsReadSheet.Write(book, [questions, forClinic, plan, sessions, feeds, medicines, checks, signs, notDone]);
        var placed = ChartsSheet.Write(book, drawing.GetAwaiter().GetResult(), NativeCharts.All(rows.Log, rows.Findings, days, weeks));
        for (var i = 0; i < WorkbookLayout.Order.Count; i++) book.Workbook.Worksheet(WorkbookLayout.Order[i]).Position = i + 1;
        book.Workbook.Worksheet(WorkbookLayout.Sheet.Summary).SetTabActive();
        return placed;
    }
}
