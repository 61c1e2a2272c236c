using CareRecords.Records;
using NodaTime;
using NodaTime.TimeZones;

namespace CareRecords.Findings;

/// <summary>
/// Local wall-clock times on the time line of one zone. A time that the autumn change repeats may be either instant, so it
/// spans both. A time that the spring change skipped never happened and is refused on reading; should one come here as a
/// point, it is taken as if the clock had not yet been changed (the offset before the change). The ends of an uncertain
/// time that fall into the skipped hour move to the instant of the change.
/// </summary>
internal sealed class ElapsedTime(DateTimeZone zone)
{
    private static readonly ZoneLocalMappingResolver AsIfNotYetChanged =
        Resolvers.CreateMappingResolver(Resolvers.ReturnEarlier, Resolvers.ReturnForwardShifted);

    public DateTimeZone Zone => zone;

    public InstantRange Of(UncertainTime time)
    {
        if (time.IsExact) return OfPoint(time.Stated);
        var (first, last) = (zone.MapLocal(time.Earliest), zone.MapLocal(time.Latest));
        var earliest = first.Count == 0 ? first.LateInterval.Start : first.First().ToInstant();
        var latest = last.Count == 0 ? last.LateInterval.Start : last.Last().ToInstant();
        return new(earliest, Instant.Max(earliest, latest));
    }

    /// <summary>The one instant to place a stated time by: the earlier where the clock repeats it.</summary>
    public Instant Stated(LocalDateTime at) => zone.ResolveLocal(at, AsIfNotYetChanged).ToInstant();

    private InstantRange OfPoint(LocalDateTime at)
    {
        var mapping = zone.MapLocal(at);
        return mapping.Count == 0
            ? InstantRange.At(Stated(at))
            : new(mapping.First().ToInstant(), mapping.Last().ToInstant());
    }
}
