using CareRecords.Findings.Modelling;

namespace CareRecords.Calibration;

/// <summary>What was found of what is true, over many children.</summary>
internal sealed class Score
{
    public int Children { get; private set; }

    public int Hits { get; private set; }

    public int Missed { get; private set; }

    public int Invented { get; private set; }

    public int OnsetWithinDay { get; private set; }

    public List<double> OnsetErrors { get; } = [];

    public int Finished { get; private set; }

    public int Covered { get; private set; }

    public int TooEarly { get; private set; }

    public int TooLate { get; private set; }

    public int CoveredFromMidnight { get; private set; }

    public int CoveredAsDuration { get; private set; }

    public int FinishedCalledCensored { get; private set; }

    public int Unfinished { get; private set; }

    public int UnfinishedCalledCensored { get; private set; }

    public List<double> Widths { get; } = [];

    public List<double> RecoveryErrors { get; } = [];

    public List<double> BaselineErrors { get; } = [];

    public int BaselineCovered { get; private set; }

    public double F1 => 2.0 * Hits / Math.Max(1, (2 * Hits) + Missed + Invented);

    /// <summary>Adds a child; an episode is found when one of the model's overlaps it, each used once.</summary>
    public void Add(KnownChild child, IllnessModelResult result, string? kind = null)
    {
        Children++;
        if (result.Baseline is { } baseline)
        {
            BaselineErrors.Add(baseline.Centre - child.Baseline);
            if (child.Baseline >= baseline.Low && child.Baseline <= baseline.High) BaselineCovered++;
        }

        var left = result.Episodes.ToList();
        foreach (var truth in child.Episodes)
        {
            var end = truth.RecoveredAt ?? child.Input.CareDays;
            var found = left.Where(e => e.OnsetDay <= end && Math.Max(e.LastDay, e.OnsetDay) >= truth.OnsetDay - 1).MinBy(e => Math.Abs(e.OnsetDay - truth.OnsetDay));
            if (found is null)
            {
                Missed++;
                continue;
            }

            left.Remove(found);
            Hits++;
            if (kind is null || kind == truth.Kind) Compare(truth, found);
        }

        Invented += left.Count;
    }

    private void Compare(KnownEpisode truth, ModelEpisode found)
    {
        OnsetErrors.Add(found.OnsetDay - truth.OnsetDay);
        if (Math.Abs(found.OnsetDay - truth.OnsetDay) <= 1) OnsetWithinDay++;
        var recovery = found.Recovery;
        if (truth.RecoveredAt is not { } at)
        {
            Unfinished++;
            if (recovery.Censored) UnfinishedCalledCensored++;
            return;
        }

        Finished++;
        if (recovery.Censored) FinishedCalledCensored++;
        else
        {
            Widths.Add(recovery.High!.Value - recovery.Low);
            RecoveryErrors.Add(found.OnsetDay + recovery.Days!.Value - at);
        }

        var (low, high) = (found.OnsetDay + recovery.Low, found.OnsetDay + (recovery.High ?? double.PositiveInfinity));
        if (at < low) TooEarly++;
        else if (at > high) TooLate++;
        else Covered++;
        if (at - truth.Onset >= recovery.Low && at - truth.Onset <= (recovery.High ?? double.PositiveInfinity)) CoveredAsDuration++;
        if (at + (4.0 / 24) >= low && at + (4.0 / 24) <= high) CoveredFromMidnight++;
    }
}
