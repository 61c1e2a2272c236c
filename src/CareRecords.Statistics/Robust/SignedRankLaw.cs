namespace CareRecords.Statistics;

/// <summary>
/// The exact null distribution of the signed-rank sum: every sign pattern equally likely. Works on doubled ranks, so that
/// midranks of ties stay whole numbers.
/// </summary>
internal sealed class SignedRankLaw
{
    // Cumulative probabilities of the doubled sum: 0, 1, 2, ...
    private readonly double[] _atMost;

    public SignedRankLaw(IEnumerable<double> ranks)
    {
        int[] steps = [.. ranks.Select(rank => (int)Math.Round(2 * rank))];
        _atMost = new double[steps.Sum() + 1];
        _atMost[0] = 1;
        var largest = 0;
        foreach (var step in steps)
        {
            // From above, so that what a rank moves up is not yet halved.
            largest += step;
            for (var i = largest; i >= step; i--) _atMost[i] = 0.5 * (_atMost[i] + _atMost[i - step]);
            for (var i = step - 1; i >= 0; i--) _atMost[i] *= 0.5;
        }

        for (var i = 1; i < _atMost.Length; i++)
        {
            _atMost[i] += _atMost[i - 1];
        }
    }

    /// <summary>P(V &lt;= v).</summary>
    public double AtMost(double v)
    {
        var index = (int)Math.Floor((2 * v) + 1e-9);
        return index < 0 ? 0 : index >= _atMost.Length ? 1 : Math.Min(1, _atMost[index]);
    }

    /// <summary>P(V >= v), by the symmetry of the distribution about half its largest sum.</summary>
    public double AtLeast(double v) => AtMost(((_atMost.Length - 1) / 2.0) - v);
}
