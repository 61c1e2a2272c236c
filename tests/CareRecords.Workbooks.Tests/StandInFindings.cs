using CareRecords.Findings;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Workbooks.Tests;

/// <summary>Findings with every figure unknown, for workbooks of odd months whose figures do not matter.</summary>
internal static class StandInFindings
{
    public static ChildFindings For(CareLog log)
    {
        var days = log.Entries.Select(e => CareDay.Of(e.When.Stated, log.Plan.DayStarts)).ToList();
        var (from, to) = days.Count == 0 ? (SampleMonth.First, SampleMonth.First) : (days.Min(), days.Max());
        var sessions = log.Entries.OfType<Session>().Select((s, i) => new SessionFinding
        {
            Number = i + 1,
            Session = s,
            Start = s.When.Stated,
            CareDay = CareDay.Of(s.When.Stated, log.Plan.DayStarts),
            Minutes = s.TotalMinutes,
            FeedGap = new(null, null, 30, true, GapVerdict.Unknown, "no feed was written in the 12 hours before", null, false),
            InhalerGap = new(null, null, 15, 60, true, GapVerdict.Unknown, "no medicine was written that day", null, null),
        }).ToList();
        var all = Enumerable.Range(0, Period.DaysBetween(from, to) + 1).Select(from.PlusDays).ToList();
        var unknown = new ShareKept(0, 0, sessions.Count, null, null, null, 0.95, "no session could be judged", null, null, sessions.Count == 0 ? null : 0, sessions.Count == 0 ? null : 1, null);
        var overall = new AdherenceGroup("all", null, null, unknown, unknown, new(sessions.Count, null, null, 0), null, null);
        return new ChildFindings
        {
            Span = new(from, to, log.Zone, log.Plan.DayStarts, days.Distinct().Count(), [.. all.Except(days)]),
            Plan = [.. log.Plan.Rows.Select(r => new PlanValueInForce(r.Item, PlanItems.Describe(r.Item).Name, r.From, r.Value, "", false, "", r.Source))],
            Sessions = sessions,
            Days = [.. all.Select(d => new DayFinding { Day = d, HasRecords = days.Contains(d), SessionsDone = sessions.Count(s => s.CareDay == d), FeedGaps = new(0, 0, sessions.Count(s => s.CareDay == d)), InhalerGaps = new(0, 0, sessions.Count(s => s.CareDay == d)) })],
            Adherence = new AdherenceFindings { Overall = overall, ByWeek = [] },
            Baseline = null,
            BaselineMissing = "too few readings",
            Illness = new IllnessFindings { Episodes = [], MainDefinition = "by the record", ByRecord = [], ByModel = [], ModelMissing = "too few days", IllnessDays = (0, 0, 0), Spread = "No episode by either definition." },
            Taper = new([], [], "No step was found."),
            Recovery = new([], null, null, null, 0, 0, "No episode."),
            SessionEffect = new(0, 0, null, null, null, null, "Too few pairs.", "One reading may be off by 2 to 4 points.", []),
            SaturationByFlow = [],
            Quality = new QualityFindings { Days = all.Count, DaysWithRecords = days.Distinct().Count(), ByKind = [], ClockMinutes = new(0, null, null, null) },
            Flags = [],
        };
    }
}
