using System.Diagnostics.CodeAnalysis;

namespace CareRecords.Statistics;

/// <summary>The answer of an estimator: a value, or the named reason why the data cannot give one. Never NaN.</summary>
/// <typeparam name="T">What the estimator gives when it has enough data.</typeparam>
public sealed record Outcome<T>
    where T : notnull
{
    private readonly T? _value;

    /// <summary>An answer that is known.</summary>
    /// <param name="value">The answer.</param>
    public Outcome(T value) => _value = value;

    /// <summary>An answer that the data cannot give.</summary>
    /// <param name="missing">What was lacking.</param>
    public Outcome(TooLittleData missing) => Missing = missing;

    /// <summary>Why there is no value; null when there is one.</summary>
    public TooLittleData? Missing { get; }

    /// <summary>True when the data gave an answer.</summary>
    public bool IsKnown => Missing is null;

    /// <summary>The answer.</summary>
    /// <exception cref="InvalidOperationException">There was too little data; ask <see cref="IsKnown"/> first.</exception>
    public T Value => IsKnown ? _value! : throw new InvalidOperationException(Missing!.ToString());

    /// <summary>The answer or, when it is missing, <paramref name="other"/>.</summary>
    /// <param name="other">What to give instead.</param>
    public T Or(T other) => IsKnown ? _value! : other;

    /// <summary>Reads the answer if there is one.</summary>
    /// <param name="value">The answer, when the result is true.</param>
    /// <returns>True when the data gave an answer.</returns>
    public bool TryGet([NotNullWhen(true)] out T? value)
    {
        value = _value;
        return IsKnown;
    }

    /// <summary>The answer carried through a further step; a missing answer stays missing for the same reason.</summary>
    /// <param name="next">What to make of the value.</param>
    /// <typeparam name="TNext">What the further step gives.</typeparam>
    public Outcome<TNext> Then<TNext>(Func<T, TNext> next)
        where TNext : notnull
    {
        ArgumentNullException.ThrowIfNull(next);
        return IsKnown ? new(next(_value!)) : new(Missing!);
    }

    /// <summary>Wraps a known answer.</summary>
    /// <param name="value">The answer.</param>
    public static implicit operator Outcome<T>(T value) => new(value);

    /// <summary>Wraps a reason.</summary>
    /// <param name="missing">What was lacking.</param>
    public static implicit operator Outcome<T>(TooLittleData missing) => new(missing);
}
