using MathNet.Numerics;

namespace CareRecords.Findings.Modelling;

/// <summary>How likely a written saturation is, given the child's true one.</summary>
/// <remarks>
/// Normal about the truth, rounded as the family rounds (a whole per cent or a tenth), never over 100, and mixed with a share of readings that
/// say nothing (a loose probe): uniform over the 40 points under 100. An oximeter's accuracy is stated as a root-mean-square error
/// (ISO 80601-2-61), which a normal spread describes.
/// </remarks>
internal static class ReadingLikelihood
{
    private const double Loose = 0.03, LooseRange = 40;

    /// <summary>The likelihood of a reading of <paramref name="spo2"/> written to within ±<paramref name="half"/>.</summary>
    public static double Of(double spo2, double truth, double sd, double half)
    {
        var top = spo2 >= 100 - half ? 1 : Below(spo2 + half, truth, sd);
        return ((1 - Loose) * Math.Max(0, top - Below(spo2 - half, truth, sd))) + (Loose * 2 * half / LooseRange);
    }

    /// <summary>The same on raised oxygen, which hides an unknown part of the deficit: any part from none to all is equally likely.</summary>
    public static double OfHidden(double spo2, double baseline, double deficit, double sd, double half)
    {
        const int parts = 8;
        if (deficit <= 0) return Of(spo2, baseline, sd, half);
        var sum = 0.0;
        for (var i = 0; i < parts; i++) sum += Of(spo2, baseline - (deficit * (i + 0.5) / parts), sd, half);
        return sum / parts;
    }

    /// <summary>How the readings are rounded: ±0.5 when all are whole, otherwise ±0.05.</summary>
    public static double HalfStep(IEnumerable<double> readings) => readings.All(r => Math.Abs(r - Math.Round(r)) < 1e-6) ? 0.5 : 0.05;

    private static double Below(double edge, double truth, double sd) => 0.5 * SpecialFunctions.Erfc((truth - edge) / (sd * Constants.Sqrt2));
}
