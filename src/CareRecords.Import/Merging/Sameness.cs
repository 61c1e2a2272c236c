using CareRecords.Records;

namespace CareRecords.Import.Merging;

/// <summary>Whether two entries of one kind, close in time and by different hands, are one event.</summary>
internal enum Likeness
{
    /// <summary>Two events.</summary>
    Different,

    /// <summary>One event.</summary>
    Same,

    /// <summary>One or two: to be asked.</summary>
    MayBe,
}

/// <summary>
/// The rules by kind. A child has one session or feed at a time, so nearness in time is enough for these. Two doses or readings of
/// different amounts may both be real.
/// </summary>
internal static class Sameness
{
    /// <summary>How alike two entries are.</summary>
    public static Likeness Of(CareEntry one, CareEntry other)
    {
        if (IsWide(one) || IsWide(other)) return Likeness.Different;
        return (one, other) switch
        {
            (Session, Session) => Likeness.Same,
            (Feed a, Feed b) => OfFeeds(a, b),
            (Dose a, Dose b) => OfDoses(a, b),
            (Check a, Check b) => OfChecks(a, b),
            (Sign a, Sign b) => a.Kind != b.Kind ? Likeness.Different
                : a.Kind == SignKind.Temperature ? Math.Abs((a.Number ?? 0) - (b.Number ?? 0)) < 0.05 ? Likeness.Same : Likeness.MayBe
                : a.Value is null || b.Value is null || Alike(a.Value, b.Value) ? Likeness.Same : Likeness.Different,
            _ => Likeness.Different,
        };
    }

    private static Likeness OfFeeds(Feed a, Feed b)
    {
        if ((a.Start is null) != (b.Start is null)) return Likeness.Different;
        if (a.Route != b.Route && (a.Route == FeedRoute.Oral || b.Route == FeedRoute.Oral) && a.Route != FeedRoute.Unknown && b.Route != FeedRoute.Unknown) return Likeness.Different;
        return a.Millilitres is { } ml && b.Millilitres is { } other && Math.Abs(ml - other) > 0.2 * Math.Max(ml, other) ? Likeness.MayBe : Likeness.Same;
    }

    private static Likeness OfDoses(Dose a, Dose b)
    {
        var named = a.Medicine != Medicines.Unknown && b.Medicine != Medicines.Unknown;
        if (named && a.Medicine != b.Medicine) return Likeness.Different;
        if (!named && !Alike(a.MedicineAsWritten, b.MedicineAsWritten)) return Likeness.MayBe;
        return a.Amount is null || b.Amount is null || Alike(a.Amount, b.Amount) ? Likeness.Same : Likeness.MayBe;
    }

    // Equal readings close together are one; unlike ones in the same minute come from two devices or are two readings.
    private static Likeness OfChecks(Check a, Check b)
    {
        if (a.SpO2 is null != b.SpO2 is null || (a.Phase != b.Phase && a.Phase != CheckPhase.None && b.Phase != CheckPhase.None)) return Likeness.Different;
        var flows = a.OxygenLitresPerMinute is null || b.OxygenLitresPerMinute is null || a.OxygenLitresPerMinute == b.OxygenLitresPerMinute;
        var pulses = a.Pulse is null || b.Pulse is null || a.Pulse == b.Pulse;
        if (a.SpO2 == b.SpO2 && a.SpO2High == b.SpO2High && flows && pulses) return Likeness.Same;
        return a.When.Stated == b.When.Stated && a.SpO2 is not null && !(a.When.Precision == TimePrecision.Borrowed || b.When.Precision == TimePrecision.Borrowed) ? Likeness.MayBe : Likeness.Different;
    }

    private static bool Alike(string? a, string? b) => string.Equals(Squeeze(a), Squeeze(b), StringComparison.Ordinal);

    private static string Squeeze(string? text) => string.Concat((text ?? "").Where(c => !char.IsWhiteSpace(c))).ToLowerInvariant();

    // "Morning" beside 07:10 proves nothing.
    private static bool IsWide(CareEntry entry) => entry.When.Precision is TimePrecision.PartOfDay or TimePrecision.DayOnly;
}
