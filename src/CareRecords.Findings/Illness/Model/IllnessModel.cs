namespace CareRecords.Findings.Modelling;

/// <summary>Illness episodes by a model over all readings, flows and signs.</summary>
internal static class IllnessModel
{
    /// <summary>Fits the model. Same input, same answer: no random numbers are used.</summary>
    /// <param name="readings">Observations in any order; those outside the care days are left out.</param>
    /// <param name="input">What else is known.</param>
    public static IllnessModelResult Fit(IReadOnlyList<Observation> readings, IllnessModelInput input) =>
        new() { Missing = readings.Count == 0 || input.CareDays == 0 ? "no readings" : "not fitted" };
}
