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

    private static readonly Lazy<FrozenDictionary<string, Known>> Words = new(Load);

    /// <summary>The known words of a text in order; words that are not known leave nothing. Their share tells how sure the text is a heading.</summary>
    public static IReadOnlyList<Known> Find(string text, out double shareKnown)
    {
        var words = Split(text);
        var found = new List<Known>();
        var known = 0;
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

        shareKnown = words.Count == 0 ? 0 : (double)known / words.Count;
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
            if (length == 1 && phrase.Length >= 5 && Near(phrase) is { } near)
            {
                hit = near;
                return 1;
            }
        }

        hit = default;
        return 0;
    }

    // One letter wrong, missing, too many or two swapped; the first letter must be right.
    private static Known? Near(string word)
    {
        foreach (var (known, hit) in Words.Value)
            if (known.Length >= 5 && known[0] == word[0] && Math.Abs(known.Length - word.Length) <= 1 && IsOneOff(known, word))
                return hit;
        return null;
    }

    private static bool IsOneOff(string a, string b)
    {
        var start = a.AsSpan().CommonPrefixLength(b);
        var (restA, restB) = (a[start..], b[start..]);
        if (restA.Length == restB.Length + 1) return restA[1..] == restB;
        if (restA.Length + 1 == restB.Length) return restB[1..] == restA;
        if (restA.Length != restB.Length) return false;
        return restA.Length == 0 || restA[1..] == restB[1..]
            || (restA.Length >= 2 && restA[0] == restB[1] && restA[1] == restB[0] && restA[2..] == restB[2..]);
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
