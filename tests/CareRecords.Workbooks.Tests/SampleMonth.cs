using CareRecords.Records;
using NodaTime;

namespace CareRecords.Workbooks.Tests;

/// <summary>An invented month across the spring clock change, written line by line as a family might: an illness, a step up and down, gaps that were short or cannot be told.</summary>
internal static class SampleMonth
{
    public static readonly LocalDate First = new(2026, 3, 16);

    /// <summary>A month of so many days; the same days always give the same log.</summary>
    public static CareLog Log(int days = 21)
    {
        List<CareEntry> entries = [];
        var line = 1;
        SourceLine Written(string file, string text) => SourceLine.InText(file, ++line, text);
        for (var d = 0; d < days; d++)
        {
            if (d == 11) continue; // A day on which nobody wrote.
            var day = First.PlusDays(d);
            var ill = d % 21 is >= 5 and < 12;
            LocalTime[] starts = ill ? [new(7, 10), new(11, 20), new(15, 30), new(19, 5)] : [new(7, 5), new(18, 45)];
            foreach (var (at, n) in starts.Select((t, n) => (t, n)))
            {
                var start = day.At(at).PlusMinutes(d % 3 * 5);
                var minutes = ill ? 3.0 : 2.5;
                var about = d % 7 == 3 && n == 1;
                var text = $"{start.TimeOfDay.ToString("HH:mm", null)} physio {minutes} each";
                entries.Add(new Session
                {
                    Sources = [Written("march.txt", text)],
                    Start = about ? UncertainTime.Between(start.PlusMinutes(-15), start, start.PlusMinutes(15), TimePrecision.About) : UncertainTime.Exactly(start),
                    End = n == 0 ? UncertainTime.Exactly(start.PlusMinutes((long)(minutes * 6) + 4)) : null,
                    Areas = d == 8 && n == 2
                        ? [new(Side.Left, ChestArea.Lower, Technique.Percussion, 3), new(Side.Right, ChestArea.Lower, Technique.Percussion, 3)]
                        : SixAreas(minutes),
                    By = n % 2 == 0 ? "mum" : "dad",
                    StoppedEarly = d == 8 && n == 2 ? "crying" : null,
                    Secretions = ill ? "thick, yellow" : null,
                    HowRead = about ? "'about' read as 15 minutes either way" : null,
                });
                if (d % 5 != 4) entries.Add(Feed(Written, start.PlusMinutes(-(d % 4 == 0 ? 20 : 75)), n == 0 || d % 4 != 1 ? 35 + (d % 2 * 10) : null));
                if (d % 6 != 2)
                {
                    var given = start.PlusMinutes(n == 1 && d % 3 == 1 ? -8 : -20);
                    entries.Add(new Dose { Sources = [Written("march.txt", $"{given.TimeOfDay.ToString("HH:mm", null)} blue 4 puffs")], Start = UncertainTime.Exactly(given), Medicine = "salbutamol", MedicineAsWritten = "blue", Amount = "4 puffs", Route = "spacer" });
                }

                var oxygen = ill ? (d % 21 == 7 ? 1.5 : 1.0) : 0.5;
                var spo2 = (ill ? 90 : 95) + ((d + n) % 3);
                entries.Add(Check(Written, start.PlusMinutes(-5), spo2, oxygen, CheckPhase.Before));
                entries.Add(Check(Written, start.PlusMinutes(30), spo2 + 1 + (d % 2), d == 9 ? null : oxygen, CheckPhase.After));
            }
        }

        entries.Add(Sign(Written, First.PlusDays(5).At(new LocalTime(9, 0)), SignKind.Unwell, "unwell", "not herself", null));
        entries.Add(Sign(Written, First.PlusDays(6).At(new LocalTime(8, 0)), SignKind.Temperature, "temperature", "38.4", 38.4));
        entries.Add(Sign(Written, First.PlusDays(6).At(new LocalTime(9, 0)), SignKind.Antibiotic, "antibiotic", "amoxicillin started", null));
        entries.Add(Sign(Written, First.PlusDays(12).At(new LocalTime(10, 0)), SignKind.Better, "better", null, null));
        return Empty with
        {
            Entries = [.. entries.OrderBy(e => e.When.Stated)],
            Omitted = [new(UncertainTime.Exactly(First.PlusDays(9).At(new LocalTime(21, 0))), "asleep at last", SourceLine.InText("march.txt", 900, "9pm physio skipped, asleep at last"))],
            FamilyQuestions = [SourceLine.InText("march.txt", 901, "ask: was stepping down too soon?")],
            NotRecords = [new(SourceLine.InText("march.txt", 1, "Monday 16th"), "a day heading"), new(SourceLine.InText("march.txt", 902, "=lovely walk @ the park"), "a remark")],
            Problems = [new(SourceLine.InText("march.txt", 903, "sats 930"), "A saturation of 930 % is impossible.", "Write 93 or 90.", ProblemSeverity.Ask, "spo2:930")],
            Questions = [new("spo2:930", "Was 'sats 930' on 20 March 93 or 90?", ["93", "90"], [SourceLine.InText("march.txt", 903, "sats 930")])],
            Lines = new LineCount(line - 1 + 5 + 3, 3, line - 1 + 2, 2, 1),
        };
    }

    /// <summary>A log with a plan and nothing written.</summary>
    public static CareLog Empty { get; } = new()
    {
        Zone = "Europe/London",
        ZoneFrom = "the plan",
        Entries = [],
        Plan = new CarePlan
        {
            Rows =
            [
                Row(null, PlanItem.TimeZone, "Europe/London", null), Row(null, PlanItem.ChildCalled, "Wren", null), Row(null, PlanItem.FeedGapMinutes, "30", 30),
                Row(null, PlanItem.MedicineBeforeSession, "salbutamol", null), Row(null, PlanItem.UsualOxygen, "0.5", 0.5), Row(null, PlanItem.TargetSaturationLow, "92", 92),
                Row(null, PlanItem.TargetSaturationHigh, "97", 97), Row(null, PlanItem.StopSaturation, "88", 88), Row(null, PlanItem.SessionsPerDay, "2", 2), Row(null, PlanItem.MinutesPerArea, "2.5", 2.5),
                Row(First.PlusDays(5), PlanItem.SessionsPerDay, "4", 4), Row(First.PlusDays(5), PlanItem.MinutesPerArea, "3", 3),
                Row(First.PlusDays(12), PlanItem.SessionsPerDay, "2", 2), Row(First.PlusDays(12), PlanItem.MinutesPerArea, "2.5", 2.5),
            ],
        },
        Inputs = [new InputFile("march.txt", "notes", new string('a', 64), null)],
    };

    private static PlanRow Row(LocalDate? from, PlanItem item, string value, double? number) =>
        new(from, item, value, number, number, SourceLine.InText("plan.csv", 2 + (int)item + (from?.Day ?? 0), $"{from},{item},{value}"));

    private static IReadOnlyList<AreaMinutes> SixAreas(double minutes) =>
    [
        .. new[] { Side.Left, Side.Right }.SelectMany(side => new AreaMinutes[]
        {
            new(side, ChestArea.Lower, Technique.Percussion, minutes), new(side, ChestArea.Upper, Technique.Percussion, minutes), new(side, ChestArea.Unknown, Technique.Vibration, minutes),
        }),
    ];

    private static Feed Feed(Func<string, string, SourceLine> written, LocalDateTime start, int? minutes) => new()
    {
        Sources = [written("march.txt", $"{start.TimeOfDay.ToString("HH:mm", null)} feed 120")],
        Start = UncertainTime.Exactly(start),
        End = minutes is { } m ? UncertainTime.Exactly(start.PlusMinutes(m)) : null,
        Millilitres = 120,
        Route = FeedRoute.BolusTube,
    };

    private static Check Check(Func<string, string, SourceLine> written, LocalDateTime at, double spo2, double? oxygen, CheckPhase phase) => new()
    {
        Sources = [written("march.txt", $"sats {spo2}")],
        Start = UncertainTime.Exactly(at),
        SpO2 = spo2,
        OxygenLitresPerMinute = oxygen,
        Phase = phase,
        Pulse = 110,
    };

    private static Sign Sign(Func<string, string, SourceLine> written, LocalDateTime at, SignKind kind, string what, string? value, double? number) => new()
    {
        Sources = [written("march.txt", $"{what} {value}")],
        Start = UncertainTime.Exactly(at),
        Kind = kind,
        What = what,
        Value = value,
        Number = number,
    };
}
