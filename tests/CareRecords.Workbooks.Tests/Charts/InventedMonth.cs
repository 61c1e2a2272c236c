using CareRecords.Findings;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Workbooks.Tests.Charts;

/// <summary>
/// An invented family's records with findings set by hand for the charts: an illness, a step up, a wean with a setback, short and
/// unknown gaps, a clock change and a day on which nothing was written. The figures are a scenario, not a calculation.
/// </summary>
internal sealed class InventedMonth
{
    public static readonly LocalDate First = new(2026, 3, 14);
    private static readonly LocalTime DayStarts = new(4, 0);
    private readonly List<CareEntry> _entries = [];
    private readonly List<SessionFinding> _sessions = [];
    private readonly List<OmittedSession> _omitted = [];
    private int _line;

    private InventedMonth()
    {
    }

    public static (CareLog Log, ChildFindings Findings) Of(int days = 30)
    {
        var month = new InventedMonth();
        for (var d = 0; d < days; d++) month.Write(d);
        var log = month.ToLog();
        return (log, InventedFindings.Of(log, month._sessions, days, PerDay, EpisodeOn, MinutesOn, Missing));
    }

    /// <summary>Sessions on a day of the scenario, which repeats after 60 days.</summary>
    private static int PerDay(int d) => (d % 60) switch { < 6 => 2, < 11 => 4, < 14 => 3, < 17 => 2, < 20 => 3, _ => 2 };

    private static string? EpisodeOn(int d) => (d % 60) is >= 6 and < 14 ? FormattableString.Invariant($"E{d / 60 * 2 + 1}") : (d % 60) is >= 17 and < 20 ? FormattableString.Invariant($"E{d / 60 * 2 + 2}") : null;

    private static double MinutesOn(int d) => EpisodeOn(d) is null ? 3 : 4;

    private static bool Missing(int d) => d % 60 == 22;

    private void Write(int d)
    {
        if (Missing(d)) return;
        var day = First.PlusDays(d);
        LocalTime[] starts = PerDay(d) switch
        {
            4 => [new(7, 20), new(11, 30), new(15, 40), new(19, 45)],
            3 => [new(7, 10), new(13, 5), new(19, 30)],
            _ => [new(7, 5), new(18, 50)],
        };
        for (var n = 0; n < starts.Length; n++)
        {
            if (d == 24 && n == 1)
            {
                _omitted.Add(new OmittedSession(UncertainTime.Exactly(day.At(starts[n])), "asleep", Line("physio skipped, asleep")));
                continue;
            }
            WriteSession(d, n, day.At(starts[n]).PlusMinutes(d * 7 % 5 * 5));
        }
        AddFeed(day.At(new LocalTime(22, 0)), 420);
        if (d == 6) Add(new Sign { Sources = [Line("unwell")], Start = UncertainTime.Exactly(day.At(new LocalTime(9, 0))), Kind = SignKind.Unwell, What = "unwell" });
    }

    private void WriteSession(int d, int n, LocalDateTime start)
    {
        var minutes = MinutesOn(d) * 4;
        var about = d % 9 == 4 && n == 1;
        var session = new Session
        {
            Sources = [Line("physio")],
            Start = about ? UncertainTime.Between(start.PlusMinutes(-15), start, start.PlusMinutes(15), TimePrecision.About) : UncertainTime.Exactly(start),
            MinutesWritten = d % 11 == 5 ? null : minutes,
        };
        Add(session);
        var (feed, feedGap) = FeedBefore(d, n, start, about ? 15 : 0);
        var (dose, inhalerGap) = DoseBefore(d, n, start);
        var flow = EpisodeOn(d) is null ? 0.5 : d % 60 is >= 8 and < 11 ? 1.5 : 1.0;
        var spo2 = (EpisodeOn(d) is null ? 95 : flow > 1 ? 90 : 92) + (d * 3 + n * 2) % 3;
        Reading(start.PlusMinutes(-6), spo2, d == 3 ? null : flow, CheckPhase.Before);
        Reading(start.PlusMinutes(25), Math.Min(100, spo2 + 1 + n % 2), flow, CheckPhase.After);
        if (d % 4 == 1 && n == 0) Reading(start.PlusHours(4), spo2, flow, CheckPhase.None);
        _sessions.Add(new SessionFinding
        {
            Number = _sessions.Count + 1,
            Session = session,
            Start = start,
            CareDay = CareDay.Of(start, DayStarts),
            Minutes = session.TotalMinutes,
            FeedGap = feedGap with { Feed = feed },
            InhalerGap = inhalerGap with { Dose = dose, Medicine = dose?.Medicine },
            Episode = EpisodeOn(d),
        });
    }

    private (Feed? Feed, FeedGapFinding Gap) FeedBefore(int d, int n, LocalDateTime start, int room)
    {
        if ((d + n) % 8 == 5)
            return (null, new FeedGapFinding(null, null, 30, true, GapVerdict.Unknown, "no feed was written in the 12 hours before", null, false));
        if ((d + n) % 7 == 6)
        {
            // Only the start was written: the feed may have ended any time in the hour after it.
            var feed = AddFeed(start.PlusMinutes(-75), null);
            return (feed, new FeedGapFinding(15, 75, 30, true, GapVerdict.Unknown, "the feed's end was not written", feed, false));
        }
        var gap = ((d * 5 + n * 3) % 9) switch { 0 => 12, 1 => 20, 2 => 30, 3 => 40, 4 => 45, 5 => 60, 6 => 75, 7 => 95, _ => 160 };
        if (d == 9 && n == 2) gap = 0;
        var last = AddFeed(start.PlusMinutes(-gap - 40), 40);
        var (low, high) = (Math.Max(0, gap - room), gap + room);
        var verdict = low >= 30 ? GapVerdict.Kept : high < 30 ? GapVerdict.Short : GapVerdict.Unknown;
        return (last, new FeedGapFinding(low, high, 30, true, verdict, "", last, gap == 0));
    }

    private (Dose? Dose, InhalerGapFinding Gap) DoseBefore(int d, int n, LocalDateTime start)
    {
        if ((d + n) % 10 == 7) return (null, new InhalerGapFinding(null, null, 15, 60, false, GapVerdict.Unknown, "no medicine log", null, null));
        if ((d + n) % 13 == 4) return (null, new InhalerGapFinding(null, null, 15, 60, false, GapVerdict.None, "none", null, null));
        var gap = ((d * 4 + n) % 9) switch { 0 => 8, 1 => 10, 2 => 15, 3 => 18, 4 => 20, 5 => 25, 6 => 22, 7 => 95, _ => 30 };
        var dose = new Dose { Sources = [Line("blue 4 puffs")], Start = UncertainTime.Exactly(start.PlusMinutes(-gap)), Medicine = "salbutamol" };
        Add(dose);
        var verdict = gap < 15 ? GapVerdict.Short : gap > 60 ? GapVerdict.Early : GapVerdict.Kept;
        return (dose, new InhalerGapFinding(gap, gap, 15, 60, false, verdict, "", "salbutamol", dose));
    }

    private Feed AddFeed(LocalDateTime start, int? minutes)
    {
        var feed = new Feed
        {
            Sources = [Line("feed")],
            Start = UncertainTime.Exactly(start),
            End = minutes is { } m ? UncertainTime.Exactly(start.PlusMinutes(m)) : null,
            Route = FeedRoute.PumpedTube,
        };
        Add(feed);
        return feed;
    }

    private void Reading(LocalDateTime at, double spo2, double? flow, CheckPhase phase) =>
        Add(new Check { Sources = [Line("sats")], Start = UncertainTime.Exactly(at), SpO2 = spo2, OxygenLitresPerMinute = flow, Phase = phase });

    private void Add(CareEntry entry) => _entries.Add(entry);

    private SourceLine Line(string text) => SourceLine.InText("notes.txt", ++_line, text);

    private CareLog ToLog() => new()
    {
        Zone = "Europe/London",
        ZoneFrom = "the plan",
        Entries = [.. _entries.OrderBy(e => e.When.Stated)],
        Omitted = _omitted,
        Plan = new CarePlan
        {
            Rows =
            [
                new(null, PlanItem.UsualOxygen, "0.5", 0.5, 0.5, null),
                new(null, PlanItem.StopSaturation, "88", 88, 88, null),
                new(null, PlanItem.InhalerGapMinutes, "15", 15, 15, null),
                new(null, PlanItem.SessionsPerDay, "2", 2, 2, null),
            ],
        },
    };
}
