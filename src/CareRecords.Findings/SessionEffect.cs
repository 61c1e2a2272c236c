namespace CareRecords.Findings;

/// <summary>Saturation after less before, same session, same oxygen, in points of per cent.</summary>
/// <param name="Pairs">Pairs used.</param>
/// <param name="PairsLeftOut">Pairs left out because the oxygen changed or was not written for one of them.</param>
/// <param name="MedianChange">Hodges-Lehmann median change; null when too few.</param>
/// <param name="Low">Lower limit, distribution-free; null when too few.</param>
/// <param name="High">Upper limit.</param>
/// <param name="Level">Achieved level of the interval, 0 to 1; null when too few.</param>
/// <param name="Method">How it was worked out, or why not.</param>
/// <param name="OximeterNote">The oximeter's own accuracy, and regression to the mean, in words.</param>
/// <param name="ByFlow">The same at each flow.</param>
public sealed record SessionEffect(
    int Pairs, int PairsLeftOut, double? MedianChange, double? Low, double? High, double? Level, string Method, string OximeterNote,
    IReadOnlyList<SessionEffectAtFlow> ByFlow);

/// <summary>The change at one oxygen flow.</summary>
/// <param name="OxygenLitresPerMinute">L/min.</param>
/// <param name="Pairs">Pairs.</param>
/// <param name="MedianChange">Median change in points; null when too few.</param>
/// <param name="Low">Lower limit; null when too few.</param>
/// <param name="High">Upper limit; null when too few.</param>
public sealed record SessionEffectAtFlow(double OxygenLitresPerMinute, int Pairs, double? MedianChange, double? Low, double? High);
