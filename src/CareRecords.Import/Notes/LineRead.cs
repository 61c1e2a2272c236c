using NodaTime;

namespace CareRecords.Import.Notes;

/// <summary>What one line told, before it is joined to the lines around it.</summary>
internal sealed class LineRead
{
    /// <summary>Zero-based line.</summary>
    public required int Index { get; init; }

    /// <summary>The line as written.</summary>
    public required string Text { get; init; }

    /// <summary>Its words, without date, bullet or stamp.</summary>
    public string Words { get; init; } = "";

    /// <summary>Whether it is a further line of the message above it.</summary>
    public bool Continues { get; init; }

    /// <summary>Whether it stands above the first day.</summary>
    public bool AboveFirstDay { get; init; }

    /// <summary>Its number in a list; null when none.</summary>
    public int? Item { get; init; }

    /// <summary>Its day; null when not known.</summary>
    public LocalDate? Date { get; init; }

    /// <summary>Stamp of a message; null when it has none.</summary>
    public LocalDateTime? Stamp { get; init; }

    /// <summary>Who wrote it; null when not said.</summary>
    public string? By { get; init; }

    /// <summary>What its groups told.</summary>
    public List<GroupReader.Told> Told { get; } = [];

    /// <summary>Times written in it.</summary>
    public List<TimeMention> Mentions { get; } = [];

    /// <summary>Doubts of its words.</summary>
    public List<Doubt> Doubts { get; } = [];

    /// <summary>Medicines spoken of in advice, in order: what an "antibiotic" or "first dose" later means.</summary>
    public List<DoseReading> Prescribed { get; } = [];

    /// <summary>Words that name care or give a value, of which no event was told.</summary>
    public List<string> Left { get; } = [];

    /// <summary>Words without a meaning that stand alone beside a time.</summary>
    public IReadOnlyList<string> AtTimes { get; set; } = [];

    /// <summary>A value of an earlier day that it puts right; null when none.</summary>
    public LateCorrection? Late { get; set; }

    /// <summary>Its flags.</summary>
    public LineMarks Marks { get; set; }
}

/// <summary>What a line says besides events.</summary>
[Flags]
internal enum LineMarks
{
    /// <summary>Nothing.</summary>
    None = 0,

    /// <summary>A day heading.</summary>
    Heading = 1,

    /// <summary>An explanation of words.</summary>
    Legend = 2,

    /// <summary>A correction of something before.</summary>
    Correction = 4,

    /// <summary>Advice, a plan, shopping.</summary>
    Unreal = 8,

    /// <summary>A question for the visit.</summary>
    Question = 16,

    /// <summary>Says that something was done ("all done", "did it").</summary>
    AllDone = 32,

    /// <summary>Speaks of a session to come.</summary>
    PlansSession = 64,

    /// <summary>Only a time, with "about" or "sorry".</summary>
    TimeOnly = 128,

    /// <summary>Repeats another day as a whole.</summary>
    RepeatsDay = 256,

    /// <summary>Names an event of care.</summary>
    Care = 512,

    /// <summary>Holds numbers that could be a share or a date ("2/3") beside words of done.</summary>
    Share = 1024,

    /// <summary>Heading of a table.</summary>
    TableHeading = 2048,

    /// <summary>A heading of a part of the day's notes ("Feeds:").</summary>
    Section = 8192,

    /// <summary>A message that only says that something was done or given.</summary>
    Answer = 16384,

    /// <summary>Taken back by the line after it.</summary>
    TakenBack = 32768,

    /// <summary>Corrects a time, the right one first ("6:50 not 6:40").</summary>
    RightFirst = 4096,
}
