using MathNet.Numerics.LinearAlgebra;

namespace CareRecords.Statistics;

/// <summary>
/// The log-likelihood Σ c·log(mass within the range) of masses on the innermost intervals, its gradient and its curvature.
/// </summary>
internal sealed class MixtureLikelihood((int First, int Last, int Count)[] ranges, int places)
{
    public int Observations { get; } = ranges.Sum(r => r.Count);

    public double Value(double[] masses) => ranges.Sum(r => r.Count * Math.Log(Within(masses, r)));

    /// <summary>The derivative by each mass; at the maximum at most the number of observations, and equal to it where mass lies.</summary>
    public double[] Gradient(double[] masses)
    {
        var gradient = new double[places];
        foreach (var r in ranges)
        {
            var share = r.Count / Within(masses, r);
            for (var j = r.First; j <= r.Last; j++)
            {
                gradient[j] += share;
            }
        }

        return gradient;
    }

    /// <summary>Minus the second derivatives among the masses of <paramref name="support"/>.</summary>
    public Matrix<double> Curvature(double[] masses, IReadOnlyList<int> support)
    {
        var curvature = Matrix<double>.Build.Dense(support.Count, support.Count);
        foreach (var r in ranges)
        {
            var within = Within(masses, r);
            var weight = r.Count / (within * within);
            var first = LowerBound(support, r.First);
            var end = LowerBound(support, r.Last + 1);
            for (var a = first; a < end; a++)
            {
                for (var b = first; b < end; b++)
                {
                    curvature[a, b] += weight;
                }
            }
        }

        return curvature;
    }

    private static double Within(double[] masses, (int First, int Last, int Count) r)
    {
        var sum = 0.0;
        for (var j = r.First; j <= r.Last; j++)
        {
            sum += masses[j];
        }

        return sum;
    }

    private static int LowerBound(IReadOnlyList<int> sorted, int value)
    {
        var (low, high) = (0, sorted.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = sorted[middle] < value ? (middle + 1, high) : (low, middle);
        }

        return low;
    }
}
