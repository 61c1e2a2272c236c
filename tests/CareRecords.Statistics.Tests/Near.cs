namespace CareRecords.Statistics.Tests;

/// <summary>Comparison of doubles that differ only by rounding.</summary>
internal static class Near
{
    /// <summary>Equal to twelve digits (absolutely near zero): room for the rounding of a few hundred operations.</summary>
    public static void Equal(double expected, double actual, double relative = 1e-12) =>
        Assert.True(
            Math.Abs(actual - expected) <= relative * Math.Max(1, Math.Abs(expected)),
            $"expected {expected:R}, got {actual:R}");
}
