namespace CareRecords.Findings.Modelling;

/// <summary>
/// When oxygen was above usual, although flows are not always written: a two-state hidden Markov chain (usual, raised) over the moments at
/// which anything was written, in continuous time.
/// </summary>
/// <remarks>
/// A written flow names the state, but for a rare slip. A reading with no flow says something only through how often a flow is written in
/// each state, and those two shares are learnt from the record itself (expectation-maximisation): where flows are written on every second
/// reading whatever they are, an unwritten one says nothing; where only raised flows are ever written, unwritten ones soon mean usual.
/// Assumes that a child is back at usual about once in four days of raised oxygen and leaves it about once in forty; both only matter where
/// nothing is written. No smallest data: with no flow written, the probability of raised oxygen is zero throughout.
/// </remarks>
internal sealed class RaisedOxygen
{
    private const double RaisedPerDay = 1 / 40.0, BackPerDay = 1 / 4.0, Slip = 0.002, LitresTolerance = 0.01;
    private const int Rounds = 6;

    private readonly double[] _hours;
    private readonly double[] _raised;

    private RaisedOxygen(double[] hours, double[] raised) => (_hours, _raised) = (hours, raised);

    /// <summary>The probability that oxygen was raised at each observation, in the order given to <see cref="Of"/>.</summary>
    public IReadOnlyList<double> AtObservation => _raised;

    /// <summary>Reads the flows; <paramref name="usual"/> is the usual oxygen by care day, or null where none is known (then nothing is raised).</summary>
    public static RaisedOxygen Of(IReadOnlyList<Observation> observations, IReadOnlyList<double>? usual)
    {
        var hours = observations.Select(o => o.Hours).ToArray();
        var written = observations.Select(o => StateOf(o, usual)).ToArray();
        if (!written.Contains(Flow.Raised)) return new RaisedOxygen(hours, new double[hours.Length]);

        var share = Math.Clamp(written.Count(w => w is not Flow.NotWritten) / (double)hours.Length, 0.05, 0.95);
        var (writtenWhenUsual, writtenWhenRaised) = (share, share);
        var raised = new double[hours.Length];
        for (var round = 0; round < Rounds; round++)
        {
            Smooth(hours, written, writtenWhenUsual, writtenWhenRaised, raised);
            (writtenWhenUsual, writtenWhenRaised) = (Share(written, raised, r => 1 - r, share), Share(written, raised, r => r, share));
        }

        return new RaisedOxygen(hours, raised);
    }

    /// <summary>
    /// The probability that the last return to usual within observations [<paramref name="from"/>, <paramref name="to"/>] lies at or before a
    /// time. Between two observations the return may have been at any moment, or (oxygen is turned by hands that write) at the later one.
    /// </summary>
    public double BackBy(double hours, int from, int to)
    {
        var back = 1.0;
        for (var i = to; i >= from; i--)
        {
            if (_hours[i] <= hours) return Math.Min(back, 1 - Share(i, hours, to));
            back = Math.Min(back, 1 - _raised[i]);
        }

        return from <= to ? 0 : 1;
    }

    /// <summary>The index of the last observation at or before a time; -1 when none.</summary>
    public int IndexAt(double hours)
    {
        var index = Array.BinarySearch(_hours, hours);
        if (index < 0) return ~index - 1;
        while (index + 1 < _hours.Length && _hours[index + 1] <= hours) index++;
        return index;
    }

    /// <summary>The probability of raised oxygen at a time, carried on from the last observation.</summary>
    public double At(double hours) => IndexAt(hours) is >= 0 and var i ? _raised[i] : 0;

    private double Share(int index, double hours, int to)
    {
        var here = _raised[index];
        if (index >= to) return here;
        var next = _raised[index + 1];
        if (next >= here) return here;
        var passed = (hours - _hours[index]) / Math.Max(1e-9, _hours[index + 1] - _hours[index]);
        return here - (0.5 * passed * (here - next));
    }

    private enum Flow
    {
        NotWritten,
        Usual,
        Raised,
    }

    private static Flow StateOf(Observation observation, IReadOnlyList<double>? usual) => observation.Oxygen is not { } flow || usual is null
        ? Flow.NotWritten
        : flow > usual[observation.Day] + LitresTolerance ? Flow.Raised : Flow.Usual;

    /// <summary>The share of readings with a flow, among those in a state; four readings' worth of the overall share steadies it.</summary>
    private static double Share(Flow[] written, double[] raised, Func<double, double> weight, double overall)
    {
        double with = 4 * overall, all = 4;
        for (var i = 0; i < written.Length; i++)
        {
            var w = weight(raised[i]);
            all += w;
            if (written[i] is not Flow.NotWritten) with += w;
        }

        return Math.Clamp(with / all, 0.01, 0.99);
    }

    private static void Smooth(double[] hours, Flow[] written, double writtenWhenUsual, double writtenWhenRaised, double[] raised)
    {
        var forward = new double[hours.Length];
        var probability = RaisedPerDay / (RaisedPerDay + BackPerDay);
        for (var i = 0; i < hours.Length; i++)
        {
            if (i > 0) probability = Later(probability, hours[i] - hours[i - 1]);
            var (usual, up) = Likelihood(written[i], writtenWhenUsual, writtenWhenRaised);
            probability = probability * up / ((probability * up) + ((1 - probability) * usual));
            forward[i] = probability;
        }

        double backUsual = 1, backUp = 1;
        for (var i = hours.Length - 1; i >= 0; i--)
        {
            var both = (forward[i] * backUp) + ((1 - forward[i]) * backUsual);
            raised[i] = forward[i] * backUp / both;
            if (i == 0) break;
            var (usual, up) = Likelihood(written[i], writtenWhenUsual, writtenWhenRaised);
            var (stays, goes) = (Later(1, hours[i] - hours[i - 1]), Later(0, hours[i] - hours[i - 1]));
            var (u, r) = (usual * backUsual, up * backUp);
            (backUsual, backUp) = (((1 - goes) * u) + (goes * r), ((1 - stays) * u) + (stays * r));
            var scale = backUsual + backUp;
            (backUsual, backUp) = (backUsual / scale, backUp / scale);
        }
    }

    /// <summary>The probability of raised oxygen some hours after it had a probability.</summary>
    private static double Later(double probability, double hours)
    {
        const double total = RaisedPerDay + BackPerDay, settled = RaisedPerDay / total;
        return settled + ((probability - settled) * Math.Exp(-total * hours / 24));
    }

    private static (double Usual, double Raised) Likelihood(Flow written, double writtenWhenUsual, double writtenWhenRaised) => written switch
    {
        Flow.Raised => (writtenWhenUsual * Slip, writtenWhenRaised * (1 - Slip)),
        Flow.Usual => (writtenWhenUsual * (1 - Slip), writtenWhenRaised * Slip),
        _ => (1 - writtenWhenUsual, 1 - writtenWhenRaised),
    };
}
