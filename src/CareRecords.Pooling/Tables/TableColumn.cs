namespace CareRecords.Pooling;

/// <summary>What a column holds.</summary>
public enum ColumnType
{
    /// <summary>A whole number.</summary>
    Integer,

    /// <summary>A number.</summary>
    Number,

    /// <summary>True or false.</summary>
    Boolean,

    /// <summary>A code: from a closed list, or a child's code, a group or a version.</summary>
    Code,
}

/// <summary>A column of the shared tables, the same in shared workbooks and tidy folders.</summary>
/// <param name="Name">Its name: lower case, words joined by underscores.</param>
/// <param name="Type">What it holds.</param>
/// <param name="Unit">The unit in UCUM; empty for codes, yes or no; "1" for counts and shares.</param>
/// <param name="Meaning">What it means.</param>
/// <param name="WhenEmpty">Why a cell is empty; null when it never is.</param>
/// <param name="Codes">The codes it can hold; empty for other types and for open codes.</param>
/// <param name="OpenCodes">Codes of open vocabularies for what is measured; empty when there is none.</param>
public sealed record TableColumn(
    string Name, ColumnType Type, string Unit, string Meaning, string? WhenEmpty, IReadOnlyList<string> Codes, IReadOnlyList<OpenCode> OpenCodes);

/// <summary>A code of an open vocabulary.</summary>
/// <param name="System">The vocabulary's address.</param>
/// <param name="Code">The code.</param>
/// <param name="Display">Its name there.</param>
public sealed record OpenCode(string System, string Code, string Display);
