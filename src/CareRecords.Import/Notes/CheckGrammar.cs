using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Notes;

/// <summary>What a group's words say of saturations, pulse and oxygen.</summary>
internal sealed class CheckResult
{
    /// <summary>The readings in order.</summary>
    public List<CheckReading> Readings { get; } = [];

    /// <summary>Two numbers that could be before and after or a range; null when there are none.</summary>
    public string? Pair { get; set; }

    /// <summary>Two numbers that could be a saturation and a pulse; null when there are none.</summary>
    public string? PulsePair { get; set; }

    /// <summary>A number with a slip of the pen ("9l", "9 6") and what it may be; null when there is none.</summary>
    public (string Written, string Perhaps)? Slip { get; set; }

    /// <summary>Impossible values: what, as written, possible range.</summary>
    public List<(string What, string Written, string Range)> Impossible { get; } = [];

    /// <summary>Positions of terms that were used.</summary>
    public HashSet<int> Used { get; } = [];
}

/// <summary>
/// Reads saturations, pulses and oxygen flows in the order in which they stand. A number is a saturation after its label; without a label
/// when it lies between 60 and 100 and stands beside a phase, a flow, an arrow or alone after a time.
/// </summary>
internal sealed partial class CheckGrammar
{
    /// <summary>Lowest saturation that is taken for a reading and not a slip, per cent (an oximeter's display seldom goes below).</summary>
    public const double LowestSaturation = 30;

    private const double LowestBare = 60;
    private const double LowestPlausible = 50;
    private readonly IReadOnlyList<Term> _terms;
    private readonly string _line;
    private readonly bool _hasSession;
    private readonly CheckResult _result = new();
    private CheckReading? _current;
    private CheckPhase _pendingPhase;
    private double? _pendingFlow, _pendingPulse;
    private bool _arrow, _phaseLeads, _label, _comma, _verb, _pulseNext, _oxygenNext, _because;
    private double? _after;
    private int _labelAt = -1;
    private bool _newSentence;
    private int _corrected = -1;

    private CheckGrammar(IReadOnlyList<Term> terms, string line, bool hasSession) => (_terms, _line, _hasSession) = (terms, line, hasSession);

    /// <summary>Reads a group's terms.</summary>
    /// <param name="terms">The terms that other grammars have left.</param>
    /// <param name="line">The line, for the words as written.</param>
    /// <param name="hasSession">Whether the group also tells of a session.</param>
    /// <param name="timed">Whether the group has a time of its own.</param>
    /// <param name="pairs">What two joined numbers are, where the source says so.</param>
    /// <param name="times">How many times the group has.</param>
    public static CheckResult Read(IReadOnlyList<Term> terms, string line, bool hasSession, bool timed, PairMeaning pairs = PairMeaning.Unknown, int times = 1)
    {
        var grammar = new CheckGrammar(terms, line, hasSession) { _times = times };
        if (!grammar.IsCheck(timed)) return grammar._result;
        grammar._phaseLeads = grammar.PhaseLeads();
        for (var i = 0; i < terms.Count; i++) i = grammar.Take(i, pairs);
        grammar.Finish(pairs);
        return grammar._result;
    }

    private bool IsCheck(bool timed)
    {
        for (var i = 0; i < _terms.Count; i++)
        {
            var term = _terms[i];
            if (term.Is(Sense.SatLabel) || term.Is(Sense.Desat) || term.Is(Sense.OxygenLabel) || term.Is(Sense.Air) || (term.Is(Sense.PulseLabel) && IsPulse(i))) return true;
            if (term is { Kind: TermKind.Quantity, Unit: Unit.Litre or Unit.MlMin or Unit.Percent } || IsExtreme(i)) return true;
            if (IsFlowNumber(i)) return true;
            if (IsBare(term) && (PhaseAt(i - 1) != CheckPhase.None || PhaseAt(i + 1) != CheckPhase.None || Beside(i, Sense.Going) || Beside(i, Sense.Now) || i > 0 && _terms[i - 1].Text is "was" or "it was" or "were" or "hes" or "shes" or "sat at" or "reading" && term.Number >= 80 || Symbol(i - 1, "=") || Symbol(i + 1, "→") || Symbol(i - 1, "→") || _hasSession || (timed && First(i)) || Beside(i, Sense.Air))) return true;
            if (term.Kind is TermKind.Parts or TermKind.Range && IsSaturations(term) && (timed || _hasSession || _terms.Count <= 4 || Phases() > 0)) return true;
        }
        return false;
    }

    private bool First(int at)
    {
        for (var i = 0; i < at; i++)
            if (_terms[i].Kind != TermKind.Symbol && !(_terms[i].Kind == TermKind.Word && (_terms[i].Meanings.Length == 0 || _terms[i].Is(Sense.And) || _terms[i].Is(Sense.Then) || _terms[i].Is(Sense.AmPm) || _terms[i].Is(Sense.Now) || _terms[i].Is(Sense.At)))) return false;
        return true;
    }

    private int Phases() => Enumerable.Range(0, _terms.Count).Count(i => PhaseAt(i) != CheckPhase.None);

    private bool Beside(int at, Sense sense) => (at > 0 && _terms[at - 1].Is(sense)) || (at + 1 < _terms.Count && _terms[at + 1].Is(sense));

    private bool Symbol(int at, string sign) => at >= 0 && at < _terms.Count && _terms[at].IsSymbol(sign);

    private static bool IsBare(Term term) => term.Kind == TermKind.Number && term.Number is >= LowestBare and <= 100 && (term.IsWhole || term.Text is [_, _, '.', _]);

    private bool IsPulse(int at) => Next(at + 1) is { } n && n.Kind is TermKind.Number or TermKind.Range && _terms[at].Text != "p";

    private Term? Next(int at)
    {
        while (at < _terms.Count && (_terms[at].Text is "was" or "is" or "of" or "at" or ":" or "=" or "-" or "reading" or "were" or "around" or "about" or "~" or "and" or "up" || _terms[at].Is(Sense.Ish))) at++;
        return at < _terms.Count ? _terms[at] : null;
    }

    // A phase before its number ("b94 a96") or after it ("94 before 96 after").
    private bool PhaseLeads()
    {
        var (values, phases, firstIsPhase, lastIsValue, seen) = (0, 0, false, false, false);
        for (var i = 0; i < _terms.Count; i++)
        {
            var term = _terms[i];
            var phase = PhaseAt(i) != CheckPhase.None;
            var value = !phase && (IsBare(term) || term is { Kind: TermKind.Quantity, Unit: Unit.Percent });
            if (!phase && !value) continue;
            if (!seen) firstIsPhase = phase;
            seen = true;
            if (phase) phases++; else values++;
            lastIsValue = value;
        }
        return phases > 0 && (firstIsPhase ? lastIsValue : lastIsValue && values == phases + 1);
    }

    private int Take(int i, PairMeaning pairs)
    {
        var term = _terms[i];
        // "oxygen ¼ → off"
        if (term.IsSymbol("→") && _pendingFlow is not null && i + 1 < _terms.Count && _terms[i + 1].Is(Sense.Stop) && _terms[i + 1].Text is "off" or "stopped") { (_arrow, _verb) = (true, true); Flow(0, i + 1); return i + 1; }
        if (term.Kind == TermKind.Symbol) return Sign(i);
        if (PhaseAt(i) is var phase && phase != CheckPhase.None) { Phase(phase, i); return i; }
        if (term.Kind == TermKind.Offset && term.Text == Offsets.Event) { _after = term.Number; if (_current is { } c && _current.AfterMinutes is null && Later(i)) { c.AfterMinutes = term.Number; _after = null; } _result.Used.Add(i); return i; }
        if (term.Kind == TermKind.Duration && Later(i) && _current is { AfterMinutes: null } soon && (_verbFlow || _result.Readings.Count > 1)) { Moment(soon); soon.AfterMinutes = term.Number; _result.Used.Add(i); return i; }
        if (term.Kind == TermKind.Duration) { _after = term.Number; _result.Used.Add(i); return i; }
        if (term.Is(Sense.SatLabel) || (term.Is(Sense.Desat) && (Next(i + 1) is not { Kind: TermKind.Number or TermKind.Quantity } n || n.Number >= LowestSaturation))) { Label(i); return Value(i); }
        if (term.Is(Sense.PulseLabel) && IsPulse(i)) { _pulseNext = true; _result.Used.Add(i); return i; }
        if (IsExtreme(i)) return Extreme(i);
        if (term.Is(Sense.Air)) { Flow(0, i); return i; }
        if (term.Is(Sense.OxygenLabel) && i + 1 < _terms.Count && (_terms[i + 1].Text is "was" or "is" or "now" or ":" && i + 2 < _terms.Count ? i + 2 : i + 1) is var stop && _terms[stop].Is(Sense.Stop) && _terms[stop].Text is not ("over" or "run through" or "empty" or "emptied" or "end" or "ran out")) { _verb = true; Flow(0, i); _result.Used.Add(stop); return stop; }
        // "10am stop oxygen"
        if (term.Is(Sense.Stop) && term.Text is not ("over" or "done" or "down" or "end" or "run through" or "empty" or "emptied") && (i + 1 < _terms.Count && _terms[i + 1].Text is "the" or "his" or "her" ? i + 2 : i + 1) is var label && label < _terms.Count && _terms[label].Is(Sense.OxygenLabel) && (label + 1 >= _terms.Count || _terms[label + 1].Kind is TermKind.Symbol or TermKind.Time)) { _verb = true; Flow(0, i); _result.Used.Add(label); return label; }
        if (term.Is(Sense.OxygenLabel)) { _oxygenNext = true; _result.Used.Add(i); return i; }
        if (term is { Kind: TermKind.Quantity, Unit: Unit.Litre } && i + 1 < _terms.Count && _terms[i + 1].Is(Sense.Stop) && _terms[i + 1].Text is "off" or "stopped" or "turned off") { Flow(0, i); return i + 1; }
        if (term is { Kind: TermKind.Quantity, Unit: Unit.Litre }) { Flow(term.Number, i); return i; }
        if (term is { Kind: TermKind.Quantity, Unit: Unit.MlMin }) { Flow(term.Number / 1000, i); return i; }
        if (IsVerb(term)) { _verb = true; if (term.Is(Sense.Going)) _arrow = _current?.SpO2 is not null; return i; }
        if (term.Text is "because" or "as" or "cos" or "coz" or "for" && _pendingFlow is not null) { _because = true; return i; }
        if (term.Text == "no" && _current?.SpO2 is not null && i + 1 < _terms.Count && IsBare(_terms[i + 1])) { Discount(); return i; }
        // "after ten minutes it was 93" is a later reading.
        if (term.Is(Sense.Correction) && term.Text.StartsWith("it was", StringComparison.Ordinal) && i > 0 && (_terms[i - 1].Kind is TermKind.Offset or TermKind.Duration || _after is not null)) return i;
        if (term.Is(Sense.Correction) || (term.Is(Sense.Discount) && LaterValue(i))) { Discount(); return i; }
        if (term.Kind == TermKind.Number && i + 1 < _terms.Count && _terms[i + 1].Text == "bpm") { Pulse(term, i); _result.Used.Add(i + 1); return i + 1; }
        if (_pulseNext && term.Kind is TermKind.Number or TermKind.Range) { Pulse(term, i); return i; }
        if (IsFlowNumber(i)) { Flow(term.Fraction ?? term.Number, i); return i; }
        return Numbers(i, pairs);
    }

    // "low 93 high 96", "lowest 88": the ends of a range.
    private bool IsExtreme(int at) => at + 1 < _terms.Count && IsBare(_terms[at + 1]) && _terms[at].Text is "low" or "lowest" or "min" or "minimum" or "high" or "highest" or "max" or "maximum";

    private int Extreme(int at)
    {
        _result.Used.Add(at);
        _result.Used.Add(at + 1);
        var low = _terms[at].Text is "low" or "lowest" or "min" or "minimum";
        var value = _terms[at + 1].Number;
        if (_extreme is { } other && _current?.SpO2 == other && (low ? value <= other : value >= other)) { (_current.SpO2, _current.High) = (Math.Min(value, other), Math.Max(value, other)); _extreme = null; }
        else { Reading(_terms[at + 1], at + 1); _extreme = value; }
        return at + 1;
    }

    private double? _extreme;
    private int _times;

    private bool Later(int at) => at > 0 && IsBare(_terms[at - 1]);

    private bool LaterValue(int at) => _current?.SpO2 is not null && _terms.Skip(at + 1).Any(IsBare);

    private int Sign(int i)
    {
        switch (_terms[i].Text)
        {
            case "→" or "↑" or "↓" when _current is not null || _oxygenNext || _pendingFlow is not null:
                _arrow = true;
                _result.Used.Add(i);
                break;
            case "," or ";" or "(": (_comma, _oxygenNext) = (true, false); if (_terms[i].Text == ";") (_label, _newSentence) = (false, true); break;
        }
        return i;
    }

    private static bool IsVerb(Term term) => term.Kind == TermKind.Word && (term.Is(Sense.Going) || term.Text is "on" or "put" or "putting" or "turning" or "up" or "down" or "turned" or "popped" or "reduced" or "increased" or "started" or "back" or "dropped" or "weaned"
        or "onto" or "bumped" or "upped" or "lowered" or "gave" or "opened" or "open" or "kept" or "turn" or "gives" or "puts" or "put on" or "back on" or "turned on" or "start" or "need" or "needed" or "cranked" or "restarted" or "switched" or "changed" or "to" or "started on");

    private void Phase(CheckPhase phase, int i)
    {
        _result.Used.Add(i);
        if (_phaseLeads) { _pendingPhase = phase; return; }
        if (_current is null) { _pendingPhase = phase; return; }
        if (_current.Phase == CheckPhase.None) _current.Phase = phase;
        else _pendingPhase = phase;
    }

    private void Label(int i)
    {
        (_label, _labelAt) = (true, i);
        _oxygenNext = false;
        _result.Used.Add(i);
    }

    private static bool IsSaturations(Term term) => term.Kind == TermKind.Range
        ? term is { Unit: Unit.None or Unit.Percent, Number: >= LowestBare and <= 100, High: <= 100 }
        : term.Text.Contains('/') && term.Parts.Count is 2 or 3 && term.Parts[0] is >= LowestBare and <= 100 && term.Parts[1] is >= LowestBare and <= 250;

    private CheckPhase PhaseAt(int at) => PhaseWord(at) is var phase && phase != CheckPhase.None && NearValue(at) ? phase : CheckPhase.None;

    // "vibs after" says nothing of a saturation: a phase has a reading within a few words.
    private bool NearValue(int at)
    {
        foreach (var step in new[] { -1, 1 })
            for (var k = at + step; k >= 0 && k < _terms.Count && Math.Abs(k - at) <= 6; k += step)
            {
                if (IsBare(_terms[k]) || _terms[k] is { Kind: TermKind.Quantity, Unit: Unit.Percent } || _terms[k].Kind is TermKind.Parts or TermKind.Range && IsSaturations(_terms[k])) return true;
                if (_terms[k].Kind == TermKind.Symbol && _terms[k].Text is ";" or "," && step > 0 || _terms[k].Is(Sense.Technique)) break;
            }
        return false;
    }

    private CheckPhase PhaseWord(int at) => at < 0 || at >= _terms.Count || _terms[at] is not { Kind: TermKind.Word } term ? CheckPhase.None
        : term.Is(Sense.Before) || term.Text is "b" ? CheckPhase.Before
        // "95 na": already, in Tagalog; after, in Afrikaans only beside a session.
        : term.Text == "na" && !_hasSession && !_terms.Any(t => t.Text == "voor") ? CheckPhase.None
        : term.Is(Sense.After) ? CheckPhase.After
        // "b 94 a 97": the letter is a phase only before a saturation.
        : term.Text is "a" && at + 1 < _terms.Count && IsBare(_terms[at + 1]) && at > 0 ? CheckPhase.After
        : term.Is(Sense.During) ? CheckPhase.During : CheckPhase.None;
}
