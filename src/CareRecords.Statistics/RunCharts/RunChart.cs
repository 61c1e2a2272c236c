namespace CareRecords.Statistics;

/// <summary>What a run chart shows about its centre line.</summary>
/// <param name="Centre">The centre line, in the unit of the data.</param>
/// <param name="Useful">Points that do not lie on the centre line.</param>
/// <param name="LongestRun">The most useful points in a row on one side.</param>
/// <param name="LongestRunLimit">A longer run than this is a signal.</param>
/// <param name="Crossings">How often the useful points change side.</param>
/// <param name="CrossingsLimit">Fewer crossings than this are a signal.</param>
/// <param name="FalseSignal">The chance of either signal in independent points that fall on either side equally often.</param>
public sealed record RunChartSignals(
    double Centre, int Useful, int LongestRun, int LongestRunLimit, int Crossings, int CrossingsLimit, double FalseSignal)
{
    /// <summary>The longest run is longer than its limit: a shift.</summary>
    public bool LongRun => LongestRun > LongestRunLimit;

    /// <summary>There are fewer crossings than the limit: a shift, a trend or a slow cycle.</summary>
    public bool FewCrossings => Crossings < CrossingsLimit;

    /// <summary>Either signal.</summary>
    public bool Any => LongRun || FewCrossings;
}

/// <summary>
/// Run-chart signals of non-random variation: the longest run on one side of the centre line is longer than
/// round(log2(n) + 3), or there are fewer crossings than the 5 % quantile of Binomial(n − 1, ½); n counts the points not on
/// the line. "Longer than" is strict: 7 of 13 points in a row is no signal, 8 is.
/// Source: Anhøj J, Olesen AV (2014), PLoS ONE 9(11):e113825; the chance of a false signal is an exact recursion.
/// Assumes independent points. Smallest data: 10 useful points.
/// </summary>
public static class RunChart
{
    /// <summary>The fewest useful points for which the signals mean anything.</summary>
    public const int SmallestUseful = 10;

    /// <summary>The signals of a series about its median or a centre given.</summary>
    /// <param name="values">Finite values in time order.</param>
    /// <param name="centre">The centre line; null takes the median of the values.</param>
    public static Outcome<RunChartSignals> Signals(IReadOnlyList<double> values, double? centre = null)
    {
        var x = Require.Finite(values);
        if (x.Length == 0)
        {
            return new TooLittleData("run chart", 0, SmallestUseful, "no points");
        }

        var line = centre ?? Quantiles.Median(x).Value;
        var sides = Array.FindAll(Array.ConvertAll(x, v => v.CompareTo(line)), s => s != 0);
        if (sides.Length < SmallestUseful)
        {
            return new TooLittleData("run chart", sides.Length, SmallestUseful, "too few points off the centre line");
        }

        var runs = Runs.Lengths(sides);
        var (longest, crossings) = Limits(sides.Length);
        return new RunChartSignals(
            line, sides.Length, runs.Max(), longest, runs.Count - 1, crossings, FalseSignal(sides.Length, longest, crossings).Either);
    }

    /// <summary>The limits for n useful points: a longer run, or fewer crossings, is a signal.</summary>
    /// <param name="useful">Points not on the centre line, at least 2.</param>
    public static (int LongestRun, int Crossings) Limits(int useful)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(useful, 2);
        return ((int)Math.Round(Math.Log2(useful) + 3), BinomialLaw.Quantile(0.05, useful - 1, 0.5));
    }

    /// <summary>
    /// The exact chance, for n independent fair sides, of a run longer than <paramref name="longest"/>, of fewer crossings
    /// than <paramref name="crossings"/>, and of either.
    /// </summary>
    /// <param name="useful">Points not on the centre line, at least 2.</param>
    /// <param name="longest">The limit of the longest run, at least 1.</param>
    /// <param name="crossings">The limit of the crossings.</param>
    public static (double LongRun, double FewCrossings, double Either) FalseSignal(int useful, int longest, int crossings)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(useful, 2);
        ArgumentOutOfRangeException.ThrowIfLessThan(longest, 1);

        // state[run − 1, crossings]: probability of no long run so far. Crossings beyond the limit need no telling apart.
        var most = Math.Clamp(crossings, 0, useful);
        var state = new double[longest, most + 1];
        state[0, 0] = 1;
        for (var point = 1; point < useful; point++)
        {
            var next = new double[longest, most + 1];
            for (var run = 0; run < longest; run++)
            {
                for (var c = 0; c <= most; c++)
                {
                    var half = 0.5 * state[run, c];
                    next[0, Math.Min(most, c + 1)] += half;
                    if (run + 1 < longest)
                    {
                        next[run + 1, c] += half;
                    }
                }
            }

            state = next;
        }

        var (quiet, noLongRun) = (0.0, 0.0);
        for (var run = 0; run < longest; run++)
        {
            for (var c = 0; c <= most; c++)
            {
                noLongRun += state[run, c];
                quiet += c >= crossings ? state[run, c] : 0;
            }
        }

        return (1 - noLongRun, BinomialLaw.AtMost(crossings - 1, useful - 1, 0.5), 1 - quiet);
    }
}
