using CareRecords.Import.Reading;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Notes;

// Sessions: their areas, what they repeat, and those without a time.
internal sealed partial class DayTeller
{
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
            if (BareMinutes.OfOnePart(now.Base, now, _sessions) is { } lengthened) (now, how) = (lengthened, $"{how} The one number of minutes read as of the part of the chest that had as many before.");
            // "P 0650 std": the technique stands beside the word.
            var told = Explained(now.Base, now);
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
        if (BareMinutes.Placed(areas, now, _sessions, _arrangements.Whole) is { } recalled) (areas, how) = recalled;
        if (areas.Count == 0 && now.Technique == Technique.Unknown && happening.Reference is null && _arrangements.Ordinary is { } ordinary)
        {
            how = "A session told without its areas read as the notes say above that it is done.";
            return AreaChanges.Combine(ordinary, now);
        }
        if (areas.Count == 0 && now.Technique != Technique.Unknown) areas.Add(new AreaMinutes(Side.Unknown, ChestArea.Unknown, now.Technique, null));
        return areas;
    }

    // The places that a word stands for, as the words beside it change them; how long each took is not known where one number may be of a part or of every place.
    private List<AreaMinutes> Explained(IReadOnlyList<AreaMinutes> places, AreaReading now)
    {
        var told = AreaChanges.Combine(places, now);
        if (BareMinutes.OfUnknownPart(places, now, _sessions) is not { } minutes) return told;
        Ask(Doubts.OfWhichPart(_line.Index, _file, minutes));
        return told.ConvertAll(a => a.Technique == Technique.Vibration ? a : a with { Minutes = null, MinutesHigh = null });
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
        return Explained(known, BareMinutes.OfOnePart(known, now, _sessions) ?? now);
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
}
