using CareRecords.Import.Reading;
using NodaTime;

namespace CareRecords.Import.Notes;

/// <summary>The beginning of a day's lines.</summary>
/// <param name="Night">Whether its heading opens a night's shift.</param>
/// <param name="Headed">Whether it stands under a heading, and not only under the date of a message.</param>
/// <param name="NightAlone">Whether the heading says of the night and nothing more: what is told below it is of that night, even after midnight.</param>
internal sealed record DayStart(bool Night, bool Headed, bool NightAlone);

/// <summary>A line of the text with all that its place in the text says of it: it can be read on its own.</summary>
internal sealed record PlacedLine
{
    /// <summary>Zero-based line.</summary>
    public required int Index { get; init; }

    /// <summary>The line as written.</summary>
    public required string Line { get; init; }

    /// <summary>Whether it is a further line of the message above it.</summary>
    public bool Continues { get; init; }

    /// <summary>Whether it stands above the first day of notes that have days: what is said there without a time is an arrangement, not an event.</summary>
    public bool AboveFirstDay { get; init; }

    /// <summary>Whether the heading above it names two days, one after the other: a night.</summary>
    public bool Overnight { get; init; }

    /// <summary>Whether it stands under "Night" below the other parts of its day.</summary>
    public bool AfterEvening { get; init; }

    /// <summary>The words after its date, bullet or stamp.</summary>
    public required string Words { get; init; }

    /// <summary>Its number in a list; null when none.</summary>
    public int? Item { get; init; }

    /// <summary>Its day; null when not known.</summary>
    public LocalDate? Date { get; init; }

    /// <summary>Stamp of its message; null when it has none.</summary>
    public LocalDateTime? Stamp { get; init; }

    /// <summary>Who wrote it; null when not said.</summary>
    public string? By { get; init; }

    /// <summary>What joined numbers are.</summary>
    public PairMeaning Pairs { get; init; }

    /// <summary>The heads of the section that it stands under; empty when none.</summary>
    public IReadOnlyList<Term> Section { get; init; } = [];

    /// <summary>The part of the day that the heading above it names ("Evening"); null when none.</summary>
    public Term? PartOfDay { get; init; }

    /// <summary>Whether it is the first line under its section's heading.</summary>
    public bool OpensSection { get; init; }

    /// <summary>The day that begins with it; null when the day before goes on.</summary>
    public DayStart? Begins { get; init; }
}
