using System.Globalization;
using CareRecords.Statistics.Tests.Reference;

namespace CareRecords.Statistics.Tests.Regression;

/// <summary>NIST's certified values, read from the certifying files themselves, from both starts and without derivatives given.</summary>
public class CertifiedFitsTests
{
    public static TheoryData<string, bool> Cases()
    {
        var data = new TheoryData<string, bool>();
        foreach (var p in Section05LeastSquares.Problems)
        {
            data.Add(p.File, true);
            data.Add(p.File, false);
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Certified_estimates_deviations_and_sums_are_reproduced_to_eight_digits(string file, bool far)
    {
        var problem = Section05LeastSquares.Problems.Single(p => p.File == file);
        var t = CsvTable.Data($"nist_{file}.csv");
        var fit = NonlinearLeastSquares.Fit(t.Numbers("x"), t.Numbers("y"), problem.Curve, far ? problem.Far : problem.Near).Value;
        var lines = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "reference", "data", $"nist_{file}.dat"));
        for (var i = 0; i < fit.Parameters.Count; i++)
        {
            var certified = Numbers(lines.First(l => l.TrimStart().StartsWith($"b{i + 1} =", StringComparison.Ordinal)));

            // Differences instead of derivatives cost the worst-conditioned problem (Lanczos3) three of the eleven digits.
            Relative(certified[^2], fit.Parameters[i]);
            Relative(certified[^1], fit.StandardError(i));
        }

        Relative(Numbers(lines.First(l => l.StartsWith("Residual Sum of Squares", StringComparison.Ordinal)))[^1], fit.ResidualSumOfSquares);
    }

    private static void Relative(double certified, double fitted) => Assert.InRange(fitted / certified, 1 - 1e-8, 1 + 1e-8);

    private static double[] Numbers(string line) =>
        [.. line.Split(['=', ':', ' '], StringSplitOptions.RemoveEmptyEntries)
            .Select(w => double.TryParse(w, NumberStyles.Float, CultureInfo.InvariantCulture, out var v) ? v : double.NaN)
            .Where(v => !double.IsNaN(v))];
}
