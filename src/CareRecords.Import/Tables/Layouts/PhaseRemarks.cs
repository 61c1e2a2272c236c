using System.Text.RegularExpressions;
using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>Reads a remark that only says which reading stands beside it: "sats after", "SpO2 is before", and the other one where it gives it: "sat before, 95 after".</summary>
internal static partial class PhaseRemarks
{
    /// <summary>Gives the row's one reading without a phase the one that the remark says; true when it did.</summary>
    public static bool Read(BlockReading reading, CellAt remark)
    {
        if (remark.Cell.Words is not { } text || Told().Match(text) is not { Success: true } told || SmallWords.ReadPhase(told.Groups[1].Value) is not { } phase) return false;
        var entries = reading.Into.Entries;
        var checks = Enumerable.Range(reading.RowFrom, entries.Count - reading.RowFrom).Where(i => entries[i] is Check { SpO2: not null }).ToList();
        var session = entries.Skip(reading.RowFrom).OfType<Session>().FirstOrDefault(s => s.Start is { IsExact: true });
        if (checks is not [var only] || entries[only] is not Check { Phase: CheckPhase.None } check || session?.Start is not { } start) return false;
        entries[only] = check with { Phase = phase, Start = Notes.TimesOfEvents.Borrowed(start.Stated, phase) };
        if (told.Groups[2].Success && SaturationReader.Read(told.Groups[2].Value).TryGet(out var other) && SmallWords.ReadPhase(told.Groups[3].Value) is { } second)
            reading.Add(check with { Sources = [remark.Source], SpO2 = other.Percent, SpO2High = null, Pulse = null, Phase = second, Start = Notes.TimesOfEvents.Borrowed(start.Stated, second) }, remark);
        reading.Use(remark);
        return true;
    }

    [GeneratedRegex(@"^\W*(?:(?:the )?(?:sats?|spo2|o2 sats?|readings?|oximeter|number)\s*(?:is|are|was|were|taken)?\s*)?(before|after|pre|post|b4)\b\W*(?:(\d\d)\s*%?\s*(before|after|pre|post|b4)\W*)?$", RegexOptions.IgnoreCase)]
    private static partial Regex Told();
}
