using CareRecords.Import.Reading;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Notes;

/// <summary>A text file as decoded.</summary>
/// <param name="File">Its name as it is to appear in sources.</param>
/// <param name="Lines">Its lines without line ends.</param>
internal sealed record SourceText(string File, IReadOnlyList<string> Lines);

/// <summary>What is known before the notes are read.</summary>
internal sealed record ReadingContext
{
    /// <summary>The order of day and month (option, answers, or the other sources); null when not known.</summary>
    public DateOrder? DateOrder { get; init; }

    /// <summary>The day of a text without headings, or a day near the first heading; null when not known.</summary>
    public LocalDate? Date { get; init; }

    /// <summary>The last day that the notes can speak of (the file's own date); gives the year where none is written. Null when not known.</summary>
    public LocalDate? NotAfter { get; init; }

    /// <summary>The family's words.</summary>
    public FamilyWords Words { get; init; } = FamilyWords.None;

    /// <summary>Answers by question name.</summary>
    public IReadOnlyDictionary<string, string> Answers { get; init; } = new Dictionary<string, string>();
}

/// <summary>How one line ended.</summary>
internal enum LineFate
{
    /// <summary>Nothing on it.</summary>
    Blank,

    /// <summary>The source of a record, a word, or an omitted session.</summary>
    InRecords,

    /// <summary>Set aside with a reason.</summary>
    NotRecord,

    /// <summary>Only asked about or refused.</summary>
    Problem,
}

/// <summary>What the notes gave. Every line of the text has a fate.</summary>
internal sealed record NotesReading
{
    /// <summary>Records in the order of lines.</summary>
    public required IReadOnlyList<CareEntry> Entries { get; init; }

    /// <summary>Sessions that the notes say did not take place.</summary>
    public IReadOnlyList<OmittedSession> Omitted { get; init; } = [];

    /// <summary>What the family wants to ask at the visit.</summary>
    public IReadOnlyList<SourceLine> FamilyQuestions { get; init; } = [];

    /// <summary>Words that the notes themselves explain ("blue = salbutamol").</summary>
    public IReadOnlyList<FamilyWord> Words { get; init; } = [];

    /// <summary>Lines without a record, each with its reason.</summary>
    public IReadOnlyList<SetAsideLine> SetAside { get; init; } = [];

    /// <summary>Lines to ask about or refused; <see cref="ImportProblem.Question"/> names the question.</summary>
    public IReadOnlyList<ImportProblem> Problems { get; init; } = [];

    /// <summary>Text and choices of each question that a problem names, by name (its sources are gathered from the problems).</summary>
    public IReadOnlyDictionary<string, AskedQuestion> Questions { get; init; } = new Dictionary<string, AskedQuestion>();

    /// <summary>Values of earlier days that a cell puts right: the records stand in other cells, which the table's reader knows.</summary>
    public IReadOnlyList<LateCorrection> Late { get; init; } = [];

    /// <summary>The fate of each line, first line first.</summary>
    public required IReadOnlyList<LineFate> Fates { get; init; }
}

/// <summary>Wording of a question.</summary>
/// <param name="Text">The question in a sentence.</param>
/// <param name="Choices">Answers that would be understood; empty when any words would do.</param>
internal sealed record AskedQuestion(string Text, IReadOnlyList<string> Choices);
