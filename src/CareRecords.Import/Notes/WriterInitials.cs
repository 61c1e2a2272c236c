using System.Text.RegularExpressions;
using CareRecords.Import.Reading;

namespace CareRecords.Import.Notes;

/// <summary>Letters that a key gives to the people who write ("S = Sinéad, R = Ruth") and that their lines begin with: "R – chest 7.15". R is then no right side.</summary>
internal sealed partial class WriterInitials
{
    private readonly Dictionary<string, string> _names = new(StringComparer.Ordinal);

    /// <summary>Takes in a word of a key; one that does not stand for a person is passed over.</summary>
    public void Take(FamilyWord word)
    {
        if (word.Word.Length <= 2 && word.Word.All(char.IsUpper) && Name().IsMatch(word.Means) && CellTerms.Read(word.Means).TrueForAll(t => t.Meanings.Length == 0 || t.Is(Sense.Person))) _names[word.Word] = word.Means;
    }

    /// <summary>Who wrote a line, and where its words go on after the letter; null when it begins with none.</summary>
    /// <param name="line">The line.</param>
    /// <param name="from">Where its words begin.</param>
    public (string Name, int From)? Of(string line, int from) =>
        _names.Count > 1 && Leading().Match(line, Math.Min(from, line.Length)) is { Success: true } match && _names.TryGetValue(match.Groups[1].Value, out var name) ? (name, match.Index + match.Length) : null;

    [GeneratedRegex(@"^\p{Lu}[\p{Ll}']+(?: \p{Lu}[\p{Ll}']*)?$", RegexOptions.CultureInvariant)]
    private static partial Regex Name();

    [GeneratedRegex(@"\G\s*(\p{Lu}{1,2})\s*[–—:-]\s+", RegexOptions.CultureInvariant)]
    private static partial Regex Leading();
}
