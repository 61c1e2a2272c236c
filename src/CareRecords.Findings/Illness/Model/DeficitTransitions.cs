using static CareRecords.Findings.Modelling.DeficitStates;

namespace CareRecords.Findings.Modelling;

/// <summary>How the illness chain moves in one step of time.</summary>
/// <remarks>
/// The rates are broad beliefs, not estimates: an illness about every six weeks, a rise of about a day in any pattern, then a hold or a return
/// whose pace may change. They were set once, on simulated children of many shapes kept apart from those reported in docs/calibration.md.
/// </remarks>
internal sealed class DeficitTransitions
{
    /// <summary>Length of a step, days.</summary>
    public const double StepDays = 0.25;

    /// <summary>Illnesses begun a day by a well child.</summary>
    public const double FallIllPerDay = 1 / 45.0;

    private const double StopRisingPerDay = 1.0, WellAgainPerDay = 0.5;

    /// <summary>Mean points a day of the three kinds of rise that are mixed in equal parts.</summary>
    private static readonly double[] RisePerDay = [1, 3, 9];

    /// <summary>A probability under which a state is left out of the next step: far under what one step can win back.</summary>
    public const double Negligible = 1e-13;

    private const int FirstReturning = 2 + Cells;

    private readonly int[] _rowStart = new int[FirstReturning + 1];
    private readonly int[] _to;
    private readonly double[] _probability;
    private readonly PaceAndFall _return = new();

    private DeficitTransitions()
    {
        var rows = Enumerable.Range(0, FirstReturning).Select(Row).ToArray();
        for (var s = 0; s < rows.Length; s++) _rowStart[s + 1] = _rowStart[s] + rows[s].Count;
        _to = [.. rows.SelectMany(r => r.Keys)];
        _probability = [.. rows.SelectMany(r => r.Values)];
    }

    /// <summary>The one chain.</summary>
    public static DeficitTransitions Instance { get; } = new();

    /// <summary>Probabilities one step later.</summary>
    public void Forward(ReadOnlySpan<double> now, Span<double> next)
    {
        next.Clear();
        for (var s = 0; s < FirstReturning; s++)
        {
            var p = now[s];
            if (p < Negligible) continue;
            for (var e = _rowStart[s]; e < _rowStart[s + 1]; e++) next[_to[e]] += p * _probability[e];
        }

        _return.Forward(now, next);
    }

    /// <summary>The expectation, one step earlier, of a value one step later.</summary>
    public void Backward(ReadOnlySpan<double> next, Span<double> now)
    {
        for (var s = 0; s < FirstReturning; s++)
        {
            var sum = 0.0;
            for (var e = _rowStart[s]; e < _rowStart[s + 1]; e++) sum += _probability[e] * next[_to[e]];
            now[s] = sum;
        }

        _return.Backward(next, now);
    }

    /// <summary>The probability that something of a rate a day happens within a step.</summary>
    public static double Within(double perDay) => 1 - Math.Exp(-perDay * StepDays);

    private static SortedDictionary<int, double> Row(int state)
    {
        var row = new SortedDictionary<int, double>();
        void Add(int to, double p)
        {
            if (p > 0) row[to] = row.GetValueOrDefault(to) + p;
        }

        switch (state)
        {
            case Well:
                Add(Well, 1 - Within(FallIllPerDay));
                foreach (var (cell, p) in RiseFrom(0)) Add(Rising(cell), Within(FallIllPerDay) * p);
                break;
            case Convalescent:
                Add(Well, Within(WellAgainPerDay));
                foreach (var (cell, p) in RiseFrom(0)) Add(Rising(cell), Within(FallIllPerDay) * p);
                Add(Convalescent, 1 - row.Values.Sum());
                break;
            default:
                var stop = Within(StopRisingPerDay);
                foreach (var (cell, p) in RiseFrom(CellOf[state])) Add(Rising(cell), (1 - stop) * p);
                for (var pace = 0; pace < Paces.Length; pace++) Add(Returning(pace, CellOf[state]), stop * PaceAtFirst(pace));
                break;
        }

        return row;
    }

    private static double PaceAtFirst(int pace) => pace == 0 ? 0.4 : 0.6 / (Paces.Length - 1);

    /// <summary>Where a rise of one step ends, from a cell: points gained are exponential, mixed over slow, middling and fast rises.</summary>
    private static IEnumerable<(int Cell, double Probability)> RiseFrom(int cell)
    {
        double Gained(double points) => RisePerDay.Average(r => 1 - Math.Exp(-Math.Max(0, points) / (r * StepDays)));
        var from = Math.Max(1, cell);
        for (var to = from; to <= Cells; to++)
        {
            var low = to == from ? 0 : EdgeUnder(to) - Deficits[cell];
            var high = to == Cells ? double.PositiveInfinity : EdgeUnder(to + 1) - Deficits[cell];
            var p = Gained(high) - Gained(low);
            if (p > 1e-9) yield return (to, p);
        }
    }

    private static double EdgeUnder(int cell) => Math.Exp(LogStep * (cell - 1 - CellsUnderOne));
}
