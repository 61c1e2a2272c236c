namespace CareRecords.Statistics;

/// <summary>A named outcome: the data cannot support what was asked.</summary>
/// <param name="Method">The estimator that was asked.</param>
/// <param name="Count">How many observations it was given.</param>
/// <param name="Smallest">How many it accepts at least.</param>
/// <param name="Reason">What was lacking, in plain words.</param>
public sealed record TooLittleData(string Method, int Count, int Smallest, string Reason)
{
    /// <summary>One sentence for a reader.</summary>
    public override string ToString() => $"{Method}: {Reason} ({Count} given, at least {Smallest} needed)";
}
