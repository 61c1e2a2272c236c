using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Tables.Layouts;

/// <content>Rows of readings.</content>
internal sealed partial class KindRows
{
    private const int LongestPhase = 20;

    private void Checks(BlockRow row, WhatHappened what, UncertainTime at, RowWhen when)
    {
        if (what.Measure != Role.Saturation && !Measures().Exists(c => !row[c].Cell.IsEmpty) && OneMeasure(row, what.Measure, at)) return;
        var before = (Entries: reading.Into.Entries.Count, Problems: reading.Into.Problems.Count);
        var columns = Measures();
        if (columns.Any(c => !row[c].Cell.IsEmpty && reading.Block.Columns[c].Role == Role.Saturation)) measures.AddChecks(row, columns, at, [], PhaseIn(row));
        else if (!Told(row, columns, at, what)) measures.AddChecks(row, columns, at, [], PhaseIn(row));
        if (reading.Into.Entries.Count == before.Entries && reading.Into.Problems.Count == before.Problems && Numbers(row).FirstOrDefault(n => n.Cell.Text.Any(char.IsLetter) && TemperatureReader.Read(n.Cell.Text).Outcome == Outcome.Certain) is { IsNone: false } degrees && reading.Cells.Temperature(degrees) is { } temperature)
            reading.Add(NewSign(row, SignKind.Temperature, temperature.AsWritten, temperature.Celsius, at), degrees);
        PulseInRemark(row, before.Entries);
        // "increased oxygen to 2 litres | 93": the kind itself says how much.
        if (what.Measure == Role.Oxygen && FlowTo(row[reading.Slots.Kind].Cell.Text) is { } turned)
            for (var i = before.Entries; i < reading.Into.Entries.Count; i++)
                if (reading.Into.Entries[i] is Check { OxygenLitresPerMinute: null } check) reading.Into.Entries[i] = check with { OxygenLitresPerMinute = turned };
        // "0.5 | L" beside the same flow under its own heading.
        if (what.Measure == Role.Oxygen && reading.Into.Entries.Skip(before.Entries).OfType<Check>().FirstOrDefault() is { OxygenLitresPerMinute: { } known })
            foreach (var number in Numbers(row).Where(n => OxygenReader.Read(n.Cell.Text).TryGet(out var flow) && flow == known)) reading.Saw(number);
        if (reading.Into.Entries.Count > before.Entries || reading.Into.Problems.Count > before.Problems) return;
        Unknown(row, when);
    }

    // The saturation among the words beside the kind, with what measures stand under headings of their own.
    private bool Told(BlockRow row, List<int> columns, UncertainTime at, WhatHappened what)
    {
        foreach (var cell in Numbers(row))
        {
            void Refuse(string why) => reading.Cells.Refuse(cell.Source, why, "Correct the saturation.");
            IReadOnlyList<CellCheck>? read = what.Measures.Count > 1 && MeasureOrder.Read(cell.Cell.Text, what.Measures, Refuse) is { } ordered ? [ordered] : CheckCell.Read(cell.Cell.Text, Refuse);
            if (read is not { Count: > 0 } found) continue;
            var (pulse, litres) = found.Count == 1 ? Beside(row, cell) : default;
            foreach (var column in columns.Where(c => !row[c].Cell.IsEmpty))
            {
                if (reading.Block.Columns[column].Role == Role.Pulse) pulse ??= reading.Cells.Pulse(row[column]);
                if (reading.Block.Columns[column].Role == Role.Oxygen) litres ??= reading.Cells.Oxygen(row[column]);
                reading.Use(row[column]);
            }

            foreach (var check in found)
                reading.Add(new Check { Sources = [row.Source], Start = at, SpO2 = check.Saturation?.Percent, SpO2High = check.Saturation?.High, Pulse = check.Pulse ?? pulse, OxygenLitresPerMinute = check.Oxygen ?? litres, Phase = check.Phase == CheckPhase.None ? PhaseIn(row) : check.Phase, By = By(row) }, cell);
            return true;
        }

        return false;
    }

    // "HR | 112 | bpm", "O2 | 0.5 | L/min".
    private bool OneMeasure(BlockRow row, Role measure, UncertainTime at)
    {
        foreach (var cell in Numbers(row))
        {
            var read = measure == Role.Pulse ? PulseReader.Read(cell.Cell.Words!) : OxygenReader.Read(cell.Cell.Words!);
            if (read.Outcome == Outcome.Nothing && measure == Role.Oxygen && FlowTo(cell.Cell.Words!) is { } now)
            {
                reading.Add(new Check { Sources = [row.Source], Start = at, OxygenLitresPerMinute = now, Phase = PhaseIn(row), By = By(row) }, cell);
                return true;
            }

            if (read.Outcome == Outcome.Nothing) continue;
            if (measure == Role.Pulse ? reading.Cells.Pulse(cell) is { } value : reading.Cells.Oxygen(cell) is { } && (value = read.Value) >= 0)
                AddMeasure(new Check { Sources = [row.Source], Start = at, Pulse = measure == Role.Pulse ? value : null, OxygenLitresPerMinute = measure == Role.Oxygen ? value : null, Phase = PhaseIn(row), By = By(row) }, cell);
            return true;
        }

        return false;
    }

    // Pulse or oxygen on a line of its own, at the very time of the reading in the lines above: one check.
    private void AddMeasure(Check measure, CellAt cell)
    {
        var count = reading.Into.Entries.Count;
        var at = reading.Into.Entries.FindLastIndex(count - 1, Math.Min(count, MostOfOneReading), e => e is Check);
        if (at >= reading.Into.Entries.Count - MostOfOneReading && at >= 0 && reading.Into.Entries[at] is Check last && last.Start == measure.Start && measure.Start is { IsExact: true } && last.Sources[0].Place != measure.Sources[0].Place
            && (measure.Pulse is null || last.Pulse is null) && (measure.OxygenLitresPerMinute is null || last.OxygenLitresPerMinute is null) && (measure.Phase == last.Phase || measure.Phase == CheckPhase.None || last.Phase == CheckPhase.None) && last.SpO2High is null)
        {
            reading.Into.Entries[at] = last with
            {
                Sources = [.. last.Sources, .. measure.Sources],
                Pulse = last.Pulse ?? measure.Pulse,
                OxygenLitresPerMinute = last.OxygenLitresPerMinute ?? measure.OxygenLitresPerMinute,
                Phase = last.Phase == CheckPhase.None ? measure.Phase : last.Phase,
            };
            reading.Use(cell);
            reading.Joined = true;
            return;
        }

        reading.Add(measure, cell);
    }

    /// <summary>The flow that oxygen was turned to: "from 1 l to 1.5 l", "0.5 -> 1". Null when the words tell none.</summary>
    public static double? FlowTo(string text)
    {
        foreach (var mark in new[] { "→", "->", "=>", ">", " to " })
            if (text.LastIndexOf(mark, StringComparison.OrdinalIgnoreCase) is > 0 and var at && OxygenReader.Read(text[(at + mark.Length)..].Trim()).TryGet(out var flow))
                return flow;
        return null;
    }

    // "after, HR 112" beside a saturation.
    private void PulseInRemark(BlockRow row, int from)
    {
        if (reading.Into.Entries.Skip(from).OfType<Check>().ToList() is not [{ Pulse: null, SpO2: not null } check]) return;
        foreach (var cell in TextCells(row))
            foreach (var piece in cell.Cell.Text.Split([',', ';'], StringSplitOptions.TrimEntries))
                if (CheckCell.PulseIn(piece) is { } beats)
                {
                    reading.Into.Entries[reading.Into.Entries.LastIndexOf(check)] = check with { Pulse = beats };
                    reading.Use(cell);
                    return;
                }
    }

    private List<CellAt> Numbers(BlockRow row) =>
        [.. Of(Role.Amount).Concat(Of(Role.Minutes)).Concat(Of(Role.Millilitres)).Select(c => row[c]).Concat(TextCells(row)).Where(c => !c.Cell.IsEmpty).DistinctBy(c => c.Column)];

    // "before physio", "after" in a short remark beside a reading.
    private CheckPhase PhaseIn(BlockRow row) => PhaseIn(TextCells(row).Prepend(row[reading.Slots.Kind]));

    /// <summary>The phase that a short remark names; none when none does.</summary>
    public static CheckPhase PhaseIn(IEnumerable<CellAt> remarks)
    {
        foreach (var piece in remarks.SelectMany(c => c.Cell.Text.Split([',', ';'], StringSplitOptions.TrimEntries)).Where(p => p.Length <= LongestPhase))
        {
            var words = Lexicon.Find(piece, out _).Select(k => k.Concept).ToHashSet();
            var (before, after) = (words.Contains(Concept.Before), words.Contains(Concept.After));
            if (before != after && words.All(w => w is Concept.Before or Concept.After or Concept.Session or Concept.Percussion or Concept.Saturation)) return before ? CheckPhase.Before : CheckPhase.After;
        }

        return CheckPhase.None;
    }

    // Pulse and oxygen in cells without headings, right of the saturation: over 100 it can only be a pulse, "air" or a few litres only a flow.
    private (double? Pulse, double? Litres) Beside(BlockRow row, CellAt saturation)
    {
        double? pulse = null, litres = null;
        foreach (var cell in TextCells(row).Where(c => c.Column > saturation.Column))
        {
            if (pulse is null && PulseReader.Read(cell.Cell.Words!).TryGet(out var beats) && beats >= 40 && HoldsPulses(cell.Column)) pulse = beats;
            else if (litres is null && (OxygenReader.Read(cell.Cell.Words!).TryGet(out var alone) ? alone : FlowAfterOn(cell.Cell.Words!)) is <= 15 and var flow) litres = flow;
            else continue;
            reading.Use(cell);
        }

        return (pulse, litres);
    }

    // "asleep on ½".
    private static double? FlowAfterOn(string text) =>
        text.LastIndexOf(" on ", StringComparison.OrdinalIgnoreCase) is > 0 and var at && OxygenReader.Read(text[(at + 4)..].Trim()).TryGet(out var flow) ? flow : null;

    private bool HoldsPulses(int column) =>
        reading.Block.Rows.Any(r => PulseReader.Read(r[column].Cell.Text.Trim()).TryGet(out var beats) && beats is > 100 and < 250);
}
