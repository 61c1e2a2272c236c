using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>Reads one heading.</summary>
internal static partial class HeadingReader
{
    [System.Text.RegularExpressions.GeneratedRegex(@"\s*\((?:leave |if )?(?:blank|empty)\b[^()]*\)", System.Text.RegularExpressions.RegexOptions.IgnoreCase)]
    private static partial System.Text.RegularExpressions.Regex HowToFillIn();

    // "Chest am (3 mins each lower)", "8am PT clap: lower L 3, lower R 3", "CPT AM - clap LL RL 3 min each"
    [System.Text.RegularExpressions.GeneratedRegex(@"^(.*[^\s:])\s*(?:\(([^()]*\d\s*min[^()]*)\)|(?::|\s[-–])\s+(\D*\b\d.*))\s*$", System.Text.RegularExpressions.RegexOptions.IgnoreCase)]
    private static partial System.Text.RegularExpressions.Regex Bracket();

    /// <summary>What a heading, under the heading of its group where there is one, says of its column.</summary>
    public static ColumnMeaning Read(string heading, string? groupHeading = null)
    {
        // "Time it happened (blank = right now)": how to fill it in says nothing of what it holds.
        if (heading.Contains('(', StringComparison.Ordinal)) heading = HowToFillIn().Replace(heading, "");
        if (Bracket().Match(heading) is { Success: true } told && Read(told.Groups[1].Value, groupHeading) is { Role: Role.Session } session && (told.Groups[2].Success ? told.Groups[2].Value : told.Groups[3].Value) is var minutes && AreasReader.Read(minutes, FamilyWords.None) is { Outcome: Outcome.Certain, Value.Areas: { Count: > 0 } each } && each.All(a => a.Minutes is not null))
        {
            // "AM tapping (3 min lower, 2 min upper, each side)": by the technique that the heading names.
            var by = Lexicon.Find(told.Groups[1].Value, out _).Select(k => k.Concept).ToHashSet() is var concepts && concepts.Contains(Concept.Percussion) && !concepts.Contains(Concept.Vibration) ? Technique.Percussion : Technique.Unknown;
            return session with { Heading = session.Heading + " (" + minutes + ")", EachSession = [.. each.Select(a => a.Technique == Technique.Unknown ? a with { Technique = by } : a)] };
        }

        if (FormQuestions.Plain(heading) is { } plain) return Read(plain, groupHeading) with { Areas = AreaNames.In(heading) };
        var own = Lexicon.Find(heading, out _).ToList();
        var group = groupHeading is null ? [] : Lexicon.Find(groupHeading, out _);
        var role = RoleOf(own, heading);
        // "Chest, feeds, meds": its words say themselves what they are of.
        if (role == Role.Note && own.Exists(k => k.Concept == Concept.Session) && own.Exists(k => k.Concept == Concept.Medicine)) heading = "notes";
        // "time" under "Physio" is the physio's time; "ml" under "Feed" needs no help.
        var phaseOnly = own.Count > 0 && own.TrueForAll(k => k.Concept is Concept.Before or Concept.After or Concept.During) && !group.Any(k => k.Concept is Concept.Saturation or Concept.Pulse or Concept.Oxygen);
        if (role is Role.Time or Role.Start or Role.End or Role.Amount or Role.Unknown && !phaseOnly && group.Any(k => IsEvent(k.Concept)))
            role = RoleOf([.. group.Where(k => IsEvent(k.Concept)), .. own], heading) is var joined && role == Role.Amount && joined != Role.Millilitres ? role : joined;
        if (role == Role.Unknown && group.Count > 0 && !phaseOnly) role = UnderWord(own, group, groupHeading!);
        // "R side | L side" under "Vibs (mins)": minutes of that side.
        if (role == Role.Side && own.Concat(group).Any(k => k.Concept is Concept.Percussion or Concept.Vibration or Concept.Minutes) && AreaNames.In(heading) is [{ Side: not Side.Unknown }]) role = Role.Area;
        // "Salbutamol 2 puffs 06:30" over ticks: the dose of that time.
        if (role == Role.Amount && own.Exists(k => k.Medicine is not null) && HeadingTime.Read(heading) is not null) role = Role.Dose;
        // "tube feed 150 ml, start": when it began; how much is said here.
        if (role == Role.Millilitres && own.Exists(k => k.Concept == Concept.Start) && own.Exists(k => k.Concept == Concept.Feed) && AmountIn(heading) is not null) role = Role.FeedStart;
        // "4pm tube feed (ml)": the feed of that time.
        if (role == Role.Millilitres && own.Exists(k => k.Concept is Concept.Feed or Concept.Bolus) && HeadingTime.Read(heading) is not null) role = Role.Feed;
        var areas = role is Role.Area or Role.Session or Role.Detail ? AreaNames.Under(heading, groupHeading) : [];
        if (role == Role.Area && areas.Count == 0) role = Role.Unknown;
        if (role == Role.Area) areas = [.. areas.Select(a => a.Technique == Technique.Unknown ? a with { Technique = Technique.Percussion } : a)];
        var all = own.Concat(group).Select(k => k.Concept).ToHashSet();
        return new ColumnMeaning(groupHeading is null ? heading : $"{groupHeading} {heading}", role)
        {
            Phase = PhaseOf(all) is not CheckPhase.None and var named ? named
                // "How many litres was he on": no beginning.
                : role is not (Role.Saturation or Role.Pulse or Role.Oxygen) || own.Any(k => k.Concept == Concept.OxygenChange) || role == Role.Oxygen && Lexicon.Split(heading).Any(w => w is "many" or "much") ? CheckPhase.None
                : own.Any(k => k.Concept == Concept.Start) && !own.Any(k => k.Concept == Concept.End) ? CheckPhase.Before : own.Any(k => k.Concept == Concept.End) && !own.Any(k => k.Concept == Concept.Start) ? CheckPhase.After : CheckPhase.None,
            Half = all.Contains(Concept.Morning) ? HalfOfDay.Am : all.Contains(Concept.Evening) ? HalfOfDay.Pm : HeadingTime.Read(heading)?.Half ?? HalfOfDay.Unknown,
            Areas = areas,
            Medicine = own.Concat(group).FirstOrDefault(k => k.Medicine is not null).Medicine,
            MedicineWords = role == Role.Dose ? MedicineName.In(groupHeading is not null && !own.Any(IsOfMedicine) && group.Any(IsOfMedicine) && own.Count > 0 ? groupHeading : heading) : null,
            Part = PartIn(heading) ?? (groupHeading is null ? null : PartIn(groupHeading)),
            Route = all.Contains(Concept.Pump) ? FeedRoute.PumpedTube : all.Contains(Concept.Bolus) ? FeedRoute.BolusTube
                : all.Contains(Concept.Tube) ? FeedRoute.Tube : all.Contains(Concept.Oral) ? FeedRoute.Oral : FeedRoute.Unknown,
            DefaultAmount = role is Role.Dose or Role.Amount ? AmountIn(heading) : null,
            At = HeadingTime.Read(heading) ?? (groupHeading is null ? null : HeadingTime.Read(groupHeading)),
            Unit = UnitOf(heading) ?? (groupHeading is null ? null : UnitOf(groupHeading)),
        };
    }

    // "each side" under "Shaking", "L/min" under "today" under "Oxygen", "today" alone under "Sats".
    private static Role UnderWord(List<Known> own, IReadOnlyList<Known> group, string groupHeading) =>
        RoleOf([.. own, .. group], groupHeading);

    private static Role RoleOf(IReadOnlyList<Known> words, string heading)
    {
        var has = words.Select(w => w.Concept).ToHashSet();
        // "who | did | minutes": a word that headings of forms have in another sense ("What time did it happen?").
        if (Lexicon.Split(heading) is ["did"]) return Role.Kind;
        if (has.Count == 0) return Role.Unknown;
        if (has.Contains(Concept.Total)) return Role.Ignore;
        if (has.SetEquals([Concept.Withdrawn])) return Role.Withdrawn;
        // "Extra chest if sick": one more of what it names.
        if (has.Contains(Concept.Session) && Lexicon.Split(heading) is ["extra", ..]) has.ExceptWith([Concept.Note, Concept.Vomit]);
        if (AsksForDay(Lexicon.Split(heading))) return Role.Date;
        // "What time was it?": "was" is no German "what".
        if (Lexicon.Split(heading) is ["what" or "when", ..] && has.Contains(Concept.Time)) has.Remove(Concept.Kind);
        if (has.Contains(Concept.Saturation)) return Role.Saturation;
        if (has.Contains(Concept.Pulse)) return Role.Pulse;
        var places = AreaNames.In(heading);
        // "How many minutes did you clap the right upper side?": of that place.
        if (has.Contains(Concept.Side) && !(has.Contains(Concept.Minutes) && places.Any(a => a.Area != ChestArea.Unknown))) return Role.Side;
        // "Did he cough anything up?"
        if (has.Contains(Concept.Cough) && places is [{ Side: Records.Side.Unknown, Area: ChestArea.Upper }]) return Role.Secretions;
        // "Top temp" is no upper chest.
        if (has.Contains(Concept.Temperature) && !has.Overlaps([Concept.Session, Concept.Percussion, Concept.Vibration, Concept.Oxygen])) return Role.Temperature;
        if (places.Count > 0 && (!has.Contains(Concept.Session) || IsPlace(heading) || has.Contains(Concept.Minutes)) && !has.Contains(Concept.Oxygen)) return Role.Area;
        // "O2 L/min (before + after)": of both readings.
        if (!has.Contains(Concept.Oxygen) && (has.Contains(Concept.Phase) || has.IsSupersetOf([Concept.Before, Concept.After]))) return Role.Phase;
        if (has.Contains(Concept.Oxygen) || has.Contains(Concept.OxygenChange)) return Role.Oxygen;
        if (has.Contains(Concept.Temperature)) return Role.Temperature;
        if (has.Contains(Concept.Breathing)) return Role.Breathing;
        // "Chest, feeds, meds": words of any kind.
        if (has.Contains(Concept.Session) && has.Contains(Concept.Medicine) && has.Overlaps([Concept.Feed, Concept.Pump])) return Role.Note;
        if (Dose(words, has) is { } dose) return dose;
        if (Session(has) is { } session) return session == Role.Session && IsNumber(heading) ? Role.Ignore : session;
        // "NG feeding done", "RT feed over at".
        if (Feed(has, Lexicon.Split(heading) is { Count: > 1 } said && (said[^1] is "done" or "over" || said[^1] is "at" && said[^2] is "done" or "over")) is { } feed) return feed;
        // "Anything else Nana wants to say".
        return has.Contains(Concept.Note) && Lexicon.Split(heading).Count > 3 ? Role.Note : Single(has);
    }

    // "What day, if it wasn't today?", "Date of session", "Session date"
    private static bool AsksForDay(IReadOnlyList<string> words) => words is ["what" or "which", "day" or "date", ..] or ["date" or "day", "of", ..] or [_, "date"];

    // "Left upper chest": the chest as the place, not what was done.
    private static bool IsPlace(string heading) => Lexicon.Split(heading) is var words && words.Contains("chest") && AreaNames.In(heading).All(a => a is { Side: not Records.Side.Unknown, Area: not ChestArea.Unknown })
        && words.Zip(words.Skip(1)).Any(p => p.Second == "chest" && AreaNames.In(p.First) is [{ Area: not ChestArea.Unknown }]) && !Lexicon.Find(string.Join(' ', words.Where(w => w != "chest")), out _).Any(k => k.Concept == Concept.Session);

    private static Role? Dose(IReadOnlyList<Known> words, HashSet<Concept> has)
    {
        if (has.Contains(Concept.Puffs)) return Role.Amount;
        var named = words.Any(w => w.Medicine is not null);
        if (named || has.Contains(Concept.Inhaler)) return has.Contains(Concept.Amount) ? Role.Amount : Role.Dose;
        if (!has.Contains(Concept.Medicine)) return null;
        // "Meds / comments": words of any kind.
        return has.Contains(Concept.Note) ? Role.Note
            : has.Contains(Concept.Amount) ? Role.Amount
            : has.Contains(Concept.Time) || has.Contains(Concept.Start) ? Role.Time
            : Role.Medicine;
    }

    private static Role? Session(HashSet<Concept> has)
    {
        if (!has.Contains(Concept.Session) && !has.Contains(Concept.Percussion)) return null;
        return has.Contains(Concept.Minutes) ? Role.Minutes
            : has.Contains(Concept.Note) ? Role.Note
            : has.Contains(Concept.By) ? Role.By
            // "Chest: which areas"
            : has.Contains(Concept.Detail) ? Role.Detail
            : has.Contains(Concept.Technique) ? Role.Technique
            : has.Contains(Concept.End) && !has.Contains(Concept.Start) ? Role.SessionEnd
            : Role.Session;
    }

    // "Session no" counts the sessions; "no of sessions" says how many there were.
    private static bool IsNumber(string heading) => Lexicon.Split(heading) is { Count: > 1 } words && words[^1] is "no" or "nr" or "number" or "num" or "#" or "id";

    private static Role? Feed(HashSet<Concept> has, bool ended)
    {
        if (!has.Contains(Concept.Feed) && !has.Contains(Concept.Pump) && !has.Contains(Concept.Bolus) && !((has.Contains(Concept.Tube) || has.Contains(Concept.Oral) && has.Overlaps([Concept.End, Concept.Start, Concept.Millilitres])) && (ended || has.Overlaps([Concept.Time, Concept.Start, Concept.End, Concept.Amount, Concept.Millilitres])))) return null;
        return has.Contains(Concept.Note) ? Role.Note
            : has.Contains(Concept.Rate) ? Role.Rate
            : has.Contains(Concept.Millilitres) || has.Contains(Concept.Amount) ? Role.Millilitres
            : has.Contains(Concept.Route) ? Role.Route
            : (has.Contains(Concept.End) || ended) && !has.Contains(Concept.Start) ? Role.FeedEnd
            : has.Contains(Concept.Start) ? Role.FeedStart
            : Role.Feed;
    }

    private static bool IsOfMedicine(Known known) => known.Medicine is not null || known.Concept is Concept.Inhaler or Concept.Medicine;

    // The order settles headings of two known words: "Date and time" is a date, "done by" a person.
    private static Role Single(HashSet<Concept> has)
    {
        foreach (var (concept, role) in Order)
            if (has.Contains(concept))
                return role;
        return Role.Unknown;
    }

    private static readonly (Concept Concept, Role Role)[] Order =
    [
        (Concept.Date, Role.Date), (Concept.Means, Role.Means), (Concept.Word, Role.Word), (Concept.Cough, Role.Cough), (Concept.Secretions, Role.Secretions),
        (Concept.Colour, Role.Colour), (Concept.Vomit, Role.Vomit), (Concept.Stopped, Role.Stopped), (Concept.Reason, Role.Reason),
        (Concept.Rate, Role.Rate), (Concept.Millilitres, Role.Millilitres), (Concept.Technique, Role.Technique),
        (Concept.Minutes, Role.Minutes), (Concept.Kind, Role.Kind), (Concept.Detail, Role.Detail), (Concept.By, Role.By), (Concept.Amount, Role.Amount),
        (Concept.Start, Role.Start), (Concept.End, Role.End), (Concept.Time, Role.Time), (Concept.Day, Role.Date), (Concept.Route, Role.Route),
        (Concept.Sign, Role.Sign), (Concept.Distress, Role.Sign), (Concept.Unwell, Role.Sign), (Concept.Note, Role.Note), (Concept.Ignore, Role.Ignore), (Concept.Medicine, Role.Medicine),
        (Concept.Tube, Role.Feed), (Concept.Side, Role.Side), (Concept.Oral, Role.Feed), (Concept.Before, Role.Unknown),
    ];

    /// <summary>True when a heading of free words says which event they are of, or when in the day.</summary>
    public static bool NamesEvent(string heading) =>
        heading.Length > 0 && Lexicon.Find(heading, out _).Any(k => k.Medicine is not null || IsEvent(k.Concept) || k.Concept is Concept.Temperature or Concept.Pulse or Concept.Oxygen or Concept.Cough or Concept.Secretions or Concept.Vomit or Concept.Morning or Concept.Midday or Concept.Evening);

    /// <summary>True when a heading of free words names events of several kinds ("chest / meds / sats").</summary>
    public static bool NamesSeveral(string heading) => Lexicon.Find(heading, out _).Select(k => k.Concept switch
    {
        Concept.Session or Concept.Percussion => 1,
        Concept.Feed or Concept.Pump => 2,
        Concept.Inhaler or Concept.Medicine => 3,
        Concept.Saturation or Concept.Pulse or Concept.Oxygen => 4,
        _ => 0,
    }).Where(kind => kind > 0).Distinct().Count() > 1;

    /// <summary>True when a heading asks what was done ("What we did").</summary>
    public static bool TellsWhat(string heading) => Lexicon.Find(heading, out _) is [{ Concept: Concept.Kind }];

    /// <summary>True when a heading is about sessions.</summary>
    public static bool IsOfSessions(string heading) => Lexicon.Find(heading, out _).Any(k => k.Concept is Concept.Session or Concept.Percussion);

    private static bool IsEvent(Concept concept) => concept is Concept.Session or Concept.Percussion or Concept.Feed or Concept.Pump or Concept.Inhaler or Concept.Medicine or Concept.Saturation;

    private static CheckPhase PhaseOf(HashSet<Concept> has) =>
        has.Contains(Concept.Before) && !has.Contains(Concept.After) ? CheckPhase.Before
        : has.Contains(Concept.After) && !has.Contains(Concept.Before) ? CheckPhase.After
        : has.Contains(Concept.During) ? CheckPhase.During
        : CheckPhase.None;

    private static string? PartIn(string heading) =>
        Lexicon.Split(heading).Select(w => w is "mid" or "early" or "late" ? null : PartOfRow.Read(w)).FirstOrDefault(p => p is not null);

    // "Salbutamol 2 puffs" over ticks.
    private static string? AmountIn(string heading)
    {
        var words = heading.Split([' ', '(', ')'], StringSplitOptions.RemoveEmptyEntries).Select(w => w.Trim(',')).ToArray();
        for (var i = 0; i + 1 < words.Length; i++)
            if (words[i].Length > 0 && words[i].All(c => char.IsAsciiDigit(c) || c is '.' or ',') && words[i + 1].ToLowerInvariant() is "puffs" or "puff" or "ml" or "mg" or "mcg" or "drops")
                return $"{words[i]} {words[i + 1]}";
        // "Puffs am (salbutamol x2)"
        if (Array.Find(words, w => w.Length is 2 or 3 && w[0] is 'x' or 'X' && w[1..].All(char.IsAsciiDigit)) is { } times) return times;
        return Array.Find(words, w => w.Length > 0 && char.IsAsciiDigit(w[0]) && w.TrimStart('0', '1', '2', '3', '4', '5', '6', '7', '8', '9', '.', ',').ToLowerInvariant() is "mg" or "ml" or "mls" or "mcg" or "puffs" or "puff" or "p");
    }

    private static string? UnitOf(string heading)
    {
        var words = Lexicon.Split(heading);
        if (heading.Contains("ml/min", StringComparison.OrdinalIgnoreCase) || heading.Contains("ml per min", StringComparison.OrdinalIgnoreCase) || heading.Contains("mls/min", StringComparison.OrdinalIgnoreCase)) return "ml/min";
        return words.Any(w => w is "oz" or "ounces" or "floz") ? "oz"
            : words.Any(w => w is "°f" or "f" or "fahrenheit") ? "F"
            : words.Any(w => w is "sec" or "secs" or "seconds") ? "sec"
            : null;
    }
}
