namespace CareRecords.Findings;

/// <summary>
/// An episode by the record. It begins on the first of at least two care days with evidence that follow each other, and two
/// clear days end it; a single clear day between two days of illness does not. Days on which nothing was written that could
/// tell count neither way: they are passed over, up to <see cref="MostMissing"/> in a row.
/// Source of the rule: symptom diaries of exacerbations (docs/definitions.md).
/// </summary>
/// <param name="First">First day, from 0 in the evidence.</param>
/// <param name="Last">Last day with evidence.</param>
/// <param name="EarliestFirst">The day after the last clear day before it: it may have begun then.</param>
/// <param name="EndsClear">Two clear days were seen after the last.</param>
internal sealed record RecordEpisode(int First, int Last, int EarliestFirst, bool EndsClear)
{
    private const int ClearDaysToEnd = 2;
    private const int MostMissing = 3;

    public static IReadOnlyList<RecordEpisode> In(IReadOnlyList<DayEvidence> days)
    {
        var found = new List<RecordEpisode>();
        for (var i = 0; i < days.Count; i++)
        {
            if (days[i].State != DayState.Ill || NextTelling(days, i) is not { } next || days[next].State != DayState.Ill) continue;
            var episode = Follow(days, i, next);
            found.Add(episode);
            i = episode.Last;
        }

        return found;
    }

    private static RecordEpisode Follow(IReadOnlyList<DayEvidence> days, int first, int second)
    {
        var (last, clear, missing) = (second, 0, 0);
        for (var i = second + 1; i < days.Count && clear < ClearDaysToEnd && missing <= MostMissing; i++)
        {
            (last, clear, missing) = days[i].State switch
            {
                DayState.Ill => (i, 0, 0),
                DayState.Clear => (last, clear + 1, 0),
                _ => (last, clear, missing + 1),
            };
        }

        var earliest = first;
        while (earliest > 0 && days[earliest - 1].State == DayState.Missing) earliest--;
        return new(first, last, earliest, clear >= ClearDaysToEnd);
    }

    private static int? NextTelling(IReadOnlyList<DayEvidence> days, int after)
    {
        for (var i = after + 1; i < days.Count && i <= after + 1 + MostMissing; i++)
            if (days[i].State != DayState.Missing)
                return i;
        return null;
    }
}
