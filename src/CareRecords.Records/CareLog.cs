using NodaTime;

namespace CareRecords.Records;

/// <summary>Everything that was written down, read once: what the importer hands on. It answers for every line that came in.</summary>
public sealed record CareLog
{
    /// <summary>The IANA time zone of every local time.</summary>
    public required string Zone { get; init; }

    /// <summary>Where the zone came from ("the plan", "the option --zone", "this computer").</summary>
    public required string ZoneFrom { get; init; }

    /// <summary>Sessions, feeds, doses, checks and signs in order of time.</summary>
    public required IReadOnlyList<CareEntry> Entries { get; init; }

    /// <summary>The plan as understood.</summary>
    public CarePlan Plan { get; init; } = CarePlan.Empty;

    /// <summary>Sessions that the notes say did not take place.</summary>
    public IReadOnlyList<OmittedSession> Omitted { get; init; } = [];

    /// <summary>What the family wants to ask at the visit, as written.</summary>
    public IReadOnlyList<SourceLine> FamilyQuestions { get; init; } = [];

    /// <summary>Lines that hold no record, each with its reason.</summary>
    public IReadOnlyList<SetAsideLine> NotRecords { get; init; } = [];

    /// <summary>Lines to ask about or refused.</summary>
    public IReadOnlyList<ImportProblem> Problems { get; init; } = [];

    /// <summary>The problems gathered into questions by cause, the most useful first.</summary>
    public IReadOnlyList<Question> Questions { get; init; } = [];

    /// <summary>Events written twice and merged.</summary>
    public IReadOnlyList<MergedEntry> Merged { get; init; } = [];

    /// <summary>Cells of an earlier review workbook that a person changed.</summary>
    public IReadOnlyList<Correction> Corrections { get; init; } = [];

    /// <summary>The family's own words, as the notes, word tables and answers explain them.</summary>
    public IReadOnlyList<ExplainedWord> Words { get; init; } = [];

    /// <summary>The latest earlier review workbook among the inputs; null when there is none.</summary>
    public EarlierReview? LastReview { get; init; }

    /// <summary>The files that came in.</summary>
    public IReadOnlyList<InputFile> Inputs { get; init; } = [];

    /// <summary>The count of lines and rows, which always balances.</summary>
    public LineCount Lines { get; init; } = new(0, 0, 0, 0, 0);
}

/// <summary>A line that holds no record.</summary>
/// <param name="Source">The line.</param>
/// <param name="Why">Why not ("a day heading", "a remark", "a session that did not happen").</param>
public sealed record SetAsideLine(SourceLine Source, string Why);

/// <summary>How a problem stands.</summary>
public enum ProblemSeverity
{
    /// <summary>Could be read two ways: the family is asked.</summary>
    Ask,

    /// <summary>Impossible or unreadable.</summary>
    Refused,
}

/// <summary>A line that needs a person.</summary>
/// <param name="Source">The line.</param>
/// <param name="Why">What is wrong, in a sentence.</param>
/// <param name="Fix">What to type or which option to give.</param>
/// <param name="Severity">Asked or refused.</param>
/// <param name="Question">The stable name of the question that it belongs to; null when it belongs to none.</param>
public sealed record ImportProblem(SourceLine Source, string Why, string Fix, ProblemSeverity Severity, string? Question = null);

/// <summary>A question to the family that settles one or more lines.</summary>
/// <param name="Name">A stable name, the same at every run on the same words ("what-is:blue").</param>
/// <param name="Text">The question in a sentence.</param>
/// <param name="Choices">Answers that would be understood; empty when any words would do.</param>
/// <param name="Sources">The lines that it settles.</param>
/// <param name="Answer">The answer already given; null when open.</param>
public sealed record Question(string Name, string Text, IReadOnlyList<string> Choices, IReadOnlyList<SourceLine> Sources, string? Answer = null);

/// <summary>An event written more than once, kept once.</summary>
/// <param name="Kept">The source of the record that was kept.</param>
/// <param name="Also">The other sources.</param>
/// <param name="Differences">Fields in which they differ.</param>
public sealed record MergedEntry(SourceLine Kept, IReadOnlyList<SourceLine> Also, IReadOnlyList<MergeDifference> Differences);

/// <summary>A field in which two writings of one event differ.</summary>
/// <param name="Field">The field's name.</param>
/// <param name="Kept">The value kept.</param>
/// <param name="Other">The other value.</param>
public sealed record MergeDifference(string Field, string Kept, string Other);

/// <summary>A cell of an earlier review workbook that a person changed.</summary>
/// <param name="Source">The cell.</param>
/// <param name="Field">The column's heading.</param>
/// <param name="Old">The value that the review wrote.</param>
/// <param name="New">The value that stands there now.</param>
public sealed record Correction(SourceLine Source, string Field, string Old, string New);

/// <summary>A word of the family's own.</summary>
/// <param name="Word">As written ("blue").</param>
/// <param name="Means">What it stands for, as written ("salbutamol").</param>
public sealed record ExplainedWord(string Word, string Means);

/// <summary>An earlier review workbook that came in again.</summary>
/// <param name="File">Its name relative to what was given.</param>
/// <param name="LastEntry">The stated local time of the last entry that it held.</param>
public sealed record EarlierReview(string File, LocalDateTime LastEntry);

/// <summary>A file that came in.</summary>
/// <param name="Name">Its name relative to what was given.</param>
/// <param name="Kind">How it was read ("notes", "table", "workbook", "review workbook", "left alone").</param>
/// <param name="Sha256">SHA-256 of its bytes in lower-case hexadecimal; null when it was left alone.</param>
/// <param name="Note">Anything worth saying (encoding, delimiter, why left alone); null when nothing is.</param>
public sealed record InputFile(string Name, string Kind, string? Sha256, string? Note);

/// <summary>
/// The account of lines and sheet rows: <c>Read = Blank + InRecords + NotRecords + Problems</c>, always.
/// A line that gave a record and also a question counts under <paramref name="InRecords"/>.
/// </summary>
/// <param name="Read">Lines and rows that came in.</param>
/// <param name="Blank">Of them blank.</param>
/// <param name="InRecords">Of them the source of a record, a plan row, a word, an answer or an omitted session.</param>
/// <param name="NotRecords">Of them set aside with a reason.</param>
/// <param name="Problems">Of them only asked about or refused.</param>
public sealed record LineCount(int Read, int Blank, int InRecords, int NotRecords, int Problems)
{
    /// <summary>Whether every line is accounted for exactly once.</summary>
    public bool Balances => Read == Blank + InRecords + NotRecords + Problems;

    /// <summary>The counts of two inputs together.</summary>
    public static LineCount operator +(LineCount a, LineCount b) =>
        new(a.Read + b.Read, a.Blank + b.Blank, a.InRecords + b.InRecords, a.NotRecords + b.NotRecords, a.Problems + b.Problems);

    /// <summary>The counts of two inputs together.</summary>
    public static LineCount Add(LineCount left, LineCount right) => left + right;
}
