using CareRecords.Import.Notes;
using CareRecords.Import.Reading;

namespace CareRecords.Import.Tests.Notes;

/// <summary>Where a line is cut into groups about one time each, whichever way round its times stand. Expected cuts: common practice, no source.</summary>
public sealed class GroupSplitterTests
{
    private static string Cut(string line)
    {
        var terms = TimeLists.Reduce(References.Reduce(Offsets.Reduce(CellTerms.Read(line))));
        var chunks = Chunk.Cut(terms);
        foreach (var chunk in chunks) SlotTimes.Reduce(chunk.Terms);
        Modality.Mark(chunks);
        var groups = GroupSplitter.Split(chunks, false, []);
        return string.Join(" | ", groups.Select(g => string.Join('+', g.Times.Select(t => t.Start.Time.ToString("HH:mm", System.Globalization.CultureInfo.InvariantCulture))) + " " + Kinds(g)));
    }

    private static string Kinds(Group group)
    {
        var kinds = CareKinds.None;
        for (var i = 0; i < group.Terms.Count; i++) kinds |= GroupItem.NamedAt(group.Terms, i);
        return kinds.ToString();
    }

    [Theory]
    // The time first, last, in the middle.
    [InlineData("06:00 pump off 06:25 salbutamol 4 puffs 06:45 physio LL 3 RL 3", "06:00 Feed | 06:25 Dose | 06:45 Session")]
    [InlineData("pump off 06:00 salbutamol 4 puffs 06:25 physio LL 3 RL 3 06:45", "06:00 Feed | 06:25 Dose | 06:45 Session")]
    [InlineData("pump off 06:00, salbutamol 06:25 4 puffs, physio 06:45 LL 3 RL 3", "06:00 Feed | 06:25 Dose | 06:45 Session")]
    // One time for what stands beside it.
    [InlineData("physio 07:15 LL 3 RL 3, sats 94 before 97 after", "07:15 Session, Check")]
    [InlineData("07:00 94, 11:00 95, 15:00 96", "07:00 None | 11:00 None | 15:00 None")]
    [InlineData("14:00 salbutamol + physio same, 18:00 salbutamol + physio same", "14:00 Session, Dose, Same | 18:00 Session, Dose, Same")]
    // A later time corrects the one before.
    [InlineData("physio 07:00 LL 3 RL 3. Sorry, 07:30", "07:30 Session")]
    // The end of what began.
    [InlineData("07:25 physio LL 3 RL 3 / 07:45 done", "07:25 Session")]
    [InlineData("wake 06:30, feed off 06:45", "06:30 None | 06:45 Feed")]
    public void Line_IsCutAtItsEvents(string line, string expected) => Assert.Equal(expected, Cut(line));

    [Fact]
    public void Amounts_InheritWhatWasNamedBefore() => Assert.Equal("07:00 Feed | 11:00 Feed | 15:30 Feed", Cut("bottle 07:00 90ml, 11:00 90ml, 15:30 75ml"));
}
