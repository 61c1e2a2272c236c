using CsCheck;
using Xunit.Sdk;

namespace CareRecords;

/// <summary>
/// Claims about drawn cases. The same cases are drawn on every machine and every day, so that a change, not chance, decides whether the tests pass.
/// With CARERECORDS_FRESH_DRAWS=1 in the environment other cases are drawn each time, and one that breaks a claim is made as small as it can be.
/// </summary>
internal static class Drawn
{
    private const ulong Seed = 20261130;

    private static readonly bool Fresh = Environment.GetEnvironmentVariable("CARERECORDS_FRESH_DRAWS") == "1";

    /// <summary>Holds a claim, which throws where it fails, against a number of drawn cases.</summary>
    /// <exception cref="XunitException">A case broke the claim: the message says which and how.</exception>
    public static void Holds<T>(this Gen<T> cases, Action<T> claim, int count = 100)
    {
        if (Fresh)
        {
            cases.Sample(claim, iter: count);
            return;
        }

        // A generator for each case: what is drawn does not depend on which thread comes first.
        Parallel.For(0, count, i =>
        {
            var drawn = cases.Generate(new PCG((uint)i, Seed), null!, out _);
            try
            {
                claim(drawn);
            }
            catch (Exception e)
            {
                throw new XunitException($"Case {i} broke the claim: {Check.Print(drawn)}\n{e.Message}", e);
            }
        });
    }

    /// <inheritdoc cref="Holds{T}(Gen{T}, Action{T}, int)"/>
    public static void Holds<T>(this Gen<T> cases, Func<T, bool> claim, int count = 100) => cases.Holds(drawn => { if (!claim(drawn)) throw new XunitException("It does not hold."); }, count);

    /// <inheritdoc cref="Holds{T}(Gen{T}, Action{T}, int)"/>
    public static void Holds<T1, T2>(this Gen<(T1, T2)> cases, Action<T1, T2> claim, int count = 100) => cases.Holds(t => claim(t.Item1, t.Item2), count);

    /// <inheritdoc cref="Holds{T}(Gen{T}, Action{T}, int)"/>
    public static void Holds<T1, T2>(this Gen<(T1, T2)> cases, Func<T1, T2, bool> claim, int count = 100) => cases.Holds(t => claim(t.Item1, t.Item2), count);

    /// <inheritdoc cref="Holds{T}(Gen{T}, Action{T}, int)"/>
    public static void Holds<T1, T2, T3>(this Gen<(T1, T2, T3)> cases, Action<T1, T2, T3> claim, int count = 100) => cases.Holds(t => claim(t.Item1, t.Item2, t.Item3), count);

    /// <inheritdoc cref="Holds{T}(Gen{T}, Action{T}, int)"/>
    public static void Holds<T1, T2, T3>(this Gen<(T1, T2, T3)> cases, Func<T1, T2, T3, bool> claim, int count = 100) => cases.Holds(t => claim(t.Item1, t.Item2, t.Item3), count);

    /// <inheritdoc cref="Holds{T}(Gen{T}, Action{T}, int)"/>
    public static void Holds<T1, T2, T3, T4>(this Gen<(T1, T2, T3, T4)> cases, Action<T1, T2, T3, T4> claim, int count = 100) => cases.Holds(t => claim(t.Item1, t.Item2, t.Item3, t.Item4), count);
}
