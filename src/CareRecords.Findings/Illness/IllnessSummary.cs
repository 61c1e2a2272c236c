using CareRecords.Findings.Modelling;
using NodaTime;

namespace CareRecords.Findings;

/// <summary>Both definitions side by side, which of them is the main one, and how far they differ.</summary>
/// <remarks>
/// The main definition is the one that finds more of what is true on simulated children (docs/calibration.md, "Both definitions"): the model's. It looks
/// at saturation and oxygen, so episodes that only stated signs show (two days of them or more, touching no episode of the model) stand beside
/// its own. Where the model gives no answer, the record's rules are the main definition.
/// </remarks>
internal static class IllnessSummary
{
    private const string ByRecordRule =
        "by the record: from the first of two or more care days with a stated sign (unwell, 38.0 °C or more, antibiotic started, in hospital), "
        + "oxygen above usual or saturation clearly below usual, until two clear days";

    private const string ByModelRule =
        "by the model: from the care day on which saturation, by a model over all readings, flows and signs, most probably began to leave the usual, until it is "
        + "back within a point of the usual and oxygen is at usual";

    private const string WithSigns = "; beside them episodes that only stated signs show, by the record";

    private const int LeastSignDays = 2;

    /// <summary>The findings of both definitions.</summary>
    public static IllnessFindings Of(ChildRecords records, IllnessByRecord illness, IReadOnlyList<EpisodeFinding> byRecord, IllnessModelResult model)
    {
        var daysByRecord = DaysOf(illness);
        if (model.Missing is { } missing)
        {
            return new()
            {
                Episodes = byRecord,
                MainDefinition = ByRecordRule,
                ByRecord = byRecord,
                ByModel = [],
                ModelMissing = missing,
                IllnessDays = (daysByRecord.Count, 0, 0),
                Spread = $"{Words.Count(byRecord.Count, "episode", "episodes")} by the record; the model gave no answer: {missing}.",
            };
        }

        var fromModel = ModelEpisodeFindings.Of(records, illness, model);
        var daysByModel = DaysOf(records, model);
        List<EpisodeFinding> bySigns = [.. byRecord.Where((_, i) => ShownBySignsAlone(illness, illness.Episodes[i], daysByModel))];
        var byModel = ModelEpisodeFindings.Numbered(fromModel);
        var both = daysByRecord.Intersect(daysByModel).Count();
        return new()
        {
            Episodes = bySigns.Count == 0 ? byModel : ModelEpisodeFindings.Numbered(fromModel.Concat(bySigns)),
            MainDefinition = ByModelRule + (bySigns.Count == 0 ? "" : WithSigns),
            ByRecord = byRecord,
            ByModel = byModel,
            IllnessDays = (daysByRecord.Count, daysByModel.Count, both),
            Spread = $"{Words.Count(byRecord.Count, "episode", "episodes")} by the record ({Words.Count(daysByRecord.Count, "day", "days")}), "
                + $"{byModel.Count} by the model ({Words.Count(daysByModel.Count, "day", "days")}); {Words.Count(both, "day is", "days are")} illness by both.",
        };
    }

    /// <summary>The same with the second clock, back to maintenance, read off the steps.</summary>
    public static IllnessFindings WithMaintenance(this IllnessFindings illness, IReadOnlyList<TaperStep> steps)
    {
        IReadOnlyList<EpisodeFinding> Timed(IReadOnlyList<EpisodeFinding> episodes) =>
            [.. episodes.Select((e, i) => e with { BackToMaintenanceDays = Wean.BackToMaintenanceDays(e, episodes.ElementAtOrDefault(i + 1), steps) })];
        return illness with { Episodes = Timed(illness.Episodes), ByRecord = Timed(illness.ByRecord), ByModel = Timed(illness.ByModel) };
    }

    /// <summary>The care days from each episode's first to its last day with evidence.</summary>
    private static HashSet<LocalDate> DaysOf(IllnessByRecord illness) =>
        [.. illness.Episodes.SelectMany(e => illness.Days.Skip(e.First).Take(e.Last - e.First + 1)).Select(d => d.Day)];

    private static HashSet<LocalDate> DaysOf(ChildRecords records, IllnessModelResult model) =>
        [.. model.Episodes.SelectMany(e => Enumerable.Range(e.OnsetDay, Math.Max(1, e.LastDay - e.OnsetDay + 1))).Select(records.From.PlusDays)];

    private static bool ShownBySignsAlone(IllnessByRecord illness, RecordEpisode episode, HashSet<LocalDate> daysByModel)
    {
        var days = illness.Days.Skip(episode.First).Take(episode.Last - episode.First + 1).Select(d => d.Day).ToHashSet();
        return !days.Overlaps(daysByModel) && illness.Signs.Select(s => s.Day).Where(days.Contains).Distinct().Count() >= LeastSignDays;
    }
}
