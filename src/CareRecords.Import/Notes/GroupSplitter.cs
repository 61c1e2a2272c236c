using CareRecords.Import.Reading;

namespace CareRecords.Import.Notes;

/// <summary>
/// Cuts the terms of a line into groups, each about one time. Carers write the time first ("7.15 physio"), last ("pump off 0600") or in the
/// middle, with or without commas: every way to cut is given a cost (<see cref="GroupCost"/>) and the cheapest is taken, by dynamic
/// programming over the places at which a cut can be (the segmentation of Bellman 1961).
/// </summary>
internal static class GroupSplitter
{
    /// <summary>Longest group that is weighed, terms: longer runs are cut at their sentences.</summary>
    private const int LongestGroup = 80;

    /// <summary>The groups of a line, in order.</summary>
    /// <param name="chunks">The chunks of the line; those that hold no record are passed over.</param>
    /// <param name="stamped">Whether the line has a moment of writing, which serves where no time is written.</param>
    /// <param name="section">The heads of the section that the line stands under; empty when none.</param>
    public static List<Group> Split(List<Chunk> chunks, bool stamped, IReadOnlyList<Term> section)
    {
        var (items, denials) = Items(chunks);
        var groups = new List<Group>();
        var start = 0;
        foreach (var end in Cuts(items, stamped))
        {
            groups.Add(Build(items, start, end));
            start = end;
        }
        Label(groups, chunks);
        Correct(groups);
        MoveReadings(groups);
        Inherit(groups, denials.Where(d => d.Denial.SkipsAll).Select(d => d.Index).ToHashSet());
        Share(groups);
        OfAll(groups);
        if (section.Count > 0) Under(groups, section);
        foreach (var denial in denials) GroupDenials.Take(groups, denial);
        return groups;
    }

    private static (List<GroupItem> Items, List<GroupDenials.OfChunk> Denials) Items(List<Chunk> chunks)
    {
        var items = new List<GroupItem>();
        var denials = new List<GroupDenials.OfChunk>();
        var passed = false;
        for (var c = 0; c < chunks.Count; c++)
        {
            if (chunks[c].Unreal) { passed = true; continue; }
            var denial = Modality.Deny(chunks[c].Terms);
            if (denial.Denied.Count > 0 || denial.SkipsAll) denials.Add(new GroupDenials.OfChunk(chunks[c], c, denial));
            for (var i = 0; i < denial.Terms.Count; i++)
                items.Add(new GroupItem(denial.Terms, i, chunks[c], c, i == 0 ? passed && chunks[c].Before is not "." ? "." : chunks[c].Before : null));
            if (denial.Terms.Count > 0) passed = false;
        }
        return (items, denials);
    }

    private static List<int> Cuts(List<GroupItem> items, bool stamped)
    {
        if (items.Count == 0) return [];
        var times = 0;
        var breaks = 0;
        foreach (var item in items) { if (item.IsTime) times++; if (item.Before is "." or "/" or "|" or "?" or ",") breaks++; }
        if (breaks == 0 && times <= 1 && !items.Exists(i => i.Term.Is(Sense.DayPart) || i.Term.Is(Sense.Meal))) return [items.Count];
        // Best cost of everything before a place, by the style of the last group with a time; and where that group began.
        var best = new double[items.Count + 1, GroupCost.Styles];
        var from = new (int Place, int Style)[items.Count + 1, GroupCost.Styles];
        for (var p = 0; p <= items.Count; p++)
            for (var s = 0; s < GroupCost.Styles; s++) best[p, s] = p == 0 && s == 0 ? 0 : double.MaxValue;
        for (var start = 0; start < items.Count; start++)
        {
            if (start > 0 && double.IsNaN(GroupCost.OfCut(items[start - 1], items[start]))) continue;
            var cost = new GroupCost(stamped);
            for (var end = start + 1; end <= items.Count && end - start <= LongestGroup; end++)
            {
                cost.Take(items, end - 1, start);
                var cut = end == items.Count ? 0 : GroupCost.OfCut(items[end - 1], items[end]);
                if (double.IsNaN(cut)) continue;
                var (own, style) = cost.Total(items, start, end);
                for (var s = 0; s < GroupCost.Styles; s++)
                {
                    if (best[start, s] == double.MaxValue) continue;
                    var total = best[start, s] + own + cut + GroupCost.OfStyles(s, style);
                    var next = style == 0 ? s : style;
                    if (total >= best[end, next]) continue;
                    best[end, next] = total;
                    from[end, next] = (start, s);
                }
            }
        }
        return Path(best, from, items.Count);
    }

    private static List<int> Path(double[,] best, (int Place, int Style)[,] from, int count)
    {
        var style = 0;
        for (var s = 1; s < GroupCost.Styles; s++) if (best[count, s] < best[count, style]) style = s;
        var cuts = new List<int>();
        for (var place = count; place > 0;)
        {
            cuts.Add(place);
            (place, style) = from[place, style];
        }
        cuts.Reverse();
        return cuts;
    }

    private static Group Build(List<GroupItem> items, int start, int end)
    {
        var group = new Group { Sentence = items[start].Chunk.Sentence, FirstChunk = items[start].ChunkIndex, LastChunk = items[end - 1].ChunkIndex };
        for (var i = start; i < end; i++)
        {
            var (term, terms, at) = (items[i].Term, items[i].Terms, items[i].At);
            if (i > start && items[i].Before is { } before && group.Terms.Count > 0) group.Terms.Add(Comma(term, before));
            if (items[i].IsTime)
            {
                if (group.TimeTerm is null) { group.TimeTerm = term; group.Times = term.Times.Count > 0 ? term.Times : [term.Clock!]; }
                else
                {
                    group.EndTime ??= term.Clock;
                    if (at > 0 && terms[at - 1].Is(Sense.Stop)) group.Terms.Remove(terms[at - 1]);
                }
                continue;
            }
            if (term.Kind == TermKind.BadTime) { group.BadTime ??= term; continue; }
            if (term.Kind != TermKind.Reference)
            {
                // "since yesterday" is no day of the event's; "since 10am yesterday" is.
                if (at > 0 && terms[at - 1].Is(Sense.Since) && (terms[at - 1].Kind != TermKind.Time || term.Is(Sense.DayPart)) && (term.Is(Sense.DayRef) || term.Is(Sense.Weekday))) continue;
                if (IsOtherDay(terms, at)) { group.Day ??= term; continue; }
                if (IsPart(terms, at))
                    group.Parts.Add(at > 0 && (terms[at - 1].Is(Sense.After) || terms[at - 1].Is(Sense.Before)) ? term with { Text = terms[at - 1].Text + " " + term.Text } : term);
            }
            group.Terms.Add(term);
        }
        group.Part = group.Parts.Count > 0 ? group.Parts[0] : null;
        if (group.TimeTerm is null && group.BadTime is null) Slot(group);
        return group;
    }

    // A bare number at a time's place, once the group around it is known.
    private static void Slot(Group group)
    {
        SlotTimes.Reduce(group.Terms);
        if (!group.Terms.Exists(t => t.Kind is TermKind.Time or TermKind.BadTime)) HourAlone(group.Terms);
        if (group.Terms.Find(t => t.Kind == TermKind.BadTime) is { } bad) { group.BadTime = bad; group.Terms.Remove(bad); return; }
        if (group.Terms.Find(t => t.Kind == TermKind.Time && t.Clock is not null) is not { } time) return;
        (group.TimeTerm, group.Times) = (time, time.Times.Count > 0 ? time.Times : [time.Clock!]);
        group.Terms.Remove(time);
    }

    // "sats 95 when we got in 330": three figures that nothing else in the group can be.
    private static void HourAlone(List<Term> terms)
    {
        if (!terms.Exists(t => t.NamesEvent) || terms.Exists(t => t.NamesFeed)) return;
        var hours = terms.FindAll(t => t is { Kind: TermKind.Number, IsWhole: true, Text.Length: 3, Clock: not null } && t.Number % 5 == 0);
        if (hours.Count != 1 || terms.IndexOf(hours[0]) is not (> 0 and var at) || terms[at - 1].Is(Sense.TempLabel) || terms[at - 1].Is(Sense.SatLabel) || terms[at - 1].Is(Sense.PulseLabel) || terms[at - 1].Is(Sense.Medicine)) return;
        terms[at] = terms[at] with { Kind = TermKind.Time };
    }

    /// <summary>Whether the term names another day than the line's.</summary>
    internal static bool IsOtherDay(List<Term> terms, int at) => !(at > 0 && terms[at - 1].Text is "than" or "since") && IsDay(terms, at);

    private static bool IsDay(List<Term> terms, int at) => (terms[at].Is(Sense.DayRef) && !terms[at].Is(Sense.DayRef, "0")) || terms[at].Is(Sense.Weekday)
        || (terms[at].Text == "sat" && at == terms.Count - 1 && at > 0 && terms[at - 1].Kind == TermKind.Time);

    /// <summary>Whether the term names a part of the day or a meal.</summary>
    internal static bool IsPart(List<Term> terms, int at) => terms[at].Kind != TermKind.Reference && (terms[at].Is(Sense.DayPart) || terms[at].Is(Sense.Meal)
        || (terms[at].Is(Sense.AmPm) && (terms[at].Text.Length > 2 || terms.Count == 1 || (at > 0 && terms[at - 1] is { Kind: TermKind.Number, Number: >= 60 }))));

    private static Term Comma(Term term, string before) => new()
    {
        Kind = TermKind.Symbol,
        Text = before is "." or "/" or "|" or "?" ? ";" : before is "(" ? "(" : ",",
        Start = term.Start,
        End = term.Start,
    };

    // "4th 7pm same, inhaler 6.40. Pulse 130 sats 93": readings without a time go with the one session of their line.
    private static void MoveReadings(List<Group> groups)
    {
        for (var g = 1; g < groups.Count; g++)
        {
            var group = groups[g];
            if (group.Times.Count > 0 || group.Part is not null || group.BadTime is not null || !group.Terms.Exists(t => t.Is(Sense.SatLabel) || t.Is(Sense.PulseLabel) || t.Is(Sense.Before) || t.Is(Sense.After)) || group.Terms.Exists(t => t.NamesEvent && !t.Is(Sense.SatLabel) && !t.Is(Sense.PulseLabel) && !t.Is(Sense.Air) && !t.Is(Sense.OxygenLabel))) continue;
            if (groups.GetRange(0, g).FindLast(x => x.Times.Count == 1 && x.Terms.Exists(t => t.Is(Sense.Session) || t.Is(Sense.Technique) || t.Kind == TermKind.Reference)) is not { } session) continue;
            session.Terms.Add(new Term { Kind = TermKind.Symbol, Text = ";", Start = group.Terms[0].Start, End = group.Terms[0].Start });
            session.Terms.AddRange(group.Terms);
            session.LastChunk = Math.Max(session.LastChunk, group.LastChunk);
            groups.RemoveAt(g--);
        }
    }

    // "7.15 both bases 3 min" under "Physio:".
    private static void Under(List<Group> groups, IReadOnlyList<Term> section)
    {
        foreach (var group in groups)
            if ((group.Times.Count > 0 || group.Part is not null) && !group.Terms.Exists(t => t.NamesEvent && t.Kind != TermKind.Reference || t.Is(Sense.Person) || t.Is(Sense.Visit)) && !(group.Terms.Count == 0 && groups.Count > 1)) group.Terms.InsertRange(0, section);
    }

    // "Last night: physio 6, pump on 8.45. This morning: pump off 6.20": a day before a colon is that of what follows it.
    private static void Label(List<Group> groups, List<Chunk> chunks)
    {
        Term? day = null;
        var (until, sentence) = (0, -1);
        foreach (var group in groups)
        {
            if (sentence >= 0 && group.Sentence != sentence) (day, sentence) = (null, -1);
            for (var c = Math.Max(until, group.FirstChunk); c <= group.LastChunk && c + 1 < chunks.Count; c++)
            {
                if (OpensSentence(chunks, c) && chunks[c].Terms.Find(t => IsOtherDay(chunks[c].Terms, chunks[c].Terms.IndexOf(t))) is { } opening) { (day, until, sentence) = (opening, c + 1, chunks[c].Sentence); continue; }
                if (chunks[c + 1].Before != ":" || chunks[c].Terms.Exists(t => t.Kind != TermKind.Word || t.NamesEvent)) continue;
                if (chunks[c].Terms.Find(t => t.Is(Sense.DayRef)) is { } named) (day, until) = (named.Is(Sense.DayRef, "0") ? null : named, c + 1);
                else if (chunks[c].Has(Sense.AmPm) || chunks[c].Has(Sense.DayPart)) (day, until) = (null, c + 1);
            }
            if (group.Terms.Exists(t => t.Is(Sense.DayRef, "0"))) day = null;
            group.Day ??= day;
        }
    }

    // "On Wednesday night, at about eleven, he was 38.4": the day that a sentence begins with, before a comma.
    private static bool OpensSentence(List<Chunk> chunks, int at) => chunks[at + 1].Before == "," && chunks[at + 1].Sentence == chunks[at].Sentence && (at == 0 || chunks[at - 1].Sentence != chunks[at].Sentence)
        && chunks[at].Terms.Count <= 4 && chunks[at].Terms.TrueForAll(t => t.Kind == TermKind.Word && !t.NamesEvent) && chunks[at].Terms.Exists(t => t.Text is "on" or "last" || t.Is(Sense.DayRef));

    // "perc 07:00. Sorry, 07:30", "chest 7.30, oops make that 7.45": the later time stands for the earlier.
    private static void Correct(List<Group> groups)
    {
        for (var g = 1; g < groups.Count; g++)
        {
            var (group, before) = (groups[g], groups[g - 1]);
            if (group.Times.Count != 1 || before.Times.Count != 1 || !group.Terms.Exists(t => t.Is(Sense.Correction) && !t.Is(Sense.Not) && t.Start < group.TimeTerm!.Start) || group.Terms.Exists(t => t.NamesEvent && !t.Is(Sense.SatLabel) && !t.Is(Sense.Air))) continue;
            (before.Times, before.TimeTerm) = (group.Times, group.TimeTerm);
            before.Terms.AddRange(group.Terms.Where(t => !t.Is(Sense.Correction)));
            groups.RemoveAt(g--);
        }
    }

    // "bottle 3pm 90 ml, 6pm 90 ml", "salbutamol 7am 4 puffs, 11am 4": an amount at a time of its own is of what was named before it.
    private static void Inherit(List<Group> groups, HashSet<int> skipped)
    {
        for (var g = 1; g < groups.Count; g++)
        {
            var (group, before) = (groups[g], groups[g - 1]);
            // "Missed the early one"
            if (group.Times.Count == 0 && skipped.Contains(group.FirstChunk)) continue;
            if ((group.Times.Count == 0 && group.Part is null) || group.Terms.Exists(t => t.NamesEvent || t.Is(Sense.Side) || t.Is(Sense.Area) || t.Is(Sense.SideArea) || t.Is(Sense.Each) || t.Is(Sense.Visit) || t.Is(Sense.Person))) continue;
            // "vomited after feed, 12.30-1": when the feed was.
            if (group.Terms.Count == 0 && group.Times is [{ End: not null }] && before.Terms.Count > 0 && before.Terms[^1].NamesFeed && before.Terms.Exists(t => t.Is(Sense.Sign)))
            {
                group.Terms.Add(before.Terms[^1]);
                continue;
            }
            // "clarithromycin 8.15, pm one 20.40", "amoxicillin 5 ml 10.30, then 6.30": one more of the same.
            if (group.Terms.Count > 0 && group.Terms.TrueForAll(t => t.Is(Sense.Then) || t.Is(Sense.And) || t.Is(Sense.At) || group.Times.Count == 1 && group.Parts.Contains(t)) || !group.Terms.Exists(t => t.Is(Sense.Not)) && group.Terms.Exists(t => t.Text is "one" or "1" && t.Is(Sense.NumberWord) || t.Is(Sense.Again) || t.Text is "second" or "third" or "fourth" or "next" or "last" || (t.Kind == TermKind.Word && t.Text is "2" or "3" or "4" or "5")) && !group.Terms.Exists(t => t.Kind is TermKind.Quantity or TermKind.Number) && group.Terms.Count <= 5)
            {
                group.Terms.InsertRange(0, before.Terms.FindAll(t => (t.Kind == TermKind.Word && (t.NamesFeed || t.Is(Sense.Medicine) || t.Is(Sense.Device) || t.Is(Sense.Antibiotic) || t.Is(Sense.Session))) || t is { Kind: TermKind.Quantity, Unit: Unit.Ml or Unit.Mg or Unit.Mcg or Unit.Puffs }));
                continue;
            }
            if (group.Times.Count == 0) continue;
            var amounts = group.Terms.FindAll(t => t.Kind is TermKind.Number or TermKind.Quantity or TermKind.Times);
            if (amounts.Count != 1 || group.Terms.Count(t => t.Kind == TermKind.Word && t.Meanings.Length == 0) > 2) continue;
            var heads = before.Terms.FindAll(t => t.Kind == TermKind.Word && (t.NamesFeed || t.Is(Sense.Medicine) || t.Is(Sense.Device)));
            if (heads.Count == 0 || before.Terms.Exists(t => t.Is(Sense.Session) || t.Is(Sense.Technique)) || (heads.Exists(t => t.NamesFeed) && heads.Exists(t => !t.NamesFeed))) continue;
            if (IsSaturation(amounts[0]) && !heads.Exists(t => t.Is(Sense.Bottle) || t.Is(Sense.Milk) || t.Is(Sense.Bolus)) && !(heads.Exists(t => t.NamesFeed) && before.Terms.Exists(t => t.Kind == TermKind.Number && t.Number == amounts[0].Number))) continue;
            if (amounts[0].Kind == TermKind.Quantity && (heads.Exists(t => t.NamesFeed) ? amounts[0].Unit is not (Unit.Ml or Unit.Oz) : amounts[0].Unit is not (Unit.Puffs or Unit.Ml or Unit.Mg or Unit.Mcg or Unit.Neb))) continue;
            group.Terms.InsertRange(0, heads);
        }
    }

    // "Clapping 7-7.15 and again 6.30-6.45, bottoms three each": what is told after both is of both.
    private static void Share(List<Group> groups)
    {
        for (var g = 0; g + 1 < groups.Count; g++)
        {
            var (first, second) = (groups[g], groups[g + 1]);
            if (first.Times.Count == 0 || second.Times.Count == 0 || !second.Terms.Exists(t => t.Is(Sense.Again)) || !first.Terms.Exists(t => t.Is(Sense.Session) || t.Is(Sense.Technique)) || first.Terms.Exists(t => t.Kind is TermKind.Number or TermKind.Quantity or TermKind.Reference)) continue;
            if (second.Terms.Exists(t => t.Is(Sense.Medicine) || t.Is(Sense.Device) || t.NamesFeed)) continue;
            first.Terms.AddRange(second.Terms.FindAll(t => t.Kind is TermKind.Number or TermKind.Quantity or TermKind.Symbol || t.Is(Sense.Area) || t.Is(Sense.Side) || t.Is(Sense.SideArea) || t.Is(Sense.Each) || t.Is(Sense.EachSide)));
        }
    }

    // "chest 6.15, 10.30, 2.30. All bottoms 3 mins each", "half 7 D, half 12 N, 6 M. All tapping 3 mins each": what is said of all is of every session before it in the line.
    private static void OfAll(List<Group> groups)
    {
        for (var g = 0; g < groups.Count; g++)
        {
            var all = groups[g];
            var said = all.Terms.FindIndex(t => t.Text is "all" or "every time" or "each time" or "all of them" or "all times" or "both times" or "every one" or "all the same");
            if (said < 0 || !all.Terms.Exists(t => t.Is(Sense.Area) || t.Is(Sense.SideArea) || t.Is(Sense.AnyArea) || t.Is(Sense.Spots) || t.Is(Sense.Technique) || t.Areas is not null || t.Kind == TermKind.Reference)) continue;
            // "all on the half litre" is of the readings.
            if (all.Terms[said].Text == "all" && !all.Terms.Skip(said + 1).Take(4).Any(t => t.Is(Sense.Area) || t.Is(Sense.Side) || t.Is(Sense.SideArea) || t.Is(Sense.Technique) || t.Is(Sense.Spots) || t.Areas is not null || t.Kind == TermKind.Reference)) continue;
            var untimed = all.Times.Count == 0 && all.Part is null;
            var details = all.Terms.FindAll(t => t.Kind is TermKind.Number or TermKind.Range or TermKind.Parts or TermKind.Reference || t is { Kind: TermKind.Quantity, Unit: Unit.Min } || t.Text is "all" || t.Areas is not null || t.Is(Sense.Technique) || t.Is(Sense.Area) || t.Is(Sense.Side) || t.Is(Sense.SideArea)
                || t.Is(Sense.AnyArea) || t.Is(Sense.Spots) || t.Is(Sense.Each) || t.Is(Sense.EachSide) || t.Is(Sense.And) || t.Is(Sense.Then));
            var given = false;
            foreach (var before in groups.Take(untimed ? g : g + (said == 0 ? 0 : 1)))
            {
                if (before == all || before.Times.Count == 0 || before.Terms.Exists(t => t is { Kind: TermKind.Quantity, Unit: Unit.Puffs or Unit.Ml or Unit.Mg or Unit.Percent or Unit.Litre } || t.Is(Sense.Person) && t.Text.Length > 1 || t.Is(Sense.Visit) || t.Is(Sense.Advice))) continue;
                var session = before.Terms.Exists(t => t.Is(Sense.Session) || t.Is(Sense.Technique));
                if (session ? before.Terms.Exists(t => t.Is(Sense.Area) || t.Is(Sense.SideArea) || t.Areas is not null || t.Kind is TermKind.Reference || t is { Kind: TermKind.Quantity, Unit: Unit.Min }) : before.Terms.Exists(t => t.NamesEvent) || !details.Exists(t => t.Is(Sense.Technique) || t.Areas is not null || t.Kind == TermKind.Reference)) continue;
                before.Terms.AddRange(details);
                before.Denied.AddRange(all.Denied);
                given = true;
            }
            if (given && untimed) groups.RemoveAt(g--);
        }
    }

    private static bool IsSaturation(Term term) => term is { Kind: TermKind.Number, IsWhole: true, Number: >= 80 and <= 100 } or { Kind: TermKind.Quantity, Unit: Unit.Percent };
}
