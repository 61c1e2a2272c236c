using NodaTime;

namespace CareRecords.Findings;

/// <summary>Both definitions side by side, and how far they differ.</summary>
internal static class IllnessSummary
{
    private const string ByRecordRule =
        "by the record: from the first of two or more care days with a stated sign (unwell, 38.0 °C or more, antibiotic started, in hospital), "
        + "oxygen above usual or saturation clearly below usual, until two clear days";

    public static IllnessFindings Of(
        IReadOnlyList<EpisodeFinding> byRecord, HashSet<LocalDate> daysByRecord, IReadOnlyList<EpisodeFinding> byModel, HashSet<LocalDate> daysByModel, string? modelMissing)
    {
        var both = daysByRecord.Intersect(daysByModel).Count();
        return new()
        {
            Episodes = byRecord,
            MainDefinition = ByRecordRule,
            ByRecord = byRecord,
            ByModel = byModel,
            ModelMissing = modelMissing,
            IllnessDays = (daysByRecord.Count, daysByModel.Count, both),
            Spread = modelMissing is not null
                ? $"{Words.Count(byRecord.Count, "episode", "episodes")} by the record; the model gave no answer: {modelMissing}."
                : $"{Words.Count(byRecord.Count, "episode", "episodes")} by the record ({Words.Count(daysByRecord.Count, "day", "days")}), "
                  + $"{byModel.Count} by the model ({Words.Count(daysByModel.Count, "day", "days")}); {Words.Count(both, "day is", "days are")} illness by both.",
        };
    }

    /// <summary>The care days from each episode's first to its last day with evidence.</summary>
    public static HashSet<LocalDate> DaysOf(IllnessByRecord illness) =>
        [.. illness.Episodes.SelectMany(e => illness.Days.Skip(e.First).Take(e.Last - e.First + 1)).Select(d => d.Day)];

    /// <summary>The same with the second clock, back to maintenance, read off the steps.</summary>
    public static IllnessFindings WithMaintenance(this IllnessFindings illness, IReadOnlyList<TaperStep> steps)
    {
        IReadOnlyList<EpisodeFinding> Timed(IReadOnlyList<EpisodeFinding> episodes) =>
            [.. episodes.Select((e, i) => e with { BackToMaintenanceDays = Wean.BackToMaintenanceDays(e, episodes.ElementAtOrDefault(i + 1), steps) })];
        return illness with { Episodes = Timed(illness.Episodes), ByRecord = Timed(illness.ByRecord), ByModel = Timed(illness.ByModel) };
    }
}
