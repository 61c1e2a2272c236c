namespace CareRecords.EndToEnd.Tests;

/// <summary>What a user is told when only the user can change something: exit code 2, one sentence, nothing half-written.</summary>
public sealed class MistakeTests
{
    private const string Sessions = "started,ended,left lower\n2026-03-09 07:10,2026-03-09 07:30,3\n";

    [Theory]
    [InlineData("review", "nowhere.csv")]
    [InlineData("review", "sessions.csv", "--zone", "Europe/Nowhere")]
    [InlineData("review", "sessions.csv", "--date-order", "dym")]
    [InlineData("review", "sessions.csv", "--from", "9 March")]
    [InlineData("review", "sessions.csv", "--from", "2026-04-01", "--to", "2026-03-01")]
    [InlineData("review", "sessions.csv", "--out", "no-such-folder/review.xlsx")]
    [InlineData("review", "sessions.csv", "--out", "sessions.csv", "--force")]
    [InlineData("review", "sessions.csv", "--colour")]
    [InlineData("rewiev", "sessions.csv")]
    [InlineData("review")]
    public void A_mistake_is_said_in_a_line_and_nothing_is_written(params string[] args)
    {
        using var tool = new ToolRun();
        tool.Write("sessions.csv", Sessions);

        Assert.Equal(2, tool.Run(args));

        Assert.Single(tool.Error.TrimEnd().Split('\n'));
        Assert.DoesNotContain("   at ", tool.Error, StringComparison.Ordinal);
        Assert.Equal(["sessions.csv"], Directory.GetFiles(tool.Folder).Select(Path.GetFileName));
        Assert.Equal(Sessions, File.ReadAllText(tool.PathOf("sessions.csv")));
    }

    [Fact]
    public void An_output_that_exists_is_kept_without_force_and_replaced_with_it()
    {
        using var tool = new ToolRun();
        tool.Write("sessions.csv", Sessions);
        tool.Write("review.xlsx", "mine");

        Assert.Equal(2, tool.Run("review", "sessions.csv"));
        Assert.Equal("mine", File.ReadAllText(tool.PathOf("review.xlsx")));
        Assert.Contains("--force", tool.Error, StringComparison.Ordinal);

        Assert.Equal(0, tool.Run("review", "sessions.csv", "--force"));
        Assert.NotEqual("mine", File.ReadAllText(tool.PathOf("review.xlsx")));
    }

    [Fact]
    public void Strict_ends_with_3_when_something_needs_checking()
    {
        using var tool = new ToolRun();
        tool.Write("checks.csv", "checked,spo2,oxygen\n2026-03-09 07:10,930,0\n2026-03-09 09:10,95,0\n");

        Assert.Equal(0, tool.Run("read", "checks.csv"));
        Assert.Equal(3, tool.Run("read", "checks.csv", "--strict"));
    }

    [Fact]
    public void Nothing_readable_is_said_and_no_workbook_written()
    {
        using var tool = new ToolRun();
        tool.Write("notes.txt", "shopping: milk, bread\n");

        Assert.Equal(2, tool.Run("review", "notes.txt"));
        Assert.False(File.Exists(tool.PathOf("review.xlsx")));
    }
}
