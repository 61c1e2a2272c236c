using CareRecords.Records;

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
            .Concat(records.Checks.SelectMany(c => Readings(records, oxygen, c)))
            .Concat(steps.SelectMany(s => Steps(records, s)))
            .OrderBy(f => f.When),
    ];

    private static IEnumerable<Flag> Gaps(SessionFinding session)
    {
        IReadOnlyList<SourceLine> With(CareEntry? other) => other is null ? session.Session.Sources : [.. session.Session.Sources, .. other.Sources];
        Flag Flag(string why, CareEntry? other) => new(session.Start, $"session at {Words.Clock(session.Start)}", why, With(other));
        var (feed, inhaler) = (session.FeedGap, session.InhalerGap);
        if (feed.FeedRunning) yield return Flag("feed running: a feed was running when the session started", feed.Feed);
        else if (feed.Verdict == GapVerdict.Short) yield return Flag($"feed gap short: {feed.Why}", feed.Feed);
        if (inhaler.Verdict == GapVerdict.Short) yield return Flag($"inhaler gap short: {inhaler.Why}", inhaler.Dose);
    }

    private static IEnumerable<Flag> StopSigns(Session session)
    {
        Flag Flag(string what, string why) => new(session.When.Stated, $"session at {Words.Clock(session.When.Stated)}: {what}", why, session.Sources);
        if (!string.IsNullOrWhiteSpace(session.StoppedEarly)) yield return Flag($"stopped early ({session.StoppedEarly.Trim()})", "a session stopped early was noted");
        if (session.Vomited == true) yield return Flag("vomited", "a stop sign was noted");
    }

    private static IEnumerable<Flag> Signs(Sign sign)
    {
        if (sign.Kind is SignKind.Distress or SignKind.ColourChange or SignKind.Vomit or SignKind.Admitted)
            yield return new(sign.When.Stated, sign.Value is { Length: > 0 } value ? $"{sign.What} {value}" : sign.What,
                sign.Kind == SignKind.Admitted ? "an admission was noted" : "a stop sign was noted", sign.Sources);
    }

    private static IEnumerable<Flag> Readings(ChildRecords records, UsualOxygen oxygen, Check check)
    {
        var day = records.DayOf(check);
        var (reading, flow) = (check.SpO2, check.OxygenLitresPerMinute);
        var on = flow is { } l ? $" on {Words.Flow(l)}" : ", oxygen not written";
        if (reading is { } spO2 && records.Plan.Number(PlanItem.StopSaturation, day) is { } stop && spO2 < stop)
            yield return new(check.When.Stated, $"SpO2 {Words.Number(spO2)} %{on}", $"under the plan's stop value, {Words.Number(stop)} %", check.Sources);
        if (flow is { } litres && oxygen.StateOf(flow, day) == FlowState.Above)
            yield return new(check.When.Stated, $"oxygen {Words.Flow(litres)}", $"above the usual, {Words.Flow(oxygen.On(day)!.Value)}", check.Sources);
    }

    private static IEnumerable<Flag> Steps(ChildRecords records, TaperStep step)
    {
        if (step is not { Direction: StepDirection.Down, StableHoursBefore: < StableHoursWanted and { } hours }) yield break;
        yield return new(step.From.At(records.Plan.DayStarts), $"step down to {Words.Number(step.SessionsPerDay)} sessions a day",
            $"taken {Words.Whole(hours)} hours after the last sign, low saturation or change of oxygen (48 hours is the definition of stable here)",
            [.. records.On(step.From).OfType<Session>().SelectMany(s => s.Sources).Take(2)]);
    }
}
