using System.Text.RegularExpressions;
using CareRecords.Import.Reading;
using NodaTime;

namespace CareRecords.Import.Notes;

/// <summary>Messages copied without a stamp on each line: a time alone above them ("06:41"), a name before each ("Nan: ...").</summary>
internal static partial class Messages
{
    private const int LeastClocks = 3;
    private const int LeastLines = 4;
    private const int LongestName = 20;
    private static readonly System.Buffers.SearchValues<char> NotInNames = System.Buffers.SearchValues.Create("()[]/,.-*#");

    /// <summary>The lines that are only a time of messages, and the names that lines begin with; both empty where the text is no such thread.</summary>
    public static (HashSet<int> Clocks, HashSet<string> Speakers) Find(IReadOnlyList<string> lines)
    {
        var clocks = new HashSet<int>();
        var names = new Dictionary<string, int>(StringComparer.OrdinalIgnoreCase);
        for (var i = 0; i < lines.Count; i++)
        {
            var line = lines[i];
            if (line.Length <= LongestName && char.IsAsciiDigit(line.AsSpan().Trim() is { Length: > 0 } some ? some[0] : ' ') && Clock(line) is not null) { clocks.Add(i); continue; }
            if (NameOf(line) is { } name) names[name] = names.GetValueOrDefault(name) + 1;
        }
        var speakers = names.Where(n => n.Value >= 2).Select(n => n.Key).ToHashSet(StringComparer.OrdinalIgnoreCase);
        if (names.Where(n => speakers.Contains(n.Key)).Sum(n => n.Value) < LeastLines) speakers.Clear();
        if (speakers.Count == 0 || clocks.Count < LeastClocks) clocks.Clear();
        return (clocks, speakers);
    }

    /// <summary>The name that the words begin with, when it is one of the speakers.</summary>
    public static string? Speaker(string words, HashSet<string> speakers) => NameOf(words) is { } name && speakers.Contains(name) ? name : null;

    /// <summary>The time of a line that holds nothing else.</summary>
    public static LocalTime? Clock(string line)
    {
        if (Alone().Match(line) is not { Success: true } match) return null;
        var (hour, minute) = (int.Parse(match.Groups[1].ValueSpan, System.Globalization.CultureInfo.InvariantCulture), int.Parse(match.Groups[2].ValueSpan, System.Globalization.CultureInfo.InvariantCulture));
        if (match.Groups[3].Success && hour is >= 1 and <= 12) hour = hour % 12 + (match.Groups[3].ValueSpan.StartsWith("p", StringComparison.OrdinalIgnoreCase) ? 12 : 0);
        return hour > 23 || minute > 59 ? null : new LocalTime(hour, minute);
    }

    // One or two words that say nothing of care and no time, before a colon.
    private static string? NameOf(string line)
    {
        var colon = line.IndexOf(':', StringComparison.Ordinal);
        if (colon is <= 0 or > LongestName || (colon + 1 < line.Length && line[colon + 1] != ' ')) return null;
        var name = line.AsSpan(0, colon).Trim();
        if (name.Length == 0 || !char.IsLetter(name[0]) || name.ContainsAnyInRange('0', '9') || name.ContainsAny(NotInNames)) return null;
        var terms = CellTerms.Read(name.ToString());
        return terms.Count <= 2 && terms.TrueForAll(t => t.Kind == TermKind.Word && (t.Meanings.Length == 0 || t.Is(Sense.Person) || t.Text is "home" or "me" or "school")) ? name.ToString() : null;
    }

    /// <summary>Whether a line is a box of a list that was not ticked: "- [ ] 3:30 pm".</summary>
    public static bool IsUnticked(string line) => line.AsSpan().TrimStart(" \t-*•") is var rest && rest.StartsWith("[ ]", StringComparison.Ordinal);

    /// <summary>Whether the words are a messenger program's own: "You created group", "image omitted".</summary>
    public static bool IsOfProgram(string line) => line.AsSpan().ContainsAny(ProgramWords) && OfProgram().IsMatch(line);

    private static readonly System.Buffers.SearchValues<string> ProgramWords = System.Buffers.SearchValues.Create(["group", "added you", "joined", "encrypted", "omitted", "missed", "deleted", "subject"], StringComparison.OrdinalIgnoreCase);

    /// <summary>Whether the words lead to what somebody said, in the lines below: "Anna says:".</summary>
    public static bool IsQuoteAhead(string words) => words.AsSpan().TrimEnd().EndsWith(':') && QuoteAhead().IsMatch(words);

    [GeneratedRegex(@"\b(created (this )?group|added you|joined (the group|using)|left the group|changed (the|this) (group|subject)|end-to-end encrypted|(image|media|video|audio|sticker|gif) omitted|missed (a )?(voice|video) call|deleted (this|a) message|message was deleted)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex OfProgram();

    [GeneratedRegex(@"\b(says|said|say|advice|told (me|us))\s*:\s*$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex QuoteAhead();

    [GeneratedRegex(@"^\s*(\d{1,2})[:.](\d{2})\s*(am|pm|a\.m\.|p\.m\.)?\s*$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Alone();
}
