namespace CareRecords.Import.Tables.Layouts;

/// <summary>Reads a cell that only says that something began or ended ("pump" beside "off").</summary>
internal static class OnOff
{
    /// <summary>True for an end, false for a beginning; null for any other words.</summary>
    public static bool? Ends(string text) => text.Trim().TrimEnd('.').ToLowerInvariant() switch
    {
        "off" or "stop" or "stopped" or "end" or "ended" or "finish" or "finished" or "done" or "out" or "disconnected" or "down" => true,
        "on" or "start" or "started" or "begin" or "began" or "begun" or "connected" or "up" => false,
        _ => null,
    };
}
