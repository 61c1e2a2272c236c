using CareRecords.Import.Files;

namespace CareRecords.Import.Tests.Files;

public class ReadAheadTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(ReadAhead.Batch)]
    [InlineData(4 * ReadAhead.Batch + 7)]
    public void Everything_comes_in_its_order(int count) =>
        Assert.Equal(Enumerable.Range(0, count), ReadAhead.Of(Enumerable.Range(0, count)));

    [Fact]
    public void A_source_is_closed_only_when_nobody_walks_it()
    {
        var (walking, closedWhileWalked) = (false, false);
        IEnumerable<int> Source()
        {
            try
            {
                for (var i = 0; i < 3 * ReadAhead.Batch; i++)
                {
                    walking = true;
                    if (i % ReadAhead.Batch == ReadAhead.Batch - 24) Thread.Sleep(5);
                    walking = false;
                    yield return i;
                }
            }
            finally
            {
                closedWhileWalked = walking;
            }
        }

        Assert.Equal(ReadAhead.Batch + 6, ReadAhead.Of(Source()).First(i => i == ReadAhead.Batch + 6));
        Assert.False(closedWhileWalked);
    }

    [Fact]
    public void What_goes_wrong_in_the_source_is_told_where_it_is_used()
    {
        static IEnumerable<int> Source()
        {
            for (var i = 0; i < 2 * ReadAhead.Batch + 7; i++) yield return i;
            throw new InvalidDataException();
        }

        var seen = 0;
        Assert.Throws<InvalidDataException>(() =>
        {
            foreach (var _ in ReadAhead.Of(Source())) seen++;
        });
        Assert.InRange(seen, ReadAhead.Batch, 2 * ReadAhead.Batch + 7);
    }
}
