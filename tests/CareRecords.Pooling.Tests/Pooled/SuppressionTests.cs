using CsCheck;

namespace CareRecords.Pooling.Tests;

public sealed class SuppressionTests
{
    [Theory]
    [InlineData("10 12 9", "")]
    [InlineData("10 3 9", "3 9")]
    [InlineData("2 2 30 6", "2 2 6")]
    [InlineData("4 4 30", "4 4")]
    [InlineData("0 12 9", "")]
    [InlineData("3 20", "3 20")]
    [InlineData("3", "3")]
    public void KeepsBackSmallRowsAndThoseThatWouldGiveThemAway(string children, string keptBack)
    {
        int[] rows = [.. children.Split(' ').Select(int.Parse)];
        var why = Suppression.Of(rows, 5);
        Assert.Equal(keptBack, string.Join(' ', rows.Where((_, i) => why[i] is not null)));
    }

    [Fact]
    public void WhateverTheTable_NoSmallRowCanBeWorkedOutFromTheTotalAndTheRowsShown() =>
        Gen.Select(Gen.Int[0, 30].Array[1, 8], Gen.Int[1, 12]).Holds((rows, smallest) =>
        {
            var why = Suppression.Of(rows, smallest);
            var hidden = Enumerable.Range(0, rows.Length).Where(i => why[i] is not null).ToList();
            Assert.All(Enumerable.Range(0, rows.Length).Where(i => rows[i] > 0 && rows[i] < smallest), i => Assert.NotNull(why[i]));

            // What an onlooker can work out is the sum of the hidden rows. It is either of two rows at least and of enough children,
            // or nothing is shown that it could be taken from.
            if (hidden.Count > 0)
                Assert.True((hidden.Count >= 2 && hidden.Sum(i => rows[i]) >= smallest) || Enumerable.Range(0, rows.Length).All(i => why[i] is not null || rows[i] == 0));
        });

    [Fact]
    public void SmallestOne_KeepsNothingBack() => Assert.All(Suppression.Of([1, 2, 1], 1), Assert.Null);
}
