namespace CareRecords.Import.Reading;

/// <summary>Words in lower case without apostrophes, each kept once. Bounded: past its size, new words are made and not kept.</summary>
internal sealed class WordPool
{
    private const int Size = 20_000;
    private const int LongestKept = 40;
    private readonly HashSet<string> _words = new(StringComparer.Ordinal);
    private readonly HashSet<string>.AlternateLookup<ReadOnlySpan<char>> _lookup;

    /// <summary>An empty pool.</summary>
    public WordPool() => _lookup = _words.GetAlternateLookup<ReadOnlySpan<char>>();

    /// <summary>The word in lower case, without apostrophes and without stops.</summary>
    public string Fold(ReadOnlySpan<char> word)
    {
        // "I'll" is not ill.
        if (word.Length == 4 && word[0] is 'I' or 'i' && word[1] is '\'' or '’' or '`' && word[2] is 'l' or 'L') return "iwill";
        if (word.Length > LongestKept) return word.ToString().ToLowerInvariant();
        Span<char> folded = stackalloc char[word.Length];
        var length = 0;
        foreach (var c in word)
            if (c is not ('\'' or '’' or '`' or '.')) folded[length++] = char.ToLowerInvariant(c);
        var span = folded[..length];
        if (_lookup.TryGetValue(span, out var known)) return known;
        if (Dialect.StandardOf(span) is { } standard) return standard;
        var made = span.ToString();
        if (_words.Count < Size) _words.Add(made);
        return made;
    }
}
