using CareRecords.Import.Reading;
using CareRecords.Import.Reading.Keys;

namespace CareRecords.Import.Notes;

/// <summary>A line that explains words of the family's own.</summary>
/// <param name="Line">Zero-based line.</param>
/// <param name="Words">What it explains.</param>
/// <param name="InPassing">Whether it tells of care too, and explains a word in passing.</param>
internal sealed record KeyLine(int Line, List<FamilyWord> Words, bool InPassing)
{
    /// <summary>The lines of a text that explain words, in order.</summary>
    public static List<KeyLine> Of(IReadOnlyList<string> lines)
    {
        var found = new List<KeyLine>();
        var explained = ParallelLines.Look(lines, line => KeyReader.Read(WithoutStamp(line)) is { Count: > 0 } words ? words : null);
        var afterKey = false;
        for (var i = 0; i < lines.Count; i++)
        {
            // A line below a key may go on with it.
            var words = afterKey ? KeyReader.Read(lines[i], afterKey) is { Count: > 0 } more ? more : null : explained[i];
            afterKey = words is not null && (afterKey || KeyReader.IsTitled(lines[i]));
            if (words is not null) found.Add(new KeyLine(i, words, false));
            // A word explained in passing; the line itself tells of care.
            else if ((lines[i].Contains('(') || lines[i].Contains(" what ", StringComparison.OrdinalIgnoreCase)) && KeyAsides.Read(lines[i]) is { Count: > 0 } aside) found.Add(new KeyLine(i, aside, !KeyAsides.OnlyNames(WithoutStamp(lines[i]))));
        }

        return found;
    }

    /// <summary>"[12/01/2026, 07:33] Priya: full one = perc 3 each lower": the words of a message that may explain one.</summary>
    public static string WithoutStamp(string line) => line.Length > 0 && (line[0] == '[' || char.IsAsciiDigit(line[0])) && (line.Contains('=') || line.Contains(" is ", StringComparison.OrdinalIgnoreCase)) && line.IndexOf(": ", StringComparison.Ordinal) is > 0 and < 60 and var colon && line.AsSpan(0, colon).ContainsAnyInRange('0', '9') ? line[(colon + 2)..] : line;
}
