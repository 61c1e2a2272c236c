using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Notes;

/// <summary>One dose as a group's words tell it.</summary>
internal sealed class DoseReading
{
    /// <summary>Generic name, or "unknown".</summary>
    public string Medicine { get; set; } = Medicines.Unknown;

    /// <summary>The words that stand for the medicine.</summary>
    public string Written { get; set; } = "";

    /// <summary>Amount as written; null when none.</summary>
    public string? Amount { get; set; }

    /// <summary>"neb", "spacer" as written.</summary>
    public string? Route { get; set; }

    /// <summary>Only "antibiotic" was said.</summary>
    public bool IsAntibioticWord { get; set; }

    /// <summary>A prescription ("5 ml three times a day"), not a dose that was given.</summary>
    public bool Prescribed { get; set; }

    /// <summary>Named after "then": later than the dose before.</summary>
    public bool Later { get; set; }

    /// <summary>Inhaled, so that a bare number is puffs.</summary>
    public bool Inhaled { get; set; }

    /// <summary>Positions in the group of its first and last term.</summary>
    public int First { get; set; }

    /// <summary>Last term's position.</summary>
    public int Last { get; set; }

    /// <summary>Repeated from before ("inhaler same"); null when not.</summary>
    public Term? Reference { get; set; }
}

/// <summary>Reads medicines with their amounts. Device and name side by side are one dose; an amount stands after its medicine, or before it.</summary>
internal static class DoseGrammar
{
    /// <summary>The doses of a group's terms; positions of terms that were used are added to <paramref name="used"/>.</summary>
    public static List<DoseReading> Read(IReadOnlyList<Term> terms, string line, HashSet<int> used)
    {
        var doses = new List<DoseReading>();
        for (var i = 0; i < terms.Count; i++)
        {
            var term = terms[i];
            var head = term.ValueOf(Sense.Medicine);
            var pump = term.Is(Sense.Pump) && FeedGrammar.IsInhaler(terms, i);
            if (head is null && !term.Is(Sense.Device) && !term.Is(Sense.Antibiotic) && !pump && !IsPuffs(terms, i)) continue;
            if (used.Contains(i)) continue;
            if (IsUnitHere(terms, i)) continue;
            used.Add(i);
            var written = line[term.Start..term.End];
            if (doses.Count > 0 && Enumerable.Range(doses[^1].Last + 1, i - doses[^1].Last - 1).Any(k => terms[k].Is(Sense.Correction) && terms[k].Text is not "not")) doses.RemoveAt(doses.Count - 1);
            if (doses.Count > 0 && Joins(terms, doses[^1], i, head))
            {
                var other = head is not null && head != doses[^1].Medicine && doses[^1].Medicine != Medicines.Unknown;
                Join(doses[^1], term, head, written, i);
                // What the key says that a neb holds, with its amount, is not of the medicine written before the word.
                while (other && i + 1 < terms.Count && terms[i + 1].Start < term.End) used.Add(++i);
                if (other) doses[^1].Last = i;
                continue;
            }

            doses.Add(new DoseReading
            {
                Medicine = head ?? Medicines.Unknown,
                Written = written,
                First = i,
                Last = i,
                IsAntibioticWord = head is null && term.Is(Sense.Antibiotic),
                Inhaled = term.Is(Sense.Device) || pump || IsPuffs(terms, i) || (head is not null && Medicines.ClassOf(head) is MedicineClass.Bronchodilator or MedicineClass.InhaledSteroid),
                Route = term.Is(Sense.Device) ? written : null,
                Later = i > 0 && terms.Take(i).Any(t => t.Is(Sense.Then)) && doses.Count > 0,
            });
        }
        if (doses.Count == 0 && Unnamed(terms, line, used) is { } unnamed) doses.Add(unnamed);
        // "two puffs ten minutes before each": the family's one inhaler.
        if (doses.Count == 0 && Enumerable.Range(0, terms.Count).FirstOrDefault(k => terms[k] is { Kind: TermKind.Quantity, Unit: Unit.Puffs }, -1) is >= 0 and var puffs && terms.Any(t => t is { Kind: TermKind.Offset, Text: Offsets.Each or Offsets.Session }) && !used.Contains(puffs))
        {
            used.Add(puffs);
            doses.Add(Puffs(terms, puffs));
        }
        for (var d = 0; d < doses.Count; d++) Details(terms, line, doses, d, used);
        return doses;
    }

    /// <summary>Puffs without the name of what was inhaled.</summary>
    /// <param name="terms">The terms.</param>
    /// <param name="at">Position of the puffs.</param>
    public static DoseReading Puffs(IReadOnlyList<Term> terms, int at) => new() { Written = "puffs", First = at, Last = at, Inhaled = true, Amount = Doubts.Plain(terms[at].Number) + " puffs" };

    // "gave xyz 5 ml": a word that nobody but the family knows, with an amount that only a medicine has.
    private static DoseReading? Unnamed(IReadOnlyList<Term> terms, string line, HashSet<int> used)
    {
        if (terms.Any(t => t.NamesFeed || t.Is(Sense.Flush) || t.Is(Sense.Mouth) || t.Is(Sense.Food) || t.Is(Sense.Session) || t.Is(Sense.Technique))) return null;
        for (var i = 0; i < terms.Count; i++)
        {
            if (terms[i] is not { Kind: TermKind.Quantity, Unit: Unit.Mg or Unit.Mcg or Unit.Puffs or Unit.Ml or Unit.Spoon } amount) continue;
            if (amount.Unit is Unit.Ml or Unit.Spoon && (amount.Number > 40 || !terms.Any(t => t.Is(Sense.Given)))) continue;
            foreach (var at in new[] { i - 1, i + 1, i + 2 })
            {
                if (at < 0 || at >= terms.Count || terms[at] is not { Kind: TermKind.Word, Meanings.Length: 0, Text: { Length: >= 4 } and not "mine" } word || used.Contains(at) || (at == i + 2 && terms[i + 1].Text != "of")) continue;
                used.Add(at);
                var dose = new DoseReading { Medicine = Medicines.Unknown, Written = line[word.Start..word.End], First = Math.Min(at, i), Last = at, Inhaled = amount.Unit == Unit.Puffs };
                // "two puffs of xyz": the amount is the first of its terms, before which nothing is looked for.
                if (i < at) dose.Amount = Text(amount, line, dose);
                return dose;
            }
        }
        return null;
    }

    // "puffs same", "puffs 4": the word alone, without its number before it, stands for the inhaler.
    private static bool IsPuffs(IReadOnlyList<Term> terms, int at) => terms[at].Kind == TermKind.Word && terms[at].Is(Sense.Unit, "puffs") && terms[at].Text is "puffs" or "puff" or "pufs";

    // "1 neb": the word is the unit of the amount.
    private static bool IsUnitHere(IReadOnlyList<Term> terms, int at) => terms[at].Kind == TermKind.Quantity;

    private static bool Joins(IReadOnlyList<Term> terms, DoseReading dose, int at, string? head)
    {
        var between = Enumerable.Range(dose.Last + 1, at - dose.Last - 1).Select(k => terms[k]).ToList();
        if (between.Exists(t => (t.Is(Sense.And) && !(t.Text == "with" && head is not null && dose.Medicine == Medicines.Unknown)) || t.Is(Sense.Then) || t.Kind == TermKind.Time)) return false;
        // "azithromycin, 3 ml once a day. He had azithromycin at noon": prescribed, then given.
        if (between.Exists(t => t.IsSymbol(";")) && between.Exists(t => t.Is(Sense.Given))) return false;
        if (head is not null && dose.Medicine != Medicines.Unknown) return dose.Medicine == head
            // "3% saline neb", where the key says what a neb holds unless something else is written.
            || between.Count == 0 && terms[at].Mended?.ToLowerInvariant() is "neb" or "nebs" or "nebuliser" or "nebulizer" or "inhaler" or "puffer";
        // "inhaler 6.50 (2 puffs salb)": a name in brackets, or after a comma without a time of its own, tells what the device held.
        return between.TrueForAll(t => t.Kind is TermKind.Quantity or TermKind.Number or TermKind.Times || t.IsSymbol("(") || t.IsSymbol(",") || t.IsSymbol(":") || t.Kind == TermKind.Word && !t.NamesEvent)
            && !(head is null && dose.Medicine != Medicines.Unknown && between.Exists(t => t.IsSymbol(",")));
    }

    private static void Join(DoseReading dose, Term term, string? head, string written, int at)
    {
        if (head is not null && dose.Medicine == Medicines.Unknown) { dose.Medicine = head; if (!dose.Written.EndsWith(written, StringComparison.Ordinal)) dose.Written += " " + written; }
        if (term.Is(Sense.Device)) { dose.Route ??= written; dose.Inhaled = true; }
        dose.IsAntibioticWord = false;
        dose.Last = at;
    }

    private static void Details(IReadOnlyList<Term> terms, string line, List<DoseReading> doses, int index, HashSet<int> used)
    {
        var dose = doses[index];
        var until = index + 1 < doses.Count ? doses[index + 1].First : terms.Count;
        var given = -1;
        for (var i = dose.First; i < until; i++)
        {
            if (terms[i].Is(Sense.Frequency) || (terms[i].Kind == TermKind.Times && FrequencyFollows(terms, i)) || (terms[i] is { Kind: TermKind.Quantity, Unit: Unit.Day } && !(i + 1 < until && terms[i + 1].Text is "left" or "to go" or "to" or "more" or "now"))) { dose.Prescribed = true; used.Add(i); }
            if (terms[i].Is(Sense.DoseRoute)) { dose.Route ??= line[terms[i].Start..terms[i].End]; used.Add(i); }
            if (terms[i].Is(Sense.Given) && i > dose.First) given = i;
            if (terms[i].Kind == TermKind.Reference && dose.Reference is null && !StopsDose(terms, dose.Last, i)) { dose.Reference = terms[i]; used.Add(i); }
        }
        if (given > 0 && Amount(terms, line, given + 1, until, dose, used) is { } stated && stated.Unit is not Unit.None) { dose.Amount = stated.Text; MarkConcentration(terms, dose.First, given, used); }
        else if (Amount(terms, line, dose.First + 1, until, dose, used) is { } after) dose.Amount = after.Text;
        else if (Before(terms, line, index == 0 ? 0 : doses[index - 1].Last + 1, dose, used) is { } before) dose.Amount = before;
    }

    private static bool StopsDose(IReadOnlyList<Term> terms, int last, int at) => Enumerable.Range(Math.Min(last, at), Math.Abs(at - last)).Any(k => terms[k].Is(Sense.Session) || terms[k].Is(Sense.Technique) || terms[k].IsSymbol(";") || terms[k].Is(Sense.SatLabel));

    private static void MarkConcentration(IReadOnlyList<Term> terms, int from, int to, HashSet<int> used)
    {
        for (var i = from; i < to; i++)
            if (terms[i].Kind is TermKind.Quantity or TermKind.Parts or TermKind.Number) used.Add(i);
    }

    private static bool FrequencyFollows(IReadOnlyList<Term> terms, int at) => at + 1 < terms.Count && terms[at + 1].Is(Sense.Frequency);

    private static (string Text, Unit Unit)? Amount(IReadOnlyList<Term> terms, string line, int from, int until, DoseReading dose, HashSet<int> used)
    {
        string? strength = null;
        for (var i = from; i < until; i++)
        {
            var term = terms[i];
            if (used.Contains(i)) continue;
            // "125mg/5ml, 5mls": the strength of the syrup, not the dose.
            if (term is { Kind: TermKind.Quantity, Unit: Unit.Mg or Unit.Mcg } && i + 2 < until && (terms[i + 1].IsSymbol("/") || terms[i + 1].Text is "per" or "in") && terms[i + 2] is { Kind: TermKind.Quantity, Unit: Unit.Ml })
            {
                used.Add(i);
                used.Add(i + 2);
                i += 2;
                strength = line[term.Start..terms[i].End];
                continue;
            }
            if (IsAmount(term, dose, (i > dose.First && i <= dose.Last + 1) || (i == dose.Last + 2 && terms[i - 1].Kind == TermKind.Word && terms[i - 1].Meanings.Length == 0) || (i > 0 && terms[i - 1].Is(Sense.DoseRoute)), FrequencyFollows(terms, i)))
            {
                used.Add(i);
                return (Text(term, line, dose), term.Unit);
            }
            if (term.Is(Sense.Session) || term.Is(Sense.Technique) || term.Is(Sense.SatLabel) || term.Is(Sense.Feed) || term.Is(Sense.TempLabel) || (term.IsSymbol(";") && !(i + 1 < until && terms[i + 1] is { Kind: TermKind.Quantity, Unit: Unit.Ml or Unit.Mg or Unit.Puffs }))) break;
        }
        return strength is null ? null : (strength, Unit.Mg);
    }

    private static string? Before(IReadOnlyList<Term> terms, string line, int from, DoseReading dose, HashSet<int> used)
    {
        for (var i = dose.First - 1; i >= from && i >= dose.First - 5; i--)
        {
            if (used.Contains(i)) continue;
            if (terms[i] is { Kind: TermKind.Quantity, Unit: Unit.Puffs or Unit.Mg or Unit.Mcg or Unit.G or Unit.Ml or Unit.Spoon or Unit.Neb } or { Kind: TermKind.Times } && !terms.Skip(i).Take(dose.First - i).Any(t => t.IsSymbol(";")))
            {
                used.Add(i);
                return Text(terms[i], line, dose);
            }
            if (terms[i].Kind is TermKind.Symbol or TermKind.Time || terms[i].NamesEvent) break;
        }
        return null;
    }

    private static bool IsAmount(Term term, DoseReading dose, bool beside, bool counted) => term.Kind switch
    {
        TermKind.Quantity => term.Unit is Unit.Puffs or Unit.Mg or Unit.Mcg or Unit.G or Unit.Ml or Unit.Spoon or Unit.Neb,
        TermKind.Times => dose.Inhaled && !counted,
        TermKind.Number => beside && term.Number > 0 && (term.Number < 40 || !term.IsWhole),
        _ => false,
    };

    private static string Text(Term term, string line, DoseReading dose)
    {
        var number = Doubts.Plain(term.Number);
        if (term.Unit == Unit.Puffs || term.Kind == TermKind.Times) return number == "1" ? "1 puff" : number + " puffs";
        if (term.Kind == TermKind.Number) return dose.Inhaled && term.IsWhole && dose.Route?.StartsWith("neb", StringComparison.OrdinalIgnoreCase) != true ? number + (number == "1" ? " puff" : " puffs") : number;
        // The unit as the family writes it, the number with a decimal point.
        var written = term.Mended is null ? line[term.Start..term.End] : "";
        var unit = new string([.. written.Reverse().TakeWhile(c => char.IsLetter(c) || c == 'µ').Reverse()]);
        // "five mils" told to a telephone is 5 ml.
        return number + " " + (unit.Length == 0 || char.IsLetter(written[0]) && unit is "mils" or "mls" or "mil" ? UnitName(term.Unit) : unit);
    }

    private static string UnitName(Unit unit) => unit switch { Unit.Ml => "ml", Unit.Mg => "mg", Unit.Mcg => "mcg", Unit.G => "g", Unit.Neb => "neb", _ => "" };
}
