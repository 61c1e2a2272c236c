namespace CareRecords.EndToEnd.Tests;

/// <summary>The README's commands do what it says.</summary>
public sealed class ReadmeTests
{
    private static readonly string[] Lines = File.ReadAllLines(Path.Combine(ToolRun.Root, "README.md"));

    [Fact]
    public void The_main_command_writes_the_workbook_that_the_readme_promises()
    {
        const string runs = "dotnet run --project src/CareRecords.CommandLine -- ";
        var command = Lines.First(l => l.StartsWith(runs, StringComparison.Ordinal))[runs.Length..];
        using var tool = new ToolRun();

        Assert.Equal(0, tool.Run([.. command.Split(' ').Select(word => word.StartsWith("demo-data", StringComparison.Ordinal) ? Path.Combine(ToolRun.Root, word) : word)]));

        Assert.True(File.Exists(tool.PathOf("review.xlsx")));
    }

    [Fact]
    public void The_test_command_is_the_one_that_ci_runs() =>
        Assert.Contains("dotnet test CareRecords.sln", Lines);

    [Fact]
    public void Every_file_that_the_readme_links_to_exists()
    {
        var linked = Lines.SelectMany(l => l.Split("](").Skip(1)).Select(l => l[..l.IndexOf(')', StringComparison.Ordinal)])
            .Where(l => !l.StartsWith("http", StringComparison.Ordinal) && !l.StartsWith('#'));

        Assert.All(linked, link => Assert.True(File.Exists(Path.Combine(ToolRun.Root, link)), link));
    }

    [Fact]
    public void The_root_holds_exactly_the_eight_names_and_dotfiles()
    {
        var names = Directory.EnumerateFileSystemEntries(ToolRun.Root).Select(Path.GetFileName)
            .Where(n => !n!.StartsWith('.') && !n.StartsWith("review", StringComparison.Ordinal) && !n.StartsWith("log", StringComparison.Ordinal));

        Assert.Equal(["CareRecords.sln", "DEVELOPERS.md", "LICENSE", "README.md", "demo-data", "docs", "src", "tests"], names.Order(StringComparer.Ordinal));
    }
}
