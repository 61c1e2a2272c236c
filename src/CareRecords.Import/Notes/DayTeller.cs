using CareRecords.Import.Reading;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Notes;

/// <summary>Tells the records of one day's lines, joining each line to the ones before it: repeats, borrowed times, details, corrections.</summary>
internal sealed partial class DayTeller
{
    private readonly string _file;
    private readonly IReadOnlyDictionary<string, string> _answers;
    private readonly Action<Doubt> _report;
    private int _doubts;
    private bool _lost;
    private readonly SessionMemory _sessions = new();
    private readonly Arrangements _arrangements;
    private readonly DoseMemory _doses;
    private readonly List<Told> _told = [];
    private LineRead _line = new() { Index = -1, Text = "" };
    private LineRead? _previous;
    private bool _pairsByArrow;
    private bool _plannedSession;
    private bool _joined;
    private LineRead? _requested;
    private const int OpenMinutes = 90;
    private LocalDateTime? _openFeed;

    /// <summary>A teller that hands its doubts to <paramref name="doubt"/>.</summary>
    public DayTeller(string file, IReadOnlyDictionary<string, string> answers, Arrangements arrangements, Action<Doubt> doubt) => (_file, _answers, _arrangements, _doses, _report) = (file, answers, arrangements, new DoseMemory(arrangements), doubt);

    /// <summary>A record told, with the line that it is counted under.</summary>
    public sealed class Told
    {
        /// <summary>The record, or an omitted session.</summary>
        public CareEntry? Entry { get; set; }

        /// <summary>A session that did not take place.</summary>
        public OmittedSession? Omitted { get; init; }

        /// <summary>Zero-based lines that it comes from; the first is its own.</summary>
        public required List<int> Lines { get; init; }

        /// <summary>Whether its time was its own.</summary>
        public bool OwnTime { get; init; }

        /// <summary>How many sessions its line told.</summary>
        public int Siblings { get; set; } = 1;
    }

    /// <summary>Tells a day's lines, whose times are settled. Dates beyond them are remembered for the next call.</summary>
    public List<Told> Tell(IReadOnlyList<LineRead> lines)
    {
        _told.Clear();
        foreach (var line in lines)
        {
            _line = line;
            Line();
            if (line.Text.AsSpan().Trim().Length > 0) _previous = line;
        }
        BeforeEach();
        return [.. _told];
    }

    private void Ask(Doubt doubt)
    {
        _doubts++;
        _report(doubt);
    }

    // A happening that says more than that the thing exists: its line may not end without a record or a question.
    private bool Names(Happening happening) => happening.Kind switch
    {
        HappeningKind.Session => (_line.Marks & LineMarks.Unreal) == 0,
        HappeningKind.Feed => happening.Millilitres is not null || happening.Rate is not null || happening.Value is not null,
        HappeningKind.Dose => happening is { BeforeEachSession: null, Value: not "prescribed" },
        HappeningKind.Check => happening.Check?.SpO2 is not null || happening.Check?.Oxygen is not null,
        HappeningKind.Sign => happening.Number is not null,
        _ => false,
    };

    private void Line()
    {
        var before = _doubts;
        foreach (var doubt in _line.Doubts) Ask(doubt);
        foreach (var dose in _line.Prescribed) _doses.Prescribe(dose);
        if ((_line.Marks & LineMarks.TimeOnly) != 0 && MoveLast()) return;
        if (_line.Date is null && !_line.Told.Exists(t => t.Happenings.Exists(h => h.Start is not null || h.End is not null || h.Check is not null || h.Amount is not null || h.Areas is { Areas.Count: > 0 }))) return;
        if (_line is { Date: null, AboveFirstDay: true, Mentions.Count: 0 } && !_line.Told.Exists(t => t.Happenings.Exists(h => h.Check?.SpO2 is not null))) return;
        if (_line.Date is null) { Ask(Doubts.NoDay(_line.Index, _file)); return; }
        if (AnswersQuestion()) return;
        var index = 0;
        foreach (var told in _line.Told)
        {
            if (told.NamesPrescription is { } dose) _doses.Prescribe(dose);
            if (told.Details is { } details && Details(details)) continue;
            var sessions = told.Happenings.Count(h => h.Kind == HappeningKind.Session);
            foreach (var happening in Ordered(told.Happenings))
            {
                if (Unsettled(happening)) continue;
                var (entries, doubts) = (_told.Count, _doubts);
                switch (happening.Kind)
                {
                    case HappeningKind.Session: TellSession(happening, sessions > 1 ? index++ : null, sessions); break;
                    case HappeningKind.Feed: TellFeed(happening); break;
                    case HappeningKind.Dose: TellDose(happening); break;
                    case HappeningKind.Check: TellCheck(happening); break;
                    case HappeningKind.Sign: TellSign(happening); break;
                    default: Omit(happening); break;
                }
                if (_told.Count == entries && _doubts == doubts && !_joined && Names(happening)) _lost = true;
                _joined = false;
            }
        }
        AllDone();
        Answer();
        // Whatever was named and gave neither a record nor a question is asked about.
        if ((_lost || _line.Left.Count > 0) && _doubts == before && (_line.Marks & LineMarks.TimeOnly) == 0)
            Ask(Doubts.NotRead(_line.Index, _file, _line.Left.Count > 0 ? _line.Left[0] : null));
        _lost = false;
        if ((_line.Marks & LineMarks.Unreal) != 0) _requested = _line;
        if ((_line.Marks & LineMarks.Unreal) != 0) _plannedSession = (_line.Marks & LineMarks.PlansSession) != 0;
    }

    // A check before or after a session of the same words is told after the session.
    private static IEnumerable<Happening> Ordered(List<Happening> happenings) => happenings.OrderBy(h => h.Kind switch { HappeningKind.Session => 0, HappeningKind.Dose => 1, HappeningKind.Feed => 2, _ => 3 });

    private bool Unsettled(Happening happening)
    {
        var mention = happening.Start?.Mention ?? happening.End?.Mention;
        if (mention is not { Unsettled: true }) return false;
        // What was done is known even where its time is not: "same" after it repeats it.
        if (happening.Kind == HappeningKind.Session && mention.Settled is { } likely) _sessions.Keep(new ToldSession(likely, Areas(happening, likely, null, out _), _line.Index, _line.Item));
        var written = mention.Written.Time;
        var am = new LocalTime(written.Hour % 12, written.Minute);
        Ask(Doubts.AmOrPm(_line.Index, _file, am.ToString("H:mm", System.Globalization.CultureInfo.InvariantCulture), am.ToString("HH:mm", System.Globalization.CultureInfo.InvariantCulture), am.PlusHours(12).ToString("HH:mm", System.Globalization.CultureInfo.InvariantCulture)));
        return true;
    }

    private Told Add(CareEntry entry, bool ownTime = true)
    {
        var told = new Told { Entry = entry, Lines = [_line.Index], OwnTime = ownTime };
        _told.Add(told);
        return told;
    }

    private IReadOnlyList<SourceLine> Source => [SourceLine.InText(_file, _line.Index + 1, _line.Text)];

    private UncertainTime? Time(TimeRef? time, CheckPhase phase = CheckPhase.None)
    {
        if (time is not null) return TimesOfEvents.Of(time, phase);
        return _line.Stamp is { } stamp ? TimesOfEvents.Stamped(stamp) : null;
    }

    private void TellSession(Happening happening, int? index, int siblings)
    {
        if ((happening.Start is null && _line.Stamp is null) || (happening.Start is { PartKind: not null } && happening.Value is { Length: 1 } many && many[0] >= '2' && happening.Reference is not null)) { Untimed(happening); return; }
        if (happening.Start is null && happening.Areas is { Areas.Count: 0, Base.Count: 0 } && happening.Reference is null && (_line.Marks & LineMarks.AllDone) == 0) { if ((_line.Marks & LineMarks.Unreal) == 0 && happening.Value is not null) Ask(Doubts.Untimed(_line.Index, _file, "A session")); return; }
        // "physio started now", half an hour later "lower 3 each, upper 2 each": what was done in it.
        if (happening is { Start: null, End: null, Reference: null } && happening.Areas!.Areas.Count > 0 && OpenSession() is { Areas.Count: 0 } && Details(happening.Areas)) { _joined = true; return; }
        if (Time(happening.Start) is not { } start) return;
        if (happening.Start?.Mention is { NamesSession: true } && SessionAt(start.Stated) is { } known) { Supplement(known, happening.Areas!); return; }
        var areas = Areas(happening, start.Stated, index, out var how);
        // "Morning is 6.30 and evening is 6 unless I write different", above; "pat morning and evening", below.
        if (happening.Start is { Mention: null, PartKind: { } part } && start.Precision == TimePrecision.PartOfDay && _arrangements.TimeOf(part) is { } usual) (start, how) = (UncertainTime.Exactly(start.Stated.Date.At(usual)), $"{(how is null ? "" : how + " ")}The time is the one that the notes give above for the {part}.");
        AddSession(happening, start, areas, how, siblings);
    }

    private Told? SessionAt(LocalDateTime at) => _told.FindLast(t => t.Entry is Session { Start: { IsExact: true } start } && start.Stated == at);

    // "my mum did the 2.30, bottoms only": what a later sentence tells of a session already written.
    private void Supplement(Told told, AreaReading areas)
    {
        _joined = true;
        if (!told.Lines.Contains(_line.Index)) told.Lines.Add(_line.Index);
        if (areas.Areas.Count == 0 && areas.LeftOut.Count == 0 && areas.Base.Count == 0) return;
        var session = (Session)told.Entry!;
        told.Entry = session with { Areas = areas.Base.Count > 0 ? AreaChanges.Combine(areas.Base, areas) : session.Areas.Count == 0 ? [.. areas.Areas] : AreaChanges.Combine(session.Areas, areas), Sources = told.Lines[0] == _line.Index ? session.Sources : [.. session.Sources, .. Source] };
    }

    // A session that a message of the last hour and a half said had begun, and none has said had ended.
    private Session? OpenSession() => _line.Stamp is { } stamp && _told.FindLast(t => t.Entry is Session) is { Entry: Session { End: null, Start: { Precision: TimePrecision.MessageStamp } begun } open }
        && Period.Between(begun.Stated, stamp, PeriodUnits.Minutes).Minutes is >= 0 and <= OpenMinutes ? open : null;

    // "Percussion at 06:40, left lower 3. Finished at 06:55."
    private Session? SessionOfLine() => _told.FindLast(t => t.Entry is not null && t.Entry is not Check and not Sign) is { Entry: Session { End: null, Start.IsExact: true } session, Siblings: 1 } told && told.Lines[^1] == _line.Index
        && Time(new TimeRef(_line.Mentions[^1])) is { } ended && Period.Between(session.Start!.Stated, ended.Stated, PeriodUnits.Minutes).Minutes is > 0 and <= OpenMinutes ? session : null;

    private void AddSession(Happening happening, UncertainTime start, List<AreaMinutes> areas, string? how, int siblings)
    {
        var end = Time(happening.End is null ? null : happening.End);
        if (happening.End is null) end = null;
        // "mins left/right" of a key over "3/3": the same places twice.
        if (areas.Count is >= 4 and var count && count % 2 == 0 && areas.TrueForAll(a => a.Side != Side.Unknown) && areas.Take(count / 2).SequenceEqual(areas.Skip(count / 2))) areas = areas.GetRange(0, count / 2);
        // "3/3/0/0": none at the uppers is no area, where others have minutes.
        if (areas.Exists(a => a.Minutes > 0)) areas = areas.FindAll(a => a.Minutes != 0);
        var session = new Session { Sources = Source, Start = start, End = end, Areas = areas, By = _line.By, HowRead = how };
        var told = Add(session, happening.Start?.Mention is not null);
        told.Siblings = siblings;
        _sessions.Keep(new ToldSession(start.Stated, areas, _line.Index, _line.Item, happening.Areas!.Only));
        var unnamed = areas.Where(a => a is { Side: Side.Unknown, Area: ChestArea.Unknown } && a.Technique != Technique.Vibration).ToList();
        if (happening.Areas!.AreasNotNamed && unnamed.Count > 1 && !(unnamed.Count == 4 && unnamed.TrueForAll(u => u.Minutes == unnamed[0].Minutes)) && !(happening.Reference is not null))
            Ask(Doubts.WhichAreas(_line.Index, string.Join('/', unnamed.Select(u => Doubts.Plain(u.Minutes ?? 0)))));
    }

    private List<AreaMinutes> Areas(Happening happening, LocalDateTime at, int? index, out string? how)
    {
        var said = _arrangements.Filled(AreasSaid(happening, at, index, out how));
        var tidied = AreaChanges.Tidied(said);
        // What was left aside is said, for it may have been minutes after all.
        if (said.Find(a => a is { Side: Side.Unknown, Area: ChestArea.Unknown, Minutes: not null }) is { Minutes: { } aside } && !tidied.Exists(a => a is { Side: Side.Unknown, Area: ChestArea.Unknown, Minutes: not null } && a.Minutes == aside))
            how = $"{(how is null ? "" : how + " ")}The {Doubts.Plain(aside)} without a place was not taken for minutes.";
        return tidied;
    }

    private List<AreaMinutes> AreasSaid(Happening happening, LocalDateTime at, int? index, out string? how)
    {
        how = null;
        var now = happening.Areas!;
        if (happening.Reference is { } reference && (reference.ValueOf(Sense.Same) != nameof(ReferTo.Usual)))
        {
            if (_sessions.Find(reference, at, index, _line.Index) is { } before)
            {
                how = $"'{reference.Text}' read as the session of {before.At.ToString("yyyy-MM-dd HH:mm", System.Globalization.CultureInfo.InvariantCulture)}.";
                var combined = AreaChanges.Combine(before.Areas, now);
                AreaChanges.Leave(combined, now);
                return combined;
            }
        }
        if (now.Base.Count > 0)
        {
            how = $"'{now.BaseWord}' read as the notes explain it.";
            // "P 0650 std": the technique stands beside the word.
            var told = AreaChanges.Combine(now.Base, now);
            return now.Technique == Technique.Percussion ? told.ConvertAll(a => a.Technique == Technique.Unknown ? a with { Technique = Technique.Percussion } : a) : told;
        }
        if (happening.Reference is { } word && word.Is(Sense.Same, nameof(ReferTo.Usual)) && Usual(word.Text, now, ref how) is { } usual) return usual;
        // "R low 4, the rest 3": the places of the last session that named as many as a whole one.
        if (now.Rest is not null && (_arrangements.Whole.Count > 1 ? _arrangements.Whole : _sessions.FindLast(s => s.Areas.Count(a => a.Technique != Technique.Vibration && a.Area != ChestArea.Unknown) > 2)?.Areas) is { } all)
        {
            how = "'The rest' read as the other places of a whole session.";
            return AreaChanges.Combine(all, now);
        }

        if (_arrangements.Narrowed(now) is { } narrowed) { how = "'just' or 'only' read as the usual session, only there."; return narrowed; }
        var areas = _arrangements.Place(now.Areas.ToList(), now);
        AreaChanges.Leave(areas, now);
        if (BareMinutes.Placed(areas, now, _sessions) is { } recalled) (areas, how) = recalled;
        if (areas.Count == 0 && now.Technique == Technique.Unknown && happening.Reference is null && _arrangements.Ordinary is { } ordinary)
        {
            how = "A session told without its areas read as the notes say above that it is done.";
            return AreaChanges.Combine(ordinary, now);
        }
        if (areas.Count == 0 && now.Technique != Technique.Unknown) areas.Add(new AreaMinutes(Side.Unknown, ChestArea.Unknown, now.Technique, null));
        return areas;
    }

    private readonly Dictionary<string, List<AreaMinutes>> _usual = new(StringComparer.Ordinal);

    // "full set - LL RL 4 mins, LU RU 3 mins, vibs 1 min each": told once with all its areas, "full set" alone later means the same.
    private List<AreaMinutes>? Usual(string word, AreaReading now, ref string? how)
    {
        var key = word.StartsWith("the ", StringComparison.Ordinal) ? word[4..] : word;
        if (!_usual.TryGetValue(key, out var known))
        {
            var told = _arrangements.Place(now.Areas.ToList(), now);
            if (told.Exists(a => a.Minutes is not null) && told.Select(a => (a.Area, a.Technique)).Distinct().Count() > 1) { _usual[key] = told; return told; }
            // "as usual" where one session alone has been so called.
            if (_usual.Count == 1 && key is "usual" or "as usual" or "our usual" or "her usual" or "his usual" or "usual routine" or "same usual") known = _usual.Values.First();
            // "full routine", "per plan", where the notes say above what is done and call it nothing.
            else if (_usual.Count == 0 && _arrangements.Whole.Count > 0 && !IsOfIllness(key)) known = [.. _arrangements.Whole];
            else return null;
        }
        how = $"'{word}' read as the notes told it before.";
        return AreaChanges.Combine(known, now);
    }

    private static bool IsOfIllness(string word) => word.Contains("sick", StringComparison.Ordinal) || word.Contains("ill", StringComparison.Ordinal) || word.Contains("poorly", StringComparison.Ordinal) || word.Contains("long", StringComparison.Ordinal)
        || word.Contains("short", StringComparison.Ordinal) || word.Contains("big", StringComparison.Ordinal) || word.Contains("new", StringComparison.Ordinal);

    // A session without a time: counted ("x4 today"), copied from a day with as many, or only spoken of.
    private void Untimed(Happening happening)
    {
        // "Vibrations 1 min each side" on the line after a session: part of it.
        if (happening is { Reference: null, Start: null, Value: null } && happening.Areas is { Areas.Count: > 0 } part && part.Technique is Technique.Vibration or Technique.Percussion && part.Areas.Exists(a => a.Minutes is not null)
            && _told.FindLast(t => t.Entry is Session) is { Entry: Session before } told && IsNear(told.Lines[^1]) && !before.Areas.Any(a => a.Technique == part.Technique)) { Details(part); return; }
        var count = happening.Value is { } text ? int.TryParse(text, System.Globalization.CultureInfo.InvariantCulture, out var n) ? n : 0 : 0;
        if (happening.Reference is { } reference && reference.Is(Sense.Same, nameof(ReferTo.Day)) && _line.Date is { } date)
        {
            var that = _sessions.Of(SessionMemory.DayOf(reference, date)).OrderBy(s => s.At).ToList();
            if (that.Count > 0 && that.Count == count)
            {
                foreach (var session in that)
                    AddSession(happening, UncertainTime.Exactly(date.At(session.At.TimeOfDay)), AreaChanges.Combine(session.Areas, CountOnly(happening.Areas!)), $"'{reference.Text}' read as the times and areas of {that[0].At.Date:uuuu-MM-dd}.", that.Count);
                return;
            }
        }
        if ((_line.Marks & LineMarks.Share) != 0 || happening.Areas!.Areas.Count > 0 || happening.Reference is not null && !happening.Reference.Is(Sense.Same, nameof(ReferTo.Usual)) || count > 0 || (_line.Marks & LineMarks.AllDone) != 0)
            Ask(Doubts.Untimed(_line.Index, _file, count > 1 ? $"{count} sessions" : "A session"));
    }

    // "all 4 times": the 4 counts sessions.
    private static AreaReading CountOnly(AreaReading areas)
    {
        var result = new AreaReading { Technique = areas.Technique };
        result.LeftOut.AddRange(areas.LeftOut);
        result.Areas.AddRange(areas.Areas.Where(a => a is not { Side: Side.Unknown, Area: ChestArea.Unknown }));
        return result;
    }

    private void TellFeed(Happening happening)
    {
        if (happening.Value == "off")
        {
            // "0600 off": what was on. A pump feed that runs is the only thing that these notes turn on and leave.
            // A session finishes; "off" is said of a feed or of oxygen.
            if (_line.Text.Contains("finish", StringComparison.OrdinalIgnoreCase) && (OpenSession() ?? SessionOfLine()) is { } session && Time(happening.End) is { } ended && ended.Stated >= session.Start!.Stated)
            {
                var told = _told.FindLast(t => ReferenceEquals(t.Entry, session))!;
                var ofLine = told.Lines.Contains(_line.Index);
                told.Entry = session with { End = ended, Sources = ofLine ? session.Sources : [.. session.Sources, .. Source] };
                if (!ofLine) told.Lines.Add(_line.Index);
                _joined = true;
                return;
            }
            if (_openFeed is not { } open || Time(happening.End) is not { } off || Period.Between(open, off.Stated, PeriodUnits.Hours).Hours is < 0 or > 16) { Ask(Doubts.Unclear(_line.Index, _file, $"'{_line.Text.Trim()}' does not say what was turned off.", "the feed", "the oxygen")); return; }
            happening.Route = FeedRoute.PumpedTube;
        }
        // "2300 feed held": what ran was stopped; where nothing ran, it may not have been given at all.
        if (happening is { Start: null, End: not null } && _openFeed is null && _line.Text.Contains(" held", StringComparison.OrdinalIgnoreCase)) { Ask(Doubts.Unclear(_line.Index, _file, $"'{_line.Text.Trim()}' does not say whether a feed was stopped or not given.", "stopped", "not given")); return; }
        if (happening.Start is null && happening.End is null)
        {
            if (_line.Stamp is null)
            {
                if (happening.Millilitres is not null || happening.Rate is not null) Ask(Doubts.Untimed(_line.Index, _file, "A feed"));
                return;
            }
            if (happening.Millilitres is null && happening.Rate is null && happening.Value is null) return;
        }
        if (happening.Start is null && happening.End is null && happening.Value == "end" && _line.Stamp is { } stopped)
        {
            _openFeed = null;
            Add(new Feed { Sources = Source, End = TimesOfEvents.Stamped(stopped), Millilitres = happening.Millilitres, MillilitresPerHour = happening.Rate, Route = happening.Route, By = _line.By }, false);
            return;
        }
        var start = happening.Start is null && happening.End is not null ? null : Time(happening.Start);
        var end = happening.End is null ? null : Time(happening.End);
        var route = happening.Route == FeedRoute.Unknown && start is null && _arrangements.TubeFed ? FeedRoute.Tube : happening.Route;
        // "feed stopped" in a sentence about a vomit: at its time.
        if (start is null && end is null) return;
        if (start is not null && end is not null && end.Latest < start.Earliest) end = null;
        _openFeed = start is not null && end is null && happening.Route == FeedRoute.PumpedTube ? start.Stated : null;
        Add(new Feed { Sources = Source, Start = start, End = end, Millilitres = happening.Millilitres, MillilitresPerHour = happening.Rate, Route = route, By = _line.By });
    }

    private void TellDose(Happening happening)
    {
        if (happening.BeforeEachSession is not null) { _beforeEach.Add((happening, _line)); return; }
        if (happening.Value == "prescribed" && happening.Start is null) return;
        var known = _doses.Name(happening);
        if (happening.Start is null && _line.Stamp is null)
        {
            if (happening.Value?.StartsWith("times ", StringComparison.Ordinal) == true) { Ask(Doubts.Untimed(_line.Index, _file, "Doses of " + (known.Written ?? known.Medicine))); return; }
            if (known.Medicine == Medicines.Unknown) { if ((_line.Marks & LineMarks.Unreal) == 0 && !_line.Told.Exists(t => t.Happenings.Exists(h => h.Kind == HappeningKind.Dose && (h.Start is not null || h.BeforeEachSession is not null)))) Ask(Doubts.Untimed(_line.Index, _file, $"A dose ({known.Written})")); return; }
        }
        if (Time(happening.Start) is not { } start)
        {
            if (_line.Date is not { } date) return;
            // "8.15 chest. Temp 38.4. Paracetamol 7.5 ml after": at what was told before it in its line.
            if (happening.IsGiven && _told.FindLast(t => t.Lines[0] == _line.Index && t.Entry is { When.Precision: TimePrecision.Exact or TimePrecision.About }) is { Entry: { } before }) { AddDose(happening, known, TimesOfEvents.Borrowed(before.When.Stated, CheckPhase.After), null); return; }
            // A medicine that is only spoken of ("amoxicillin, I do not know") was not for certain given.
            if (!happening.IsGiven) { Ask(Doubts.Untimed(_line.Index, _file, $"A dose ({known.Written ?? known.Medicine})")); return; }
            start = UncertainTime.OnDay(date);
        }
        AddDose(happening, known, start, happening.End is null ? null : Time(happening.End));
    }

    private void AddDose(Happening happening, DoseMemory.Known known, UncertainTime start, UncertainTime? end)
    {
        if (known.Medicine == Medicines.Unknown && string.IsNullOrEmpty(known.Written)) return;
        Add(new Dose { Sources = Source, Start = start, End = end, Medicine = known.Medicine, MedicineAsWritten = known.Written, Amount = known.Amount, Route = happening.DoseRoute, By = _line.By, HowRead = known.How }, happening.Start is not null);
        _doses.Keep(known);
        if (known.Medicine == Medicines.Unknown && known.Written is { } written && (DoseMemory.IsColour(written) || IsName(written))) Ask(Doubts.WhatIs(_line.Index, written.ToLowerInvariant()));
    }

    // A word that the vocabulary does not know: the family's name for a medicine.
    private static bool IsName(string written) => CellTerms.Read(written) is [{ Kind: TermKind.Word, Meanings.Length: 0 }];

    private readonly List<(Happening Dose, LineRead Line)> _beforeEach = [];

    // "neb 15 min before each": once for every session of the day that has no such dose yet.
    private void BeforeEach()
    {
        foreach (var (happening, line) in _beforeEach)
        {
            _line = line;
            var known = _doses.Name(happening);
            var sessions = _told.Where(t => t.Entry is Session s && s.Start!.Precision is TimePrecision.Exact or TimePrecision.About && s.Start.Stated.Date == line.Date).Select(t => (t, s: (Session)t.Entry!)).ToList();
            var own = sessions.Where(p => p.t.Lines[0] == line.Index).ToList();
            foreach (var (_, session) in own.Count > 0 ? own : sessions)
            {
                var at = session.Start!.Stated.PlusMinutes(-(long)happening.BeforeEachSession!.Value);
                if (_told.Exists(t => t.Entry is Dose d && d.Medicine == known.Medicine && d.Start is { } s && Math.Abs(Period.Between(s.Stated, at, PeriodUnits.Minutes).Minutes) <= 15)) continue;
                AddDose(happening, known, TimesOfEvents.Of(new TimeRef(new TimeMention { Written = new ClockTime(at.TimeOfDay, HalfOfDay.Am, TimePrecision.Exact, null, at.TimeOfDay, at.TimeOfDay), Line = line.Index, Settled = at }) { Taken = TimePrecision.Reckoned })!, null);
            }
            if (sessions.Count == 0) Ask(Doubts.Untimed(line.Index, _file, "Doses before sessions"));
        }
        _beforeEach.Clear();
    }
}
