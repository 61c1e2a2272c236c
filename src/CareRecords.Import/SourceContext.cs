using CareRecords.Import.Notes;
using CareRecords.Import.Reading;

namespace CareRecords.Import;

/// <summary>What is known before a source is read, gathered from options, answers and the other sources.</summary>
internal sealed record SourceContext
{
    /// <summary>The order of day and month that the person gave (<c>--date-order</c>); null when not given.</summary>
    public DateOrder? OrderGiven { get; init; }

    /// <summary>The order that every other source with a decided order shares; null when there is none.</summary>
    public DateOrder? OrderOfNeighbours { get; init; }

    /// <summary>The last day that the source can speak of (its file's date), for years not written; null when not known.</summary>
    public NodaTime.LocalDate? NotAfter { get; init; }

    /// <summary>The first day of the workbook's sheets before this one, for sheets named "Tue" or "Day 2"; null when none has one.</summary>
    public NodaTime.LocalDate? WeekOf { get; init; }

    /// <summary>The child's zone as far as it is known: the option's, else a plan's, else the computer's; for stamps that count from Greenwich.</summary>
    public NodaTime.DateTimeZone Zone { get; init; } = NodaTime.DateTimeZone.Utc;

    /// <summary>True where the option names the zone: a plan does not change it.</summary>
    public bool ZoneIsGiven { get; init; }

    /// <summary>The family's words.</summary>
    public FamilyWords Words { get; init; } = FamilyWords.None;

    /// <summary>The one key of a workbook whose other sheets have none, by file.</summary>
    public IReadOnlyDictionary<string, Tables.Layouts.SheetKey> Keys { get; init; } = new Dictionary<string, Tables.Layouts.SheetKey>();

    /// <summary>Answers by question name.</summary>
    public IReadOnlyDictionary<string, string> Answers { get; init; } = new Dictionary<string, string>();

    /// <summary>The question that asks for the day order of a source.</summary>
    public static string DateOrderQuestion(string file) => "day-order:" + file;

    /// <summary>The order for a source: the option, else the answer to its question; null when neither was given.</summary>
    public DateOrder? OrderFor(string file) => OrderGiven ?? ReadOrder(Answers.GetValueOrDefault(DateOrderQuestion(file)));

    /// <summary>The same for the notes reader.</summary>
    public ReadingContext ForNotes(string file, NodaTime.LocalDate? notAfter) => new()
    {
        DateOrder = OrderFor(file) ?? OrderOfNeighbours,
        NotAfter = notAfter,
        Words = Words,
        Answers = Answers,
    };

    /// <summary>What the sources taught that was not known when they were read; null when nothing new was learnt.</summary>
    public SourceContext? LearnFrom(IReadOnlyList<Accounting.Gathered> parts)
    {
        var answers = new Dictionary<string, string>(Answers);
        foreach (var (question, answer) in parts.SelectMany(p => p.Answers)) answers[question] = answer;
        // An answer may stand beside the question's words instead of its name.
        foreach (var (name, asked) in parts.SelectMany(p => p.Questions))
            if (answers.TryGetValue(asked.Text, out var answer))
                answers.TryAdd(name, answer);
        var words = FamilyWords.None.With(
        [
            .. parts.SelectMany(p => p.Words),
            .. answers.Where(a => WordQuestions.Any(q => a.Key.StartsWith(q, StringComparison.Ordinal))).SelectMany(a => Explained(a.Key[(a.Key.IndexOf(':', StringComparison.Ordinal) + 1)..], a.Value)),
            .. answers.Where(a => a.Key.StartsWith(AreasTwice.Question(""), StringComparison.Ordinal)).SelectMany(a => AreasTwice.Explained(a.Value)),
        ]);
        var planned = ZoneIsGiven ? null : parts.SelectMany(p => p.Plan).LastOrDefault(r => r.Item == Records.PlanItem.TimeZone)?.Value;
        var zone = planned is null ? Zone : NodaTime.DateTimeZoneProviders.Tzdb.GetZoneOrNull(planned) ?? Zone;
        var neighbours = parts.Any(p => p.OrderIsOpen) ? OrderOf(parts) : OrderOfNeighbours;
        var keys = parts.GroupBy(p => p.File).Where(f => f.Any(p => p.Key.Lines.Count == 0) && f.Count(p => p.Key.Lines.Count > 0) == 1).ToDictionary(f => f.Key, f => f.First(p => p.Key.Lines.Count > 0).Key);
        return keys.Count == Keys.Count && Same(Words, words) && answers.Count == Answers.Count && answers.All(a => Answers.GetValueOrDefault(a.Key) == a.Value) && neighbours == OrderOfNeighbours && zone.Equals(Zone)
            ? null
            : this with { Words = words, Keys = keys, Answers = answers, OrderOfNeighbours = neighbours, Zone = zone };
    }

    // Questions whose answer explains words that may stand on many lines.
    private static readonly string[] WordQuestions = ["what-is:", "what-means:", "which-areas:", "not-read:"];

    // "3/3/2/2" may be written "3 3 2 2" too.
    private static IEnumerable<FamilyWord> Explained(string word, string means)
    {
        if (means.StartsWith("nothing", StringComparison.OrdinalIgnoreCase)) yield break;
        yield return new FamilyWord(word, means);
        if (word.Contains('/', StringComparison.Ordinal) && word.All(c => char.IsAsciiDigit(c) || c is '/' or '.')) yield return new FamilyWord(word.Replace('/', ' '), means);
    }

    private static DateOrder? OrderOf(IReadOnlyList<Accounting.Gathered> parts)
    {
        var settled = parts.Select(p => p.OrderSettled).OfType<DateOrder>().Where(o => o != DateOrder.YearMonthDay).Distinct().ToList();
        return settled.Count == 1 ? settled[0] : null;
    }

    private static bool Same(FamilyWords one, FamilyWords other) =>
        one.All.Count == other.All.Count && one.All.All(w => other.MeaningOf(w.Word) == w.Means);

    private static DateOrder? ReadOrder(string? answer) => Tables.CanonicalHeader.Fold(answer ?? "") switch
    {
        "dmy" or "daymonth" or "daymonthyear" or "dayfirst" or "daybeforemonth" => DateOrder.DayMonthYear,
        "mdy" or "monthday" or "monthdayyear" or "monthfirst" or "monthbeforeday" => DateOrder.MonthDayYear,
        "ymd" or "yearmonthday" or "yearfirst" => DateOrder.YearMonthDay,
        _ => null,
    };
}
