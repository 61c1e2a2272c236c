using CareRecords.Findings;
using CareRecords.Findings.Modelling;
using NodaTime;

namespace CareRecords.Calibration;

/// <summary>A share with its standard error, children being the independent units (a ratio estimate).</summary>
internal sealed class Share
{
    private readonly List<(double Yes, double All)> _children = [];

    public double Yes => _children.Sum(c => c.Yes);

    public double All => _children.Sum(c => c.All);

    public double Value => All > 0 ? Yes / All : double.NaN;

    public double StandardError =>
        All > 0 ? Math.Sqrt(_children.Sum(c => Math.Pow(c.Yes - (Value * c.All), 2))) / All : double.NaN;

    public void NewChild() => _children.Add((0, 0));

    /// <summary>The shares of several kinds together. The same seed makes a child with the same illnesses in each kind, so that child by child they are one unit.</summary>
    public void AddAll(IEnumerable<Share> others)
    {
        foreach (var child in others.SelectMany(o => o._children.Select((c, i) => (Index: i, c.Yes, c.All))).GroupBy(c => c.Index).OrderBy(g => g.Key))
            _children.Add((child.Sum(c => c.Yes), child.Sum(c => c.All)));
    }

    public void Add(bool yes) => _children[^1] = (_children[^1].Yes + (yes ? 1 : 0), _children[^1].All + 1);
}

/// <summary>What was found of what is true, over many children.</summary>
internal sealed class Score
{
    public int Children { get; private set; }

    public int Found { get; private set; }

    public int Missed { get; private set; }

    public int Invented { get; private set; }

    public double F1 => 2.0 * Found / Math.Max(1, (2 * Found) + Missed + Invented);

    public Share OnsetWithinDay { get; } = new();

    public Share OnsetCovered { get; } = new();

    public List<double> OnsetErrors { get; } = [];

    /// <summary>The moment of recovery lies in the interval, counted from the start of the onset's care day (04:00).</summary>
    public Share Covered { get; } = new();

    /// <summary>The same, counted from midnight of the onset's date.</summary>
    public Share CoveredFromMidnight { get; } = new();

    /// <summary>The time from true onset to true recovery lies in the interval.</summary>
    public Share CoveredAsDuration { get; } = new();

    public int TooLow { get; private set; }

    public int TooHigh { get; private set; }

    public Share UnfinishedCalledCensored { get; } = new();

    public Share FinishedCalledCensored { get; } = new();

    public List<double> Widths { get; } = [];

    public List<double> RecoveryErrors { get; } = [];

    public List<double> BaselineErrors { get; } = [];

    public Share BaselineCovered { get; } = new();

    /// <summary>Points of the return curve whose band holds the true saturation at usual oxygen.</summary>
    public Share BandCovered { get; } = new();

    /// <summary>The episodes by the record.</summary>
    public DefinitionScore ByRecord { get; } = new();

    /// <summary>The episodes of the main definition.</summary>
    public DefinitionScore Main { get; } = new();

    private IEnumerable<Share> Shares =>
        [OnsetWithinDay, OnsetCovered, Covered, CoveredFromMidnight, CoveredAsDuration, UnfinishedCalledCensored, FinishedCalledCensored, BaselineCovered, BandCovered];

    /// <summary>What was found in children of several kinds, as if they were one kind. Onset and recovery lists are joined; the two definitions are not.</summary>
    public static Score Together(IReadOnlyList<Score> scores)
    {
        var all = new Score
        {
            Children = scores.Sum(s => s.Children),
            Found = scores.Sum(s => s.Found),
            Missed = scores.Sum(s => s.Missed),
            Invented = scores.Sum(s => s.Invented),
            TooLow = scores.Sum(s => s.TooLow),
            TooHigh = scores.Sum(s => s.TooHigh),
        };
        all.OnsetErrors.AddRange(scores.SelectMany(s => s.OnsetErrors));
        all.Widths.AddRange(scores.SelectMany(s => s.Widths));
        all.RecoveryErrors.AddRange(scores.SelectMany(s => s.RecoveryErrors));
        all.BaselineErrors.AddRange(scores.SelectMany(s => s.BaselineErrors));
        foreach (var (share, n) in all.Shares.Select((share, n) => (share, n))) share.AddAll(scores.Select(s => s.Shares.ElementAt(n)));
        return all;
    }

    /// <summary>Adds a child; an episode is found when one of the model's overlaps it, each used once.</summary>
    public void Add(KnownChild child, Found found)
    {
        Children++;
        ByRecord.Add(child, found.Illness.ByRecord);
        Main.Add(child, found.Illness.Episodes);
        var result = found.Model;
        foreach (var share in Shares) share.NewChild();
        if (result.Baseline is { } baseline)
        {
            BaselineErrors.Add(baseline.Centre - child.Baseline);
            BaselineCovered.Add(child.Baseline >= baseline.Low && child.Baseline <= baseline.High);
        }

        var left = result.Episodes.ToList();
        foreach (var truth in child.Episodes)
        {
            var end = truth.RecoveredAt ?? child.Days;
            var match = left.Where(e => e.OnsetDay <= end && Math.Max(e.LastDay, e.OnsetDay) >= truth.OnsetDay - 1).MinBy(e => Math.Abs(e.OnsetDay - truth.OnsetDay));
            if (match is null)
            {
                Missed++;
                continue;
            }

            left.Remove(match);
            Found++;
            Compare(truth, match);
            foreach (var point in match.Curve)
            {
                var saturation = child.Baseline - child.DeficitAt(match.OnsetDay + point.Day);
                BandCovered.Add(saturation >= point.Low && saturation <= point.High);
            }
        }

        Invented += left.Count;
    }

    private void Compare(KnownEpisode truth, ModelEpisode found)
    {
        OnsetErrors.Add(found.OnsetDay - truth.OnsetDay);
        OnsetWithinDay.Add(Math.Abs(found.OnsetDay - truth.OnsetDay) <= 1);
        OnsetCovered.Add(truth.OnsetDay >= found.OnsetLow && truth.OnsetDay <= found.OnsetHigh);
        var recovery = found.Recovery;
        if (truth.RecoveredAt is not { } at)
        {
            UnfinishedCalledCensored.Add(recovery.Censored);
            return;
        }

        FinishedCalledCensored.Add(recovery.Censored);
        var (low, high) = (recovery.Low, recovery.High ?? double.PositiveInfinity);
        if (!recovery.Censored)
        {
            Widths.Add(high - low);
            RecoveryErrors.Add(found.OnsetDay + recovery.Days!.Value - at);
        }

        var days = at - found.OnsetDay;
        if (days < low) TooLow++;
        if (days > high) TooHigh++;
        Covered.Add(days >= low && days <= high);
        CoveredFromMidnight.Add(days + (4.0 / 24) >= low && days + (4.0 / 24) <= high);
        CoveredAsDuration.Add(at - truth.Onset >= low && at - truth.Onset <= high);
    }
}

/// <summary>How one definition's list of episodes compares with the truth.</summary>
internal sealed class DefinitionScore
{
    private int _found, _missed, _invented;

    public double F1 => 2.0 * _found / Math.Max(1, (2 * _found) + _missed + _invented);

    public Share OnsetWithinDay { get; } = new();

    /// <summary>The true recovery lies in the record's bracket, of finished ones whose bracket is closed.</summary>
    public Share Bracketed { get; } = new();

    /// <summary>Unfinished recoveries reported as censored.</summary>
    public Share UnfinishedCalledCensored { get; } = new();

    /// <summary>Finished recoveries reported as censored.</summary>
    public Share FinishedCalledCensored { get; } = new();

    /// <summary>Adds a child's list; an episode lasts from its onset to its last moment known not recovered.</summary>
    public void Add(KnownChild child, IReadOnlyList<EpisodeFinding> episodes)
    {
        foreach (var share in new[] { OnsetWithinDay, Bracketed, UnfinishedCalledCensored, FinishedCalledCensored }) share.NewChild();
        var left = episodes.Select(e => (Onset: Period.DaysBetween(child.First, e.Onset), e.Recovery)).ToList();
        foreach (var truth in child.Episodes)
        {
            var end = truth.RecoveredAt ?? child.Days;
            var matches = left.Where(e => e.Onset <= end && e.Onset + e.Recovery.DaysLow >= truth.OnsetDay - 1).ToList();
            if (matches.Count == 0)
            {
                _missed++;
                continue;
            }

            var (onset, recovery) = matches.MinBy(e => Math.Abs(e.Onset - truth.OnsetDay));
            left.Remove((onset, recovery));
            _found++;
            OnsetWithinDay.Add(Math.Abs(onset - truth.OnsetDay) <= 1);
            (truth.RecoveredAt is null ? UnfinishedCalledCensored : FinishedCalledCensored).Add(recovery.Censored);
            if (truth.RecoveredAt is { } at && recovery.DaysHigh is { } high) Bracketed.Add(at - onset >= recovery.DaysLow && at - onset <= high);
        }

        _invented += left.Count;
    }
}
