using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;

namespace CareRecords.CommandLine;

/// <summary>What <c>--help</c> shows: the usual lists, then examples, then what to do next.</summary>
internal sealed class Help(SynchronousCommandLineAction usual) : SynchronousCommandLineAction
{
    private static readonly Dictionary<string, (string Does, string Command)[]> Examples = new()
    {
        [""] =
        [
            ("Review a folder of notes and tables; review.xlsx is written here", "carerecords review notes"),
            ("The same, written beside the folder (or drop the folder on the program's icon)", "carerecords notes"),
            ("See line by line what was understood", "carerecords read notes"),
        ],
        ["review"] =
        [
            ("Everything in a folder", "carerecords review notes"),
            ("Two files, with a name of your own for the workbook", "carerecords review \"night book.txt\" fridge.xlsx --out march.xlsx"),
            ("Only March, with dates such as 3/4/26 read day first", "carerecords review notes --from 2026-03-01 --to 2026-03-31 --date-order dmy"),
            ("Again, with the answers you typed into the last review", "carerecords review notes review.xlsx --out review-2.xlsx"),
        ],
        ["read"] =
        [
            ("Each line beside what it was taken for, and what is asked about", "carerecords read notes"),
            ("The records for another program", "carerecords read notes --records records.json"),
        ],
        ["blank"] = [("An empty log; when it is filled in: carerecords review log.xlsx", "carerecords blank")],
        ["share"] =
        [
            ("For a study that gave you a key file", "carerecords share notes --study-key study.key --child \"family 12\""),
            ("Without a study: the code is random", "carerecords share notes --out for-research.xlsx"),
        ],
        ["pool"] =
        [
            ("A folder of shared workbooks", "carerecords pool shared"),
            ("With tables for statistics programs as well", "carerecords pool shared --tidy tidy --findings pooled.json"),
        ],
    };

    /// <summary>Whoever asks for help has often left out what is required.</summary>
    public override bool ClearsParseErrors => true;

    public override int Invoke(ParseResult parseResult)
    {
        usual.Invoke(parseResult);
        var output = parseResult.InvocationConfiguration.Output;
        var command = parseResult.CommandResult.Command;
        output.WriteLine("Examples:");
        foreach (var (does, line) in Examples[command is RootCommand ? "" : command.Name])
        {
            output.WriteLine($"  {does}:");
            output.WriteLine($"    {line}");
        }

        if (command is not RootCommand) return ExitCode.Done;
        output.WriteLine();
        output.WriteLine("'carerecords VERB --help' tells more of one verb. Nothing is sent anywhere, and nothing is written but the files you ask for.");
        return ExitCode.Done;
    }

    /// <summary>Puts the examples under the help of a command and of all that stand under it.</summary>
    public static void AddTo(RootCommand root)
    {
        var option = root.Options.OfType<HelpOption>().Single();
        if (option.Action is SynchronousCommandLineAction usual) option.Action = new Help(usual);
    }
}
