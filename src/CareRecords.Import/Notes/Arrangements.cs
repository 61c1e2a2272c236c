using CareRecords.Import.Reading;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Notes;

/// <summary>
/// What a family has arranged once for all and says above its first day or in a key: which medicine its "neb" or "inhaler" is, which places of the
/// chest "each spot" means, and in which order bare minutes ("3/3/2/2") stand.
/// </summary>
internal sealed partial class Arrangements
{
    private readonly Dictionary<string, HashSet<string>> _devices = new(StringComparer.Ordinal);
    private readonly Dictionary<string, HashSet<string>> _amounts = new(StringComparer.Ordinal);
    private List<(Side Side, ChestArea Area)> _places = [];
    private Technique _technique = Technique.Unknown;
    private List<AreaMinutes> _usual = [];

    /// <summary>What a session is when nothing more is said of it, where the notes say so ("how I do his chest, so I don't have to say it every time"); null when they do not.</summary>
    public List<AreaMinutes>? Ordinary { get; private set; }

    /// <summary>The one session that is told with its areas and minutes above the first day or in a key; empty when none is.</summary>
    public IReadOnlyList<AreaMinutes> Whole => _usual.Select(a => a.Area).Distinct().Count() > 1 ? _usual : [];

    /// <summary>Whether the child is fed by tube, as the notes say above: "feed off" is then of the tube.</summary>
    public bool TubeFed { get; private set; }

    /// <summary>Whether every feed is by tube, as the notes say above ("all her milk goes down the tube", "feeds are g-tube").</summary>
    public bool AllByTube { get; private set; }

    /// <summary>The one part of the chest that a session is of where the notes say above that it is ("physio is me clapping, bottom left and bottom right"); unknown when they do not.</summary>
    public ChestArea OnlyArea { get; private set; }

    /// <summary>The technique that a session is where the notes say so above ("physio is percussion with a cupped hand"); unknown when they do not.</summary>
    public Technique OnlyTechnique { get; private set; }

    /// <summary>Minutes told of sides alone put in the one part of the chest, and by the technique, that the notes name above.</summary>
    public List<AreaMinutes> Filled(List<AreaMinutes> areas)
    {
        if (OnlyArea == ChestArea.Unknown && OnlyTechnique == Technique.Unknown) return areas;
        // "3+3": the left and the right of the one part.
        if (OnlyArea != ChestArea.Unknown && areas is [{ Side: Side.Unknown, Area: ChestArea.Unknown, Minutes: not null, Technique: not Technique.Vibration } left, { Side: Side.Unknown, Area: ChestArea.Unknown, Minutes: not null, Technique: not Technique.Vibration } right])
            areas = [left with { Side = Side.Left }, right with { Side = Side.Right }];
        return areas.ConvertAll(a => a.Technique is Technique.Vibration or Technique.Other ? a : a with
        {
            Area = a.Area == ChestArea.Unknown && a.Side is Side.Left or Side.Right && OnlyArea != ChestArea.Unknown ? OnlyArea : a.Area,
            Technique = a.Technique == Technique.Unknown ? OnlyTechnique : a.Technique,
        });
    }

    private readonly Dictionary<string, LocalTime> _times = new(StringComparer.Ordinal);

    /// <summary>When a session of a part of the day is, where the notes say it once for all ("morning is 6.30 and evening is 6 unless I write different"); null when they do not.</summary>
    public LocalTime? TimeOf(string part) => _times.TryGetValue(part, out var time) ? time : null;

    private void Times(string line)
    {
        if (!Always().IsMatch(line)) return;
        foreach (System.Text.RegularExpressions.Match said in PartAndTime().Matches(line))
        {
            var part = said.Groups[1].Value.ToLowerInvariant() switch { "am" => "morning", "pm" => "evening", var named => named };
            if (ClockReader.Read(said.Groups[2].Value).TryGet(out var clock)) _times[part] = (clock.Start.Half == HalfOfDay.Unknown ? clock.Start.In(part == "morning" ? HalfOfDay.Am : HalfOfDay.Pm) : clock.Start).Time;
        }
    }

    [System.Text.RegularExpressions.GeneratedRegex(@"\b(morning|evening|am|pm)(?: one| session| physio| chest)? (?:is|=|at|always at) (\d{1,2}(?:[.:]\d{2})?(?: ?[ap]m)?)(?![.:]?\d)", System.Text.RegularExpressions.RegexOptions.IgnoreCase | System.Text.RegularExpressions.RegexOptions.CultureInvariant)]
    private static partial System.Text.RegularExpressions.Regex PartAndTime();

    // "physio = cupped hand, low left and low right", "Clapping we make always on lower part of back": what a session is, in a sentence without minutes of its own.
    private void Sessions(string line)
    {
        if (OnlyArea != ChestArea.Unknown || OnlyTechnique != Technique.Unknown) return;
        foreach (var sentence in line.Split(". "))
        {
            var terms = CellTerms.Read(sentence);
            if (AllByOneTechnique(sentence, terms)) { OnlyTechnique = Technique.Percussion; return; }
            var word = terms.FindIndex(t => t.Is(Sense.Session) || t.Is(Sense.Technique));
            if (word is < 0 or > 1 || terms.FindIndex(word, t => t.Text is "is" or "means" or "always" or "=") is not (>= 0 and var says) || says - word > 3 || terms.Exists(t => t.Kind == TermKind.Time || t.Is(Sense.Frequency) || t.Is(Sense.Plan))) continue;
            var areas = AreaGrammar.Read(terms).Areas.Where(a => a.Technique != Technique.Vibration).ToList();
            OnlyTechnique = terms.Exists(t => t.Is(Sense.Technique, "percussion")) && !terms.Exists(t => t.Is(Sense.Technique, "vibration") || t.Is(Sense.Technique, "other")) ? Technique.Percussion : Technique.Unknown;
            if (areas.Select(a => a.Area).Where(a => a != ChestArea.Unknown).Distinct().ToList() is [var only] && only is ChestArea.Lower or ChestArea.Upper && !areas.Exists(a => a.Area == ChestArea.Unknown && a.Side == Side.Unknown && a.Minutes is not null)) OnlyArea = only;
            return;
        }
    }

    // "all clapping", "I do clapping both sides always".
    private static bool AllByOneTechnique(string sentence, List<Term> terms)
    {
        var technique = terms.FindIndex(t => t.Is(Sense.Technique, "percussion"));
        return technique >= 0 && AllOrAlways().IsMatch(sentence) && terms.Count <= 9
            && !terms.Exists(t => t.Is(Sense.Technique, "vibration") || t.Is(Sense.Technique, "other") || t.Is(Sense.Area) || t.Is(Sense.SideArea) || t.Is(Sense.Not) || t.Is(Sense.Skip) || t.Kind is TermKind.Time or TermKind.Number or TermKind.Quantity or TermKind.Range or TermKind.Parts);
    }

    [System.Text.RegularExpressions.GeneratedRegex(@"\b(all|always|every time|each time|only)\b|^\W*(?:i|we) (?:do|use) ", System.Text.RegularExpressions.RegexOptions.IgnoreCase | System.Text.RegularExpressions.RegexOptions.CultureInvariant)]
    private static partial System.Text.RegularExpressions.Regex AllOrAlways();

    /// <summary>Whether saturations are in air where nothing else is said, as the notes say above.</summary>
    public bool InAir { get; private set; }

    /// <summary>Takes in a line that tells of no event: one above the first day, or a key.</summary>
    public void Take(TermReader reader, string line, bool isKey)
    {
        // The word that a key explains would be replaced by its own explanation.
        var means = isKey ? line[(line.IndexOfAny(['=', ':']) + 1)..] : line[LinePrefix.Read(line, reader).ContentStart..];
        var terms = Offsets.Reduce(reader.Read(means));
        if (Ordinary is null && HowItIsDone().IsMatch(line) && AreaGrammar.Read(terms).Areas is var done && done.Count(a => a.Minutes is not null) > 1) Ordinary = done;
        InAir |= AirByDefault.Says(line);
        Times(line);
        Sessions(line);
        AllByTube |= line.Split(". ").Any(s => CellTerms.Read(s) is var told && told.Exists(t => t.Is(Sense.Feed) || t.Is(Sense.Milk)) && told.Exists(t => t.Is(Sense.Route)) && told.Exists(t => t.Text is "all" or "always" or "are" or "only" or "every") && !told.Exists(t => t.Is(Sense.Mouth) || t.Is(Sense.Bottle) || t.Kind is TermKind.Time or TermKind.Quantity));
        TubeFed |= terms.Exists(t => t.Is(Sense.Route) || t.Is(Sense.Pump));
        if (terms.Exists(t => t.Kind == TermKind.Time)) return;
        Devices(CellTerms.Read(line), line);
        Places(terms);
    }

    /// <summary>"physio = bottoms then tops, both sides" orders the places of every session, and names none where the word stands: the word without them.</summary>
    public static FamilyWord WithoutOrder(FamilyWord word)
    {
        if (CellTerms.Read(word.Word) is not [{ } own] || !own.Is(Sense.Session) && !own.Is(Sense.Technique)) return word;
        var means = CellTerms.Read(word.Means);
        // "Physio here means percussion on lower chest, left and right", "pats = cupping, always at the bottom unless I say": what stands where no other place is named (OnlyArea keeps it).
        if (means.Count(t => t.Is(Sense.Area) || t.Is(Sense.SideArea)) < (UnlessSaid().IsMatch(word.Means) || means.Exists(t => t.Is(Sense.Technique)) && means.Exists(t => t.Is(Sense.Area)) ? 1 : 2) || means.Exists(t => t.Kind is TermKind.Number or TermKind.Quantity or TermKind.Range or TermKind.Parts)) return word;
        return word with { Means = !own.Is(Sense.Technique) && means.Find(t => t.Is(Sense.Technique)) is { } technique ? $"{word.Word} {word.Means[technique.Start..technique.End]}" : word.Word };
    }

    [System.Text.RegularExpressions.GeneratedRegex(@"\b(unless|always|normally|usually)\b", System.Text.RegularExpressions.RegexOptions.IgnoreCase | System.Text.RegularExpressions.RegexOptions.CultureInvariant)]
    private static partial System.Text.RegularExpressions.Regex UnlessSaid();

    /// <summary>Takes in a sentence of any line that says what a device always holds: "his nebs are always salbutamol 2.5 mg unless I say".</summary>
    public void TakeAlways(string line)
    {
        foreach (var sentence in line.Split(". ")) if (IsAlways().IsMatch(sentence)) Devices(CellTerms.Read(sentence), sentence);
    }

    /// <summary>Whether words say what a device always holds, and tell of no dose.</summary>
    public static bool SaysAlways(string words) => IsAlways().IsMatch(words);

    [System.Text.RegularExpressions.GeneratedRegex(@"\b(nebs?|nebuli[sz]ers?|puffs?|puffers?|inhalers?|pumps?) (is|are) always\b", System.Text.RegularExpressions.RegexOptions.IgnoreCase | System.Text.RegularExpressions.RegexOptions.CultureInvariant)]
    private static partial System.Text.RegularExpressions.Regex IsAlways();

    /// <summary>The medicine that a device holds ("neb", "puffer"); null when the family has not said, or has named several.</summary>
    public string? MedicineOf(string device) => DeviceOf(device) is { } kind && _devices.TryGetValue(kind, out var held) && held.Count == 1 ? held.First() : null;

    /// <summary>How much of a medicine is given each time ("always 2 puffs"); null when the family has not said, or says several.</summary>
    public string? AmountOf(string medicine) => _amounts.TryGetValue(medicine, out var said) && said.Count == 1 ? said.First() : null;

    /// <summary>Minutes without places ("3/3/2/2", "3 min each spot") put in the places that the family has named, in its order; the areas as they are when they do not fit.</summary>
    public List<AreaMinutes> Place(List<AreaMinutes> areas, AreaReading words)
    {
        if (_places.Count == 0) return areas;
        var bare = areas.Where(a => a is { Side: Side.Unknown, Area: ChestArea.Unknown } && a.Technique != Technique.Vibration).ToList();
        if (bare.Count == _places.Count && (words.AreasNotNamed || words.EverySpot.Contains(bare[0].Technique)))
        {
            var placed = bare.Zip(_places, (a, p) => a with { Side = p.Side, Area = p.Area, Technique = a.Technique == Technique.Unknown ? _technique : a.Technique }).Where(a => a.Minutes != 0);
            areas = [.. placed, .. areas.Except(bare)];
        }
        var shaken = areas.Where(a => a is { Side: Side.Unknown, Area: ChestArea.Unknown, Technique: Technique.Vibration, Minutes: not null }).ToList();
        if (shaken.Count == _places.Count) areas = [.. areas.Except(shaken), .. shaken.Zip(_places, (a, p) => a with { Side = p.Side, Area = p.Area }).Where(a => a.Minutes != 0)];
        return [.. areas.SelectMany(a => a is { Side: Side.Unknown, Area: ChestArea.Unknown, Minutes: not null } && words.EverySpot.Contains(a.Technique)
            ? _places.Select(p => a with { Side = p.Side, Area = p.Area }) : [a])];
    }

    /// <summary>"Just the bottoms", without minutes: the usual session's minutes there, and only there; null when that is not what is said.</summary>
    public List<AreaMinutes>? Narrowed(AreaReading words) => _usual.Count > 0 && words is { Only: true, Areas.Count: > 0 } && words.Areas.TrueForAll(a => a.Minutes is null && a.Area is ChestArea.Lower or ChestArea.Upper)
        ? AreaChanges.Combine(_usual, words) : null;

    // "inhaler salb 4 puffs before", "saline neb (3%)", "the puffer is salbutamol".
    private void Devices(List<Term> terms, string line)
    {
        var doses = DoseGrammar.Read(terms, line, []);
        foreach (var dose in doses)
        {
            // "puffer = his salbutamol 4 puffs", "N is the nebuliser, salbutamol 2.5 mg", "always 2 puffs"; "inhaler 4 puffs 15 min before" arranges the time.
            if (dose is not { Amount: { } amount, Prescribed: false } || dose.Medicine == Medicines.Unknown || !dose.Inhaled) continue;
            if (!Always().IsMatch(line) && !(dose.Last + 1 < terms.Count && Defines(terms[dose.Last + 1])) && !terms.Take(dose.First).TakeLast(4).Any(Defines)) continue;
            if (!_amounts.TryGetValue(dose.Medicine, out var said)) _amounts[dose.Medicine] = said = new(StringComparer.Ordinal);
            said.Add(amount);
        }
        // "Puffs are salbutamol with the chamber."
        for (var i = 0; i + 2 < terms.Count; i++)
            if (terms[i].Is(Sense.Unit, "puffs") && terms[i].Text.Length > 2 && terms[i + 1].Text is "is" or "are" && terms[i + 2].ValueOf(Sense.Medicine) is { } puffed)
                (_devices.TryGetValue("inhaler", out var inhaled) ? inhaled : _devices["inhaler"] = new(StringComparer.Ordinal)).Add(puffed);
        for (var i = 0; i < doses.Count; i++)
        {
            var (dose, device) = (doses[i], doses[i].Route ?? doses[i].Written);
            if (dose.Medicine == Medicines.Unknown && i + 1 < doses.Count && doses[i + 1].Medicine != Medicines.Unknown && doses[i + 1].First - dose.Last <= 3
                && terms.GetRange(dose.Last + 1, doses[i + 1].First - dose.Last - 1).TrueForAll(t => t.Text is "is" or "are" or "=" or ":" or "the" or "of" or "always" or "all" or "with")) dose = doses[++i];
            if (dose.Medicine == Medicines.Unknown || DeviceOf(device) is not { } kind) continue;
            if (!_devices.TryGetValue(kind, out var held)) _devices[kind] = held = new(StringComparer.Ordinal);
            // "saline neb (3%, 4 ml)": the strength stands after it.
            held.Add(dose.Medicine == "saline" && Strength().Match(line) is { Success: true } strength ? $"hypertonic saline {strength.Groups[1].Value}%" : dose.Medicine);
        }
    }

    [System.Text.RegularExpressions.GeneratedRegex(@"\b(how (i|we) do|if i (say|write|put)( i)? (did|do)|(every|each) (time|session) (is|we do|i do)|every session the same)\b", System.Text.RegularExpressions.RegexOptions.IgnoreCase | System.Text.RegularExpressions.RegexOptions.CultureInvariant)]
    private static partial System.Text.RegularExpressions.Regex HowItIsDone();

    private static bool Defines(Term term) => term.Text is "=" or "is" or "are";

    [System.Text.RegularExpressions.GeneratedRegex(@"\b(always|unless|every time|each time|if (it'?s|its) different)\b", System.Text.RegularExpressions.RegexOptions.IgnoreCase | System.Text.RegularExpressions.RegexOptions.CultureInvariant)]
    private static partial System.Text.RegularExpressions.Regex Always();

    [System.Text.RegularExpressions.GeneratedRegex(@"\b([367]) ?%", System.Text.RegularExpressions.RegexOptions.CultureInvariant)]
    private static partial System.Text.RegularExpressions.Regex Strength();

    private static string? DeviceOf(string words)
    {
        if (words.Contains("neb", StringComparison.OrdinalIgnoreCase)) return "nebuliser";
        if (words.StartsWith("puff", StringComparison.OrdinalIgnoreCase)) return "inhaler";
        return CellTerms.Read(words).Exists(t => t.Is(Sense.Device)) && !DoseMemory.IsColour(words) ? "inhaler" : null;
    }

    // "always left bottom / right bottom / left top / right top", or the places of the usual session.
    private void Places(List<Term> terms)
    {
        var read = AreaGrammar.Read(terms);
        var named = read.Areas.Where(a => a.Technique != Technique.Vibration && a is { Side: Side.Left or Side.Right, Area: ChestArea.Lower or ChestArea.Upper or ChestArea.Middle }).ToList();
        // "LL/RL/LU/RU (left lower, right lower, left upper, right upper)": the same order twice.
        if (named.Count >= 4 && named.Count % 2 == 0 && named.Take(named.Count / 2).Select(a => (a.Side, a.Area)).SequenceEqual(named.Skip(named.Count / 2).Select(a => (a.Side, a.Area)))) named = named.GetRange(0, named.Count / 2);
        if (named.Count < 2 || named.Count != named.Select(a => (a.Side, a.Area)).Distinct().Count() || named.Count < read.Areas.Where(a => a.Technique != Technique.Vibration).Select(a => (a.Side, a.Area)).Distinct().Count()) return;
        // An order said for its own sake has no minutes; it holds before that of a usual session.
        var order = named.TrueForAll(a => a.Minutes is null);
        if (!order && _usual.Count == 0) _usual = read.Areas.FindAll(a => a is not { Side: Side.Unknown, Area: ChestArea.Unknown, Technique: not Technique.Vibration });
        if (_places.Count > 0 && !order) return;
        _places = named.ConvertAll(a => (a.Side, a.Area));
        _technique = terms.Exists(t => t.Is(Sense.Technique, "percussion")) ? Technique.Percussion : Technique.Unknown;
    }
}
