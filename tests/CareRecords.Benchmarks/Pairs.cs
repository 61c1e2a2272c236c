namespace CareRecords.Benchmarks;

/// <summary>Runs of the program and of its yardstick in turn, so that what else the machine does falls on both.</summary>
internal sealed record Pairs(IReadOnlyList<Measured> Program, IReadOnlyList<Measured> Yardstick)
{
    public static Pairs Of(IReadOnlyList<string> program, IReadOnlyList<string>? yardstick, int runs)
    {
        var pairs = Enumerable.Range(0, runs).Select(_ => (Measured.Run(program), yardstick is null ? null : Measured.Run(yardstick))).ToList();
        return new Pairs([.. pairs.Select(p => p.Item1)], [.. pairs.Select(p => p.Item2).OfType<Measured>()]);
    }

    public double Median(Func<Measured, double> of) => Middle(Program.Select(of));

    /// <summary>The median over pairs of program to yardstick, with the least and the most; null without a yardstick.</summary>
    public (double Median, double Least, double Most)? Ratio(Func<Measured, double> of)
    {
        if (Yardstick.Count == 0) return null;
        var ratios = Program.Zip(Yardstick, (p, y) => of(p) / of(y)).ToList();
        return (Middle(ratios), ratios.Min(), ratios.Max());
    }

    private static double Middle(IEnumerable<double> values)
    {
        var sorted = values.Order().ToList();
        return (sorted[(sorted.Count - 1) / 2] + sorted[sorted.Count / 2]) / 2;
    }
}
