namespace CareRecords.Statistics.Tests;

/// <summary>
/// Seeded coverage simulation. The number of covering intervals in N runs is binomial with the true coverage, so the
/// share seen lies within 4 standard errors, sqrt(c(1−c)/N), of it but for one seed in 16 000.
/// </summary>
internal static class Coverage
{
    public static void AtLeast(double coverage, int runs, Func<SeededRandom, bool> covers, int seed = 1)
    {
        var seen = Share(runs, covers, seed);
        Assert.True(seen >= coverage - Slack(coverage, runs), $"covered {seen:P1} of {runs} runs, expected at least {coverage:P1}");
    }

    public static void Between(double low, double high, int runs, Func<SeededRandom, bool> covers, int seed = 1)
    {
        var seen = Share(runs, covers, seed);
        Assert.True(
            seen >= low - Slack(low, runs) && seen <= high + Slack(high, runs),
            $"covered {seen:P1} of {runs} runs, expected {low:P1} to {high:P1}");
    }

    private static double Share(int runs, Func<SeededRandom, bool> covers, int seed)
    {
        var random = new SeededRandom(seed);
        var covering = 0;
        for (var i = 0; i < runs; i++)
        {
            covering += covers(random) ? 1 : 0;
        }

        return (double)covering / runs;
    }

    private static double Slack(double coverage, int runs) => 4 * Math.Sqrt(coverage * (1 - coverage) / runs);
}
