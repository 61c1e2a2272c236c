using CareRecords.Findings;
using CareRecords.Statistics;

namespace CareRecords.Pooling;

/// <summary>The little that pooling keeps of a child, so that ten thousand children fit in memory.</summary>
internal sealed record ChildSummary
{
    public required ChildCode Code { get; init; }

    public required Version Definitions { get; init; }

    public required AgeBand AgeBand { get; init; }

    public required StudyGroup? StudyGroup { get; init; }

    public required int Days { get; init; }

    public required int DaysWithRecords { get; init; }

    public required GapTally FeedGap { get; init; }

    public required GapTally InhalerGap { get; init; }

    /// <summary>Days to recovery of each episode of the main definition.</summary>
    public required IReadOnlyList<CensoredInterval> Recoveries { get; init; }

    /// <summary>Steps down.</summary>
    public required IReadOnlyList<StepDown> StepsDown { get; init; }

    /// <summary>Median of the stable hours before steps down; null when none can be told.</summary>
    public required double? UsualStableHours { get; init; }

    public static ChildSummary Of(SharedFindings findings)
    {
        StepDown[] steps = [.. findings.Steps.Where(s => s.Direction == StepDirection.Down).Select(s => new StepDown(s.StableHoursBefore, s.FollowedBy))];
        return new()
        {
            Code = findings.Child.Code,
            Definitions = findings.Child.Definitions,
            AgeBand = findings.Child.AgeBand,
            StudyGroup = findings.Child.StudyGroup,
            Days = findings.Child.Days,
            DaysWithRecords = findings.Child.DaysWithRecords,
            FeedGap = GapTally.Of(findings.Sessions.Select(s => s.FeedGap)),
            InhalerGap = GapTally.Of(findings.Sessions.Select(s => s.InhalerGap)),
            Recoveries = [.. findings.Episodes.Where(e => e.Definition == EpisodeDefinition.Main).Select(RecoveryOf)],
            StepsDown = steps,
            UsualStableHours = Median([.. steps.Select(s => s.StableHours).OfType<double>()]),
        };
    }

    /// <summary>A recovery seen at once is put into the first half day: no finer moment is known, and no time is exactly 0.</summary>
    private static CensoredInterval RecoveryOf(SharedEpisode episode)
    {
        var low = Math.Max(0, episode.RecoveryLow);
        var high = episode.RecoveryHigh is { } known ? Math.Max(known, low) : double.PositiveInfinity;
        return new(low, high <= 0 ? 0.5 : high);
    }

    private static double? Median(double[] values) => Quantiles.Median(values).TryGet(out var median) ? median : null;
}

/// <summary>Verdicts on one gap of one child; early and none are not kept.</summary>
internal readonly record struct GapTally(int Kept, int Judged, int Unknown)
{
    public static GapTally Of(IEnumerable<GapVerdict> verdicts)
    {
        var (kept, judged, unknown) = (0, 0, 0);
        foreach (var verdict in verdicts)
        {
            if (verdict == GapVerdict.Unknown) unknown++; else judged++;
            if (verdict == GapVerdict.Kept) kept++;
        }

        return new(kept, judged, unknown);
    }

    /// <summary>Share of sessions that could be judged; null without sessions.</summary>
    public double? Completeness => Judged + Unknown == 0 ? null : (double)Judged / (Judged + Unknown);
}

/// <summary>A step down: hours stable before it, and what followed.</summary>
internal readonly record struct StepDown(double? StableHours, StepOutcome Outcome);
