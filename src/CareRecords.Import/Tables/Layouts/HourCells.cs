using CareRecords.Import.Reading;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>
/// Reads a cell of an hour that holds several events, each with a time of its own, a code of the family's key, or words: "06h20 N, 06h40 P",
/// "07h00 P; S 93/120 before, 95/116 after; O 0,5".
/// </summary>
internal sealed class HourCells(BlockReading reading, FreeWords words)
{
    private const int LongestTime = 2;

    private readonly CodeWords _codes = new(reading.Context.Words);
    private readonly CodeEntries _entries = new(reading, words);

    /// <summary>A piece of a cell: its own time, the code that it begins with, and the words without both.</summary>
    private sealed record Piece(string Words, LocalDateTime? Own, IReadOnlyList<CodeWritten> Codes);

    /// <summary>Reads a cell whose pieces have codes or times of their own; false, with nothing added, when none has.</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="start">Date and hour of it.</param>
    /// <param name="within">The time of what has none of its own.</param>
    public bool Read(CellAt cell, LocalDateTime start, UncertainTime within)
    {
        var pieces = new List<Piece>();
        foreach (var part in EventCell.Parts(cell.Cell.Text))
        {
            var piece = Cut(part, start);
            // "21h00 pump on, 45 ml/h" is one event.
            if (piece is { Own: null, Codes.Count: 0 } && pieces.Count > 0 && pieces[^1].Codes.Count == 0) pieces[^1] = pieces[^1] with { Words = $"{pieces[^1].Words}, {piece.Words}" };
            else pieces.Add(piece);
        }

        if (pieces.TrueForAll(p => p.Own is null && p.Codes.Count == 0)) return false;
        (CodeWritten Code, UncertainTime At)? last = null;
        foreach (var piece in pieces)
        {
            var at = piece.Own is { } own ? UncertainTime.Exactly(own) : within;
            if (piece.Codes.Count > 0)
            {
                foreach (var code in piece.Codes) Add(code, code.Minute is { } minute ? At(start, minute) : at, cell, piece.Own is null ? last?.At : null, start);
                last = (piece.Codes[^1], piece.Codes[^1].Minute is { } past ? At(start, past) : at);
            }
            else if (piece.Own is null && last is { } before && _entries.AddMore(piece.Words, before.Code, before.At, cell)) continue;
            else if (piece.Own is null && SameAs.IsNo(piece.Words) && _codes.Read(piece.Words[(piece.Words.IndexOf(' ', StringComparison.Ordinal) + 1)..]) is [{ What.Kind: TableKind.Sessions }])
            {
                reading.Into.Omitted.Add(new OmittedSession(within, piece.Words, cell.Source));
                reading.Use(cell);
            }
            else if (piece.Words.Contains('%', StringComparison.Ordinal) && CheckCell.Read(piece.Words, why => reading.Cells.Refuse(cell.Source, why, "Correct the saturation.")) is { } checks)
            {
                foreach (var check in checks)
                    reading.Add(new Check { Sources = [cell.Source], Start = check.Phase != CheckPhase.None && piece.Own is null && last is { At: { IsExact: true } beside } ? Notes.TimesOfEvents.Borrowed(beside.Stated, check.Phase) : at, SpO2 = check.Saturation?.Percent, SpO2High = check.Saturation?.High, Pulse = check.Pulse, OxygenLitresPerMinute = check.Oxygen, Phase = check.Phase }, cell);
            }
            else
            {
                var count = reading.Into.Entries.Count;
                words.Read(cell, null, start.Date, piece.Own is null ? UncertainTime.Exactly(start) : at, keepAll: true, piece.Words);
                if (piece.Own is null) HourGrid.Widen(reading.Into.Entries, count, start, within);
                last = null;
            }
        }

        _entries.Join(cell);
        return true;
    }

    private static UncertainTime At(LocalDateTime start, int minute) => UncertainTime.Exactly(start.Date.At(new LocalTime(start.Hour, minute)));

    private void Add(CodeWritten code, UncertainTime at, CellAt cell, UncertainTime? before, LocalDateTime start)
    {
        if (!_entries.Add(code, at, cell, before, code.MinuteTo is { } to ? At(start, to) : null)) reading.Cells.Ask(cell.Source, $"Not all of '{cell.Cell.Words}' could be read.", "Write each code as the key explains it.");
    }

    // "13h10 P" is P at ten past one; "S 94/118" has the hour's time.
    private Piece Cut(string text, LocalDateTime start)
    {
        var parts = text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
        for (var length = Math.Min(LongestTime, parts.Length - 1); length > 0; length--)
        {
            var time = string.Join(' ', parts[..length]).TrimEnd(',', ':');
            if (!LooksLikeTime(time) || CellTimes.Clock(time) is not { Outcome: Outcome.Certain, Value: { End: null, Start: { Precision: TimePrecision.Exact } clock } }) continue;
            var rest = string.Join(' ', parts[length..]);
            return new Piece(rest, start.Date.At(clock.In(start.Hour < 12 ? HalfOfDay.Am : HalfOfDay.Pm).Time), _codes.Read(rest) ?? []);
        }

        // "chest 5.20", "feed off 6.15": a time within the hour of the cell, at the end of its words.
        if (parts.Length > 1 && LooksLikeTime(parts[^1]) && CellTimes.Clock(parts[^1]) is { Outcome: Outcome.Certain, Value: { End: null, Start: { Precision: TimePrecision.Exact } last } } && last.Time.Hour % 12 == start.Hour % 12)
        {
            var words = string.Join(' ', parts[..^1]);
            return new Piece(words, start.Date.At(new LocalTime(start.Hour, last.Time.Minute)), _codes.Read(words) ?? []);
        }

        if (_codes.Read(text) is { } codes) return new Piece(text, null, codes);
        // "95% :15", "paracetamol 6 ml :10": a minute past the hour.
        var minute = CodeWords.MinutePast().Match(text);
        return minute.Success && (minute.Index == 0 || text[minute.Index - 1] == ' ')
            ? new Piece(text[..minute.Index].Trim(), start.Date.At(new LocalTime(start.Hour, int.Parse(minute.Groups[1].ValueSpan, System.Globalization.CultureInfo.InvariantCulture))), [])
            : new Piece(text, null, []);
    }

    private static bool LooksLikeTime(string text) => text.Length > 0 && char.IsAsciiDigit(text[0]) && (text.AsSpan().IndexOfAny(':', 'h', 'H') > 0 || (text.Length == 4 && text.All(char.IsAsciiDigit)) || text.EndsWith("am", StringComparison.OrdinalIgnoreCase) || text.EndsWith("pm", StringComparison.OrdinalIgnoreCase)
        || (text.IndexOf('.', StringComparison.Ordinal) is 1 or 2 && text.Length - text.IndexOf('.', StringComparison.Ordinal) == 3));
}
