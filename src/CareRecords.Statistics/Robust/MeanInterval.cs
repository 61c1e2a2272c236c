namespace CareRecords.Statistics;

/// <summary>
/// Student's t interval and test for a mean: x̄ ± t(n−1)·s/√n.
/// Source: Student (1908), Biometrika 6:1-25. Assumes independent, roughly normal values. Smallest data: two values that
/// are not all equal (a spread of zero would claim a certainty that the data do not have).
/// </summary>
public static class MeanInterval
{
    private const string Method = "mean, Student t interval";

    /// <summary>The mean with its interval, in the unit of the data.</summary>
    /// <param name="values">Finite values.</param>
    /// <param name="level">The confidence level.</param>
    public static Outcome<Estimate> Of(IReadOnlyCollection<double> values, double level = 0.95)
    {
        Require.Level(level);
        var x = Require.Finite(values);
        return StandardError(x, out var mean, out var error) is { } missing
            ? missing
            : FromError(mean, error, level, x.Length);
    }

    /// <summary>The one-sample (or, on differences, paired) t test; the statistic is t on n − 1 degrees of freedom.</summary>
    /// <param name="values">Finite values.</param>
    /// <param name="mean">The mean under the null hypothesis.</param>
    /// <param name="alternative">Greater: the true mean is larger.</param>
    public static Outcome<TestResult> Test(IReadOnlyCollection<double> values, double mean = 0, Alternative alternative = Alternative.TwoSided)
    {
        var x = Require.Finite(values);
        if (StandardError(x, out var seen, out var error) is { } missing)
        {
            return missing;
        }

        var t = (seen - mean) / error;
        var freedom = x.Length - 1;
        var p = alternative switch
        {
            Alternative.Greater => StudentT.Upper(t, freedom),
            Alternative.Less => StudentT.Upper(-t, freedom),
            _ => StudentT.TwoSided(t, freedom),
        };
        return new TestResult(t, p, x.Length, "Student t test");
    }

    private static Outcome<Estimate> FromError(double mean, double error, double level, int count)
    {
        var half = StudentT.Critical(level, count - 1) * error;
        return new Estimate(mean, mean - half, mean + half, level, count, Method);
    }

    private static TooLittleData? StandardError(double[] x, out double mean, out double error)
    {
        (mean, error) = (0, 0);
        if (x.Length < 2)
        {
            return new TooLittleData(Method, x.Length, 2, "a spread needs two values");
        }

        var average = x.Average();
        var squares = x.Sum(v => (v - average) * (v - average));
        mean = average;
        error = Math.Sqrt(squares / (x.Length - 1) / x.Length);
        return error > 1e-14 * Math.Abs(average) ? null : new TooLittleData(Method, x.Length, 2, "all values are equal, so the spread is unknown");
    }
}
