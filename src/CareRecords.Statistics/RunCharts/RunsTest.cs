using MathNet.Numerics;

namespace CareRecords.Statistics;

/// <summary>How many runs two kinds of marks fall into, and how likely that is by chance.</summary>
/// <param name="Count">The number of runs.</param>
/// <param name="First">How many marks are true.</param>
/// <param name="Second">How many are false.</param>
/// <param name="AtMost">P(R ≤ the count): small means clustering.</param>
/// <param name="AtLeast">P(R ≥ the count): small means too regular alternation.</param>
/// <param name="Mean">The expected number of runs.</param>
/// <param name="StandardDeviation">Its standard deviation.</param>
public sealed record RunsTestResult(int Count, int First, int Second, double AtMost, double AtLeast, double Mean, double StandardDeviation)
{
    /// <summary>Twice the smaller tail, at most 1.</summary>
    public double PValue => Math.Min(1, 2 * Math.Min(AtMost, AtLeast));

    /// <summary>The one-sided normal approximation, with continuity correction, of a count this large.</summary>
    public double NormalAtLeast => Gaussian.Upper((Count - Mean - 0.5) / StandardDeviation);
}

/// <summary>
/// The exact runs test: given n1 marks of one kind and n2 of the other in random order,
/// P(R = 2j) = 2·C(n1−1, j−1)·C(n2−1, j−1)/C(n1+n2, n1) and the like for odd counts.
/// Source: Wald A, Wolfowitz J (1940), Ann Math Stat 11:147-162; Swed FS, Eisenhart C (1943), Ann Math Stat 14:66-87.
/// Assumes an exchangeable order under the null hypothesis. Smallest data: one mark of each kind.
/// </summary>
public static class RunsTest
{
    /// <summary>The test on marks in time order.</summary>
    /// <param name="marks">True and false in order.</param>
    public static Outcome<RunsTestResult> Of(IReadOnlyList<bool> marks)
    {
        ArgumentNullException.ThrowIfNull(marks);
        var first = marks.Count(m => m);
        var second = marks.Count - first;
        if (first == 0 || second == 0)
        {
            return new TooLittleData("runs test", Math.Min(first, second), 1, "marks of only one kind");
        }

        var runs = Runs.Lengths([.. marks.Select(m => m ? 1 : 0)]).Count;
        double n1 = first, n2 = second;
        var mean = (2 * n1 * n2 / (n1 + n2)) + 1;
        var variance = (mean - 1) * (mean - 2) / (n1 + n2 - 1);
        return new RunsTestResult(
            runs, first, second, AtMost(runs, first, second), 1 - AtMost(runs - 1, first, second), mean, Math.Sqrt(variance));
    }

    /// <summary>P(R ≤ runs) for <paramref name="first"/> marks of one kind and <paramref name="second"/> of the other.</summary>
    /// <param name="runs">The number of runs.</param>
    /// <param name="first">Marks of one kind, at least 1.</param>
    /// <param name="second">Marks of the other kind, at least 1.</param>
    public static double AtMost(int runs, int first, int second)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(first, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(second, 1);
        var sum = 0.0;
        for (var r = 2; r <= Math.Min(runs, Largest(first, second)); r++)
        {
            sum += Probability(r, first, second);
        }

        return Math.Min(1, sum);
    }

    /// <summary>
    /// The critical counts at a one-sided level: the largest r with P(R ≤ r) at or below it and the smallest with
    /// P(R ≥ r) at or below it; null where no count is that unlikely.
    /// </summary>
    /// <param name="first">Marks of one kind, at least 1.</param>
    /// <param name="second">Marks of the other kind, at least 1.</param>
    /// <param name="tail">The one-sided level.</param>
    public static (int? Lower, int? Upper) Critical(int first, int second, double tail = 0.025)
    {
        int? lower = null;
        int? upper = null;
        for (var r = 2; r <= Largest(first, second); r++)
        {
            lower = AtMost(r, first, second) <= tail + 1e-12 ? r : lower;
            upper ??= 1 - AtMost(r - 1, first, second) <= tail + 1e-12 ? r : null;
        }

        return (lower, upper);
    }

    private static int Largest(int first, int second) => first == second ? 2 * first : (2 * Math.Min(first, second)) + 1;

    private static double Probability(int runs, int first, int second)
    {
        double Ways(int blocks1, int blocks2) => blocks1 < 1 || blocks2 < 1 || blocks1 > first || blocks2 > second ? 0
            : Math.Exp(SpecialFunctions.BinomialLn(first - 1, blocks1 - 1) + SpecialFunctions.BinomialLn(second - 1, blocks2 - 1)
                - SpecialFunctions.BinomialLn(first + second, first));
        var half = runs / 2;
        return runs % 2 == 0 ? 2 * Ways(half, half) : Ways(half + 1, half) + Ways(half, half + 1);
    }
}
