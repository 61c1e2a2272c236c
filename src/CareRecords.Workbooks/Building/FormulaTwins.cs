using CareRecords.Findings;
using CareRecords.Records;
using CareRecords.Workbooks.Sheets;

namespace CareRecords.Workbooks.Building;

/// <summary>When a feed went on and off, minutes on the time line.</summary>
internal sealed record FeedTimes(double OnLow, double OnHigh, double OffLow, double OffHigh);

/// <summary>
/// What the sheet's longer formulas will work out. A cell gets its formula only where the formula says what the findings say; otherwise it keeps the
/// findings' value without one, so that recalculating never changes a figure that nobody touched. This happens where a formula cannot follow: times
/// and doses so uncertain that the findings weigh every reading, areas that have no column, a family that writes oxygen only when it changes.
/// </summary>
internal sealed class FormulaTwins
{
    private const double Tolerance = 1e-6;
    private const double LookBackMinutes = 720;
    private const double EarlyMinutes = 240;

    private readonly ReviewRows _rows;
    private readonly Dictionary<object, FeedTimes> _feeds;
    private readonly List<FeedTimes> _feedTimes;
    private readonly List<(double Low, double High, string Due)> _doses;
    private readonly HashSet<NodaTime.LocalDate> _daysWithDoses;
    private readonly ILookup<NodaTime.LocalDate, Check> _checks;
    private readonly ILookup<NodaTime.LocalDate, Session> _sessions;

    public FormulaTwins(ReviewRows rows)
    {
        _rows = rows;
        var planned = rows.Log.Plan.RowFor(PlanItem.MedicineBeforeSession, rows.Findings.Span.To)?.Value.Trim().ToLowerInvariant();
        MedicineBefore = string.IsNullOrEmpty(planned) ? null : Medicines.GenericNameFor(planned) ?? planned;
        _feeds = rows.Feeds.ToDictionary(object (f) => f.Item, f => Place(f.Item), ReferenceEqualityComparer.Instance);
        _feedTimes = [.. _feeds.Values];
        _doses = [.. rows.Doses.Select(d => (rows.TimeLine.Earliest(d.Item.When.Earliest), rows.TimeLine.Latest(d.Item.When.Latest), DueWord(d.Item)))];
        _daysWithDoses = [.. rows.Doses.Select(d => rows.TimeLine.CareDay(d.Item.When.Stated))];
        _checks = rows.Checks.ToLookup(c => rows.TimeLine.CareDay(c.Item.When.Stated), c => c.Item);
        _sessions = rows.Sessions.ToLookup(s => rows.TimeLine.CareDay(s.Item.When.Stated), s => s.Item);
    }

    /// <summary>The medicine due before a session by the plan at the end of the review, in lower case; null when the plan does not name one.</summary>
    public string? MedicineBefore { get; }

    public string DueWord(Dose dose)
    {
        var named = MedicineBefore is { } medicine ? string.Equals(dose.Medicine, medicine, StringComparison.OrdinalIgnoreCase) : dose.Class == MedicineClass.Bronchodilator;
        return named ? "yes" : dose.Class == MedicineClass.Unknown ? "maybe" : "no";
    }

    public double UsualFeedMinutes(Feed feed) => _rows.Log.Plan.NumberFor(PlanItem.UsualFeedMinutes, _rows.TimeLine.CareDay(feed.When.Stated)) ?? 0;

    public double LongestMinutes(Feed feed) => feed switch
    {
        { MillilitresPerHour: { } rate, Millilitres: { } ml } => Math.Max(UsualFeedMinutes(feed), rate > 0 ? 60 * ml / rate : 0),
        { MillilitresPerHour: not null, End: null } => Math.Max(UsualFeedMinutes(feed), LookBackMinutes),
        _ => UsualFeedMinutes(feed),
    };

    public FeedTimes FeedTimes(Feed feed) => _feeds[feed];

    public bool FeedGapFollows(SessionFinding session)
    {
        var (low, high) = (_rows.TimeLine.Earliest(session.Session.When.Earliest), _rows.TimeLine.Latest(session.Session.When.Latest));
        var counted = _feedTimes.Where(f => f.OffHigh >= low - LookBackMinutes).ToList();
        var possible = counted.Where(f => f.OnLow < high).ToList();
        double? least = possible.Count == 0 ? null : Math.Max(0, low - possible.Max(f => f.OffHigh));
        double? most = counted.Any(f => f.OnHigh < low) ? Most(counted, low, high) : null;
        return Same(least, session.FeedGap.LowMinutes) && Same(most, session.FeedGap.HighMinutes);
    }

    public bool InhalerVerdictFollows(SessionFinding session)
    {
        var (low, high) = (_rows.TimeLine.Earliest(session.Session.When.Earliest), _rows.TimeLine.Latest(session.Session.When.Latest));
        var (limit, window) = (session.InhalerGap.LimitMinutes, Math.Max(session.InhalerGap.LimitMinutes, session.InhalerGap.WindowMinutes));
        bool Certain(double from, double to) => _doses.Any(d => d.Due == "yes" && d.Low >= from && d.High <= to);
        bool Maybe(Func<(double Low, double High, string Due), bool> fits) => _doses.Any(d => d.Due != "no" && fits(d));
        var verdict = GapVerdict.Kept;
        if (!Certain(high - window, low - limit))
        {
            List<GapVerdict> possible = [];
            if (Maybe(d => d.High >= low - window && d.Low <= high - limit)) possible.Add(GapVerdict.Kept);
            if (Maybe(d => d.High > low - limit && d.Low <= high)) possible.Add(GapVerdict.Short);
            if (!Certain(high - window, low) && Maybe(d => d.High >= low - EarlyMinutes && d.Low < high - window)) possible.Add(GapVerdict.Early);
            if (!Certain(high - EarlyMinutes, low)) possible.Add(_daysWithDoses.Contains(session.CareDay) ? GapVerdict.None : GapVerdict.Unknown);
            verdict = possible.Count == 1 ? possible[0] : GapVerdict.Unknown;
        }

        return verdict == session.InhalerGap.Verdict;
    }

    /// <summary>Whether every area of the day's sessions has a column of its own.</summary>
    public bool MinutesPerAreaFollows(DayFinding day) => _sessions[day.Day].All(SessionCells.AllHaveColumns);

    public bool MedianAtUsualFollows(DayFinding day)
    {
        var usual = _rows.Log.Plan.NumberFor(PlanItem.UsualOxygen, day.Day) ?? _rows.Findings.Baseline?.Oxygen;
        var readings = _checks[day.Day]
            .Where(c => c.Phase is CheckPhase.None or CheckPhase.Before && c.SpO2 is not null && c.OxygenLitresPerMinute is { } flow && Math.Abs(flow - (usual ?? double.NaN)) <= 0.005 + Tolerance)
            .Select(c => (c.SpO2!.Value + (c.SpO2High ?? c.SpO2.Value)) / 2).Order().ToList();
        double? median = readings.Count == 0 ? null : (readings[(readings.Count - 1) / 2] + readings[readings.Count / 2]) / 2;
        return Same(median, day.MedianSpO2AtUsualOxygen);
    }

    private FeedTimes Place(Feed feed)
    {
        var line = _rows.TimeLine;
        var longest = LongestMinutes(feed);
        (double Low, double High)? start = feed.Start is { } s ? (line.Earliest(s.Earliest), line.Latest(s.Latest)) : null;
        (double Low, double High)? end = feed.End is { } e ? (line.Earliest(e.Earliest), line.Latest(e.Latest)) : null;
        return (start, end) switch
        {
            ({ } a, { } b) => new(Math.Min(a.Low, b.High), Math.Min(a.High, b.High), Math.Max(b.Low, a.Low), Math.Max(b.High, a.Low)),
            ({ } a, null) => new(a.Low, a.High, a.Low, a.High + longest),
            (null, { } b) => new(b.Low - longest, b.High, b.Low, b.High),
            _ => throw new ArgumentException("A feed has a start or an end.", nameof(feed)),
        };
    }

    private static double? Most(List<FeedTimes> counted, double low, double high)
    {
        var most = 0.0;
        foreach (var at in counted.Select(f => f.OnHigh).Where(on => on >= low && on < high).Append(high))
            most = Math.Max(most, at - counted.Where(f => f.OnHigh < at).Max(f => f.OffLow));
        return most > LookBackMinutes ? null : most;
    }

    private static bool Same(double? a, double? b) => (a is null && b is null) || (a is { } x && b is { } y && Math.Abs(x - y) <= Tolerance);
}
