using System.Text.RegularExpressions;

namespace CareRecords.Import.Notes;

/// <summary>Brings a family's answers about single lines back into those lines, so that the next reading needs no more.</summary>
internal static partial class LineAnswers
{
    /// <summary>The line's words as the answers make them.</summary>
    /// <param name="words">The words as written.</param>
    /// <param name="place">File and line number, as in the questions' names.</param>
    /// <param name="answers">Answers by question name.</param>
    public static string Apply(string words, string place, IReadOnlyDictionary<string, string> answers)
    {
        if (answers.GetValueOrDefault("unclear:" + place) is { Length: > 0 } other) words = Other(words, other.Trim());
        if (answers.GetValueOrDefault("when:" + place) is { Length: > 0 } time && time.Any(char.IsAsciiDigit)) words = $"{time.Trim()} {words}";
        return words;
    }

    /// <summary>What joined numbers are on a line by its answers; the source's meaning when nothing was answered.</summary>
    public static PairMeaning Pairs(PairMeaning otherwise, string place, IReadOnlyDictionary<string, string> answers)
    {
        if (answers.GetValueOrDefault("before-after:" + place) is { } phases) return phases.Contains("range", StringComparison.OrdinalIgnoreCase) ? PairMeaning.Range : PairMeaning.Phase;
        if (answers.GetValueOrDefault("pulse-or-sat:" + place) is { } pulse) return pulse.Contains("pulse", StringComparison.OrdinalIgnoreCase) ? PairMeaning.Pulse : PairMeaning.Phase;
        return otherwise;
    }

    /// <summary>The words with an answered slip of the pen put right; null when none was answered.</summary>
    public static string? Mended(string words, IEnumerable<Doubt> doubts, string place, IReadOnlyDictionary<string, string> answers)
    {
        if (answers.GetValueOrDefault("slip:" + place) is not { Length: > 0 } answer) return null;
        foreach (var doubt in doubts)
            if (doubt.Cause == "slip:" + place && Quoted().Match(doubt.Why) is { Success: true } written && words.Contains(written.Groups[1].Value, StringComparison.Ordinal))
                return words.Replace(written.Groups[1].Value, answer.Trim(), StringComparison.Ordinal);
        return null;
    }

    private static string Other(string words, string answer) => answer.ToLowerInvariant() switch
    {
        "the feed" or "feed" => "feed " + words,
        "the oxygen" or "oxygen" => "oxygen " + words,
        "a time in the morning" => "morning " + words,
        "a time in the evening" => "evening " + words,
        "given" => words.Replace("next one", "given", StringComparison.OrdinalIgnoreCase),
        "to come" or "not a session" or "a date" or "a fraction" => "",
        // Anything longer is the line in other words.
        _ when answer.Any(char.IsAsciiDigit) || answer.Contains(' ', StringComparison.Ordinal) => answer,
        _ => words,
    };

    [GeneratedRegex("'([^']+)'")]
    private static partial Regex Quoted();
}
