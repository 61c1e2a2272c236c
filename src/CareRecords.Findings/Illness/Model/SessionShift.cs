using CareRecords.Records;
using NodaTime;

namespace CareRecords.Findings.Modelling;

/// <summary>
/// How far readings after a session stand from those before it, at the same oxygen: a session may lift or lower saturation for a while, and
/// there are more sessions in illness, so that readings after them are set back by this before they are used.
/// </summary>
internal static class SessionShift
{
    private const int LeastPairs = 10, LongestMinutes = 90;
    private const double Step = 0.05;

    /// <summary>
    /// The mean difference, after less before, in points; each limited to five points. 0 with fewer than ten pairs or within two standard errors
    /// of none. The checks are in order of time.
    /// </summary>
    public static double Of(IEnumerable<Check> checks)
    {
        var differences = new List<double>();
        Check? before = null;
        foreach (var check in checks.Where(c => c.SpO2 is not null && c.Phase is CheckPhase.Before or CheckPhase.After))
        {
            if (check.Phase == CheckPhase.After && before is not null && before.OxygenLitresPerMinute == check.OxygenLitresPerMinute
                && Period.Between(before.When.Stated, check.When.Stated, PeriodUnits.Minutes).Minutes <= LongestMinutes)
                differences.Add(Math.Clamp(check.SpO2!.Value - before.SpO2!.Value, -5, 5));
            before = check.Phase == CheckPhase.Before ? check : null;
        }

        if (differences.Count < LeastPairs) return 0;
        var mean = differences.Average();
        var error = Math.Sqrt(differences.Sum(d => (d - mean) * (d - mean)) / (differences.Count - 1) / differences.Count);
        return Math.Abs(mean) <= 2 * error ? 0 : Math.Round(mean / Step) * Step;
    }
}
