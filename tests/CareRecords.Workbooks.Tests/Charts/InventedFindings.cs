using CareRecords.Findings;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Workbooks.Tests.Charts;

/// <summary>The findings of an invented month: counted from its sessions where they are counts, set by hand where they would be estimates.</summary>
internal static class InventedFindings
{
    public static ChildFindings Of(
        CareLog log, IReadOnlyList<SessionFinding> sessions, int count, Func<int, int> perDay, Func<int, string?> episodeOn, Func<int, double> minutesOn, Func<int, bool> missing)
    {
        var days = Enumerable.Range(0, count).Select(d => Day(log, sessions, d, perDay, episodeOn, minutesOn, missing)).ToList();
        var span = new ReviewSpan(
            InventedMonth.First, InventedMonth.First.PlusDays(count - 1), "Europe/London", new LocalTime(4, 0), days.Count(d => d.HasRecords), [.. days.Where(d => !d.HasRecords).Select(d => d.Day)]);
        var episodes = days.Where(d => d.Episode is not null).GroupBy(d => d.Episode!).Select(g => Episode(g.Key, g.First().Day, g.Count(), g.Last().Day == span.To)).ToList();
        var readings = log.Entries.OfType<Check>().Where(c => c.SpO2 is not null).ToList();
        return new ChildFindings
        {
            Span = span,
            Plan = [],
            Sessions = sessions,
            Days = days,
            Adherence = Adherence(sessions, days),
            Baseline = new Baseline(95.6, 94, 98, 95, 96.2, 0.5, true, 19, 70, false, "set by hand"),
            Illness = new IllnessFindings
            {
                Episodes = episodes,
                MainDefinition = "by the record",
                ByRecord = episodes,
                ByModel = [],
                IllnessDays = (days.Count(d => d.Episode is not null), 0, 0),
                Spread = "",
            },
            Taper = new TaperFindings(Planned(count), Done(days), "Stepped down twice; went up again once."),
            Recovery = Recovery(episodes),
            SessionEffect = new SessionEffect(0, 0, null, null, null, null, "", "", []),
            SaturationByFlow = [.. readings.GroupBy(r => r.OxygenLitresPerMinute).OrderBy(g => g.Key ?? 99).Select(AtFlow)],
            Quality = new QualityFindings { Days = count, DaysWithRecords = span.DaysWithRecords, ByKind = [], ClockMinutes = new DigitPreference(sessions.Count * 3, 0.83, 0.31, 415) },
            Flags = [],
        };
    }

    private static DayFinding Day(
        CareLog log, IReadOnlyList<SessionFinding> sessions, int d, Func<int, int> perDay, Func<int, string?> episodeOn, Func<int, double> minutesOn, Func<int, bool> missing)
    {
        var day = InventedMonth.First.PlusDays(d);
        var mine = sessions.Where(s => s.CareDay == day).ToList();
        var usual = log.Entries.OfType<Check>().Where(c => c.When.Stated.Date == day && c.OxygenLitresPerMinute == 0.5 && c.SpO2 is not null).Select(c => c.SpO2!.Value).Order().ToList();
        return new DayFinding
        {
            Day = day,
            HasRecords = !missing(d),
            SessionsDone = mine.Count,
            SessionsPlanned = d is >= 6 and < 12 ? 4 : perDay(d),
            SessionsOmittedWithReason = log.Omitted.Count(o => o.When.Stated.Date == day),
            Minutes = mine.Any(s => s.Minutes is not null) ? mine.Sum(s => s.Minutes ?? 0) : null,
            SessionsWithoutMinutes = mine.Count(s => s.Minutes is null),
            MinutesPerArea = missing(d) ? null : minutesOn(d),
            MedianSpO2AtUsualOxygen = usual.Count == 0 ? null : usual[usual.Count / 2],
            Episode = episodeOn(d),
        };
    }

    private static EpisodeFinding Episode(string id, LocalDate onset, int days, bool atEnd) => new()
    {
        Id = id,
        Onset = onset,
        OnsetLow = onset,
        OnsetHigh = onset.PlusDays(1),
        Recovery = new RecoveryFinding(days - 0.6, atEnd ? null : days + 0.8, days + 0.2, days - 1.1, atEnd ? null : days + 1.9, 0.95, atEnd, "Return curve with reading noise.")
        {
            Curve = [.. Enumerable.Range(0, 4 * (days + 4)).Select(i => i / 4.0).Select(x => new CurvePoint(x, 95.6 - 4.5 * Math.Exp(-Math.Max(0, x - 1) / 2.8), 95.6 - 4.5 * Math.Exp(-Math.Max(0, x - 1) / 2.8) - 1.1, 95.6 - 4.5 * Math.Exp(-Math.Max(0, x - 1) / 2.8) + 1.1))],
        },
    };

    private static RecoveryOverEpisodes Recovery(List<EpisodeFinding> episodes) => new(
        [new(0, 1, null, null), new(2.8, 0.75, 0.4, 1), new(4.1, 0.5, 0.15, 0.9), new(8.2, 0.25, 0.02, 0.7)], 4.1, 2.8, null, episodes.Count, episodes.Count(e => e.Recovery.Censored),
        "Nonparametric estimate for interval-censored times (Turnbull 1976).");

    private static List<PlannedStep> Planned(int count)
    {
        List<PlannedStep> steps =
        [
            new(InventedMonth.First, InventedMonth.First.PlusDays(5), 2, 3), new(InventedMonth.First.PlusDays(6), InventedMonth.First.PlusDays(11), 4, 4),
            new(InventedMonth.First.PlusDays(12), InventedMonth.First.PlusDays(15), 3, 4), new(InventedMonth.First.PlusDays(16), InventedMonth.First.PlusDays(Math.Max(16, count - 1)), 2, 3),
        ];
        return [.. steps.Where(s => Period.DaysBetween(InventedMonth.First, s.From) < count)];
    }

    private static List<TaperStep> Done(List<DayFinding> days)
    {
        var steps = new List<TaperStep>();
        for (var i = 0; i < days.Count; i++)
        {
            var first = i;
            while (i + 1 < days.Count && (!days[i + 1].HasRecords || Near(days[i + 1], days[first]))) i++;
            var load = days[first].SessionsDone;
            var direction = steps.Count == 0 ? StepDirection.Same : load > steps[^1].SessionsPerDay ? StepDirection.Up : StepDirection.Down;
            if (direction == StepDirection.Up && steps.Count > 2) steps[^1] = steps[^1] with { FollowedBy = StepOutcome.Setback, FollowedByWhat = "up again" };
            steps.Add(new TaperStep
            {
                Id = FormattableString.Invariant($"S{steps.Count + 1}"),
                From = days[first].Day,
                To = days[i].Day,
                SessionsPerDay = load,
                MinutesPerArea = days[first].MinutesPerArea,
                Direction = direction,
                FollowedBy = StepOutcome.Steady,
            });
        }
        return steps;
    }

    private static bool Near(DayFinding a, DayFinding b) => a.SessionsDone + a.SessionsOmittedWithReason == b.SessionsDone && a.MinutesPerArea == b.MinutesPerArea;

    private static SaturationAtFlow AtFlow(IGrouping<double?, Check> group)
    {
        var values = group.Select(c => c.SpO2!.Value).Order().ToList();
        return new SaturationAtFlow(group.Key, values.Count, 1, values[values.Count / 2], values[values.Count / 4], values[values.Count * 3 / 4], values[0], values[^1]);
    }

    private static AdherenceFindings Adherence(IReadOnlyList<SessionFinding> sessions, IReadOnlyList<DayFinding> days)
    {
        var weeks = sessions.GroupBy(s => s.CareDay.PlusDays(1 - (int)s.CareDay.DayOfWeek)).OrderBy(g => g.Key)
            .Select(g => Group(g.Key, [.. g], [.. days.Where(d => d.Day >= g.Key && d.Day < g.Key.PlusDays(7))])).ToList();
        return new AdherenceFindings
        {
            Overall = Group(null, sessions, days),
            ByWeek = weeks,
            RunCharts = [new(RunSeriesKind.Sessions, null, "sessions a day", 2, 14, 6, 7, 3, 4, true), new(RunSeriesKind.FeedGapsKept, null, "share of feed gaps kept a day, per cent", 100, 8, 5, 6, 4, 2, null)],
        };
    }

    private static AdherenceGroup Group(LocalDate? from, IReadOnlyList<SessionFinding> sessions, IReadOnlyList<DayFinding> days) => new(
        from is { } day ? $"week from {day}" : "all", from, from?.PlusDays(6),
        Share(sessions.Select(s => s.FeedGap.Verdict)), Share(sessions.Select(s => s.InhalerGap.Verdict)), null,
        Share(days.Where(d => d.HasRecords).Select(d => d.SessionsDone >= d.SessionsPlanned ? GapVerdict.Kept : GapVerdict.Short)), null);

    /// <summary>Wilson's interval (1927), so that the pictures have intervals of a likely width.</summary>
    private static ShareKept Share(IEnumerable<GapVerdict> verdicts)
    {
        var all = verdicts.ToList();
        var (kept, unknown) = (all.Count(v => v == GapVerdict.Kept), all.Count(v => v == GapVerdict.Unknown));
        var (judged, z2) = (all.Count - unknown, 1.96 * 1.96);
        if (judged == 0) return new ShareKept(0, 0, unknown, null, null, null, 0.95, "Wilson", null, null, unknown == 0 ? null : 0, unknown == 0 ? null : 1, null);
        var p = (double)kept / judged;
        var centre = (p + z2 / (2 * judged)) / (1 + z2 / judged);
        var half = 1.96 / (1 + z2 / judged) * Math.Sqrt(p * (1 - p) / judged + z2 / (4.0 * judged * judged));
        return new ShareKept(
            kept, judged, unknown, p, centre - half, centre + half, 0.95, "Wilson", centre - half, centre + half, (double)kept / all.Count, (double)(kept + unknown) / all.Count, null);
    }
}
