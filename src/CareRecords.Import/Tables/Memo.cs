using CareRecords.Import.Reading;

namespace CareRecords.Import.Tables;

/// <summary>Remembers what a reader made of a text: a log says "94" thousands of times.</summary>
internal sealed class Memo<T>(Func<string, Reading<T>> read)
{
    // Bounded, so that a million different words cost no memory.
    private const int Most = 4096;

    private readonly Dictionary<string, Reading<T>> _known = [];

    /// <summary>The reading of a text.</summary>
    public Reading<T> this[string text]
    {
        get
        {
            if (_known.TryGetValue(text, out var reading)) return reading;
            reading = read(text);
            if (_known.Count < Most) _known[text] = reading;
            return reading;
        }
    }
}
