using CareRecords.Records;
using NodaTime;
using NodaTime.Text;

namespace CareRecords.Findings.Tests;

/// <summary>A child's log in a few words a line. Times are "2026-03-10 08:00", or "08:00" on the current day.</summary>
internal sealed class LogBuilder
{
    private static readonly LocalDateTimePattern Whole = LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd HH:mm");
    private static readonly LocalTimePattern Clock = LocalTimePattern.CreateWithInvariantCulture("HH:mm");
    private readonly List<CareEntry> _entries = [];
    private readonly List<OmittedSession> _omitted = [];
    private readonly List<PlanRow> _plan = [];
    private int _line;

    public string Zone { get; init; } = "Europe/London";

    public LocalDate Day { get; set; } = new(2026, 3, 10);

    public LogBuilder On(LocalDate day)
    {
        Day = day;
        return this;
    }

    public UncertainTime At(string time) => UncertainTime.Exactly(Local(time));

    public UncertainTime Between(string earliest, string latest)
    {
        var (a, b) = (Local(earliest), Local(latest));
        return UncertainTime.Between(a, a, b, TimePrecision.About);
    }

    public LogBuilder Session(string start, string? end = null, double? minutes = null, double? perArea = null, string? by = null) => Session(At(start), end, minutes, perArea, by);

    public LogBuilder Session(UncertainTime start, string? end = null, double? minutes = null, double? perArea = null, string? by = null) => Add(new Session
    {
        Start = start,
        End = end is null ? null : At(end),
        MinutesWritten = minutes,
        Areas = perArea is { } m ? SixAreas(m) : [],
        By = by,
        Sources = Source("session"),
    });

    public LogBuilder Add(CareEntry entry)
    {
        _entries.Add(entry);
        return this;
    }

    public LogBuilder Feed(string? start, string? end, FeedRoute route = FeedRoute.PumpedTube) => Feed(start is null ? null : At(start), end is null ? null : At(end), route);

    public LogBuilder Feed(UncertainTime? start, UncertainTime? end, FeedRoute route = FeedRoute.PumpedTube) =>
        Add(new Feed { Start = start, End = end, Route = route, Sources = Source("feed") });

    public LogBuilder Dose(string at, string medicine = "salbutamol", string? route = null) => Dose(At(at), medicine, route);

    public LogBuilder Dose(UncertainTime at, string medicine = "salbutamol", string? route = null) =>
        Add(new Dose { Start = at, Medicine = medicine, Route = route, Sources = Source(medicine) });

    public LogBuilder Check(string at, double? spO2, double? oxygen = null, CheckPhase phase = CheckPhase.None) =>
        Add(new Check { Start = At(at), SpO2 = spO2, OxygenLitresPerMinute = oxygen, Phase = phase, Sources = Source($"SpO2 {spO2}") });

    public LogBuilder Sign(string at, SignKind kind, double? number = null) =>
        Add(new Sign { Start = At(at), Kind = kind, What = kind.ToString().ToLowerInvariant(), Number = number, Sources = Source(kind.ToString()) });

    public LogBuilder Omitted(string at, string? reason)
    {
        _omitted.Add(new(At(at), reason, Source("omitted")[0]));
        return this;
    }

    public LogBuilder Plan(PlanItem item, string value, LocalDate? from = null)
    {
        double? number = double.TryParse(value, System.Globalization.CultureInfo.InvariantCulture, out var n) ? n : null;
        _plan.Add(new(from, item, value, number, number, Source("plan")[0]));
        return this;
    }

    public CareLog Build() => new()
    {
        Zone = Zone,
        ZoneFrom = "the test",
        Entries = [.. _entries.OrderBy(e => e.When.Stated)],
        Omitted = _omitted,
        Plan = new CarePlan { Rows = [.. _plan.OrderBy(r => r.From ?? LocalDate.MinIsoValue)] },
    };

    public ChildFindings Review(ReviewOptions? options = null) => Reviewer.Review(Build(), options);

    private static IReadOnlyList<AreaMinutes> SixAreas(double minutes) =>
    [
        .. from side in new[] { Side.Left, Side.Right }
           from part in new[] { (ChestArea.Lower, Technique.Percussion), (ChestArea.Upper, Technique.Percussion), (ChestArea.Whole, Technique.Vibration) }
           select new AreaMinutes(side, part.Item1, part.Item2, minutes),
    ];

    private LocalDateTime Local(string time) => time.Length > 5 ? Whole.Parse(time).Value : Day.At(Clock.Parse(time).Value);

    private IReadOnlyList<SourceLine> Source(string text) => [SourceLine.InText("notes.txt", ++_line, text)];
}
