namespace CareRecords.Findings.Modelling;

/// <summary>The course of saturation at usual oxygen through an episode, with its band.</summary>
/// <remarks>
/// The band is the 95 % range of the deficit in a step and its two neighbours (within a step of six hours a child may pass from one to the
/// next), with the 95 % limits of the usual saturation and a tenth of a point added: smaller deficits are not told from none.
/// </remarks>
internal static class ReturnCurve
{
    private const double NotTold = 0.1, Tail = 0.025;

    /// <summary>From the start of the onset's care day to the end of a step: a point in the middle of each step, per cent.</summary>
    public static IReadOnlyList<CurvePoint> Of(int onsetDay, int lastStep, DeficitPosterior posterior, UsualSaturation usual)
    {
        var first = (int)Math.Round(onsetDay / DeficitTransitions.StepDays);
        return [.. Enumerable.Range(first, Math.Max(0, lastStep - first + 1)).Select(step => PointAt(step, onsetDay, posterior, usual))];
    }

    private static CurvePoint PointAt(int step, int onsetDay, DeficitPosterior posterior, UsualSaturation usual)
    {
        var day = Math.Min(usual.Offsets.Count - 1, (int)(step * DeficitTransitions.StepDays));
        var centre = usual.Centre + usual.Offsets[day];
        var reach = NotTold + (1.96 * usual.ErrorOn(day));
        var around = Enumerable.Range(step - 1, 3).Where(s => s >= 0 && s < posterior.Steps).ToList();
        return new CurvePoint(
            ((step + 0.5) * DeficitTransitions.StepDays) - onsetDay,
            centre - posterior.MeanDeficit(step),
            centre - around.Max(s => posterior.DeficitQuantile(s, 1 - Tail)) - reach,
            Math.Min(100, centre - around.Min(s => posterior.DeficitQuantile(s, Tail)) + reach));
    }
}
