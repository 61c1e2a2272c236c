using CareRecords.Import.Reading;
using NodaTime;

namespace CareRecords.Import.Notes;

/// <summary>Where the days of a text begin.</summary>
/// <param name="ByLine">The headings by zero-based line.</param>
/// <param name="Hint">What a title says of the first day, or of its year; null when none does.</param>
internal sealed record DayHeadings(SortedDictionary<int, Heading> ByLine, (LocalDate Day, bool IsDay)? Hint)
{
    // A title stands among the first lines.
    private const int LinesOfTitle = 20;

    /// <summary>Finds the days of a text, each in the form in which its notes write them.</summary>
    /// <param name="lines">The lines.</param>
    /// <param name="legends">Lines that explain words.</param>
    /// <param name="clocks">Lines that hold the time of the messages below them.</param>
    /// <param name="reader">Reads the words.</param>
    /// <param name="notAfter">The last day that the text can speak of; null when not known.</param>
    public static DayHeadings Find(IReadOnlyList<string> lines, HashSet<int> legends, HashSet<int> clocks, TermReader reader, LocalDate? notAfter)
    {
        var table = new TableLines();
        var letteredDays = DateGrammar.WritesLetteredDays(lines);
        var dottedDays = DateGrammar.WritesDottedDays(lines);
        var dashedDays = DateGrammar.WritesDashedDays(lines);
        var slashed = Headings.AreSlashed(lines);
        var counted = Headings.CountsWithOrdinals(lines);
        var letters = MailHeaders.Are(lines);
        var headings = new SortedDictionary<int, Heading>();
        (LocalDate Day, bool IsDay)? hint = null;
        var ledTo = new List<(int Line, string Lead, Heading Heading)>();
        for (var i = 0; i < lines.Count; i++)
        {
            var line = lines[i];
            if (legends.Contains(i) || string.IsNullOrWhiteSpace(line) || table.IsHeading(line)) continue;
            var prefix = LinePrefix.Read(line, reader);
            if (prefix.Stamp is { } stamp)
            {
                headings[i] = new Heading(stamp.Date, prefix.ContentStart, false, line[..prefix.ContentStart], false, false);
            }
            else if (clocks.Contains(i)) continue;
            else if (letters && MailHeaders.Is(line)) { if (MailHeaders.Day(line) is { } mailed) headings[i] = mailed; }
            else if (Headings.NightOver(line) is { } over) headings[i] = over;
            else if (Headings.AfterClock(line, reader) is { } timed) headings[i] = timed;
            else if (letteredDays && DateGrammar.LetteredDay(line, out var end) is { } lettered) headings[i] = new Heading(lettered, end, end < line.Length, line[..end], false, false);
            else if (dottedDays && DateGrammar.DottedDay(line) is { } dotted) headings[i] = new Heading(dotted, line.Length, false, line.Trim(), false, false);
            else if (dashedDays && DateGrammar.DashedDay(line, out var words) is { } dashed) headings[i] = new Heading(dashed, words, words < line.Length, line[..words].Trim(), false, false);
            else if (MayHoldDate(line, prefix.ContentStart) && Headings.Read(table.Rewrite(line, out _), line.Contains('|') ? 0 : prefix.ContentStart, reader, slashed, counted) is { } heading) headings[i] = heading;
            else
            {
                if (i < LinesOfTitle && hint is null) hint = Headings.HintOf(line, reader, notAfter);
                if (prefix.ContentStart == 0 && Headings.ReadAfterLead(line) is { } led) ledTo.Add((i, led.Lead, led.Heading));
            }
        }

        // The same words before two dates or more lead to days.
        foreach (var lead in ledTo.GroupBy(l => l.Lead).Where(g => g.Select(l => l.Heading.Date).Distinct().Count() >= 2))
            foreach (var (line, _, heading) in lead) headings[line] = heading;

        foreach (var (line, day) in ParagraphDays.Find(lines, headings)) headings[line] = day;
        return new DayHeadings(headings, hint);
    }

    // A quick look before the words are read: a heading begins with a figure or a capital letter of a few kinds.
    private static bool MayHoldDate(string line, int from)
    {
        var at = from;
        while (at < line.Length && at < from + 6 && !char.IsLetterOrDigit(line[at])) at++;
        var end = at;
        while (end < line.Length && end - at < 24 && !char.IsWhiteSpace(line[end]) && line[end] is not (',' or '(')) end++;
        var word = line.AsSpan(at, end - at);
        if (word.Length == 0) return false;
        if (char.IsAsciiDigit(word[0]))
            return word.TrimEnd(':').IndexOf(':') < 0 && (word.IndexOfAny('/', '-', '.') >= 0 || word.IndexOfAnyExceptInRange('0', '9') >= 0 || word.Length <= 2);
        return DateGrammar.MayBegin(word);
    }
}
