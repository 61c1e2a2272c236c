using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Notes;

// Oxygen flows: which readings they belong to, and which are changes.
internal sealed partial class CheckGrammar
{
    private bool IsFlowNumber(int i)
    {
        var term = _terms[i];
        if (!(term.Kind == TermKind.Number || term.Fraction is not null) || term.Kind == TermKind.Number && (term.Number is < 0 or > 15)) return false;
        var small = term.Fraction is not null || (term.Number is > 0 and < 1);
        // "at half rate" is of the feed.
        if (i + 1 < _terms.Count && (_terms[i + 1].Is(Sense.RateWord) || term.Fraction is not null && _terms[i + 1].Is(Sense.Past))) return false;
        var previous = i > 0 ? _terms[i - 1] : null;
        if (previous is null) return small && _terms.Skip(1).Any(t => t.Text is "on" || IsBare(t));
        if (previous.Is(Sense.OxygenLabel) || previous.Text == ":" && i > 1 && _terms[i - 2].Is(Sense.OxygenLabel)) return true;
        if (_oxygenNext && !_hasSession && (small || previous.IsSymbol("→") || IsVerb(previous))) return true;
        if ((previous.Text is "on" or "to" or "back on" or "up" or "down" or "by" or "still" or "back to" or "up to" or "down to" or "at" or "the" or "in" or "from" || previous.Is(Sense.Now) || previous.Is(Sense.Going)) && small) return true;
        // "91 on 0.5, turned up to 1": a whole number is a flow where a flow was before it.
        if (term is { IsWhole: true, Number: > 0 and <= 6 } && previous.Text is "to" or "up to" or "down to" or "back to" or "up" or "down" && (_current?.Oxygen ?? _pendingFlow) is not null && !MinutesNear(i) && !(i + 1 < _terms.Count && _terms[i + 1].Is(Sense.AnyArea))) return true;
        // "I put it up to 1", "turned him down to 2"
        if (term is { IsWhole: true, Number: > 0 and <= 6 } && previous.Text is "up to" or "down to" or "back to" or "back up to" or "back down to" && i > 1 && (_terms[i - 2].Text is "it" or "him" or "her" or "them" or "that") && _terms.Take(i).Any(t => t.Text is "put" or "turned" or "took" or "turn" or "bumped" or "dropped" or "moved") && !MinutesNear(i)) return true;
        if (previous.IsSymbol("→") && (small || (_pendingFlow is not null && _current?.SpO2 is null))) return true;
        return small && Measured() && (IsBare(previous) || IsSaturationsOf(previous) || previous.IsSymbol(",") || PhaseAt(i - 1) != CheckPhase.None || previous is { Kind: TermKind.Quantity, Unit: Unit.Percent }
            || previous.Is(Sense.Desat) || (i > 1 && IsBare(_terms[i - 2]))) && !MinutesNear(i);
    }

    private bool Measured() => _terms.Any(t => t.Is(Sense.SatLabel) || t.Is(Sense.OxygenLabel) || t.Is(Sense.Desat) || IsBare(t) || t is { Kind: TermKind.Quantity, Unit: Unit.Percent } || IsSaturationsOf(t));

    private static bool IsSaturationsOf(Term term) => term.Kind is TermKind.Parts or TermKind.Range && IsSaturations(term);

    private bool MinutesNear(int i) => i + 1 < _terms.Count && (_terms[i + 1].Is(Sense.Each) || _terms[i + 1].Is(Sense.EachSide));

    private void Flow(double litres, int i)
    {
        _result.Used.Add(i);
        if (litres is < 0 or > 60) { _result.Impossible.Add(("oxygen flow", _line[_terms[i].Start.._terms[i].End], "0 to 60 L/min")); return; }
        // "0.5→1": the flow that is left and the new one.
        if (_arrow && _current is null && _pendingFlow is not null) { (_pendingFlow, _arrow, _oxygenNext) = (litres, false, false); return; }
        _oxygenNextWas = _oxygenNext;
        _oxygenNext = false;
        if (_current?.SpO2 is not null && _current.Oxygen == litres && !_verb) return;
        var labelled = _oxygenNextWas;
        var moreValues = MoreReadings(i + 1);
        if (_current?.SpO2 is null) { _pendingFlow = litres; _verbFlow = _verb; _verb = false; return; }
        var change = (_verb && !Steady(i)) || SwitchedOn(i) || (labelled && moreValues && _verb);
        if (change || (_arrow && moreValues) || (_newSentence && labelled && !Steady(i)) || (_comma && moreValues && _current.Phase == CheckPhase.None) || (_current.Oxygen is not null && !moreValues) || DurationFollows(i))
        {
            (_pendingFlow, _verbFlow, _verb, _arrow) = (litres, true, false, false);
            if (!moreValues || DurationFollows(i) || OffsetAhead(i)) Change(litres, i);
            return;
        }
        Share(litres, moreValues);
        _current.FlowApart = !moreValues && (_comma || _newSentence) && i > 0 && (_terms[i - 1].Kind == TermKind.Symbol || _terms[i - 1].Is(Sense.OxygenLabel) || i > 1 && _terms[i - 1].Text == "on" && _terms[i - 2].Kind == TermKind.Symbol);
        _verb = false;
    }

    // "SpO2 88, O2 on at 1 L", "sat 88 RA. 1L on.": it was put on.
    private bool SwitchedOn(int i) => i > 1 && (_terms[i - 1].Text == "on" && _terms[i - 2].Is(Sense.OxygenLabel) || i > 2 && _terms[i - 1].Text == "at" && _terms[i - 2].Text == "on" && _terms[i - 3].Is(Sense.OxygenLabel))
        || _terms[i].Unit == Unit.Litre && (_comma || _newSentence) && i + 1 < _terms.Count && _terms[i + 1].Text is "on" or "started" or "given" or "commenced" && (i + 2 >= _terms.Count || _terms[i + 2].Kind == TermKind.Symbol);

    private bool _verbFlow, _oxygenNextWas;

    private bool DurationFollows(int i) => i + 1 < _terms.Count && _terms[i + 1].Kind == TermKind.Duration;

    private bool OffsetAhead(int i) => _terms.Skip(i + 1).Any(t => t is { Kind: TermKind.Offset, Text: Offsets.Event });

    // "94 on air", "still on half a litre": how it was, not a change.
    private bool Steady(int i)
    {
        for (var k = i - 1; k >= 0 && k >= i - 4; k--)
        {
            if (_terms[k].Text is "still" or "throughout" or "remains") return true;
            if (_terms[k].Text is "up" or "down" or "put" or "putting" or "turning" or "turn" or "opened" or "open" or "kept" or "puts" or "popped" or "turned" or "back" or "back on" or "put on" or "reduced" or "increased" or "started" or "up to" or "down to" or "back to" or "gave" or "weaned" or "upped" or "dropped" or "bumped" or "turned on" or "started on") return false;
            // "SpO2 87. O2 on at 0.5"
            if (_newSentence && k > 0 && _terms[k - 1].Is(Sense.OxygenLabel) && (_terms[k].Text == "to" || _terms[k].Text == "on" && _terms[k + 1].Is(Sense.At))) return false;
            if (IsBare(_terms[k])) break;
        }
        return true;
    }

    private bool MoreReadings(int from)
    {
        for (var k = from; k < _terms.Count; k++)
        {
            if (_terms[k].Is(Sense.PulseLabel)) { k++; continue; }
            if (IsBare(_terms[k]) || _terms[k] is { Kind: TermKind.Quantity, Unit: Unit.Percent }) return true;
        }
        return false;
    }

    /// <summary>A flow that was so for the readings before it: all of a pair when it stands after the pair.</summary>
    private void Share(double litres, bool moreValues)
    {
        if (moreValues) { _current!.Oxygen ??= litres; return; }
        for (var k = _result.Readings.Count - 1; k >= 0; k--)
        {
            var reading = _result.Readings[k];
            if (reading.Oxygen is not null) break;
            reading.Oxygen = litres;
            if (!reading.ByArrow && reading.Phase != CheckPhase.After) break;
        }
    }

    private void Change(double litres, int i)
    {
        _current = new CheckReading { Oxygen = litres, Later = _result.Readings.Count > 0, AfterMinutes = _result.Readings.Count > 0 ? _after : null, At = _terms[i].Start };
        _after = null;
        _result.Readings.Add(_current);
        if (!OffsetAhead(i)) _pendingFlow = null;
    }
}
