namespace CareRecords.Pooling;

/// <summary>A kind of record.</summary>
public enum RecordKind
{
    /// <summary>Sessions.</summary>
    Sessions,

    /// <summary>Feeds.</summary>
    Feeds,

    /// <summary>Medicines.</summary>
    Medicines,

    /// <summary>Checks.</summary>
    Checks,

    /// <summary>Signs.</summary>
    Signs,
}

/// <summary>How complete one kind of record is.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="Entries">Entries.</param>
/// <param name="Days">Care days with at least one.</param>
/// <param name="Approximate">Entries whose time is not exact.</param>
public sealed record SharedCompleteness(RecordKind Kind, int Entries, int Days, int Approximate);
