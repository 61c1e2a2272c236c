namespace CareRecords.Statistics;

/// <summary>
/// The distribution of the first cell of a 2×2 table given its margins, for any odds ratio (Fisher's noncentral
/// hypergeometric distribution): P(s) ∝ C(r1, s)·C(r2, k−s)·ψ^s.
/// </summary>
internal sealed class ConditionalTable
{
    private readonly double[] _logWeights;

    public ConditionalTable(TwoByTwo table)
    {
        var (r1, r2, k) = (table.Row1, table.Row2, table.Column1);
        First = Math.Max(0, k - r2);
        Seen = table.A - First;
        _logWeights = new double[Math.Min(k, r1) - First + 1];

        // Ratios of neighbouring probabilities: no factorial is ever formed.
        for (var i = 1; i < _logWeights.Length; i++)
        {
            var s = First + i - 1;
            _logWeights[i] = _logWeights[i - 1] + Math.Log((double)(r1 - s) * (k - s) / ((s + 1.0) * (r2 - k + s + 1.0)));
        }
    }

    /// <summary>The smallest count that the margins allow.</summary>
    public int First { get; }

    /// <summary>Index of the observed count.</summary>
    public int Seen { get; }

    public int Last => _logWeights.Length - 1;

    /// <summary>Probabilities of every count that the margins allow.</summary>
    public double[] Probabilities(double logOdds)
    {
        var weights = new double[_logWeights.Length];
        var largest = double.NegativeInfinity;
        for (var i = 0; i < weights.Length; i++)
        {
            weights[i] = _logWeights[i] + (i * logOdds);
            largest = Math.Max(largest, weights[i]);
        }

        var sum = 0.0;
        for (var i = 0; i < weights.Length; i++)
        {
            weights[i] = Math.Exp(weights[i] - largest);
            sum += weights[i];
        }

        for (var i = 0; i < weights.Length; i++)
        {
            weights[i] /= sum;
        }

        return weights;
    }
}
