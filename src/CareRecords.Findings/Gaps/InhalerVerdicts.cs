using NodaTime;

namespace CareRecords.Findings;

/// <summary>The zones of an inhaler gap in minutes before the session's start, both ends of the kept zone included.</summary>
/// <param name="Limit">Nearer than this is short.</param>
/// <param name="Window">Further than this is early.</param>
internal readonly record struct InhalerZones(double Limit, double Window)
{
    /// <summary>Further back than this, a dose has nothing to do with the session (a bronchodilator lasts four to six hours).</summary>
    public const double Reach = 240;

    public Duration LimitDuration => Duration.FromMinutes(Limit);

    public Duration WindowDuration => Duration.FromMinutes(Math.Max(Limit, Window));

    public static Duration ReachDuration => Duration.FromMinutes(Reach);
}

/// <summary>A dose that is, or may be, the one due before a session.</summary>
internal readonly record struct PossibleDose(InstantRange At, bool IsCertainlyDue);

/// <summary>
/// Every verdict that some reading of the times allows. For one reading: kept when a due dose lies limit to window minutes
/// before the start; else short when the nearest lies under the limit; else early when one lies between window and 240;
/// else none. A dose whose medicine is not named may be due or not.
/// </summary>
internal static class InhalerVerdicts
{
    /// <summary>The verdicts possible; <see cref="GapVerdict.None"/> stands for "no due dose in reach", whoever wrote that day.</summary>
    public static HashSet<GapVerdict> Possible(InstantRange start, IReadOnlyList<PossibleDose> doses, InhalerZones zones)
    {
        var possible = new HashSet<GapVerdict>();
        foreach (var at in Starts(start, doses, zones))
            AddAt(at, doses, zones, possible);
        return possible;
    }

    private static void AddAt(Instant s, IReadOnlyList<PossibleDose> doses, InhalerZones zones, HashSet<GapVerdict> possible)
    {
        var (near, far, reach) = (s - zones.LimitDuration, s - zones.WindowDuration, s - InhalerZones.ReachDuration);
        bool Within(InstantRange d, Instant from, Instant to) => d.Earliest >= from && d.Latest <= to;

        if (doses.Any(d => d.At.Latest >= far && d.At.Earliest <= near)) possible.Add(GapVerdict.Kept);
        if (doses.Any(d => d.IsCertainlyDue && Within(d.At, far, near))) return;

        if (doses.Any(d => d.At.Latest > near && d.At.Earliest <= s)) possible.Add(GapVerdict.Short);

        // A dose that cannot lie before the window, nor after the start, leaves no room for "early" by another.
        var nearer = doses.Select((d, i) => (d, i)).Where(p => p.d.IsCertainlyDue && Within(p.d.At, far, s)).Select(p => p.i).Take(2).ToList();
        bool OthersCanBeAway(int i) => nearer.Count == 0 || (nearer.Count == 1 && nearer[0] == i);
        for (var i = 0; i < doses.Count; i++)
            if (doses[i].At.Latest >= reach && doses[i].At.Earliest < far && OthersCanBeAway(i))
                possible.Add(GapVerdict.Early);

        if (!doses.Any(d => d.IsCertainlyDue && Within(d.At, reach, s))) possible.Add(GapVerdict.None);
    }

    /// <summary>The starts at which the answer can change, and one between each two of them.</summary>
    private static IEnumerable<Instant> Starts(InstantRange start, IReadOnlyList<PossibleDose> doses, InhalerZones zones)
    {
        if (start.Earliest == start.Latest) return [start.Earliest];
        Duration[] edges = [Duration.Zero, zones.LimitDuration, zones.WindowDuration, InhalerZones.ReachDuration];
        var turns = doses.SelectMany(d => edges.SelectMany(e => new[] { d.At.Earliest + e, d.At.Latest + e }))
            .Where(t => t > start.Earliest && t < start.Latest)
            .Append(start.Earliest).Append(start.Latest)
            .Distinct().Order().ToList();
        return turns.Concat(turns.Zip(turns.Skip(1), (a, b) => a + ((b - a) / 2)));
    }
}
