using NodaTime;

namespace CareRecords.Simulation;

/// <summary>What a simulated child's days and notes are like. The analysis never sees these, nor the truth made from them.</summary>
public sealed record SimulationOptions
{
    /// <summary>Seed: the same seed gives the same child.</summary>
    public required int Seed { get; init; }

    /// <summary>Care days.</summary>
    public int Days { get; init; } = 150;

    /// <summary>First care day.</summary>
    public LocalDate FirstDay { get; init; } = new(2026, 1, 12);

    /// <summary>IANA zone.</summary>
    public string Zone { get; init; } = "Europe/London";

    /// <summary>Spot checks a day beside those at sessions.</summary>
    public int ChecksPerDay { get; init; } = 4;

    /// <summary>Standard deviation of a reading about the child's true saturation, points.</summary>
    public double Noise { get; init; } = 1.0;

    /// <summary>Correlation of one reading's error with the next; 0 for independent errors.</summary>
    public double NoiseCorrelation { get; init; }

    /// <summary>Whether the child gets extra oxygen when saturation falls.</summary>
    public bool GetsExtraOxygen { get; init; }

    /// <summary>Share of readings beside which the flow is written.</summary>
    public double OxygenWritten { get; init; } = 0.8;

    /// <summary>Share of feeds written.</summary>
    public double FeedsWritten { get; init; } = 1;

    /// <summary>Share of days on which nothing at all is written.</summary>
    public double DaysNotWritten { get; init; }

    /// <summary>Share of sessions with a check before and one after.</summary>
    public double SessionsWithChecks { get; init; } = 1;

    /// <summary>Points by which a session lifts saturation for the check after it.</summary>
    public double SessionLift { get; init; }

    /// <summary>Illnesses; null for a number that fits the days (one to four).</summary>
    public int? Illnesses { get; init; }

    /// <summary>Whether the first days of illness have signs written beside the readings.</summary>
    public double SignsWritten { get; init; }

    /// <summary>Written clock times are rounded to this many minutes; 1 for exact.</summary>
    public int RoundedTo { get; init; } = 1;
}
