namespace CareRecords.EndToEnd.Tests;

/// <summary>What the tool says of itself.</summary>
public sealed class HelpTests
{
    private static readonly string[] AllVerbs = ["review", "read", "blank", "share", "pool"];

    public static TheoryData<string> Verbs => [.. AllVerbs];

    [Theory]
    [MemberData(nameof(Verbs))]
    public void Every_verbs_help_has_examples_of_that_verb(string verb)
    {
        using var tool = new ToolRun();

        Assert.Equal(0, tool.Run(verb, "--help"));

        var examples = tool.Output[tool.Output.IndexOf("Examples:", StringComparison.Ordinal)..];
        Assert.Contains($"    carerecords {verb}", examples, StringComparison.Ordinal);
    }

    [Fact]
    public void The_help_names_every_verb_and_shows_how_to_begin()
    {
        using var tool = new ToolRun();

        Assert.Equal(0, tool.Run("--help"));

        foreach (var verb in AllVerbs) Assert.Contains($"  {verb} ", tool.Output, StringComparison.Ordinal);
        Assert.Contains("carerecords review notes", tool.Output, StringComparison.Ordinal);
    }

    /// <summary>The examples are commands that the tool takes: every option in them is known, only the files are missing.</summary>
    [Theory]
    [MemberData(nameof(Verbs))]
    public void The_examples_parse(string verb)
    {
        using var help = new ToolRun();
        help.Run(verb, "--help");
        var examples = help.Output.Split('\n').Select(l => l.Trim()).Where(l => l.StartsWith($"carerecords {verb}", StringComparison.Ordinal)).ToList();

        Assert.NotEmpty(examples);
        Assert.All(examples, example =>
        {
            using var tool = new ToolRun();
            tool.Run([.. Words(example).Skip(1)]);
            Assert.DoesNotContain("--help", tool.Error, StringComparison.Ordinal);
        });
    }

    [Fact]
    public void The_version_is_the_products()
    {
        using var tool = new ToolRun();

        Assert.Equal(0, tool.Run("--version"));

        Assert.Matches(@"^\d+\.\d+\.\d+", tool.Output);
    }

    [Fact]
    public void Without_anything_it_says_what_to_do_next()
    {
        using var tool = new ToolRun();

        Assert.Equal(2, tool.Run());

        Assert.Contains("carerecords review notes", tool.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_wrong_verb_is_told_the_right_ones()
    {
        using var tool = new ToolRun();

        Assert.Equal(2, tool.Run("rewiev", "notes"));

        Assert.Contains("'rewiev' is neither a verb nor a file or folder here. The verbs are review, read, blank, share, pool", tool.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("bash", "complete -o default -F _carerecords carerecords")]
    [InlineData("zsh", "compdef _carerecords carerecords")]
    [InlineData("fish", "complete -c carerecords")]
    [InlineData("powershell", "Register-ArgumentCompleter -Native -CommandName carerecords")]
    public void Completion_scripts_are_printed_for_four_shells(string shell, string line)
    {
        using var tool = new ToolRun();

        Assert.Equal(0, tool.Run("--completion", shell));

        Assert.Contains(line, tool.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void An_unknown_shell_is_a_mistake_said_in_a_line()
    {
        using var tool = new ToolRun();

        Assert.Equal(2, tool.Run("--completion", "tcsh"));

        Assert.Equal("--completion is 'tcsh': it can be bash, zsh, fish, powershell.", tool.Error.TrimEnd());
    }

    /// <summary>What the scripts ask, and the answers they count on.</summary>
    [Theory]
    [InlineData("carerecords re", "read", "review")]
    [InlineData("carerecords pool --t", "--tidy")]
    [InlineData("carerecords review notes --date", "--date-order")]
    public void The_tool_answers_what_the_scripts_ask(string line, params string[] answers)
    {
        using var tool = new ToolRun();

        Assert.Equal(0, tool.Run($"[suggest:{line.Length}]", line));

        // The shells keep those that begin with the word typed.
        var word = line.Split(' ')[^1];
        Assert.Equal(answers, tool.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries).Where(a => a.StartsWith(word, StringComparison.Ordinal)).Order(StringComparer.Ordinal));
    }

    private static IEnumerable<string> Words(string line)
    {
        foreach (var (part, i) in line.Split('"').Select((p, i) => (p, i)))
            if (i % 2 == 1) yield return part;
            else foreach (var word in part.Split(' ', StringSplitOptions.RemoveEmptyEntries)) yield return word;
    }
}
