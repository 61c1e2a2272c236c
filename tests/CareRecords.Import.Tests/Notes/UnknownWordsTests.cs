using CareRecords.Records;
using static CareRecords.Import.Tests.Notes.Telling;

namespace CareRecords.Import.Tests.Notes;

public sealed class UnknownWordsTests
{
    private const string TwoDays = "Tue 4 March 2025\nzork 7.05am, sats 95 after\nzork 6.15pm\nWed 5 March\ndid the zork at 7am\n";

    [Fact]
    public void WordBesideTimes_OnTwoDays_IsAskedAboutOnEachOfItsLines()
    {
        var reading = Whole(TwoDays.TrimEnd().Split('\n'));
        Assert.Equal([2, 3, 5], reading.Problems.Where(p => p.Question == "what-means:zork").Select(p => p.Source.Line ?? 0));
    }

    [Theory]
    [InlineData("zork 7.05am", "did the physio 6pm")]
    [InlineData("school 8.30am", "school 8.30am")]
    [InlineData("bus 7.50am", "bus 7.50am")]
    [InlineData("she will zork at 7am", "to do: zork 8am")]
    public void WordOfOneDay_OrOfTheHousehold_IsNot(string first, string second) =>
        Assert.DoesNotContain(Whole("Tue 4 March 2025", first, "Wed 5 March", second).Problems, p => p.Question?.StartsWith("what-means:", StringComparison.Ordinal) == true);

    [Theory]
    [InlineData("clap LL 3 RL 3 LU 2 RU 2", 3)]
    [InlineData("nothing to keep", 0)]
    public void Answer_SettlesAllItsLines(string answer, int sessions)
    {
        using var inputs = new Inputs().With("n.txt", TwoDays).With("answers.csv", $"question,answer\nwhat-means:zork,{answer}\n");
        var log = inputs.Import();
        Assert.Empty(log.Questions);
        Assert.Equal(sessions, log.Entries.OfType<Session>().Count(s => s.Areas.Count == 4));
    }
}
