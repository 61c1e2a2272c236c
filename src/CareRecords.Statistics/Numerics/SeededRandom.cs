using MathNet.Numerics.Random;

namespace CareRecords.Statistics;

/// <summary>
/// Random numbers that are the same on every machine for the same seed: xoshiro256** (Blackman D, Vigna S 2021, ACM Trans
/// Math Softw 47:36) as MathNet.Numerics has it; normal values by the inverse distribution function, one draw each.
/// Not safe to share between threads.
/// </summary>
public sealed class SeededRandom
{
    private readonly Xoshiro256StarStar _source;

    /// <summary>Starts the sequence that belongs to a seed.</summary>
    /// <param name="seed">Any whole number.</param>
    public SeededRandom(int seed) => _source = new Xoshiro256StarStar(seed, false);

    /// <summary>A value between 0 and 1, both excluded.</summary>
    public double Uniform()
    {
        double draw;
        do
        {
            draw = _source.NextDouble();
        }
        while (draw <= 0);
        return draw;
    }

    /// <summary>A whole number from 0 up to, and not including, <paramref name="count"/>.</summary>
    /// <param name="count">At least 1.</param>
    public int Below(int count)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        return Math.Min(count - 1, (int)(Uniform() * count));
    }

    /// <summary>A standard normal value.</summary>
    public double Gaussian() => Statistics.Gaussian.Quantile(Uniform());

    /// <summary>A binomial count by as many uniform draws as there are trials.</summary>
    /// <param name="trials">Number of trials.</param>
    /// <param name="chance">Chance of success of each.</param>
    public int Successes(int trials, double chance)
    {
        var successes = 0;
        for (var i = 0; i < trials; i++)
        {
            successes += Uniform() < chance ? 1 : 0;
        }

        return successes;
    }
}
