namespace CareRecords.Statistics;

/// <summary>One study's (or family's) effect.</summary>
/// <param name="Value">The effect, on the scale on which effects are pooled.</param>
/// <param name="Variance">Its sampling variance, above 0.</param>
public readonly record struct StudyEffect(double Value, double Variance);

/// <summary>
/// Effects of two groups with a yes-or-no result, as logs of ratios with their large-sample variances. A table with an
/// empty cell gets ½ added to all four; a table without any event (or without any non-event, for the odds ratio) says
/// nothing of the ratio and gives null.
/// Source: Woolf B (1955), Ann Hum Genet 19:251-253; Haldane JBS (1956), Ann Hum Genet 20:309-311, for the ½.
/// </summary>
public static class RatioEffect
{
    /// <summary>Log risk ratio: log(a/(a+b)) − log(c/(c+d)).</summary>
    /// <param name="table">Groups in rows; the event in the first column. Each group must not be empty.</param>
    public static StudyEffect? LogRiskRatio(TwoByTwo table)
    {
        var (a, b, c, d) = Cells(table);
        return table.A + table.C == 0 ? null
            : new(Math.Log(a / (a + b)) - Math.Log(c / (c + d)), (1 / a) - (1 / (a + b)) + (1 / c) - (1 / (c + d)));
    }

    /// <summary>Log odds ratio: log(ad/bc).</summary>
    /// <param name="table">Groups in rows; the event in the first column. Each group must not be empty.</param>
    public static StudyEffect? LogOddsRatio(TwoByTwo table)
    {
        var (a, b, c, d) = Cells(table);
        return table.A + table.C == 0 || table.B + table.D == 0 ? null
            : new(Math.Log(a * d / (b * c)), (1 / a) + (1 / b) + (1 / c) + (1 / d));
    }

    private static (double A, double B, double C, double D) Cells(TwoByTwo table)
    {
        ArgumentNullException.ThrowIfNull(table);
        table.Validate();
        if (table.Row1 == 0 || table.Row2 == 0)
        {
            throw new ArgumentException("Each group has at least one member.", nameof(table));
        }

        var add = table.A == 0 || table.B == 0 || table.C == 0 || table.D == 0 ? 0.5 : 0;
        return (table.A + add, table.B + add, table.C + add, table.D + add);
    }
}
