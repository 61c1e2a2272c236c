using static CareRecords.Findings.Modelling.DeficitStates;

namespace CareRecords.Findings.Modelling;

/// <summary>What was written in each step of time, as a likelihood of "well" and of each deficit.</summary>
internal sealed class StepEvidence
{
    /// <summary>How likely a raised flow, or a sign of illness, is written for a well child against an ill one.</summary>
    private const double RaisedWhenWell = 0.02, SignWhenWell = 0.12;

    private readonly double[]?[] _cells;
    private readonly double[] _well;

    private StepEvidence(double[]?[] cells, double[] well) => (_cells, _well) = (cells, well);

    /// <summary>The number of steps.</summary>
    public int Steps => _well.Length;

    /// <summary>The step that an hour lies in.</summary>
    public static int StepAt(double hours) => (int)Math.Floor(hours / (24 * DeficitTransitions.StepDays));

    /// <summary>
    /// Gathers the evidence. Readings that lean on each other (two within minutes, a day's drift) count for less: each log likelihood is divided
    /// by the dependence that well days showed.
    /// </summary>
    public static StepEvidence Of(IReadOnlyList<Observation> observations, RaisedOxygen oxygen, UsualSaturation usual, int steps, double half)
    {
        var cells = new double[]?[steps];
        var well = new double[steps];
        var tables = new Dictionary<(double SpO2, double Usual, bool Hidden), double[]>();
        for (var i = 0; i < observations.Count; i++)
        {
            var (o, step, raised) = (observations[i], StepAt(observations[i].Hours), oxygen.AtObservation[i]);
            if (o.Sign) well[step] += Math.Log(SignWhenWell);
            if (raised < 1e-6 && o.SpO2 is null) continue;
            var log = cells[step] ??= new double[Cells + 1];
            if (o.SpO2 is not { } spo2)
            {
                well[step] += Math.Log(1 - raised + (RaisedWhenWell * raised));
                continue;
            }

            var centre = usual.On(o.Day);
            var seen = Table(tables, spo2, centre, usual, half, hidden: false);
            if (raised < 1e-6)
            {
                well[step] += seen[0];
                for (var c = 0; c <= Cells; c++) log[c] += seen[c];
                continue;
            }

            var hidden = Table(tables, spo2, centre, usual, half, hidden: true);
            well[step] += Math.Log(((1 - raised) * Math.Exp(seen[0])) + (RaisedWhenWell * raised * Math.Exp(hidden[0])));
            for (var c = 0; c <= Cells; c++) log[c] += Math.Log(((1 - raised) * Math.Exp(seen[c])) + (raised * Math.Exp(hidden[c])));
        }

        return new StepEvidence(cells, well);
    }

    /// <summary>Multiplies probabilities by the step's likelihood, up to a factor; returns false when nothing was written.</summary>
    public bool Weigh(int step, Span<double> states)
    {
        if (_cells[step] is not { } log)
        {
            if (_well[step] == 0) return false;
            states[Well] *= Math.Exp(_well[step]);
            return true;
        }

        var most = _well[step];
        foreach (var l in log) most = Math.Max(most, l);
        Span<double> likelihood = stackalloc double[Cells + 1];
        for (var c = 0; c <= Cells; c++) likelihood[c] = Math.Exp(log[c] - most);
        states[Well] *= Math.Exp(_well[step] - most);
        for (var s = 1; s < states.Length; s++) states[s] *= likelihood[CellOf[s]];
        return true;
    }

    /// <summary>By cell, the log likelihood of a reading, divided by the dependence.</summary>
    private static double[] Table(
        Dictionary<(double SpO2, double Usual, bool Hidden), double[]> tables, double spo2, double centre, UsualSaturation usual, double half, bool hidden)
    {
        if (tables.TryGetValue((spo2, centre, hidden), out var table)) return table;
        table = [.. Deficits.Select(d => Math.Log(hidden
            ? ReadingLikelihood.OfHidden(spo2, centre, d, usual.Sd, half)
            : ReadingLikelihood.Of(spo2, centre - d, usual.Sd, half)) / usual.Dependence)];
        return tables[(spo2, centre, hidden)] = table;
    }
}
