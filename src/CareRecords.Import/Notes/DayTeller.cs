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
        var route = happening.Route == FeedRoute.Unknown && (start is null && _arrangements.TubeFed || _arrangements.AllByTube) ? FeedRoute.Tube : happening.Route;
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
