using System.Text.RegularExpressions;
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
/// <param name="AfterEvening">Whether it stands under "Night" below the other parts of its day.</param>
/// <param name="Overnight">Whether the heading above it names two days, one after the other.</param>
internal sealed record LineContext(string File, int Index, string Text, LocalDate? Date, LocalDateTime? Stamp, PairMeaning Pairs, string? Part, Term? Heading, bool Overnight = false, bool AfterEvening = false);

/// <summary>Tells the events of a group: deals its terms out to signs, doses, feeds, checks and sessions, and gives each its time.</summary>
internal sealed partial class GroupReader
{
    // "last night" at five is in the evening.
    private const int SmallHours = 5;

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
        // "did both, at 7:10 and at 18:45": both sessions, not sides.
        var didBoth = group.Times.Count == 2 && terms.Exists(t => t.Text is "did" or "he did" or "she did" or "i did") && terms.Exists(t => t.Text == "both") && !terms.Exists(t => t.NamesEvent && t.Kind != TermKind.Reference);
        if (didBoth) terms.RemoveAll(t => t.Text == "both");
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
        // "sats before the 6.15 90 after 93", "my mum did the 2.30": a session that is known by its time.
        var named = timed && group.Times.Count == 1 && NamesTime(group.TimeTerm!);
        if (named && !hasSession && doses.Count == 0 && terms.Exists(t => t.Is(Sense.Before) || t.Is(Sense.After)) && terms.Exists(IsCheckTerm)) { mentioned = true; foreach (var mention in mentions) mention.Start.SpeaksOfSession = true; }
        // "secretions were thick and yellow at the 11.00am session"
        if (named && hasSession && signs.Count > 0 && doses.Count == 0 && !terms.Exists(t => t.Is(Sense.Area) || t.Is(Sense.SideArea) || t.Kind is TermKind.Reference || t.Text is "did" or "done" or "had" or "gave"))
        {
            (hasSession, mentioned) = (false, true);
            foreach (var mention in mentions) mention.Start.SpeaksOfSession = true;
        }
        var spokenOf = named && !mentioned && doses.Count == 0 && terms.Exists(t => t.Text is "did" or "done" or "missed") && !terms.Exists(t => t.NamesFeed || t.Is(Sense.SatLabel));
        // "nan did the afternoon one about 4.30"
        if (timed && !named && !hasSession && doses.Count == 0 && Did(terms)) hasSession = true;
        if (!hasSession && doses.Count == 0 && didBoth) hasSession = true;
        if (spokenOf) { hasSession = true; foreach (var mention in mentions) mention.Start.NamesSession = true; }
        var feed = FeedGrammar.Read(terms, used, (timed || group.Parts.Exists(p => p.Is(Sense.Meal))) && !hasSession, timed, signs.Exists(s => s.Kind == SignKind.Vomit), doses.Count > 0, group.Times.Count == 1 ? group.TimeTerm : null);
        var reference = terms.Find(t => t.Kind == TermKind.Reference && !doses.Exists(d => ReferenceEquals(d.Reference, t)));
        var areaTerms = terms.Exists(t => t.Is(Sense.SideArea) || t.Is(Sense.Area) || t.Is(Sense.Side) || t.Is(Sense.EachSide)) || SideLetters(terms) || CountsSpots(terms);
        if (!hasSession && reference is not null && !mentioned && feed is null && !(reference.Is(Sense.Same, nameof(ReferTo.Usual)) && terms.Exists(t => t.Is(Sense.OxygenLabel) && t.Start < reference.Start)) && (timed || (_at.Stamp is not null && !reference.Is(Sense.Same, nameof(ReferTo.Usual)))) && (doses.Count == 0 || terms.Exists(t => t is { Kind: TermKind.Offset, Text: Offsets.Each })) && !signs.Exists(s => s.Kind == SignKind.Temperature)) hasSession = true;
        if (!hasSession && reference is not null && !timed && group.Part is not null && doses.Count == 0 && feed is null && !group.Has(Sense.SatLabel) && !reference.Is(Sense.Same, nameof(ReferTo.Usual)) && TimesOf(group) is null) hasSession = true;
        if (!hasSession && reference is not null && !timed && _at.Stamp is null && TimesOf(group) is not null && doses.Count == 0 && feed is null) hasSession = true;
        if (!hasSession && areaTerms && timed && doses.Count == 0 && feed is null && !mentioned && Minutes(terms)) hasSession = true;
        // "730pm just bottoms"
        if (!hasSession && timed && doses.Count == 0 && feed is null && !mentioned && terms.Exists(t => t.Is(Sense.Only)) && terms.Exists(t => t.Is(Sense.Area) || t.Is(Sense.SideArea))) hasSession = true;
        // "7.30 - 3/3/2/2": minutes in a row at a time are a session, whose areas are asked about.
        if (!hasSession && timed && doses.Count == 0 && feed is null && !mentioned && terms.Exists(t => t.Kind == TermKind.Parts && t.Parts.Count >= 3 && t.Parts.All(p => p is >= 0 and <= 15) && t.Parts.Any(p => p > 0) && t.Text.Contains('/'))) hasSession = true;
        if (!hasSession && areaTerms && timed && doses.Count > 0 && AreaMinutesPresent(terms, used)) hasSession = true;
        var rest = Enumerable.Range(0, terms.Count).Where(i => !used.Contains(i)).ToList();
        var checks = CheckGrammar.Read(rest.ConvertAll(i => terms[i]), _at.Text, hasSession || mentioned || (areaTerms && Minutes(terms)), timed, _at.Pairs, group.Times.Count);
        impossible.AddRange(checks.Impossible);
        foreach (var (what, written, range) in impossible) _doubts.Add(Doubts.Impossible(_at.Index, what, written, range));
        var left = Enumerable.Range(0, rest.Count).Where(k => !checks.Used.Contains(k)).Select(k => terms[rest[k]]).Where(t => !Counts.Is(terms, t, group.Times.Count)).ToList();
        var areas = AreaGrammar.Read(left);
        AreaGrammar.Deny(group.Denied, areas);
        var result = new List<Happening>();
        var borrowedFrom = hasSession || mentioned;
        AddSessions(group, mentions, hasSession, reference, areas, left, feed, result);
        AddDoses(group, mentions, doses, reference, signs.Count > 0 && FirstOf(terms, IsSignTerm) < FirstOf(terms, IsDoseTerm) || FirstOf(terms, IsCheckTerm) < FirstOf(terms, IsDoseTerm) || doseBefore, result);
        AddFeed(group, mentions, feed, result);
        AddChecks(group, mentions, checks, borrowedFrom || signs.Exists(s => s.Kind is SignKind.Discharged or SignKind.Admitted) || (doses.Exists(d => !d.Prescribed) && FirstOf(terms, IsDoseTerm) < FirstOf(terms, IsCheckTerm)), reference, result);
        AddSigns(group, mentions, signs, hasSession || mentioned || feed is { IsExplicit: true } && FirstOf(terms, t => t.NamesFeed) < FirstOf(terms, IsSignTerm) || (doses.Exists(d => !d.Prescribed) && FirstOf(terms, IsDoseTerm) < FirstOf(terms, IsSignTerm)), result);
        AddOmitted(group, mentions, areas, result);
        if (mentions.Count > 0 && result.Exists(h => h.Kind == HappeningKind.Dose)) _doseTimes = mentions.ConvertAll(m => m.Start);
        // A time of something else ("nurse at 10") says little of the order of care.
        if (result.Count == 0) foreach (var (start, _) in mentions) start.IsAside = true;
        var details = !hasSession && !timed && (areas.NamesPlace || (areas.Areas.Count > 0 && terms.Count <= 4 && terms.Exists(t => t is { Unit: Unit.Min, Kind: TermKind.Quantity or TermKind.Range }))) && result.TrueForAll(h => h.Kind is HappeningKind.Check or HappeningKind.Sign) && doses.Count == 0 && feed is null && !mentioned ? areas : null;
        // "pre 92 post 94, both on 1L": of the readings.
        if (details is not null && details.Areas.TrueForAll(a => a is { Area: ChestArea.Unknown, Minutes: null }) && details.LeftOut.Count == 0 && result.Exists(h => h.Kind == HappeningKind.Check)) details = null;
        if (details is not null) Last(details, terms.Find(t => t.Kind == TermKind.Duration));
        return new Told(result, details, mentions, prescribed ?? (doses.Count > 0 ? doses[^1] : null));
    }

    // "did the afternoon one"
    private static bool Did(List<Term> terms)
    {
        var did = terms.FindIndex(t => t.Text is "did" or "he did" or "she did" or "i did");
        return did >= 0 && terms.FindIndex(did, t => t.Text == "one") is var one && one > did && one - did <= 3 && terms.GetRange(did, one - did).Exists(t => t.Is(Sense.DayPart) || t.Is(Sense.Meal) || t.Is(Sense.AmPm)) && !terms.Exists(t => t.NamesEvent && t.Kind != TermKind.Reference);
    }

    // "the 6.15"
    private bool NamesTime(Term time) => time.Start <= _at.Text.Length && (_at.Text[..time.Start].EndsWith("the ", StringComparison.OrdinalIgnoreCase) || time.End <= _at.Text.Length && TheClock().IsMatch(_at.Text.AsSpan(time.Start, time.End - time.Start)));

    // "at the 11.00am", not "the back of 6".
    [GeneratedRegex(@"\bthe \d", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex TheClock();

    // "4 spots 3 mins each"
    private static bool CountsSpots(List<Term> terms) => Enumerable.Range(1, Math.Max(0, terms.Count - 1)).Any(i => terms[i].Is(Sense.Spots) && terms[i - 1] is { Kind: TermKind.Number, Number: >= 2 and <= 12 });

    private void RefuseTime(Term bad)
    {
        var written = _at.Text[bad.Start..bad.End];
        if (bad.Is(Sense.Clock, "ask")) _doubts.Add(Doubts.Unclear(_at.Index, _at.File, $"'{written}' could be two times of day ({written.Replace('.', ':').Replace(":", ":0", StringComparison.Ordinal)} or {written.Replace('.', ':')}0)."));
        else if (bad.Is(Sense.Clock, "either")) _doubts.Add(Doubts.Unclear(_at.Index, _at.File, $"'{written}' does not say which of the two times it was."));
        else if (bad.Is(Sense.Clock, GroupDenials.LeftOut)) _doubts.Add(Doubts.Unclear(_at.Index, _at.File, $"'{_at.Text.Trim()}' does not say which of these was left out."));
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
        // "last night at 3": its small hours are those of the line's own day.
        var smallHours = IsLastNight(group.Day) && (written.Time.Hour < SmallHours || written.Time.Hour == 12 && !written.TwentyFourHour) && written.Half != HalfOfDay.Pm;
        if (smallHours) (written, part) = (written.In(HalfOfDay.Am), "night");
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
            PumpOff = group.Has(Sense.Pump) && group.Has(Sense.Stop) && !group.Has(Sense.Start),
            PumpOn = group.Has(Sense.Pump) && group.Has(Sense.Start) && !group.Has(Sense.Stop) && !group.Terms.Exists(t => t is { Kind: TermKind.Quantity, Unit: Unit.Ml }),
            ByDay = group.Terms.Exists(t => t.Text is "school" or "nursery" or "creche" or "playgroup" or "kindy" or "daycare" or "work" or "lunch" or "shops" or "park"),
            MorningHint = group.Has(Sense.WakeCue) || (group.Has(Sense.Stop) && (group.Has(Sense.Feed) || group.Has(Sense.Pump))),
        };
        // "night feed on at 9pm, off at 6am Wednesday", on a Tuesday: the next morning, whose time follows from the evening's.
        var intoNext = group.Day is { } named && _at.Date is { } today && group.Terms.Exists(t => t.NamesFeed || t.Is(Sense.Pump)) && DayTimes.OtherDay(named, today, true) == today.PlusDays(1);
        if (!smallHours && group.Day is { } day && _at.Date is { } date && !(intoNext && written.Half == HalfOfDay.Pm && !group.Has(Sense.Stop))) { mention.Date = DayTimes.OtherDay(day, date, _at.Overnight || intoNext); mention.OtherDay = mention.Date != date; }
        // Half past two under "Night", below the day's "Evening".
        else if (_at.AfterEvening && group.Day is null && _at.Date is { } evening && written.Half != HalfOfDay.Pm && written.Time.Hour < SmallHours) (mention.Date, mention.OtherDay, mention.Written) = (evening.PlusDays(1), true, written.In(HalfOfDay.Am));
        _mentions.Add(mention);
        return mention;
    }

    private static bool IsLastNight(Term? day) => day is not null && day.Is(Sense.DayRef, "-1") && day.Is(Sense.DayPart, "night");

    // "last night", "yesterday morning"
    private static string? PartOfDay(Term? day) => day is null ? null : day.Text.Contains("night", StringComparison.Ordinal) || day.Text.Contains("evening", StringComparison.Ordinal) ? "evening"
        : day.Text.Contains("morning", StringComparison.Ordinal) ? "morning" : day.Text.Contains("afternoon", StringComparison.Ordinal) ? "afternoon" : null;

    // "tonight" is no morning; "at night" may be.
    private static string? PartOf(Group group) => group.Part is null ? null : group.Part.Text is "tonight" or "tonite" ? "tonight" : PartKind(group.Part);

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
                if (terms[k].Kind is TermKind.Symbol or TermKind.Number or TermKind.Quantity or TermKind.Offset || terms[k].NamesEvent) break;
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

    private static bool IsSignTerm(Term t) => t.Is(Sense.Sign) || t.Is(Sense.TempLabel) || t.Is(Sense.BreathLabel) || SignGrammar.IsBareTemperature(t);

    private static bool IsDoseTerm(Term t) => t.Is(Sense.Medicine) || t.Is(Sense.Device) || t.Is(Sense.Antibiotic);

    private static bool IsCheckTerm(Term t) => t.Is(Sense.SatLabel) || t.Is(Sense.Desat) || t is { Kind: TermKind.Number, IsWhole: true, Number: >= 60 and <= 100 } || t.Is(Sense.OxygenLabel);

    private static int FirstOf(List<Term> terms, Predicate<Term> which) => terms.FindIndex(which) is var i && i < 0 ? int.MaxValue : i;

    private TimeRef? Ref((TimeMention Start, TimeMention? End) mention, TimePrecision? taken = null, double offset = 0) => new(mention.Start) { Taken = taken, OffsetMinutes = offset, Date = _at.Date };

    private TimeRef? Untimed(Group group, Term? part = null)
    {
        var date = group.Day is { } day && _at.Date is { } from ? DayTimes.OtherDay(day, from, _at.Overnight) : _at.Date;
        part ??= group.Part ?? (group.Day is null ? _at.Heading : null);
        return part is null ? null : new TimeRef(null) { Part = part.Text, PartKind = PartKind(part), Date = date, Taken = TimePrecision.PartOfDay };
    }
}
