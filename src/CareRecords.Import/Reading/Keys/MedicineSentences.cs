namespace CareRecords.Import.Reading.Keys;

/// <summary>What a device or a word holds, told in a sentence: "the red one is salbutamol and the orange one is budesonide".</summary>
internal static class MedicineSentences
{
    /// <summary>"The red one is salbutamol and the orange one is budesonide": a word, "is", and the name of a medicine.</summary>
    public static void Add(string line, List<FamilyWord> words)
    {
        if (!line.Contains(" is ", StringComparison.OrdinalIgnoreCase)) return;
        var terms = CellTerms.Read(line);
        // An amount may follow; a time tells of a dose.
        if (terms.Exists(t => t.Kind == TermKind.Time)) return;
        var figures = line.Any(char.IsAsciiDigit) && terms.Exists(t => t.Kind is TermKind.Number or TermKind.Parts);
        for (var i = 1; i + 1 < terms.Count; i++)
        {
            if (terms[i].Text is not "is") continue;
            var means = terms[i + 1].Text is "the" or "his" or "her" or "a" or "always" && i + 2 < terms.Count ? i + 2 : i + 1;
            // "N is the nebuliser, salbutamol 2.5 mg": a sign, its device and what that holds.
            if (terms[means].Is(Sense.Device) && means + 2 < terms.Count && terms[means + 1].IsSymbol(",") && terms[means + 2].Is(Sense.Medicine) && line[terms[i - 1].Start..terms[i - 1].End] is { Length: <= 2 } sign && char.IsUpper(sign[0]))
            {
                words.Add(new FamilyWord(sign, $"{line[terms[means].Start..terms[means].End]} {line[terms[means + 2].Start..terms[means + 2].End]}"));
                continue;
            }
            if (!terms[means].Is(Sense.Medicine) || figures && !terms[i - 1].Is(Sense.Device)) continue;
            var from = i - 1;
            while (from > 0 && i - from < 3 && terms[from].Kind == TermKind.Word && (terms[from].Text is "one" or "thing" || terms[from].Is(Sense.Device))) from--;
            if (terms[from].Kind != TermKind.Word && from < i - 1) from++;
            while (from < i - 1 && terms[from].Text is "the" or "his" or "her" or "a" or "our" or "my") from++;
            var word = line[terms[from].Start..terms[i - 1].End];
            if (terms[from].Kind != TermKind.Word || terms[from].Is(Sense.Medicine) || terms[from].Text is "it" or "this" or "that" or "which" or "there" or "what" or "he" or "she" || word.Length > KeyMeanings.LongestWord) continue;
            if (words.Exists(w => w.Word.Equals(word, StringComparison.OrdinalIgnoreCase))) continue;
            words.Add(new FamilyWord(word, line[terms[means].Start..terms[means].End]));
        }
    }
}
