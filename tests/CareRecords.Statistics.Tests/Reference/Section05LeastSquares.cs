using System.Globalization;
using Curve = System.Func<System.Collections.Generic.IReadOnlyList<double>, double, double>;

namespace CareRecords.Statistics.Tests.Reference;

internal static class Section05LeastSquares
{
    /// <summary>NIST problems: data set, file, curve and both of the starts of the file.</summary>
    public static (string Dataset, string File, Curve Curve, double[] Far, double[] Near)[] Problems { get; } =
    [
        ("5.1", "Misra1a", (b, x) => b[0] * (1 - Math.Exp(-b[1] * x)), [500, 1e-4], [250, 5e-4]),
        ("5.2", "Chwirut2", (b, x) => Math.Exp(-b[0] * x) / (b[1] + (b[2] * x)), [0.1, 0.01, 0.02], [0.15, 0.008, 0.010]),
        ("5.3", "Lanczos3", (b, x) => (b[0] * Math.Exp(-b[1] * x)) + (b[2] * Math.Exp(-b[3] * x)) + (b[4] * Math.Exp(-b[5] * x)),
            [1.2, 0.3, 5.6, 5.5, 6.5, 7.6], [0.5, 0.7, 3.6, 4.2, 4, 6.3]),
        ("5.6", "Misra1b", (b, x) => b[0] * (1 - Math.Pow(1 + (b[1] * x / 2), -2)), [500, 1e-4], [300, 2e-4]),
        ("5.7", "Rat42", (b, x) => b[0] / (1 + Math.Exp(b[1] - (b[2] * x))), [100, 1, 0.1], [75, 2.5, 0.07]),
    ];

    public static IEnumerable<Figures> All() => [.. Problems.Select(p => Nist(p.Dataset, p.File, p.Curve, p.Near)), Loblolly(), Puromycin()];

    private static Figures Nist(string dataset, string file, Curve curve, double[] start)
    {
        var figures = new Figures(dataset);
        var t = CsvTable.Data($"nist_{file}.csv");

        // Differences give the ill-conditioned sum of exponentials nine digits; its exact derivatives give more.
        var options = file == "Lanczos3" ? new CurveOptions { Gradient = SumOfExponentials } : null;
        var fit = NonlinearLeastSquares.Fit(t.Numbers("x"), t.Numbers("y"), curve, start, options).Value;
        for (var i = 0; i < start.Length; i++)
        {
            figures.Add($"estimate [b{i + 1}]", fit.Parameters[i]);
            figures.Add($"standard deviation of estimate [b{i + 1}]", fit.StandardError(i));
        }

        figures.Add("residual standard deviation", fit.ResidualDeviation);
        figures.Add("residual sum of squares", fit.ResidualSumOfSquares);
        return figures;
    }

    private static double[] SumOfExponentials(IReadOnlyList<double> b, double x) =>
        [.. Enumerable.Range(0, 3).SelectMany(k => new[] { Math.Exp(-b[(2 * k) + 1] * x), -b[2 * k] * x * Math.Exp(-b[(2 * k) + 1] * x) })];

    private static Figures Loblolly()
    {
        var figures = new Figures("5.4");
        var t = CsvTable.Data("loblolly329.csv");
        var ages = t.Numbers("age");
        var curve = AsymptoticCurve.Fit(ages, t.Numbers("height")).Value;
        var fit = curve.Fit;
        string[] names = ["Asym", "R0", "lrc"];
        for (var i = 0; i < 3; i++)
        {
            figures.Add($"estimate [{names[i]}]", fit.Parameters[i]);
            figures.Add($"se [{names[i]}]", fit.StandardError(i));
            for (var j = 0; j <= i; j++)
            {
                figures.Add($"vcov [{names[j]},{names[i]}]", fit.Covariance(i, j));
            }
        }

        figures.Named("sigma, RSS", ("sigma", fit.ResidualDeviation), ("rss", fit.ResidualSumOfSquares));
        figures.Named("rate exp(lrc) and half-time log(2)/rate", ("rate.lrc", curve.Rate.Value), ("half.lrc", curve.HalfTime.Value));
        foreach (var age in ages)
        {
            figures.Add($"fitted values [age={age.ToString(CultureInfo.InvariantCulture)}]", fit.At(age));
        }

        return figures;
    }

    private static Figures Puromycin()
    {
        var figures = new Figures("5.5");
        var t = CsvTable.Data("puromycin_treated.csv");
        var fit = NonlinearLeastSquares.Fit(t.Numbers("conc"), t.Numbers("rate"), (b, x) => b[0] * x / (b[1] + x), [200, 0.05]).Value;
        string[] names = ["Vm", "K"];
        for (var i = 0; i < 2; i++)
        {
            figures.Add($"estimate [{names[i]}]", fit.Parameters[i]);
            figures.Add($"se [{names[i]}]", fit.StandardError(i));
            var profile = fit.ProfileInterval(i);
            figures.Named("profile 95% CI", ($"{names[i]} lo", profile.Low), ($"{names[i]} hi", profile.High));
        }

        figures.Named("sigma, RSS", ("sigma", fit.ResidualDeviation), ("rss", fit.ResidualSumOfSquares));
        return figures;
    }
}
