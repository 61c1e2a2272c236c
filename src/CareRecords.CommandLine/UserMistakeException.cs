namespace CareRecords.CommandLine;

/// <summary>Something that only the user can change: said in one sentence on standard error, exit code 2.</summary>
/// <param name="message">What is wrong and what to do, in one sentence.</param>
internal sealed class UserMistakeException(string message) : Exception(message);
