using System.Globalization;
using CareRecords.Records;
using NodaTime.Text;

namespace CareRecords.Simulation;

/// <summary>Writes a simulated log as the canonical tables, one CSV file a kind.</summary>
public static class SimulatedTables
{
    private static readonly LocalDateTimePattern Minute = LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd HH:mm");

    /// <summary>Writes sessions, feeds, medicines, checks, signs and plan into an existing folder.</summary>
    public static void Write(CareLog log, string folder)
    {
        Table(folder, "sessions", "started,ended,left lower,left upper,left vibration,right lower,right upper,right vibration", log.Entries.OfType<Session>(),
            s => [Time(s.Start), Time(s.End), .. s.Areas.Select(a => Number(a.Minutes))]);
        Table(folder, "feeds", "started,ended,ml,route", log.Entries.OfType<Feed>(),
            f => [Time(f.Start), Time(f.End), Number(f.Millilitres), f.Route == FeedRoute.PumpedTube ? "pump" : "bolus"]);
        Table(folder, "medicines", "given,medicine,amount,route", log.Entries.OfType<Dose>(), d => [Time(d.Start), d.Medicine, d.Amount ?? "", d.Route ?? ""]);
        Table(folder, "checks", "checked,spo2,pulse,oxygen,phase", log.Entries.OfType<Check>(),
            c => [Time(c.Start), Number(c.SpO2), Number(c.Pulse), Number(c.OxygenLitresPerMinute), c.Phase == CheckPhase.None ? "" : c.Phase.ToString().ToLowerInvariant()]);
        Table(folder, "signs", "noticed,sign,value", log.Entries.OfType<Sign>(), s => [Time(s.Start), s.What, s.Value ?? ""]);
        Table(folder, "plan", "from,item,value", log.Plan.Rows,
            r => [r.From is { } from ? LocalDatePattern.Iso.Format(from) : "", PlanItems.Describe(r.Item).Name, r.Value]);
    }

    private static void Table<T>(string folder, string name, string header, IEnumerable<T> rows, Func<T, IEnumerable<string>> cells)
    {
        using var writer = new StreamWriter(Path.Combine(folder, name + ".csv")) { NewLine = "\n" };
        writer.WriteLine(header);
        foreach (var row in rows) writer.WriteLine(string.Join(',', cells(row)));
    }

    private static string Time(UncertainTime? time) => time is null ? "" : Minute.Format(time.Stated);

    private static string Number(double? number) => number?.ToString("0.###", CultureInfo.InvariantCulture) ?? "";
}
