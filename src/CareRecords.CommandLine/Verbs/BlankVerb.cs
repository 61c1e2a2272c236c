using System.CommandLine;
using CareRecords.Workbooks.Blank;

namespace CareRecords.CommandLine.Verbs;

/// <summary><c>carerecords blank</c>: an empty log that a family can fill in.</summary>
internal static class BlankVerb
{
    public static Command Create(Surroundings surroundings)
    {
        var outFile = new Option<string>("--out") { Description = "The workbook to write.", HelpName = "file.xlsx", DefaultValueFactory = _ => "log.xlsx" };
        var force = new Option<bool>("--force") { Description = "Replace the file if it exists already." };
        var command = new Command("blank", "Write an empty log workbook to fill in on a computer or phone; 'review' reads it back.") { outFile, force };
        command.SetAction(parsed =>
        {
            using var outputs = new SafeOutput(parsed.GetValue(force), []);
            var target = outputs.Claim(surroundings.FullPath(parsed.GetRequiredValue(outFile)));
            outputs.Write(target, BlankLog.Write);
            outputs.MoveIntoPlace();
            surroundings.Output.WriteLine($"An empty log is in {target}. Fill it in, then: carerecords review \"{target}\"");
            return ExitCode.Done;
        });
        return command;
    }
}
