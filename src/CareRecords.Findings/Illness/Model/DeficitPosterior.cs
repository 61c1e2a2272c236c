using static CareRecords.Findings.Modelling.DeficitStates;

namespace CareRecords.Findings.Modelling;

/// <summary>By step of time, the posterior of being well, of rising and of each deficit.</summary>
internal sealed class DeficitPosterior(int steps)
{
    private readonly float[] _cells = new float[steps * (Cells + 1)];
    private readonly double[] _well = new double[steps];
    private readonly double[] _notBack = new double[steps];

    /// <summary>The number of steps.</summary>
    public int Steps => _well.Length;

    /// <summary>The probability of the state "well".</summary>
    public double Well(int step) => _well[step];

    /// <summary>The probability that the deficit is rising, or is a point or more: not recovered as far as saturation tells.</summary>
    public double NotBack(int step) => _notBack[step];

    /// <summary>The probability of each cell of deficit; the first is none.</summary>
    public ReadOnlySpan<float> CellsAt(int step) => _cells.AsSpan(step * (Cells + 1), Cells + 1);

    /// <summary>The posterior mean deficit, points.</summary>
    public double MeanDeficit(int step)
    {
        var sum = 0.0;
        var cells = CellsAt(step);
        for (var c = 1; c < cells.Length; c++) sum += cells[c] * Deficits[c];
        return sum;
    }

    /// <summary>The deficit under which a share of the posterior lies, points.</summary>
    public double DeficitQuantile(int step, double share)
    {
        var sum = 0.0;
        var cells = CellsAt(step);
        for (var c = 0; c < cells.Length; c++)
            if ((sum += cells[c]) >= share) return Deficits[c];
        return Deficits[^1];
    }

    /// <summary>Sets a step from the filtered probabilities and the backward values.</summary>
    public void Set(int step, double[] filtered, double[] back)
    {
        var total = 0.0;
        for (var s = 0; s < filtered.Length; s++) total += filtered[s] * back[s];
        var cells = _cells.AsSpan(step * (Cells + 1), Cells + 1);
        cells.Clear();
        var notBack = 0.0;
        for (var s = 0; s < filtered.Length; s++)
        {
            var p = filtered[s] * back[s] / total;
            cells[CellOf[s]] += (float)p;
            if (!IsBack(s)) notBack += p;
        }

        _well[step] = filtered[DeficitStates.Well] * back[DeficitStates.Well] / total;
        _notBack[step] = notBack;
    }
}
