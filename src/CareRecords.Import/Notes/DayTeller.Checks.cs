using System.Globalization;
using CareRecords.Import.Reading;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Notes;

internal sealed partial class DayTeller
{
    private void TellCheck(Happening happening)
    {
        if (happening.Value is { } value && value.StartsWith("pair ", StringComparison.Ordinal)) { Pair(happening, value[5..]); return; }
        var reading = happening.Check!;
        if (IsFlowOfReadings(happening)) return;
        var phase = reading.Phase;
        var borrowed = happening.Start is null ? Borrow(reading) : null;
        if (phase == CheckPhase.None && happening.Start?.Mention is null or { IsSession: true } && (borrowed?.Session == true || InLineWithSession()) && PairByArrow(happening) is { } paired) phase = paired;
        var time = happening.Start is null ? borrowed?.Time : TimesOfEvents.Of(happening.Start, phase);
        if (happening.Value is { } part && part.StartsWith("part ", StringComparison.Ordinal) && phase != CheckPhase.None && PartSession(part[5..], true) is { } own) time = TimesOfEvents.Borrowed(own, phase);
        else if (happening.Value is { } which && which.StartsWith("nth ", StringComparison.Ordinal) && NthSession(which[4..]) is { } named) time = TimesOfEvents.Borrowed(named, phase);
        else if (happening.Start is { PartKind: { } kind } && phase != CheckPhase.None && PartSession(kind, false) is { } session) time = TimesOfEvents.Borrowed(session, phase);
        // "7am chest after 6 puffs at quarter to. 92 → 95": the pair is of the session, not of the inhaler.
        else if (happening.Start?.Mention is { } ofDose && _line.Told.Exists(t => t.Happenings.Exists(h => h.Kind == HappeningKind.Dose && h.Start?.Mention == ofDose)) && _told.FindAll(t => t.Lines[0] == _line.Index && t.Entry is Session) is [{ Entry: Session { Start: { IsExact: true } only } }] && PairByArrow(happening) is { } beside)
            (phase, time) = (beside, TimesOfEvents.Borrowed(only.Stated, beside));
        if (time is null)
        {
            if (_line.Date is not { } date) return;
            time = UncertainTime.OnDay(date);
        }
        // A range on the line after a session may be before and after it.
        if (reading.High is not null && borrowed?.Session == true && happening.Start is null && _told.Exists(t => t.Entry is Session)) { Ask(Doubts.BeforeAfterOrRange(_line.Index, _file, FormattableString.Invariant($"{reading.SpO2}-{reading.High}"))); return; }
        if (reading.ByArrow && phase == CheckPhase.After) _pairsByArrow = true;
        var inAir = reading is { SpO2: not null, Oxygen: null } && _arrangements.InAir && !AirByDefault.MayBeOnOxygen(_turned, time.Stated);
        var check = new Check { Sources = Source, Start = time, End = happening.End is null ? null : Time(happening.End), SpO2 = reading.SpO2, SpO2High = reading.High, Pulse = reading.Pulse, OxygenLitresPerMinute = inAir ? 0 : reading.Oxygen, Phase = phase, By = _line.By, HowRead = inAir ? "In air: the notes say so of every reading that has nothing else beside it." : null };
        if (check is { SpO2: null, OxygenLitresPerMinute: not null }) _turned = check;
        Add(check, happening.Start is not null);
    }

    // "spo2: 91 -> 95" and under it "o2: 0.5L": what a session's readings were taken on, where the line says nothing else.
    private bool IsFlowOfReadings(Happening happening)
    {
        if (happening is not { Start: null, Check: { SpO2: null, Oxygen: { } flow } } || _line.Stamp is not null || _previous is null || _line.Told.Sum(t => t.Happenings.Count) != 1 || _line.Mentions.Count > 0 || !OnlyOxygen().IsMatch(_line.Words)) return false;
        var readings = _told.FindAll(t => t.Lines[0] == _previous.Index && t.Entry is Check { SpO2: not null, Phase: not CheckPhase.None, OxygenLitresPerMinute: null });
        foreach (var told in readings)
        {
            told.Entry = (Check)told.Entry! with { OxygenLitresPerMinute = flow, Sources = [.. told.Entry!.Sources, .. Source] };
            told.Lines.Add(_line.Index);
        }

        return _joined = readings.Count > 0;
    }

    [System.Text.RegularExpressions.GeneratedRegex(@"^\W*(?:o2|ox|oxygen)\s*[:=]", System.Text.RegularExpressions.RegexOptions.IgnoreCase | System.Text.RegularExpressions.RegexOptions.CultureInvariant)]
    private static partial System.Text.RegularExpressions.Regex OnlyOxygen();

    // The last change of the oxygen.
    private Check? _turned;

    private bool InLineWithSession() => _told.Exists(t => t.Entry is Session && t.Lines[0] == _line.Index);

    // "93 → 96" beside a session: before and after it.
    private CheckPhase? PairByArrow(Happening happening)
    {
        var readings = _line.Told.SelectMany(t => t.Happenings).Where(h => h.Kind == HappeningKind.Check && h.Sentence == happening.Sentence && h.Check!.SpO2 is not null).Select(h => h.Check!).ToList();
        var at = readings.IndexOf(happening.Check!);
        if (at < 0) return null;
        if (readings[at].ByArrow && readings.Count == 2) return CheckPhase.After;
        return at + 1 < readings.Count && readings[at + 1].ByArrow && readings.Count == 2 ? CheckPhase.Before : null;
    }

    /// <summary>The time of a check without one: the session of the lines just before, a session for a before or after, or the message's stamp.</summary>
    private (UncertainTime Time, bool Session)? Borrow(CheckReading reading)
    {
        var last = _told.FindLast(t => t.Entry is not null && t.Entry is not Check and not Sign);
        var session = _told.FindLast(t => t.Entry is Session);
        var near = last is { Entry: Session } && session is { Siblings: 1 } && IsNear(session.Lines[0]) || session is { Siblings: 1 } && session.Lines[0] == _line.Index;
        // In messages: the session of the last hour and a half.
        near |= reading.Phase != CheckPhase.None && last is { Entry: Session { Start: { } begun } } && session is { Siblings: 1 } && _line.Stamp is { } written && Period.Between(begun.Stated, written, PeriodUnits.Minutes).Minutes is >= 0 and <= OpenMinutes;
        if (_line is { Continues: true, Stamp: not null } && near && session!.Lines[0] == _previous?.Index && !reading.Now) return (TimesOfEvents.Borrowed(session.Entry!.When.Stated, reading.Phase), true);
        if (_line.Stamp is { } stamp && !(near && (reading.Phase != CheckPhase.None || reading.ByArrow || (session!.Lines[0] == _line.Index && !reading.Now)))) return (TimesOfEvents.Stamped(stamp), false);
        if (near || (reading.Phase != CheckPhase.None && session is { Siblings: 1 }))
            return session!.Entry!.When is { Precision: TimePrecision.PartOfDay or TimePrecision.DayOnly } whole ? (whole, true) : (TimesOfEvents.Borrowed(session.Entry.When.Stated, reading.Phase), true);
        // "I gave oxygen 1 litre" right after a reading on the line above: at its time.
        // So with "sats 90 so we put oxygen on" after "2:00 woke up coughing".
        if (_previous is not null && _told.FindLast(t => t.Entry is not null) is { Entry: Check or Sign } before && (reading.SpO2 is null || before.Entry is Sign { Kind: SignKind.Cough or SignKind.Distress or SignKind.ColourChange or SignKind.Vomit } && reading.Phase == CheckPhase.None) && before.Lines[0] == _previous.Index && before.Entry.When.Precision is TimePrecision.Exact or TimePrecision.About)
            return (TimesOfEvents.Borrowed(before.Entry.When.Stated, CheckPhase.None), false);
        return null;
    }

    private bool IsNear(int line) => _previous is { } previous && (line == previous.Index || line == _line.Index || (_told.Exists(t => t.Lines[0] == previous.Index && t.Entry is Check) && line == previous.Index - 1) || (previous.Told.TrueForAll(t => t.Happenings.Count == 0) && line >= previous.Index - 2)
        || (_told.Exists(t => t.Lines[0] == previous.Index && t.Entry is Dose) && line == previous.Index - 1));

    private LocalDateTime? PartSession(string part, bool own)
    {
        foreach (var told in _told)
            if (told.Entry is Session { Start: { IsExact: true } start } && (!own || told.Lines[0] == _line.Index) && (part is "morning" or "breakfast" ? start.Stated.Hour < 12 : part is "afternoon" ? start.Stated.Hour is >= 12 and < 18 : start.Stated.Hour >= 16)) return start.Stated;
        return null;
    }

    private LocalDateTime? NthSession(string place)
    {
        var at = int.Parse(place, CultureInfo.InvariantCulture);
        var sessions = _told.Where(t => t.Entry is Session { Start: { IsExact: true } start } && start.Stated.Date == _line.Date).Select(t => t.Entry!.Start!.Stated).Order().ToList();
        return sessions.Count < 2 || at >= sessions.Count ? null : at < 0 ? sessions[^1] : sessions[at];
    }

    // "same again 92 - 94": after an arrow pair, two numbers with a dash are the same pair.
    private void Pair(Happening happening, string written)
    {
        var parts = written.Split('-', '–', ',').Select(p => p.Trim()).ToArray();
        if (_pairsByArrow && parts.Length == 2 && double.TryParse(parts[0], CultureInfo.InvariantCulture, out var before) && double.TryParse(parts[1], CultureInfo.InvariantCulture, out var after) && happening.Start is { } start)
        {
            foreach (var (spo2, phase) in new[] { (before, CheckPhase.Before), (after, CheckPhase.After) })
                if (TimesOfEvents.Of(start, phase) is { } time)
                    Add(new Check { Sources = Source, Start = time, SpO2 = spo2, Phase = phase, By = _line.By, HowRead = $"'{written}' read as before and after, like the session before." });
            return;
        }
        Ask(Doubts.BeforeAfterOrRange(_line.Index, _file, written));
    }

    private void TellSign(Happening happening)
    {
        var time = happening.Start is null ? null : TimesOfEvents.Of(happening.Start);
        // "brought up a big yellow plug" on the line after a session: what the session brought.
        if (happening.Start is null && _line.Stamp is null && happening.SignKind == SignKind.Secretions && _told.FindLast(t => t.Entry is not null and not Check and not Sign) is { Entry: Session { Start: { IsExact: true } start } } told && IsNear(told.Lines[0])) time = TimesOfEvents.Borrowed(start.Stated, CheckPhase.After);
        if (happening.Start is null && _line.Stamp is not null && happening.SignKind == SignKind.Secretions && _told.FindLast(t => t.Entry is Session) is { Siblings: 1, Entry: Session { Start: { IsExact: true } own } } ownSession && ownSession.Lines[0] == _line.Index) time = TimesOfEvents.Borrowed(own.Stated, CheckPhase.After);
        time ??= _line.Stamp is { } stamp ? TimesOfEvents.Stamped(stamp) : _line.Date is { } date ? UncertainTime.OnDay(date) : null;
        if (time is null) return;
        Add(new Sign { Sources = Source, Start = time, Kind = happening.SignKind, What = happening.What!, Value = happening.Value, Number = happening.Number, By = _line.By });
    }

    private void Omit(Happening happening)
    {
        if (_line.Date is not { } date) return;
        var time = Time(happening.Start) ?? UncertainTime.OnDay(date);
        _told.Add(new Told { Omitted = new OmittedSession(time, _line.Text.Trim(), Source[0]), Lines = [_line.Index] });
    }

    private const int DetailsWithin = 180;

    /// <summary>Details for the session of the line before ("rt side 3 min lt side 3 min", "lower obvs").</summary>
    private bool Details(AreaReading details)
    {
        var told = _told.FindLast(t => t.Entry is Session);
        var late = _line.Stamp is { } stamp && told?.Entry?.Start is { } begun && Period.Between(begun.Stated, stamp, PeriodUnits.Minutes).Minutes is < 0 or > DetailsWithin;
        // "did 3 min low right and 3 low left", in a message: a session of its own.
        if (_line.Stamp is { } sent && (late || told is null || !IsNear(told.Lines[^1])) && details.Areas.Exists(a => a.Minutes is not null) && OpenSession() is null && _line.Mentions.Count == 0 && CellTerms.Read(_line.Words).Exists(t => t.Text is "did"))
        {
            AddSession(new Happening { Kind = HappeningKind.Session, Line = _line.Index, Areas = details }, TimesOfEvents.Stamped(sent), _arrangements.Place([.. details.Areas], details), null, 1);
            return true;
        }
        // "only the lowers", half a day after a session: of which one is not said.
        if (late && details.NamesPlace && details.Only) { Ask(Doubts.Unclear(_line.Index, _file, $"'{_line.Words.Trim()}' does not say of which session it is.")); return true; }
        if (late || told?.Entry is not Session session || _previous is null || OpenSession() is null && (told.Lines[^1] != _line.Index && !IsNear(told.Lines[^1]))) { Lost(details); return true; }
        var before = _sessions.Last!;
        List<AreaMinutes> areas;
        if (session.Areas.Count == 0 || session.Areas.All(a => a.Minutes is null && (a is { Side: Side.Unknown, Area: ChestArea.Unknown } || details.Areas.Exists(d => d.Minutes is not null && d.Area == a.Area && d.Side == a.Side)))) areas = [.. details.Areas.Select(a => a with { Technique = a.Technique == Technique.Unknown && session.Areas.Count > 0 ? session.Areas[0].Technique : a.Technique })];
        // "bases and tops", then "3 mins each side on all of it": the minutes of the areas that were named.
        else if (session.Areas.All(a => a.Minutes is null && a.Area != ChestArea.Unknown) && details.Areas.TrueForAll(a => a.Area == ChestArea.Unknown && a.Minutes is not null && a.Minutes == details.Areas[0].Minutes))
            areas = [.. session.Areas.Select(a => a with { Minutes = details.Areas[0].Minutes, Technique = a.Technique == Technique.Unknown ? details.Areas[0].Technique : a.Technique })];
        else if (details.Areas.TrueForAll(a => a.Minutes is null) && details.Areas.Select(a => a.Area).Distinct().ToList() is [var area] && area != ChestArea.Unknown) areas = [.. session.Areas.Select(a => a.Area == ChestArea.Unknown ? a with { Area = area } : a)];
        else areas = AreaChanges.Tidied([.. session.Areas, .. details.Areas]);
        AreaChanges.Leave(areas, details);
        for (var i = _told.Count - 1; i >= 0; i--)
            if (_told[i].Entry is Session sibling && _told[i].Lines[0] == told.Lines[0])
            {
                _told[i].Entry = sibling with { Areas = areas, Sources = _told[i].Lines.Contains(_line.Index) ? sibling.Sources : [.. sibling.Sources, .. Source] };
                if (!_told[i].Lines.Contains(_line.Index)) _told[i].Lines.Add(_line.Index);
            }
        _sessions.Replace(before, before with { Areas = areas });
        return true;
    }

    private void Lost(AreaReading details)
    {
        if (details.Areas.Exists(a => a.Minutes is not null)) Ask(Doubts.Unclear(_line.Index, _file, $"'{_line.Text.Trim()}' gives minutes without a session.", "a session", "not a session"));
    }

    /// <summary>Moves the last event to the time of a line that says only a time ("sorry 7.15", "about 11.30 I think", "it was 4:30").</summary>
    private bool MoveLast()
    {
        var rightFirst = (_line.Marks & LineMarks.RightFirst) != 0 && _line.Mentions.Count == 2;
        var mention = _line.Mentions.Count == 0 ? null : rightFirst ? _line.Mentions[0] : _line.Mentions[^1];
        if (mention?.Settled is not { } settled) return false;
        var corrects = (_line.Marks & LineMarks.Correction) != 0;
        var named = _line.Mentions.Count > 1 ? _line.Mentions[rightFirst ? 1 : 0].Written : null;
        var told = named is null ? _told.FindLast(t => t.Entry is Session or Dose or Feed)
            : _told.FindLast(t => t.Entry is Session && t.Entry.Start is { } s && IsAt(s.Stated, named)) ?? _told.FindLast(t => t.Entry?.Start is { } s && IsAt(s.Stated, named));
        if (NthOfLine() is { } nth) told = nth;
        // "Mair has 11 wrong, it was 11.30": the hour that is wrong names the record; without one at that hour nothing is moved.
        if (WrongHour() is { } hour)
        {
            told = _told.FindLast(t => t.Entry is Session or Dose or Feed && t.Entry.Start is { } s && s.Stated.Minute == 0 && s.Stated.Hour % 12 == hour % 12);
            if (told is null) { Ask(Doubts.Unclear(_line.Index, _file, $"'{_line.Text.Trim()}' puts a time right, and it is not certain which record.")); return true; }
        }
        if (told?.Entry is not { } entry) return false;
        if (!corrects && (told.OwnTime || _previous is null || told.Lines[0] < _previous.Index - 1)) return false;
        // "about 7" corrects "7" only in the half of the day of what it corrects.
        var written = entry.When.Stated;
        var candidates = mention.Written.Half == HalfOfDay.Unknown ? new[] { settled, settled.PlusHours(settled.Hour >= 12 ? -12 : 12) } : [settled];
        settled = candidates.MinBy(c => Math.Abs(Period.Between(c, written, PeriodUnits.Minutes).Minutes));
        mention.Settled = settled;
        mention.Unsettled = false;
        if (TimesOfEvents.Of(new TimeRef(mention)) is not { } time) return false;
        var how = FormattableString.Invariant($"Time corrected from {entry.When.Stated.TimeOfDay:HH:mm} by a later line.");
        var sources = corrects ? (IReadOnlyList<SourceLine>)[.. Source, .. entry.Sources] : [.. entry.Sources, .. Source];
        told.Entry = entry.Start is null ? entry with { End = time, Sources = sources, HowRead = how } : entry with { Start = time, Sources = sources, HowRead = how };
        told.Lines.Add(_line.Index);
        if (entry is Session session && _sessions.Last is { } last) _sessions.Replace(last, last with { At = settled, Areas = session.Areas });
        return true;
    }

    private int? WrongHour()
    {
        var words = CellTerms.Read(_line.Words);
        var wrong = words.FindIndex(t => t.Text == "wrong");
        return wrong > 0 && words[wrong - 1] is { Kind: TermKind.Number, IsWhole: true, Number: >= 1 and <= 12 } hour ? (int)hour.Number : null;
    }

    // "the middle one was 13.50", after a line that told several sessions.
    private Told? NthOfLine()
    {
        var words = CellTerms.Read(_line.Words);
        var place = words.FindIndex(t => t.Text is "first one" or "middle one" or "second one" or "third one" or "last one" or "first" or "middle" or "second" or "third" or "last");
        if (place < 0 || _told.FindLast(t => t.Entry is Session) is not { } latest) return null;
        var several = _told.Where(t => t.Entry is Session && t.Lines[0] == latest.Lines[0]).OrderBy(t => t.Entry!.When.Stated).ToList();
        if (several.Count < 2) return null;
        var at = words[place].Text.Split(' ')[0] switch { "first" => 0, "second" => 1, "middle" => several.Count % 2 == 1 ? several.Count / 2 : -1, "third" => 2, _ => several.Count - 1 };
        return at >= 0 && at < several.Count ? several[at] : null;
    }

    private static bool IsAt(LocalDateTime at, ClockTime written) => at.TimeOfDay == written.Time || (written.Half == HalfOfDay.Unknown && at.TimeOfDay == written.Time.PlusHours(12));

    /// <summary>"all done, 4pm" after a line that planned a session: the session.</summary>
    private void AllDone()
    {
        if ((_line.Marks & LineMarks.AllDone) == 0 || _told.Exists(t => t.Lines[0] == _line.Index && t.Entry is not Sign and not Check)) return;
        if (_line.Told.Exists(t => t.Happenings.Exists(h => h.Kind is HappeningKind.Session or HappeningKind.Feed or HappeningKind.Dose))) return;
        var mention = _line.Mentions.Find(m => m.After is null);
        if (mention is null) return;
        if (_plannedSession && TimesOfEvents.Of(new TimeRef(mention)) is { } time)
        {
            _plannedSession = false;
            _told.Insert(_told.FindIndex(t => t.Lines[0] == _line.Index) is var at && at >= 0 ? at : _told.Count, new Told { Entry = new Session { Sources = Source, Start = time, By = _line.By, HowRead = "'done' read as the session that was planned above." }, Lines = [_line.Index], OwnTime = true });
            _sessions.Keep(new ToldSession(time.Stated, [], _line.Index, _line.Item));
        }
        else Ask(Doubts.Unclear(_line.Index, _file, $"'{_line.Text.Trim()}' does not say what was done."));
    }
}
