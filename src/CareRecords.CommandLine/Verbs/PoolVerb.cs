using System.CommandLine;
using System.Globalization;
using CareRecords.Pooling;
using CareRecords.Workbooks;
using CareRecords.Workbooks.Pooled;
using CareRecords.Workbooks.Shared;

namespace CareRecords.CommandLine.Verbs;

/// <summary><c>carerecords pool</c>: many families' shared workbooks into pooled findings.</summary>
internal static class PoolVerb
{
    public static Command Create(Surroundings surroundings)
    {
        var inputs = new Argument<string[]>("input") { Description = "Shared workbooks, folders of them, or tidy folders of other sites.", Arity = ArgumentArity.OneOrMore };
        var outFile = new Option<string>("--out") { Description = "The pooled workbook to write.", HelpName = "file.xlsx", DefaultValueFactory = _ => "pooled.xlsx" };
        var tidy = new Option<string?>("--tidy") { Description = "Write one table a kind into this folder too, as CSV and Parquet.", HelpName = "folder" };
        var findingsFile = new Option<string?>("--findings") { Description = "Write the pooled findings as JSON too.", HelpName = "file.json" };
        var smallest = new Option<int>("--smallest") { Description = "The fewest children that a shown figure may rest on.", HelpName = "N", DefaultValueFactory = _ => 5 };
        var force = new Option<bool>("--force") { Description = "Replace outputs that exist already." };
        var command = new Command("pool", "Pool many families' shared workbooks.") { inputs, outFile, tidy, findingsFile, smallest, force };
        command.SetAction(parsed =>
        {
            var paths = parsed.GetRequiredValue(inputs).Select(surroundings.FullPath).ToList();
            using var outputs = new SafeOutput(parsed.GetValue(force), paths);
            var workbook = outputs.Claim(surroundings.FullPath(parsed.GetRequiredValue(outFile)));
            var json = parsed.GetValue(findingsFile) is { } file ? outputs.Claim(surroundings.FullPath(file)) : null;
            var folder = parsed.GetValue(tidy) is { } name ? TidyTarget(surroundings.FullPath(name)) : null;
            if (parsed.GetValue(smallest) < 1) throw new UserMistakeException("--smallest is a number of children, 1 or more.");

            WarmUp.Begin();
            var options = new PoolOptions { SmallestGroup = parsed.GetValue(smallest) };
            using var writer = folder is null ? null : new TidyWriter(folder);
            PooledFindings pooled;
            using (var line = PoolingLine.For(surroundings, () => SharedInputs.Count(paths)))
            {
                var read = SharedInputs.Read(paths);
                pooled = Pooler.Pool(line?.UpToTheLast(read) ?? read, options, child => writer?.Add(child), line);
                line?.Writing();
                writer?.Complete();
                outputs.Write(workbook, stream => PooledWorkbook.Write(pooled, stream));
                if (json is not null) outputs.Write(json, stream => PooledJson.Write(pooled, stream));
                outputs.MoveIntoPlace();
            }

            Say(pooled, workbook, folder, surroundings.Output);
            return ExitCode.Done;
        });
        return command;
    }

    private static string TidyTarget(string folder) =>
        Directory.Exists(folder) && Directory.EnumerateFileSystemEntries(folder).Any()
            ? throw new UserMistakeException($"{folder} is not empty: give the name of a new folder with --tidy.")
            : folder;

    private static void Say(PooledFindings pooled, string workbook, string? folder, TextWriter output)
    {
        output.WriteLine(pooled.Children is { } children
            ? $"Pooled {Counted(children, "child", "children")}; left out {Counted(pooled.Refused.Count, "file", "files")}."
            : string.Create(CultureInfo.InvariantCulture, $"Fewer children than {pooled.Options.SmallestGroup}: the figures are kept back. Left out {Counted(pooled.Refused.Count, "file", "files")}."));
        foreach (var refused in pooled.Refused.Take(20)) output.WriteLine($"  left out {refused.File}: {refused.Why}");
        if (pooled.Refused.Count > 20) output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  ... and {pooled.Refused.Count - 20} more, all named in the workbook."));
        output.WriteLine($"The pooled workbook is in {workbook}.");
        if (folder is not null) output.WriteLine($"The tidy tables are in {folder}.");
    }

    private static string Counted(int number, string one, string many) => string.Create(CultureInfo.InvariantCulture, $"{number} {(number == 1 ? one : many)}");
}
