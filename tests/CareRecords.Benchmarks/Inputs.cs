using System.Globalization;
using CareRecords.Simulation;
using NodaTime;

namespace CareRecords.Benchmarks;

/// <summary>Makes what is measured: canonical tables of one simulated child, long notes, a long table. The same every time.</summary>
internal sealed class Inputs(string folder)
{
    public const int NoteLines = 1_000_000;
    public const int CheckRows = 1_000_000;

    public string Month => Child("month", 31);

    public string Year => Child("year", 365);

    public string TenYears => Child("ten-years", 3653);

    /// <summary>A night book of a day's lines over and over: dates, sessions, feeds, doses, readings, and sentences that are no record.</summary>
    public string Notes => Made("notes.txt", path =>
    {
        using var text = new StreamWriter(path) { NewLine = "\n" };
        var day = new LocalDate(1998, 1, 1);
        for (var line = 0; line < NoteLines; line += NotesOfADay.Length + 1, day = day.PlusDays(1))
        {
            text.WriteLine(day.ToString("d MMMM yyyy", CultureInfo.InvariantCulture));
            for (var i = 0; i < NotesOfADay.Length && line + i + 1 < NoteLines; i++) text.WriteLine(NotesOfADay[i]);
        }
    });

    /// <summary>One reading every nine minutes for seventeen years.</summary>
    public string Checks => Made("checks.csv", path =>
    {
        using var table = new StreamWriter(path) { NewLine = "\n" };
        table.WriteLine("checked,spo2,pulse,oxygen,phase,note");
        var at = new LocalDateTime(2008, 1, 1, 0, 0);
        for (var row = 0; row < CheckRows; row++, at = at.PlusMinutes(9))
            table.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{at:yyyy-MM-dd HH:mm},{91 + (row * 7 % 8)},{95 + (row * 11 % 40)},{(row % 5 == 0 ? "0.5" : "0")},,"));
    });

    private static readonly string[] NotesOfADay =
    [
        "7:00 salbutamol 4 puffs",
        "7.15 physio 2.5 min each area both sides, sats 94 before 96 after",
        "feed 9-9:40 180ml",
        "lovely walk to the park, ate a biscuit",
        "1pm sats 95 in air pulse 110",
        "feed stopped 17:45",
        "6.30pm physio lower 3 upper 3 vibs 2 each side",
        "sats 93, 0.5L, up to 96 after 10 min",
        "8pm pump on 60ml/hr",
        "cough a bit wet tonight",
    ];

    private string Child(string name, int days) => Made(name, path =>
    {
        Directory.CreateDirectory(path);
        var (log, _) = SimulatedChild.Make(new SimulationOptions { Seed = 71, Days = days, FirstDay = new LocalDate(2015, 1, 12), GetsExtraOxygen = true, SignsWritten = 0.8, Illnesses = Math.Max(1, days / 60) });
        SimulatedTables.Write(log, path);
    });

    private string Made(string name, Action<string> make)
    {
        var path = Path.Combine(folder, name);
        if (!Path.Exists(path)) make(path);
        return path;
    }
}
