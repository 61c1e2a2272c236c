namespace CareRecords.Findings.Modelling;

/// <summary>The child's usual saturation and the spread of one reading about it.</summary>
/// <param name="Centre">The centre over the record, per cent.</param>
/// <param name="StandardError">Standard error of the centre, points: the larger of that of dependent readings and that of whole weeks.</param>
/// <param name="Offsets">By care day, how far the usual of that time lies from the centre, points: a slow drift.</param>
/// <param name="OffsetErrors">By care day, the standard error of the usual of that time, points.</param>
/// <param name="Sd">Standard deviation of one reading, points.</param>
/// <param name="Dependence">How many times larger the variance of a day's mean is than independent readings would give.</param>
/// <param name="WellDays">Well days, by weight.</param>
/// <param name="Readings">Readings on well days, by weight.</param>
internal sealed record UsualSaturation(
    double Centre, double StandardError, IReadOnlyList<double> Offsets, IReadOnlyList<double> OffsetErrors, double Sd, double Dependence, double WellDays, double Readings)
{
    /// <summary>The usual saturation on a care day, per cent, to a twentieth of a point.</summary>
    public double On(int day) => Math.Round((Centre + Offsets[day]) * 20) / 20;

    /// <summary>The standard error of the usual saturation on a care day, points.</summary>
    public double ErrorOn(int day) => Math.Sqrt((OffsetErrors[day] * OffsetErrors[day]) + (StandardError * StandardError));

    /// <summary>The same child, with every day's usual moved by some of its standard errors.</summary>
    public UsualSaturation Moved(double errors) =>
        this with { Offsets = [.. Offsets.Select((o, d) => o + (errors * ErrorOn(d)))] };
}

/// <summary>A reading with the probability that the child was well and at usual oxygen.</summary>
internal readonly record struct WeightedReading(int Day, double SpO2, double Weight);
