namespace CareRecords.Findings.Modelling;

/// <summary>What the illness model has to know beside the observations.</summary>
internal sealed record IllnessModelInput
{
    /// <summary>Care days from the first to the last, both counted.</summary>
    public required int CareDays { get; init; }

    /// <summary>
    /// Usual oxygen by care day, L/min: <see cref="CareDays"/> values. A null list: not known, and then no flow is
    /// taken for raised.
    /// </summary>
    public IReadOnlyList<double>? UsualOxygen { get; init; }

    /// <summary>A first guess of the usual saturation, per cent, used only where the readings alone cannot say which days were well; null for none.</summary>
    public double? BaselineGuess { get; init; }
}
