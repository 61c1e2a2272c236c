using System.Globalization;
using CareRecords.Records;
using NodaTime.Text;

namespace CareRecords.Import.Merging;

/// <summary>Lists the fields in which two writings of one event differ. A field that one of them leaves out is no difference.</summary>
internal static class Differences
{
    private static readonly LocalDateTimePattern Minute = LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd HH:mm");

    /// <summary>The differences, the kept writing first.</summary>
    public static IReadOnlyList<MergeDifference> Between(CareEntry kept, CareEntry other) =>
    [
        .. Fields(kept).Join(Fields(other), f => f.Name, f => f.Name, (a, b) => new MergeDifference(a.Name, a.Value, b.Value))
            .Where(d => !string.Equals(d.Kept.Trim(), d.Other.Trim(), StringComparison.OrdinalIgnoreCase)),
    ];

    private static IEnumerable<(string Name, string Value)> Fields(CareEntry entry) => All(entry).Where(f => f.Value is not null).Select(f => (f.Name, f.Value!));

    private static IEnumerable<(string Name, string? Value)> All(CareEntry entry)
    {
        yield return ("started", Time(entry.Start));
        yield return ("ended", Time(entry.End));
        switch (entry)
        {
            case Session s:
                yield return ("minutes", Number(s.TotalMinutes));
                foreach (var area in s.Areas.GroupBy(a => (a.Side, a.Area, a.Technique)))
                    yield return ($"{area.Key.Side} {area.Key.Area} {area.Key.Technique}".ToLowerInvariant(), Number(area.Sum(a => a.Minutes)));
                break;
            case Feed f:
                yield return ("ml", Number(f.Millilitres));
                yield return ("ml per hour", Number(f.MillilitresPerHour));
                yield return ("route", f.Route == FeedRoute.Unknown ? null : f.Route.ToString());
                break;
            case Dose d:
                yield return ("medicine", d.Medicine == Medicines.Unknown ? null : d.Medicine);
                yield return ("amount", d.Amount);
                break;
            case Check c:
                yield return ("spo2", Number(c.SpO2));
                yield return ("pulse", Number(c.Pulse));
                yield return ("oxygen", Number(c.OxygenLitresPerMinute));
                yield return ("phase", c.Phase == CheckPhase.None ? null : c.Phase.ToString());
                break;
            case Sign g:
                yield return ("value", g.Value);
                break;
        }
    }

    private static string? Time(UncertainTime? time) => time is null ? null : Minute.Format(time.Stated);

    private static string? Number(double? number) => number?.ToString("0.###", CultureInfo.InvariantCulture);
}
