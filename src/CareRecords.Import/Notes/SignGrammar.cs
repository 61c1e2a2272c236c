using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Notes;

/// <summary>One sign as a group's words tell it.</summary>
/// <param name="Kind">Which sign.</param>
/// <param name="What">Its name.</param>
/// <param name="Value">In words as written; null when none.</param>
/// <param name="Number">Its number; null when it has none.</param>
internal sealed record SignReading(SignKind Kind, string What, string? Value, double? Number);

/// <summary>Reads temperatures, breathing rates, and the signs that words tell of, with the words that describe them.</summary>
internal static class SignGrammar
{
    /// <summary>The signs of a group; impossible temperatures go to <paramref name="impossible"/>.</summary>
    public static List<SignReading> Read(IReadOnlyList<Term> terms, string line, HashSet<int> used, List<(string, string, string)> impossible)
    {
        var signs = new List<SignReading>();
        for (var i = 0; i < terms.Count; i++)
        {
            var term = terms[i];
            if (used.Contains(i)) continue;
            if (term.Is(Sense.TempLabel) && !IsMultiplied(terms, i)) Temperature(terms, i, line, used, signs, impossible);
            else if (IsTemperature(term) && !IsSaturation(terms, i)) { used.Add(i); signs.Add(Temp(term, line)); }
            else if (term.Is(Sense.BreathLabel) && NumberAfter(terms, i) is { } rate && terms[rate].Number is >= 5 and <= 150)
            {
                used.Add(i);
                used.Add(rate);
                signs.Add(new SignReading(SignKind.BreathingRate, "breathing rate", Doubts.Plain(terms[rate].Number), terms[rate].Number));
            }
        }
        Words(terms, line, used, signs);
        return signs;
    }

    private static bool IsMultiplied(IReadOnlyList<Term> terms, int at) => terms[at].Text == "t" && !(NumberAfter(terms, at) is not null);

    private static void Temperature(IReadOnlyList<Term> terms, int at, string line, HashSet<int> used, List<SignReading> signs, List<(string, string, string)> impossible)
    {
        used.Add(at);
        if (NumberAfter(terms, at) is not { } next || used.Contains(next)) return;
        var number = terms[next];
        // "temp 385": the point left out.
        if (number is { Kind: TermKind.Number, IsWhole: true, Number: >= 345 and <= 425, Text.Length: 3 }) number = number with { Number = number.Number / 10, Clock = null };
        used.Add(next);
        if (Celsius(number) is null) { if (number.Kind is TermKind.Number && number.Clock is null || number.Number > 50) impossible.Add(("temperature", line[number.Start..number.End], "30 to 45 °C, 86 to 113 °F")); else used.Remove(next); return; }
        signs.Add(Temp(number, line));
        // "T 38.4, 37.9 after"? Every further temperature has its own label or decimals and is found by the caller.
    }

    private static int? NumberAfter(IReadOnlyList<Term> terms, int at)
    {
        for (var i = at + 1; i < terms.Count && i <= at + 6; i++)
        {
            if (terms[i].Kind is TermKind.Number or TermKind.Quantity) return i;
            if (terms[i].Kind == TermKind.Symbol && terms[i].Text is not (":" or "=" or "~" or "-" or "→" or "↑") || terms[i].NamesEvent) return null;
        }
        return null;
    }

    /// <summary>Whether a bare number is a temperature wherever it stands: 35.0 to 42.5 or 96.0 to 107.9 with one decimal, which nothing else in these notes looks like.</summary>
    public static bool IsBareTemperature(Term term) => term is { Kind: TermKind.Number, IsWhole: false, Number: (>= 35 and <= 42.5) or (>= 96 and < 108) } && term.Text[^2] is '.' or ',';

    // "sats 97.5", "96.5 before, 98.5 after": what could be Fahrenheit is a saturation where it is named so, or which reading it was is said.
    private static bool IsSaturation(IReadOnlyList<Term> terms, int at)
    {
        if (terms[at] is not { Kind: TermKind.Number, Number: >= 96 and <= 100 }) return false;
        if (IsPhase(at - 1) || IsPhase(at + 1)) return true;
        for (var i = at - 1; i >= 0 && !terms[i].IsSymbol("."); i--)
            if (terms[i].Is(Sense.TempLabel)) return false;
            else if (terms[i].NamesEvent && !terms[i].Is(Sense.Sign)) return terms[i].Is(Sense.SatLabel);
        return false;

        bool IsPhase(int i) => i >= 0 && i < terms.Count && (terms[i].Is(Sense.Before) || terms[i].Is(Sense.After));
    }

    private static bool IsTemperature(Term term) => IsBareTemperature(term)
        || term is { Kind: TermKind.Quantity, Unit: Unit.Celsius, Number: >= 34 and <= 43 } or { Kind: TermKind.Quantity, Unit: Unit.Fahrenheit, Number: >= 94 and <= 110 };

    private static double? Celsius(Term term) => term.Unit switch
    {
        Unit.Fahrenheit => term.Number is >= 86 and <= 113 ? (term.Number - 32) / 1.8 : null,
        Unit.Celsius => term.Number is >= 30 and <= 45 ? term.Number : null,
        Unit.None => term.Number is >= 30 and <= 45 ? term.Number : term.Number is >= 86 and <= 113 ? (term.Number - 32) / 1.8 : null,
        _ => null,
    };

    private static SignReading Temp(Term term, string line)
    {
        var celsius = Math.Round(Celsius(term) ?? term.Number, 1, MidpointRounding.AwayFromZero);
        var unit = term.Unit == Unit.Fahrenheit || (term.Unit == Unit.None && term.Number > 60) ? "F" : "C";
        return new SignReading(SignKind.Temperature, "temperature", Doubts.Plain(term.Number) + " " + unit, celsius);
    }

    private static void Words(IReadOnlyList<Term> terms, string line, HashSet<int> used, List<SignReading> signs)
    {
        if (BroughtUp(terms)) signs.Add(new SignReading(SignKind.Vomit, "vomit", null, null));
        for (var i = 0; i < terms.Count; i++)
        {
            if (terms[i].ValueOf(Sense.Sign) is not { } name || used.Contains(i)) continue;
            used.Add(i);
            var value = Describe(terms, i, line, name, used);
            if (Kind(name) is not var (kind, what)) continue;
            // "vomited mucus": what came up, not a second sign.
            if (kind == SignKind.Secretions && i > 0 && signs.Exists(s => s.Kind == SignKind.Vomit) && Enumerable.Range(Math.Max(0, i - 5), Math.Min(5, i)).Any(k => terms[k].Is(Sense.Sign, "vomit") && char.IsLetter(terms[k].Text[0]) && !Enumerable.Range(k, i - k).Any(b => terms[b].Kind == TermKind.Symbol))) { Merge(signs, "vomit", terms[i].Text); continue; }
            if (kind == SignKind.Distress && terms[i].Text.StartsWith("breathing", StringComparison.Ordinal) && signs.Exists(s => s.Kind == SignKind.BreathingRate)) continue;
            if (signs.Exists(s => s.What == what)) { Merge(signs, what, value); continue; }
            signs.Add(new SignReading(kind, what, value ?? DefaultValue(terms[i], name), null));
        }
        if (signs.Exists(s => s.Kind is SignKind.Secretions)) return;
        // "thick yellow", "yellow and plenty" without the word: two describing words, one of them a thickness or a colour.
        var words = Enumerable.Range(0, terms.Count).Where(i => !used.Contains(i) && terms[i].Is(Sense.Quality) && !terms[i].Is(Sense.Again)).ToList();
        // Beside the areas of a session one is enough ("LL4 RL4, yellow now").
        var stuff = terms.Any(t => t.Text is "stuff");
        var ofChest = stuff || Enumerable.Range(1, Math.Max(0, terms.Count - 1)).Any(i => terms[i].Text == "up" && terms[i - 1].Text is "brought" or "bringing" or "brings" or "coughed" or "coughing" or "came" or "coming") || terms.Any(t => t.Is(Sense.SideArea) || t.Is(Sense.Session) || t.Is(Sense.Technique));
        if (words.Count >= (ofChest ? 1 : 2) && words.Exists(i => (terms[i].ValueOf(Sense.Quality) is "thick" or "yellow" or "green" || (words.Count > 1 || stuff) && ofChest && terms[i].Text is "white" or "clear" or "creamy" or "frothy") && !NamesAnother(terms, i)) && !terms.Any(t => t.NamesEvent && !(t.Is(Sense.Sign) || ofChest && (t.Is(Sense.Session) || t.Is(Sense.Technique) || t.Is(Sense.SatLabel) || t.Is(Sense.OxygenLabel) || t.Is(Sense.Air) || t.Kind == TermKind.Reference))))
            signs.Add(new SignReading(SignKind.Secretions, "secretions", string.Join(", ", words.Select(i => line[terms[i].Start..terms[i].End])), null));
    }

    // "brought his feed back up", "brought up her tea", "threw it all up after his bottle", "lost his breakfast"; not "brought up phlegm".
    private static bool BroughtUp(IReadOnlyList<Term> terms)
    {
        for (var i = 0; i + 1 < terms.Count; i++)
        {
            if (terms[i].Text is "lost" && Enumerable.Range(i + 1, Math.Min(4, terms.Count - i - 1)).Any(k => IsEaten(terms[k]) && !Enumerable.Range(i, k - i).Any(b => terms[b].Kind == TermKind.Symbol))) return true;
            if (terms[i].Text is not ("brought" or "brings" or "bringing" or "threw" or "bring" or "fetched")) continue;
            var up = i + 1;
            while (up < terms.Count && up <= i + 6 && terms[up].Text is not ("up" or "back up") && terms[up].Kind != TermKind.Symbol) up++;
            if (up < terms.Count && terms[up].Text is "up" or "back up" && Enumerable.Range(i + 1, Math.Min(up + 4, terms.Count - 1) - i).Any(k => IsEaten(terms[k]))) return true;
        }

        return false;
    }

    private static bool IsEaten(Term term) => term.Is(Sense.Feed) || term.Is(Sense.Milk) || term.Is(Sense.Meal) || term.Is(Sense.Food) || term.Is(Sense.Bottle) || term.Is(Sense.Bolus);

    // "yellow nappy": of something else.
    private static bool NamesAnother(IReadOnlyList<Term> terms, int at) => at + 1 < terms.Count && (terms[at + 1] is { Kind: TermKind.Word, Meanings.Length: 0, Text: not "stuff" and { Length: > 3 } } || terms[at + 1].Is(Sense.None));

    private static string? DefaultValue(Term term, string name) => name switch { "household" => "household ill", "breathing" or "cold" or "gagging" => term.Text, "fever" => term.Text, "energy" => term.Text, "admitted" => term.Text, _ => null };

    private static string? Describe(IReadOnlyList<Term> terms, int at, string line, string name, HashSet<int> used)
    {
        var words = new List<string>();
        var ownAt = 0;
        if (name is "secretions" or "cough" or "vomit" or "unwell")
            for (var i = 0; i < terms.Count; i++)
            {
                if (i == at) ownAt = words.Count;
                if (used.Contains(i) && i != at) continue;
                if (terms[i].Is(Sense.Quality) && Math.Abs(i - at) <= 8 && !Between(terms, i, at)) { words.Add(line[terms[i].Start..terms[i].End]); if (name == "secretions") used.Add(i); }
                else if (terms[i].Kind == TermKind.Times && Math.Abs(i - at) <= 4 && name == "cough" && !(i > 0 && terms[i - 1] is { Kind: TermKind.Quantity, Unit: Unit.Min })) { words.Add(Doubts.Plain(terms[i].Number) + " times"); used.Add(i); }
                else if (terms[i].Is(Sense.WakeCue) && name == "cough") words.Add("woke");
                else if (terms[i].Is(Sense.Since) && name == "cough") words.Add("since");
            }
        if (terms[at].Text is "rattly" or "chesty" or "phlegmy" or "junky" or "snotty" or "gunky" or "plugs" or "plug")
        {
            // In the order written; a describing word right before it belongs to it: "bit chesty".
            if (ownAt > 0 && terms[at - 1].Is(Sense.Quality)) words[ownAt - 1] += " " + terms[at].Text;
            else words.Insert(ownAt, terms[at].Text);
        }
        return words.Count > 0 ? string.Join(", ", words) : null;
    }

    private static bool Between(IReadOnlyList<Term> terms, int a, int b)
    {
        for (var i = Math.Min(a, b) + 1; i < Math.Max(a, b); i++)
            if (terms[i].Is(Sense.Sign) || terms[i].IsSymbol(";")) return true;
        return false;
    }

    private static void Merge(List<SignReading> signs, string what, string? value)
    {
        if (value is null) return;
        var at = signs.FindIndex(s => s.What == what);
        signs[at] = signs[at] with { Value = signs[at].Value is { } old && old != value ? $"{old}, {value}" : value };
    }

    private static (SignKind Kind, string What)? Kind(string name) => name switch
    {
        "cough" => (SignKind.Cough, "cough"),
        "secretions" => (SignKind.Secretions, "secretions"),
        "vomit" => (SignKind.Vomit, "vomit"),
        "distress" => (SignKind.Distress, "distress"),
        "colour" => (SignKind.ColourChange, "colour"),
        "breathing" => (SignKind.Other, "breathing"),
        "unwell" => (SignKind.Unwell, "unwell"),
        "better" => (SignKind.Better, "better"),
        "admitted" => (SignKind.Admitted, "admitted"),
        "discharged" => (SignKind.Discharged, "discharged"),
        "energy" => (SignKind.Other, "energy"),
        "fever" => (SignKind.Unwell, "unwell"),
        "cold" => (SignKind.Other, "other"),
        "household" => (SignKind.Other, "other"),
        "gagging" => (SignKind.Other, "other"),
        _ => null,
    };
}
