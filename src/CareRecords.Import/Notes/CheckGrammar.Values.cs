using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Notes;

// The numbers: saturations, pulses, pairs and ranges, and what looks like a slip of the pen.
internal sealed partial class CheckGrammar
{
    /// <summary>The value right after a label, whatever it is: it is read, or refused.</summary>
    private int Value(int i)
    {
        var at = i + 1;
        while (at < _terms.Count && at - i < 6 && (_terms[at].Text is "was" or "is" or "of" or "at" or ":" or "=" or "-" or "were" or "saying" or "reading" or "to" or "now" || (_terms[at].Kind == TermKind.Word && _terms[at].Meanings.Length == 0))) at++;
        if (at >= _terms.Count) return i;
        var term = _terms[at];
        if (term is not { Kind: TermKind.Number } && !(term is { Kind: TermKind.Quantity, Unit: Unit.Percent or Unit.Litre })) return i;
        var written = _line[term.Start..term.End];
        if (term is { Kind: TermKind.Quantity, Unit: Unit.Litre, Number: >= 5 and < 10 } && written.Length == 2)
        {
            _result.Slip = (written, written[..1] + "1");
            _result.Used.Add(at);
            return at;
        }
        if (term.Kind == TermKind.Quantity && term.Unit != Unit.Percent) return i;
        if (at + 1 < _terms.Count && term.Number < 30 && _terms[at + 1] is { Glued: true, Kind: TermKind.Word, Text: "l" or "o" or "i" or "s" or "b" } letter)
        {
            Slipped(letter, written);
            _result.Used.Add(at);
            _result.Used.Add(at + 1);
            return at + 1;
        }
        // "Sats 9,5": a stroke too many.
        if (term is { Kind: TermKind.Number, IsWhole: false, Number: >= 6 and < 10, Text.Length: 3 } && _terms[i].Is(Sense.SatLabel) && !_terms[i].Text.Contains("o2", StringComparison.Ordinal))
        {
            _result.Slip = (written, term.Text.Remove(1, 1));
            _result.Used.Add(at);
            return at;
        }
        // 39 for 93: the two figures changed places.
        if (term is { IsWhole: true, Number: >= LowestSaturation and < LowestPlausible, Kind: TermKind.Number } && _terms[i].Is(Sense.SatLabel) && term.Number % 10 >= 8)
        {
            _result.Slip = (written, Doubts.Plain(term.Number % 10 * 10 + Math.Floor(term.Number / 10)));
            _result.Used.Add(at);
            return at;
        }
        if (term.Number is < LowestSaturation or > 100 && !term.Text.Contains(','))
        {
            if (term.Number < 0 || term.Number > 100 || _terms[i].Is(Sense.SatLabel)) _result.Impossible.Add(("saturation", written, "0 to 100 %"));
            _result.Used.Add(at);
            return at;
        }
        return i;
    }

    private void Slipped(Term letter, string written)
    {
        var digit = letter.Text switch { "l" or "i" => "1", "o" => "0", "s" => "5", _ => "8" };
        _result.Slip = (written + _line[letter.Start..letter.End], written + digit);
    }

    private void Discount()
    {
        if (_current?.SpO2 is null) return;
        // "95 before, 97 after, no sorry 94 before": which one was not meant is told by what follows.
        if (_current.Phase != CheckPhase.None) { _corrected = _result.Readings.Count; return; }
        _result.Readings.Remove(_current);
        _current = _result.Readings.LastOrDefault();
        _arrow = false;
    }

    private void Pulse(Term term, int i)
    {
        _result.Used.Add(i);
        _pulseNext = false;
        var value = term.Kind == TermKind.Range ? (term.Number + term.High) / 2 : term.Number;
        if (value is < 20 or > 300) { _result.Impossible.Add(("pulse", _line[term.Start..term.End], "20 to 300 beats a minute")); return; }
        double? kept = term.Kind == TermKind.Range ? null : value;
        if (_current is { Pulse: null, SpO2: not null }) _current.Pulse = kept;
        else if (_current is { Pulse: null, SpO2: null, Oxygen: not null }) _current.Pulse = kept;
        else _pendingPulse = kept;
    }

    private int Numbers(int i, PairMeaning pairs)
    {
        var term = _terms[i];
        var written = _line[term.Start..term.End];
        if (term.Kind == TermKind.Number && term.Text.Contains(',') && term.Text.Split(',') is [{ Length: 2 }, { Length: 2 }] && (_label || _hasSession)) { _result.Pair = written; _result.Used.Add(i); return i; }
        if (term is { Kind: TermKind.Range } && IsSaturations(term)) { Range(term, i, written, pairs); return i; }
        if (term.Kind == TermKind.Parts && IsSaturations(term)) { Joined(term, i, written, pairs); return i; }
        if (term is { Kind: TermKind.Parts, Parts: [>= LowestBare and <= 100] }) return i;
        var percent = term is { Kind: TermKind.Quantity, Unit: Unit.Percent };
        if (percent && term.Number is > 100 && (_label || _hasSession)) { _result.Impossible.Add(("saturation", written, "0 to 100 %")); _result.Used.Add(i); return i; }
        var value = IsBare(term) || percent && term.Number is >= LowestSaturation and <= 100
            || _label && term.Kind == TermKind.Number && term.IsWhole && term.Number is >= LowestSaturation and < LowestBare && (i == _labelAt + 1 || _arrow);
        if (_arrow && !value && _current?.SpO2 is not null && term is { Kind: TermKind.Number, IsWhole: true, Number: < 10 } && i + 1 < _terms.Count && _terms[i + 1] is { Kind: TermKind.Number, IsWhole: true, Number: < 10 } unit)
        {
            _result.Slip = (_line[term.Start..unit.End], term.Text + unit.Text);
            if (_current.Phase == CheckPhase.None && _hasSession) _current.Phase = CheckPhase.Before;
            _result.Used.Add(i);
            _result.Used.Add(i + 1);
            return i + 1;
        }
        // "99 then 9.6": a stroke too many.
        if (!value && _label && _current?.SpO2 is not null && term is { Kind: TermKind.Number, IsWhole: false, Number: >= 6 and < 10, Text.Length: 3 })
        {
            _result.Slip = (written, term.Text.Replace(".", "", StringComparison.Ordinal).Replace(",", "", StringComparison.Ordinal));
            _result.Used.Add(i);
            return i;
        }
        if (!value) return i;
        // "sats 96 or 69": the family itself is not sure which.
        if (i + 2 < _terms.Count && _terms[i + 1].Text == "or" && _terms[i + 2] is { Kind: TermKind.Number, IsWhole: true, Number: >= LowestSaturation and <= 100 } other && other.Number != term.Number)
        {
            _result.Slip = (_line[term.Start..other.End], other.Text);
            _result.Used.UnionWith([i, i + 1, i + 2]);
            return i + 2;
        }
        Reading(term, i);
        return i;
    }

    private void Reading(Term term, int i)
    {
        _result.Used.Add(i);
        // "91 95 90" of one label and nothing between: several readings of one moment.
        var reading = new CheckReading
        {
            SpO2 = term.Number,
            ByArrow = _arrow && _current?.SpO2 is not null,
            Pulse = _pendingPulse,
            Phase = _pendingPhase,
            At = term.Start,
            About = i + 1 < _terms.Count && _terms[i + 1].Is(Sense.Ish) || (i > 0 && (_terms[i - 1].Is(Sense.About) || _terms[i - 1].IsSymbol("~"))),
            Later = _result.Readings.Any(r => r.SpO2 is not null) || Within(i),
            AfterMinutes = _after,
            Now = i > 0 && _terms[i - 1].Is(Sense.Now) || (i + 1 < _terms.Count && _terms[i + 1].Is(Sense.Now)),
        };
        if (_pendingFlow is { } flow)
        {
            if (_because && !_result.Readings.Any(r => r.SpO2 is not null)) _because = false;
            else
            {
                (reading.Oxygen, reading.FlowApart) = (flow, !_verbFlow && _result.Readings.Count == 0 && _comma);
                if (_after is not null || AfterAhead(i) || Within(i)) Moment(reading);
                // "O2 0.5. Sats 90 → 94": said once for the pair; "1L since, then 94" is not.
                _keptFlow = _verbFlow && Phases() < 2 ? null : flow;
                _pendingFlow = null;
            }
        }
        else if ((reading.ByArrow || reading.AfterMinutes is not null || reading.Phase != CheckPhase.None || AfterAhead(i)) && _keptFlow is { } same) reading.Oxygen = same;
        (_pendingPhase, _pendingPulse, _arrow, _comma, _after, _newSentence) = (CheckPhase.None, null, false, false, null, false);
        _verb = false;
        _current = reading;
        _result.Readings.Add(reading);
    }

    // "turned down to 0.5, 95 after ten minutes", "started 0.5 L, rose to 96 in 5 mins": the change had its own moment, before the reading.
    private void Moment(CheckReading after)
    {
        if (!_verbFlow || after.Oxygen is not { } flow || _result.Readings.Exists(r => r.SpO2 is null && r.Oxygen == flow)) return;
        var at = _result.Readings.IndexOf(after);
        var change = new CheckReading { Oxygen = flow, At = after.At, Later = at > 0 || at < 0 && _result.Readings.Count > 0 };
        if (at < 0) _result.Readings.Add(change); else _result.Readings.Insert(at, change);
    }

    // "O2 up to 0.5, 93 within a few minutes": later, it is not said how much.
    private bool Within(int i) => i + 1 < _terms.Count && _terms[i + 1].Text is "within" or "shortly after" or "soon after" or "eventually";

    private bool AfterAhead(int i) => i + 1 < _terms.Count && _terms[i + 1] is { Kind: TermKind.Offset, Text: Offsets.Event };

    private double? _keptFlow;

    private void Range(Term term, int i, string written, PairMeaning pairs)
    {
        _result.Used.Add(i);
        if (pairs == PairMeaning.Phase) { PairOf(term.Number, term.High, term); return; }
        if (pairs == PairMeaning.Range) { AddRange(term.Number, term.High, term); return; }
        // "93 to 95 all day", "anything from 93 to 95": how it was, not before and after.
        if (!_hasSession && _terms.Any(t => t.Text is "all day" or "whole day" or "the whole day" or "all night" or "during the day" or "through the day" or "stayed" or "remained" or "anything" or "anywhere" or "between" or "mostly")) { AddRange(term.Number, term.High, term); return; }
        if (_hasSession || term.Text == "to" && Phases() == 0) { _result.Pair = written; if (Phases() > 0) PairOf(term.Number, term.High, term); return; }
        AddRange(term.Number, term.High, term);
    }

    private void AddRange(double low, double high, Term term)
    {
        _current = new CheckReading { SpO2 = low, High = high, Oxygen = _pendingFlow, Pulse = _pendingPulse, At = term.Start, Later = _result.Readings.Any(r => r.SpO2 is not null) };
        (_pendingFlow, _pendingPulse) = (null, null);
        _result.Readings.Add(_current);
    }

    private void PairOf(double first, double second, Term term)
    {
        _result.Pair = null;
        foreach (var (value, phase) in new[] { (first, CheckPhase.Before), (second, CheckPhase.After) })
            _result.Readings.Add(_current = new CheckReading { SpO2 = value, Phase = phase, Oxygen = _pendingFlow, At = term.Start, ByArrow = phase == CheckPhase.After });
        _pendingFlow = null;
    }

    private void Joined(Term term, int i, string written, PairMeaning pairs)
    {
        _result.Used.Add(i);
        var parts = term.Parts;
        if (parts.Count == 2 && parts[1] <= 250 && parts[0] <= 100 && (parts[1] > 100 || pairs == PairMeaning.Pulse))
        {
            Reading(term with { Number = parts[0] }, i);
            _current!.Pulse = parts[1];
        }
        else if (parts.Count == 2 && pairs == PairMeaning.Range) AddRange(parts.Min(), parts.Max(), term);
        else if (parts.Count == 2 && (pairs is PairMeaning.Phase or PairMeaning.PhaseByStroke || Phases() >= 2)) PairOf(parts[0], parts[1], term);
        else if (parts.Count == 2) _result.PulsePair = written;
        // "94/95/96 at 7, 1 and 6": one at each time.
        else if (parts.Count == _times && parts.All(p => p is >= LowestBare and <= 100)) foreach (var part in parts) Reading(term with { Number = part }, i);
        else if (parts.All(p => p is >= LowestBare and <= 100)) AddRange(parts.Min(), parts.Max(), term);
    }
}
