using CareRecords.Records;
using NodaTime;

namespace CareRecords.Findings;

/// <summary>Minutes by part of the chest: what one session gave, what the plan sets, and the parts that this child's sessions usually treat.</summary>
internal sealed class ChestMinutes
{
    private readonly PlanByDay _plan;
    private readonly IReadOnlyList<(Side Side, ChestArea Area, Technique Technique)> _usual;
    private readonly IReadOnlyList<UsualPart> _parts;

    /// <summary>A part is usual when at least half of the sessions that name parts treat it.</summary>
    public ChestMinutes(IReadOnlyCollection<Session> sessions, PlanByDay plan)
    {
        _plan = plan;
        var named = sessions.Where(s => s.Areas.Any(a => a.Minutes is not 0)).ToList();
        IEnumerable<T> Usual<T>(Func<AreaMinutes, T> part) where T : notnull =>
            named.SelectMany(s => s.Areas.Where(a => a.Minutes is not 0).Select(part).Distinct()).GroupBy(p => p).Where(g => 2 * g.Count() >= named.Count).Select(g => g.Key).Order();
        _usual = [.. Usual(a => (a.Side, a.Area, a.Technique))];

        // The plan knows areas and vibration, not whether the words said "percussion"; vibration is set by side, whether or not its areas were named.
        _parts = [.. Usual(a => (a.Side, a.Area, Vibration: IsVibration(a))).GroupBy(p => p.Vibration ? (p.Side, Area: ChestArea.Unknown, p.Vibration) : p)
            .Select(g => new UsualPart(g.Key.Side, g.Key.Area, ItemOf(g.Key.Area, g.Key.Vibration), Math.Max(1, g.Count(p => p.Area is not (ChestArea.Unknown or ChestArea.Whole)))))];
    }

    /// <summary>The parts that a session usually treats, by the plan's item that sets their minutes; empty when no session names parts.</summary>
    public IReadOnlyList<(PlanItem Item, int Parts)> UsualParts => [.. _parts.GroupBy(p => p.Item).Select(g => (g.Key, g.Sum(p => p.Times))).OrderBy(p => p.Key)];

    /// <summary>Minutes that the plan sets for one part: the part's own, else those of every area; null when it says neither.</summary>
    public static double? Planned(PlanByDay plan, PlanItem item, LocalDate day) => plan.Number(item, day) ?? plan.Number(PlanItem.MinutesPerArea, day);

    /// <summary>Median planned minutes over the parts usually treated, as <see cref="PerArea"/> is over those treated; null when the plan does not say.</summary>
    public double? PlannedPerArea(LocalDate day)
    {
        if (_parts.Count == 0) return _plan.Number(PlanItem.MinutesPerArea, day);
        var planned = _parts.SelectMany(p => Enumerable.Repeat(Planned(_plan, p.Item, day), p.Times)).ToList();
        return planned.Any(p => p is null) ? null : Statistics.Quantiles.Median([.. planned.Select(p => p!.Value)]).Value;
    }

    /// <summary>The plan's minutes of lower chest, upper chest and vibration on a day; null when it sets none of them apart.</summary>
    public static PartMinutes? PlannedParts(PlanByDay plan, LocalDate day) => PlanItems.MinutesOfParts.All(i => plan.Number(i, day) is null) ? null
        : new(Planned(plan, PlanItem.MinutesLower, day), Planned(plan, PlanItem.MinutesUpper, day), Planned(plan, PlanItem.MinutesVibration, day));

    /// <summary>
    /// A session's minutes against the plan, part by part: minutes that were not written are unknown, and so is their share of the plan. A session of
    /// which only the total was written is compared as a whole. Null when the plan sets no minutes or no session names parts.
    /// </summary>
    public MinutesAgainstPlan? AgainstPlan(Session session, LocalDate day)
    {
        var usual = _parts.Select(p => (p.Item, p.Times, Planned: p.Times * Planned(_plan, p.Item, day), Done: Done(session, p))).ToList();
        var parts = usual.Where(p => p.Planned is > 0).ToList();
        if (parts.Count == 0) return null;
        var all = parts.Sum(p => p.Planned!.Value);
        var written = parts.Where(p => p.Done is not null).ToList();
        if (session.TotalMinutes is { } total && (session.MinutesWritten is not null || written.Count == 0) && usual.All(p => p.Planned is not null))
            return new(total, all, 0, [.. parts.Select(p => (p.Item, p.Times))]);
        var planned = written.Sum(p => p.Planned!.Value);
        return new(written.Count == 0 ? null : written.Sum(p => p.Done!.Value), planned, all - planned, [.. written.Select(p => (p.Item, p.Times))]);
    }

    /// <summary>Median minutes a part and technique over the parts treated; null when none has its minutes.</summary>
    public static double? PerArea(IEnumerable<Session> sessions)
    {
        var minutes = sessions.SelectMany(s => s.Areas).Where(a => a.Side != Side.Both && a.Minutes is > 0).Select(a => a.Minutes!.Value).ToList();
        return Statistics.Quantiles.Median(minutes) is { IsKnown: true } median ? median.Value : null;
    }

    /// <summary>Median minutes a side of the lower chest, the upper chest and vibration.</summary>
    public static PartMinutes ByPart(IEnumerable<Session> sessions)
    {
        var parts = sessions.SelectMany(s => s.Areas).Where(a => a.Side != Side.Both && a.Minutes is > 0).ToList();
        double? Middle(Func<AreaMinutes, bool> which) =>
            Statistics.Quantiles.Median([.. parts.Where(which).Select(a => a.Minutes!.Value)]) is { IsKnown: true } median ? median.Value : null;
        return new(
            Middle(a => a.Technique != Technique.Vibration && a.Area == ChestArea.Lower),
            Middle(a => a.Technique != Technique.Vibration && a.Area == ChestArea.Upper),
            Middle(a => a.Technique == Technique.Vibration));
    }

    /// <summary>The usual parts that this session left out, in words; none when the session names no parts.</summary>
    public IReadOnlyList<string> LeftOut(Session session)
    {
        if (session.Areas.Count == 0 || session.Areas.Any(a => a.Side is Side.Both or Side.Unknown)) return [];
        var treated = session.Areas.Where(a => a.Minutes is not 0).Select(a => (a.Side, a.Area, a.Technique)).ToHashSet();
        return [.. _usual.Where(p => p.Side is Side.Left or Side.Right && !treated.Contains(p)).Select(Name)];
    }

    /// <summary>Minutes written for a part; null when none were, or not of all that was done to it.</summary>
    private static double? Done(Session session, UsualPart part)
    {
        var vibration = part.Item == PlanItem.MinutesVibration;
        var theirs = session.Areas.Where(a => a.Side == part.Side && IsVibration(a) == vibration && (vibration || a.Area == part.Area)).ToList();
        return theirs.Count == 0 || theirs.Any(a => a.Minutes is null) ? null : theirs.Sum(a => a.Minutes!.Value);
    }

    private static bool IsVibration(AreaMinutes area) => area.Technique == Technique.Vibration;

    private static PlanItem ItemOf(ChestArea area, bool vibration) => vibration ? PlanItem.MinutesVibration : area switch
    {
        ChestArea.Lower => PlanItem.MinutesLower,
        ChestArea.Upper => PlanItem.MinutesUpper,
        _ => PlanItem.MinutesPerArea,
    };

    private static string Name((Side Side, ChestArea Area, Technique Technique) part)
    {
        var side = part.Side == Side.Left ? "left" : "right";
        var area = part.Area is ChestArea.Unknown or ChestArea.Whole ? "" : " " + part.Area.ToString().ToLowerInvariant();
        var technique = part.Technique == Technique.Unknown ? "" : " " + part.Technique.ToString().ToLowerInvariant();
        return side + area + technique;
    }

    /// <param name="Side">Side.</param>
    /// <param name="Area">Area; unknown for vibration.</param>
    /// <param name="Item">The plan's item that sets its minutes.</param>
    /// <param name="Times">How many areas of vibration a side usually gets; 1 for percussion.</param>
    private readonly record struct UsualPart(Side Side, ChestArea Area, PlanItem Item, int Times);
}
