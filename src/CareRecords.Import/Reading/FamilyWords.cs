namespace CareRecords.Import.Reading;

/// <summary>One of the family's own words.</summary>
/// <param name="Word">As written ("blue", "2.5 each", "std").</param>
/// <param name="Means">What it stands for, as written ("salbutamol", "lower, upper and vibs each side").</param>
internal sealed record FamilyWord(string Word, string Means);

/// <summary>The family's own shorthand, from <c>words</c> tables, legends in notes and answered questions. Applies to every file it is given to.</summary>
internal sealed class FamilyWords
{
    private readonly Dictionary<string, FamilyWord> _byWord;

    /// <summary>The words given; of two meanings for one word the later holds.</summary>
    public FamilyWords(IEnumerable<FamilyWord> words)
    {
        _byWord = [];
        foreach (var word in words) _byWord[Fold(word.Word)] = word;
    }

    /// <summary>No words.</summary>
    public static FamilyWords None { get; } = new([]);

    /// <summary>Every word.</summary>
    public IReadOnlyCollection<FamilyWord> All => _byWord.Values;

    /// <summary>What a word or short phrase stands for; null when the family has not said.</summary>
    public string? MeaningOf(string word) => _byWord.TryGetValue(Fold(word), out var found) ? found.Means : null;

    /// <summary>These words and then those, the later ones holding.</summary>
    public FamilyWords With(IEnumerable<FamilyWord> later) => new([.. _byWord.Values, .. later]);

    /// <summary>These words but those that are explained anew.</summary>
    public FamilyWords Without(IEnumerable<FamilyWord> others)
    {
        var gone = others.Select(w => Fold(w.Word)).ToHashSet();
        return gone.Count == 0 ? this : new(_byWord.Where(w => !gone.Contains(w.Key)).Select(w => w.Value));
    }

    private static string Fold(string word) =>
        string.Join(' ', word.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)).ToLowerInvariant();
}
