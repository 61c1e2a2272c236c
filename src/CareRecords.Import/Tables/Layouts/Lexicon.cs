using System.Collections.Concurrent;
using System.Collections.Frozen;
using System.Reflection;
using System.Text;
using CareRecords.Records;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>A word or phrase that the lexicon knows.</summary>
/// <param name="Concept">What it stands for.</param>
/// <param name="Medicine">The generic name where it names a medicine; otherwise null.</param>
internal readonly record struct Known(Concept Concept, string? Medicine = null);

/// <summary>Finds the known words and phrases of a heading, longest first, with tolerance for spelling.</summary>
internal static class Lexicon
{
    private const int LongestPhrase = 4;
    private const int MostMended = 20_000;

    private static readonly Lazy<FrozenDictionary<string, Known>> Words = new(Load);
    private static readonly Lazy<HeadingSpelling> Spelt = new(() => new HeadingSpelling(Words.Value));
    private static readonly ConcurrentDictionary<string, Known?> Mended = new();

    /// <summary>The known words of a text in order; words that are not known leave nothing. Their share tells how sure the text is a heading.</summary>
    public static IReadOnlyList<Known> Find(string text, out double shareKnown)
    {
        var found = new List<Known>();
        var (known, all) = (0, 0);
        // "PERC L (min)": what stands in brackets begins a phrase of its own.
        foreach (var segment in text.Contains('(') ? text.Split('(', ')') : [text])
        {
            var words = Split(segment);
            all += words.Count;
            for (var i = 0; i < words.Count;)
            {
                var taken = Longest(words, i, out var hit);
                if (taken > 0)
                {
                    found.Add(hit);
                    known += taken;
                }

                i += Math.Max(taken, 1);
            }
        }

        shareKnown = all == 0 ? 0 : (double)known / all;
        return found;
    }

    /// <summary>Lower-case words: letters and digits, with the signs inside that units and short forms need ("l/min", "b/f", "o'clock", "°c").</summary>
    public static IReadOnlyList<string> Split(string text)
    {
        var words = new List<string>();
        var word = new StringBuilder();
        foreach (var c in text.ToLowerInvariant().Append(' '))
        {
            if (char.IsLetterOrDigit(c) || c is '°' or '#' or '₂' || (c is '\'' && word.Length > 0))
            {
                word.Append(c);
            }
            else if (word.Length > 0)
            {
                words.Add(word.ToString());
                word.Clear();
            }
        }

        return words;
    }

    private static int Longest(IReadOnlyList<string> words, int at, out Known hit)
    {
        for (var length = Math.Min(LongestPhrase, words.Count - at); length > 0; length--)
        {
            var phrase = string.Join(' ', words.Skip(at).Take(length));
            if (Words.Value.TryGetValue(phrase, out hit)) return length;
            if (length == 1 && Nearest(phrase) is { } near)
            {
                hit = near;
                return 1;
            }
        }

        hit = default;
        return 0;
    }

    // The same few words stand in every row of a table; a bounded store keeps a text of new words from filling it.
    private static Known? Nearest(string word)
    {
        if (Mended.TryGetValue(word, out var known)) return known;
        known = Spelt.Value.Nearest(word);
        if (Mended.Count < MostMended) Mended[word] = known;
        return known;
    }

    private static FrozenDictionary<string, Known> Load()
    {
        var words = new Dictionary<string, Known>();
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("CareRecords.Import.headings.csv")
            ?? throw new InvalidOperationException("The table of headings is built into this assembly.");
        using var reader = new StreamReader(stream);
        while (reader.ReadLine() is { } line)
        {
            if (line.StartsWith('#') || line.Length == 0) continue;
            var comma = line.IndexOf(',', StringComparison.Ordinal);
            var concept = Enum.Parse<Concept>(line[..comma]);
            foreach (var word in line[(comma + 1)..].Split(';')) words.TryAdd(string.Join(' ', Split(word)), new Known(concept));
        }

        foreach (var (spelling, generic) in Medicines.Spellings)
            words.TryAdd(string.Join(' ', Split(spelling)), new Known(Concept.Medicine, generic));
        return words.ToFrozenDictionary();
    }
}
