namespace CareRecords.Statistics;

/// <summary>
/// Fisher's exact test of a 2×2 table, its mid-P variant, and the conditional maximum-likelihood odds ratio with its
/// exact interval, all given the margins. Two-sided P: the total probability of all tables no likelier than the one seen;
/// mid-P counts tables as likely as it by half. Odds ratio: the ψ at which the expected first cell equals the one seen;
/// limits: the ψ at which one tail holds (1 − level)/2.
/// Source: Fisher RA (1935), The Design of Experiments; Agresti A (1992), Stat Sci 7:131-153.
/// Assumes independent observations. Smallest data: one observation (a margin of zero gives P = 1 and an odds ratio that
/// is a <see cref="TooLittleData"/>).
/// </summary>
public static class FisherExact
{
    private const string Method = "Fisher's exact test";

    // Tables whose probabilities differ only by rounding are equally likely.
    private const double Tie = 1e-7;

    // Log odds ratios beyond this cannot come from counts that fit an int.
    private const double WidestLogOdds = 60;

    /// <summary>The exact test that the odds are equal in both rows. The statistic is the first cell.</summary>
    /// <param name="table">The counts.</param>
    /// <param name="alternative">Greater: the first row has more of the first result than chance.</param>
    /// <param name="midP">Count the observed table (and its equals) by half.</param>
    public static Outcome<TestResult> Test(TwoByTwo table, Alternative alternative = Alternative.TwoSided, bool midP = false)
    {
        ArgumentNullException.ThrowIfNull(table);
        table.Validate();
        if (table.Total == 0)
        {
            return new TooLittleData(Method, 0, 1, "an empty table");
        }

        var law = new ConditionalTable(table);
        var probabilities = law.Probabilities(0);
        var seen = probabilities[law.Seen];
        var (beyond, equal) = (0.0, 0.0);
        for (var i = 0; i < probabilities.Length; i++)
        {
            var p = probabilities[i];
            if (alternative == Alternative.TwoSided)
            {
                beyond += p < seen * (1 - Tie) ? p : 0;
                equal += Math.Abs(p - seen) <= seen * Tie ? p : 0;
            }
            else
            {
                beyond += (alternative == Alternative.Greater ? i > law.Seen : i < law.Seen) ? p : 0;
                equal += i == law.Seen ? p : 0;
            }
        }

        var result = beyond + (midP ? 0.5 * equal : equal);
        return new TestResult(table.A, Math.Min(1, result), table.Total, midP ? "Fisher's exact test, mid-P" : Method);
    }

    /// <summary>The conditional maximum-likelihood odds ratio (0 or infinity at the ends) with its exact interval.</summary>
    /// <param name="table">The counts.</param>
    /// <param name="level">The confidence level.</param>
    public static Outcome<Estimate> OddsRatio(TwoByTwo table, double level = 0.95)
    {
        ArgumentNullException.ThrowIfNull(table);
        table.Validate();
        Require.Level(level);
        var law = new ConditionalTable(table);
        if (law.Last == 0)
        {
            return new TooLittleData("conditional odds ratio", table.Total, 2, "a margin of zero: the table says nothing about the odds ratio");
        }

        var tail = (1 - level) / 2;
        double AtLeast(double b) => law.Probabilities(b).Skip(law.Seen).Sum();
        double AtMost(double b) => law.Probabilities(b).Take(law.Seen + 1).Sum();
        double Mean(double b) => law.Probabilities(b).Select((p, i) => p * i).Sum();
        static double Solve(Func<double, double> rising) => Math.Exp(Bisection.Rising(rising, -WidestLogOdds, WidestLogOdds));

        var (isFirst, isLast) = (law.Seen == 0, law.Seen == law.Last);
        return new Estimate(
            isFirst ? 0 : isLast ? double.PositiveInfinity : Solve(b => Mean(b) - law.Seen),
            isFirst ? 0 : Solve(b => AtLeast(b) - tail),
            isLast ? double.PositiveInfinity : Solve(b => tail - AtMost(b)),
            level,
            table.Total,
            "conditional odds ratio, exact interval");
    }
}
