namespace CareRecords.Pooling;

/// <summary>What came of one input of a pool: a child, or a refusal with its reason.</summary>
public abstract record SharedInput
{
    private protected SharedInput(string file) => File = file;

    /// <summary>The file (or the folder and child of a tidy folder) by the name that the user gave.</summary>
    public string File { get; }
}

/// <summary>A shared workbook that was read whole.</summary>
public sealed record SharedChild : SharedInput
{
    /// <summary>Makes the input.</summary>
    /// <param name="file">The file.</param>
    /// <param name="findings">What it holds.</param>
    public SharedChild(string file, SharedFindings findings) : base(file) => Findings = findings;

    /// <summary>What it holds.</summary>
    public SharedFindings Findings { get; }
}

/// <summary>A file that is left out of the pool.</summary>
public sealed record RefusedInput : SharedInput
{
    /// <summary>Makes the refusal.</summary>
    /// <param name="file">The file.</param>
    /// <param name="why">Why, in a sentence without the file's own words.</param>
    public RefusedInput(string file, string why) : base(file) => Why = why;

    /// <summary>Why, in a sentence.</summary>
    public string Why { get; }
}
