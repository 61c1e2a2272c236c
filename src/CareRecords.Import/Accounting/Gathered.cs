using CareRecords.Import.Notes;
using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Accounting;

/// <summary>What one text or sheet gave, gathered while it is read.</summary>
internal sealed class Gathered
{
    /// <summary>The file.</summary>
    public required string File { get; init; }

    /// <summary>The sheet; null for a text.</summary>
    public string? Sheet { get; init; }

    /// <summary>Records.</summary>
    public List<CareEntry> Entries { get; } = [];

    /// <summary>Sessions said not to have taken place.</summary>
    public List<OmittedSession> Omitted { get; } = [];

    /// <summary>Questions for the visit.</summary>
    public List<SourceLine> FamilyQuestions { get; } = [];

    /// <summary>Plan rows.</summary>
    public List<PlanRow> Plan { get; } = [];

    /// <summary>The family's words.</summary>
    public List<FamilyWord> Words { get; } = [];

    /// <summary>What the words around the tables of the sheet say of its numbers.</summary>
    public Tables.Layouts.SheetKey Key { get; set; } = Tables.Layouts.SheetKey.None;

    /// <summary>The key of another sheet of the workbook, where the sheet has none of its own; null where none is used.</summary>
    public Tables.Layouts.SheetKey? Borrowed { get; set; }

    /// <summary>Answers to earlier questions, by the question's name or text.</summary>
    public Dictionary<string, string> Answers { get; } = [];

    /// <summary>Lines set aside.</summary>
    public List<SetAsideLine> SetAside { get; } = [];

    /// <summary>Problems.</summary>
    public List<ImportProblem> Problems { get; } = [];

    /// <summary>Wording of the questions that problems name.</summary>
    public Dictionary<string, AskedQuestion> Questions { get; } = [];

    /// <summary>Rows of an earlier review: entries that stand for an original source, with what a person changed.</summary>
    public List<Correction> Corrections { get; } = [];

    /// <summary>True for a sheet of an earlier review workbook: its entries stand for the sources that they name.</summary>
    public bool IsReview { get; init; }

    /// <summary>The entries of an earlier review that a person changed or added.</summary>
    public HashSet<CareEntry> Mended { get; } = new(ReferenceEqualityComparer.Instance);

    /// <summary>The day order that the source itself settles; null when it has no dates in numbers or does not settle them.</summary>
    public DateOrder? OrderSettled { get; set; }

    /// <summary>True when the source's dates can be read both ways and nothing settled them.</summary>
    public bool OrderIsOpen { get; set; }

    /// <summary>The first day that a title or table of it names; null when none does.</summary>
    public NodaTime.LocalDate? FirstDay { get; set; }

    /// <summary>How each line ended.</summary>
    public LineLedger Ledger { get; } = new();

    /// <summary>Takes over what the notes reader made of a text or a cell; the fates of its lines are the caller's to mark.</summary>
    public void Take(NotesReading reading)
    {
        Entries.AddRange(reading.Entries);
        Omitted.AddRange(reading.Omitted);
        FamilyQuestions.AddRange(reading.FamilyQuestions);
        Words.AddRange(reading.Words);
        SetAside.AddRange(reading.SetAside);
        Problems.AddRange(reading.Problems);
        foreach (var (name, asked) in reading.Questions) Questions.TryAdd(name, asked);
    }
}
