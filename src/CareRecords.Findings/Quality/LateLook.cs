using CareRecords.Records;

namespace CareRecords.Findings;

/// <summary>What in the times looks written later or together. Said in words that accuse nobody.</summary>
internal static class LateLook
{
    private const int LeastDays = 7;
    private const double MostlyShare = 0.8;

    public static IReadOnlyList<string> Of(ChildRecords records)
    {
        var found = new List<string>();
        var stamped = records.Entries.Count(e => e.When.Precision == TimePrecision.MessageStamp);
        if (stamped > 0) found.Add($"{Words.Count(stamped, "entry carries", "entries carry")} the time of the message, which may be later than the event.");

        var exact = records.Sessions.Where(s => s.When.IsExact).GroupBy(records.DayOf).Select(g => string.Join(", ", g.Select(s => Words.Clock(s.When.Stated)))).ToList();
        if (exact.Count >= LeastDays && exact.GroupBy(t => t).OrderByDescending(g => g.Count()).First() is var most && most.Count() >= MostlyShare * exact.Count)
            found.Add($"Sessions stand at the same clock times ({most.Key}) on {most.Count()} of {Words.Count(exact.Count, "day", "days")}: entries look written together or to the plan.");
        return found;
    }
}
