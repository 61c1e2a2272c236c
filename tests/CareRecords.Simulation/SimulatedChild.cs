using CareRecords.Records;
using NodaTime;

namespace CareRecords.Simulation;

/// <summary>
/// A child whose truth is known, and the log that a family would have kept. Written without a look at the analysis: the verdicts here
/// are worked out again from the true instants.
/// </summary>
public sealed class SimulatedChild
{
    private const double FeedLimit = 30, InhalerLimit = 15, InhalerWindow = 60;

    private readonly SimulationOptions _options;
    private readonly Random _random;
    private readonly DateTimeZone _zone;
    private readonly List<CareEntry> _entries = [];
    private readonly List<(Instant Start, Instant End, bool Written)> _feeds = [];
    private readonly List<Instant> _doses = [];
    private readonly List<LocalDateTime> _sessionStarts = [];
    private readonly HashSet<LocalDate> _silent = [];
    private readonly List<TrueIllness> _illnesses = [];
    private readonly List<TrueStep> _steps = [];
    private readonly List<(double Day, double Flow)> _flows = [];
    private double _error;
    private int _line;

    private SimulatedChild(SimulationOptions options)
    {
        _options = options;
        _random = new Random(options.Seed);
        _zone = DateTimeZoneProviders.Tzdb[options.Zone];
        Baseline = Math.Round(93.5 + (4 * _random.NextDouble()), 1);
        Usual = options.GetsExtraOxygen ? new[] { 0, 0.25, 0.5 }[_random.Next(3)] : 0;
    }

    private double Baseline { get; }

    private double Usual { get; }

    /// <summary>Makes the child of these options.</summary>
    public static (CareLog Log, Truth Truth) Make(SimulationOptions options)
    {
        var child = new SimulatedChild(options);
        child.FallIll();
        child.TakeSteps();
        for (var day = 0; day < options.Days; day++)
            if (child._random.NextDouble() < options.DaysNotWritten) child._silent.Add(options.FirstDay.PlusDays(day));
        child.BreatheThroughTheDays();
        return (child.Log(), child.TheTruth());
    }

    private double Between(double low, double high) => low + ((high - low) * _random.NextDouble());

    private double DeficitAt(double day) => _illnesses.Count == 0 ? 0 : _illnesses.Max(i => i.DeficitAt(day));

    private void FallIll()
    {
        var wanted = _options.Illnesses ?? Math.Max(1, Math.Min(4, _options.Days / 40));
        var free = 15.0;
        for (var n = 0; n < wanted; n++)
        {
            var room = (_options.Days - free) / (wanted - n);
            if (room < 8) break;
            var illness = new TrueIllness(free + Between(0, Math.Max(0.5, room - 22)), Between(0.5, 1.8), Between(0.5, 3), Between(4, 8),
                (ReturnShape)_random.Next(3), 1);
            illness = illness with { ReturnDays = illness.Shape switch { ReturnShape.Exponential => Between(1, 3), ReturnShape.Linear => Between(3, 9), _ => Between(2, 5) } };
            _illnesses.Add(illness);
            free = illness.StaysUnder(0.2) + 9;
        }
    }

    private void TakeSteps()
    {
        _steps.Add(new TrueStep(_options.FirstDay, 2, 2.5));
        foreach (var illness in _illnesses)
        {
            var up = (int)Math.Floor(illness.Onset + Between(0.4, 1.2));
            var most = _random.Next(4, 6);
            AddStep(up, most, 3);
            var day = Math.Max(up + 3, (int)Math.Ceiling(illness.ReturnBegins + Between(0.5, 1.5)));
            for (var sessions = most - 1; sessions >= 2; sessions--)
            {
                AddStep(day, sessions, sessions == 2 ? 2.5 : 3);
                day += _random.Next(3, 5);
            }
        }
    }

    private void AddStep(int day, int sessions, double minutes)
    {
        if (day < _options.Days) _steps.Add(new TrueStep(_options.FirstDay.PlusDays(day), sessions, minutes));
    }

    private void BreatheThroughTheDays()
    {
        _flows.Add((0, Usual));
        var lag = Between(0.5, 1.4);
        double? couldLowerSince = null;
        Instant busyUntil = default;
        for (var n = 0; n < _options.Days; n++)
        {
            var day = _options.FirstDay.PlusDays(n);
            var step = _steps.Last(s => s.From <= day);
            busyUntil = NightFeed(day, busyUntil);
            var sessions = SessionClocks(step.SessionsPerDay).Select(minute => day.AtMidnight().PlusMinutes(minute)).ToList();
            var checks = Enumerable.Range(0, _options.ChecksPerDay)
                .Select(k => day.AtMidnight().PlusMinutes((long)((7 * 60) + (((k + Between(0.1, 0.9)) / _options.ChecksPerDay) * 15 * 60)))).ToList();
            foreach (var (at, isSession) in sessions.Select(s => (s, true)).Concat(checks.Select(c => (c, false))).OrderBy(e => e.Item1))
            {
                TurnOxygen(at, lag, ref couldLowerSince);
                if (isSession) busyUntil = Treat(at, step.MinutesPerArea, busyUntil); else Read(at, CheckPhase.None);
            }

            var illness = _illnesses.FirstOrDefault(i => i.Onset >= n && i.Onset < n + 1);
            if (illness is not null && _random.NextDouble() < _options.SignsWritten) Note(day.At(new LocalTime(20, 30)), SignKind.Unwell, "unwell");
        }
    }

    private IEnumerable<long> SessionClocks(int sessions) =>
        Enumerable.Range(0, sessions).Select(k => (long)((7 * 60) + 30 + (k * (13.0 * 60) / Math.Max(1, sessions - 1)) + Between(-20, 20)));

    /// <summary>Extra oxygen is turned up when the child is three points under, and down later than it could be.</summary>
    private void TurnOxygen(LocalDateTime at, double lag, ref double? couldLowerSince)
    {
        if (!_options.GetsExtraOxygen) return;
        var day = DaysIn(at);
        var flow = _flows[^1].Flow;
        var deficit = DeficitAt(day);
        var seen = Seen(deficit, flow);
        if (seen > 3 && flow < Usual + 2)
        {
            _flows.Add((day, flow + 0.5));
            couldLowerSince = null;
        }
        else if (flow > Usual && Seen(deficit, flow - 0.5) < 1.2)
        {
            couldLowerSince ??= day;
            if (day - couldLowerSince < lag) return;
            _flows.Add((day, Math.Max(Usual, flow - 0.5)));
            couldLowerSince = null;
        }
        else
        {
            couldLowerSince = null;
            return;
        }

        if (_random.NextDouble() < _options.OxygenWritten) Add(new Check { Sources = Source("check"), Start = Written(at), OxygenLitresPerMinute = _flows[^1].Flow }, at);
    }

    /// <summary>Half a litre covers two and a half points.</summary>
    private double Seen(double deficit, double flow) => Math.Max(0, deficit - (5 * (flow - Usual)));

    private Instant NightFeed(LocalDate day, Instant busyUntil)
    {
        var start = day.PlusDays(-1).At(new LocalTime(22, 0)).PlusMinutes(_random.Next(0, 40));
        var end = day.At(new LocalTime(6, 0)).PlusMinutes(_random.Next(0, 45));
        if (InstantOf(start) < busyUntil) return busyUntil;
        AddFeed(start, end, FeedRoute.PumpedTube, day.PlusDays(-1));
        return InstantOf(end);
    }

    private Instant Treat(LocalDateTime at, double minutes, Instant busyUntil)
    {
        if (_random.NextDouble() < 0.02) return busyUntil;
        var start = InstantOf(at);
        var gap = _random.NextDouble() < 0.75 ? _random.Next(30, 80) : _random.Next(0, 30);
        var feedEnd = at.PlusMinutes(-gap);
        var feedStart = feedEnd.PlusMinutes(-_random.Next(15, 30));
        if (InstantOf(feedStart) > busyUntil && at.Hour > 8) AddFeed(feedStart, feedEnd, FeedRoute.BolusTube, at.Date);

        var chance = _random.NextDouble();
        if (chance < 0.9) AddDose(at.PlusMinutes(-(chance < 0.7 ? _random.Next(15, 61) : chance < 0.8 ? _random.Next(1, 15) : _random.Next(61, 200))), "salbutamol");
        AddDose(at.PlusMinutes(45), "budesonide");

        if (_random.NextDouble() < _options.SessionsWithChecks)
        {
            Read(at.PlusMinutes(-4), CheckPhase.Before);
            Read(at.PlusMinutes((long)((6 * minutes) + 6)), CheckPhase.After);
        }

        var areas = new List<AreaMinutes>();
        foreach (var side in new[] { Side.Left, Side.Right })
        {
            areas.Add(new AreaMinutes(side, ChestArea.Lower, Technique.Percussion, minutes));
            areas.Add(new AreaMinutes(side, ChestArea.Upper, Technique.Percussion, minutes));
            areas.Add(new AreaMinutes(side, ChestArea.Unknown, Technique.Vibration, minutes));
        }

        if (Add(new Session { Sources = Source("session"), Start = Written(at), Areas = areas }, at)) _sessionStarts.Add(at);
        return start.Plus(Duration.FromMinutes((long)(6 * minutes) + 5));
    }

    private void Read(LocalDateTime at, CheckPhase phase)
    {
        var day = DaysIn(at);
        var flow = _flows.Last(f => f.Day <= day + 1e-9).Flow;
        _error = (_options.NoiseCorrelation * _error) + (Math.Sqrt(1 - (_options.NoiseCorrelation * _options.NoiseCorrelation)) * _options.Noise * Normal());
        var spo2 = Math.Clamp(Math.Round(Baseline - Seen(DeficitAt(day), flow) + (phase == CheckPhase.After ? _options.SessionLift : 0) + _error), 60, 100);
        double? written = _options.GetsExtraOxygen || Usual > 0 ? (_random.NextDouble() < _options.OxygenWritten ? flow : null) : null;
        Add(new Check { Sources = Source("check"), Start = Written(at), SpO2 = spo2, OxygenLitresPerMinute = written, Phase = phase }, at);
    }

    private void Note(LocalDateTime at, SignKind kind, string what) => Add(new Sign { Sources = Source("sign"), Start = Written(at), Kind = kind, What = what }, at);

    private void AddFeed(LocalDateTime start, LocalDateTime end, FeedRoute route, LocalDate day)
    {
        var written = _random.NextDouble() < _options.FeedsWritten && !_silent.Contains(day);
        _feeds.Add((InstantOf(start), InstantOf(end), written));
        if (written) Add(new Feed { Sources = Source("feed"), Start = Written(start), End = Written(end), Route = route, Millilitres = 120 }, start);
    }

    private void AddDose(LocalDateTime at, string medicine)
    {
        if (Add(new Dose { Sources = Source("dose"), Start = Written(at), Medicine = medicine }, at) && medicine == "salbutamol") _doses.Add(InstantOf(at));
    }

    private bool Add(CareEntry entry, LocalDateTime at)
    {
        if (_silent.Contains(CareDay.Of(at, new LocalTime(4, 0)))) return false;
        _entries.Add(entry);
        return true;
    }

    private SourceLine[] Source(string kind) => [SourceLine.InText("simulated.csv", ++_line, kind)];

    private UncertainTime Written(LocalDateTime at)
    {
        if (_options.RoundedTo <= 1) return UncertainTime.Exactly(at);
        var minutes = at.Minute + (at.Hour * 60);
        var rounded = (int)(Math.Round((double)minutes / _options.RoundedTo) * _options.RoundedTo);
        return UncertainTime.Exactly(at.Date.AtMidnight().PlusMinutes(rounded));
    }

    private Instant InstantOf(LocalDateTime at) => _zone.AtLeniently(at).ToInstant();

    private double DaysIn(LocalDateTime at) => (InstantOf(at) - InstantOf(_options.FirstDay.AtMidnight())).TotalDays;

    private double Normal() => Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble())) * Math.Cos(2 * Math.PI * _random.NextDouble());

    private CareLog Log() => new()
    {
        Zone = _options.Zone,
        ZoneFrom = "the plan",
        Entries = [.. _entries.OrderBy(e => e.When.Stated)],
        Plan = new CarePlan
        {
            Rows =
            [
                Row(PlanItem.TimeZone, _options.Zone), Row(PlanItem.MedicineBeforeSession, "salbutamol"),
                .. _options.GetsExtraOxygen ? new[] { Row(PlanItem.UsualOxygen, Usual) } : [],
                .. _steps.SelectMany(s => new[] { Row(PlanItem.SessionsPerDay, s.SessionsPerDay, s.From), Row(PlanItem.MinutesPerArea, s.MinutesPerArea, s.From) }),
            ],
        },
    };

    private PlanRow Row(PlanItem item, string value) => new(_options.FirstDay, item, value, null, null, null);

    private PlanRow Row(PlanItem item, double value, LocalDate? from = null) =>
        new(from ?? _options.FirstDay, item, value.ToString("0.##", System.Globalization.CultureInfo.InvariantCulture), value, value, null);

    private Truth TheTruth() => new(Baseline, Usual, [.. _illnesses.Select(TrueEpisodeOf)], _steps, [.. _sessionStarts.Order().Select(TrueSessionOf)]);

    private TrueEpisode TrueEpisodeOf(TrueIllness illness)
    {
        var recovered = illness.StaysUnder(1);
        var next = _illnesses.Where(i => i.Onset > illness.Onset).Select(i => i.Onset).DefaultIfEmpty(double.MaxValue).First();
        var lastRaised = _flows.Select((f, i) => (f.Flow, Until: i + 1 < _flows.Count ? _flows[i + 1].Day : double.MaxValue, f.Day))
            .Where(f => f.Flow > Usual && f.Day >= illness.Onset && f.Day < next).Select(f => f.Until).DefaultIfEmpty(0).Max();
        recovered = Math.Max(recovered, lastRaised);
        return new TrueEpisode(illness, _options.FirstDay.PlusDays((int)Math.Floor(illness.Onset)), recovered < _options.Days ? recovered : null);
    }

    private TrueSession TrueSessionOf(LocalDateTime at)
    {
        var start = InstantOf(at);
        var before = _feeds.Where(f => f.Start < start && (start - f.End).TotalHours <= 12).ToList();
        double? gap = before.Count == 0 ? null : Math.Max(0, (start - before.MaxBy(f => f.Start).End).TotalMinutes);
        var ages = _doses.Select(d => (start - d).TotalMinutes).Where(m => m is >= 0 and <= 240).ToList();
        var inhaler = ages.Any(m => m is >= InhalerLimit and <= InhalerWindow) ? TrueVerdict.Kept
            : ages.Count == 0 ? TrueVerdict.None
            : ages.Min() < InhalerLimit ? TrueVerdict.Short : TrueVerdict.Early;
        return new TrueSession(at, gap, gap is null ? null : gap >= FeedLimit ? TrueVerdict.Kept : TrueVerdict.Short, inhaler);
    }
}
