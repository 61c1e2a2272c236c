namespace CareRecords.Findings;

/// <summary>How complete, how exact and how contemporaneous the records are.</summary>
public sealed record QualityFindings
{
    /// <summary>Care days in the span.</summary>
    public required int Days { get; init; }

    /// <summary>Care days on which anything was written.</summary>
    public required int DaysWithRecords { get; init; }

    /// <summary>By kind of record: days with at least one, entries, entries with an approximate time.</summary>
    public required IReadOnlyList<KindCompleteness> ByKind { get; init; }

    /// <summary>Last-digit heaping of clock minutes over exact times.</summary>
    public required DigitPreference ClockMinutes { get; init; }

    /// <summary>Entries that look written later or together, in words; wording never accuses.</summary>
    public IReadOnlyList<string> LateEntries { get; init; } = [];

    /// <summary>Saturation readings without a flow.</summary>
    public int ReadingsWithoutOxygen { get; init; }

    /// <summary>What is missing that matters, in sentences, most important first.</summary>
    public IReadOnlyList<string> Missing { get; init; } = [];
}

/// <summary>Completeness of one kind of record.</summary>
/// <param name="Kind">"sessions", "feeds", "medicines", "checks", "signs".</param>
/// <param name="Entries">Entries.</param>
/// <param name="Days">Care days with at least one.</param>
/// <param name="Approximate">Entries whose time is not exact.</param>
public sealed record KindCompleteness(string Kind, int Entries, int Days, int Approximate);

/// <summary>Digit preference of minutes past the hour.</summary>
/// <param name="Times">Exact clock times looked at.</param>
/// <param name="MultiplesOfFive">Share ending in 0 or 5; expected 0.20 without heaping; null when no time.</param>
/// <param name="MultiplesOfFifteen">Share on the quarter hours; expected 4/60; null when no time.</param>
/// <param name="Index">Whipple-type index: share of multiples of five over expected, ×100; null when no time.</param>
public sealed record DigitPreference(int Times, double? MultiplesOfFive, double? MultiplesOfFifteen, double? Index);
