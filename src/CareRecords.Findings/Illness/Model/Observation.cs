namespace CareRecords.Findings.Modelling;

/// <summary>One written signal as the illness model sees it: numbers only, no words.</summary>
/// <param name="Hours">Hours from the start of the first care day.</param>
/// <param name="SpO2">Saturation at rest, per cent; null when none was written.</param>
/// <param name="Oxygen">Oxygen flow, L/min (0 is air); null when not written.</param>
/// <param name="Sign">True when a sign of illness was noted then (unwell, fever, antibiotic, admitted …).</param>
internal readonly record struct Observation(double Hours, double? SpO2, double? Oxygen, bool Sign)
{
    /// <summary>The care day, counted from 0.</summary>
    public int Day => (int)Math.Floor(Hours / 24);
}
