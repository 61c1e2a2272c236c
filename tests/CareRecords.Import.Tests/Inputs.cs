using System.Text;
using System.Text.Json;
using CareRecords.Records;

namespace CareRecords.Import.Tests;

/// <summary>Files of one test in a folder of their own, gone afterwards.</summary>
internal sealed class Inputs : IDisposable
{
    public string Folder { get; } = Directory.CreateTempSubdirectory("carerecords-import-").FullName;

    public Inputs With(string name, string text) => With(name, new UTF8Encoding(false).GetBytes(text));

    public Inputs With(string name, byte[] bytes)
    {
        var path = Path.Combine(Folder, name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllBytes(path, bytes);
        return this;
    }

    public CareLog Import(ImportOptions? options = null) => Importer.Import([Folder], options ?? London);

    public static ImportOptions London { get; } = new() { MachineZone = "Europe/London" };

    /// <summary>One file of the given text, imported.</summary>
    public static CareLog Import(string name, string text, ImportOptions? options = null)
    {
        using var inputs = new Inputs().With(name, text);
        return inputs.Import(options);
    }

    public static JsonElement Json(CareLog log)
    {
        using var stream = new MemoryStream();
        RecordsJson.Write(log, stream);
        return JsonDocument.Parse(stream.ToArray()).RootElement;
    }

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}
