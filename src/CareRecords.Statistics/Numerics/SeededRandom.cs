using System.Numerics;

namespace CareRecords.Statistics;

/// <summary>
/// Random numbers that are the same on every machine for the same seed: xoshiro256** (Blackman D, Vigna S 2021, ACM Trans
/// Math Softw 47:36), its state filled from the seed by splitmix64; normal values by the inverse distribution function, one
/// draw each. Not safe to share between threads.
/// </summary>
public sealed class SeededRandom
{
    private ulong _a, _b, _c, _d;

    /// <summary>Starts the sequence that belongs to a seed.</summary>
    /// <param name="seed">Any whole number.</param>
    public SeededRandom(int seed)
    {
        var state = unchecked((ulong)seed);
        (_a, _b, _c, _d) = (Split(ref state), Split(ref state), Split(ref state), Split(ref state));
    }

    /// <summary>A value between 0 and 1, both excluded.</summary>
    public double Uniform()
    {
        double draw;
        do
        {
            draw = (Next() >> 11) * (1.0 / (1UL << 53));
        }
        while (draw <= 0);
        return draw;
    }

    /// <summary>A whole number from 0 up to, and not including, <paramref name="count"/>.</summary>
    /// <param name="count">At least 1.</param>
    public int Below(int count)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        return Math.Min(count - 1, unchecked((int)(Uniform() * count)));
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

    // A year's bootstraps draw some ten million: written out, a draw takes a fifth of the library's time.
    private ulong Next()
    {
        unchecked
        {
            var result = BitOperations.RotateLeft(_b * 5, 7) * 9;
            var shifted = _b << 17;
            _c ^= _a;
            _d ^= _b;
            _b ^= _c;
            _a ^= _d;
            _c ^= shifted;
            _d = BitOperations.RotateLeft(_d, 45);
            return result;
        }
    }

    private static ulong Split(ref ulong state)
    {
        unchecked
        {
            var z = state += 0x9E3779B97F4A7C15;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
            return z ^ (z >> 31);
        }
    }
}
