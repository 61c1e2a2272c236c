namespace CareRecords.CommandLine;

/// <summary>What the tool answers to the shell.</summary>
internal static class ExitCode
{
    /// <summary>Done; lines that need checking were counted and listed.</summary>
    public const int Done = 0;

    /// <summary>A defect of ours.</summary>
    public const int Defect = 1;

    /// <summary>The user must change something.</summary>
    public const int UserMustChange = 2;

    /// <summary>Done under <c>--strict</c>, but something needs checking.</summary>
    public const int NeedsChecking = 3;
}
