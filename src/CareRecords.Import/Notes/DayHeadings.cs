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
        var form = new Form(DateGrammar.WritesLetteredDays(lines), DateGrammar.WritesDottedDays(lines), DateGrammar.WritesDashedDays(lines), Headings.AreSlashed(lines), Headings.CountsWithOrdinals(lines), MailHeaders.Are(lines));
        var found = new Found[lines.Count];
        // A row of a table may need the rows above it: then one line is looked at after the other.
        ParallelLines.InParts(lines.Count, reader, lines.Any(l => l.Contains('|')), (own, from, to) =>
        {
            var table = new TableLines();
            for (var i = from; i < to; i++)
                if (!legends.Contains(i) && !string.IsNullOrWhiteSpace(lines[i]) && !table.IsHeading(lines[i])) found[i] = Of(lines[i], clocks.Contains(i), form, table, own);
        });

        var headings = new SortedDictionary<int, Heading>();
        (LocalDate Day, bool IsDay)? hint = null;
        var ledTo = new List<(int Line, string Lead, Heading Heading)>();
        for (var i = 0; i < found.Length; i++)
        {
            if (found[i].Heading is { } heading) headings[i] = heading;
            if (found[i].Led is { } led) ledTo.Add((i, led.Lead, led.Heading));
            if (found[i].IsPlain && i < LinesOfTitle && hint is null) hint = Headings.HintOf(lines[i], reader, notAfter);
        }

        // The same words before two dates or more lead to days.
        foreach (var lead in ledTo.GroupBy(l => l.Lead).Where(g => g.Select(l => l.Heading.Date).Distinct().Count() >= 2))
            foreach (var (line, _, heading) in lead) headings[line] = heading;

        foreach (var (line, day) in ParagraphDays.Find(lines, headings)) headings[line] = day;
        return new DayHeadings(headings, hint);
    }

    // How the text as a whole writes its days.
    private sealed record Form(bool Lettered, bool Dotted, bool Dashed, bool Slashed, bool Counted, bool Letters);

    // What a line is by itself: the beginning of a day, words before a date, or neither.
    private readonly record struct Found(Heading? Heading, (string Lead, Heading Heading)? Led, bool IsPlain);

    private static Found Of(string line, bool isClock, Form form, TableLines table, TermReader reader)
    {
        var prefix = LinePrefix.Read(line, reader);
        if (prefix.Stamp is { } stamp) return new(new Heading(stamp.Date, prefix.ContentStart, false, line[..prefix.ContentStart], false, false), null, false);
        if (isClock) return default;
        if (form.Letters && MailHeaders.Is(line)) return new(MailHeaders.Day(line), null, false);
        var heading = Headings.NightOver(line) ?? Headings.AfterClock(line, reader);
        if (heading is null && form.Lettered && DateGrammar.LetteredDay(line, out var end) is { } lettered) heading = new Heading(lettered, end, end < line.Length, line[..end], false, false);
        if (heading is null && form.Dotted && DateGrammar.DottedDay(line) is { } dotted) heading = new Heading(dotted, line.Length, false, line.Trim(), false, false);
        if (heading is null && form.Dashed && DateGrammar.DashedDay(line, out var words) is { } dashed) heading = new Heading(dashed, words, words < line.Length, line[..words].Trim(), false, false);
        if (heading is null && MayHoldDate(line, prefix.ContentStart)) heading = Headings.Read(table.Rewrite(line, out _), line.Contains('|') ? 0 : prefix.ContentStart, reader, form.Slashed, form.Counted);
        return heading is not null ? new(heading, null, false) : new(null, prefix.ContentStart == 0 ? Headings.ReadAfterLead(line) : null, true);
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
