using CareRecords.Import.Accounting;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Files;

/// <summary>Opens the inputs and reads each by its kind.</summary>
internal static class SourceFiles
{
    /// <summary>Looks at the bytes of each file once; a file with the same bytes as an earlier one is left alone.</summary>
    /// <exception cref="InputException">A file may not be opened.</exception>
    public static (IReadOnlyList<SourceFile> Files, IReadOnlyList<InputFile> LeftAlone) Open(IReadOnlyList<FoundFile> found)
    {
        var files = new List<SourceFile>();
        var leftAlone = new List<InputFile>();
        var byHash = new Dictionary<string, string>();
        foreach (var file in found)
        {
            var survey = Survey(file);
            if (survey.Length > 0 && !byHash.TryAdd(survey.Sha256, file.Name))
                leftAlone.Add(new InputFile(file.Name, "left alone", null, $"the same bytes as {byHash[survey.Sha256]}"));
            else
                files.Add(new SourceFile(file, survey, LastWritten(file)));
        }

        return (files, leftAlone);
    }

    /// <summary>What one file gives.</summary>
    public static FileReading Read(SourceFile file, SourceContext context, ImportOptions options, Action<long>? everyRow) =>
        file.Survey.Length == 0 ? Whole(file, $"The file {file.Found.Name} is empty.", "Save it again, or leave it out.")
        : file.IsWorkbook ? WorkbookFiles.Read(file, context, options.LargestUnpackedWorkbook, everyRow)
        : file.Survey.LooksBinary ? Whole(file, $"The file {file.Found.Name} is not text, whatever its name says.", "Save it as a text, a CSV table or a workbook.")
        : TextFiles.Read(file, context, everyRow);

    private static FileReading Whole(SourceFile file, string why, string fix)
    {
        var part = new Gathered { File = file.Found.Name };
        part.Problems.Add(new ImportProblem(new SourceLine(file.Found.Name, null, null, null, ""), why, fix, ProblemSeverity.Refused));
        return new FileReading([part], new InputFile(file.Found.Name, "not readable", file.Survey.Sha256, why));
    }

    private static FileSurvey Survey(FoundFile file)
    {
        try
        {
            using var stream = new FileStream(file.Path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite, 1 << 16);
            return Encodings.Survey(stream);
        }
        catch (IOException locked)
        {
            throw new InputException($"The file {file.Name} could not be opened.", "Close it in other programs and try again.", locked);
        }
        catch (UnauthorizedAccessException denied)
        {
            throw new InputException($"The file {file.Name} may not be opened.", "Give yourself the right to read it, or copy it elsewhere.", denied);
        }
    }

    // Only years are taken from it, with two days of room for zones.
    private static LocalDate? LastWritten(FoundFile file) =>
        LocalDateTime.FromDateTime(File.GetLastWriteTimeUtc(file.Path)).Date.PlusDays(2) is { Year: > 1990 } day ? day : null;
}
