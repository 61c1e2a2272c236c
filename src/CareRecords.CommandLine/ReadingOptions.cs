using System.CommandLine;
using CareRecords.Import;
using CareRecords.Records;
using NodaTime;
using NodaTime.Text;

namespace CareRecords.CommandLine;

/// <summary>The arguments and options that <c>review</c>, <c>read</c> and <c>share</c> have in common.</summary>
internal sealed class ReadingOptions
{
    private readonly Argument<string[]> _inputs = new("input")
    {
        Description = "Notes, tables and workbooks, or folders of them (.csv .tsv .txt .md .xlsx .xls .xlsm).",
        Arity = ArgumentArity.OneOrMore,
    };

    private readonly Option<string?> _plan = new("--plan") { Description = "A plan table, if it does not lie among the inputs.", HelpName = "file" };
    private readonly Option<string?> _zone = new("--zone") { Description = "Time zone of the notes, as in Europe/London (default: the plan's, else this computer's).", HelpName = "zone" };
    private readonly Option<string?> _dateOrder = new("--date-order") { Description = "How dates such as 3/4/26 are written: dmy, mdy or ymd.", HelpName = "order" };
    private readonly Option<string?> _from = new("--from") { Description = "First day to look at, as in 2026-03-01.", HelpName = "date" };
    private readonly Option<string?> _to = new("--to") { Description = "Last day to look at, as in 2026-03-31.", HelpName = "date" };
    private readonly Option<bool> _strict = new("--strict") { Description = "End with exit code 3 if anything needs checking." };
    private readonly Option<bool> _force = new("--force") { Description = "Replace outputs that exist already." };

    public void AddTo(Command command)
    {
        _dateOrder.CompletionSources.Add("dmy", "mdy", "ymd");
        command.Arguments.Add(_inputs);
        foreach (var option in new Option[] { _plan, _zone, _dateOrder, _from, _to, _strict, _force }) command.Options.Add(option);
    }

    public bool Strict(ParseResult parsed) => parsed.GetValue(_strict);

    public IReadOnlyList<string> Inputs(ParseResult parsed, Surroundings surroundings) =>
        [.. parsed.GetRequiredValue(_inputs).Select(surroundings.FullPath)];

    public SafeOutput Outputs(ParseResult parsed, Surroundings surroundings) =>
        new(parsed.GetValue(_force), [.. Inputs(parsed, surroundings)]);

    /// <summary>Reads the inputs named on the command line.</summary>
    /// <exception cref="UserMistakeException">An option does not say what it should.</exception>
    /// <exception cref="InputException">An input cannot be read at all.</exception>
    public CareLog ReadAll(ParseResult parsed, Surroundings surroundings)
    {
        var options = new ImportOptions
        {
            PlanFile = parsed.GetValue(_plan) is { } plan ? surroundings.FullPath(plan) : null,
            Zone = parsed.GetValue(_zone),
            DateOrder = DateOrderOf(parsed.GetValue(_dateOrder)),
            From = DateOf("--from", parsed.GetValue(_from)),
            To = DateOf("--to", parsed.GetValue(_to)),
            MachineZone = surroundings.FindMachineZone(),
        };
        if (options.From > options.To) throw new UserMistakeException("--from lies after --to: give the earlier day first.");
        return Importer.Import(Inputs(parsed, surroundings), options, ProgressLine.For(surroundings));
    }

    private static DateOrder? DateOrderOf(string? written) => written switch
    {
        null => null,
        "dmy" => DateOrder.DayMonthYear,
        "mdy" => DateOrder.MonthDayYear,
        "ymd" => DateOrder.YearMonthDay,
        _ => throw new UserMistakeException($"--date-order is '{written}': it can be dmy, mdy or ymd."),
    };

    private static LocalDate? DateOf(string option, string? written) =>
        written is null ? null
        : LocalDatePattern.Iso.Parse(written).TryGetValue(default, out var date) ? date
        : throw new UserMistakeException($"{option} is '{written}': write the day as in 2026-03-31.");
}
