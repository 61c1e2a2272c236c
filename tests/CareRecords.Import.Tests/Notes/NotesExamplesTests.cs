namespace CareRecords.Import.Tests.Notes;

/// <summary>The 60 lines and 12 days of the conventions: every event, value and question right.</summary>
public sealed class NotesExamplesTests
{
    public static TheoryData<string> LineNames => [.. Samples.Lines().Select(s => s.Name)];

    public static TheoryData<string> DayNames => [.. Samples.Days().Select(s => s.Name)];

    [Theory]
    [MemberData(nameof(LineNames))]
    public void Line_IsReadAsExpected(string name)
    {
        var score = Samples.Lines().Single(s => s.Name == name).Score();
        Assert.True(score.Wrong.Count == 0, string.Join('\n', score.Wrong));
    }

    [Theory]
    [MemberData(nameof(DayNames))]
    public void Day_IsReadAsExpected(string name)
    {
        var score = Samples.Days().Single(s => s.Name == name).Score();
        Assert.True(score.Wrong.Count == 0, string.Join('\n', score.Wrong));
    }
}
