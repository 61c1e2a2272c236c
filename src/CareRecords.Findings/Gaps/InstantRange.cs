using NodaTime;

namespace CareRecords.Findings;

/// <summary>A moment known to lie in a closed interval on the time line.</summary>
/// <param name="Earliest">The earliest instant, included.</param>
/// <param name="Latest">The latest instant, included; not before the earliest.</param>
internal readonly record struct InstantRange(Instant Earliest, Instant Latest)
{
    public static InstantRange At(Instant instant) => new(instant, instant);

    /// <summary>The same moment with room of <paramref name="by"/> on both sides.</summary>
    public InstantRange WidenedBy(Duration by) => new(Earliest - by, Latest + by);

    public InstantRange From(Instant earliest) => new(Instant.Max(Earliest, earliest), Instant.Max(Latest, earliest));

    public InstantRange UpTo(Instant latest) => new(Instant.Min(Earliest, latest), Instant.Min(Latest, latest));
}
