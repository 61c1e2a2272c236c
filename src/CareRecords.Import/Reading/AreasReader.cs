using CareRecords.Records;

namespace CareRecords.Import.Reading;

/// <summary>What was written of a session's areas.</summary>
/// <param name="Areas">One entry per side, area and technique.</param>
/// <param name="MinutesWritten">Total minutes where only a total was written; otherwise null.</param>
internal sealed record AreasWritten(IReadOnlyList<AreaMinutes> Areas, double? MinutesWritten);

/// <summary>Reads sides, areas, techniques and minutes: "LLL RLL 3 min ea, LUL RUL 2", "lowers 3+3", "3 each side clap".</summary>
internal static class AreasReader
{
    /// <summary>Reads the whole of <paramref name="text"/> as areas; "3/3/2/2" with no areas named is doubtful.</summary>
    public static Reading<AreasWritten> Read(string text, FamilyWords words) => throw new NotImplementedException(text);
}
