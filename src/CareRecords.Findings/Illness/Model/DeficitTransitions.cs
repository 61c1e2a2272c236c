using static CareRecords.Findings.Modelling.DeficitStates;

namespace CareRecords.Findings.Modelling;

/// <summary>How the illness chain moves in one step of time: a sparse matrix, row by row.</summary>
/// <remarks>
/// The rates are broad beliefs, not estimates: an illness about every six weeks, a rise of about a day in any pattern, then a hold or a return
/// whose pace may change. They were set once, on simulated children of many shapes kept apart from those reported in docs/calibration.md.
/// </remarks>
internal sealed class DeficitTransitions
{
    /// <summary>Length of a step, days.</summary>
    public const double StepDays = 0.25;

    private const double FallIllPerDay = 1 / 45.0, StopRisingPerDay = 1.0, RiseAgainPerDay = 1 / 40.0, WellAgainPerDay = 0.5;
    private const double PaceChangePerDay = 0.4, AnyPacePerDay = 0.05, GonePerDay = 0.3, GoneUnder = 0.45;

    /// <summary>Mean points a day of the three kinds of rise that are mixed in equal parts.</summary>
    private static readonly double[] RisePerDay = [1, 3, 9];

    private readonly int[] _rowStart;
    private readonly int[] _to;
    private readonly double[] _probability;

    private DeficitTransitions()
    {
        var rows = Enumerable.Range(0, Count).Select(Row).ToArray();
        _rowStart = new int[Count + 1];
        for (var s = 0; s < Count; s++) _rowStart[s + 1] = _rowStart[s] + rows[s].Count;
        _to = [.. rows.SelectMany(r => r.Keys)];
        _probability = [.. rows.SelectMany(r => r.Values)];
    }

    /// <summary>The one chain.</summary>
    public static DeficitTransitions Instance { get; } = new();

    /// <summary>Probabilities one step later.</summary>
    public void Forward(ReadOnlySpan<double> now, Span<double> next)
    {
        next.Clear();
        for (var s = 0; s < now.Length; s++)
        {
            var p = now[s];
            if (p < 1e-30) continue;
            for (var e = _rowStart[s]; e < _rowStart[s + 1]; e++) next[_to[e]] += p * _probability[e];
        }
    }

    /// <summary>The expectation, one step earlier, of a value one step later.</summary>
    public void Backward(ReadOnlySpan<double> next, Span<double> now)
    {
        for (var s = 0; s < now.Length; s++)
        {
            var sum = 0.0;
            for (var e = _rowStart[s]; e < _rowStart[s + 1]; e++) sum += _probability[e] * next[_to[e]];
            now[s] = sum;
        }
    }

    private static double Within(double perDay) => 1 - Math.Exp(-perDay * StepDays);

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
            case < 2 + Cells:
                var stop = Within(StopRisingPerDay);
                foreach (var (cell, p) in RiseFrom(CellOf[state])) Add(Rising(cell), (1 - stop) * p);
                for (var pace = 0; pace < Paces.Length; pace++) Add(Returning(pace, CellOf[state]), stop * PaceAtFirst(pace));
                break;
            default:
                Return((state - 2 - Cells) / Cells, CellOf[state], Add);
                break;
        }

        return row;
    }

    private static double PaceAtFirst(int pace) => pace == 0 ? 0.4 : 0.6 / (Paces.Length - 1);

    private static void Return(int pace, int cell, Action<int, double> add)
    {
        var again = Within(Deficits[cell] < 1 ? FallIllPerDay : RiseAgainPerDay);
        var gone = Deficits[cell] < GoneUnder ? Within(GonePerDay) : 0;
        add(Rising(cell), again);
        add(Convalescent, (1 - again) * gone);
        var left = (1 - again) * (1 - gone);
        double change = Within(PaceChangePerDay), any = Within(AnyPacePerDay);
        for (var to = 0; to < Paces.Length; to++)
        {
            var p = any / Paces.Length;
            if (Math.Abs(to - pace) == 1) p += (1 - any) * change / 2;
            if (to == pace) p += (1 - any) * (1 - (change * (pace == 0 || pace == Paces.Length - 1 ? 0.5 : 1)));
            Fall(to, cell, left * p, add);
        }
    }

    private static void Fall(int pace, int cell, double p, Action<int, double> add)
    {
        var cells = Paces[pace] * StepDays / LogStep;
        var whole = (int)Math.Floor(cells);
        Land(cell - whole, p * (1 - (cells - whole)));
        Land(cell - whole - 1, p * (cells - whole));
        void Land(int at, double share) => add(at < 1 ? Convalescent : Returning(pace, at), share);
    }

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
