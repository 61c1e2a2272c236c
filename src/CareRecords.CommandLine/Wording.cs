using System.Diagnostics;
using System.Globalization;
using System.Text;
using CareRecords.Records;
using NodaTime.Text;

namespace CareRecords.CommandLine;

/// <summary>One record in a line of plain words.</summary>
internal static class Wording
{
    private static readonly LocalDateTimePattern Minute = LocalDateTimePattern.CreateWithInvariantCulture("ddd d MMM uuuu HH:mm");

    public static string Of(CareEntry entry)
    {
        var words = new StringBuilder(entry switch
        {
            Session s => "session" + Areas(s) + Number(", ", s.TotalMinutes, " min in all"),
            Feed f => "feed" + Number(" ", f.Millilitres, " ml") + Number(" ", f.MillilitresPerHour, " ml/h") + (f.Route == FeedRoute.Unknown ? "" : $" ({Route(f.Route)})"),
            Dose d => "dose " + d.Medicine + (d.Medicine == Medicines.Unknown && d.MedicineAsWritten is { } w ? $" ('{w}')" : "") + (d.Amount is { } a ? " " + a : ""),
            Check c => "check" + Number(" ", c.SpO2, "") + Number("-", c.SpO2High, "") + (c.SpO2 is null ? "" : " %") + Number(", pulse ", c.Pulse, "")
                + (c.OxygenLitresPerMinute == 0 ? ", in air" : Number(", oxygen ", c.OxygenLitresPerMinute, " L/min"))
                + (c.Phase == CheckPhase.None ? "" : ", " + c.Phase.ToString().ToLowerInvariant()),
            Sign g => "sign " + g.What + (g.Value is { } v ? ": " + v : ""),
            _ => throw new UnreachableException(),
        });
        words.Append("; ").Append(Time(entry));
        if (entry.HowRead is { } how) words.Append(" (").Append(how).Append(')');
        return words.ToString();
    }

    public static string Of(PlanRow row) =>
        $"plan: {PlanItems.Describe(row.Item).Name} {row.Value}" + (row.From is { } from ? " from " + LocalDatePattern.Iso.Format(from) : " (no date given)");

    private static string Time(CareEntry entry) => (entry.Start, entry.End) switch
    {
        ({ } start, { } end) => $"{Time(start)} to {Time(end)}",
        ({ } start, null) => Time(start),
        (null, { } end) => "ended " + Time(end),
        _ => "",
    };

    private static string Time(UncertainTime time) => time.IsExact
        ? Minute.Format(time.Stated) + (time.IsApproximate ? " (borrowed)" : "")
        : $"{Minute.Format(time.Earliest)} .. {Minute.Format(time.Latest)}";

    private static string Areas(Session session) => session.Areas.Count == 0 ? "" : ": " + string.Join(", ", session.Areas.Select(a =>
        string.Join(' ', new[] { a.Side.ToString(), a.Area.ToString(), a.Technique.ToString() }.Where(w => w != "Unknown")).ToLowerInvariant()
        + Number(" ", a.Minutes, "") + Number("-", a.MinutesHigh, "")));

    private static string Route(FeedRoute route) => route switch
    {
        FeedRoute.Oral => "by mouth",
        FeedRoute.PumpedTube => "tube, pump",
        FeedRoute.BolusTube => "tube, bolus",
        _ => "tube",
    };

    // Most numbers are small and whole, and a picture of digits takes ten times as long to follow.
    private static string Number(string before, double? number, string after) =>
        number is not { } n ? ""
        : n is > 0 and < 1000 && n == Math.Floor(n) ? before + ((int)n).ToString(CultureInfo.InvariantCulture) + after
        : before + n.ToString("0.##", CultureInfo.InvariantCulture) + after;
}
