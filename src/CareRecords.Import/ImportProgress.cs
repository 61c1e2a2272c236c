namespace CareRecords.Import;

/// <summary>How far an import has come.</summary>
/// <param name="File">The input being read.</param>
/// <param name="FilesDone">Inputs already read.</param>
/// <param name="Files">Inputs in all.</param>
/// <param name="LinesRead">Lines and rows read so far, over all inputs.</param>
public sealed record ImportProgress(string File, int FilesDone, int Files, long LinesRead);
