using System.CommandLine;
using CareRecords.CommandLine.Verbs;
using CareRecords.Import;

namespace CareRecords.CommandLine;

/// <summary>The tool: from words on the command line to an exit code. It decides nothing about records.</summary>
internal static class Tool
{
    /// <summary>Runs one command; everything outside comes in through <paramref name="surroundings"/>.</summary>
    public static int Run(string[] args, Surroundings surroundings)
    {
        var root = Root(surroundings);
        try
        {
            var parsed = root.Parse(OneFolderDroppedOnTheIcon(args));
            if (parsed.Errors.Count > 0)
                throw new UserMistakeException($"{parsed.Errors[0].Message.TrimEnd('.')}: see 'carerecords {parsed.CommandResult.Command.Name} --help'.");
            return parsed.Invoke(new InvocationConfiguration
            {
                Output = surroundings.Output,
                Error = surroundings.Error,
                EnableDefaultExceptionHandler = false,
            });
        }
        catch (UserMistakeException mistake)
        {
            surroundings.Error.WriteLine(mistake.Message);
            return ExitCode.UserMustChange;
        }
        catch (InputException mistake)
        {
            surroundings.Error.WriteLine($"{mistake.Message} {mistake.Advice}");
            return ExitCode.UserMustChange;
        }
    }

    internal static RootCommand Root(Surroundings surroundings) => new(
        "Puts a home carer's notes on chest clearance in order, counts them honestly and writes a workbook for the clinic. Not a monitor, not advice.")
    {
        ReviewVerb.Create(surroundings),
        ReadVerb.Create(surroundings),
        BlankVerb.Create(surroundings),
        ShareVerb.Create(surroundings),
        PoolVerb.Create(surroundings),
    };

    /// <summary>A path as the only argument, as when a folder is dropped on the program's icon, means a review written beside it.</summary>
    private static string[] OneFolderDroppedOnTheIcon(string[] args) =>
        args is [var path] && (Directory.Exists(path) || File.Exists(path)) && !path.StartsWith('-')
            ? ["review", path, "--out", BesideIt(path)]
            : args;

    private static string BesideIt(string path)
    {
        var whole = Path.TrimEndingDirectorySeparator(Path.GetFullPath(path));
        var folder = Path.GetDirectoryName(whole) ?? whole;
        var name = Path.GetFileNameWithoutExtension(whole) + " - review";
        var target = Path.Combine(folder, name + ".xlsx");
        for (var n = 2; File.Exists(target); n++) target = Path.Combine(folder, FormattableString.Invariant($"{name} {n}.xlsx"));
        return target;
    }
}
