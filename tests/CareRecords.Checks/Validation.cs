using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Validation;

namespace CareRecords.Checks;

/// <summary>Open XML schema validation for two versions of the office programs.</summary>
internal static class Validation
{
    /// <summary>Prints every error; 0 when there is none.</summary>
    public static int Run(IReadOnlyList<string> files, TextWriter output)
    {
        var errors = 0;
        foreach (var file in files)
        {
            foreach (var version in new[] { FileFormatVersions.Office2019, FileFormatVersions.Microsoft365 })
            {
                using var document = SpreadsheetDocument.Open(file, false);
                foreach (var error in new OpenXmlValidator(version).Validate(document))
                {
                    errors++;
                    output.WriteLine($"{file} {version} {error.Part?.Uri} {error.Path?.XPath}: {error.Description}");
                }
            }
        }

        output.WriteLine($"{errors} validator errors in {files.Count} file(s), two versions each.");
        return errors == 0 ? 0 : 1;
    }
}
