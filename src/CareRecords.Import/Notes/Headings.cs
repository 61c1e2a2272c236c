using CareRecords.Import.Reading;
using NodaTime;

namespace CareRecords.Import.Notes;

/// <summary>A date at the head of a line.</summary>
/// <param name="Date">As written.</param>
/// <param name="ContentStart">Position in the line at which the words after it begin.</param>
/// <param name="HasContent">Whether words of care follow it.</param>
/// <param name="Written">The words of the date.</param>
/// <param name="Late">Whether it leads to an entry made later, for its day alone.</param>
/// <param name="Night">Whether the heading opens a night's shift.</param>
internal sealed record Heading(DateWritten Date, int ContentStart, bool HasContent, string Written, bool Late, bool Night)
{
    /// <summary>Whether it names the day after too: "Thu 10 / Fri 11 July".</summary>
    public bool Overnight { get; init; }

    /// <summary>The time that stands before it: "3am" of "3am Friday 15th."; null when none does.</summary>
    public string? Clock { get; init; }
}

/// <summary>Finds the day headings of notes.</summary>
internal static partial class Headings
{
    private const int LongestHead = 80;

    // "Mon 6th Jan. Minding him while his mam is on nights": of somebody's work, too far from the date to be the shift.
    private const int NearNight = 4;
    private const int LongestTitle = 140;
    private const int VisitWithin = 90;
    private const int MostWordsBefore = 5;

    /// <summary>The date at the head of a line; null when there is none.</summary>
    /// <param name="line">The line.</param>
    /// <param name="from">Where its words begin.</param>
    /// <param name="reader">Reads the words.</param>
    /// <param name="slashed">Whether the notes write their days as "21/12" before their words, so that "2/1 physio" is one too.</param>
    /// <param name="countsWithOrdinals">Whether "1st", "2nd" at the head of a line count the sessions of a day.</param>
    public static Heading? Read(string line, int from, TermReader reader, bool slashed = false, bool countsWithOrdinals = false)
    {
        if (from >= line.Length) return null;
        var head = line.Length - from > LongestHead ? line[from..(from + LongestHead)] : line[from..];
        var terms = reader.Raw(head);
        var at = 0;
        var night = false;
        while (at < terms.Count && at < MostWordsBefore + 3)
        {
            if (DateGrammar.Read(terms, at, head, out var next) is { } date && (at == 0 || IsIntroduced(terms, at)))
            {
                if (!Plausible(terms, at, next, date, slashed)) return null;
                if (countsWithOrdinals && date is { Day: <= MostSessions, Month: null, DayOfWeek: IsoDayOfWeek.None } && Ordinal().IsMatch(head)) return null;
                // "(Sunday not written, his gran had him)": a remark on a day, which opens none.
                if (date is { First: null, Day: null, Month: null } && at > 0 && terms[at - 1].Text is "(") return null;
                // "Monday the inhaler was at 7, not 6.40" speaks of that day and opens none.
                if (date is { First: null, Day: null } && LateCorrection.Take(reader.Read(head)) is not null) return null;
                var first = next;
                next = SkipMore(terms, next, head);
                var ends = next > first ? DateGrammar.Read(terms, first + 1, head, out var second) is { Day: not null } over && second == next ? over : null : null;
                var overnight = ends?.Day is { } to && date.Day is { } begins && (to == begins + 1 || to == 1 && begins >= 28);
                while (next < terms.Count && terms[next].Kind == TermKind.Symbol && terms[next].Text is ":" or "-" or "—" or "." or "," or ")" or "]" or "*" or "#" or "=" or "~") next++;
                var content = next < terms.Count ? terms[next].Start : head.Length;
                var care = terms.Skip(next).Any(t => t.NamesEvent || t.Kind is TermKind.Number or TermKind.Parts or TermKind.Time) || line.Length - from > LongestHead;
                return new Heading(overnight ? WithMonthOf(date, ends!) : date, from + content, care, head[terms[at].Start..terms[next - 1].End], terms.Take(at).Any(t => t.Text is "le" or "late" or "entry"), night || terms.Where((t, i) => i <= next + NearNight && !(i > 0 && terms[i - 1].Text is "on" or "working" or "does")).Any(t => t.Text is "shift" or "night shift" or "nights" or "night" or "night of")) { Overnight = overnight };
            }
            if (terms[at].Kind == TermKind.Symbol && terms[at].Text is "(" or "[" or ":" or "-" or "*" or "#" or "=" or "~") { at++; continue; }
            if (terms[at].Text is "day" or "date" or "shift" or "night of" or "nights" or "commencing" or "starting" or "week" or "today" or "log" or "diary" or "for" or "on" or "night" or "datum" or "the" or "whole day" or "le" or "late" or "entry" or "wk" or "page" or "pg" or "good" or "easter" or "boxing" or "palm" or "bank holiday" or "holiday" or "public holiday" || terms[at].Is(Sense.DayRef, "0") || terms[at] is { Kind: TermKind.Number, IsWhole: true } && at > 0 && terms[at - 1].Text is "day" or "week" || terms[at].Is(Sense.Start)) { night |= terms[at].Text is "night" or "night of" or "nights" or "shift"; at++; continue; }
            return null;
        }
        return null;
    }

    // "Tue 8 / Wed 9 July": the month of the first day stands behind the second.
    private static DateWritten WithMonthOf(DateWritten first, DateWritten second) => first is { Month: null } && second is { Month: { } month } ? first with { Month = second.Day == 1 ? (month + 10) % 12 + 1 : month, Year = second.Year } : first;

    /// <summary>"Three am Thursday the fourteenth. Sats 88": a day after the time of what follows; null when the line does not begin so.</summary>
    public static Heading? AfterClock(string line, TermReader reader)
    {
        if (!line.AsSpan(0, Math.Min(line.Length, LongestClock)).ContainsAny(Weekdays) || ClockThenDay().Match(line) is not { Success: true } match) return null;
        if (CellTerms.Read(match.Groups[1].Value) is not [{ Kind: TermKind.Time }] || Read(line, match.Groups[2].Index, reader) is not { Date: { DayOfWeek: not IsoDayOfWeek.None } date } heading) return null;
        // "9am Friday 15 ml": no day of the month.
        var ends = heading.ContentStart >= line.Length || ".:,-–".Contains(line[..heading.ContentStart].TrimEnd()[^1], StringComparison.Ordinal);
        return ends && (date.Day ?? date.First) is not null ? heading with { Clock = match.Groups[1].Value } : null;
    }

    private const int LongestClock = 32;
    private static readonly System.Buffers.SearchValues<string> Weekdays = System.Buffers.SearchValues.Create([" mon", " tue", " wed", " thu", " fri", " sat", " sun"], StringComparison.OrdinalIgnoreCase);

    [System.Text.RegularExpressions.GeneratedRegex(@"^\W*((?:\d{1,4}(?:[:.]\d{2})?|[a-z]+(?: [a-z]+){0,3}?) ?(?:am|pm|[ap]\.m\.)?),? (?:on )?((?:mon|tue|wed|thu|fri|sat|sun)[a-z]*\b)", System.Text.RegularExpressions.RegexOptions.IgnoreCase | System.Text.RegularExpressions.RegexOptions.CultureInvariant)]
    private static partial System.Text.RegularExpressions.Regex ClockThenDay();

    /// <summary>"NIGHT 23/24", "Night 24-25 March": a night's shift from one day to the next; null when the line opens none.</summary>
    public static Heading? NightOver(string line)
    {
        if (!line.AsSpan()[..Math.Min(line.Length, 20)].Contains("night", StringComparison.OrdinalIgnoreCase)) return null;
        if (Night().Match(line) is not { Success: true } match) return null;
        var (first, second) = (int.Parse(match.Groups[1].ValueSpan, System.Globalization.CultureInfo.InvariantCulture), int.Parse(match.Groups[2].ValueSpan, System.Globalization.CultureInfo.InvariantCulture));
        if (first is < 1 or > 31 || second != first + 1 && !(second == 1 && first >= 28)) return null;
        var end = match.Index + match.Length;
        return new Heading(new DateWritten(null, null, null, null, first, IsoDayOfWeek.None), end, end < line.Length, line[..end], false, true);
    }

    [System.Text.RegularExpressions.GeneratedRegex(@"^\W*(?:over)?nights?\b[^\d]{0,12}(\d{1,2})(?:st|nd|rd|th)?\s*[/–-]\s*(\d{1,2})(?:st|nd|rd|th)?(?!\d)", System.Text.RegularExpressions.RegexOptions.IgnoreCase | System.Text.RegularExpressions.RegexOptions.CultureInvariant)]
    private static partial System.Text.RegularExpressions.Regex Night();

    /// <summary>
    /// A whole date (with its year, month or weekday) after one to three words, on a short line that says nothing of care: "Shift of Sat 6/12/25 PB".
    /// It heads a day only where the same words lead to other dates too, so a lone "hospital visit 6/12/25" does not.
    /// </summary>
    public static (string Lead, Heading Heading)? ReadAfterLead(string line)
    {
        if (line.Length > LongestLedLine || !line.Any(char.IsAsciiDigit)) return null;
        // Without the family's words: the word that leads may be one that a key explains ("DOS = date of shift").
        var terms = CellTerms.Raw(line);
        for (var at = 1; at < terms.Count && at <= MostLeadWords; at++)
        {
            // "p.11 Mon 14/7": a number may stand among the words, but not first.
            var lead = terms[at - 1];
            if (lead.NamesEvent || !(char.IsLetter(line[lead.Start]) || (at > 1 && (lead is { Kind: TermKind.Number, IsWhole: true, Number: <= 999 } || lead.Text is "." or "-" or ",")))) return null;
            if (DateGrammar.Read(terms, at, line, out var next) is not { } date) continue;
            if (date.Year is null && date.Month is null && date.DayOfWeek == IsoDayOfWeek.None) return null;
            if (terms.Skip(next).Any(t => t.Kind is TermKind.Number or TermKind.Parts or TermKind.Time || t.NamesEvent)) return null;
            var night = terms.Any(t => t.Text is "shift" or "night shift" or "nights" or "night" or "night of");
            return (string.Join(' ', terms.Take(at).Where(t => t.Kind == TermKind.Word).Select(t => t.Text)), new Heading(date, line.Length, false, line[terms[at].Start..terms[next - 1].End], false, night));
        }

        return null;
    }

    private const int LongestLedLine = 48;
    private const int MostLeadWords = 4;

    // "Day 12 (Tues 5th Nov)", "Date: 1/8": the words before the date lead to it; "on" and "the" alone do not.
    private static bool IsIntroduced(List<Term> terms, int at) => terms.Take(at).All(t => t.Text is not ("on" or "for" or "the")) || terms[at - 1].Text == "the";

    // More sessions than that in a day are not counted with ordinals; days are.
    private const int MostSessions = 6;

    /// <summary>
    /// Whether "1st clapping 7.15", "2nd at 11.20" count the sessions of a day: lines begin so with 1st, 2nd one after the other, and none with a later ordinal alone,
    /// as days would.
    /// </summary>
    public static bool CountsWithOrdinals(IReadOnlyList<string> lines)
    {
        var (runs, last) = (0, (Line: -2, Number: 0));
        for (var i = 0; i < lines.Count; i++)
        {
            if (Ordinal().Match(lines[i]) is not { Success: true } match) continue;
            var number = int.Parse(match.Groups[1].ValueSpan, System.Globalization.CultureInfo.InvariantCulture);
            if (number > MostSessions) return false;
            if (number == last.Number + 1 && i == last.Line + 1 && number > 1) runs++;
            last = (i, number);
        }

        return runs > 0;
    }

    [System.Text.RegularExpressions.GeneratedRegex(@"^\W*(\d{1,2})(?:st|nd|rd|th)\b(?! (?:of )?\p{L}{3,9}\b(?: \d{4})?\s*$)", System.Text.RegularExpressions.RegexOptions.IgnoreCase | System.Text.RegularExpressions.RegexOptions.CultureInvariant)]
    private static partial System.Text.RegularExpressions.Regex Ordinal();

    private const int FewestSlashed = 4;

    /// <summary>Whether notes write their days as "21/12 P 0700": four lines at least that begin so with a number over six, before words of care.</summary>
    public static bool AreSlashed(IReadOnlyList<string> lines) => lines.Count(l => SlashedDay().Match(l) is { Success: true } day
        && int.Parse(day.Groups[1].ValueSpan, System.Globalization.CultureInfo.InvariantCulture) is var a && int.Parse(day.Groups[2].ValueSpan, System.Globalization.CultureInfo.InvariantCulture) is var b && Math.Max(a, b) is > 6 and <= 31 && Math.Min(a, b) is >= 1 and <= 12) >= FewestSlashed;

    [System.Text.RegularExpressions.GeneratedRegex(@"^(\d{1,2})/(\d{1,2}) (?=\p{L})", System.Text.RegularExpressions.RegexOptions.CultureInvariant)]
    private static partial System.Text.RegularExpressions.Regex SlashedDay();

    // "2/3 physio done", "5/5 lower": two small numbers before words of care are a share or minutes, not a day.
    private static bool Plausible(List<Term> terms, int at, int next, DateWritten date, bool slashed)
    {
        if (date is { First: { } a, Second: { } b, Year: null, DayOfWeek: IsoDayOfWeek.None } && terms[at].Kind == TermKind.Parts)
        {
            if (next >= terms.Count) return true;
            var after = terms[next];
            if (after.Is(Sense.Unit) || after.Is(Sense.Past) || after.Is(Sense.Half) || after.IsSymbol("%")) return false;
            if (!slashed && a <= 6 && b <= 6 && (after.NamesEvent || after.Is(Sense.Area) || after.Is(Sense.Side) || after.Is(Sense.Stop) || after.Is(Sense.Each) || after.Is(Sense.EachSide))) return false;
        }
        // A weekday alone opens a day only when a break or little else follows: "Monday the pump broke" does too; "Sun out today" may not matter.
        return true;
    }

    // "Fri 2/7 to Tues 2/11", "Thurs 10, Fri 11, Sat 12": the first day opens; the others are passed over.
    private static int SkipMore(List<Term> terms, int next, string head)
    {
        while (next + 1 < terms.Count && (terms[next].IsSymbol("-") || terms[next].IsSymbol(",") || terms[next].IsSymbol("/") || terms[next].Is(Sense.To) || terms[next].Is(Sense.And)))
        {
            if (DateGrammar.Read(terms, next + 1, head, out var after) is null) break;
            next = after;
        }
        return next;
    }

    /// <summary>
    /// A month with its year ("OCT 2025"), perhaps with a day before it ("week of Monday 3 November 2025"): a hint at the year and, with a day, at the
    /// day on which the text begins; null when the line has neither.
    /// </summary>
    public static (LocalDate Day, bool IsDay)? HintOf(string line, TermReader reader, LocalDate? notAfter)
    {
        if (line.Length > LongestTitle) return null;
        var terms = reader.Raw(line);
        for (var i = 0; i < terms.Count; i++)
        {
            if (terms[i].ValueOf(Sense.Month) is not { } word) continue;
            var monthNumber = int.Parse(word, System.Globalization.CultureInfo.InvariantCulture);
            int? year = i + 1 < terms.Count && terms[i + 1] is { Kind: TermKind.Number, IsWhole: true, Number: >= 1990 and <= 2100 } written ? (int)written.Number : null;
            // "the 4th of August"
            var before = i - 1;
            while (before > 0 && terms[before].Text is "st" or "nd" or "rd" or "th" or "of") before--;
            int? day = before >= 0 && terms[before] is { Kind: TermKind.Number, IsWhole: true, Number: >= 1 and <= 31 } number ? (int)number.Number : null;
            // "Tuesday March third"
            if (day is null && year is null && i + 1 < terms.Count && terms[i + 1] is { Kind: TermKind.Number, IsWhole: true, Number: >= 1 and <= 31 } after) day = (int)after.Number;
            // Without its year, a whole day is the last such day that the text can speak of: "starts mon 9 feb".
            if (year is null && (day is null || notAfter is null)) continue;
            year ??= notAfter!.Value.Year;
            var month = new LocalDate(year.Value, monthNumber, 1);
            if (day is not { } d || d > month.Calendar.GetDaysInMonth(month.Year, month.Month)) return (month, false);
            var found = month.PlusDays(d - 1);
            // "to show at the clinic on March 6": a day soon after the last line is a visit, not where the notes begin.
            if (notAfter is { } end && found > end && found <= end.PlusDays(VisitWithin) && !(i + 1 < terms.Count && terms[i + 1].Number >= 1990)) continue;
            if (notAfter is { } last && found > last && !(i + 1 < terms.Count && terms[i + 1].Number >= 1990)) found = found.PlusYears(-1);
            return (found, true);
        }

        return null;
    }
}
