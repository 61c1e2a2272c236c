using CareRecords.Records;
using NodaTime;

namespace CareRecords.Findings;

/// <summary>Inhaler gaps of sessions: the verdict, the interval of the dose it rests on and a sentence.</summary>
internal sealed class InhalerGaps
{
    private readonly ElapsedTime _clock;
    private readonly PlanByDay _plan;
    private readonly Duration _spread;
    private readonly TimeIndex<(InstantRange At, Dose Dose)> _doses;
    private readonly HashSet<LocalDate> _daysWithDoses;
    private readonly Dictionary<string, DueMedicine> _due = [];

    public InhalerGaps(IReadOnlyCollection<Dose> doses, ElapsedTime clock, PlanByDay plan, Duration spread)
    {
        (_clock, _plan, _spread) = (clock, plan, spread);
        _doses = new(doses.Select(d => (clock.Of(d.When).WidenedBy(spread), d)).Select(d => (d.Item1, d)));
        _daysWithDoses = [.. doses.Select(d => plan.DayOf(d.When))];
    }

    public DueMedicine DueOn(LocalDate day)
    {
        var words = _plan.Value(PlanItem.MedicineBeforeSession, day)?.Text ?? "";
        if (!_due.TryGetValue(words, out var due)) _due[words] = due = DueMedicine.From(words);
        return due;
    }

    public InhalerGapFinding Of(Session session)
    {
        var day = _plan.DayOf(session.When);
        var start = _clock.Of(session.When).WidenedBy(_spread);
        var limit = _plan.Required(PlanItem.InhalerGapMinutes, day, 15);
        var zones = new InhalerZones(limit.Value, _plan.Required(PlanItem.InhalerWindowMinutes, day, 60).Value);
        InhalerGapFinding Finding(double? low, double? high, GapVerdict verdict, string why, Dose? dose) =>
            new(low, high, zones.Limit, zones.Window, limit.IsDefault, verdict, why, dose?.Medicine, dose);

        var due = DueOn(day);
        if (!due.IsAsked) return Finding(null, null, GapVerdict.Unknown, "the plan asks for no medicine before a session", null);
        var near = _doses.Touching(start.Earliest - InhalerZones.ReachDuration, start.Latest)
            .Select(d => (d.At, d.Dose, Due: due.Of(d.Dose))).Where(d => d.Due != Due.No).ToList();
        var possible = InhalerVerdicts.Possible(start, [.. near.Select(d => new PossibleDose(d.At, d.Due == Due.Yes))], zones);
        if (possible.Contains(GapVerdict.None) && !_daysWithDoses.Contains(day))
        {
            possible.Remove(GapVerdict.None);
            possible.Add(GapVerdict.Unknown);
        }

        var verdict = possible.Count == 1 ? possible.Single() : GapVerdict.Unknown;
        if (near.Count == 0 || verdict == GapVerdict.None)
            return Finding(null, null, verdict, verdict == GapVerdict.None ? "medicines were written that day, but none due before a session in the 4 hours before" : "no medicine was written that day", null);

        var used = near.OrderBy(d => Rank(start, d.At, d.Due, zones)).ThenByDescending(d => d.At.Latest).First();
        var (low, high) = (Math.Max(0, (start.Earliest - used.At.Latest).TotalMinutes), Math.Max(0, (start.Latest - used.At.Earliest).TotalMinutes));
        return Finding(low, high, verdict, Why(verdict, low, high, used.Dose, used.Due, zones), used.Dose);
    }

    /// <summary>The dose to show: one that certainly satisfies the rule, one that may, then the nearest.</summary>
    private static int Rank(InstantRange start, InstantRange at, Due due, InhalerZones zones)
    {
        var (least, most) = (start.Earliest - at.Latest, start.Latest - at.Earliest);
        var certain = least >= zones.LimitDuration && most <= zones.WindowDuration;
        var may = most >= zones.LimitDuration && least <= zones.WindowDuration;
        return certain && due == Due.Yes ? 0 : may && due == Due.Yes ? 1 : may ? 2 : 3;
    }

    private static string Why(GapVerdict verdict, double low, double high, Dose dose, Due due, InhalerZones zones)
    {
        var name = due == Due.Maybe ? $"a medicine that is not named (\"{dose.MedicineAsWritten ?? dose.Medicine}\")" : dose.Medicine;
        var gap = $"{name} {Words.Minutes(low, high)} before";
        return verdict switch
        {
            GapVerdict.Kept => $"{gap}: {Words.Number(zones.Limit)} to {Words.Number(zones.Window)} minutes",
            GapVerdict.Short => $"{gap}: under {Words.Number(zones.Limit)}",
            GapVerdict.Early => $"{gap}: more than {Words.Number(zones.Window)}",
            _ => $"{gap}: the notes do not say enough to tell",
        };
    }
}
