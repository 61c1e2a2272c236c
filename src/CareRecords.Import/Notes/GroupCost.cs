using CareRecords.Import.Reading;

namespace CareRecords.Import.Notes;

/// <summary>
/// What it costs to take a run of terms as one group. The unit is about the surprise of an event whose time stands elsewhere in the line;
/// the weights were chosen by CareRecords on invented notes.
/// </summary>
internal sealed class GroupCost(bool stamped)
{
    /// <summary>Number of styles: 0 none yet, 1 the time leads, 2 the time trails.</summary>
    public const int Styles = 3;

    private const double UntimedEvent = 3;
    private const double UntimedReading = 2;
    private const double UntimedValues = 1.2;
    private const double UntimedRemark = 0.3;
    private const double ByPart = 0.7;
    private const double BySlot = 1.0;
    private const double TimeOfNothing = 1.2;
    private const double TimeOfValues = 0.8;
    private const double TwoTimes = 7;
    private const double EndTime = 0.4;
    private const double AcrossSentence = 1.6;
    private const double OtherStyle = 0.8;
    private const double HeadAfterTime = 1.5;
    private const double BareCut = 1.1;
    private const double StampServes = 0.7;
    private const double ToldAgain = 1.8;
    private const double ChunkBeforeTime = 0.4;
    private const double PartAndTime = 1.4;

    private int _times, _parts, _ends, _values, _words, _firstTime = -1, _firstContent = -1, _lastContent = -1;
    private CareKinds _kinds, _named, _beforeTime;
    private double _across;
    private bool _sinceTime, _likeDay, _each, _session, _since, _newAfter, _slot, _frequencyOfBefore;
    private int _chunksBeforeTime, _strangeParts, _fromWriting;
    private CareKinds _lastEvent, _events;
    private string? _sessionWord;
    private int _sessionChunk;
    private double _again;
    private int _timeChunk = -1, _lastingChunk = -1;

    /// <summary>Adds the term at <paramref name="i"/> of a group that starts at <paramref name="start"/>.</summary>
    public void Take(List<GroupItem> items, int i, int start)
    {
        var item = items[i];
        var term = item.Term;
        if (i > start && item.Before is "." or "/" or "|" or "?") _across += AcrossSentence + (_times > 0 && _firstContent < 0 && item.Before == "." ? 1.2 : 0);
        if (i > start && item.Before is not null && _times == 0 && _firstContent >= 0) _chunksBeforeTime++;
        if (item.IsTime)
        {
            _times++;
            _sinceTime |= item.Term.Is(Sense.Since);
            if (_firstTime < 0) (_firstTime, _beforeTime, _timeChunk) = (i, _named, item.ChunkIndex);
            else if (IsEnd(items, i)) _ends++;
            return;
        }
        if (term.Kind == TermKind.BadTime) { _times++; if (_firstTime < 0) (_firstTime, _beforeTime) = (i, _named); return; }
        if (GroupSplitter.IsPart(item.Terms, item.At))
        {
            _parts++;
            if (!Beside(item) && !Labels(items, i, start) && !(_times == 0 && DescribesSession(item))) _strangeParts++;
        }
        if (term.Is(Sense.Session))
        {
            if (_sessionWord == term.Text && _sessionChunk != item.ChunkIndex) _again += ToldAgain;
            (_sessionWord, _sessionChunk) = (term.Text, item.ChunkIndex);
        }
        Repeat(item.Named & (CareKinds.Session | CareKinds.Feed | CareKinds.Dose));
        if (term.Kind == TermKind.Offset)
        {
            _each |= term.Text == Offsets.Each;
            _session |= term.Text == Offsets.Session;
            _since |= term.Text == Offsets.Event;
            if (term.Text == Offsets.Writing) _fromWriting++;
        }
        if (term.Kind == TermKind.Reference && term.Is(Sense.Same, nameof(ReferTo.Day))) _likeDay = true;
        if (term.Is(Sense.Frequency) && _named == CareKinds.None) _frequencyOfBefore = true;
        if (item.Kinds != CareKinds.None || item.IsValue)
        {
            if (_firstContent < 0) _firstContent = i;
            _lastContent = i;
            if (item.IsValue) _values++;
        }
        else if (term.Kind == TermKind.Word && !IsSmall(term)) _words++;
        if (_times > 0 && _beforeTime != CareKinds.None && IsEvent(item.Named) && (item.Named & _beforeTime) == 0 && (_beforeTime & CareKinds.Same) == 0) _newAfter = true;
        if (_times == 0 && !_slot && MayBeTime(items, i, start)) _slot = true;
        if (_lastingChunk < 0 && (item.Named & (CareKinds.Session | CareKinds.Feed)) != 0) _lastingChunk = item.ChunkIndex;
        _kinds |= item.Kinds;
        _named |= item.Named;
    }

    // A part of the day beside its time, or after "before", says no other time.
    private static bool Beside(GroupItem item)
    {
        var (terms, at) = (item.Terms, item.At);
        return (at > 0 && (terms[at - 1].Kind == TermKind.Time || terms[at - 1].Is(Sense.Before) || terms[at - 1].Is(Sense.After))) || (at + 1 < terms.Count && terms[at + 1].Kind == TermKind.Time);
    }

    // "evening physio, 6 pm": which one it was, not when.
    private static bool DescribesSession(GroupItem item) => item.At + 1 < item.Terms.Count && (item.Terms[item.At + 1].Is(Sense.Session) || item.Terms[item.At + 1].Is(Sense.Technique));

    // "Overnight: feed on 9": a part that opens the group and a separator after it.
    private static bool Labels(List<GroupItem> items, int i, int start) => i == start && i + 1 < items.Count && items[i + 1].Before is ":" or "-" or ",";

    // "alb + CPT same, alb + CPT": an event told again after another is another time's.
    private void Repeat(CareKinds events)
    {
        if (events == CareKinds.None) return;
        if ((_events & events) != 0 && (_lastEvent & events) == 0) _again += ToldAgain;
        (_events, _lastEvent) = (_events | events, events);
    }

    /// <summary>The cost of the run taken so far, and the style in which it tells its time.</summary>
    public (double Cost, int Style) Total(List<GroupItem> items, int start, int end)
    {
        var cost = _across + _again + Timing() + (_times > 0 ? Mixture() : Mixture() * 0.6) + (_newAfter ? HeadAfterTime : 0);
        var style = _times == 0 || _firstContent < 0 || _kinds == CareKinds.None ? 0 : _firstTime < _firstContent ? 1 : _firstTime > _lastContent ? 2 : 0;
        return (cost, style);
    }

    /// <summary>The cost of a cut between two terms; not a number where no cut can be.</summary>
    public static double OfCut(GroupItem before, GroupItem after)
    {
        if (after.Before is { } sign)
            return sign switch { "." or "/" or "|" or "?" => 0.05, "," => 0.3, ")" => 0.2, "-" => 0.6, "(" => 0.9, ":" => 2.5, _ => 0.3 };
        // A family's word for several things is one word.
        if (after.Term.Start == before.Term.Start) return double.NaN;
        if (after.Term.Is(Sense.Then)) return 0.3;
        if (after.Term.Text == "but") return 0.5;
        if (after.Term.Is(Sense.And) || after.Term.IsSymbol("→")) return 0.6;
        if (!before.IsTime && (before.Term.Is(Sense.And) || before.Term.Is(Sense.At))) return double.NaN;
        if (after.IsTime || (after.Named & ~CareKinds.Same) != 0) return BareCut;
        // A number or a "same" belongs to what it follows, sooner than to what follows it.
        if (after.IsValue || after.Named != CareKinds.None) return before.IsTime ? BareCut + 0.5 : before.Term.Is(Sense.SatLabel) || before.Term.Kind == TermKind.Number && after.Term.Kind == TermKind.Number ? double.NaN : BareCut + 0.9;
        return after.Term.Kind == TermKind.Word && after.Term.Meanings.Length == 0 ? BareCut + 0.3 : double.NaN;
    }

    /// <summary>The cost of a change of style between two groups of a line.</summary>
    public static double OfStyles(int before, int after) => before != 0 && after != 0 && before != after ? OtherStyle : 0;

    private double Timing()
    {
        if (_times == 0)
        {
            if (_likeDay) return ByPart;
            // "inhaler 20 min ago, starting chest now": a time of its own, told from the message's.
            if (_fromWriting > 0) return 0.3 + (_fromWriting - 1) * TwoTimes;
            if (_since) return UntimedEvent + 1;
            if (_each && _strangeParts > 0) return 0.3 + PartAndTime;
            if (_each || (_session && _named == CareKinds.None)) return 0.3;
            var cost = IsEvent(_named) ? UntimedEvent : (_kinds & CareKinds.Check) != 0 || (_kinds & CareKinds.Sign) != 0 ? UntimedReading : (_kinds & CareKinds.Same) != 0 ? UntimedEvent : _values > 0 ? UntimedValues : UntimedRemark;
            if (stamped) cost *= StampServes;
            if (_slot && IsEvent(_named)) return Math.Min(cost, BySlot);
            return _parts > 0 ? Math.Min(cost, ByPart + 0.5 * (_parts - 1)) : cost;
        }
        var nothing = _kinds == CareKinds.None ? _values > 0 ? TimeOfValues : TimeOfNothing + (_words > 0 ? 0 : 1.0) : 0;
        nothing += _frequencyOfBefore ? 2 : 0;
        // "amox 9, off O2 since 4": since when is of the oxygen alone.
        nothing += _sinceTime && IsEvent(_named) ? UntimedEvent : 0;
        nothing += _chunksBeforeTime * ChunkBeforeTime + _strangeParts * PartAndTime;
        return nothing + (_times - 1 - _ends + (stamped ? _fromWriting : 0)) * TwoTimes + _ends * EndTime + (_words > 4 ? 0.1 * (_words - 4) : 0);
    }

    // What is told together at one time: readings go with anything, a feed and a session do not.
    private double Mixture()
    {
        var cost = 0.0;
        var (session, feed, dose, check) = (Has(CareKinds.Session), Has(CareKinds.Feed), Has(CareKinds.Dose), Has(CareKinds.Check));
        if (session && dose) cost += _each || _session ? 0.2 : 2.2;
        if (session && feed) cost += 2.6;
        if (_each && dose && (_named & CareKinds.Same) != 0) cost += 1.5;
        if (feed && dose) cost += 1.3;
        if (dose && check) cost += 0.5;
        if (feed && check) cost += 0.6;
        if (Has(CareKinds.Sign) && (session || feed || dose)) cost += 0.2;
        if (_kinds != CareKinds.None && _words > 0 && _across > 0) cost += 0.1;
        return cost;
    }

    private bool Has(CareKinds kind) => (_kinds & kind) != 0;

    private static bool IsEvent(CareKinds kinds) => (kinds & (CareKinds.Session | CareKinds.Feed | CareKinds.Dose)) != 0;

    // "7:25 done", "off 0600", "till 8.45": the end of what began before it.
    private bool IsEnd(List<GroupItem> items, int i)
    {
        // "wake 6.30, feed off 6": the feed is named after the first time, apart from it.
        if (_ends > 0 || _lastingChunk > _timeChunk || (_named & (CareKinds.Session | CareKinds.Feed)) == 0 || items[i].Term.Times.Count > 0) return false;
        var (terms, at) = (items[i].Terms, items[i].At);
        return (at > 0 && (terms[at - 1].Is(Sense.Stop) || terms[at - 1].Is(Sense.To))) || items[i].Term.Is(Sense.To)
            || (at + 1 < terms.Count && terms[at + 1].Is(Sense.Stop) && !terms.Skip(at + 2).Any(t => t.NamesEvent));
    }

    // "chest 7", "6 feed off": a bare number where a time would stand.
    private static bool MayBeTime(List<GroupItem> items, int i, int start)
    {
        var term = items[i].Term;
        if (term is not { Kind: TermKind.Number, Clock: not null }) return false;
        if (i + 1 < items.Count && items[i + 1] is { Before: null } next && (next.Term.Is(Sense.Each) || next.Term.Is(Sense.EachSide) || next.Term.Is(Sense.Times) || next.IsValue)) return SlotTimes.IsHourOfFeed(items[i].Terms, items[i].At);
        if (i + 1 < items.Count && items[i + 1].Term is { Kind: TermKind.Word } many && many.Is(Sense.Session) && many.Text.EndsWith('s')) return false;
        return i == start || (items[i - 1].Named & (CareKinds.Session | CareKinds.Feed)) != 0 || items[i - 1].Term.Is(Sense.Stop) || items[i - 1].Term.Is(Sense.Start);
    }

    private static bool IsSmall(Term term)
    {
        foreach (var meaning in term.Meanings)
            if (meaning.Sense is Sense.Article or Sense.At or Sense.Feeling or Sense.And or Sense.Now or Sense.NewTime or Sense.Only or Sense.Then or Sense.Stop or Sense.Start or Sense.Per or Sense.AmPm) return true;
        return false;
    }
}
