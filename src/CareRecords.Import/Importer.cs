using CareRecords.Import.Files;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import;

/// <summary>Reads files and folders into one account of what was written down.</summary>
public static class Importer
{
    // Words and answers that turn up in a file hold for all: then everything is read again. Answers to answers need a third round.
    private const int MostRounds = 3;

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
        CheckZone(options.Zone, "--zone");
        var (found, leftAlone) = InputFiles.Find(options.PlanFile is { } plan ? [.. paths, plan] : paths);
        if (found.Count == 0)
            throw new InputException("None of the inputs is a file that can be read.", $"Give notes or tables: {InputFiles.Extensions} files, or a folder that holds some.");
        var (files, alsoLeftAlone) = SourceFiles.Open(found);
        var readings = ReadUntilSettled(files, options, progress, out var context);
        var log = LogBuilder.Build([.. readings.SelectMany(r => r.Parts)], context, options);
        return log with { Inputs = [.. readings.Select(r => r.Input), .. leftAlone, .. alsoLeftAlone] };
    }

    private static List<FileReading> ReadUntilSettled(
        IReadOnlyList<SourceFile> files, ImportOptions options, IProgress<ImportProgress>? progress, out SourceContext context)
    {
        context = new SourceContext { OrderGiven = options.DateOrder, Zone = CheckZone(options.Zone ?? options.MachineZone, options.Zone is null ? "this computer" : "--zone"), ZoneIsGiven = options.Zone is not null };
        for (var round = 1; ; round++)
        {
            var readings = ReadAll(files, context, options, progress);
            var next = context.LearnFrom([.. readings.SelectMany(r => r.Parts)]);
            if (next is null || round == MostRounds) return readings;
            context = next;
        }
    }

    private static List<FileReading> ReadAll(IReadOnlyList<SourceFile> files, SourceContext context, ImportOptions options, IProgress<ImportProgress>? progress)
    {
        var readings = new List<FileReading>();
        long linesBefore = 0;
        foreach (var file in files)
        {
            var (done, before) = (readings.Count, linesBefore);
            void EveryRow(long lines) => progress?.Report(new ImportProgress(file.Found.Name, done, files.Count, before + lines));
            EveryRow(0);
            readings.Add(SourceFiles.Read(file, context, options, EveryRow));
            linesBefore += readings[^1].Parts.Sum(p => p.Ledger.Entered);
        }

        return readings;
    }

    internal static DateTimeZone CheckZone(string? zone, string from) =>
        zone is null ? DateTimeZone.Utc
        : DateTimeZoneProviders.Tzdb.GetZoneOrNull(zone)
            ?? throw new InputException($"'{zone}' ({from}) is not a time zone.", "Write its name as region and city, such as Europe/London or America/Chicago.");
}
