namespace CareRecords.Pooling;

/// <summary>How to pool.</summary>
public sealed record PoolOptions
{
    /// <summary>The smallest number of children that a shown figure may rest on; 1 shows everything.</summary>
    public int SmallestGroup { get; init; } = 5;

    /// <summary>The seed of the bootstrap and of the permutation tests: same inputs and seed, same figures.</summary>
    public int Seed { get; init; } = 20_240_229;

    /// <summary>Bootstrap samples of children.</summary>
    public int BootstrapSamples { get; init; } = 500;

    /// <summary>Permutations of children among groups.</summary>
    public int Permutations { get; init; } = 1_999;
}
