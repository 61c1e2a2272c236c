using System.Collections.Frozen;
using System.Globalization;
using CareRecords.Import.Reading;
using NodaTime;

namespace CareRecords.Import.Notes;

/// <summary>Finds a date as written among raw terms (before times are put together, so that "2025" is a year and not 20:25).</summary>
internal static partial class DateGrammar
{
    /// <summary>The date that starts at <paramref name="at"/>; null when none does. <paramref name="next"/> is the term after it.</summary>
    public static DateWritten? Read(IReadOnlyList<Term> terms, int at, string line, out int next)
    {
        next = at;
        var state = new State();
        var i = at;
        while (i < terms.Count && state.Take(terms, ref i, line)) next = i;
        if (!state.IsDate || next == at) { next = at; return null; }
        return state.Written;
    }

    /// <summary>Whether notes write their days as a weekday's letter and the day of the month in one ("M2", "Tu3", "M 13.1"): three lines at least, whose weekdays and days keep step.</summary>
    public static bool WritesLetteredDays(IReadOnlyList<string> lines)
    {
        var found = new List<(IsoDayOfWeek Weekday, int Day)>();
        foreach (var line in lines)
            if (LetteredDay(line, out _) is { } day) found.Add((day.DayOfWeek, day.Day ?? day.First!.Value));
        var (inStep, outOfStep) = (0, 0);
        for (var i = 1; i < found.Count; i++)
            if (found[i].Day > found[i - 1].Day) { if (((int)found[i].Weekday - (int)found[i - 1].Weekday - (found[i].Day - found[i - 1].Day)) % 7 == 0) inStep++; else outOfStep++; }
        return inStep >= 2 && outOfStep == 0;
    }

    /// <summary>The day at the head of a line that is a weekday's letter with the day of the month ("M2", "Tu3") or with day and month ("M 13.1"), and where it ends; null when none is.</summary>
    public static DateWritten? LetteredDay(string line, out int end)
    {
        var letters = 0;
        while (letters < line.Length && char.IsLetter(line[letters])) letters++;
        end = letters;
        if (letters is 0 or > 2 || !char.IsUpper(line[0]) || State.Letter(line[..letters].ToLowerInvariant()) is not { } weekday) return null;
        if (end + 1 < line.Length && line[end] == ' ' && char.IsAsciiDigit(line[end + 1]))
        {
            var (from, until) = (end + 1, end + 1);
            while (until < line.Length && (char.IsAsciiDigit(line[until]) || line[until] == '.')) until++;
            end = until;
            return until == line.Length || line[until] == ' ' ? DayAndMonth(line[from..until], weekday) : null;
        }
        while (end < line.Length && char.IsAsciiDigit(line[end])) end++;
        return end - letters is 1 or 2 && (end == line.Length || char.IsWhiteSpace(line[end])) && int.Parse(line.AsSpan(letters, end - letters), CultureInfo.InvariantCulture) is >= 1 and <= 31 and var day
            ? new DateWritten(null, null, null, null, day, weekday) : null;
    }

    private static DateWritten? DayAndMonth(string text, IsoDayOfWeek weekday) => text.Split('.') is [{ Length: 1 or 2 } first, { Length: 1 or 2 } second]
        && int.TryParse(first, NumberStyles.None, CultureInfo.InvariantCulture, out var one) && int.TryParse(second, NumberStyles.None, CultureInfo.InvariantCulture, out var two)
        && one is >= 1 and <= 31 && two is >= 1 and <= 31 && (one <= 12 || two <= 12) ? new DateWritten(one, two, null, null, null, weekday) : null;

    /// <summary>Whether notes write their days as "03.02" alone in a line: another day is written so with its weekday, and two lines at least hold nothing else.</summary>
    public static bool WritesDottedDays(IReadOnlyList<string> lines) =>
        lines.Count(l => DottedDay(l) is not null) >= 2 && lines.Any(l => l.Length > 6 && DottedDay(l[..5]) is not null && l[5] == ' ' && CellTerms.Raw(l[6..Math.Min(l.Length, 24)]) is [{ } word, ..] && word.Is(Sense.Weekday));

    /// <summary>The day of a line that holds "03.02" and nothing else; null when it holds other words.</summary>
    public static DateWritten? DottedDay(string line)
    {
        var text = line.Trim().TrimEnd('.');
        return text.Length == 5 && text[2] == '.' ? DayAndMonth(text, IsoDayOfWeek.None) : null;
    }

    /// <summary>Whether notes write their days as "1-9 Mon": three lines at least begin so.</summary>
    public static bool WritesDashedDays(IReadOnlyList<string> lines) => lines.Count(l => DashedDay(l, out _) is not null) >= FewestDashedDays;

    /// <summary>The day that a line begins with as "1-9 Mon", and where its words go on; null when it begins otherwise ("10-1 Monday class" has no such day alone).</summary>
    public static DateWritten? DashedDay(string line, out int end)
    {
        end = 0;
        if (Dashed().Match(line) is not { Success: true } match || CellTerms.Raw(match.Groups[3].Value) is not [{ } day] || !day.Is(Sense.Weekday)) return null;
        end = match.Length;
        var (one, two) = (int.Parse(match.Groups[1].ValueSpan, System.Globalization.CultureInfo.InvariantCulture), int.Parse(match.Groups[2].ValueSpan, System.Globalization.CultureInfo.InvariantCulture));
        return one is >= 1 and <= 31 && two is >= 1 and <= 31 && (one <= 12 || two <= 12) ? new DateWritten(one, two, null, null, null, (IsoDayOfWeek)int.Parse(day.ValueOf(Sense.Weekday)!, System.Globalization.CultureInfo.InvariantCulture)) : null;
    }

    private const int FewestDashedDays = 3;

    [System.Text.RegularExpressions.GeneratedRegex(@"^\W*(\d{1,2})-(\d{1,2})[ ,]+(\p{L}{2,9})\b[\s:.,-]*", System.Text.RegularExpressions.RegexOptions.CultureInvariant)]
    private static partial System.Text.RegularExpressions.Regex Dashed();

    private const int LongestBeginning = 24;
    private static readonly FrozenSet<string> Beginnings = CellTerms.Vocabulary.FirstWords(Sense.Weekday, Sense.Month).Concat(
        ["sat", "pt", "day", "date", "shift", "today", "week", "the", "log", "diary", "for", "on", "night", "datum", "whole", "m", "t", "w", "th", "f", "s", "tu", "su", "sa", "good", "easter", "palm", "starting", "started", "start", "vandag", "heute"]).ToFrozenSet(StringComparer.Ordinal);

    private static readonly FrozenSet<string>.AlternateLookup<ReadOnlySpan<char>> ByWord = Beginnings.GetAlternateLookup<ReadOnlySpan<char>>();

    /// <summary>Whether a line that starts with this word may start with a date: a quick look that lets no date slip.</summary>
    public static bool MayBegin(ReadOnlySpan<char> word)
    {
        var letters = word[..Math.Min(word.Length, LongestBeginning)];
        var length = 0;
        while (length < letters.Length && char.IsLetter(letters[length])) length++;
        letters = letters[..length];
        Span<char> folded = stackalloc char[LongestBeginning];
        var written = letters.ToLowerInvariant(folded);
        ReadOnlySpan<char> lower = folded[..Math.Max(0, written)];
        // Misspelt days and months: long words are let through by their ends.
        return ByWord.Contains(lower) || lower.EndsWith("day") || lower.EndsWith("dag") || lower.EndsWith("tag") || (lower.Length >= 6 && (lower.EndsWith("ber") || lower.EndsWith("ary")));
    }

    private sealed class State
    {
        private IsoDayOfWeek _weekday;
        private int? _day, _month, _year, _first, _second;
        private bool _ordinal, _saturdayOnly;

        public bool IsDate => _first is not null || (_month is not null && _day is not null) || (_weekday != IsoDayOfWeek.None && !_saturdayOnly) || (_day is not null && _ordinal);

        public DateWritten Written => new(_first, _second, _year, _month, _day, _weekday);

        public bool Take(IReadOnlyList<Term> terms, ref int i, string line)
        {
            var term = terms[i];
            if (Weekday(terms, i, line) is { } weekday && _weekday == IsoDayOfWeek.None)
            {
                _weekday = weekday;
                _saturdayOnly = term.Text == "sat" && _day is null && _first is null;
                i++;
                if (i < terms.Count && (terms[i].IsSymbol(",") || terms[i].IsSymbol("."))) SkipIfDateFollows(terms, ref i, line);
                if (_saturdayOnly && (i >= terms.Count || IsBreak(terms, i) || Number(terms, i) is not null || terms[i].Kind == TermKind.Parts || terms[i].Is(Sense.Month))) _saturdayOnly = false;
                return true;
            }
            if (term.Kind == TermKind.Parts && _first is null && _day is null && Parts(term)) { i++; return true; }
            // "pon 1.12": a weekday before day and month with a stop.
            if (_weekday != IsoDayOfWeek.None && _first is null && _day is null && DayAndMonth(term) is var (one, two) && (i + 1 >= terms.Count || IsBreak(terms, i + 1)))
            {
                (_first, _second) = (one, two);
                i++;
                return true;
            }
            // "19.01 Monday", "24.11. Monday": and before it.
            var stop = i + 1 < terms.Count && terms[i + 1].IsSymbol(".") ? 1 : 0;
            if (_weekday == IsoDayOfWeek.None && _first is null && _day is null && i + 1 + stop < terms.Count && DayAndMonth(term) is var (dayFirst, monthSecond) && (stop == 1 || terms[i + 1].Text != "sat") && Weekday(terms, i + 1 + stop, line) is not null)
            {
                (_first, _second) = (dayFirst, monthSecond);
                i += 1 + stop;
                return true;
            }
            // "1/5 M |": the weekday's letter after the date.
            if (_first is not null && _weekday == IsoDayOfWeek.None && term.Kind == TermKind.Word && term.Text.Length <= 2 && char.IsUpper(line[term.Start]) && (i + 1 >= terms.Count || IsBreak(terms, i + 1)) && Letter(term.Text) is { } initial)
            {
                _weekday = initial;
                i++;
                return true;
            }
            // "14-Jan", "14/Jan/26", "Jan-14"
            if (term.Kind == TermKind.Symbol && term.Text is "-" or "/" && term.Glued && i + 1 < terms.Count && terms[i + 1].Glued)
            {
                if (_day is not null && _month is null && terms[i + 1].Is(Sense.Month) || _month is not null && _day is null && Number(terms, i + 1) is not null) { i++; return true; }
                if (_day is not null && _month is not null && _year is null && terms[i + 1] is { IsWhole: true, Number: >= 20 and <= 60, Text.Length: 2 } year) { (_year, i) = (2000 + (int)year.Number, i + 2); return true; }
                if (_day is not null && _month is not null && _year is null && terms[i + 1] is { IsWhole: true, Number: >= 1990 and <= 2100 } full) { (_year, i) = ((int)full.Number, i + 2); return true; }
            }
            if (term.Is(Sense.Month) && _month is null && _first is null && (_day is not null || (i + 1 < terms.Count && Number(terms, i + 1) is not null) || i + 2 < terms.Count && terms[i + 1].IsSymbol("-") && terms[i + 1].Glued && terms[i + 2].Glued && Number(terms, i + 2) is not null))
            {
                _month = int.Parse(term.ValueOf(Sense.Month)!, CultureInfo.InvariantCulture);
                i++;
                if (i < terms.Count && terms[i].IsSymbol(".")) SkipIfDateFollows(terms, ref i, line);
                return true;
            }
            if (Number(terms, i) is { } day && _day is null && _first is null && (_weekday != IsoDayOfWeek.None || _month is not null || Ordinal(terms, i + 1) || MonthFollows(terms, i + 1)))
            {
                _ordinal = Ordinal(terms, i + 1);
                // "19-7" after a weekday: day and month with a hyphen.
                if (!_ordinal && i + 2 < terms.Count && terms[i + 1].IsSymbol("-") && terms[i + 1].Glued && terms[i + 2] is { Glued: true } && Number(terms, i + 2) is { } second && _month is null)
                {
                    (_first, _second) = (day, second);
                    i += 3;
                    return true;
                }
                _day = day;
                i += _ordinal ? 2 : 1;
                return true;
            }
            if (term is { Kind: TermKind.Number, IsWhole: true, Number: >= 1990 and <= 2100 } && _year is null && (_month is not null || _first is not null)) { _year = (int)term.Number; i++; return true; }
            // "5 Sept 25"
            if (term is { IsWhole: true, Number: >= 20 and <= 60, Text.Length: 2 } && _year is null && _month is not null && _day is not null && (i + 1 >= terms.Count || IsBreak(terms, i + 1))) { _year = 2000 + (int)term.Number; i++; return true; }
            if ((term.Text is "the" or "of" or "dated" || term.IsSymbol(",") || term.IsSymbol("(")) && (IsDate || _weekday != IsoDayOfWeek.None || _day is not null || term.Text == "the")) return SkipIfDateFollows(terms, ref i, line);
            if (term.IsSymbol(")") && i > 0 && Weekday(terms, i - 1, line) is not null) { i++; return true; }
            return false;
        }

        // "1.12": a day and a month with a stop between.
        private static (int Day, int Month)? DayAndMonth(Term term) => term is { Kind: TermKind.Number, IsWhole: false, Text.Length: >= 3 and <= 5 } && term.Text.Split('.', ',') is [{ Length: <= 2 } a, { Length: <= 2 } b]
            && int.TryParse(a, NumberStyles.None, CultureInfo.InvariantCulture, out var one) && int.TryParse(b, NumberStyles.None, CultureInfo.InvariantCulture, out var two) && one is >= 1 and <= 31 && two is >= 1 and <= 12 ? (one, two) : null;

        private bool SkipIfDateFollows(IReadOnlyList<Term> terms, ref int i, string line)
        {
            if (i + 1 >= terms.Count) return false;
            var follows = (terms[i + 1].Is(Sense.Month) && _month is null && (_day is not null || Number(terms, i + 2 < terms.Count ? i + 2 : i + 1) is not null))
                || (Weekday(terms, i + 1, line) is not null && _weekday == IsoDayOfWeek.None && (terms[i + 1].Text != "sat" || (i + 2 < terms.Count && terms[i + 2].IsSymbol(")"))))
                || (_day is null && _first is null && (Ordinal(terms, i + 2) || MonthFollows(terms, i + 2)) && Number(terms, i + 1) is not null)
                || (terms[i + 1] is { IsWhole: true, Number: >= 1990 and <= 2100 } && _month is not null && _year is null)
                || (terms[i + 1].Kind == TermKind.Parts && _first is null && _day is null && terms[i + 1].Parts.Count == 3);
            if (follows) i++;
            return follows;
        }

        private bool Parts(Term term)
        {
            var parts = term.Parts;
            if (parts.Any(p => p != Math.Floor(p))) return false;
            if (parts.Count == 3 && parts[0] is > 1900 and < 2200 && parts[1] <= 99 && parts[2] <= 99) { (_year, _month, _day) = ((int)parts[0], (int)parts[1], (int)parts[2]); return true; }
            if (parts.Count == 3 && (parts[2] is > 1900 or (>= 10 and <= 99)) && parts[0] <= 99 && parts[1] <= 99 && parts[2] < 2200)
            {
                (_first, _second, _year) = ((int)parts[0], (int)parts[1], (int)(parts[2] < 100 ? 2000 + parts[2] : parts[2]));
                return true;
            }
            if (parts.Count != 2 || !term.Text.Contains('/')) return false;
            if (!(parts[0] is >= 1 and <= 31 && parts[1] is >= 1 and <= 31 && (parts[0] <= 12 || parts[1] <= 12))) return false;
            (_first, _second) = ((int)parts[0], (int)parts[1]);
            return true;
        }

        private static int? Number(IReadOnlyList<Term> terms, int at) =>
            at < terms.Count && terms[at] is { IsWhole: true, Number: >= 1 and <= 31, Text.Length: <= 2 } n
            && !(at + 1 < terms.Count && terms[at + 1].Glued && (terms[at + 1].Kind is TermKind.Word or TermKind.Number || terms[at + 1].IsSymbol("%")) && !Ordinal(terms, at + 1)) ? (int)n.Number : null;

        private static bool Ordinal(IReadOnlyList<Term> terms, int at) => at < terms.Count && terms[at].Glued && terms[at].Text is "st" or "nd" or "rd" or "th" or "de" or "ste";

        private static bool MonthFollows(IReadOnlyList<Term> terms, int at)
        {
            if (Ordinal(terms, at)) at++;
            if (at < terms.Count && terms[at].Text is "of" or "." or "-" or "/") at++;
            return at < terms.Count && terms[at].Is(Sense.Month);
        }

        private static bool IsBreak(IReadOnlyList<Term> terms, int at) => terms[at].Kind == TermKind.Symbol && terms[at].Text is not ("%" or "~" or "=")
            && !(at + 1 < terms.Count && terms[at + 1] is { Kind: TermKind.Number, Number: > 31 });

        private static IsoDayOfWeek? Weekday(IReadOnlyList<Term> terms, int at, string line)
        {
            var term = terms[at];
            if (term.ValueOf(Sense.Weekday) is { } value) return (IsoDayOfWeek)int.Parse(value, CultureInfo.InvariantCulture);
            if (term.Text == "sat" && term.Kind == TermKind.Word) return IsoDayOfWeek.Saturday;
            // A letter alone is a weekday only before a date of numbers: "W 11/6".
            if (term.Text.Length <= 2 && term.Kind == TermKind.Word && at + 1 < terms.Count && terms[at + 1].Kind == TermKind.Parts && char.IsUpper(line[term.Start]))
                return Letter(term.Text);
            return null;
        }

        public static IsoDayOfWeek? Letter(string text) => text switch
        {
            "m" => IsoDayOfWeek.Monday,
            "t" or "tu" => IsoDayOfWeek.Tuesday,
            "w" => IsoDayOfWeek.Wednesday,
            "th" => IsoDayOfWeek.Thursday,
            "f" => IsoDayOfWeek.Friday,
            "s" or "sa" => IsoDayOfWeek.Saturday,
            "su" => IsoDayOfWeek.Sunday,
            _ => null,
        };
    }
}
