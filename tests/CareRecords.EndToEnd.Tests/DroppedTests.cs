namespace CareRecords.EndToEnd.Tests;

/// <summary>A folder or a file dropped on the program's icon: a path and nothing else.</summary>
public sealed class DroppedTests
{
    private const string Sessions = "started,ended,left lower\n2026-03-09 07:10,2026-03-09 07:30,3\n";

    [Theory]
    [InlineData("notes")]
    [InlineData("our notes")]
    [InlineData("März 2026 – Notizen 記録")]
    [InlineData("March.2026")]
    public void A_folder_gives_a_review_beside_it_and_the_tool_says_where(string name)
    {
        using var tool = new ToolRun();
        Directory.CreateDirectory(tool.PathOf(name));
        tool.Write(Path.Combine(name, "sessions.csv"), Sessions);

        Assert.Equal(0, tool.Run(tool.PathOf(name)));

        var review = tool.PathOf(name + " - review.xlsx");
        Assert.True(File.Exists(review));
        Assert.Contains($"The review is in {review}.", tool.Output, StringComparison.Ordinal);
        Assert.Single(Directory.GetFiles(tool.PathOf(name)));
    }

    [Fact]
    public void A_second_drop_keeps_the_first_review()
    {
        using var tool = new ToolRun();
        var file = tool.Write("sessions.csv", Sessions);

        Assert.Equal(0, tool.Run(file));
        var first = File.ReadAllBytes(tool.PathOf("sessions - review.xlsx"));
        Assert.Equal(0, tool.Run(file));

        Assert.Equal(first, File.ReadAllBytes(tool.PathOf("sessions - review.xlsx")));
        Assert.True(File.Exists(tool.PathOf("sessions - review 2.xlsx")));
    }

    [Fact]
    public void Several_files_give_one_review_beside_the_first()
    {
        using var tool = new ToolRun();
        var (a, b) = (tool.Write("a.csv", Sessions), tool.Write("b.csv", Sessions.Replace("07:", "17:", StringComparison.Ordinal)));

        Assert.Equal(0, tool.Run(a, b));

        Assert.Contains("Sessions 2", tool.Output, StringComparison.Ordinal);
        Assert.Equal(["a - review.xlsx", "a.csv", "b.csv"], Directory.GetFiles(tool.Folder).Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_verb_is_a_verb_where_a_folder_has_its_name()
    {
        using var tool = new ToolRun();
        Directory.CreateDirectory(tool.PathOf("blank"));

        Assert.Equal(0, tool.Run("blank"));

        Assert.True(File.Exists(tool.PathOf("log.xlsx")));
    }

    [Fact]
    public void A_relative_path_is_looked_for_in_the_working_folder()
    {
        using var tool = new ToolRun();
        tool.Write("sessions.csv", Sessions);

        Assert.Equal(0, tool.Run("sessions.csv"));

        Assert.True(File.Exists(tool.PathOf("sessions - review.xlsx")));
    }
}
