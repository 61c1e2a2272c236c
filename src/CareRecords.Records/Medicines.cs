using System.Collections.Frozen;

namespace CareRecords.Records;

/// <summary>
/// The project's table of medicines (medicines.csv): generic names, their class, other generic names and usual misspellings.
/// Names of makers are not in it; a family's own word is settled by its <c>words</c> table.
/// </summary>
public static class Medicines
{
    /// <summary>The name used where the words name no medicine.</summary>
    public const string Unknown = "unknown";

    private static readonly Lazy<FrozenDictionary<string, string>> NamesByWords = new(LoadNames);
    private static readonly Lazy<FrozenDictionary<string, MedicineClass>> ClassesByName = new(LoadClasses);

    /// <summary>The class of a generic name; <see cref="MedicineClass.Unknown"/> when it is not in the table.</summary>
    public static MedicineClass ClassOf(string genericName) =>
        ClassesByName.Value.GetValueOrDefault(Fold(genericName), MedicineClass.Unknown);

    /// <summary>The generic name for words exactly as in the table (case and spaces aside); null when they are not in it.</summary>
    public static string? GenericNameFor(string words) => NamesByWords.Value.GetValueOrDefault(Fold(words));

    /// <summary>Every spelling in the table, folded to lower case, with its generic name.</summary>
    public static IReadOnlyDictionary<string, string> Spellings => NamesByWords.Value;

    private static string Fold(string words) =>
        string.Join(' ', words.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)).ToLowerInvariant();

    private static FrozenDictionary<string, string> LoadNames() =>
        Rows().SelectMany(r => r.Also.Prepend(r.Name).Select(also => (Fold(also), r.Name)))
            .DistinctBy(pair => pair.Item1)
            .ToFrozenDictionary(pair => pair.Item1, pair => pair.Name);

    private static FrozenDictionary<string, MedicineClass> LoadClasses() =>
        Rows().ToFrozenDictionary(r => r.Name, r => r.Class);

    private static IEnumerable<(string Name, MedicineClass Class, string[] Also)> Rows()
    {
        using var stream = typeof(Medicines).Assembly.GetManifestResourceStream("CareRecords.Records.medicines.csv")
            ?? throw new InvalidOperationException("The medicine table is built into this assembly.");
        using var reader = new StreamReader(stream);
        while (reader.ReadLine() is { } line)
        {
            if (line.StartsWith('#') || line.StartsWith("name,", StringComparison.Ordinal)) continue;
            var cells = line.Split(',');
            yield return (cells[0], Enum.Parse<MedicineClass>(cells[1]),
                cells[2].Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries));
        }
    }
}
