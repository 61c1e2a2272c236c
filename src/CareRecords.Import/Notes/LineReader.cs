using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Notes;

/// <summary>Reads one line on its own: terms, chunks, groups, events.</summary>
internal sealed partial class LineReader
{
    /// <summary>Longest line that is read as a note, characters: a page of prose. Longer ones are asked about.</summary>
    public const int LongestLine = 8_000;

    private readonly string _file;
    private readonly TermReader _reader;

    /// <summary>A reader of lines of a file.</summary>
    public LineReader(string file, TermReader reader) => (_file, _reader) = (file, reader);

    /// <summary>The file's name as it is to appear in sources.</summary>
    public string File => _file;

    /// <summary>Reads the words of a line.</summary>
    public LineRead Read(PlacedLine placed)
    {
        var (index, content, date, stamp) = (placed.Index, placed.Stamp is { } written ? HourOfMessage.WrittenOut(placed.Words, written) : placed.Words, placed.Date, placed.Stamp);
        var read = new LineRead { Index = index, Text = placed.Line, Item = placed.Item, Date = date, Stamp = stamp, By = placed.By, AboveFirstDay = placed.AboveFirstDay, Words = content, Continues = placed.Continues };
        if (content.Length > LongestLine) { read.Doubts.Add(Doubts.TooLong(index, _file, content.Length)); return read; }
        var words = NotUntil.Reduce(Asides.Reduce(WrongFirst.Reduce(_reader.Read(StrikeOut(content)))));
        if (placed.Pairs != PairMeaning.Unknown) words = PairMeanings.Joined(words);
        if (LateCorrection.Take(words) is var (late, rest)) (read.Late, words) = (late, rest);
        var terms = EitherTime.Reduce(TimeLists.Reduce(TrailingTimes.Reduce(SameReading.Reduce(References.Reduce(Pronouns.Reduce(Neighbours.Reduce(Offsets.Reduce(OffMisspelt.Reduce(words)))))))));
        if (terms.Count == 0) return read;
        var chunks = Chunk.Cut(terms);
        // "full set, no inhaler before it (forgot)": why, of what was just denied.
        chunks.RemoveAll(c => c.Bracketed && c.Terms.TrueForAll(t => t.Is(Sense.Skip)) && chunks.IndexOf(c) is > 0 and var at && chunks[at - 1].Sentence == c.Sentence && (chunks[at - 1].Has(Sense.Not) || chunks[at - 1].Has(Sense.Skip)));
        foreach (var chunk in chunks) SlotTimes.Reduce(chunk.Terms);
        Modality.Mark(chunks);
        Mark(read, terms, chunks);
        if ((read.Marks & LineMarks.Question) != 0) return read;
        Prescriptions(read, chunks, content);
        if ((read.Marks & LineMarks.Unreal) == 0) read.AtTimes = UnknownWords.Of(terms);
        var context = new LineContext(_file, index, content, date, stamp, placed.Pairs, PartOf(chunks) ?? (placed.PartOfDay is { } heading ? GroupReader.PartKind(heading) : null), placed.PartOfDay, placed.Overnight, placed.AfterEvening);
        var groups = GroupSplitter.Split(chunks, stamp is not null, placed.Section);
        double? carried = null;
        TimeMention? earlier = null;
        if (terms is [{ Kind: TermKind.Reference } whole, ..] && whole.Is(Sense.Same, nameof(ReferTo.Day)) && terms.Exists(t => t.Text is "but" or "except" or "apart" or "bar") && terms.Exists(t => t.Kind == TermKind.Time))
        {
            // "same as yesterday but pm one was at 6.30": the day's times cannot be told for certain.
            read.Doubts.Add(Doubts.Unclear(index, _file, $"'{content.Trim()}' does not say which times were the same."));
            return read;
        }
        var reader = new GroupReader(context, read.Doubts, read.Mentions);
        foreach (var group in groups)
        {
            var told = reader.Read(group);
            var joined = (group.TimeTerm?.Is(Sense.Since) == true || group.Terms.Exists(t => t.Text is "run" or "ran" or "running" or "having run" or "having")) && Since(read, told);
            if (RateOf(read, told))
            {
                joined = true;
                told.Happenings.Clear();
            }

            Borrow(told, stamp is null || group.Terms.Exists(t => t.Text is "came up to" or "went to" or "went up to" or "came up" or "went up") ? earlier : null);
            earlier = told.Mentions.Count == 1 ? told.Mentions[0].Start : told.Mentions.Count > 1 ? null : earlier;
            if (!joined && group.BadTime is null && Leftovers.Of(group, told) is { } left) read.Left.Add(left);
            if (read.Told.Count > 0 && Relief(read.Told[^1], told) is { } given) carried = given;
            // "off oxygen 10.00, 95 at 11.00": on air from then on, in the same line; so with a flow.
            if (carried is { } flow) foreach (var check in told.Happenings.Where(h => h.Check is { SpO2: not null, Oxygen: null })) check.Check!.Oxygen = flow;
            carried = told.Happenings.FindLast(h => h.Check is { SpO2: null, Oxygen: not null })?.Check!.Oxygen ?? carried;
            PutRight(read.Told, told, group);
            read.Told.Add(told);
        }
        if (chunks.Exists(c => c.Unreal && c.Terms.Exists(t => t.Text == "next one") && c.Terms.Exists(t => t.Kind == TermKind.Time) && !c.Terms.Exists(t => t.Text is "due" or "at"))) read.Doubts.Add(Doubts.Unclear(index, _file, $"'{content.Trim()}' does not say whether the next dose was given, or is still to come.", "given", "to come"));
        if (chunks.Exists(c => Modality.IsUnsure(c) || Modality.IsNext(chunks, c) || Modality.PlansAndTells(c)) || chunks.Exists(Modality.IsUnsureOfAll) && chunks.Exists(c => c.Terms.Exists(Modality.IsDeniable)) || terms.Exists(t => t.Is(Sense.Unsure) && t.Text.StartsWith("no memory", StringComparison.Ordinal)) && (read.Marks & LineMarks.Care) != 0) read.Doubts.Add(Doubts.Unclear(index, _file, $"'{content.Trim()}' does not say for certain what was done.", "done", "not done"));
        if (chunks.Exists(Modality.LeavesOutATime)) read.Doubts.Add(Doubts.Unclear(index, _file, $"'{content.Trim()}' leaves one out, and it is not certain which of those told before."));
        // Beside a time that cannot be, words without a time of their own have no time at all.
        if (groups.Exists(g => g.BadTime is not null)) foreach (var told in read.Told) told.Happenings.RemoveAll(h => h.Start is null && h.End is null);
        Off(read, groups);
        TimeOnly(read, groups, terms);
        Unfinished(read, groups, content);
        return read;
    }

    // "95 before, 97 after. No sorry, 94 before": the reading of the same side of the session was not meant.
    private static void PutRight(List<GroupReader.Told> before, GroupReader.Told now, Group group)
    {
        if (group.Terms.FindIndex(t => t.Is(Sense.Correction) && t.Text is not "not") is not (>= 0 and <= 1) || now.Happenings.FindAll(h => h.Kind == HappeningKind.Check) is not [{ Check: { SpO2: not null, Phase: not CheckPhase.None } right }]) return;
        before.FindLast(t => t.Happenings.Exists(IsWrong))?.Happenings.RemoveAll(IsWrong);
        bool IsWrong(Happening h) => h.Check is { SpO2: not null } wrong && wrong.Phase == right.Phase;
    }

    // "sats 86 at 3.20. Oxygen 2 l. 92 at 3.40": oxygen was given for the low reading, which was without it.
    private static double? Relief(GroupReader.Told before, GroupReader.Told after)
    {
        if (before.Happenings.FindLast(h => h.Kind == HappeningKind.Check) is not { Check: { SpO2: < LowSaturation } low, Start: { } start } reading
            || after.Happenings.Find(h => h.Kind == HappeningKind.Check)?.Check is not { SpO2: { } risen } later || risen <= low.SpO2) return null;
        var flow = low.FlowApart && later.Oxygen is null ? low.Oxygen : later.FlowApart && low.Oxygen is null ? later.Oxygen : null;
        if (flow is null) return null;
        low.Oxygen = null;
        before.Happenings.Insert(before.Happenings.IndexOf(reading) + 1, new Happening { Kind = HappeningKind.Check, Line = reading.Line, Sentence = reading.Sentence, Check = new CheckReading { Oxygen = flow, Later = true }, Start = start with { Taken = CareRecords.Records.TimePrecision.Borrowed } });
        return flow;
    }

    private const double LowSaturation = 92;

    // "pump off 0600. ¼ L 95": a reading without a time, after a time in the same line.
    private static void Borrow(GroupReader.Told told, TimeMention? earlier)
    {
        if (earlier is null) return;
        foreach (var happening in told.Happenings)
            if (happening is { Start: null, End: null, Kind: HappeningKind.Check or HappeningKind.Sign, Check: null or { Phase: CareRecords.Records.CheckPhase.None } }) happening.Start = new TimeRef(earlier) { Taken = CareRecords.Records.TimePrecision.Borrowed, Date = earlier.Date };
    }

    // "2200 pump on, 40/hr tonight": how fast the feed of the line ran.
    private static bool RateOf(LineRead read, GroupReader.Told told)
    {
        if (told.Happenings is not [{ Kind: HappeningKind.Feed, Rate: { } rate, Millilitres: null, Start.Mention: null, End: null }] || read.Told is not [.., { Happenings: [{ Kind: HappeningKind.Feed, Rate: null, End: null, Start.Mention: not null } feed] }]) return false;
        feed.Rate = rate;
        return true;
    }

    // "06:10 pump off (on since 22:00, 70 ml/h)": one feed, begun the evening before.
    private static bool Since(LineRead read, GroupReader.Told told)
    {
        if (told.Happenings is not [{ Kind: HappeningKind.Feed, End: null, Start.Mention: { } begun } since] || read.Told is not [.., { Happenings: [{ Kind: HappeningKind.Feed, Start: null, End.Mention: { } ended } feed] }]) return false;
        (feed.Start, feed.Rate, feed.Millilitres) = (since.Start, feed.Rate ?? since.Rate, feed.Millilitres ?? since.Millilitres);
        told.Happenings.Clear();
        if (begun.Date is { } date && begun.Written.Time > ended.Written.Time) (begun.Date, begun.OtherDay) = (date.PlusDays(-1), true);
        return true;
    }

    private static void Mark(LineRead read, List<Term> terms, List<Chunk> chunks)
    {
        // "forgot to ask her what time" asks nothing.
        if (terms.FindIndex(t => t.Is(Sense.Question)) is var asks && asks >= 0 && !(asks > 0 && terms[asks - 1].Text is "forgot" or "forgotten"))
        {
            // "The usual at seven this morning. Hemi's coming on the twentieth, need to ask him about swimming": the other sentences tell.
            var question = chunks.Find(c => c.Has(Sense.Question))?.Sentence;
            if (chunks.Exists(c => c.Sentence != question && c.Terms.Exists(t => t.Kind == TermKind.Time) && c.Terms.Exists(t => t.NamesEvent || t.Kind == TermKind.Reference)))
                foreach (var chunk in chunks.Where(c => c.Sentence == question)) chunk.Unreal = true;
            else read.Marks |= LineMarks.Question;
        }
        if (terms.Exists(t => t.Is(Sense.Correction) && !t.Is(Sense.Not))) read.Marks |= LineMarks.Correction;
        // "6:50 not 6:40", "2 pm and not 1.30"
        for (var i = 1; i + 1 < terms.Count; i++)
            if (terms[i].Text is "not" or "and not" && terms[terms[i - 1].Is(Sense.And) && i > 1 ? i - 2 : i - 1].Kind == TermKind.Time && terms[i + 1].Kind == TermKind.Time) read.Marks |= LineMarks.RightFirst | LineMarks.Correction;
        if (chunks.Exists(c => c.Unreal)) read.Marks |= LineMarks.Unreal;
        if (chunks.Exists(c => c.Unreal && c.Terms.Exists(t => t.Is(Sense.Session)))) read.Marks |= LineMarks.PlansSession;
        if (terms.Exists(t => t.Is(Sense.AllDone) || (t.Text == "done" && t.Is(Sense.Stop)))) read.Marks |= LineMarks.AllDone;
        if (terms.Exists(t => t.NamesEvent)) read.Marks |= LineMarks.Care;
        if (terms is [{ Kind: TermKind.Reference } reference, ..] && reference.Is(Sense.Same, nameof(ReferTo.Day)) && terms.TrueForAll(t => t.Kind is TermKind.Reference or TermKind.Symbol || t.Text is "all" or "again")) read.Marks |= LineMarks.RepeatsDay;
        if (terms.Exists(t => t is { Kind: TermKind.Parts, Parts: [>= 1 and <= 6, >= 2 and <= 6] } && t.Parts[0] <= t.Parts[1] && t.Text.Contains('/')) && terms.Exists(t => t.Text is "done" || t.Is(Sense.AllDone)) && !terms.Exists(t => t.Kind == TermKind.Time)) read.Marks |= LineMarks.Share;
    }

    // A chunk that is only a part of the day ("a.m. —", "all am", "A long night.") speaks of the whole line.
    private static string? PartOf(List<Chunk> chunks)
    {
        string? found = null;
        foreach (var chunk in chunks)
        {
            var part = chunk.Terms.Find(t => t.Is(Sense.DayPart) || t.Is(Sense.AmPm) || t.Is(Sense.Meal));
            if (part is null || chunk.Terms.Exists(t => t.Kind is not TermKind.Word || t.NamesEvent || t.Is(Sense.Again) || t.Is(Sense.Then) || t.Is(Sense.Before) || t.Is(Sense.After) || t.Is(Sense.Skip) || t.Is(Sense.Not))) continue;
            // "third at bedtime" at the end of a line is of the third only.
            if (chunk != chunks[0] && chunk.Before is not ("." or "(") && !chunk.Terms.Exists(t => t.Text is "all" or "both") && !OpensLine(chunks, chunk)) continue;
            var kind = part.Text is "tonight" or "tonite" ? "tonight" : GroupReader.PartKind(part);
            if (part.Is(Sense.AmPm, "pm") && part.Text.Length <= 4) kind = "afternoon";
            if (found is not null && found != kind) return null;
            found = kind;
        }
        return found;
    }

    // "Gosh, what a night. She woke at ten past three": the first sentence tells nothing else.
    private static bool OpensLine(List<Chunk> chunks, Chunk chunk) => chunk.Sentence == 0 && chunks[^1].Sentence > 0 && chunks.TrueForAll(c => c.Sentence > 0 || c.Terms.TrueForAll(t => t.Kind is TermKind.Word or TermKind.Symbol && !t.NamesEvent));

    private static void Prescriptions(LineRead read, List<Chunk> chunks, string content)
    {
        // "prescribed amoxicillin, 5 ml three times daily": the amount stands behind the comma.
        foreach (var sentence in chunks.Where(c => c.Unreal).GroupBy(c => c.Sentence))
            if (sentence.Any(c => c.Has(Sense.Medicine) || c.Has(Sense.Device))) read.Prescribed.AddRange(DoseGrammar.Read([.. sentence.SelectMany(c => c.Terms)], content, []));
    }

    // "~~n1600~~ n1630": what was struck out was not meant.
    private static string StrikeOut(string content)
    {
        // "4/4/-/-", "3 3 - -": a dash in a row of minutes is none; not "sats 94/-".
        if (content.Contains('-')) content = Dashes().Replace(content, m => m.Value.Replace('-', '0'));
        if (content.Contains(')')) content = Written().Replace(Initials().Replace(content, m => new string(' ', m.Length)), m => new string(' ', m.Length));
        var open = content.IndexOf("~~", StringComparison.Ordinal);
        while (open >= 0 && content.IndexOf("~~", open + 2, StringComparison.Ordinal) is var close && close > 0)
        {
            content = string.Concat(content.AsSpan(0, open), new string(' ', close + 2 - open), content.AsSpan(close + 2));
            open = content.IndexOf("~~", close + 2, StringComparison.Ordinal);
        }
        return content;
    }

    [System.Text.RegularExpressions.GeneratedRegex(@"(?<=\b[0-2]?\d(?:/[0-2]?\d)*)(?:/-)+(?=$|[\s,;.])|(?<=\b[0-2]?\d [0-2]?\d) - -(?=$|[\s,;.])", System.Text.RegularExpressions.RegexOptions.CultureInvariant)]
    private static partial System.Text.RegularExpressions.Regex Dashes();

    // "1100 (A) 1700 (M)": who wrote it.
    [System.Text.RegularExpressions.GeneratedRegex(@"\((?![LRB]\)|RA\))[A-Z]{1,2}\)", System.Text.RegularExpressions.RegexOptions.CultureInvariant)]
    private static partial System.Text.RegularExpressions.Regex Initials();

    // "(written up Sunday)": when it was written is not when it was done.
    [System.Text.RegularExpressions.GeneratedRegex(@"\((written|added|filled in|copied|typed up|entered)\b[^)]*\)", System.Text.RegularExpressions.RegexOptions.CultureInvariant | System.Text.RegularExpressions.RegexOptions.IgnoreCase)]
    private static partial System.Text.RegularExpressions.Regex Written();

    private static bool IsBareCare(Term term) => term.Kind is TermKind.Number or TermKind.Symbol or TermKind.Parts or TermKind.Quantity or TermKind.Times || term.Is(Sense.Session) || term.Is(Sense.Side) || term.Is(Sense.SideArea) || term.Is(Sense.Area) || term.Text is "l" or "r"
        || term.Is(Sense.Medicine) || term.Is(Sense.Device) || term.Is(Sense.SatLabel);

    // "0610 off", "ran out 05h10": something was turned off, not said what.
    private static void Off(LineRead read, List<Group> groups)
    {
        for (var g = 0; g < groups.Count && g < read.Told.Count; g++)
        {
            if (read.Told[g].Happenings.Count > 0 || read.Told[g].Mentions.Count != 1) continue;
            if (!groups[g].Terms.Exists(t => t.Is(Sense.Stop) && t.Text is "off" or "ran out" or "stopped" or "finished" or "disconnected" or "switched off" or "turned off" or "came off") || groups[g].Terms.Exists(t => t.NamesEvent)) continue;
            if (groups[g].Terms.Count(t => t.Kind != TermKind.Symbol) > 3) continue;
            read.Told[g].Happenings.Add(new Happening { Kind = HappeningKind.Feed, Line = read.Index, End = new TimeRef(read.Told[g].Mentions[0].Start) { Date = read.Date }, Value = "off", Sentence = groups[g].Sentence });
        }
    }

    // "03.05 probe alarm, it was off his toe" puts no time right: what was comes before no time.
    private static bool IsOfSomethingElse(List<Term> terms) => terms.FindLastIndex(t => t.Is(Sense.Correction)) is var at && terms[at].Text is "it was" or "that was" && terms.FindIndex(at, t => t.Kind == TermKind.Time) < 0;

    private static void TimeOnly(LineRead read, List<Group> groups, List<Term> terms)
    {
        if ((read.Marks & LineMarks.RightFirst) != 0 && terms.Count(t => t.Kind == TermKind.Time) == 2 && !terms.Exists(t => t.Kind is TermKind.Number or TermKind.Quantity)) { read.Marks |= LineMarks.TimeOnly; read.Told.Clear(); read.Left.Clear(); return; }
        if (read.Told.Exists(t => t.Happenings.Count > 0) || read.Doubts.Count > 0) return;
        if (groups.Sum(g => g.Times.Count) is 1 or 2 && !terms.Exists(t => t.NamesEvent && !t.Is(Sense.Antibiotic)) && terms.Count <= 16 && ((read.Marks & LineMarks.Correction) != 0 && !IsOfSomethingElse(terms) || terms.Exists(t => t.Is(Sense.About)) || groups.Exists(g => g.Times.Any(t => t.Start.Precision == CareRecords.Records.TimePrecision.About))))
            read.Marks |= LineMarks.TimeOnly;
    }

    // Times or minutes of care without an event to go with: asked about, never dropped.
    private void Unfinished(LineRead read, List<Group> groups, string content)
    {
        // "18:20, 2,5/2,5, 2/2, a bit short": a time and minutes by sides are of a session, whatever else is told there.
        if (read.Doubts.Count == 0 && (read.Marks & LineMarks.Unreal) == 0 && groups.Exists(g => g.Times.Count > 0) && groups.Sum(g => g.Terms.Count(t => t.Kind == TermKind.Parts)) >= 2 && !read.Told.Exists(t => t.Happenings.Exists(h => h.Kind == HappeningKind.Session) || t.Details is not null))
        {
            read.Doubts.Add(Doubts.Unclear(read.Index, _file, $"'{content.Trim()}' does not say what was done."));
            return;
        }

        if (read.Doubts.Count > 0 || read.Told.Exists(t => t.Happenings.Count > 0 || t.Details is not null) || (read.Marks & LineMarks.TimeOnly) != 0) return;
        // Beside advice only a row of times is asked about: "three again, 7, 1 and 6, mum says four minutes now".
        if ((read.Marks & LineMarks.Unreal) != 0)
        {
            if (groups.Exists(g => g.Times.Count > 2)) read.Doubts.Add(Doubts.Unclear(read.Index, _file, $"'{content.Trim()}' does not say what was done."));
            return;
        }
        // "19.30 X", where the key says "X = not done", is said in full.
        if (groups.Count == 1 && groups[0] is { Times.Count: 1, Terms.Count: 0 } && _reader.Read(content).Exists(t => t.Is(Sense.Skip))) return;
        // A number, a place or the name of a treatment alone says too little.
        if (read.Stamp is null && groups.Count > 0 && groups.Sum(g => g.Terms.Count + g.Times.Count) <= 5 && groups.TrueForAll(g => g.Times.Count + g.Terms.Count > 0 && g.Denied.Count == 0 && g.Terms.TrueForAll(IsBareCare)) && groups.Exists(g => g.Times.Count > 0 || g.Terms.Exists(t => t.Kind != TermKind.Symbol)))
        {
            read.Doubts.Add(Doubts.Unclear(read.Index, _file, $"'{content.Trim()}' says too little to be read."));
            return;
        }
        if (read.Stamp is not null && groups.Exists(g => g.Terms.Count is > 0 and <= 3 && g.Times.Count == 0 && g.Terms.Exists(t => t.Is(Sense.Given) && t.Text is "given" or "gave" or "done" || t.Is(Sense.AllDone))))
        {
            read.Marks |= LineMarks.Answer;
            return;
        }
        if ((read.Marks & LineMarks.Share) != 0) { read.Doubts.Add(Doubts.Unclear(read.Index, _file, $"'{content.Trim()}' could be one of several sessions, a date, or a part done.", "which of the day's sessions", "a date", "part of a session")); return; }
        if ((read.Marks & LineMarks.RepeatsDay) != 0) { read.Doubts.Add(Doubts.Unclear(read.Index, _file, $"'{content.Trim()}' does not say what was repeated, and when.")); return; }
        if (groups.Exists(g => g.Times.Count == 0 && g.Terms.Exists(t => t.Kind == TermKind.Times && t.Number is >= 2 and <= 8) && g.Terms.TrueForAll(t => t.Kind is TermKind.Times or TermKind.Symbol || t.Is(Sense.DayRef)))) { read.Doubts.Add(Doubts.Untimed(read.Index, _file, "Several sessions")); return; }
        if (read.Stamp is null && groups.Exists(g => g.Terms.Exists(t => t.Is(Sense.AllDone) && t.Text != "done"))) { read.Doubts.Add(Doubts.Unclear(read.Index, _file, $"'{content.Trim()}' does not say what was done, and when.")); return; }
        if (groups.Exists(g => g.Times.Count == 1) && groups.Exists(g => g.Terms.Exists(t => t.Text == "did") && g.Terms.Exists(t => t.Text == "one"))) { read.Doubts.Add(Doubts.Unclear(read.Index, _file, $"'{content.Trim()}' does not say what was done.")); return; }
        foreach (var group in groups)
        {
            if (group.Times.Count > 1) { read.Doubts.Add(Doubts.Unclear(read.Index, _file, $"'{content.Trim()}' does not say what was done.")); return; }
            var unknown = group.Terms.Count(t => t is { Kind: TermKind.Word, Meanings.Length: 0, Text.Length: > 2 });
            if (group.Times.Count == 1 && unknown <= 1 && group.Terms.Exists(t => t is { Kind: TermKind.Number or TermKind.Parts }) && !group.Terms.Exists(t => t.Is(Sense.Person) || t.Is(Sense.Visit) || t.Unit is Unit.Money or Unit.Other)) { read.Doubts.Add(Doubts.Unclear(read.Index, _file, $"'{content.Trim()}' does not say what was done.")); return; }
            // "third round 3.30pm", "last one 7.45", "6.40 12 minutes in total", "6.40 skipped the upper": a time, and words as of care.
            if (group.Times.Count > 0 && !read.AboveFirstDay && unknown <= 2 && (CountsRounds(group.Terms) || (group.Terms.Exists(t => t is { Kind: TermKind.Quantity, Unit: Unit.Min }) && unknown <= 1 || group.Terms.Exists(t => t.Is(Sense.Area) || t.Is(Sense.SideArea))) && !group.Terms.Exists(t => t.Is(Sense.Person) || t.Is(Sense.Visit) || t.Is(Sense.OtherTherapy)))) { read.Doubts.Add(Doubts.Unclear(read.Index, _file, $"'{content.Trim()}' does not say what was done.")); return; }
            var minutes = group.Terms.Exists(t => t.Is(Sense.Each) || t.Is(Sense.EachSide)) && group.Terms.Exists(t => t.Kind is TermKind.Number or TermKind.Range or TermKind.Quantity);
            if (group.Times.Count > 0 && minutes) { read.Doubts.Add(Doubts.Unclear(read.Index, _file, $"'{content.Trim()}' does not say what was done.")); return; }
        }
    }

    // "third round", "last one", "second go"
    private static bool CountsRounds(List<Term> terms)
    {
        for (var i = 0; i + 1 < terms.Count; i++)
            if (terms[i].Text is "first" or "second" or "third" or "fourth" or "fifth" or "last" or "1st" or "2nd" or "3rd" or "4th" or "final" or "another" && terms[i + 1].Text is "one" or "round" or "go" or "lot" or "set" or "turn") return true;
        return false;
    }
}
