namespace CareRecords.Statistics;

/// <summary>A table of counts of two groups (rows) by two results (columns).</summary>
/// <param name="A">First group, first result.</param>
/// <param name="B">First group, second result.</param>
/// <param name="C">Second group, first result.</param>
/// <param name="D">Second group, second result.</param>
public sealed record TwoByTwo(int A, int B, int C, int D)
{
    /// <summary>All four counts together.</summary>
    public int Total => A + B + C + D;

    internal int Row1 => A + B;

    internal int Row2 => C + D;

    internal int Column1 => A + C;

    internal void Validate()
    {
        foreach (var count in (ReadOnlySpan<int>)[A, B, C, D])
        {
            ArgumentOutOfRangeException.ThrowIfNegative(count);
        }
    }
}
