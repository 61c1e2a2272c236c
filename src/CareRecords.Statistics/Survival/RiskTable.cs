namespace CareRecords.Statistics;

/// <summary>What happened at one time: how many were at risk just before it, had the event, were censored.</summary>
internal readonly record struct RiskRow(double Time, int AtRisk, int Events, int Censored);

/// <summary>The table of events and numbers at risk; who is censored at the time of an event is still at risk for it.</summary>
internal static class RiskTable
{
    public static List<RiskRow> Of(IReadOnlyCollection<FollowUp> subjects)
    {
        Validate(subjects);
        List<RiskRow> rows = [];
        var atRisk = subjects.Count;
        foreach (var group in subjects.GroupBy(s => s.Time).OrderBy(g => g.Key))
        {
            var events = group.Count(s => s.Happened);
            var censored = group.Count() - events;
            rows.Add(new(group.Key, atRisk, events, censored));
            atRisk -= events + censored;
        }

        return rows;
    }

    public static void Validate(IReadOnlyCollection<FollowUp> subjects)
    {
        ArgumentNullException.ThrowIfNull(subjects);
        if (subjects.Any(s => !(s.Time >= 0) || double.IsInfinity(s.Time)))
        {
            throw new ArgumentException("A follow-up time is a finite number, 0 or more.", nameof(subjects));
        }
    }
}
