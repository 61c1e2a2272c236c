using CareRecords.Records;
using NodaTime;

namespace CareRecords.Findings;

/// <summary>A child's entries by kind, sorted and placed on the time line once, with the span of care days under review.</summary>
internal sealed class ChildRecords
{
    /// <summary>Stands where there is no day at all; findings.json then says null.</summary>
    private static readonly LocalDate NoDay = new(1970, 1, 1);

    private readonly Dictionary<LocalDate, List<CareEntry>> _byDay;

    private ChildRecords(CareLog log, ReviewOptions options)
    {
        (Log, Options) = (log, options);
        Clock = new(DateTimeZoneProviders.Tzdb[log.Zone]);
        Plan = new(log.Plan);
        var entries = log.Entries.OrderBy(e => e.When.Stated).ToList();
        (AllFeeds, AllDoses) = ([.. entries.OfType<Feed>()], [.. entries.OfType<Dose>()]);
        var days = entries.Select(DayOf).Concat(log.Omitted.Select(o => Plan.DayOf(o.When))).ToList();
        From = options.From ?? days.DefaultIfEmpty(options.To ?? NoDay).Min();
        To = options.To ?? days.DefaultIfEmpty(From).Max();
        entries = [.. entries.Where(e => InSpan(DayOf(e)))];
        Sessions = [.. entries.OfType<Session>()];
        Feeds = [.. entries.OfType<Feed>()];
        Doses = [.. entries.OfType<Dose>()];
        Checks = [.. entries.OfType<Check>()];
        Signs = [.. entries.OfType<Sign>()];
        Omitted = [.. log.Omitted.Where(o => InSpan(Plan.DayOf(o.When))).OrderBy(o => o.When.Stated)];
        _byDay = entries.GroupBy(DayOf).ToDictionary(g => g.Key, g => g.ToList());
        IsEmpty = days.Count == 0 || To < From;
    }

    public static ChildRecords Of(CareLog log, ReviewOptions options) => new(log, options);

    public CareLog Log { get; }

    public ReviewOptions Options { get; }

    public ElapsedTime Clock { get; }

    public PlanByDay Plan { get; }

    /// <summary>True when nothing was written at all.</summary>
    public bool IsEmpty { get; }

    public LocalDate From { get; }

    public LocalDate To { get; }

    /// <summary>Feeds of the whole log: the gap of the first session looks back before the span.</summary>
    public IReadOnlyList<Feed> AllFeeds { get; }

    /// <summary>Doses of the whole log.</summary>
    public IReadOnlyList<Dose> AllDoses { get; }

    public IReadOnlyList<Session> Sessions { get; }

    public IReadOnlyList<Feed> Feeds { get; }

    public IReadOnlyList<Dose> Doses { get; }

    public IReadOnlyList<Check> Checks { get; }

    public IReadOnlyList<Sign> Signs { get; }

    public IReadOnlyList<OmittedSession> Omitted { get; }

    public IEnumerable<CareEntry> Entries => _byDay.OrderBy(d => d.Key).SelectMany(d => d.Value);

    /// <summary>Care days from the first to the last, none left out.</summary>
    public IEnumerable<LocalDate> Days => IsEmpty ? [] : Enumerable.Range(0, Period.DaysBetween(From, To) + 1).Select(From.PlusDays);

    public LocalDate DayOf(CareEntry entry) => Plan.DayOf(entry.When);

    public IReadOnlyList<CareEntry> On(LocalDate day) => _byDay.TryGetValue(day, out var entries) ? entries : [];

    public bool HasRecords(LocalDate day) => _byDay.ContainsKey(day);

    /// <summary>The instant at which a care day starts.</summary>
    public Instant StartOf(LocalDate day) => Clock.Stated(day.At(Plan.DayStarts));

    /// <summary>The instant to place an entry by.</summary>
    public Instant Placed(CareEntry entry) => Clock.Stated(entry.When.Stated);

    /// <summary>From when to when an entry may be placed; one of which only the day is known, anywhere in that care day.</summary>
    public InstantRange Within(CareEntry entry) => entry.When.Precision == TimePrecision.DayOnly ? Whole(DayOf(entry)) : Clock.Of(entry.When);

    /// <summary>A care day from its start to the next.</summary>
    public InstantRange Whole(LocalDate day) => new(StartOf(day), StartOf(day.PlusDays(1)));

    private bool InSpan(LocalDate day) => From <= day && day <= To;
}
