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
        var tables = new Dictionary<double, (double[] Seen, double[] Hidden)>();
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

            if (!tables.TryGetValue(spo2, out var table)) tables[spo2] = table = Table(spo2, usual, half);
            var (seen, hidden) = table;
            well[step] += Math.Log(((1 - raised) * seen[0]) + (RaisedWhenWell * raised * hidden[0]));
            for (var c = 0; c <= Cells; c++) log[c] += Math.Log(((1 - raised) * seen[c]) + (raised * hidden[c]));
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

        var most = Math.Max(_well[step], log.Max());
        Span<double> likelihood = stackalloc double[Cells + 1];
        for (var c = 0; c <= Cells; c++) likelihood[c] = Math.Exp(log[c] - most);
        states[Well] *= Math.Exp(_well[step] - most);
        for (var s = 1; s < states.Length; s++) states[s] *= likelihood[CellOf[s]];
        return true;
    }

    private static (double[] Seen, double[] Hidden) Table(double spo2, UsualSaturation usual, double half)
    {
        var power = 1 / usual.Dependence;
        return (
            [.. Deficits.Select(d => Math.Pow(ReadingLikelihood.Of(spo2, usual.Centre - d, usual.Sd, half), power))],
            [.. Deficits.Select(d => Math.Pow(ReadingLikelihood.OfHidden(spo2, usual.Centre, d, usual.Sd, half), power))]);
    }
}
