namespace CareRecords.Import;

/// <summary>The run cannot go on until the person changes something: a missing input, nothing that can be read, an unknown zone.</summary>
/// <param name="message">What is wrong, in a sentence.</param>
/// <param name="advice">What to do about it, in a sentence.</param>
/// <param name="cause">What brought it about, when something did.</param>
public sealed class InputException(string message, string advice, Exception? cause = null) : Exception(message, cause)
{
    /// <summary>What to do about it.</summary>
    public string Advice { get; } = advice;
}
