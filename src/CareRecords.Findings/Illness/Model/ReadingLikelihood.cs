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
    private const double Loose = 0.03, LooseRange = 40, MostShown = 5;

    /// <summary>The likelihood of a reading of <paramref name="spo2"/> written to within ±<paramref name="half"/>.</summary>
    public static double Of(double spo2, double truth, double sd, double half)
    {
        var top = spo2 >= 100 - half ? 1 : Below(spo2 + half, truth, sd);
        return ((1 - Loose) * Math.Max(0, top - Below(spo2 - half, truth, sd))) + (Loose * 2 * half / LooseRange);
    }

    /// <summary>
    /// The same on raised oxygen, which hides an unknown part of the deficit: a saturation at usual says nothing of it, and one well under
    /// usual says that the deficit is at least so large.
    /// </summary>
    /// <remarks>
    /// Its density is that of a shown deficit anywhere from none to <see cref="MostShown"/> points, times a bound: the normal probability that
    /// the shown deficit less two standard deviations is not more than the whole. (A likelihood that averaged each reading over its hidden
    /// part would take twenty readings at usual for twenty proofs of a small deficit.)
    /// </remarks>
    public static double OfHidden(double spo2, double baseline, double deficit, double sd, double half)
    {
        const int parts = 8;
        var sum = 0.0;
        for (var i = 0; i < parts; i++) sum += Of(spo2, baseline - (MostShown * i / (parts - 1)), sd, half);
        return sum / parts * Math.Max(1e-3, Below(deficit, baseline - spo2 - (2 * sd), sd));
    }

    /// <summary>How the readings are rounded: ±0.5 when most are whole, otherwise ±0.05.</summary>
    public static double HalfStep(IReadOnlyCollection<double> readings) =>
        2 * readings.Count(r => Math.Abs(r - Math.Round(r)) < 1e-6) >= readings.Count ? 0.5 : 0.05;

    private static double Below(double edge, double truth, double sd) => 0.5 * SpecialFunctions.Erfc((truth - edge) / (sd * Constants.Sqrt2));
}
