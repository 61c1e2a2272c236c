using NodaTime;

namespace CareRecords.Findings;

/// <summary>What is said of each session by itself; episodes and steps are linked later.</summary>
internal static class SessionFindings
{
    public static IReadOnlyList<SessionFinding> Of(ChildRecords records, ChestMinutes chest)
    {
        var feeds = new FeedGaps(records.AllFeeds, records.Clock, records.Plan, Duration.Zero);
        var inhalers = new InhalerGaps(records.AllDoses, records.Clock, records.Plan, Duration.Zero);
        var order = new OrderCheck(records.Sessions, records.Doses, records.Clock, d => inhalers.DueOn(records.DayOf(d)).Of(d) == Due.Yes);
        var readings = new NearbyReadings(records);
        return
        [
            .. records.Sessions.Select((s, i) =>
            {
                var day = records.DayOf(s);
                var (before, after) = readings.Around(s);
                return new SessionFinding
                {
                    Number = i + 1,
                    Session = s,
                    Start = s.When.Stated,
                    CareDay = day,
                    Minutes = s.TotalMinutes,
                    MinutesPerArea = ChestMinutes.PerArea([s]),
                    MinutesPerAreaPlanned = chest.PlannedPerArea(day),
                    AgainstPlan = chest.AgainstPlan(s, day),
                    AreasLeftOut = chest.LeftOut(s),
                    FeedGap = feeds.Of(s),
                    InhalerGap = inhalers.Of(s),
                    Order = order.Of(s),
                    Before = before,
                    After = after,
                };
            }),
        ];
    }
}
