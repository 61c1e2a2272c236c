namespace CareRecords.Findings.Modelling;

/// <summary>The course of saturation at usual oxygen through an episode, with its band.</summary>
internal static class ReturnCurve
{
    /// <summary>By step from the start of the onset's care day to the end of a step: posterior mean and the 2.5 % and 97.5 % points, per cent.</summary>
    public static IReadOnlyList<CurvePoint> Of(int onsetDay, int lastStep, DeficitPosterior posterior, UsualSaturation usual)
    {
        var first = (int)Math.Round(onsetDay / DeficitTransitions.StepDays);
        double UsualAt(int step) => usual.Centre + usual.Offsets[Math.Min(usual.Offsets.Count - 1, (int)(step * DeficitTransitions.StepDays))];
        return [.. Enumerable.Range(first, Math.Max(0, lastStep - first + 1)).Select(t => new CurvePoint(
            ((t + 0.5) * DeficitTransitions.StepDays) - onsetDay,
            UsualAt(t) - posterior.MeanDeficit(t),
            UsualAt(t) - posterior.DeficitQuantile(t, 0.975),
            UsualAt(t) - posterior.DeficitQuantile(t, 0.025)))];
    }
}
