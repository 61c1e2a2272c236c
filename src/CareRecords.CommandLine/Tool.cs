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
            var parsed = root.Parse(Dropped.Is(args, surroundings, Verbs(root)) ? Dropped.AsReview(args, surroundings) : args);
            if (parsed.Errors.Count > 0)
                throw new UserMistakeException(InPlainWords(parsed));
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

    /// <summary>Whether the program was started by something dropped on its icon.</summary>
    public static bool IsDropped(string[] args, Surroundings surroundings) => Dropped.Is(args, surroundings, Verbs(Root(surroundings)));

    internal static RootCommand Root(Surroundings surroundings)
    {
        var root = new RootCommand("Puts a home carer's notes on chest clearance in order, counts them honestly and writes a workbook for the clinic. Not a monitor, not advice.")
        {
            ReviewVerb.Create(surroundings),
            ReadVerb.Create(surroundings),
            BlankVerb.Create(surroundings),
            ShareVerb.Create(surroundings),
            PoolVerb.Create(surroundings),
            Completion.Option(),
        };
        Help.AddTo(root);
        return root;
    }

    private static IEnumerable<string> Verbs(RootCommand root) => root.Subcommands.Select(v => v.Name);

    private static string InPlainWords(ParseResult parsed)
    {
        var command = parsed.CommandResult.Command;
        var help = command is RootCommand ? "carerecords --help" : $"carerecords {command.Name} --help";
        if (command is RootCommand && parsed.Tokens.Count == 0)
            return $"Say what to do, as in 'carerecords review notes', or drop a folder of notes on the program's icon: '{help}' lists all that can be done.";
        if (command is RootCommand && parsed.UnmatchedTokens is [var word, ..] && !word.StartsWith('-'))
            return $"'{word}' is neither a verb nor a file or folder here. The verbs are {string.Join(", ", Verbs((RootCommand)command))}: see '{help}'.";
        return $"{parsed.Errors[0].Message.TrimEnd('.')}: see '{help}'.";
    }
}
