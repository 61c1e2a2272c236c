using System.Text.RegularExpressions;
using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>Reads the saturation that a remark gives to the row's one check, which has none: "woke up, sats 89" beside an oxygen flow.</summary>
internal static partial class SaturationRemarks
{
    /// <summary>Gives the check its saturation; true when it did.</summary>
    public static bool Read(BlockReading reading, CellAt remark)
    {
        if (remark.Cell.Words is not { } text || FreeWords.HasClock(text) || Told().Matches(text) is not [var told] || !SaturationReader.Read(told.Groups[1].Value).TryGet(out var saturation)) return false;
        var entries = reading.Into.Entries;
        var checks = Enumerable.Range(reading.RowFrom, entries.Count - reading.RowFrom).Where(i => entries[i] is Check).ToList();
        if (checks is not [var only] || entries[only] is not Check { SpO2: null, Phase: CheckPhase.None } check) return false;
        entries[only] = check with { SpO2 = saturation.Percent, SpO2High = saturation.High };
        reading.Use(remark);
        return true;
    }

    [GeneratedRegex(@"\b(?:sats?|spo2|saturations?)\s*(?:was|were|is|at|of|down to|:|=)?\s*(\d\d)\b(?!\s*(?:before|after|pre|post|b4|and|then|-|–|to|→|/|,?\s*\d))", RegexOptions.IgnoreCase)]
    private static partial Regex Told();
}
