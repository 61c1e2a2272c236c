using System.Text;
using CareRecords.Import.Reading;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>
/// Tolerance for spelling in headings: one slip (two in long words), a letter too many at the end ("stopt"), vowels left out ("strt", "rght"),
/// and letters written as they sound ("saturashun", "medisin"). The first sound must be right; what could be two different things is none.
/// </summary>
internal sealed class HeadingSpelling
{
    private const int ShortestOfSlips = 5;
    private const int LengthOfTwoSlips = 9;
    private const int ShortestSkeleton = 4;

    private readonly IReadOnlyDictionary<string, Known> _words;
    private readonly Dictionary<string, Known?> _skeletons = [];
    private readonly ILookup<char, string> _byInitial;

    public HeadingSpelling(IReadOnlyDictionary<string, Known> words)
    {
        _words = words;
        _byInitial = words.Keys.Where(k => k.Length >= ShortestOfSlips - 1 && !k.Contains(' ')).ToLookup(k => k[0]);
        foreach (var (word, known) in words)
        {
            if (word.Contains(' ') || word.Length < ShortestOfSlips || Skeleton(word) is not { Length: >= ShortestSkeleton } bones) continue;
            _skeletons[bones] = _skeletons.TryGetValue(bones, out var other) && other != known ? null : known;
        }
    }

    /// <summary>What a misspelt word stands for; null when nothing known is near.</summary>
    public Known? Nearest(string word)
    {
        if (word.Length < ShortestOfSlips - 1 || word.AsSpan().ContainsAnyInRange('0', '9')) return null;
        Known? near = null;
        var least = int.MaxValue;
        foreach (var known in _byInitial[word[0]])
        {
            if (Slips(word, known) is not { } slips || slips > least) continue;
            if (slips < least) (near, least) = (_words[known], slips);
            else if (near != _words[known]) near = null;
        }

        if (least < int.MaxValue) return near;
        return Skeleton(word) is { Length: >= ShortestSkeleton } bones ? _skeletons.GetValueOrDefault(bones) : null;
    }

    private static int? Slips(string word, string known)
    {
        var allowed = word.Length >= LengthOfTwoSlips && known.Length >= LengthOfTwoSlips ? 2 : 1;
        if (Math.Abs(word.Length - known.Length) > allowed) return null;
        // Short words are mended only by the letter that they lack, or have too many at the end: "aftr", "pumps".
        if (word.Length < ShortestOfSlips) return known.Length == word.Length + 1 && Spelling.Slips(word, known, 1) == 1 && known[^1] == word[^1] ? 1 : null;
        if (known.Length < ShortestOfSlips) return word.Length == known.Length + 1 && word.StartsWith(known, StringComparison.Ordinal) && word[^1] is 's' or 't' or 'e' ? 1 : null;
        return Spelling.Slips(word, known, allowed) is var slips && slips <= allowed ? slips : null;
    }

    // The sounds of a word without its vowels: "saturation" and "saturashun" are both "strxn".
    private static string Skeleton(string word)
    {
        var sounds = word.Replace("ph", "f", StringComparison.Ordinal).Replace("tion", "xn", StringComparison.Ordinal).Replace("sion", "xn", StringComparison.Ordinal)
            .Replace("sh", "x", StringComparison.Ordinal).Replace("ck", "k", StringComparison.Ordinal).Replace("ce", "s", StringComparison.Ordinal)
            .Replace("ci", "s", StringComparison.Ordinal).Replace("cy", "s", StringComparison.Ordinal).Replace('c', 'k').Replace('z', 's');
        var bones = new StringBuilder();
        for (var i = 0; i < sounds.Length; i++)
            if ((i == 0 || sounds[i] is not ('a' or 'e' or 'i' or 'o' or 'u' or 'y')) && (bones.Length == 0 || bones[^1] != sounds[i]))
                bones.Append(sounds[i]);
        return bones.ToString();
    }
}
