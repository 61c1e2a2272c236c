using CareRecords.Import.Files;

namespace CareRecords.Import.Tests.Files;

public class ReadAheadTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(1_024)]
    [InlineData(5_000)]
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
                for (var i = 0; i < 10_000; i++)
                {
                    walking = true;
                    if (i % 1_024 == 1_000) Thread.Sleep(5);
                    walking = false;
                    yield return i;
                }
            }
            finally
            {
                closedWhileWalked = walking;
            }
        }

        Assert.Equal(1_030, ReadAhead.Of(Source()).First(i => i == 1_030));
        Assert.False(closedWhileWalked);
    }

    [Fact]
    public void What_goes_wrong_in_the_source_is_told_where_it_is_used()
    {
        static IEnumerable<int> Source()
        {
            for (var i = 0; i < 3_000; i++) yield return i;
            throw new InvalidDataException();
        }

        var seen = 0;
        Assert.Throws<InvalidDataException>(() =>
        {
            foreach (var _ in ReadAhead.Of(Source())) seen++;
        });
        Assert.InRange(seen, 1_024, 3_000);
    }
}
