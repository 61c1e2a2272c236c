using System.CommandLine;
using CareRecords.Findings;
using CareRecords.Records;
using CareRecords.Workbooks;

namespace CareRecords.CommandLine.Verbs;

/// <summary><c>carerecords review</c>: notes in, a workbook for the clinic out.</summary>
internal static class ReviewVerb
{
    public static Command Create(Surroundings surroundings)
    {
        var reading = new ReadingOptions();
        var outFile = new Option<string>("--out") { Description = "The workbook to write.", HelpName = "file.xlsx", DefaultValueFactory = _ => "review.xlsx" };
        var findingsFile = new Option<string?>("--findings") { Description = "Write the findings as JSON too.", HelpName = "file.json" };
        var command = new Command("review", "Read notes and tables, work out the findings, and write a workbook with charts.") { outFile, findingsFile };
        reading.AddTo(command);
        command.SetAction(parsed =>
        {
            using var outputs = reading.Outputs(parsed, surroundings);
            var workbook = outputs.Claim(surroundings.FullPath(parsed.GetRequiredValue(outFile)));
            var json = parsed.GetValue(findingsFile) is { } file ? outputs.Claim(surroundings.FullPath(file)) : null;

            WarmUp.Begin();
            var log = reading.ReadAll(parsed, surroundings);
            var findings = FindingsOf(log);
            outputs.Write(workbook, stream => ReviewWorkbook.Write(log, findings, stream));
            if (json is not null) outputs.Write(json, stream => FindingsJson.Write(findings, stream));
            outputs.MoveIntoPlace();

            ReadingReport.Summary(log, surroundings.Output);
            ReadingReport.WhatNeedsChecking(log, surroundings.Output, most: 10);
            surroundings.Output.WriteLine($"The review is in {workbook}.");
            return ReadingReport.ExitCodeFor(log, reading.Strict(parsed));
        });
        return command;
    }

    /// <summary>The findings of a log.</summary>
    /// <exception cref="UserMistakeException">The log holds nothing that could be reviewed.</exception>
    internal static ChildFindings FindingsOf(CareLog log) => log.Entries.Count > 0
        ? Reviewer.Review(log)
        : throw new UserMistakeException("No session, feed, dose, check or sign could be read: 'carerecords read' with the same inputs shows why, line by line.");
}
