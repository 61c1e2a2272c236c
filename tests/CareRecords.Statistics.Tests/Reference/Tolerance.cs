namespace CareRecords.Statistics.Tests.Reference;

/// <summary>
/// How near a figure must come, relative to its size, from "digits to trust" in tests/reference/README.md. Closed forms
/// are held to 1e-11: all twelve digits printed there, less the rounding of the last.
/// </summary>
internal static class Tolerance
{
    private const double AllDigits = 1e-11;
    private const double FourDigits = 2e-4;

    public static double Relative(ReferenceFigure f) => f switch
    {
        // fisher.test stops its root finder at about 1e-4 on the odds; its upper limit is off by 0.7 % (see the README).
        { Dataset: "1.3", Quantity: "exact 95% CI of odds ratio [upper]" } or { Dataset: "1.4", Quantity: "CI [upper]" } => 1e-2,
        { Dataset: "1.3" or "1.4", Quantity: var q } when q.Contains("MLE", StringComparison.Ordinal) || q.Contains("CI [", StringComparison.Ordinal)
            || q.Contains("95% CI", StringComparison.Ordinal) => FourDigits,
        { Dataset: "6.3", Quantity: var q } when q.StartsWith("normal approximation", StringComparison.Ordinal) && !q.EndsWith("[p]", StringComparison.Ordinal) => FourDigits,
        _ => AllDigits,
    };

    /// <summary>Figures that are zero up to rounding are compared absolutely.</summary>
    public static bool Agrees(ReferenceFigure expected, double actual) =>
        double.IsNaN(expected.Value) ? double.IsNaN(actual)
        : double.IsInfinity(expected.Value) ? actual.Equals(expected.Value)
        : Math.Abs(actual - expected.Value) <= Relative(expected) * Math.Max(Math.Abs(expected.Value), Floor(expected));

    private static double Floor(ReferenceFigure f) => f.Value == 0 ? 1 : 0;
}
