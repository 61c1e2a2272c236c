using System.Globalization;
using System.Text.RegularExpressions;
using CareRecords.Import.Reading;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>
/// Puts the times of a day's sessions and the letters or minutes beside them together: under "1st | code | 2nd | code" or "1 time | 1 code" stand a time and a letter that the
/// key explains, under "time 1 | mins | time 2 | mins" a time and minutes, and each pair is one session ("07:10 F", "07:10 5 min").
/// </summary>
internal static partial class CodedSessions
{
    private const int FewestPairs = 2;
    private const int LongestCode = 5;

    /// <summary>The block with each time and what stands beside it in one column of sessions; as it is where it has no such pairs, or no key explains the letters.</summary>
    public static Block Joined(Block block, FamilyWords words)
    {
        if (block.IsAcross) return block;
        var times = Enumerable.Range(0, Math.Max(0, block.Columns.Count - 1)).Where(i => IsTimes(block, i)).ToList();
        var pairs = times.FindAll(i => block.Columns[i].Role != Role.Session && IsMinutes(block, i + 1));
        if (pairs.Count < FewestPairs || pairs.Count < times.Count)
        {
            pairs = times.FindAll(i => IsCodes(block, i + 1));
            if (pairs.Count < FewestPairs || !pairs.Exists(i => block.Rows.Any(r => r[i + 1].Cell.Words is { } code && IsSession(code, words)))) return block;
        }

        return block with
        {
            Columns = [.. block.Columns.Select((c, i) => pairs.Contains(i) ? HeadingReader.Read(string.Create(CultureInfo.InvariantCulture, $"Session {pairs.IndexOf(i) + 1}")) : pairs.Contains(i - 1) || IsCount(block, i, pairs) ? c with { Role = Role.Ignore } : c)],
            Rows = [.. block.Rows.Select(r => Joined(r, pairs))],
        };
    }

    // Numbered, or the same heading again and again, and nothing but clock times in it.
    private static bool IsTimes(Block block, int column)
    {
        if (block.Columns[column].Role is not (Role.Unknown or Role.Time or Role.Start or Role.Session) || !Numbered().IsMatch(block.Columns[column].Own) && block.Columns.Count(c => c.Own == block.Columns[column].Own) < FewestPairs) return false;
        var filled = block.Rows.Select(r => r[column].Cell).Where(c => !c.IsEmpty).ToList();
        return filled.TrueForAll(c => CellTimes.Read(c) is { Clock: not null, Date: null });
    }

    [GeneratedRegex(@"^\W*(?:\d{1,2}(?:st|nd|rd|th)?|first|second|third|fourth|fifth|[1-6]\W*time|time\W*[1-6]|start\W*[1-6]|am|pm|morning|midday|noon|afternoon|evening|night)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Numbered();

    private static bool IsMinutes(Block block, int column) => block.Columns[column].Role == Role.Minutes && block.Columns[column].Areas.Count == 0
        && block.Rows.Select(r => r[column].Cell).Where(c => !c.IsEmpty).ToList() is { Count: > 0 } filled && filled.Count(IsMinutes) * 3 >= filled.Count * 2 && filled.TrueForAll(c => IsMinutes(c) || !c.Text.Any(char.IsAsciiDigit));

    // "5", and not the "asleep" that may stand there for once.
    private static bool IsMinutes(Cell cell) => MinutesReader.Read(cell.Text.Trim()) is { Outcome: Outcome.Certain, Value.Minutes: > 0 and <= MostMinutes } && !cell.Text.Any(char.IsLetter);

    private const double MostMinutes = 90;

    private static bool IsCodes(Block block, int column) =>
        block.Columns[column].Role is Role.Word or Role.Unknown or Role.Kind or Role.Detail && block.Rows.All(r => r[column].Cell is var c && (c.IsEmpty || c.Kind == CellKind.Text && c.Text.Trim().Length <= LongestCode && !c.Text.AsSpan().ContainsAnyInRange('0', '9')));

    // "3" under "Done": how many sessions the row has.
    private static bool IsCount(Block block, int column, List<int> pairs)
    {
        if (block.Columns[column].Role is not (Role.Unknown or Role.Amount)) return false;
        var filled = block.Rows.Where(r => !r[column].Cell.IsEmpty).ToList();
        return filled.Count > 1 && filled.TrueForAll(r => r[column].Cell.Text.Trim() == pairs.Count(p => !r[p].Cell.IsEmpty).ToString(CultureInfo.InvariantCulture));
    }

    private static bool IsSession(string code, FamilyWords words) =>
        words.MeaningOf(code.TrimEnd('+', '*')) is { } means && CellTerms.Read(means).Exists(t => t.Is(Sense.Technique) || t.Is(Sense.Session) || t.Is(Sense.Area) || t.Is(Sense.SideArea));

    private static BlockRow Joined(BlockRow row, List<int> pairs)
    {
        var cells = row[0].Row.Cells.ToArray();
        foreach (var at in pairs)
            if (row[at].Column is var column && column >= 0 && column + 1 < cells.Length && !cells[column + 1].IsEmpty)
                cells[column] = Cell.Of(cells[column].IsEmpty ? cells[column + 1].Words! : $"{CellTimes.Shown(cells[column])} {cells[column + 1].Words}{(cells[column + 1].Text.AsSpan().ContainsAnyInRange('0', '9') ? " min" : "")}");
        var joined = row[0].Row with { Cells = cells };
        return new BlockRow([.. row.Cells.Select(c => c with { Row = joined })]);
    }
}
