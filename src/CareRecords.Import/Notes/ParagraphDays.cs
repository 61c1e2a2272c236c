using System.Globalization;
using System.Text.RegularExpressions;
using CareRecords.Import.Reading;
using NodaTime;

namespace CareRecords.Import.Notes;

/// <summary>
/// Days that open the paragraphs of a letter: "On Monday we started down", "By Thursday I could hear", "Today, Sunday, I turned the oxygen off". They head days where several paragraphs
/// open so and run on through the week; one alone ("On Thursday the nurse comes") does not.
/// </summary>
internal static partial class ParagraphDays
{
    private const int FewestParagraphs = 2;
    private const int ShortestParagraph = 60;
    private const int MostDaysOn = 4;

    /// <summary>The headings that such paragraphs make, by zero-based line; none where the notes are not told so.</summary>
    /// <param name="lines">The lines.</param>
    /// <param name="headings">The days found in other forms.</param>
    public static IReadOnlyDictionary<int, Heading> Find(IReadOnlyList<string> lines, SortedDictionary<int, Heading> headings)
    {
        var found = new Dictionary<int, Heading>();
        var (inStep, before) = (0, IsoDayOfWeek.None);
        LocalDate? sent = null;
        for (var i = 0; i < lines.Count; i++)
        {
            if (headings.TryGetValue(i, out var heading))
            {
                if (MailHeaders.Is(lines[i])) { (sent, before) = (heading.Date is { Year: { } year, Month: { } month, Day: { } day } ? new LocalDate(year, month, day) : null, IsoDayOfWeek.None); }
                else before = heading.Date.DayOfWeek;
                continue;
            }

            if (lines[i].Length < ShortestParagraph || Opening().Match(lines[i]) is not { Success: true } match || CellTerms.Raw(match.Groups[1].Value) is not [{ } word] || word.ValueOf(Sense.Weekday) is not { } value) continue;
            var weekday = (IsoDayOfWeek)int.Parse(value, CultureInfo.InvariantCulture);
            var step = before == IsoDayOfWeek.None ? 1 : ((int)weekday - (int)before + 7) % 7;
            // Back in the week, or the same day again, is not how days run on.
            if (step is 0 or > MostDaysOn) return new Dictionary<int, Heading>();
            if (before != IsoDayOfWeek.None) inStep++;
            before = weekday;
            found[i] = new Heading(Written(weekday, sent), match.Length, true, lines[i][..match.Length].Trim(), false, false);
        }

        return inStep >= FewestParagraphs ? found : new Dictionary<int, Heading>();
    }

    // A letter tells of the week before it was sent.
    private static DateWritten Written(IsoDayOfWeek weekday, LocalDate? sent)
    {
        if (sent is not { } letter) return new DateWritten(null, null, null, null, null, weekday);
        var day = letter.DayOfWeek == weekday ? letter : letter.Previous(weekday);
        return new DateWritten(null, null, day.Year, day.Month, day.Day, weekday);
    }

    [GeneratedRegex(@"^\s*(?:(?:and |so |then |but )?(?:on|by|come|for) |(?:today|this (?:morning|afternoon|evening)|tonight|yesterday|now it'?s),? )(?:last )?(\p{L}{3,9})\b(?! (?:the )?\d)[\s,]*", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Opening();
}
