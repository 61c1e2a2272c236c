namespace CareRecords.Import.Reading;

/// <summary>
/// Tolerance for spelling: the one known word within one slip (two for words of nine letters and more) that starts with the same letter.
/// A slip is a letter left out, put in, changed, or two changed places (restricted Damerau distance).
/// </summary>
internal sealed class Spelling
{
    /// <summary>Shorter words are never mended: "feed" is too near "need".</summary>
    public const int ShortestWord = 6;

    private const int LongestWord = 24;
    private readonly Dictionary<(char, int), List<string>> _byInitialAndLength = [];
    private readonly Dictionary<string, string> _meanings = new(StringComparer.Ordinal);

    /// <summary>Kinds of words that may be mended: the ones that name an event, a medicine, a place on the chest, a day.</summary>
    public static bool Covers(Sense sense) => sense is Sense.Medicine or Sense.Session or Sense.Technique or Sense.SatLabel or Sense.TempLabel
        or Sense.OxygenLabel or Sense.Device or Sense.Antibiotic or Sense.Weekday or Sense.Month or Sense.Meal or Sense.Sign or Sense.Area or Sense.After or Sense.Before or Sense.EachSide;

    /// <summary>Makes a word known.</summary>
    public void Add(string word, string meaning)
    {
        _meanings.TryAdd(word, meaning);
        if (word.Length < ShortestWord - 1 || !char.IsLetter(word[0])) return;
        var key = (word[0], word.Length);
        if (!_byInitialAndLength.TryGetValue(key, out var words)) _byInitialAndLength[key] = words = [];
        words.Add(word);
    }

    /// <summary>The known word that is meant; null when none is near or two are equally near.</summary>
    public string? Nearest(string word)
    {
        if (word.Length is < ShortestWord - 1 or > LongestWord) return null;
        // A short word is mended only by the letter that it lacks: "oxgen".
        var (allowed, least) = (word.Length >= 9 ? 2 : 1, word.Length < ShortestWord ? word.Length + 1 : 0);
        string? best = null;
        var bestSlips = allowed + 1;
        var tie = false;
        for (var length = Math.Max(least, word.Length - allowed); length <= word.Length + allowed; length++)
        {
            if (!_byInitialAndLength.TryGetValue((word[0], length), out var candidates)) continue;
            foreach (var candidate in candidates)
            {
                var slips = Slips(word, candidate, allowed);
                if (slips > allowed || slips > bestSlips) continue;
                tie = slips == bestSlips && _meanings[candidate] != _meanings[best!];
                if (slips < bestSlips) (best, bestSlips) = (candidate, slips);
            }
        }
        return tie ? null : best;
    }

    /// <summary>Slips between two words, or more than <paramref name="allowed"/> when there are more.</summary>
    public static int Slips(string a, string b, int allowed)
    {
        if (Math.Abs(a.Length - b.Length) > allowed) return allowed + 1;
        var rows = new int[3][];
        for (var r = 0; r < 3; r++) rows[r] = new int[b.Length + 1];
        for (var j = 0; j <= b.Length; j++) rows[0][j] = j;
        for (var i = 1; i <= a.Length; i++)
        {
            var (row, above, twoAbove) = (rows[i % 3], rows[(i - 1) % 3], rows[(i + 1) % 3]);
            row[0] = i;
            var least = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var same = a[i - 1] == b[j - 1] ? 0 : 1;
                row[j] = Math.Min(Math.Min(row[j - 1], above[j]) + 1, above[j - 1] + same);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) row[j] = Math.Min(row[j], twoAbove[j - 2] + 1);
                least = Math.Min(least, row[j]);
            }
            if (least > allowed) return allowed + 1;
        }
        return rows[a.Length % 3][b.Length];
    }
}
