using CareRecords.Records;
using NodaTime;

namespace CareRecords.Findings;

/// <summary>Lines that a person should look at: what was written, why it is listed, and where. Never advice.</summary>
internal static class Flags
{
    private const double StableHoursWanted = 48;

    public static IReadOnlyList<Flag> Of(ChildRecords records, UsualOxygen oxygen, IReadOnlyList<SessionFinding> sessions, IReadOnlyList<TaperStep> steps) =>
    [
        .. sessions.SelectMany(Gaps)
            .Concat(records.Sessions.SelectMany(StopSigns))
            .Concat(records.Signs.SelectMany(Signs))
            .Concat(records.Checks.SelectMany(c => UnderStop(records, c)))
            .Concat(records.Checks.GroupBy(records.DayOf).SelectMany(d => AboveUsual(oxygen, d.Key, [.. d])))
            .Concat(steps.SelectMany(s => Steps(records, s)))
            .OrderBy(f => f.When),
    ];

    private static IEnumerable<Flag> Gaps(SessionFinding session)
    {
        IReadOnlyList<SourceLine> With(CareEntry? other) => other is null ? session.Session.Sources : [.. session.Session.Sources, .. other.Sources];
        Flag Flag(FlagKind kind, string why, CareEntry? other) => new(session.Start, kind, $"session at {Words.Clock(session.Start)}", why, With(other));
        var (feed, inhaler) = (session.FeedGap, session.InhalerGap);
        if (feed.FeedRunning) yield return Flag(FlagKind.FeedGap, "feed running: a feed was running when the session started", feed.Feed);
        else if (feed.Verdict == GapVerdict.Short) yield return Flag(FlagKind.FeedGap, $"feed gap short: {feed.Why}", feed.Feed);
        if (inhaler.Verdict == GapVerdict.Short) yield return Flag(FlagKind.InhalerGap, $"inhaler gap short: {inhaler.Why}", inhaler.Dose);
    }

    private static IEnumerable<Flag> StopSigns(Session session)
    {
        Flag Flag(FlagKind kind, string what, string why) => new(session.When.Stated, kind, $"session at {Words.Clock(session.When.Stated)}: {what}", why, session.Sources);
        if (!string.IsNullOrWhiteSpace(session.StoppedEarly)) yield return Flag(FlagKind.StoppedEarly, $"stopped early ({session.StoppedEarly.Trim()})", "a session stopped early was noted");
        if (session.Vomited == true) yield return Flag(FlagKind.Vomit, "vomited", "a stop sign was noted");
    }

    private static IEnumerable<Flag> Signs(Sign sign)
    {
        if (sign.Kind is SignKind.Distress or SignKind.ColourChange or SignKind.Vomit or SignKind.Admitted)
            yield return new(sign.When.Stated, sign.Kind switch { SignKind.Vomit => FlagKind.Vomit, SignKind.Admitted => FlagKind.Admitted, _ => FlagKind.Distress }, sign.Value is { Length: > 0 } value ? $"{sign.What} {value}" : sign.What,
                sign.Kind == SignKind.Admitted ? "an admission was noted" : "a stop sign was noted", sign.Sources);
    }

    private static IEnumerable<Flag> UnderStop(ChildRecords records, Check check)
    {
        var on = check.OxygenLitresPerMinute is { } l ? $" on {Words.Flow(l)}" : ", oxygen not written";
        if (check.SpO2 is { } spO2 && records.Plan.Number(PlanItem.StopSaturation, records.DayOf(check)) is { } stop && spO2 < stop)
            yield return new(check.When.Stated, FlagKind.LowReading, $"SpO2 {Words.Number(spO2)} %{on}", $"under the plan's stop value, {Words.Number(stop)} %", check.Sources);
    }

    /// <summary>One line a care day: a day on more oxygen is one thing to look at, however often it was written.</summary>
    private static IEnumerable<Flag> AboveUsual(UsualOxygen oxygen, LocalDate day, IReadOnlyList<Check> checks)
    {
        List<Check> above = [.. checks.Where(c => oxygen.StateOf(c.OxygenLitresPerMinute, day) == FlowState.Above).OrderBy(c => c.When.Stated)];
        if (above.Count == 0) yield break;
        var (low, high) = (above.Min(c => c.OxygenLitresPerMinute!.Value), above.Max(c => c.OxygenLitresPerMinute!.Value));
        var flows = low == high ? Words.Flow(high) : $"{Words.Number(low)} to {Words.Flow(high)}";
        // What was written for the whole day has no clock.
        List<LocalDateTime> clocks = [.. above.Where(c => c.When.Precision is not (TimePrecision.DayOnly or TimePrecision.PartOfDay)).Select(c => c.When.Stated)];
        var first = above[0].When.Stated;
        var when = clocks.Count == 0 ? "written for the day"
            : clocks[0] == clocks[^1] ? $"at {Words.Clock(clocks[0])}" : $"written {clocks.Count} times from {Words.Clock(clocks[0])} to {Words.Clock(clocks[^1])}";
        if (clocks.Count > 0 && clocks.Count < above.Count) when += " and for the day";
        yield return new(first, FlagKind.OxygenAboveUsual, $"oxygen {flows}, {when}", $"above the usual, {Words.Flow(oxygen.On(day)!.Value)}", [.. above.SelectMany(c => c.Sources).Distinct()]);
    }

    private static IEnumerable<Flag> Steps(ChildRecords records, TaperStep step)
    {
        if (step is not { Direction: StepDirection.Down, StableHoursBefore: < StableHoursWanted and { } hours }) yield break;
        yield return new(step.From.At(records.Plan.DayStarts), FlagKind.StepUnstable, $"step down to {Words.Number(step.SessionsPerDay)} sessions a day",
            $"taken {Words.Whole(hours)} hours after the last sign, low saturation or change of oxygen (48 hours is the definition of stable here)",
            [.. records.On(step.From).OfType<Session>().SelectMany(s => s.Sources).Take(2)]);
    }
}
