using CareRecords.Import.Reading;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>Makes checks and signs of the measures of a row.</summary>
internal sealed partial class MeasureCells(BlockReading reading, FreeWords words)
{
    /// <summary>
    /// Adds the checks in the given columns. Beside a session their time is borrowed from it: its start for "before", its end where written for "after".
    /// A cell with several parts gives one part to each session of the row, in order.
    /// </summary>
    /// <param name="row">The row.</param>
    /// <param name="columns">Columns of saturation, pulse, oxygen and phase.</param>
    /// <param name="at">The row's own time; null when there is none.</param>
    /// <param name="sessions">Sessions of the row or slot that the columns belong to.</param>
    /// <param name="otherwise">The phase where neither a heading nor a column of phases names one.</param>
    public void AddChecks(BlockRow row, IReadOnlyList<int> columns, UncertainTime? at, IReadOnlyList<Session> sessions, CheckPhase otherwise = CheckPhase.None)
    {
        var filled = columns.Where(c => !row[c].Cell.IsEmpty && !NotSaid.Is(row[c].Cell.Text.Trim())).ToList();
        var phase = filled.Where(c => Role(c) == Layouts.Role.Phase).Select(c => PhaseIn(row[c].Cell.Text, reading.Context.Words)).FirstOrDefault(p => p is not null) ?? otherwise;
        var pulses = filled.Where(c => Role(c) == Layouts.Role.Pulse).ToList();
        var flows = filled.Where(c => Role(c) == Layouts.Role.Oxygen).Select(c => (Column: c, Litres: Litres(row[c], reading.Block.Columns[c]))).Where(f => f.Litres is not null).ToList();
        var found = new List<(CellCheck Check, int Column, Session? Session)>();
        foreach (var column in filled.Where(c => Role(c) == Layouts.Role.Saturation))
            found.AddRange(Saturations(row[column], column, phase, sessions, at));
        Ranges(row, found);
        var pulsesLeft = pulses.ToDictionary(p => p, p => reading.Cells.Pulse(row[p]));
        foreach (var (check, column, session) in found)
        {
            if (When(check.Phase, session, at) is not { } when) continue;
            var own = reading.Block.Columns[column].Phase;
            var pulse = pulsesLeft.Keys.FirstOrDefault(p => pulsesLeft[p] is not null && (reading.Block.Columns[p].Phase == own || reading.Block.Columns[p].Phase == CheckPhase.None), -1);
            var flow = flows.Where(f => reading.Block.Columns[f.Column].Phase == own || reading.Block.Columns[f.Column].Phase == CheckPhase.None).Select(f => f.Litres).FirstOrDefault();
            reading.Add(new Check
            {
                Sources = [Source(row, column)],
                Start = when,
                SpO2 = check.Saturation?.Percent,
                SpO2High = check.Saturation?.High,
                Pulse = check.Pulse ?? (pulse >= 0 ? pulsesLeft[pulse] : null),
                OxygenLitresPerMinute = check.Oxygen ?? flow,
                Phase = check.Phase,
                By = row[reading.Slots.By].Cell.Words,
            }, [row[column], .. flows.Select(f => row[f.Column]), .. pulses.Select(p => row[p])]);
            if (pulse >= 0) pulsesLeft.Remove(pulse);
        }

        if (found.Count == 0) AddWithoutSaturation(row, pulsesLeft, [.. flows.Select(f => (f.Column, f.Litres!.Value))], phase, sessions.Count > 1 && at is null && reading.Day is { } day ? UncertainTime.OnDay(day) : When(phase, sessions.Count == 1 ? sessions[0] : null, at));
    }

    /// <summary>The phase of a cell that holds only that: "before", or the family's word for it ("v = before physio"); null for anything else.</summary>
    public static CheckPhase? PhaseIn(string text, FamilyWords words) =>
        SmallWords.ReadPhase(text) ?? (words.MeaningOf(text.Trim()) is { } means && means.Split(' ') is { Length: <= 3 } said ? SmallWords.ReadPhase(said[0]) : null);

    // "Best" and "worst" of a day are the two ends of one range.
    private void Ranges(BlockRow row, List<(CellCheck Check, int Column, Session? Session)> found)
    {
        var highest = found.FindIndex(f => DayRange.IsHighest(reading.Block.Columns[f.Column].Heading) == true);
        var lowest = found.FindIndex(f => DayRange.IsHighest(reading.Block.Columns[f.Column].Heading) == false);
        if (highest < 0 || lowest < 0) return;
        if (found[lowest].Check.Saturation?.Percent is not { } low || found[highest].Check.Saturation?.Percent is not { } high || low > high) return;
        reading.Use(row[found[highest].Column]);
        found[lowest] = found[lowest] with { Check = found[lowest].Check with { Saturation = new SaturationWritten(low, high > low ? high : null) } };
        found.RemoveAt(highest);
    }

    // A pulse or a flow alone is a check too; beside a session whose saturations were not taken the flow is still known.
    private void AddWithoutSaturation(BlockRow row, Dictionary<int, double?> pulses, List<(int Column, double Litres)> flows, CheckPhase phase, UncertainTime? when)
    {
        var pulse = pulses.FirstOrDefault(p => p.Value is not null, new(-1, null));
        if (when is null || (pulse.Value is null && flows.Count == 0)) return;
        var column = pulse.Value is not null ? pulse.Key : flows[0].Column;
        reading.Add(new Check
        {
            Sources = [Source(row, column)],
            Start = when,
            Pulse = pulse.Value,
            OxygenLitresPerMinute = flows.Count > 0 ? flows[0].Litres : null,
            Phase = phase,
            By = row[reading.Slots.By].Cell.Words,
        }, row[column]);
    }

    // "250" under "ml/min" is a quarter of a litre.
    private double? Litres(CellAt cell, ColumnMeaning column)
    {
        // A tick under "On ½ L oxygen".
        if (SmallWords.ReadYesNo(cell.Cell.Text) is true && cell.Cell.Text.Trim() is not "1" && FlowInHeading().Match(column.Own) is { Success: true } said && OxygenReader.Read(said.Groups[1].Value).TryGet(out var ofHeading))
        {
            reading.Use(cell);
            return ofHeading;
        }

        // "A = on air"
        if (reading.Context.Words.MeaningOf(cell.Cell.Text.Trim()) is { } means && OxygenReader.Read(means).TryGet(out var explained))
        {
            reading.Use(cell);
            return explained;
        }

        if (column.Unit == "ml/min" && OxygenReader.Read(cell.Cell.Words + " ml/min").TryGet(out var litres)) return litres;
        // "0.5, up to 1 at 2.15pm": the flow, and when it was turned.
        if (EventCell.Parts(cell.Cell.Text).ToList() is not { Count: > 1 } parts || !OxygenReader.Read(parts[0]).TryGet(out var flow)) return reading.Cells.Oxygen(cell);
        if (!reading.IsUsed(cell))
            foreach (var part in parts.Skip(1)) words.Read(cell, column.Own, reading.Day, null, keepAll: true, part);
        reading.Use(cell);
        return flow;
    }

    [System.Text.RegularExpressions.GeneratedRegex(@"((?:\d+(?:[.,]\d+)?|[½¼¾]|\d+/\d+)\s*(?:l|lpm|litres?|liters?)(?:/min)?)\b", System.Text.RegularExpressions.RegexOptions.IgnoreCase)]
    private static partial System.Text.RegularExpressions.Regex FlowInHeading();

    private IEnumerable<(CellCheck, int, Session?)> Saturations(CellAt cell, int column, CheckPhase rowPhase, IReadOnlyList<Session> sessions, UncertainTime? at)
    {
        var heading = reading.Block.Columns[column];
        var parts = sessions.Count > 1 || cell.Cell.Text.Contains(';') ? EventCell.Parts(cell.Cell.Text).Select(p => p.Trim()).ToList() : [cell.Cell.Text.Trim()];
        // "94/95/95" beside three sessions.
        if (sessions.Count > 1 && parts.Count == 1 && parts[0].Split('/', StringSplitOptions.TrimEntries) is var strokes && strokes.Length == sessions.Count && heading.Phase != CheckPhase.None) parts = [.. strokes];
        for (var i = 0; i < parts.Count; i++)
        {
            var before = reading.Into.Problems.Count;
            var read = Pair(parts[i], heading, reading.Key.PairsAreBeforeAfter) ?? CheckCell.Read(parts[i], why => reading.Cells.Refuse(cell.Source, why, "Correct the saturation, or leave the cell empty."));
            if (read is null)
            {
                if (reading.Into.Problems.Count == before) words.Read(cell, heading.Heading, reading.Day, at, keepAll: true, parts[i]);
                continue;
            }

            var session = i < sessions.Count && (sessions.Count == 1 || parts.Count <= sessions.Count) ? sessions[i] : null;
            foreach (var check in read)
                yield return (check with { Phase = check.Phase != CheckPhase.None ? check.Phase : heading.Phase != CheckPhase.None && !(session is null && SpotChecksToo().IsMatch(heading.Heading)) ? heading.Phase : rowPhase }, column, session);
        }
    }

    // "93/95" under "sats pre/post".
    private static List<CellCheck>? Pair(string text, ColumnMeaning heading, bool told)
    {
        var words = Lexicon.Find(heading.Heading, out _).Select(k => k.Concept).ToHashSet();
        if (!told && !words.Contains(Concept.Phase) && !(words.Contains(Concept.Before) && words.Contains(Concept.After))) return null;
        var pair = Two().Match(text.Trim());
        if (!pair.Success) return null;
        var beside = Beside().Replace(pair.Groups[3].Value, "").Trim();
        double? flow = null;
        if (beside.Length > 0 && !OxygenReader.Read(beside).TryGet(out var litres)) return null;
        else if (beside.Length > 0) flow = OxygenReader.Read(beside).Value;
        var found = new List<CellCheck>();
        foreach (var (figure, phase) in new[] { (pair.Groups[1].Value, CheckPhase.Before), (pair.Groups[2].Value, CheckPhase.After) })
        {
            if (NotSaid.Is(figure)) continue;
            if (!SaturationReader.Read(figure).TryGet(out var read)) return null;
            found.Add(new CellCheck(read, flow, phase));
        }

        return found;
    }

    [System.Text.RegularExpressions.GeneratedRegex(@"^(\d{2,3}%?|-)\s*[/,–\s-]\s*(\d{2,3}%?|-)(?:[\s,]+(.*))?$")]
    private static partial System.Text.RegularExpressions.Regex Two();

    [System.Text.RegularExpressions.GeneratedRegex(@"^(?:with|the|on|at|in|oxygen|o2|of|\s)+\b", System.Text.RegularExpressions.RegexOptions.IgnoreCase)]
    private static partial System.Text.RegularExpressions.Regex Beside();

    // "SpO2 (before PT or spot check)", "Pulse ox (the BEFORE number if it's CPT)": without a session in the row it was before none.
    [System.Text.RegularExpressions.GeneratedRegex(@"\b(?:spot|random|if\b.*\b(?:cpt|physio|pt|chest|session))\b", System.Text.RegularExpressions.RegexOptions.IgnoreCase)]
    private static partial System.Text.RegularExpressions.Regex SpotChecksToo();

    private static UncertainTime? When(CheckPhase phase, Session? session, UncertainTime? at) =>
        session?.Start is not { } start ? at
        : phase == CheckPhase.None && at is not null && at == start ? at
        : start.IsExact ? Notes.TimesOfEvents.OfSession(start.Stated, session.End, phase) : start;

    /// <summary>Adds what came up in a session as a sign too, as notes give it.</summary>
    public void AddSecretions(BlockRow row, IEnumerable<int> columns, Session session)
    {
        if (session.Secretions is not { } seen || session.Start is not { } start || NotSaid.Is(seen) || SmallWords.ReadYesNo(seen) == false || SameAs.IsNo(seen)) return;
        var column = columns.First(c => Role(c) == Layouts.Role.Secretions);
        Sign(row[column], column, row, SignKind.Secretions, SmallWords.ReadYesNo(seen) is true ? null : seen, null, start.IsExact ? Notes.TimesOfEvents.Borrowed(start.Stated, CheckPhase.None) : start);
    }

    /// <summary>Adds the sign in a column: a temperature, a breathing rate, or words under the name of a sign.</summary>
    public void AddSign(BlockRow row, int column, UncertainTime? at, LocalDate? day)
    {
        var cell = row[column];
        if (cell.Cell.IsEmpty || NotSaid.Is(cell.Cell.Text.Trim()) || SmallWords.ReadYesNo(cell.Cell.Text) == false) return;
        var meaning = reading.Block.Columns[column];
        // "Temp 19h00" beside a day.
        if (at is null && day is { } ofHeading && meaning.At is { Half: not HalfOfDay.Unknown } headed) at = headed.On(ofHeading);
        if ((at ?? (day is { } date ? UncertainTime.OnDay(date) : null)) is not { } when) return;
        switch (meaning.Role)
        {
            case Layouts.Role.Temperature:
                Temperature(cell, meaning, when, row);
                return;
            case Layouts.Role.Breathing:
                if (reading.Cells.Pulse(cell) is { } rate) Sign(cell, column, row, SignKind.BreathingRate, cell.Cell.Words, rate, when);
                return;
            default:
                var kind = KindWords.Read(meaning.Heading, FamilyWords.None)?.Sign ?? SignKind.Other;
                // "green phlegm" under "Cough / phlegm"
                if (kind == SignKind.Cough && Lexicon.Find(meaning.Heading, out _).Any(k => k.Concept == Concept.Secretions) && KindWords.Read(cell.Cell.Text, FamilyWords.None)?.Sign == SignKind.Secretions) kind = SignKind.Secretions;
                // "turned L" under "Turned / suction": how the child lies.
                if (kind == SignKind.Secretions && Lexicon.Split(cell.Cell.Text) is ["turned" or "repositioned" or "rolled", ..]) { reading.Saw(cell); return; }
                if (kind == SignKind.Other) words.Read(cell, meaning.Heading, day, when, keepAll: true);
                else Sign(cell, column, row, kind, SmallWords.ReadYesNo(cell.Cell.Text) is true ? null : cell.Cell.Words, null, when);
                return;
        }
    }

    private void Temperature(CellAt cell, ColumnMeaning meaning, UncertainTime when, BlockRow row)
    {
        var text = cell.Cell.Words!;
        var withUnit = meaning.Unit == "F" && TemperatureReader.Read(text).Outcome != Outcome.Certain ? TemperatureReader.Read(text + " F") : TemperatureReader.Read(text);
        if (withUnit.TryGet(out var temperature)) Sign(cell, cell.Column, row, SignKind.Temperature, temperature.AsWritten, temperature.Celsius, when);
        else if (withUnit.Outcome == Outcome.Nothing) words.Read(cell, meaning.Heading, when.Stated.Date, when, keepAll: true);
        else reading.Cells.Temperature(cell);
    }

    private void Sign(CellAt cell, int column, BlockRow row, SignKind kind, string? value, double? number, UncertainTime when) =>
        reading.Add(new Sign
        {
            Sources = [reading.Block.IsAcross ? cell.Source : Source(row, column)],
            Start = when,
            Kind = kind,
            What = SignWords.NameOf(kind),
            Value = value,
            Number = number,
            By = row[reading.Slots.By].Cell.Words,
        }, cell);

    private SourceLine Source(BlockRow row, int column) => reading.SourceOf(row, column);

    private Role Role(int column) => reading.Block.Columns[column].Role;
}
