using CareRecords.Import.Reading;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Notes;

/// <summary>The line that groups are read from.</summary>
/// <param name="File">The file's name.</param>
/// <param name="Index">Zero-based line.</param>
/// <param name="Text">The words after the prefix.</param>
/// <param name="Date">The line's day; null when not known.</param>
/// <param name="Stamp">The moment of writing; null when the line has no stamp.</param>
/// <param name="Pairs">What joined numbers are.</param>
/// <param name="Part">The part of the day that the line as a whole speaks of; null when none.</param>
/// <param name="Heading">The part of the day that the heading above the line names; null when none.</param>
internal sealed record LineContext(string File, int Index, string Text, LocalDate? Date, LocalDateTime? Stamp, PairMeaning Pairs, string? Part, Term? Heading);

/// <summary>Tells the events of a group: deals its terms out to signs, doses, feeds, checks and sessions, and gives each its time.</summary>
internal sealed class GroupReader
{
    private readonly LineContext _at;
    private readonly List<Doubt> _doubts;
    private readonly List<TimeMention> _mentions;
    private List<TimeMention> _doseTimes = [];

    /// <summary>A reader that adds doubts and times to these lists.</summary>
    public GroupReader(LineContext at, List<Doubt> doubts, List<TimeMention> mentions) => (_at, _doubts, _mentions) = (at, doubts, mentions);

    /// <summary>What a group told, besides its events.</summary>
    /// <param name="Happenings">The events.</param>
    /// <param name="Details">Areas without a session of their own, for the session before; null when none.</param>
    /// <param name="Mentions">The settled-to-be times of the group.</param>
    /// <param name="NamesPrescription">A medicine prescribed, not given; null when none.</param>
    internal sealed record Told(List<Happening> Happenings, AreaReading? Details, IReadOnlyList<(TimeMention Start, TimeMention? End)> Mentions, DoseReading? NamesPrescription);

    /// <summary>Reads one group.</summary>
    public Told Read(Group group)
    {
        var terms = group.Terms;
        var used = new HashSet<int>();
        var impossible = new List<(string What, string Written, string Range)>();
        var mentions = Mentions(group);
        if (group.BadTime is { } bad) { RefuseTime(bad); return new Told([], null, mentions, null); }
        var timed = group.Times.Count > 0;
        var signs = SignGrammar.Read(terms, _at.Text, used, impossible);
        var doses = DoseGrammar.Read(terms, _at.Text, used);
        var prescribed = doses.Find(d => d.Prescribed);
        var spoken = SpokenOf(terms);
        // "3% saline before pt at 4.30": the time is the session's, the dose came before it.
        var doseBefore = doses.Count > 0 && spoken.Count > 0 && group.TimeTerm is { } at && spoken.All(i => terms[i].Start < at.Start && at.Start - terms[i].End <= 4) && terms.Exists(t => t.Is(Sense.Before)) && group.Times.Count == 1;
        if (doseBefore) spoken = [];
        var (hasSession, mentioned) = (HasSession(terms, spoken), spoken.Count > 0);
        if (mentioned && !hasSession && !SpokenAfterOwn(terms)) foreach (var mention in mentions) mention.Start.SpeaksOfSession = true;
        var feed = FeedGrammar.Read(terms, used, (timed || group.Parts.Exists(p => p.Is(Sense.Meal))) && !hasSession, timed, signs.Exists(s => s.Kind == SignKind.Vomit), doses.Count > 0, group.Times.Count == 1 ? group.TimeTerm : null);
        var reference = terms.Find(t => t.Kind == TermKind.Reference && !doses.Exists(d => ReferenceEquals(d.Reference, t)));
        var areaTerms = terms.Exists(t => t.Is(Sense.SideArea) || t.Is(Sense.Area) || t.Is(Sense.Side) || t.Is(Sense.EachSide)) || SideLetters(terms);
        if (!hasSession && reference is not null && !mentioned && feed is null && (timed || (_at.Stamp is not null && !reference.Is(Sense.Same, nameof(ReferTo.Usual)))) && (doses.Count == 0 || terms.Exists(t => t is { Kind: TermKind.Offset, Text: Offsets.Each })) && !signs.Exists(s => s.Kind == SignKind.Temperature)) hasSession = true;
        if (!hasSession && reference is not null && !timed && group.Part is not null && doses.Count == 0 && feed is null && !group.Has(Sense.SatLabel) && !reference.Is(Sense.Same, nameof(ReferTo.Usual)) && TimesOf(group) is null) hasSession = true;
        if (!hasSession && reference is not null && !timed && _at.Stamp is null && TimesOf(group) is not null && doses.Count == 0 && feed is null) hasSession = true;
        if (!hasSession && areaTerms && timed && doses.Count == 0 && feed is null && !mentioned && Minutes(terms)) hasSession = true;
        // "7.30 - 3/3/2/2": minutes in a row at a time are a session, whose areas are asked about.
        if (!hasSession && timed && doses.Count == 0 && feed is null && !mentioned && terms.Exists(t => t.Kind == TermKind.Parts && t.Parts.Count >= 3 && t.Parts.All(p => p is > 0 and <= 15) && t.Text.Contains('/'))) hasSession = true;
        if (!hasSession && areaTerms && timed && doses.Count > 0 && AreaMinutesPresent(terms, used)) hasSession = true;
        var rest = Enumerable.Range(0, terms.Count).Where(i => !used.Contains(i)).ToList();
        var checks = CheckGrammar.Read(rest.ConvertAll(i => terms[i]), _at.Text, hasSession || mentioned || (areaTerms && Minutes(terms)), timed, _at.Pairs, group.Times.Count);
        impossible.AddRange(checks.Impossible);
        foreach (var (what, written, range) in impossible) _doubts.Add(Doubts.Impossible(_at.Index, what, written, range));
        var left = Enumerable.Range(0, rest.Count).Where(k => !checks.Used.Contains(k)).Select(k => terms[rest[k]]).Where(t => !IsCount(terms, t, group.Times.Count) && !CountsSessions(terms, t) && !IsFrequency(terms, t)).ToList();
        var areas = AreaGrammar.Read(left);
        AreaGrammar.Deny(group.Denied, areas);
        var result = new List<Happening>();
        var borrowedFrom = hasSession || mentioned;
        AddSessions(group, mentions, hasSession, reference, areas, left, feed, result);
        AddDoses(group, mentions, doses, reference, signs.Count > 0 && FirstOf(terms, IsSignTerm) < FirstOf(terms, IsDoseTerm) || FirstOf(terms, IsCheckTerm) < FirstOf(terms, IsDoseTerm) || doseBefore, result);
        AddFeed(group, mentions, feed, result);
        AddChecks(group, mentions, checks, borrowedFrom || signs.Exists(s => s.Kind is SignKind.Discharged or SignKind.Admitted) || (doses.Exists(d => !d.Prescribed) && FirstOf(terms, IsDoseTerm) < FirstOf(terms, IsCheckTerm)), reference, result);
        AddSigns(group, mentions, signs, hasSession || mentioned || (doses.Exists(d => !d.Prescribed) && FirstOf(terms, IsDoseTerm) < FirstOf(terms, IsSignTerm)), result);
        AddOmitted(group, mentions, result);
        if (mentions.Count > 0 && result.Exists(h => h.Kind == HappeningKind.Dose)) _doseTimes = mentions.ConvertAll(m => m.Start);
        // A time of something else ("nurse at 10") says little of the order of care.
        if (result.Count == 0) foreach (var (start, _) in mentions) start.IsAside = true;
        var details = !hasSession && !timed && (areas.NamesPlace || (areas.Areas.Count > 0 && terms.Count <= 4 && terms.Exists(t => t is { Unit: Unit.Min, Kind: TermKind.Quantity or TermKind.Range }))) && result.TrueForAll(h => h.Kind is HappeningKind.Check or HappeningKind.Sign) && doses.Count == 0 && feed is null && !mentioned ? areas : null;
        return new Told(result, details, mentions, prescribed ?? (doses.Count > 0 ? doses[^1] : null));
    }

    // "3x today: 07:30, 13:00, 19:00": the count of the times, not minutes.
    private static bool IsCount(List<Term> terms, Term term, int times)
    {
        if (times > 1 && term.Number == times && (term.Kind == TermKind.Times || (term.Kind == TermKind.Number && terms.IndexOf(term) is var at && at > 0 && at + 1 < terms.Count && terms[at + 1].Text is ":" && terms[at - 1].Kind == TermKind.Word))) return true;
        // "physio x3 in the day": without times and places a count is of sessions.
        return times == 0 && term is { Kind: TermKind.Times, Number: >= 2 and <= 6 } && terms.Exists(t => t.Is(Sense.Session))
            && !terms.Exists(t => t.Is(Sense.Area) || t.Is(Sense.Side) || t.Is(Sense.SideArea) || t.Is(Sense.Each) || t.Is(Sense.EachSide) || t.Kind == TermKind.Reference);
    }

    // "4 x a day": how often, not minutes.
    private static bool IsFrequency(List<Term> terms, Term term) => term.Kind is TermKind.Times or TermKind.Number && terms.IndexOf(term) is var at
        && ((at + 1 < terms.Count && terms[at + 1].Is(Sense.Frequency)) || (at + 2 < terms.Count && terms[at + 1].Is(Sense.Times) && terms[at + 2].Is(Sense.Frequency)));

    // "four physios": a count.
    private static bool CountsSessions(List<Term> terms, Term term) => term.Kind == TermKind.Number && terms.IndexOf(term) is var at && at + 1 < terms.Count && terms[at + 1].Is(Sense.Session) && terms[at + 1].Text.EndsWith('s');

    private void RefuseTime(Term bad)
    {
        var written = _at.Text[bad.Start..bad.End];
        if (bad.Is(Sense.Clock, "ask")) _doubts.Add(Doubts.Unclear(_at.Index, _at.File, $"'{written}' could be two times of day ({written.Replace('.', ':').Replace(":", ":0", StringComparison.Ordinal)} or {written.Replace('.', ':')}0)."));
        else if (bad.Is(Sense.Clock, "either")) _doubts.Add(Doubts.Unclear(_at.Index, _at.File, $"'{written}' does not say which of the two times it was."));
        else if (bad.Is(Sense.Clock, "minutes")) _doubts.Add(Doubts.Unclear(_at.Index, _at.File, $"'{written}' could be a time in the morning, a time in the evening, or minutes.", "a time in the morning", "a time in the evening", "minutes"));
        else _doubts.Add(Doubts.BadTime(_at.Index, written));
    }

    private List<(TimeMention Start, TimeMention? End)> Mentions(Group group)
    {
        var result = new List<(TimeMention, TimeMention?)>();
        var part = group.Times.Count == 1 ? PartOf(group) ?? PartOfDay(group.Day) ?? _at.Part : PartOfDay(group.Day) ?? _at.Part;
        foreach (var span in group.Times)
        {
            var start = Mention(span.Start, null, part, group, result.Count > 0);
            var until = span.End ?? (group.Times.Count == 1 ? group.EndTime?.Start : null);
            result.Add((start, until is null ? null : Mention(until, start, null, group, false)));
        }
        return result;
    }

    private TimeMention Mention(ClockTime written, TimeMention? after, string? part, Group group, bool inList)
    {
        var mention = new TimeMention
        {
            Written = written,
            Line = _at.Index,
            After = after,
            Part = part,
            InList = inList,
            Sentence = group.Sentence,
            StartsList = !inList && after is null && group.Times.Count > 1,
            NotAfter = _at.Stamp,
            Date = _at.Date,
            MorningHint = group.Has(Sense.WakeCue) || (group.Has(Sense.Stop) && (group.Has(Sense.Feed) || group.Has(Sense.Pump))),
        };
        if (group.Day is { } day && _at.Date is { } date) { mention.Date = DayTimes.OtherDay(day, date); mention.OtherDay = mention.Date != date; }
        _mentions.Add(mention);
        return mention;
    }

    // "last night", "yesterday morning"
    private static string? PartOfDay(Term? day) => day is null ? null : day.Text.Contains("night", StringComparison.Ordinal) || day.Text.Contains("evening", StringComparison.Ordinal) ? "evening"
        : day.Text.Contains("morning", StringComparison.Ordinal) ? "morning" : day.Text.Contains("afternoon", StringComparison.Ordinal) ? "afternoon" : null;

    private static string? PartOf(Group group) => group.Part is null ? null : PartKind(group.Part);

    /// <summary>The kind of a part of the day or a meal ("morning", "lunch").</summary>
    internal static string PartKind(Term part) => part.ValueOf(Sense.DayPart) ?? part.ValueOf(Sense.Meal) ?? (part.ValueOf(Sense.AmPm) is { } half
        ? half == "am" ? "morning" : part.Text.Contains("night", StringComparison.Ordinal) || part.Text.Contains("tonite", StringComparison.Ordinal) ? "night" : part.Text.Contains("afternoon", StringComparison.Ordinal) ? "afternoon" : "evening" : "day");

    // Sessions that are only spoken of: "after PT", "before his physio", "the 3.00 one".
    private static HashSet<int> SpokenOf(List<Term> terms)
    {
        var result = new HashSet<int>();
        for (var i = 0; i < terms.Count; i++)
        {
            var one = terms[i].Text == "one" && i > 0 && (terms[i - 1].Kind == TermKind.Time || terms[i - 1].Text is "the" or "clock");
            if (!(terms[i].Is(Sense.Session) || terms[i].Is(Sense.Technique) || one)) continue;
            for (var k = i - 1; k >= 0 && k >= i - 4; k--)
            {
                if (terms[k].Is(Sense.Before) || terms[k].Is(Sense.After) || terms[k].Is(Sense.During) || terms[k].Text is "between" or "since") { result.Add(i); break; }
                if (terms[k].Kind is TermKind.Symbol or TermKind.Number or TermKind.Quantity or TermKind.Offset || GroupSplitter.IsHead(terms[k])) break;
            }
            if (terms[i].Text.StartsWith("before ", StringComparison.Ordinal) || terms[i].Text.StartsWith("after ", StringComparison.Ordinal)) result.Add(i);
        }
        return result;
    }

    private static bool HasSession(List<Term> terms, HashSet<int> spoken)
    {
        for (var i = 0; i < terms.Count; i++)
            if ((terms[i].Is(Sense.Session) || terms[i].Is(Sense.Technique)) && !spoken.Contains(i)) return true;
        return false;
    }

    private static bool Minutes(List<Term> terms) => terms.Exists(t => t is { Kind: TermKind.Quantity or TermKind.Range, Unit: Unit.Min } or { Kind: TermKind.Number or TermKind.Times, Number: > 0 and <= 30 }
        || (t.Kind == TermKind.Parts && t.Parts.All(p => p <= 30)));

    private static bool AreaMinutesPresent(List<Term> terms, HashSet<int> used) => Enumerable.Range(0, terms.Count)
        .Any(i => !used.Contains(i) && terms[i] is { Kind: TermKind.Number, Number: > 0 and <= 30 } && i > 0 && (terms[i - 1].Is(Sense.SideArea) || terms[i - 1].Is(Sense.Area) || terms[i - 1].Is(Sense.Side) || terms[i - 1].Text is "l" or "r"));

    // "L3R3": letters that are sides by the numbers after them.
    private static bool SideLetters(List<Term> terms)
    {
        for (var i = 0; i + 1 < terms.Count; i++)
            if (terms[i].Kind == TermKind.Word && terms[i].Text is "l" or "r" && terms[i + 1] is { Kind: TermKind.Number, Number: > 0 and <= 30 }) return true;
        return false;
    }

    private static bool IsSignTerm(Term t) => t.Is(Sense.Sign) || t.Is(Sense.TempLabel) || t.Is(Sense.BreathLabel);

    private static bool IsDoseTerm(Term t) => t.Is(Sense.Medicine) || t.Is(Sense.Device) || t.Is(Sense.Antibiotic);

    private static bool IsCheckTerm(Term t) => t.Is(Sense.SatLabel) || t.Is(Sense.Desat) || t is { Kind: TermKind.Number, IsWhole: true, Number: >= 60 and <= 100 } || t.Is(Sense.OxygenLabel);

    private static int FirstOf(List<Term> terms, Predicate<Term> which) => terms.FindIndex(which) is var i && i < 0 ? int.MaxValue : i;

    private TimeRef? Ref((TimeMention Start, TimeMention? End) mention, TimePrecision? taken = null, double offset = 0) => new(mention.Start) { Taken = taken, OffsetMinutes = offset, Date = _at.Date };

    private TimeRef? Untimed(Group group, Term? part = null)
    {
        var date = group.Day is { } day && _at.Date is { } from ? DayTimes.OtherDay(day, from) : _at.Date;
        part ??= group.Part ?? (group.Day is null ? _at.Heading : null);
        return part is null ? null : new TimeRef(null) { Part = part.Text, PartKind = PartKind(part), Date = date, Taken = TimePrecision.PartOfDay };
    }

    private void AddSessions(Group group, List<(TimeMention Start, TimeMention? End)> mentions, bool hasSession, Term? reference, AreaReading areas, List<Term> left, FeedReading? feed, List<Happening> result)
    {
        if (!hasSession) return;
        // "physio up to 4 a day now" tells how many, not when.
        if (mentions.Count == 0 && group.Has(Sense.Frequency)) return;
        if (mentions.Count == 1 && TimesOf(group) is not null && group.Terms.Exists(t => t.Is(Sense.DayRef, "0")) && areas.Areas.TrueForAll(a => a.Area == ChestArea.Unknown)) { result.Add(new Happening { Kind = HappeningKind.Session, Line = _at.Index, Sentence = group.Sentence, Areas = new AreaReading(), Value = TimesOf(group) }); return; }
        if (mentions.Count == 1 && group.Terms.Exists(t => t.IsSymbol("?")) && group.Has(Sense.Discount) || mentions.Count > 0 && group.Terms.Exists(t => t.Is(Sense.Person) && t.Text.StartsWith("physio", StringComparison.Ordinal)) && areas.Areas.Exists(a => a.Minutes is not null))
        {
            _doubts.Add(Doubts.Unclear(_at.Index, _at.File, $"'{_at.Text.Trim()}' does not say for certain that a session was done, and when."));
            return;
        }
        var later = group.Terms.Find(t => t is { Kind: TermKind.Offset, Text: Offsets.Event });
        var after = later is not null && mentions.Count == 1 && FirstOf(group.Terms, IsDoseTerm) is var given && given < FirstOf(group.Terms, t => t.Is(Sense.Session) || t.Is(Sense.Technique)) ? later.Number : 0;
        var straightAfter = feed is null && group.Terms.Exists(t => t.Is(Sense.After)) && group.Has(Sense.Feed) && group.Has(Sense.Stop) && mentions.Count == 1;
        var fromWriting = group.Terms.Find(t => t is { Kind: TermKind.Offset, Text: Offsets.Writing });
        var duration = group.Terms.Find(t => t.Kind == TermKind.Duration);
        if (areas.Areas.Count == 0 && duration is { Number: > 0 } && left.Exists(t => t.Is(Sense.Technique))) areas.Areas.Add(new AreaMinutes(Side.Unknown, ChestArea.Unknown, areas.Technique, duration.Number));
        // "percussion to the lower lobes for 3 minutes each side": the length is of each place that has no minutes of its own.
        if (duration is { Number: > 0 and <= 30 } && areas.Areas.Count > 0 && areas.Areas.TrueForAll(a => a.Minutes is null))
            for (var k = 0; k < areas.Areas.Count; k++)
                if (areas.Areas[k].Technique != Technique.Vibration || areas.Areas.TrueForAll(a => a.Technique == Technique.Vibration)) areas.Areas[k] = areas.Areas[k] with { Minutes = duration.Number };
        Vest(left, areas);
        // "physio am and pm", "after breakfast and again before bed": one at each.
        var again = group.Parts.Count > 1 && group.Terms.Exists(t => t.Is(Sense.Again) || t.Is(Sense.And) || t.IsSymbol(",")) ? group.Parts.DistinctBy(PartKind).ToList() : [];
        if (mentions.Count == 0 && again.Count > 1)
        {
            foreach (var part in again) result.Add(Make(Untimed(group, part), null, areas, reference, group));
            return;
        }
        if (mentions.Count == 0 && group.Terms.Find(t => t is { Kind: TermKind.Offset, Text: Offsets.Each, Number: > 0 }) is { } afterEach && _doseTimes.Count > 0)
        {
            // "salbutamol at 7, 11 and 3, physio 20 mins after each"
            foreach (var time in _doseTimes) result.Add(Make(new TimeRef(time) { Taken = TimePrecision.Reckoned, OffsetMinutes = afterEach.Number, Date = time.Date }, null, areas, reference, group));
            return;
        }
        if (mentions.Count == 0)
        {
            var start = fromWriting is not null && _at.Stamp is { } stamp ? new TimeRef(null) { Stamp = stamp.PlusMinutes((long)fromWriting.Number), Taken = TimePrecision.MessageStamp, Date = _at.Date } : Untimed(group);
            result.Add(Make(start, null, areas, reference, group));
            return;
        }
        foreach (var mention in mentions)
            result.Add(Make(Ref(mention, straightAfter ? TimePrecision.Borrowed : after > 0 ? TimePrecision.Reckoned : null, after), mention.End is null ? null : new TimeRef(mention.End) { Date = _at.Date }, areas, reference, group));
        foreach (var mention in mentions) mention.Start.IsSession = true;
        if (straightAfter) result.Add(new Happening { Kind = HappeningKind.Feed, Line = _at.Index, Sentence = group.Sentence, End = Ref(mentions[0]) });
    }

    // A vest works on the whole chest.
    private static void Vest(List<Term> left, AreaReading areas)
    {
        if (!left.Exists(t => t.Is(Sense.Technique, "other") && t.Text.Contains("vest", StringComparison.Ordinal))) return;
        for (var i = 0; i < areas.Areas.Count; i++)
            if (areas.Areas[i] is { Technique: Technique.Other, Side: Side.Unknown, Area: ChestArea.Unknown } vest) areas.Areas[i] = vest with { Side = Side.Both, Area = ChestArea.Whole };
    }

    private Happening Make(TimeRef? start, TimeRef? end, AreaReading areas, Term? reference, Group group) =>
        new() { Kind = HappeningKind.Session, Line = _at.Index, Sentence = group.Sentence, Start = start, End = end, Areas = areas, Reference = reference, Value = TimesOf(group) };

    // "x4 today", "4 times": a count of sessions, told apart from minutes by having no time and no place.
    private static string? TimesOf(Group group)
    {
        for (var i = 0; i < group.Terms.Count; i++)
        {
            var term = group.Terms[i];
            if (term.Kind == TermKind.Times || (term.Kind == TermKind.Number && i + 1 < group.Terms.Count && group.Terms[i + 1].Is(Sense.Times)) || (term.Kind == TermKind.Number && term.IsWhole && i + 1 < group.Terms.Count && (group.Terms[i + 1].Is(Sense.Session) && group.Terms[i + 1].Text.EndsWith('s')))) return Doubts.Plain(term.Number);
        }
        return null;
    }

    private void AddDoses(Group group, List<(TimeMention Start, TimeMention? End)> mentions, List<DoseReading> doses, Term? reference, bool afterObservation, List<Happening> result)
    {
        var each = group.Terms.Find(t => t is { Kind: TermKind.Offset, Text: Offsets.Each });
        var before = group.Terms.Find(t => t is { Kind: TermKind.Offset, Text: Offsets.Session });
        var duration = group.Terms.Find(t => t.Kind == TermKind.Duration);
        if (doses.Count == 0 && mentions.Count > 0 && result.Count == 0 && group.Terms.Exists(t => t is { Kind: TermKind.Quantity, Unit: Unit.Puffs }) && !group.Terms.Exists(GroupSplitter.IsHead))
            doses = [new DoseReading { Written = "puffs", Inhaled = true, Amount = Doubts.Plain(group.Terms.First(t => t is { Kind: TermKind.Quantity, Unit: Unit.Puffs }).Number) + " puffs" }];
        if (doses.Count == 0 && (group.Has(Sense.First) || (group.Terms.Count <= 6 && group.Terms.Exists(t => t.Is(Sense.Given) && t.Text is "given" or "gave" or "gegee" or "administered"))) && mentions.Count > 0 && result.Count == 0 && !group.Terms.Exists(t => GroupSplitter.IsHead(t) || t.Is(Sense.Air)))
            doses = [new DoseReading { Written = "", IsAntibioticWord = true }];
        // "I have given the first one just now"
        if (doses.Count == 0 && mentions.Count == 0 && result.Count == 0 && _at.Stamp is not null && group.Has(Sense.Given) && (group.Has(Sense.First) || group.Terms.Exists(t => t is { Kind: TermKind.Offset, Text: Offsets.Writing })) && !group.Terms.Exists(GroupSplitter.IsHead))
            doses = [new DoseReading { Written = "", IsAntibioticWord = true }];
        foreach (var dose in doses)
        {
            var first = group.Has(Sense.First);
            // "co-amoxiclav 4 ml BD from 14:00": begun then. What a doctor gave at ten is a prescription.
            var begun = dose.Prescribed && mentions.Count == 1 && (group.TimeTerm is { At: true } || group.Has(Sense.Start)) && !group.Has(Sense.Person) && !group.Has(Sense.Visit) && !group.Has(Sense.Advice);
            if (dose.Prescribed && !first && !begun)
            {
                // "GP 9.30, amoxicillin three times a day started": whether and when a dose was given is not said.
                if (group.Has(Sense.Start) && mentions.Count > 0 && !_at.Text.Contains("first", StringComparison.OrdinalIgnoreCase) && !_at.Text.Contains("1st", StringComparison.OrdinalIgnoreCase)) _doubts.Add(Doubts.Untimed(_at.Index, _at.File, $"The first dose of {dose.Written}"));
                continue;
            }
            var given = reference is not null && dose.Amount is null && dose.Reference is null && group.Terms.Skip(dose.Last).Take(2).Any(t => t.Is(Sense.And)) ? reference : dose.Reference;
            Happening Dose(TimeRef? start) => new()
            {
                Kind = HappeningKind.Dose,
                Line = _at.Index,
                Sentence = group.Sentence,
                Start = start,
                Medicine = dose.Medicine,
                MedicineWritten = dose.Written,
                Amount = dose.Amount,
                DoseRoute = dose.Route,
                IsAntibioticWord = dose.IsAntibioticWord,
                Reference = given,
                IsGiven = dose.Amount is not null || given is not null || group.Has(Sense.Given) || group.Has(Sense.Start) || first,
                Value = dose.Prescribed && !begun ? "prescribed" : null,
            };
            if (each is not null && mentions.Count > 0 && !result.Exists(h => h.Kind == HappeningKind.Session))
            {
                // "10 min before each session (0715, 1300, 1815)"
                foreach (var mention in mentions) result.Add(Dose(Ref(mention, TimePrecision.Reckoned, each.Number)));
                continue;
            }
            if (each is not null)
            {
                var happening = Dose(null);
                happening.BeforeEachSession = -each.Number;
                result.Add(happening);
                continue;
            }
            if (mentions.Count == 0)
            {
                var meals = group.Parts.Where(p => p.Is(Sense.Meal)).ToList();
                if (meals.Count > 1) result.AddRange(meals.Select(m => Dose(Untimed(group, m))));
                else
                {
                    var happening = Dose(Untimed(group));
                    if (TimesOf(group) is { } times && group.Part is null) happening.Value = "times " + times;
                    result.Add(happening);
                }
                continue;
            }
            foreach (var mention in mentions)
            {
                var happening = Dose(Ref(mention, before is not null ? TimePrecision.Reckoned : dose.Later || (afterObservation && doses[0] == dose || afterObservation) ? TimePrecision.Borrowed : null, before?.Number ?? 0));
                if (mention.End is not null) happening.End = new TimeRef(mention.End) { Date = _at.Date };
                else if (duration is { Number: > 0 } && doses.Count == 1 && result.TrueForAll(h => h.Kind != HappeningKind.Session)) happening.End = Ref(mention, null, duration.Number);
                result.Add(happening);
            }
        }
    }

    private void AddFeed(Group group, List<(TimeMention Start, TimeMention? End)> mentions, FeedReading? feed, List<Happening> result)
    {
        if (feed is null) return;
        Happening Feed() => new() { Kind = HappeningKind.Feed, Line = _at.Index, Sentence = group.Sentence, Millilitres = feed.Millilitres, Rate = feed.Rate, Route = feed.Route };
        var before = group.Terms.Find(t => t is { Kind: TermKind.Offset, Text: Offsets.Session });
        var ago = group.Terms.Find(t => t is { Kind: TermKind.Offset, Text: Offsets.Writing });
        if (mentions.Count == 0)
        {
            var start = ago is not null && _at.Stamp is { } stamp ? new TimeRef(null) { Stamp = stamp.PlusMinutes((long)ago.Number), Taken = TimePrecision.Reckoned, Date = _at.Date } : Untimed(group);
            var happening = Feed();
            if (feed.IsEnd && start is not null) happening.End = start; else happening.Start = start;
            if (start is null && feed.IsExplicit) happening.Value = feed.IsEnd ? "end" : "start";
            result.Add(happening);
            return;
        }
        foreach (var mention in mentions)
        {
            var happening = Feed();
            var at = Ref(mention, before is not null ? TimePrecision.Reckoned : null, before?.Number ?? 0);
            if (feed.IsEnd && mention.End is null) happening.End = at; else happening.Start = at;
            if (feed.EndsNow && _at.Stamp is { } now && happening.End is null) happening.End = new TimeRef(null) { Stamp = now, Taken = TimePrecision.MessageStamp, Date = _at.Date };
            if (mention.End is not null) happening.End = new TimeRef(mention.End) { Date = _at.Date };
            else if (feed.Minutes is { } minutes && happening.Start is not null) happening.End = Ref(mention, null, minutes);
            result.Add(happening);
        }
    }

    private void AddChecks(Group group, List<(TimeMention Start, TimeMention? End)> mentions, CheckResult checks, bool borrowed, Term? reference, List<Happening> result)
    {
        if (checks.Slip is { } slip) _doubts.Add(Doubts.Slip(_at.Index, _at.File, slip.Written, slip.Perhaps));
        if (checks.PulsePair is { } pulse) _doubts.Add(Doubts.PulseOrSaturation(_at.Index, _at.File, pulse));
        if (checks.Slip is not null && checks.Readings.TrueForAll(r => r.SpO2 is null)) return;
        if (checks.Pair is { } pair)
        {
            if (reference is null) { _doubts.Add(Doubts.BeforeAfterOrRange(_at.Index, _at.File, pair)); }
            else result.Add(new Happening { Kind = HappeningKind.Check, Line = _at.Index, Sentence = group.Sentence, Check = new CheckReading(), Value = "pair " + pair, Start = mentions.Count > 0 ? Ref(mentions[0], TimePrecision.Borrowed) : null });
        }
        // "off O2 since 6am, 95 now": the flow from then on, the reading of now.
        if (mentions.Count == 1 && group.TimeTerm is { } since && since.Is(Sense.Since) && checks.Readings.Find(r => r.Oxygen is not null) is { } flowing && checks.Readings.Exists(r => r.SpO2 is not null && (r.Now || _at.Stamp is not null)))
        {
            result.Add(new Happening { Kind = HappeningKind.Check, Line = _at.Index, Sentence = group.Sentence, Check = new CheckReading { Oxygen = flowing.Oxygen }, Start = Ref(mentions[0]) });
            foreach (var reading in checks.Readings.Where(r => r.SpO2 is not null))
                result.Add(new Happening { Kind = HappeningKind.Check, Line = _at.Index, Sentence = group.Sentence, Check = reading, Start = _at.Stamp is { } written ? new TimeRef(null) { Stamp = written, Taken = TimePrecision.MessageStamp, Date = _at.Date } : null });
            return;
        }
        // "sats 89 at 2, 3 and 4": the same at each of them.
        if (mentions.Count > 1 && !borrowed && checks.Readings is [{ SpO2: not null } only])
        {
            foreach (var mention in mentions) result.Add(new Happening { Kind = HappeningKind.Check, Line = _at.Index, Sentence = group.Sentence, Check = only, Start = Ref(mention) });
            return;
        }
        var parts = group.Parts.Where(p => !p.Is(Sense.Meal) || mentions.Count == 0).ToList();
        var zipParts = parts.Count > 1 && parts.Count == checks.Readings.Count;
        for (var k = 0; k < checks.Readings.Count; k++)
        {
            var reading = checks.Readings[k];
            var mention = mentions.Count == 0 ? null : mentions.Count > 1 && mentions.Count == checks.Readings.Count && checks.Readings.TrueForAll(r => r.Phase == checks.Readings[0].Phase)
                ? mentions[k] : ((TimeMention Start, TimeMention? End)?)mentions[0];
            TimeRef? start = null;
            if (reading.Now && _at.Stamp is { } stamp) start = new TimeRef(null) { Stamp = stamp, Taken = TimePrecision.MessageStamp, Date = _at.Date };
            else if (zipParts && mentions.Count <= 1) start = Untimed(group, parts[k]);
            else if (mention is { } m)
            {
                var taken = reading.AfterMinutes is not null ? TimePrecision.Reckoned : borrowed || reading.Phase != CheckPhase.None || reading.Later || reading.About ? TimePrecision.Borrowed : (TimePrecision?)null;
                if (borrowed && reading is { Phase: CheckPhase.Before, Later: false } && SpokenAfterOwn(group.Terms)) taken = null;
                start = Ref(m, taken, reading.AfterMinutes ?? 0);
            }
            else start = Untimed(group);
            var until = mention?.End is { } end && !borrowed ? new TimeRef(end) { Date = _at.Date } : null;
            result.Add(new Happening { Kind = HappeningKind.Check, Line = _at.Index, Sentence = group.Sentence, Check = reading, Start = start, End = until, Value = mentions.Count > 1 && group.Part is not null ? "part " + PartKind(zipParts ? parts[k] : group.Part) : null });
        }
    }

    // "95 at 5.30 before his physio": the reading has the time, not the session.
    private static bool SpokenAfterOwn(List<Term> terms)
    {
        var phase = terms.FindIndex(t => t.Is(Sense.Before));
        var session = terms.FindIndex(t => t.Is(Sense.Session));
        return phase >= 0 && session > phase;
    }

    private void AddSigns(Group group, List<(TimeMention Start, TimeMention? End)> mentions, List<SignReading> signs, bool borrowed, List<Happening> result)
    {
        // "up at 1, 3 and half 4 with the cough": at each of them.
        var each = mentions.Count > 1 && result.Count == 0 ? mentions : mentions.Take(1).ToList();
        foreach (var sign in signs)
            foreach (var at in each.Count == 0 ? [null] : each.ConvertAll(m => ((TimeMention Start, TimeMention? End)?)m))
                result.Add(new Happening
                {
                    Kind = HappeningKind.Sign,
                    Line = _at.Index,
                    Sentence = group.Sentence,
                    SignKind = sign.Kind,
                    What = sign.What,
                    Value = sign.Value,
                    Number = sign.Number,
                    Start = at is { } mention ? Ref(mention, borrowed ? TimePrecision.Borrowed : null) : Untimed(group),
                });
    }

    private void AddOmitted(Group group, List<(TimeMention Start, TimeMention? End)> mentions, List<Happening> result)
    {
        var denied = group.Denied.Exists(t => t.Is(Sense.Session) || (t.Is(Sense.Technique) && result.TrueForAll(h => h.Kind != HappeningKind.Session)));
        if (!denied || result.Exists(h => h.Kind == HappeningKind.Session)) return;
        result.Add(new Happening { Kind = HappeningKind.Omitted, Line = _at.Index, Sentence = group.Sentence, Start = mentions.Count > 0 ? Ref(mentions[0]) : Untimed(group), Reason = _at.Text });
    }
}
