using CareRecords.Records;
using CareRecords.Simulation;
using CareRecords.Statistics;
using NodaTime;

namespace CareRecords.Studies;

/// <summary>Makes families differ: how often a feed runs on too near a session, and how often a step down is followed by more sessions again.</summary>
internal static class FamilyHabits
{
    public static CareLog Of(CareLog log, Truth truth, int seed)
    {
        var random = new SeededRandom(seed);
        var leavesTime = Share(1.6 + (0.9 * random.Gaussian()));
        var goesBack = Share(-0.8 + (0.8 * random.Gaussian()));
        var sessions = log.Entries.OfType<Session>().ToList();
        var nearer = sessions.Where(_ => random.Uniform() > leavesTime).Select(s => At(s)).ToList();
        var entries = log.Entries.Select(e => e is Feed { End: { } end } feed ? Nearer(feed, end.Stated, nearer, random) : e).ToList();
        for (var i = 1; i < truth.Steps.Count; i++)
            if (truth.Steps[i].SessionsPerDay < truth.Steps[i - 1].SessionsPerDay && random.Uniform() < goesBack) entries.AddRange(More(sessions, truth.Steps[i].From));
        return log with { Entries = [.. entries.OrderBy(e => e.When.Stated)] };
    }

    /// <summary>A feed that ended in good time before one of the sessions ends 5 to 25 minutes before it instead.</summary>
    private static Feed Nearer(Feed feed, LocalDateTime end, List<LocalDateTime> sessions, SeededRandom random)
    {
        foreach (var session in sessions)
        {
            var gap = Period.Between(end, session, PeriodUnits.Minutes).Minutes;
            if (gap is >= 30 and <= 100) return feed with { End = UncertainTime.Exactly(session.PlusMinutes(-5 - random.Below(21))) };
        }

        return feed;
    }

    /// <summary>Two more sessions on each of the third to fifth day of a step.</summary>
    private static IEnumerable<Session> More(List<Session> sessions, LocalDate from)
    {
        for (var day = 2; day < 5; day++)
        {
            var date = from.PlusDays(day);
            if (sessions.Find(s => At(s).Date == date) is not { } like) continue;
            foreach (var clock in (LocalTime[])[new(10, 50), new(16, 20)]) yield return like with { Start = UncertainTime.Exactly(date.At(clock)) };
        }
    }

    private static LocalDateTime At(Session session) => session.When.Stated;

    private static double Share(double logit) => 1 / (1 + Math.Exp(-logit));
}
