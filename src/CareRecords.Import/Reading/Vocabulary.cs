using System.Collections.Concurrent;
using System.Collections.Immutable;
using CareRecords.Records;

namespace CareRecords.Import.Reading;

/// <summary>One meaning of a word or phrase.</summary>
/// <param name="Sense">What kind of thing it stands for.</param>
/// <param name="Value">Which one ("percussion", "left lower", a generic medicine name); empty when the sense says all.</param>
internal readonly record struct Meaning(Sense Sense, string Value);

/// <summary>
/// The words of vocabulary.csv and the medicine table, as a tree over tokens so that the longest phrase wins, with tolerance for
/// spelling on long words. Lookups are constant time a token; results for unknown words are remembered in a bounded store.
/// </summary>
internal sealed class Vocabulary
{
    private const int Remembered = 20_000;
    private readonly Node _root = new();
    private int _spellingsKept;
    private readonly Spelling _spelling = new();
    // One vocabulary serves every reader, on any thread.
    private readonly ConcurrentDictionary<string, string?> _mended = new(StringComparer.Ordinal);

    /// <summary>The vocabulary built into the assembly, with the medicine table.</summary>
    public Vocabulary()
    {
        var tokenizer = new Tokenizer(new WordPool());
        foreach (var (sense, value, words) in Rows())
            foreach (var phrase in words)
                Add(tokenizer, phrase, new Meaning(sense, value));
        foreach (var (spelling, generic) in Medicines.Spellings)
            Add(tokenizer, spelling, new Meaning(Sense.Medicine, generic));
    }

    /// <summary>
    /// The longest phrase that starts at <paramref name="at"/>; null when no word of the vocabulary stands there.
    /// <paramref name="length"/> is its number of tokens, <paramref name="mended"/> the word it was taken for when misspelt.
    /// </summary>
    public ImmutableArray<Meaning>? Find(List<Token> tokens, int at, out int length, out string? mended)
    {
        (length, mended) = (0, null);
        ImmutableArray<Meaning>? best = null;
        var node = _root;
        for (var i = at; i < tokens.Count; i++)
        {
            var text = KeyOf(tokens[i]);
            if (text is null || !node.Next.TryGetValue(text, out var next))
            {
                if (text is null || tokens[i].Kind != TokenKind.Word || Mend(text) is not { } taken || !node.Next.TryGetValue(taken, out next)) break;
                if (i == at) mended = taken;
            }
            node = next;
            if (node.Meanings is not { } found) continue;
            (best, length) = (found, i - at + 1);
        }
        return best;
    }

    /// <summary>The first words of every phrase with one of these senses.</summary>
    public IEnumerable<string> FirstWords(params Sense[] senses) =>
        _root.Next.Where(pair => pair.Value.Meanings is { } meanings && meanings.Any(m => senses.Contains(m.Sense))).Select(pair => pair.Key);

    // Only single digits of phrases such as "1st one" and "l + r" matter, so numbers match by their text.
    private static string? KeyOf(Token token) => token.Kind is TokenKind.Clock ? null : token.Text;

    private string? Mend(string word)
    {
        if (word.Length < Spelling.ShortestWord - 1) return null;
        if (_mended.TryGetValue(word, out var known)) return known;
        var mended = _root.Next.ContainsKey(word) ? null : _spelling.Nearest(word);
        if (_spellingsKept < Remembered && _mended.TryAdd(word, mended)) _spellingsKept++;
        return mended;
    }

    private void Add(Tokenizer tokenizer, string phrase, Meaning meaning)
    {
        var node = _root;
        var tokens = tokenizer.Read(phrase);
        foreach (var token in tokens)
        {
            if (!node.Next.TryGetValue(token.Text, out var next)) node.Next[token.Text] = next = new Node();
            node = next;
        }
        if (tokens.Count == 0) return;
        var known = node.Meanings ?? [];
        if (!known.Contains(meaning)) node.Meanings = known.Add(meaning);
        if (tokens.Count == 1 && Spelling.Covers(meaning.Sense)) _spelling.Add(tokens[0].Text, meaning.ToString());
    }

    private static IEnumerable<(Sense Sense, string Value, string[] Words)> Rows()
    {
        using var stream = typeof(Vocabulary).Assembly.GetManifestResourceStream("CareRecords.Import.vocabulary.csv")
            ?? throw new InvalidOperationException("The vocabulary is built into this assembly.");
        using var reader = new StreamReader(stream);
        while (reader.ReadLine() is { } line)
        {
            if (line.StartsWith('#') || line.Length == 0) continue;
            var cells = line.Split(',', 3);
            if (!Enum.TryParse<Sense>(cells[0], out var sense)) continue;
            yield return (sense, cells[1], cells[2].Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries));
        }
    }

    private sealed class Node
    {
        public Dictionary<string, Node> Next { get; } = new(StringComparer.Ordinal);

        public ImmutableArray<Meaning>? Meanings { get; set; }
    }
}
