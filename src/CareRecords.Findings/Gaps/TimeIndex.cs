using NodaTime;

namespace CareRecords.Findings;

/// <summary>
/// Things with an interval on the time line, found by time: sorted by their earliest instant, with the running latest one,
/// so that a search looks only at the neighbourhood even over decades.
/// </summary>
internal sealed class TimeIndex<T>
{
    private readonly (InstantRange Range, T Item)[] _items;
    private readonly Instant[] _latestSoFar;

    public TimeIndex(IEnumerable<(InstantRange Range, T Item)> items)
    {
        _items = [.. items.OrderBy(i => i.Range.Earliest)];
        _latestSoFar = new Instant[_items.Length];
        for (var i = 0; i < _items.Length; i++)
            _latestSoFar[i] = i == 0 ? _items[i].Range.Latest : Instant.Max(_latestSoFar[i - 1], _items[i].Range.Latest);
    }

    /// <summary>Every item whose interval touches [<paramref name="from"/>, <paramref name="to"/>], the last first.</summary>
    public IEnumerable<T> Touching(Instant from, Instant to)
    {
        for (var i = CountUpTo(to) - 1; i >= 0 && _latestSoFar[i] >= from; i--)
            if (_items[i].Range.Latest >= from)
                yield return _items[i].Item;
    }

    private int CountUpTo(Instant to)
    {
        var (low, high) = (0, _items.Length);
        while (low < high)
        {
            var middle = low + ((high - low) / 2);
            if (_items[middle].Range.Earliest <= to) low = middle + 1;
            else high = middle;
        }

        return low;
    }
}
