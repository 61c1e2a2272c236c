namespace CareRecords.Pooling;

/// <summary>Saturations at one oxygen flow, never pooled across flows.</summary>
/// <param name="OxygenLitresPerMinute">The flow, L/min; 0 is air; null: flow not written.</param>
/// <param name="Readings">Readings.</param>
/// <param name="Days">Care days with such a reading.</param>
/// <param name="Median">Median, per cent.</param>
/// <param name="LowerQuartile">Lower quartile, per cent.</param>
/// <param name="UpperQuartile">Upper quartile, per cent.</param>
/// <param name="Lowest">Lowest reading, per cent.</param>
/// <param name="Highest">Highest reading, per cent.</param>
public sealed record SharedSaturation(
    double? OxygenLitresPerMinute, int Readings, int Days, double Median, double LowerQuartile, double UpperQuartile, double Lowest, double Highest);
