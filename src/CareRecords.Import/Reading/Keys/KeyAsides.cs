using System.Text.RegularExpressions;

namespace CareRecords.Import.Reading.Keys;

/// <summary>Words explained in passing, in a line that tells of care too.</summary>
internal static partial class KeyAsides
{
    /// <summary>Words explained in passing, in brackets: "thapki (patting)".</summary>
    public static List<FamilyWord> Read(string line)
    {
        var words = new List<FamilyWord>();
        if (line.Length > KeyReader.LongestLine) return words;
        // "chest 6.45 patting 3 mins each, left bottom right bottom left top right top. thats what i mean by ordinary": the line tells of care too.
        if (MeanBy().Match(line) is { Success: true } match && SessionNames.AreasOf(line[..match.Index]) >= 2)
        {
            var first = CellTerms.Read(line).FindIndex(t => t.Is(Sense.Technique) || t.Is(Sense.Area) || t.Is(Sense.SideArea));
            if (first >= 0 && CellTerms.Read(line)[first].Start is var start && start < match.Index) words.Add(new FamilyWord(match.Groups[1].Value, line[start..match.Index].TrimEnd(' ', '.', ',')));
            return words;
        }
        var terms = CellTerms.Read(line);
        for (var i = 1; i + 2 < terms.Count; i++)
            if (terms[i].IsSymbol("(") && i + 3 < terms.Count && terms[i + 1].Text is "the" or "his" or "her" && terms[i + 3].IsSymbol(")") && (terms[i + 2].Is(Sense.Pump) || terms[i + 2].Is(Sense.Feed))
                && terms[i - 1] is { Kind: TermKind.Word, Meanings.Length: 0, Text.Length: > 2 } device)
                words.Add(new FamilyWord(line[device.Start..device.End], "pump"));
            else if (terms[i].IsSymbol("(") && terms[i + 2].IsSymbol(")") && (terms[i + 1].Is(Sense.Medicine) || terms[i + 1].Is(Sense.Technique) || terms[i + 1].Is(Sense.Session))
                && terms[i - 1] is { Kind: TermKind.Word, Meanings.Length: 0, Text.Length: > 2 } word)
                words.Add(new FamilyWord(line[word.Start..word.End], line[terms[i + 1].Start..terms[i + 1].End]));
        // "go to 5 min lowers, 3 min uppers, skip vibration (sick CPT)": what is told before the bracket is from now on called that.
        for (var i = 1; i + 1 < terms.Count; i++)
        {
            var word = terms.FindIndex(i, t => !t.IsSymbol("*"));
            if (!terms[i - 1].IsSymbol("(") || word < 0 || !terms[word].Is(Sense.Usual) || terms[word].Text.Length < 5 || terms.FindIndex(word + 1, t => !t.IsSymbol("*")) is var close && (close < 0 || !terms[close].IsSymbol(")"))) continue;
            var first = terms.FindIndex(t => t.Is(Sense.Area) || t.Is(Sense.SideArea) || t.Is(Sense.Technique));
            var from = first > 0 && terms[first - 1].Kind is TermKind.Quantity or TermKind.Number ? first - 1 : first;
            if (first >= 0 && first < i && SessionNames.AreasOf(line[terms[from].Start..terms[i - 1].Start]) >= 2) words.Add(new FamilyWord(line[terms[word].Start..terms[word].End], line[terms[from].Start..terms[i - 1].Start]));
        }
        // "puffer 2 puffs (salbutamol)": what the device holds.
        for (var i = 0; i + 2 < terms.Count; i++)
        {
            if (!terms[i].Is(Sense.Device) || terms[i].Is(Sense.Medicine)) continue;
            var open = i + 1 < terms.Count && terms[i + 1].Kind is TermKind.Quantity or TermKind.Times or TermKind.Number ? i + 2 : i + 1;
            if (open + 2 < terms.Count && terms[open].IsSymbol("(") && terms[open + 1].Is(Sense.Medicine) && terms[open + 2].IsSymbol(")"))
                words.Add(new FamilyWord(line[terms[i].Start..terms[i].End], $"{line[terms[open + 1].Start..terms[open + 1].End]} {line[terms[i].Start..terms[i].End]}"));
        }
        return words;
    }

    /// <summary>"For the record I do 3 min each side on the bottom and 2 on top, that is what I call the round": a line that names a session and tells of none.</summary>
    public static bool OnlyNames(string line) => MeanBy().IsMatch(line) && !CellTerms.Read(line).Exists(t => t.Kind == TermKind.Time || t.Is(Sense.Given) || t.Text is "did" or "done");

    [GeneratedRegex(@"\b(?:that(?:'?s| is)|this is|it(?:'?s| is)) what (?:i|we) (?:mean by|call|put as|(?:will|shall) call|(?:will|shall) be calling|am calling|are calling) (?:the |an? )?(\w{3,}(?: \w{3,}(?=[.,]|$| so that\b| from now| from here))?)", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex MeanBy();
}
