using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Notes;

// The events of a group, a kind at a time, each with its time.
internal sealed partial class GroupReader
{
    private void AddSessions(Group group, List<(TimeMention Start, TimeMention? End)> mentions, bool hasSession, Term? reference, AreaReading areas, List<Term> left, FeedReading? feed, List<Happening> result)
    {
        if (!hasSession) return;
        // "physio up to 4 a day now" tells how many, not when.
        if (group.Has(Sense.Frequency) && (mentions.Count == 0 || mentions.Count == 1 && group.Terms.Exists(t => t.Is(Sense.Now) || t.Text is "seen" or "handover") && areas.Areas.TrueForAll(a => a.Minutes is null || a.Area == ChestArea.Unknown))) return;
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
        Last(areas, duration);
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
            // "physio started now", in a message
            var now = group.Terms.Exists(t => t.Is(Sense.Now)) && group.Has(Sense.Start) ? 0.0 : (double?)null;
            var start = (fromWriting?.Number ?? now) is { } minutes && _at.Stamp is { } stamp ? new TimeRef(null) { Stamp = stamp.PlusMinutes((long)minutes), Taken = TimePrecision.MessageStamp, Date = _at.Date } : Untimed(group);
            result.Add(Make(start, null, areas, reference, group));
            return;
        }
        foreach (var mention in mentions)
            result.Add(Make(Ref(mention, straightAfter ? TimePrecision.Borrowed : after > 0 ? TimePrecision.Reckoned : null, after), mention.End is null ? null : new TimeRef(mention.End) { Date = _at.Date }, areas, reference, group));
        foreach (var mention in mentions) mention.Start.IsSession = true;
        if (straightAfter) result.Add(new Happening { Kind = HappeningKind.Feed, Line = _at.Index, Sentence = group.Sentence, End = Ref(mentions[0]) });
    }

    // "percussion to the lower lobes for 3 minutes each side": the length is of each place that has no minutes of its own.
    private static void Last(AreaReading areas, Term? duration)
    {
        if (duration is not { Number: > 0 and <= 30 } || areas.Areas.Exists(a => a.Minutes is not null)) return;
        for (var k = 0; k < areas.Areas.Count; k++)
            if (areas.Areas[k].Technique != Technique.Vibration || areas.Areas.TrueForAll(a => a.Technique == Technique.Vibration)) areas.Areas[k] = areas.Areas[k] with { Minutes = duration.Number };
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
            if (term.Kind == TermKind.Times || (term.Kind == TermKind.Number && i + 1 < group.Terms.Count && group.Terms[i + 1].Is(Sense.Times) && !group.Terms[i + 1].Is(Sense.Each)) || (term.Kind == TermKind.Number && term.IsWhole && i + 1 < group.Terms.Count && (group.Terms[i + 1].Is(Sense.Session) && group.Terms[i + 1].Text.EndsWith('s')))) return Doubts.Plain(term.Number);
        }
        return null;
    }

    private void AddDoses(Group group, List<(TimeMention Start, TimeMention? End)> mentions, List<DoseReading> doses, Term? reference, bool afterObservation, List<Happening> result)
    {
        var each = group.Terms.Find(t => t is { Kind: TermKind.Offset, Text: Offsets.Each });
        var before = group.Terms.Find(t => t is { Kind: TermKind.Offset, Text: Offsets.Session });
        var duration = group.Terms.Find(t => t.Kind == TermKind.Duration);
        if (doses.Count == 0 && mentions.Count > 0 && result.Count == 0 && group.Terms.Exists(t => t is { Kind: TermKind.Quantity, Unit: Unit.Puffs }) && !group.Terms.Exists(t => t.NamesEvent))
            doses = [DoseGrammar.Puffs(group.Terms, group.Terms.FindIndex(t => t is { Kind: TermKind.Quantity, Unit: Unit.Puffs }))];
        if (doses.Count == 0 && (group.Has(Sense.First) || (group.Terms.Count <= 6 && group.Terms.Exists(t => t.Is(Sense.Given) && t.Text is "given" or "gave" or "gegee" or "administered"))) && mentions.Count > 0 && result.Count == 0 && !group.Terms.Exists(t => t.NamesEvent || t.Is(Sense.Air)))
            doses = [new DoseReading { Written = "", IsAntibioticWord = true }];
        // "I have given the first one just now"
        if (doses.Count == 0 && mentions.Count == 0 && result.Count == 0 && _at.Stamp is not null && group.Has(Sense.Given) && (group.Has(Sense.First) || group.Terms.Exists(t => t is { Kind: TermKind.Offset, Text: Offsets.Writing })) && !group.Terms.Exists(t => t.NamesEvent))
            doses = [new DoseReading { Written = "", IsAntibioticWord = true }];
        foreach (var dose in doses)
        {
            var first = group.Has(Sense.First);
            // "co-amoxiclav 4 ml BD from 14:00": begun then. What a doctor gave at ten is a prescription.
            var begun = dose.Prescribed && mentions.Count == 1 && group.TimeTerm is { } time && group.Terms.FindLast(t => t.Is(Sense.Given) && t.Text is "given" or "gave") is { } gave && gave.End <= time.Start && gave.Start > group.Terms[dose.Last].Start
                || dose.Prescribed && mentions.Count == 1 && (group.TimeTerm is { At: true } || group.Has(Sense.Start)) && !group.Has(Sense.Person) && !group.Has(Sense.Visit) && !group.Has(Sense.Advice);
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
            if ((feed.IsEnd || ago is not null && _at.Text.Contains("finish", StringComparison.OrdinalIgnoreCase)) && start is not null) happening.End = start; else happening.Start = start;
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
        // "o2 off at 7.45, holding 95", in a message: off then, so now.
        if (mentions.Count == 1 && _at.Stamp is { } sent && checks.Readings is [{ SpO2: not null, Oxygen: { } since0, Phase: CheckPhase.None } held] && group.Terms.Exists(t => t.Text is "holding" or "has" or "have" or "hes" or "shes"))
        {
            result.Add(new Happening { Kind = HappeningKind.Check, Line = _at.Index, Sentence = group.Sentence, Check = new CheckReading { Oxygen = since0 }, Start = Ref(mentions[0]) });
            result.Add(new Happening { Kind = HappeningKind.Check, Line = _at.Index, Sentence = group.Sentence, Check = held, Start = new TimeRef(null) { Stamp = sent, Taken = TimePrecision.MessageStamp, Date = _at.Date } });
            return;
        }
        // "sats 89 at 2, 3 and 4": the same at each of them.
        if (mentions.Count > 1 && !borrowed && checks.Readings is [{ SpO2: not null } only])
        {
            foreach (var mention in mentions) result.Add(new Happening { Kind = HappeningKind.Check, Line = _at.Index, Sentence = group.Sentence, Check = only, Start = Ref(mention) });
            return;
        }
        var named = mentions.Count == 0 || borrowed ? OfTheDay(group.Terms) : [];
        // "95 after the second, 96 after the third": each of its own.
        var eachNamed = named.Count > 1 && named.Count == checks.Readings.Count;
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
            var nth = eachNamed ? named[k] : named.Count > 0 && named.TrueForAll(n => n == named[0]) ? named[0] : null;
            var until = mention?.End is { } end && !borrowed ? new TimeRef(end) { Date = _at.Date } : null;
            result.Add(new Happening { Kind = HappeningKind.Check, Line = _at.Index, Sentence = group.Sentence, Check = reading, Start = start, End = until, Value = nth is { } one && reading.SpO2 is not null ? "nth " + one : mentions.Count > 1 && group.Part is not null ? "part " + PartKind(zipParts ? parts[k] : group.Part) : null });
        }
    }

    // "92 before the first one 94 after", "96 after 2nd": the places of sessions in their day, the last as -1, in the order in which they are named.
    private static List<string> OfTheDay(List<Term> terms)
    {
        var places = new List<string>();
        if (!terms.Exists(t => t.Is(Sense.Before) || t.Is(Sense.After))) return places;
        for (var i = 0; i < terms.Count; i++)
        {
            var counted = terms[i] is { Kind: TermKind.Word, Number: >= 1 and <= 6 } && char.IsAsciiDigit(terms[i].Text[0]);
            var place = counted ? ((int)terms[i].Number - 1).ToString(System.Globalization.CultureInfo.InvariantCulture)
                : terms[i].Text is "first" or "first one" or "1st one" or "1st" ? "0" : terms[i].Text is "second" or "second one" or "2nd" or "2nd one" ? "1" : terms[i].Text is "third" or "third one" or "3rd" or "3rd one" ? "2" : terms[i].Text is "last" or "last one" ? "-1" : null;
            if (place is not null && (i > 0 && (terms[i - 1].Is(Sense.Before) || terms[i - 1].Is(Sense.After) || terms[i - 1].Text == "the") || terms[i].Text.EndsWith("one", StringComparison.Ordinal))) places.Add(place);
        }

        return places;
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

    private void AddOmitted(Group group, List<(TimeMention Start, TimeMention? End)> mentions, AreaReading areas, List<Happening> result)
    {
        // "Lower 3 mins each side, upper 2. No vibration": details of a session told before, of which one technique was left out.
        if (_at.Stamp is null && mentions.Count == 0 && areas.NamesPlace && areas.Areas.Exists(a => a.Minutes is not null) && !group.Denied.Exists(t => t.Is(Sense.Session))) return;
        var denied = group.Denied.Exists(t => t.Is(Sense.Session) || (t.Is(Sense.Technique) && result.TrueForAll(h => h.Kind != HappeningKind.Session)));
        if (!denied || result.Exists(h => h.Kind == HappeningKind.Session)) return;
        result.Add(new Happening { Kind = HappeningKind.Omitted, Line = _at.Index, Sentence = group.Sentence, Start = mentions.Count > 0 ? Ref(mentions[0]) : Untimed(group), Reason = _at.Text });
    }
}
