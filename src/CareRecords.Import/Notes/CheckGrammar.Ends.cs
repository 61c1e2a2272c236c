using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Notes;

// What the end of a group settles: flows and pulses still open, several readings of one moment, phases said once of a pair.
internal sealed partial class CheckGrammar
{
    private void Finish(PairMeaning pairs)
    {
        if (_pendingFlow is { } flow && !(_current is { SpO2: null } && _current.Oxygen == flow))
        {
            _current = new CheckReading { Oxygen = flow, Later = _result.Readings.Count > 0, AfterMinutes = _result.Readings.Count > 0 ? _after : null };
            _result.Readings.Add(_current);
        }
        if (_pendingPulse is { } pulse)
        {
            if (_current is { Pulse: null }) _current.Pulse = pulse;
            else _result.Readings.Add(new CheckReading { Pulse = pulse, Later = _result.Readings.Count > 0 });
        }
        if (_corrected is > 0 and var from && from < _result.Readings.Count && _result.Readings[from] is { SpO2: not null, Phase: not CheckPhase.None } right)
            _result.Readings.RemoveAll(r => _result.Readings.IndexOf(r) < from && r.SpO2 is not null && r.Phase == right.Phase);
        BothPhasesAfter();
        Several();
        Unlabelled(pairs);
        Phases(_result.Readings);
    }

    // "93 / 95 pre/post", "92 95 before and after": the two phases in the order of the two numbers.
    private void BothPhasesAfter()
    {
        if (_result.Readings.Where(r => r.SpO2 is not null).ToList() is not [var first, var second]) return;
        var phases = Enumerable.Range(0, _terms.Count).Where(i => PhaseWord(i) is CheckPhase.Before or CheckPhase.After).ToList();
        if (phases.Count != 2 || _terms[phases[0]].Start < second.At || phases[1] - phases[0] > 2 || PhaseWord(phases[0]) != CheckPhase.Before || PhaseWord(phases[1]) != CheckPhase.After) return;
        (first.Phase, second.Phase) = (CheckPhase.Before, CheckPhase.After);
        if (second.Oxygen is not null) first.Oxygen ??= second.Oxygen;
        _result.Used.UnionWith(phases);
    }

    // "0400 95, 90": two bare numbers with a comma could be a saturation and its pulse.
    private void Unlabelled(PairMeaning pairs)
    {
        if (_label || _hasSession || _result.Readings is not [{ SpO2: not null, High: null, Oxygen: null, Pulse: null, Phase: CheckPhase.None, AfterMinutes: null } first, { SpO2: not null, High: null, Oxygen: null, Pulse: null, Phase: CheckPhase.None, AfterMinutes: null, ByArrow: false, Now: false } second]) return;
        var between = _line[first.At..second.At];
        if (between.Any(c => char.IsLetter(c) || c is not (',' or ' ') && !char.IsAsciiDigit(c))) return;
        if (pairs is PairMeaning.Phase or PairMeaning.Range) return;
        if (pairs == PairMeaning.Pulse)
        {
            first.Pulse = second.SpO2;
            _result.Readings.Remove(second);
            return;
        }
        _result.PulsePair = between + Doubts.Plain(second.SpO2!.Value);
        _result.Readings.Clear();
    }

    // "90 91 90": numbers side by side with nothing between are one moment's range.
    private void Several()
    {
        var values = _result.Readings.Where(r => r.SpO2 is not null).ToList();
        if (values.Count < 3 || values.Exists(r => r.Phase != CheckPhase.None || r.ByArrow || r.High is not null || r.AfterMinutes is not null)) return;
        if (values.Exists(r => r.Oxygen is not null && r.Oxygen != values[0].Oxygen)) return;
        var merged = values[0];
        (merged.High, merged.SpO2) = (values.Max(v => v.SpO2), values.Min(v => v.SpO2));
        if (merged.High == merged.SpO2) merged.High = null;
        merged.Pulse ??= values.Select(v => v.Pulse).FirstOrDefault(p => p is not null);
        _result.Readings.RemoveAll(r => r != merged && values.Contains(r));
    }

    // One phase said of a pair settles the other: "94 to 96 after", "b94 →96".
    private void Phases(List<CheckReading> readings)
    {
        // "after 97 am 98 pm": said once of both.
        if (_phaseLeads && readings is [{ SpO2: not null, ByArrow: false } one, { SpO2: not null, Phase: CheckPhase.None, ByArrow: false } two] && one.Phase != CheckPhase.None && _terms.Count(t => t.Is(Sense.AmPm)) == 2) two.Phase = one.Phase;
        for (var k = 0; k + 1 < readings.Count; k++)
        {
            var (first, second) = (readings[k], readings[k + 1]);
            if (first.SpO2 is null || second.SpO2 is null) continue;
            if (first.Phase == CheckPhase.None && second.Phase == CheckPhase.After && (second.ByArrow || readings.Count(r => r.SpO2 is not null) == 2)) first.Phase = CheckPhase.Before;
            else if (first.Phase == CheckPhase.Before && second.Phase == CheckPhase.None && second.ByArrow) second.Phase = CheckPhase.After;
        }
    }
}
