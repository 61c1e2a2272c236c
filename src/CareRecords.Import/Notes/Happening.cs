using CareRecords.Import.Reading;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Notes;

/// <summary>A time of day as it stands in a line, to be settled with the times around it.</summary>
internal sealed class TimeMention
{
    /// <summary>As written.</summary>
    public required ClockTime Written { get; set; }

    /// <summary>Zero-based line.</summary>
    public required int Line { get; init; }

    /// <summary>The day of the line, or the other day that the words name.</summary>
    public LocalDate? Date { get; set; }

    /// <summary>True when the words name another day than the line's, or a start on the day before.</summary>
    public bool OtherDay { get; set; }

    /// <summary>The end of a span, which is never before its start.</summary>
    public TimeMention? After { get; init; }

    /// <summary>A part of the day that the line speaks of; null when none.</summary>
    public string? Part { get; set; }

    /// <summary>The moment of writing, which the event does not come after; null when not known.</summary>
    public LocalDateTime? NotAfter { get; set; }

    /// <summary>True when no event of care is at the time.</summary>
    public bool IsAside { get; set; }

    /// <summary>Number of the sentence in its line.</summary>
    public int Sentence { get; init; }

    /// <summary>True for the first time under a section's heading: sections tell the day over again.</summary>
    public bool OpensSection { get; set; }

    /// <summary>A pump turned off: most feeds by pump run overnight.</summary>
    public bool PumpOff { get; init; }

    /// <summary>A pump turned on, with no volume to run in by day.</summary>
    public bool PumpOn { get; init; }

    /// <summary>A session named by its time alone ("the 2.30"): it may have been told already.</summary>
    public bool NamesSession { get; set; }

    /// <summary>True when it names a session of the day that is only spoken of ("after the 3.00 one").</summary>
    public bool SpeaksOfSession { get; set; }

    /// <summary>True for the first time of a list: lists tell a day over again.</summary>
    public bool StartsList { get; init; }

    /// <summary>True when a session is at the time: two sessions do not follow each other within the hour.</summary>
    public bool IsSession { get; set; }

    /// <summary>True for the second and later times of one list, which never goes back.</summary>
    public bool InList { get; init; }

    /// <summary>Whether its words are of the day ("school rang", "at nursery").</summary>
    public bool ByDay { get; init; }

    /// <summary>True when the event is of a kind that hints at the morning ("feed off", "woke").</summary>
    public bool MorningHint { get; set; }

    /// <summary>The settled time; null while it is not settled.</summary>
    public LocalDateTime? Settled { get; set; }

    /// <summary>True when either half of the day fits as well.</summary>
    public bool Unsettled { get; set; }
}

/// <summary>Where an event's time comes from.</summary>
/// <param name="Mention">The written time; null when the time is a part of the day, a stamp or another event's.</param>
internal sealed record TimeRef(TimeMention? Mention)
{
    /// <summary>Minutes after (or before, when negative) the mention.</summary>
    public double OffsetMinutes { get; init; }

    /// <summary>Borrowed, reckoned or a stamp; null when the time is the event's own.</summary>
    public TimePrecision? Taken { get; init; }

    /// <summary>A part of the day or meal as written; null when a time was written.</summary>
    public string? Part { get; init; }

    /// <summary>The part's kind ("morning", "lunch"); null when a time was written.</summary>
    public string? PartKind { get; init; }

    /// <summary>The stamp of the message, where that is all there is.</summary>
    public LocalDateTime? Stamp { get; init; }

    /// <summary>The day, for a part of the day or the day alone.</summary>
    public LocalDate? Date { get; init; }
}

/// <summary>Kinds of happenings.</summary>
internal enum HappeningKind { Session, Feed, Dose, Check, Sign, Omitted }

/// <summary>An event as one line tells it, before what carries over from other lines is filled in.</summary>
internal sealed class Happening
{
    /// <summary>What it is.</summary>
    public required HappeningKind Kind { get; init; }

    /// <summary>Zero-based line.</summary>
    public required int Line { get; init; }

    /// <summary>Number of the sentence in its line.</summary>
    public int Sentence { get; init; }

    /// <summary>When it began; null for a feed's end alone, or when not said.</summary>
    public TimeRef? Start { get; set; }

    /// <summary>When it ended; null when not said.</summary>
    public TimeRef? End { get; set; }

    /// <summary>Areas as read; sessions only.</summary>
    public AreaReading? Areas { get; init; }

    /// <summary>What it repeats; null when nothing.</summary>
    public Term? Reference { get; init; }

    /// <summary>Total minutes of a session without areas; null when not said.</summary>
    public double? TotalMinutes { get; init; }

    /// <summary>Volume in ml; feeds only.</summary>
    public double? Millilitres { get; set; }

    /// <summary>ml an hour; feeds only.</summary>
    public double? Rate { get; set; }

    /// <summary>Route of a feed.</summary>
    public FeedRoute Route { get; set; }

    /// <summary>Generic name, or "unknown"; doses only.</summary>
    public string Medicine { get; set; } = Medicines.Unknown;

    /// <summary>The medicine's words.</summary>
    public string? MedicineWritten { get; set; }

    /// <summary>Amount as written.</summary>
    public string? Amount { get; set; }

    /// <summary>Route of a dose as written.</summary>
    public string? DoseRoute { get; set; }

    /// <summary>"antibiotic" when only that was said, to be named from the course.</summary>
    public bool IsAntibioticWord { get; set; }

    /// <summary>Whether the words say that it was given, or how much.</summary>
    public bool IsGiven { get; set; }

    /// <summary>Given before every session of the day: minutes before; null otherwise.</summary>
    public double? BeforeEachSession { get; set; }

    /// <summary>Reading; checks only.</summary>
    public CheckReading? Check { get; init; }

    /// <summary>Kind of sign.</summary>
    public SignKind SignKind { get; init; }

    /// <summary>Name of the sign.</summary>
    public string? What { get; init; }

    /// <summary>Value of the sign in words.</summary>
    public string? Value { get; set; }

    /// <summary>Number of the sign.</summary>
    public double? Number { get; init; }

    /// <summary>Reason of an omitted session, as written.</summary>
    public string? Reason { get; set; }

    /// <summary>How the words were read, where interpreted.</summary>
    public string? How { get; set; }
}

/// <summary>One reading of a check.</summary>
internal sealed class CheckReading
{
    /// <summary>Saturation, per cent.</summary>
    public double? SpO2 { get; set; }

    /// <summary>Upper end of a range.</summary>
    public double? High { get; set; }

    /// <summary>Pulse.</summary>
    public double? Pulse { get; set; }

    /// <summary>Oxygen, litres a minute.</summary>
    public double? Oxygen { get; set; }

    /// <summary>True when the flow stands in a clause of its own after the reading ("sats 86. Oxygen 2 l"): it may be what was then done.</summary>
    public bool FlowApart { get; set; }

    /// <summary>Before, during, after.</summary>
    public CheckPhase Phase { get; set; }

    /// <summary>True for the second of two readings with an arrow between.</summary>
    public bool ByArrow { get; set; }

    /// <summary>Minutes after the group's time; null when at it.</summary>
    public double? AfterMinutes { get; set; }

    /// <summary>True when it is a change of oxygen after a reading of the same time, or a later reading of it.</summary>
    public bool Later { get; set; }

    /// <summary>Written as "about" or "-ish".</summary>
    public bool About { get; set; }

    /// <summary>Spoken of as now.</summary>
    public bool Now { get; set; }

    /// <summary>Position in the line.</summary>
    public int At { get; set; }
}

/// <summary>A question or refusal that a line gives rise to.</summary>
/// <param name="Line">Zero-based line.</param>
/// <param name="Cause">Grouping name: the stable question name without the place ("what-is:blue"); null for a refusal.</param>
/// <param name="Why">What is wrong, in a sentence.</param>
/// <param name="Fix">What to do.</param>
/// <param name="Severity">Asked or refused.</param>
/// <param name="Question">The question's wording; null for a refusal.</param>
internal sealed record Doubt(int Line, string? Cause, string Why, string Fix, ProblemSeverity Severity, AskedQuestion? Question);
