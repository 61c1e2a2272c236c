using MathNet.Numerics.LinearAlgebra;

namespace CareRecords.Statistics;

/// <summary>A log partial likelihood with its gradient and minus its second derivative.</summary>
internal sealed record PartialValue(double Value, Vector<double> Score, Matrix<double> Information);

/// <summary>Cox's partial likelihood of one sample.</summary>
internal sealed class PartialLikelihood
{
    private readonly Vector<double>[] _x;
    private readonly CoxTies _ties;

    // From the last event time to the first: who comes to be at risk (going backwards), and who has the event.
    private readonly List<(int[] Joining, int[] Events)> _times = [];

    public PartialLikelihood(FollowUp[] followUps, Vector<double>[] covariates, CoxTies ties)
    {
        (_x, _ties) = (covariates, ties);
        var all = Enumerable.Range(0, followUps.Length).ToArray();
        var later = double.PositiveInfinity;
        foreach (var time in followUps.Where(f => f.Happened).Select(f => f.Time).Distinct().OrderDescending())
        {
            _times.Add((
                Array.FindAll(all, i => followUps[i].Time >= time && followUps[i].Time < later),
                Array.FindAll(all, i => followUps[i].Happened && followUps[i].Time == time)));
            later = time;
        }
    }

    public PartialValue At(Vector<double> beta)
    {
        var p = beta.Count;
        var sum = new PartialValue(0, Vector<double>.Build.Dense(p), Matrix<double>.Build.Dense(p, p));
        var risk = Moments.Zero(p);
        List<int> atRisk = [];
        foreach (var (joining, events) in _times)
        {
            risk = joining.Aggregate(risk, (a, i) => a.Plus(Moments.Of(_x[i], beta), 1));
            atRisk.AddRange(joining);
            var seen = events.Aggregate(Vector<double>.Build.Dense(p), (a, i) => a + _x[i]);
            foreach (var d in Denominators(risk, atRisk, events, beta))
            {
                // The derivatives of log D.
                var slope = d.First / d.Zeroth;
                sum = new(
                    sum.Value - Math.Log(d.Zeroth),
                    sum.Score - slope,
                    sum.Information + (d.Second / d.Zeroth) - slope.OuterProduct(slope));
            }

            sum = sum with { Value = sum.Value + (seen * beta), Score = sum.Score + seen };
        }

        return sum;
    }

    /// <summary>The denominators of one event time: one for each event (Efron, Breslow), or one for all together (exact).</summary>
    private IEnumerable<Moments> Denominators(Moments risk, List<int> atRisk, int[] events, Vector<double> beta)
    {
        if (_ties == CoxTies.Exact)
        {
            yield return Subsets(atRisk, events.Length, beta);
            yield break;
        }

        var tied = events.Aggregate(Moments.Zero(beta.Count), (a, i) => a.Plus(Moments.Of(_x[i], beta), 1));
        for (var k = 0; k < events.Length; k++)
        {
            yield return _ties == CoxTies.Breslow ? risk : risk.Plus(tied, -(double)k / events.Length);
        }
    }

    /// <summary>
    /// The sum of exp(β·Σx) over all subsets of a size, by adding subjects one at a time (Gail MH, Lubin JH, Rubinstein LV
    /// 1981, Biometrika 68:703-707).
    /// </summary>
    private Moments Subsets(List<int> who, int size, Vector<double> beta)
    {
        var bySize = new Moments[size + 1];
        Array.Fill(bySize, Moments.Zero(beta.Count));
        bySize[0] = bySize[0] with { Zeroth = 1 };
        foreach (var i in who)
        {
            var one = Moments.Of(_x[i], beta);
            for (var k = size; k >= 1; k--)
            {
                bySize[k] = bySize[k].Plus(bySize[k - 1].Times(one), 1);
            }
        }

        return bySize[size];
    }

    /// <summary>A sum of exponentials with its first and second derivatives by β.</summary>
    private sealed record Moments(double Zeroth, Vector<double> First, Matrix<double> Second)
    {
        public static Moments Zero(int p) => new(0, Vector<double>.Build.Dense(p), Matrix<double>.Build.Dense(p, p));

        public static Moments Of(Vector<double> x, Vector<double> beta)
        {
            var weight = Math.Exp(x * beta);
            return new(weight, x * weight, x.OuterProduct(x) * weight);
        }

        public Moments Plus(Moments other, double times) =>
            new(Zeroth + (times * other.Zeroth), First + (times * other.First), Second + (times * other.Second));

        /// <summary>The product rule.</summary>
        public Moments Times(Moments other) => new(
            Zeroth * other.Zeroth,
            (First * other.Zeroth) + (other.First * Zeroth),
            (Second * other.Zeroth) + (other.Second * Zeroth) + First.OuterProduct(other.First) + other.First.OuterProduct(First));
    }
}
