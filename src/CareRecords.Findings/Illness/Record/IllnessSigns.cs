using CareRecords.Records;
using NodaTime;

namespace CareRecords.Findings;

/// <summary>A stated sign of illness that counts for an episode by the record.</summary>
/// <param name="At">When, for showing and counting hours.</param>
/// <param name="Within">From when to when it may have been.</param>
/// <param name="Day">Its care day.</param>
/// <param name="What">In words.</param>
/// <param name="Sources">Where it was written.</param>
internal sealed record IllnessSign(Instant At, InstantRange Within, LocalDate Day, string What, IReadOnlyList<SourceLine> Sources);

/// <summary>
/// The stated signs that count: unwell, a temperature of 38.0 °C or more (or written as fever), the start of an antibiotic,
/// and every day from an admission to the discharge. Other signs are shown and do not count.
/// </summary>
internal static class IllnessSigns
{
    private const double FeverCelsius = 38.0;
    private const int CourseGapDays = 7;
    private const int LongestCourseDays = 28;
    private const int LongestStayDays = 60;

    public static IReadOnlyList<IllnessSign> Of(ChildRecords records) =>
    [
        .. records.Signs.Where(s => s.Kind == SignKind.Unwell || IsFever(s)).Select(s => Of(records, s, Word(s)))
            .Concat(AntibioticStarts(records)).Concat(HospitalDays(records)).OrderBy(s => s.At),
    ];

    private static bool IsFever(Sign sign) => sign.Kind == SignKind.Temperature && (sign.Number is { } celsius
        ? celsius >= FeverCelsius
        : $"{sign.What} {sign.Value}".Contains("fever", StringComparison.OrdinalIgnoreCase));

    private static string Word(Sign sign) => sign is { Kind: SignKind.Temperature, Number: { } celsius } ? $"temperature {Words.Number(celsius)} °C" : sign.What;

    private static IllnessSign Of(ChildRecords records, CareEntry entry, string what) =>
        new(records.Placed(entry), records.Within(entry), records.DayOf(entry), what, entry.Sources);

    /// <summary>The first mention of each course; a medicine given for longer than four weeks is a standing one and no sign.</summary>
    private static IEnumerable<IllnessSign> AntibioticStarts(ChildRecords records)
    {
        var mentions = records.Signs.Where(s => s.Kind == SignKind.Antibiotic).Select(s => (Entry: (CareEntry)s, Name: "antibiotic"))
            .Concat(records.Doses.Where(d => d.Class == MedicineClass.SystemicAntibiotic).Select(d => (Entry: (CareEntry)d, Name: d.Medicine)));
        var starts = mentions.GroupBy(m => m.Name).SelectMany(g => Courses(records, [.. g.Select(m => m.Entry).OrderBy(records.Placed)], g.Key == "antibiotic"))
            .OrderBy(e => records.Placed(e)).ToList();

        // A sign "antibiotic started" and the medicine's first dose are one start.
        CareEntry? last = null;
        foreach (var start in starts)
        {
            if (last is not null && Period.DaysBetween(records.DayOf(last), records.DayOf(start)) < CourseGapDays) continue;
            last = start;
            yield return Of(records, start, "antibiotic started");
        }
    }

    private static IEnumerable<CareEntry> Courses(ChildRecords records, IReadOnlyList<CareEntry> mentions, bool asSign)
    {
        for (var i = 0; i < mentions.Count;)
        {
            var end = i + 1;
            while (end < mentions.Count && Period.DaysBetween(records.DayOf(mentions[end - 1]), records.DayOf(mentions[end])) <= CourseGapDays) end++;
            var first = records.DayOf(mentions[i]);
            var standing = Period.DaysBetween(first, records.DayOf(mentions[end - 1])) > LongestCourseDays || first == records.From;
            if (asSign || !standing) yield return mentions[i];
            i = end;
        }
    }

    private static IEnumerable<IllnessSign> HospitalDays(ChildRecords records)
    {
        var discharges = records.Signs.Where(s => s.Kind == SignKind.Discharged).Select(records.DayOf).ToList();
        foreach (var admitted in records.Signs.Where(s => s.Kind == SignKind.Admitted))
        {
            var first = records.DayOf(admitted);
            yield return Of(records, admitted, "admitted");
            var home = discharges.Where(d => d >= first && d <= first.PlusDays(LongestStayDays)).Select(d => (LocalDate?)d).FirstOrDefault();
            for (var day = first.PlusDays(1); day < home; day = day.PlusDays(1))
                yield return new(records.StartOf(day) + Duration.FromHours(12), new(records.StartOf(day) + Duration.FromHours(12), records.StartOf(day.PlusDays(1))), day, "in hospital", admitted.Sources);
        }
    }
}
