using NodaTime;

namespace CareRecords.Findings;

/// <summary>Which episode and which step a care day belongs to.</summary>
internal sealed class DayPlaces
{
    private readonly Dictionary<LocalDate, string> _episodes = [];
    private readonly Dictionary<LocalDate, string> _steps = [];

    public DayPlaces(ChildRecords records, IReadOnlyList<EpisodeFinding> episodes, IReadOnlyList<TaperStep> steps)
    {
        foreach (var episode in episodes)
            for (var day = episode.Onset; day <= LastDay(records, episode); day = day.PlusDays(1))
                _episodes[day] = episode.Id;
        foreach (var step in steps)
            for (var day = step.From; day <= step.To; day = day.PlusDays(1))
                _steps[day] = step.Id;
    }

    public string? EpisodeOn(LocalDate day) => _episodes.GetValueOrDefault(day);

    public string? StepOn(LocalDate day) => _steps.GetValueOrDefault(day);

    /// <summary>The care day of the estimated recovery, else of the last moment known not recovered: later days are no illness days.</summary>
    private static LocalDate LastDay(ChildRecords records, EpisodeFinding episode) =>
        LocalDate.Min(records.To, episode.Onset.PlusDays((int)Math.Floor(episode.Recovery.Estimate ?? episode.Recovery.DaysLow)));
}
