using System.Text.Json;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Validation;

namespace CareRecords.EndToEnd.Tests;

/// <summary>What a carer can do with the demo month.</summary>
public sealed class DemoMonthTests
{
    [Fact]
    public void I_can_review_the_demo_month()
    {
        using var tool = new ToolRun();

        Assert.Equal(0, tool.Run("review", ToolRun.Demo("family-month"), "--findings", "findings.json"));

        Assert.Equal("", tool.Error);
        var findings = tool.Json("findings.json");
        foreach (var key in new[] { "span", "sessions", "adherence", "baseline", "episodes", "taper", "recovery", "sessionEffect", "quality", "flags" })
            Assert.True(findings.TryGetProperty(key, out _), key);
        Assert.Equal(["2026-03-13", "2026-04-05"], Missing(findings));
        Assert.Equal(80, findings.GetProperty("sessions").GetArrayLength());
    }

    /// <summary>The verdicts of sessions that the demo's script made so by hand.</summary>
    [Theory]
    [InlineData("2026-03-11T18", "feedGap", "short")] // fed until 20 minutes before
    [InlineData("2026-03-22T15", "feedGap", "unknown")] // the feed's end is not written
    [InlineData("2026-03-18T17", "feedGap", "short")] // the pump was on
    [InlineData("2026-03-10T18", "inhalerGap", "short")] // five minutes before
    [InlineData("2026-03-15T18", "inhalerGap", "early")] // 95 minutes before
    [InlineData("2026-03-12T07", "inhalerGap", "none")] // left out
    [InlineData("2026-03-29T07", "feedGap", "unknown")] // "about" five past seven, half an hour after the feed
    public void The_demo_months_odd_sessions_get_their_verdicts(string hour, string gap, string verdict)
    {
        using var tool = new ToolRun();
        tool.Run("review", ToolRun.Demo("family-month"), "--findings", "findings.json");

        var session = tool.Json("findings.json").GetProperty("sessions").EnumerateArray().Single(s => s.GetProperty("start").GetString()!.StartsWith(hour, StringComparison.Ordinal));

        Assert.Equal(verdict, session.GetProperty(gap).GetProperty("verdict").GetString());
    }

    [Fact]
    public void Every_line_of_the_demo_families_is_accounted_for()
    {
        foreach (var family in new[] { "family-month", "second-family" })
        {
            using var tool = new ToolRun();
            Assert.Equal(0, tool.Run("read", ToolRun.Demo(family), "--records", "records.json"));

            var lines = tool.Json("records.json").GetProperty("lines");
            int Count(string name) => lines.GetProperty(name).GetInt32();
            Assert.True(Count("read") > 100);
            Assert.Equal(Count("read"), Count("blank") + Count("inRecords") + Count("notRecords") + Count("problems"));
        }
    }

    [Fact]
    public void The_workbook_has_no_validator_errors()
    {
        using var tool = new ToolRun();
        tool.Run("review", ToolRun.Demo("family-month"));

        foreach (var version in new[] { FileFormatVersions.Office2019, FileFormatVersions.Microsoft365 })
        {
            using var document = SpreadsheetDocument.Open(tool.PathOf("review.xlsx"), false);
            Assert.Empty(new OpenXmlValidator(version).Validate(document).Select(e => $"{e.Part?.Uri} {e.Path?.XPath} {e.Description}"));
        }
    }

    [Fact]
    public void The_same_inputs_give_the_same_bytes()
    {
        using var tool = new ToolRun();
        tool.Run("review", ToolRun.Demo("family-month"), "--out", "a.xlsx");
        tool.Run("review", ToolRun.Demo("family-month"), "--out", "b.xlsx");

        Assert.Equal(File.ReadAllBytes(tool.PathOf("a.xlsx")), File.ReadAllBytes(tool.PathOf("b.xlsx")));
    }

    [Fact]
    public void A_folder_with_its_own_review_in_it_counts_nothing_twice()
    {
        using var tool = new ToolRun();
        foreach (var file in Directory.GetFiles(ToolRun.Demo("family-month"))) File.Copy(file, tool.PathOf(Path.GetFileName(file)));
        tool.Run("read", ".", "--records", "../" + Path.GetFileName(tool.Folder) + ".first.json");
        var first = Path.Combine(Path.GetDirectoryName(tool.Folder)!, Path.GetFileName(tool.Folder) + ".first.json");
        tool.Run("review", ".");
        Assert.Equal(0, tool.Run("read", ".", "--records", "second.json"));

        var before = JsonDocument.Parse(File.ReadAllBytes(first)).RootElement.GetProperty("records");
        var after = tool.Json("second.json").GetProperty("records");
        File.Delete(first);
        Assert.Equal(before.EnumerateArray().Select(Identity), after.EnumerateArray().Select(Identity));
    }

    private static string Identity(JsonElement record) =>
        record.GetProperty("kind").GetString() + record.GetProperty("start") + record.GetProperty("startEarliest") + record.GetProperty("startLatest");

    private static List<string?> Missing(JsonElement findings) =>
        [.. findings.GetProperty("span").GetProperty("missingDays").EnumerateArray().Select(d => d.GetString())];
}
