namespace CareRecords.Import.Reading;

/// <summary>How sure a reader is of what it read.</summary>
internal enum Outcome
{
    /// <summary>The words hold no such value.</summary>
    Nothing,

    /// <summary>Read, with one meaning.</summary>
    Certain,

    /// <summary>Could be read two ways; <see cref="Reading{T}.Value"/> is the likelier one and must not be used without asking.</summary>
    Doubtful,

    /// <summary>Read, and impossible (930 %, 25:10, 31 February): refuse it, saying <see cref="Reading{T}.Why"/>.</summary>
    Impossible,
}

/// <summary>What one reader made of some words.</summary>
/// <param name="Outcome">How sure.</param>
/// <param name="Value">The value when certain or doubtful; otherwise the type's default.</param>
/// <param name="HowRead">The reading in a sentence when the words were interpreted; null when read literally.</param>
/// <param name="Why">Why it is doubtful or impossible, in a sentence; otherwise null.</param>
internal readonly record struct Reading<T>(Outcome Outcome, T? Value, string? HowRead, string? Why)
{
    /// <summary>Answers that would settle a doubt; empty when any words would do.</summary>
    public IReadOnlyList<string> Choices { get; init; } = [];

    /// <summary>True, with the value, when the words have one meaning.</summary>
    public bool TryGet([System.Diagnostics.CodeAnalysis.MaybeNullWhen(false)] out T value)
    {
        value = Value!;
        return Outcome == Outcome.Certain;
    }
}

/// <summary>Makes readings.</summary>
internal static class Reading
{
    /// <summary>The words hold no such value.</summary>
    public static Reading<T> Nothing<T>() => new(Outcome.Nothing, default, null, null);

    /// <summary>One meaning.</summary>
    public static Reading<T> Certain<T>(T value, string? howRead = null) => new(Outcome.Certain, value, howRead, null);

    /// <summary>Two meanings; <paramref name="likelier"/> only for showing.</summary>
    public static Reading<T> Doubtful<T>(T likelier, string why, params string[] choices) =>
        new(Outcome.Doubtful, likelier, null, why) { Choices = choices };

    /// <summary>Impossible.</summary>
    public static Reading<T> Impossible<T>(string why) => new(Outcome.Impossible, default, null, why);
}
