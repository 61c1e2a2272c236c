using CareRecords.Records;

namespace CareRecords.Import.Tests;

public sealed class AreasTwiceTests
{
    // "LT" is explained as a bottom by a slip of the pen: every session has the left bottom twice.
    private const string Slip = "LB = left bottom, LT = left bottom, RB = right bottom, RT = right top\n\nMon 3 March 2025\n7.10am clapping LB 3 RB 3 LT 2 RT 2\n5.40pm clapping LB 3 RB 3 LT 2 RT 2\n";

    [Fact]
    public void OnePlaceTwiceInASession_IsAskedAboutOnceAFileAndKept()
    {
        var log = Inputs.Import("notes.txt", Slip);
        Assert.Equal(2, log.Entries.OfType<Session>().Count());
        var question = Assert.Single(log.Questions, q => q.Name == "areas-twice:notes.txt");
        Assert.Equal([4, 5], question.Sources.Select(s => s.Line));
        Assert.Contains("left lower", question.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void AnsweredThatItWasMeant_AsksNoMore()
    {
        using var inputs = new Inputs().With("notes.txt", Slip).With("answers.csv", "question,answer\nareas-twice:notes.txt,\"yes, treated twice\"\n");
        Assert.DoesNotContain(inputs.Import().Questions, q => q.Name.StartsWith("areas-twice", StringComparison.Ordinal) && q.Answer is null);
    }

    [Fact]
    public void AnsweredWithTheWordAndItsMeaning_IsReadSo()
    {
        using var inputs = new Inputs().With("notes.txt", Slip).With("answers.csv", "question,answer\nareas-twice:notes.txt,LT = left top\n");
        var log = inputs.Import();
        Assert.DoesNotContain(log.Questions, q => q.Name.StartsWith("areas-twice", StringComparison.Ordinal));
        Assert.All(log.Entries.OfType<Session>(), s => Assert.Equal(4, s.Areas.Select(a => (a.Side, a.Area)).Distinct().Count()));
    }

    [Fact]
    public void ExplainedAnew_IsReadRightAndAsksNoMore()
    {
        using var inputs = new Inputs().With("notes.txt", Slip.Replace("LT = left bottom", "LT = left top", StringComparison.Ordinal));
        var log = inputs.Import();
        Assert.DoesNotContain(log.Questions, q => q.Name.StartsWith("areas-twice", StringComparison.Ordinal));
        Assert.All(log.Entries.OfType<Session>(), s => Assert.Equal(4, s.Areas.Select(a => (a.Side, a.Area)).Distinct().Count()));
    }

    [Fact]
    public void TwoNumbersBehindASide_AreNotOnePlaceTwice() =>
        Assert.DoesNotContain(Inputs.Import("n.txt", "Mon 3 March 2025\n7.10am clapping right 4 and 2, left 3 and 1\n").Questions, q => q.Name.StartsWith("areas-twice", StringComparison.Ordinal));

    // The program reads a text a second time with all words that the first reading explained: nothing may change by it.
    [Fact]
    public void WordThatOrdersThePlaces_IsReadTheSameAtTheSecondReading()
    {
        var log = Inputs.Import("n.txt", "physio = bottoms then tops, both sides\n\nMon 10 Feb 2025\nphysio 6.40am - 3 mins each bottom, 2 mins each top\n");
        var areas = Assert.IsType<Session>(Assert.Single(log.Entries)).Areas;
        Assert.Equal([3, 3, 2, 2], areas.OrderBy(a => a.Area).ThenBy(a => a.Side).Select(a => a.Minutes));
        Assert.Empty(log.Questions);
    }
}
