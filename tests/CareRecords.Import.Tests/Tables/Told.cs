using System.Globalization;
using CareRecords.Records;

namespace CareRecords.Import.Tests.Tables;

/// <summary>A log's records in short, for tests that compare all of a table's: "session 03 07:05 LL3 RL3", "check 03 07:05~ 94 before"; "~" for a time not exact.</summary>
internal static class Told
{
    public static IReadOnlyList<string> By(CareLog log) => [.. log.Entries.OrderBy(e => e.When.Stated).ThenBy(Kind, StringComparer.Ordinal).Select(Short)];

    private static string Kind(CareEntry entry) => entry.GetType().Name.ToLowerInvariant();

    private static string Short(CareEntry entry) => string.Join(' ', new[] { Kind(entry), Time(entry.Start), entry.End is { } end ? "to " + Time(end) : null, Values(entry) }.Where(p => !string.IsNullOrEmpty(p)));

    private static string? Time(UncertainTime? time) => time is null ? null
        : time.Precision == TimePrecision.DayOnly ? time.Stated.ToString("dd", CultureInfo.InvariantCulture) + " day" : time.Stated.ToString("dd HH:mm", CultureInfo.InvariantCulture) + (time.IsExact ? "" : "~");

    private static string Values(CareEntry entry) => entry switch
    {
        Session s => string.Join(' ', s.Areas.Select(a => Letter(a.Side) + Letter(a.Area) + (a.Technique == Technique.Vibration ? "v" : "") + Number(a.Minutes)).Append(s.Areas.Count == 0 && s.MinutesWritten is { } all ? Number(all) + " min" : "").Where(p => p.Length > 0)),
        Feed f => string.Join(' ', new[] { f.Millilitres is { } ml ? Number(ml) + " ml" : null, f.MillilitresPerHour is { } rate ? Number(rate) + " ml/h" : null, f.Route == FeedRoute.Unknown ? null : f.Route.ToString() }.OfType<string>()),
        Dose d => $"{d.Medicine} {d.Amount}".Trim(),
        Check c => string.Join(' ', new[] { c.SpO2 is { } sat ? Number(sat) : null, c.Pulse is { } pulse ? "p" + Number(pulse) : null, c.OxygenLitresPerMinute is { } flow ? "o" + Number(flow) : null, c.Phase == CheckPhase.None ? null : c.Phase.ToString().ToLowerInvariant() }.OfType<string>()),
        Sign s => $"{s.What} {(s.Number is { } number ? Number(number) : s.Value)}".Trim(),
        _ => "",
    };

    private static string Letter<T>(T value) where T : struct, Enum => value.ToString() == "Unknown" ? "?" : value.ToString()[..1];

    private static string Number(double? number) => number?.ToString("0.##", CultureInfo.InvariantCulture) ?? "";
}
