namespace CareRecords.Statistics;

/// <summary>Choices of a nonlinear fit.</summary>
public sealed record CurveOptions
{
    /// <summary>
    /// The derivatives of the curve by each parameter at a position; null takes extrapolated differences (about 12 digits
    /// for smooth curves).
    /// </summary>
    public Func<IReadOnlyList<double>, double, IReadOnlyList<double>>? Gradient { get; init; }

    /// <summary>A weight for each point, above 0, in proportion to 1/variance; null for equal weights.</summary>
    public IReadOnlyList<double>? Weights { get; init; }
}
