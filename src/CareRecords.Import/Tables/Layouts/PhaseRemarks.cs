using System.Text.RegularExpressions;
using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>Reads a remark that only says which reading stands beside it: "sats after", "SpO2 is before", and the other one where it gives it: "sat before, 95 after", "sats before, after it was 94".</summary>
internal static partial class PhaseRemarks
{
    /// <summary>Gives the row's one reading without a phase the one that the remark says; true when it did.</summary>
    public static bool Read(BlockReading reading, CellAt remark)
    {
        if (remark.Cell.Words is not { } text || Told().Match(text.Contains(". ", StringComparison.Ordinal) ? text[(text.LastIndexOf(". ", StringComparison.Ordinal) + 2)..] : text) is not { Success: true } told || SmallWords.ReadPhase(told.Groups[1].Value) is not { } phase) return false;
        var entries = reading.Into.Entries;
        var checks = Enumerable.Range(reading.RowFrom, entries.Count - reading.RowFrom).Where(i => entries[i] is Check { SpO2: not null }).ToList();
        var session = entries.Skip(reading.RowFrom).OfType<Session>().FirstOrDefault(s => s.Start is { IsExact: true });
        // The other one may be told already.
        checks.RemoveAll(i => ((Check)entries[i]).Phase is not CheckPhase.None and var own && own != phase);
        if (checks is not [var only] || entries[only] is not Check { Phase: CheckPhase.None } check || session?.Start is not { } start) return false;
        entries[only] = check with { Phase = phase, Start = Notes.TimesOfEvents.Borrowed(start.Stated, phase) };
        if (told.Groups["other"].Success && SaturationReader.Read(told.Groups["other"].Value).TryGet(out var other) && SmallWords.ReadPhase(told.Groups["when"].Value) is { } second && !entries.Skip(reading.RowFrom).Any(e => e is Check told && told.SpO2 == other.Percent && told.Phase == second))
            reading.Add(check with { Sources = [remark.Source], SpO2 = other.Percent, SpO2High = null, Pulse = null, Phase = second, Start = Notes.TimesOfEvents.Borrowed(start.Stated, second) }, remark);
        reading.Use(remark);
        return true;
    }

    /// <summary>"perc LLL 4 RLL 4. sat is after": the words without such a remark behind them.</summary>
    public static string Without(string text) => text.LastIndexOf(". ", StringComparison.Ordinal) is > 0 and var stop && Told().IsMatch(text[(stop + 2)..]) ? text[..stop] : text;

    [GeneratedRegex(@"^\W*(?:(?:the )?(?:sats?|spo2|o2 sats?|readings?|oximeter|number)\s*(?:is|are|was|were|taken)?\s*)?(before|after|pre|post|b4)\b\W*(?:(?<other>\d\d)\s*%?\s*(?<when>before|after|pre|post|b4)\W*|(?<when>before|after|pre|post|b4)\b\W*(?:(?:it )?(?:was|is)\s+)?(?<other>\d\d)\s*%?\W*)?$", RegexOptions.IgnoreCase)]
    private static partial Regex Told();
}
