using CareRecords.Records;

namespace CareRecords.Import;

/// <summary>Reads files and folders into one account of what was written down.</summary>
public static class Importer
{
    /// <summary>
    /// Reads every input once and accounts for every line. Folders are searched recursively for <c>.csv .tsv .txt .md .xlsx .xls .xlsm</c>;
    /// anything else is named in <see cref="CareLog.Inputs"/> as left alone. Lines that cannot be read end in <see cref="CareLog.Problems"/>.
    /// </summary>
    /// <param name="paths">Files and folders; the same file named twice is read once.</param>
    /// <param name="options">Plan, zone, day order, dates to keep.</param>
    /// <param name="progress">Told when a file begins and every few thousand lines; null for none.</param>
    /// <exception cref="InputException">An input does not exist, nothing could be read, or an option names an unknown zone.</exception>
    public static CareLog Import(IReadOnlyList<string> paths, ImportOptions options, IProgress<ImportProgress>? progress = null)
    {
        ArgumentNullException.ThrowIfNull(paths);
        ArgumentNullException.ThrowIfNull(options);
        throw new InputException("Reading is not built yet.", "Merge the branch tables again.");
    }
}
