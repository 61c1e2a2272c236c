namespace CareRecords.Findings.Modelling;

/// <summary>The usual oxygen where no plan states it.</summary>
internal static class UsualFlow
{
    /// <summary>
    /// The commonest lowest flow of a day, over the days on which one was written. Where flows were written on fewer than a third of the days with
    /// readings, they are taken for the exception and usual is air. Null when no flow was ever written.
    /// </summary>
    public static IReadOnlyList<double>? Of(IReadOnlyList<Observation> observations, int careDays)
    {
        var lowest = observations.Where(o => o.Oxygen is not null).GroupBy(o => o.Day).Select(d => d.Min(o => o.Oxygen!.Value)).ToList();
        if (lowest.Count == 0) return null;
        var daysRead = observations.Where(o => o.SpO2 is not null).Select(o => o.Day).Distinct().Count();
        var usual = lowest.Count * 3 < daysRead ? 0 : lowest.GroupBy(f => f).OrderByDescending(g => g.Count()).ThenBy(g => g.Key).First().Key;
        return [.. Enumerable.Repeat(usual, careDays)];
    }
}
