using System.Buffers;
using CareRecords.Import.Reading;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>Tells headings, rules, totals and remarks from rows of data by their look.</summary>
internal static class RowShape
{
    private const int LongestHeading = 60;

    // "CPT: how many minutes of clapping on each spot? (lower L, lower R, upper L, upper R)"
    private const int LongestQuestion = 160;
    private const int FewestDatesAcross = 3;
    private const int MostOfTotal = 5;

    private static readonly SearchValues<char> RuleMarks = SearchValues.Create("-=_*:|+ \t");

    /// <summary>True for a row of short words: no number, date or time. "Sat" behind other words is the saturation.</summary>
    public static bool IsWordsOnly(GridRow row)
    {
        var first = true;
        foreach (var cell in row.Cells)
        {
            if (cell.IsEmpty) continue;
            var text = cell.Text.Trim();
            if (cell.Kind != CellKind.Text || IsTooLong(text) || (IsFigure(text) && !IsTimedHeading(text))) return false;
            if (CellTimes.Read(cell) is { Outcome: Outcome.Certain, Date: not null } && !(IsOrdinal(text) && CountsFromFirst(row)) && text.ToLowerInvariant() is not ("today" or "yesterday") && (first || !text.Equals("sat", StringComparison.OrdinalIgnoreCase))) return false;
            first = false;
        }

        return true;
    }

    private static bool IsTooLong(string text) => text.Length > (text.Contains('?') || text.Contains(": ", StringComparison.Ordinal) ? LongestQuestion : LongestHeading);

    private static bool IsOrdinal(string text) => text is "1st" or "2nd" or "3rd" or "4th" or "5th";

    // "Day | 1st | 2nd | 3rd": sessions in their order, not days of the month.
    private static bool CountsFromFirst(GridRow row) => row[0].Kind == CellKind.Text && !IsOrdinal(row[0].Text.Trim()) && row.Cells.Count(c => IsOrdinal(c.Text.Trim())) is > 1 and var count && row.Cells.Select(c => c.Text.Trim()).Where(IsOrdinal).SequenceEqual(((string[])["1st", "2nd", "3rd", "4th", "5th"])[..count]);

    /// <summary>The headings of a row; null when it is none: a number, a date or a time in it makes it data.</summary>
    public static IReadOnlyList<string>? Headings(GridRow row)
    {
        var (filled, known, ordinals) = (0, 0, 0);
        foreach (var cell in row.Cells)
        {
            if (cell.IsEmpty) continue;
            filled++;
            var text = cell.Text.Trim();
            if (cell.Kind != CellKind.Text || IsTooLong(text) || (IsFigure(text) && !IsTimedHeading(text))) return null;
            if (HeadingReader.Read(text) is { } meaning && (meaning.IsKnown || meaning.Half != HalfOfDay.Unknown)) known++;
            else if (HeadingStack.IsOrdinal(text)) ordinals++;
        }

        return known >= 2 && (known + ordinals) * 2 >= filled ? [.. row.Cells.Select(c => c.Text.Trim())] : null;
    }

    /// <summary>True for a row of dates: three or more, most of its cells, and none in the first column.</summary>
    public static bool IsDatesAcross(GridRow row)
    {
        var filled = row.Cells.Count(c => !c.IsEmpty);
        if (filled < FewestDatesAcross || IsDate(row[0])) return false;
        var dates = row.Cells.Skip(1).Count(IsDate);
        return dates >= FewestDatesAcross && dates * 10 >= filled * 6 && !AreMinutes(row);
    }

    // "Lower L/R | 3/3 | 4/4 | 3/3": minutes of two sides, whatever days they look like.
    private static bool AreMinutes(GridRow row)
    {
        var pairs = row.Cells.Skip(1).Where(c => c.Kind == CellKind.Text && !c.IsEmpty).Select(c => c.Text.Trim().Split('/')).Where(p => p.Length is > 1 and <= 4).ToList();
        // "Mins | 4/3 +v | 4/2": as the label says.
        if (pairs.Count > 0 && row[0].Kind == CellKind.Text && HeadingReader.Read(row[0].Text).Role == Role.Minutes) return true;
        if (pairs.Count * 2 < row.Cells.Skip(1).Count(c => !c.IsEmpty) || !pairs.TrueForAll(p => Array.TrueForAll(p, n => n.Length is 1 or 2 && n.All(char.IsAsciiDigit)))) return false;
        return HeadingReader.Read(row[0].Text).Role is Role.Area or Role.Session or Role.Minutes or Role.Saturation or Role.Detail or Role.Technique or Role.Side || pairs.TrueForAll(p => p.Length == 2 && p[0] == p[1]);
    }

    /// <summary>True for a corner of words and days beside it: two are enough under a table of the same kind.</summary>
    public static bool IsDayLabels(GridRow row, int fewest = 2)
    {
        var filled = row.Cells.Skip(1).Where(c => !c.IsEmpty).ToList();
        return (row[0].Kind == CellKind.Text || fewest == 1) && !IsDate(row[0]) && filled.Count >= fewest && filled.TrueForAll(IsDate) && !AreMinutes(row);
    }

    private const int LongestTotal = 24;

    /// <summary>True for a line drawn with dashes or the like.</summary>
    public static bool IsRule(GridRow row) =>
        row.Text.AsSpan().ContainsAny("-=_*") && row.Cells.All(c => c.Text.AsSpan().IndexOfAnyExcept(RuleMarks) < 0)
        && row.Text.AsSpan().Count('-') + row.Text.AsSpan().Count('=') + row.Text.AsSpan().Count('_') + row.Text.AsSpan().Count('*') > 2 * Math.Max(1, row.Cells.Length - 1);

    /// <summary>True for totals and averages: such a word among the first filled cells, or "7 days", or a day with nothing but the word and figures ("2/3 | | Total | 16").</summary>
    public static bool IsTotal(GridRow row)
    {
        if (row.Cells.Any(c => c.Kind == CellKind.Text && c.Text.Length <= LongestTotal && SaysTotal(c.Text.Trim())) && row.Cells.All(c => c.IsEmpty || c.Kind is CellKind.Number or CellKind.Date || SaysTotal(c.Text.Trim()) || !c.Text.Any(char.IsLetter) && (c.Text.All(char.IsAsciiDigit) || CellTimes.Read(c) is not { Clock: not null }))) return true;
        var first = row.Cells.Where(c => !c.IsEmpty).Take(2).ToList();
        if (first.Any(c => c.Kind is CellKind.Date or CellKind.Moment or CellKind.TimeOfDay || (c.Kind == CellKind.Text && !(c.Text.Trim().Length < 3 && c.Text.Trim().All(char.IsAsciiDigit)) && CellTimes.Read(c) is { Date: not null } or { Clock: not null }))) return false;
        return first.Append(row.Cells.LastOrDefault(c => !c.IsEmpty)).Where(c => c.Kind == CellKind.Text).Any(c => SaysTotal(c.Text.Trim()));
    }

    /// <summary>True for "Sessions | 9" where a day would stand: how many there were.</summary>
    public static bool IsCount(GridRow row, IReadOnlyList<ColumnMeaning> columns)
    {
        if (columns[0].Role is not (Role.Date or Role.Time or Role.Start) || row[0].Kind != CellKind.Text || row.Cells.Where(c => !c.IsEmpty).Take(3).ToList() is not [var first, var count]) return false;
        return !first.Text.Any(char.IsAsciiDigit) && count.Text.Trim() is { Length: <= 3 } number && number.All(char.IsAsciiDigit) && CellTimes.Read(first).Outcome == Outcome.Nothing
            && Lexicon.Find(first.Text, out var share) is { Count: > 0 } known && share >= 0.5 && known.All(k => k.Concept is Concept.Session or Concept.Percussion or Concept.Feed or Concept.Inhaler or Concept.Medicine or Concept.Day);
    }

    /// <summary>True for a word that heads a key under a table.</summary>
    public static bool IsKeyHeading(string text) =>
        CanonicalHeader.Fold(text) is "key" or "legend" or "notes" or "note" or "codes" or "colours" or "colors" or "abbreviations" or "explanation" or "shorthand" or "comments" or "nb";

    private static bool SaysTotal(string text)
    {
        var words = Lexicon.Split(text);
        if (words.Count is 0 or > MostOfTotal) return false;
        if (Lexicon.Find(words[0], out _).Any(k => k.Concept == Concept.Total) || Lexicon.Find(words[^1], out _).Any(k => k.Concept == Concept.Total)) return true;
        if (words.Count >= 2 && Lexicon.Find(string.Join(' ', words.TakeLast(2)), out _) is [{ Concept: Concept.Total }]) return true;
        return words.Count == 2 && words[0].All(char.IsAsciiDigit) && words[1] is "days" or "sessions" or "chests" or "feeds" or "weeks" or "entries" or "rows";
    }

    // "8am sats", "6:30 neb": a time of the day and what is under it, with no other figure.
    private static bool IsTimedHeading(string text)
    {
        if (text.Length < 5 || !char.IsAsciiDigit(text[0]) || HeadingTime.Read(text) is not { }) return false;
        var words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return words.Length is > 1 and <= 5 && words.Skip(1).All(w => !w.Any(char.IsAsciiDigit) || w.ToLowerInvariant() is "o2" or "spo2") && HeadingReader.Read(text).Role is Role.Saturation or Role.Oxygen or Role.Pulse or Role.Dose or Role.Session or Role.Feed or Role.FeedEnd or Role.FeedStart or Role.Millilitres or Role.Temperature or Role.Area or Role.Minutes;
    }

    // "93", "7.05", "3/3", "12 puffs": a figure first is data; "O2 (L)" and "1st physio" are not.
    private static bool IsFigure(string text)
    {
        if (text[0] is '✓' or '✔' or '√' or '✗' or '✘' or '×' or '☑' or '☐' or '✅' or '❌') return true;
        if (!char.IsAsciiDigit(text[0])) return CellTimes.Read(Cell.Of(text)).Outcome is Outcome.Certain && text.Any(char.IsAsciiDigit);
        var digits = text.AsSpan().IndexOfAnyExceptInRange('0', '9');
        // "3% saline neb" names a medicine.
        if (digits is 1 or 2 && text.Length > digits + 4 && text[digits] == '%' && HeadingReader.Read(text).Role is Role.Dose or Role.Amount) return false;
        return digits < 0 || text[digits..] is not ("st" or "nd" or "rd" or "th") && !text.AsSpan(digits).StartsWith("st ") && !text.AsSpan(digits).StartsWith("nd ") && !text.AsSpan(digits).StartsWith("rd ") && !text.AsSpan(digits).StartsWith("th ");
    }

    private static bool IsDate(Cell cell) =>
        cell.Kind is CellKind.Date or CellKind.Moment
        || (cell.Kind == CellKind.Text && cell.Text.Length < 30 && CellTimes.Read(cell) is { Outcome: Outcome.Certain, Date: not null });
}
