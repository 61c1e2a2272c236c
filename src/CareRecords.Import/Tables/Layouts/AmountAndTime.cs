using CareRecords.Import.Reading;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>Reads an amount with its time in one cell: "4 @ 0650", "2 puffs at 7.10", "x4 6.40"; several with semicolons between.</summary>
internal static partial class AmountAndTime
{
    /// <summary>The doses as events; null when the cell is written another way.</summary>
    public static IReadOnlyList<CellEvent>? Read(string text)
    {
        var events = new List<CellEvent>();
        foreach (var part in EventCell.Parts(text))
        {
            if (Part(part) is not { } found) return null;
            events.Add(found);
        }

        return events.Count > 0 ? events : null;
    }

    /// <summary>"salbutamol 2 puffs at 8:50", "salbutamol 2 puffs 8.50": the words before the time, and the time; null when the cell is written another way.</summary>
    public static (string Words, ClockSpan Clock)? Trailing(string text)
    {
        text = text.Trim().TrimEnd('.');
        foreach (var mark in new[] { "@", " at ", " " })
        {
            var at = text.LastIndexOf(mark, StringComparison.OrdinalIgnoreCase);
            if (at <= 0 || !char.IsLetter(text[0])) continue;
            var time = text[(at + mark.Length)..].Trim();
            if (time.AsSpan().IndexOfAny(':', '.', 'h') < 0 && mark == " ") continue;
            if (time.Length > 0 && char.IsAsciiDigit(time[0]) && CellTimes.Clock(time) is { Outcome: Outcome.Certain, Value: { } clock }) return (text[..at].Trim(' ', ','), clock);
        }

        return null;
    }

    private static CellEvent? Part(string part)
    {
        foreach (var mark in new[] { "@", " at ", " à " })
        {
            var at = part.IndexOf(mark, StringComparison.OrdinalIgnoreCase);
            if (at > 0 && char.IsAsciiDigit(part.TrimStart()[0]) && Event(part[..at], part[(at + mark.Length)..]) is { } found) return found;
        }

        // "4 puffs 6.30am"
        if (AmountFirst().Match(part) is { Success: true } first && Event(first.Groups[1].Value, first.Groups[2].Value) is { Clock: not null } timed) return timed;
        // "4 (6:40)"
        if (InBrackets().Match(part) is { Success: true } bracketed && Event(bracketed.Groups[1].Value, bracketed.Groups[2].Value) is { Clock: not null } within) return within;
        var space = part.IndexOf(' ', StringComparison.Ordinal);
        return space > 1 && part[0] is 'x' or 'X' or '×' && space > 1 ? Event(part[1..space], part[space..]) : null;
    }

    [System.Text.RegularExpressions.GeneratedRegex(@"^\s*(\d+(?:[.,]\d+)?\s*(?:puffs?|mls?|mg|mcg|drops|nebules?|vials?))\s+(\d{1,2}[:.h]\d{2}\s*(?:[ap]\.?m\.?)?|\d{1,2}\s*[ap]\.?m\.?)\s*$", System.Text.RegularExpressions.RegexOptions.IgnoreCase)]
    private static partial System.Text.RegularExpressions.Regex AmountFirst();

    [System.Text.RegularExpressions.GeneratedRegex(@"^\s*(\d+(?:[.,]\d+)?\s*(?:puffs?|mls?|mg|mcg|drops)?)\s*\((?:at |@ ?)?(\d{1,2}[:.h]\d{2}\s*(?:[ap]\.?m\.?)?|\d{1,2}\s*[ap]\.?m\.?)\)\s*$", System.Text.RegularExpressions.RegexOptions.IgnoreCase)]
    private static partial System.Text.RegularExpressions.Regex InBrackets();

    private static CellEvent? Event(string amount, string time)
    {
        var clock = CellTimes.Clock(time.Trim(' ', ',', '.'));
        if (clock.Outcome == Outcome.Certain) return new CellEvent(clock.Value, amount.Trim(), false, null);
        return clock.Outcome == Outcome.Impossible ? new CellEvent(null, amount.Trim(), false, clock.Why ?? $"'{time.Trim()}' is not a time.") : null;
    }
}
