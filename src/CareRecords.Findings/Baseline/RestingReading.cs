using CareRecords.Records;
using NodaTime;

namespace CareRecords.Findings;

/// <summary>How a reading's flow stands to the usual one.</summary>
internal enum FlowState
{
    /// <summary>Not written, and flows are written elsewhere.</summary>
    Unknown,

    /// <summary>At the usual flow, or not written by a family that never writes another.</summary>
    Usual,

    /// <summary>Above.</summary>
    Above,

    /// <summary>Below.</summary>
    Below,
}

/// <summary>A saturation at rest: not during nor after a session.</summary>
/// <param name="At">When.</param>
/// <param name="Day">Its care day.</param>
/// <param name="SpO2">Per cent; the middle of a range.</param>
/// <param name="Flow">How its oxygen stands to the usual.</param>
/// <param name="Check">The check as written.</param>
internal sealed record RestingReading(Instant At, LocalDate Day, double SpO2, FlowState Flow, Check Check);
