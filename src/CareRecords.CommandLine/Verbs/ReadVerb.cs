using System.CommandLine;
using CareRecords.Import;

namespace CareRecords.CommandLine.Verbs;

/// <summary><c>carerecords read</c>: shows what was understood, line by line beside the words written.</summary>
internal static class ReadVerb
{
    public static Command Create(Surroundings surroundings)
    {
        var reading = new ReadingOptions();
        var recordsFile = new Option<string?>("--records") { Description = "Write what was read as JSON too.", HelpName = "file.json" };
        var command = new Command("read", "Show what was understood of notes and tables, line by line, and what to ask.") { recordsFile };
        reading.AddTo(command);
        command.SetAction(parsed =>
        {
            using var outputs = reading.Outputs(parsed, surroundings);
            var json = parsed.GetValue(recordsFile) is { } file ? outputs.Claim(surroundings.FullPath(file)) : null;

            var log = reading.ReadAll(parsed, surroundings);
            if (json is not null) outputs.Write(json, stream => RecordsJson.Write(log, stream));
            outputs.MoveIntoPlace();

            ReadingReport.LineByLine(log, surroundings.Output);
            ReadingReport.Summary(log, surroundings.Output);
            ReadingReport.WhatNeedsChecking(log, surroundings.Output, most: int.MaxValue);
            return ReadingReport.ExitCodeFor(log, reading.Strict(parsed));
        });
        return command;
    }
}
