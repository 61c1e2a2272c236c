using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>What a column of a table of free layout states.</summary>
internal enum Role
{
    /// <summary>Not known from its heading: its cells are read as free words.</summary>
    Unknown,

    /// <summary>The day, the time, or both.</summary>
    Date, Time, Start, End,

    /// <summary>The part of the day that a row is of.</summary>
    Part,

    /// <summary>What happened, and more about it.</summary>
    Kind, Detail, Amount, Note, By,

    /// <summary>An event of its own in each cell: its time, or words with times.</summary>
    Session, SessionEnd, Feed, FeedStart, FeedEnd, Dose,

    /// <summary>An hour of the day: what is in the cell happened then.</summary>
    Hour,

    /// <summary>What belongs to a session.</summary>
    Side, Area, Minutes, Technique, Cough, Secretions, Colour, Stopped, Vomit,

    /// <summary>What belongs to a feed.</summary>
    Millilitres, Route, Rate,

    /// <summary>Which medicine.</summary>
    Medicine,

    /// <summary>What was measured.</summary>
    Saturation, Pulse, Oxygen, Phase, Temperature, Breathing,

    /// <summary>A sign and its value.</summary>
    Sign,

    /// <summary>A family's word and what it means; why a session was left out.</summary>
    Word, Means, Reason,

    /// <summary>Whether the event beside it took place.</summary>
    Done,

    /// <summary>How many there were that day: the events themselves stand elsewhere.</summary>
    Count,

    /// <summary>Whether the row was taken back.</summary>
    Withdrawn,

    /// <summary>Totals and what is not of care.</summary>
    Ignore,
}

/// <summary>One part of the chest as a heading or legend names it.</summary>
internal readonly record struct AreaName(Side Side, ChestArea Area, Technique Technique);

/// <summary>What a heading says of the cells under it.</summary>
/// <param name="Heading">As written, with the group heading above it in front.</param>
/// <param name="Role">What the column states.</param>
internal sealed record ColumnMeaning(string Heading, Role Role)
{
    /// <summary>The column's own heading, without those over it.</summary>
    public string Own { get; init; } = Heading;

    /// <summary>The headings over it; empty when there are none.</summary>
    public string Over { get; init; } = "";

    /// <summary>Before, during or after a session, where the heading says so.</summary>
    public CheckPhase Phase { get; init; }

    /// <summary>The half of the day that the heading or its group names.</summary>
    public HalfOfDay Half { get; init; } = HalfOfDay.Unknown;

    /// <summary>The parts of the chest that the cell's numbers are for, in order.</summary>
    public IReadOnlyList<AreaName> Areas { get; init; } = [];

    /// <summary>The medicine that the heading names; null when it names none.</summary>
    public string? Medicine { get; init; }

    /// <summary>The medicine's words in the heading; null when it is no dose.</summary>
    public string? MedicineWords { get; init; }

    /// <summary>How a feed under this heading goes in, where it says so.</summary>
    public FeedRoute Route { get; init; }

    /// <summary>The unit that the heading gives to bare numbers ("oz", "F", "sec"); null when it gives none.</summary>
    public string? Unit { get; init; }

    /// <summary>Which group of columns it stands in (a merged heading above); 0 when there is none.</summary>
    public int Group { get; init; }

    /// <summary>The amount of every dose of it, where a column beside the labels says so; null when none does.</summary>
    public string? DefaultAmount { get; init; }

    /// <summary>The minutes that a tick of it stands for, where a column beside the labels says so; null when none does.</summary>
    public double? DefaultMinutes { get; init; }

    /// <summary>The areas and minutes of every session whose time stands under it, where the heading says so ("Chest am (3 mins each lower)"); empty when it does not.</summary>
    public IReadOnlyList<AreaMinutes> EachSession { get; init; } = [];

    /// <summary>The part of the day that the heading names, in the words of the notes; null when it names none.</summary>
    public string? Part { get; init; }

    /// <summary>The time of day that the heading fixes; null when it fixes none.</summary>
    public ClockTime? At { get; init; }

    /// <summary>True when the heading was recognised.</summary>
    public bool IsKnown => Role != Role.Unknown;
}
