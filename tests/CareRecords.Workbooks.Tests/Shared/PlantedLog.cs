using CareRecords.Records;
using CareRecords.Simulation;
using NodaTime;

namespace CareRecords.Workbooks.Tests.Shared;

/// <summary>A simulated child's log, plausible to the analysis, in which every place for words holds names, places, numbers of telephones and unusual words.</summary>
internal static class PlantedLog
{
    public static readonly string[] Words =
    [
        "Wilhelmina", "Ottertree", "Quillfeather Lane", "07700 900461", "Brannock Infirmary", "Nachtzuster Ødegård", "zorbleflux", "SN-88213-KQ",
        "quill@feather.example", "Llanfair Bottoms", "漢字メモ", "ottertree-notes.txt", "Sheet of Rosalind", "gribblewick", "Dr Featherstonehaugh", "physio Bramblewood",
    ];

    public static CareLog Make()
    {
        var (log, _) = SimulatedChild.Make(new SimulationOptions
        {
            Seed = 31,
            Days = 50,
            FirstDay = new LocalDate(2031, 7, 13),
            Zone = "America/Argentina/Ushuaia",
            GetsExtraOxygen = true,
            SignsWritten = 1,
            DaysNotWritten = 0.05,
        });
        return log with
        {
            ZoneFrom = Words[8],
            Entries = [.. log.Entries.Select(Planted)],
            Plan = log.Plan with
            {
                Rows =
                [
                    .. log.Plan.Rows.Select(r => r with { Source = Source(3) }),
                    new PlanRow(null, PlanItem.ChildCalled, "Wilhelmina Ottertree", null, null, Source(1)),
                    new PlanRow(null, PlanItem.StudyGroup, "gribblewick", null, null, Source(2)),
                    new PlanRow(null, PlanItem.AgeBand, "4 years, zorbleflux", null, null, Source(2)),
                    new PlanRow(null, PlanItem.TargetShareKept, "as Dr Featherstonehaugh says", null, null, Source(2)),
                ],
            },
            Omitted = [new OmittedSession(UncertainTime.OnDay(new LocalDate(2031, 7, 20)), "at Llanfair Bottoms with Rosalind", Source(4))],
            FamilyQuestions = [Source(5)],
            NotRecords = [new SetAsideLine(Source(6), Words[13])],
            Problems = [new ImportProblem(Source(7), Words[6], Words[14], ProblemSeverity.Ask, "what-is:zorbleflux")],
            Questions = [new Question("what-is:zorbleflux", "Who is Rosalind-Quirke?", [Words[15]], [Source(8)], Words[0])],
            Merged = [new MergedEntry(Source(9), [Source(10)], [new MergeDifference("note", Words[9], Words[10])])],
            Corrections = [new Correction(Source(11), Words[12], Words[13], Words[14])],
            Inputs = [new InputFile(Words[11], "notes", new string('a', 64), Words[6])],
        };
    }

    private static CareEntry Planted(CareEntry entry, int i) => (entry switch
    {
        Session session => session with { Techniques = Words[i % 16], Cough = Words[(i + 1) % 16], Secretions = Words[(i + 2) % 16], Colour = Words[(i + 3) % 16], StoppedEarly = Words[(i + 4) % 16] },
        Dose dose => dose with { MedicineAsWritten = Words[i % 16], Amount = Words[(i + 5) % 16], Route = Words[(i + 6) % 16] },
        Sign sign => sign with { What = Words[i % 16], Value = Words[(i + 7) % 16] },
        _ => entry,
    }) with
    {
        By = Words[(i + 8) % 16],
        Note = Words[(i + 9) % 16],
        HowRead = Words[(i + 10) % 16],
        Sources = [Source(i)],
    };

    private static SourceLine Source(int i) => i % 2 == 0
        ? SourceLine.InText(Words[11], i + 1, Words[i % 16])
        : SourceLine.InSheet(Words[11], Words[12], "C7", Words[i % 16]);
}
