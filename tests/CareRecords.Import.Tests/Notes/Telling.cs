using CareRecords.Import.Notes;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Tests.Notes;

/// <summary>Reads invented lines of notes, and writes what was read as one text ("07:10 session LL3 RL3; 07:10 check 95").</summary>
internal static class Telling
{
    /// <summary>Notes of Tuesday 4 March 2025.</summary>
    public static NotesReading Read(params string[] lines) => Whole(["Tue 4 March 2025", .. lines]);

    /// <summary>Notes with lines above their first day.</summary>
    public static NotesReading Whole(params string[] lines) => NotesReader.Read(new SourceText("n.txt", lines), new ReadingContext { NotAfter = new LocalDate(2025, 3, 20), DateOrder = DateOrder.DayMonthYear });

    /// <summary>The events in the order of their times.</summary>
    public static string Told(NotesReading reading) => string.Join("; ", reading.Entries.OrderBy(e => e.When.Stated).Select(e => Clock(e.Start) + (e.End is null ? "" : "-" + Clock(e.End)) + " " + e switch
    {
        Session s => "session " + string.Join(' ', s.Areas.Select(a => $"{a.Side.ToString()[0]}{a.Area.ToString()[0]}{a.Minutes}")),
        Feed f => $"feed {f.Millilitres}{(f.MillilitresPerHour is { } rate ? $"@{rate}" : "")}",
        Dose d => $"{d.Medicine} {d.Amount}",
        Check c => $"check {c.SpO2}{(c.SpO2High is { } high ? $"-{high}" : "")}{(c.OxygenLitresPerMinute is { } flow ? System.FormattableString.Invariant($" on {flow}") : "")}",
        Sign s => $"{s.What} {s.Value}",
        _ => "?",
    }).Select(s => s.TrimEnd()));

    private static string Clock(UncertainTime? time) => time?.Stated.TimeOfDay.ToString("HH:mm", null) ?? "";
}
