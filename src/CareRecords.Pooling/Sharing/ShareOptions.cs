namespace CareRecords.Pooling;

/// <summary>What a shared workbook says beside the figures.</summary>
public sealed record ShareOptions
{
    /// <summary>The child's code.</summary>
    public required ChildCode Child { get; init; }

    /// <summary>The child's age band; null to take the plan's "age band" where the family wrote one, else not given.</summary>
    public AgeBand? AgeBand { get; init; }

    /// <summary>The study's group; null to take the plan's "study group" where the family wrote one, else not given.</summary>
    public StudyGroup? StudyGroup { get; init; }
}
