namespace CareRecords.Records;

/// <summary>One thing that was written down: a session, a feed, a dose, a check or a sign.</summary>
public abstract record CareEntry
{
    private protected CareEntry() { }

    /// <summary>Where it was written; one at least. More when the same event was written twice.</summary>
    public required IReadOnlyList<SourceLine> Sources { get; init; }

    /// <summary>When it began or happened; null only for a feed whose end alone was written.</summary>
    public UncertainTime? Start { get; init; }

    /// <summary>When it ended; null when not written.</summary>
    public UncertainTime? End { get; init; }

    /// <summary>Who wrote or did it, as written; null when not said.</summary>
    public string? By { get; init; }

    /// <summary>Further words of the same line or row, as written; null when there are none.</summary>
    public string? Note { get; init; }

    /// <summary>How the words were read, in a sentence ("'half 8' read as 19:30: after 18:40 on the line above"); null when read literally.</summary>
    public string? HowRead { get; init; }

    /// <summary>The time to sort and show by: the start, or the end where only the end was written.</summary>
    /// <exception cref="InvalidOperationException">Neither was set.</exception>
    public UncertainTime When => Start ?? End ?? throw new InvalidOperationException("An entry has a start or an end.");
}

/// <summary>A chest-clearance session.</summary>
public sealed record Session : CareEntry
{
    /// <summary>Minutes by side, area and technique; empty when not said.</summary>
    public IReadOnlyList<AreaMinutes> Areas { get; init; } = [];

    /// <summary>Total minutes as written, where areas were not given; null when not said. See <see cref="TotalMinutes"/>.</summary>
    public double? MinutesWritten { get; init; }

    /// <summary>Techniques as written; null when not said.</summary>
    public string? Techniques { get; init; }

    /// <summary>Cough as written; null when not said.</summary>
    public string? Cough { get; init; }

    /// <summary>Secretions as written; null when not said.</summary>
    public string? Secretions { get; init; }

    /// <summary>The child's colour as written; null when not said.</summary>
    public string? Colour { get; init; }

    /// <summary>Why it was stopped early, as written ("yes" when only that was said); null when not said to be.</summary>
    public string? StoppedEarly { get; init; }

    /// <summary>Whether the child vomited; null when not said.</summary>
    public bool? Vomited { get; init; }

    /// <summary>
    /// Minutes in all: as written, else the sum over areas when every area has its minutes (the lower end of a range), else null.
    /// </summary>
    public double? TotalMinutes =>
        MinutesWritten ?? (Areas.Count > 0 && Areas.All(a => a.Minutes is not null) ? Areas.Sum(a => a.Minutes!.Value) : null);
}

/// <summary>How a feed goes in.</summary>
public enum FeedRoute
{
    /// <summary>Not said.</summary>
    Unknown,

    /// <summary>By mouth.</summary>
    Oral,

    /// <summary>By tube, not said how fast.</summary>
    Tube,

    /// <summary>By tube and pump, running on.</summary>
    PumpedTube,

    /// <summary>By tube, all at once.</summary>
    BolusTube,
}

/// <summary>A feed. Only its end may be known ("feed off 6").</summary>
public sealed record Feed : CareEntry
{
    /// <summary>Volume in millilitres; null when not said.</summary>
    public double? Millilitres { get; init; }

    /// <summary>Rate in millilitres an hour; null when not said.</summary>
    public double? MillilitresPerHour { get; init; }

    /// <summary>How it went in.</summary>
    public FeedRoute Route { get; init; }
}

/// <summary>A dose of a medicine.</summary>
public sealed record Dose : CareEntry
{
    /// <summary>The generic name from <see cref="Medicines"/>, or "unknown" when the words do not name one.</summary>
    public required string Medicine { get; init; }

    /// <summary>The medicine's words as written ("blue inhaler").</summary>
    public string? MedicineAsWritten { get; init; }

    /// <summary>The amount as written ("2 puffs"); null when not said.</summary>
    public string? Amount { get; init; }

    /// <summary>The route as written ("spacer", "neb", "oral"); null when not said.</summary>
    public string? Route { get; init; }

    /// <summary>The medicine's class; <see cref="MedicineClass.Unknown"/> when the name is not in the table.</summary>
    public MedicineClass Class => Medicines.ClassOf(Medicine);
}

/// <summary>When a check was made with regard to a session.</summary>
public enum CheckPhase
{
    /// <summary>Not said.</summary>
    None,

    /// <summary>Before a session.</summary>
    Before,

    /// <summary>During a session.</summary>
    During,

    /// <summary>After a session.</summary>
    After,
}

/// <summary>A spot check, or a change of oxygen alone (then <see cref="SpO2"/> is null).</summary>
public sealed record Check : CareEntry
{
    /// <summary>Saturation by pulse oximeter, per cent, 0 to 100; the lower end of a range; null when not said.</summary>
    public double? SpO2 { get; init; }

    /// <summary>The upper end where a range was written ("94-96"), per cent; otherwise null.</summary>
    public double? SpO2High { get; init; }

    /// <summary>Pulse, beats a minute; null when not said.</summary>
    public double? Pulse { get; init; }

    /// <summary>Oxygen flow, litres a minute; 0 is air; null when not said.</summary>
    public double? OxygenLitresPerMinute { get; init; }

    /// <summary>Before, during or after a session, where said.</summary>
    public CheckPhase Phase { get; init; }
}

/// <summary>A sign of illness or of getting better.</summary>
public enum SignKind
{
    /// <summary>Something else; the words are in <see cref="Sign.What"/>.</summary>
    Other,

    /// <summary>Unwell, "not himself".</summary>
    Unwell,

    /// <summary>Temperature taken.</summary>
    Temperature,

    /// <summary>Vomited.</summary>
    Vomit,

    /// <summary>Change of colour.</summary>
    ColourChange,

    /// <summary>Trouble with breathing.</summary>
    Distress,

    /// <summary>Secretions changed.</summary>
    Secretions,

    /// <summary>Cough changed.</summary>
    Cough,

    /// <summary>Breathing rate counted.</summary>
    BreathingRate,

    /// <summary>Antibiotic started or taken for this illness.</summary>
    Antibiotic,

    /// <summary>Admitted to hospital.</summary>
    Admitted,

    /// <summary>Home from hospital.</summary>
    Discharged,

    /// <summary>Said to be better.</summary>
    Better,
}

/// <summary>A sign noted.</summary>
public sealed record Sign : CareEntry
{
    /// <summary>Which sign.</summary>
    public required SignKind Kind { get; init; }

    /// <summary>The sign's name for records.json and the workbook ("temperature", "cough", or free words for <see cref="SignKind.Other"/>).</summary>
    public required string What { get; init; }

    /// <summary>Its value in words as written; null when none.</summary>
    public string? Value { get; init; }

    /// <summary>Its number where it has one: degrees Celsius for a temperature, breaths a minute for a breathing rate; otherwise null.</summary>
    public double? Number { get; init; }
}

/// <summary>A session that the notes say did not take place, with the reason when given: counted as a reason, apart from "not written".</summary>
/// <param name="When">When it would have been.</param>
/// <param name="Reason">The reason as written; null when only "skipped" was said.</param>
/// <param name="Source">Where it was written.</param>
public sealed record OmittedSession(UncertainTime When, string? Reason, SourceLine Source);
