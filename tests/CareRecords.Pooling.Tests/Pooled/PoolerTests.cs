using System.Text;
using System.Text.Json;
using CareRecords.Studies;

namespace CareRecords.Pooling.Tests;

public sealed class PoolerTests : IDisposable
{
    private static readonly PoolOptions Quick = new() { BootstrapSamples = 40, Permutations = 99 };
    private static readonly List<SharedChild> Study = Named(new StudyOptions { Seed = 77, Children = 24 });

    private readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public void TheOrderOfTheFiles_DoesNotMatter() => Assert.Equal(Json(Pooler.Pool(Study, Quick)), Json(Pooler.Pool(Enumerable.Reverse(Study), Quick)));

    [Fact]
    public void TidyFoldersOfTwoSites_GiveExactlyWhatAllWorkbooksGive()
    {
        TidyFolder.Write(Study.Take(11).Select(c => c.Findings), _scratch.At("north"));
        TidyFolder.Write(Study.Skip(11).Select(c => c.Findings), _scratch.At("south"));
        var sites = TidyFolder.Read(_scratch.At("south")).Concat(TidyFolder.Read(_scratch.At("north")));
        Assert.Equal(Json(Pooler.Pool(Study, Quick)), Json(Pooler.Pool(sites, Quick)));
    }

    [Fact]
    public void EachInputThatCannotBePooled_IsNamed_AndTheRestIsPooled()
    {
        SharedChild same = new("copy of 3.xlsx", Study[3].Findings);
        SharedChild later = new("3 in spring.xlsx", Study[3].Findings with { Sessions = [.. Study[3].Findings.Sessions.Skip(1)] });
        SharedChild renamed = new("3 again.xlsx", Study[3].Findings with { Child = Study[3].Findings.Child with { Code = ChildCode.Random() } });
        RefusedInput damaged = new("bad.xlsx", "is damaged");
        var pooled = Pooler.Pool([.. Study, same, later, renamed, damaged], Quick);
        Assert.Equal(24, pooled.Children);
        Assert.Equal(
            ["3 again.xlsx: repeats a child: it holds the same records as child 3.xlsx under another code; only that one is pooled",
             "3 in spring.xlsx: repeats a child: child 3.xlsx has the same code; only that one is pooled",
             "bad.xlsx: is damaged", "copy of 3.xlsx: is the same as child 3.xlsx"],
            pooled.Refused.Select(r => $"{r.File}: {r.Why}"));
        Assert.Equal(Json(Pooler.Pool(Study, Quick) with { Refused = [] }), Json(pooled with { Refused = [] }));
    }

    [Fact]
    public void NoChildAtAll_IsAnAnswer()
    {
        var pooled = Pooler.Pool([], Quick);
        Assert.Equal(0, pooled.Children);
        Assert.Null(pooled.FeedGap.Model.Pooled);
        Assert.Contains("There is no child to pool.", pooled.Notes);
        Assert.Contains("\"refused\": []", Json(pooled), StringComparison.Ordinal);
    }

    [Fact]
    public void FourChildren_AreAllKeptBack()
    {
        var pooled = Pooler.Pool(Study.Take(4), Quick);
        Assert.Null(pooled.Children);
        using var json = JsonDocument.Parse(Json(pooled));
        AssertNoNumbers(json.RootElement.GetProperty("adherence"));
        AssertNoNumbers(json.RootElement.GetProperty("recovery"));
        AssertNoNumbers(json.RootElement.GetProperty("completeness"));
    }

    [Fact]
    public void AChildOfOneDay_IsPooledWithTheRest()
    {
        var one = SyntheticStudy.Children(new StudyOptions { Seed = 5, Children = 1, Days = 1 }).Single();
        var pooled = Pooler.Pool([.. Study, new SharedChild("one day.xlsx", one)], Quick);
        Assert.Equal(25, pooled.Children);
        Assert.Empty(pooled.Refused);
    }

    [Fact]
    public void GroupsOfOneChildEach_AreKeptBack_AndNoTestIsMade()
    {
        var alone = Study.Take(12).Select((c, i) => new SharedChild(c.File, c.Findings with { Child = c.Findings.Child with { StudyGroup = StudyGroup.TryRead($"A{i}", out var g) ? g : null } })).ToList();
        var pooled = Pooler.Pool(alone, Quick);
        Assert.All(pooled.Recovery.ByStudyGroup, c => Assert.Null(c.Children));
        var rows = pooled.FeedGap.Forest.Where(r => r.Label.StartsWith("study group", StringComparison.Ordinal)).ToList();
        Assert.Equal(12, rows.Count);
        Assert.All(rows, r => Assert.True(r is { Children: null, Judged: null, Share: null }));
        Assert.Null(pooled.GroupTests.Single(t => t.What == "feed gap kept by study group").PValue);
    }

    [Fact]
    public void CountsOfUnfinishedEpisodes_CannotBeTakenFromTheTotal()
    {
        // Twelve children with unfinished episodes in group A and one in group B.
        var study = Study.Select((c, i) => new SharedChild(c.File, c.Findings with { Episodes = [.. c.Findings.Episodes.Select(e => Unfinished(e, i % 2 == 0 || i == 1))] })).ToList();
        var pooled = Pooler.Pool(study, Quick).Recovery;
        Assert.NotNull(pooled.All.Censored);
        Assert.All(pooled.ByStudyGroup, c => Assert.Null(c.Censored));
        Assert.All(pooled.ByStudyGroup, c => Assert.NotNull(c.Episodes));
    }

    [Fact]
    public void EveryGapKept_IsAnAnswerWithAReason()
    {
        var perfect = Study.Select(c => new SharedChild(c.File, c.Findings with { Sessions = [.. c.Findings.Sessions.Select(s => s with { FeedGap = Findings.GapVerdict.Kept })] }));
        var pooled = Pooler.Pool(perfect, Quick);
        Assert.Equal((1, 1), (pooled.FeedGap.Model.Pooled, pooled.FeedGap.Model.High));
        Assert.Equal(1 / (1 + (1.959963984540054 * 1.959963984540054 / 24)), pooled.FeedGap.Model.Low ?? 0, 10);
        Assert.StartsWith("all of every child", pooled.FeedGap.Model.Method, StringComparison.Ordinal);
        Assert.Equal(pooled.FeedGap.Model, pooled.FeedGap.TwoStep);
        var tests = pooled.GroupTests.Where(t => t.What.StartsWith("feed gap", StringComparison.Ordinal)).ToList();
        Assert.NotEmpty(tests);
        Assert.All(tests, t => Assert.Equal((null, "not done: children do not differ, or are too few"), (t.PValue, t.Method)));
    }

    [Fact]
    public void CountsAddUp()
    {
        var pooled = Pooler.Pool(Study, Quick);
        var sessions = Study.SelectMany(c => c.Findings.Sessions).ToList();
        Assert.Equal(new GapCounts(24, sessions.Count(s => s.FeedGap == Findings.GapVerdict.Kept), sessions.Count(s => s.FeedGap != Findings.GapVerdict.Unknown), sessions.Count(s => s.FeedGap == Findings.GapVerdict.Unknown)), pooled.FeedGap.Counts);
        Assert.Equal(pooled.FeedGap.Counts?.Judged, pooled.FeedGap.Forest.Where(r => r.Label.StartsWith("children", StringComparison.Ordinal)).Sum(r => r.Judged));
        Assert.All(pooled.FeedGap.Forest.Where(r => r.Children is not null), r => Assert.True(r.Children >= 5));
    }

    [Fact]
    public void SmallestOne_ShowsEachChildInTheForest() =>
        Assert.Equal(24, Pooler.Pool(Study, Quick with { SmallestGroup = 1 }).FeedGap.Forest.Count(r => r.Label.StartsWith("child ", StringComparison.Ordinal)));

    private static SharedEpisode Unfinished(SharedEpisode episode, bool unfinished) =>
        episode with { Censored = unfinished, RecoveryHigh = unfinished ? null : episode.RecoveryHigh ?? episode.RecoveryLow + 1 };

    private static List<SharedChild> Named(StudyOptions options) => [.. SyntheticStudy.Children(options).Select((c, i) => new SharedChild($"child {i}.xlsx", c))];

    private static void AssertNoNumbers(JsonElement element)
    {
        Assert.NotEqual(JsonValueKind.Number, element.ValueKind);
        if (element.ValueKind == JsonValueKind.Object) foreach (var property in element.EnumerateObject()) AssertNoNumbers(property.Value);
        if (element.ValueKind == JsonValueKind.Array) foreach (var item in element.EnumerateArray()) AssertNoNumbers(item);
    }

    private static string Json(PooledFindings findings)
    {
        using var output = new MemoryStream();
        PooledJson.Write(findings, output);
        return Encoding.UTF8.GetString(output.ToArray());
    }
}
