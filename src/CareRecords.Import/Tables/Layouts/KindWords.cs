using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>What happened, as one word or phrase of a table says it.</summary>
/// <param name="Kind">Which kind of record.</param>
internal sealed record WhatHappened(TableKind Kind)
{
    /// <summary>What was measured; <see cref="Role.Saturation"/> unless the words name another measure.</summary>
    public Role Measure { get; init; } = Role.Saturation;

    /// <summary>True when the words say that it ended ("feed off").</summary>
    public bool IsEnd { get; init; }

    /// <summary>True when the words say that it began ("pump on").</summary>
    public bool IsStart { get; init; }

    /// <summary>How the feed goes in.</summary>
    public FeedRoute Route { get; init; }

    /// <summary>The generic name of the medicine; null when none is named.</summary>
    public string? Medicine { get; init; }

    /// <summary>Which sign.</summary>
    public SignKind Sign { get; init; }

    /// <summary>The technique that the words name.</summary>
    public Technique Technique { get; init; }

    /// <summary>The measures whose figures stand one after another, from the family's own explanation.</summary>
    public IReadOnlyList<Role> Measures { get; init; } = [];

    /// <summary>The parts that its numbers are for, from the family's own explanation.</summary>
    public IReadOnlyList<AreaName> Areas { get; init; } = [];
}

/// <summary>Reads the words of a column that says what happened.</summary>
internal static class KindWords
{
    /// <summary>What happened; null when the words say nothing known. The family's own word comes first.</summary>
    public static WhatHappened? Read(string text, FamilyWords words)
    {
        if (words.MeaningOf(text.Trim()) is { } means)
            return (Read(means.Split(',', ':')[0].Split(". ")[0]) ?? Read(means)) is { } meant ? meant with { Areas = AreaNames.In(means) is { Count: > 1 } areas ? areas : [], Measures = MeasureOrder.In(means) } : null;
        return Read(text);
    }

    private static WhatHappened? Read(string text)
    {
        var known = Lexicon.Find(text, out _);
        var has = known.Select(k => k.Concept).ToHashSet();
        var medicine = known.FirstOrDefault(k => k.Medicine is not null).Medicine;
        // "To feed", "to pump": no end.
        var ends = has.Contains(Concept.End) && !(text.TrimStart().StartsWith("to ", StringComparison.OrdinalIgnoreCase) && Lexicon.Find(text.TrimStart()[3..], out _).All(k => k.Concept != Concept.End));
        if (has.Contains(Concept.Saturation)) return new(TableKind.Checks);
        if (has.Contains(Concept.OxygenChange) || (has.Contains(Concept.Oxygen) && !has.Contains(Concept.Session))) return new(TableKind.Checks) { Measure = Role.Oxygen };
        if (has.Contains(Concept.Temperature)) return new(TableKind.Signs) { Sign = SignKind.Temperature };
        if (has.Contains(Concept.Breathing)) return new(TableKind.Signs) { Sign = SignKind.BreathingRate };
        // "Breathing treatment" is a nebuliser's.
        if (text.Contains("breathing treatment", StringComparison.OrdinalIgnoreCase)) return new(TableKind.Medicines) { Medicine = medicine };
        if (medicine is not null || has.Contains(Concept.Inhaler) || has.Contains(Concept.Medicine)) return new(TableKind.Medicines) { Medicine = medicine };
        if (has.Contains(Concept.Antibiotic)) return new(TableKind.Signs) { Sign = SignKind.Antibiotic };
        if (has.Contains(Concept.Session) || has.Contains(Concept.Percussion) || has.Contains(Concept.Vibration))
            return new(TableKind.Sessions) { Technique = has.Contains(Concept.Percussion) ? Technique.Percussion : has.Contains(Concept.Vibration) ? Technique.Vibration : Technique.Unknown, IsEnd = ends };
        if (has.Overlaps([Concept.Feed, Concept.Pump, Concept.Bolus, Concept.Oral, Concept.Tube]))
            return new(TableKind.Feeds) { IsEnd = ends, IsStart = has.Contains(Concept.Start), Route = RouteOf(text, has) };
        if (has.Contains(Concept.Pulse)) return new(TableKind.Checks) { Measure = Role.Pulse };
        return SignOf(has) is { } sign ? new(TableKind.Signs) { Sign = sign } : null;
    }

    private static SignKind? SignOf(HashSet<Concept> has) =>
        has.Contains(Concept.Vomit) ? SignKind.Vomit
        : has.Contains(Concept.Cough) ? SignKind.Cough
        : has.Contains(Concept.Secretions) ? SignKind.Secretions
        : has.Contains(Concept.Colour) ? SignKind.ColourChange
        : has.Contains(Concept.Admitted) ? SignKind.Admitted
        : has.Contains(Concept.Discharged) ? SignKind.Discharged
        : has.Contains(Concept.Distress) ? SignKind.Distress
        : has.Contains(Concept.Unwell) ? SignKind.Unwell
        : null;

    // A meal at the table is by mouth; a pump or a bolus is by tube.
    private static FeedRoute RouteOf(string text, HashSet<Concept> has) =>
        has.Contains(Concept.Pump) ? FeedRoute.PumpedTube
        : has.Contains(Concept.Bolus) ? FeedRoute.BolusTube
        : has.Contains(Concept.Tube) ? FeedRoute.Tube
        : has.Contains(Concept.Oral) || Lexicon.Split(text).Any(w => w is "tea" or "dinner" or "lunch" or "breakfast" or "snack" or "meal" or "ate" or "eat" or "food" or "drink" or "dinnertime") ? FeedRoute.Oral
        : FeedRoute.Unknown;
}
