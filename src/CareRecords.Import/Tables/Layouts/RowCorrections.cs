using System.Globalization;
using System.Text.RegularExpressions;
using CareRecords.Records;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>
/// Carries out what a remark puts right in its own row: "finger slipped, should be 95", "95 not 85", "time is PM, by mistake written AM". Where the row has
/// not exactly one value that can be meant nothing is changed, and the remark is read like any other.
/// </summary>
internal static partial class RowCorrections
{
    private const int HalfDayHours = 12;

    /// <summary>Changes the entries of the row from an index on; true when the remark put one right.</summary>
    public static bool Apply(List<CareEntry> entries, int from, CellAt remark)
    {
        if (entries.Count == from || remark.Cell.Words is not { } text) return false;
        return Half(entries, from, text, remark) || Value(entries, from, text, remark);
    }

    private static bool Half(List<CareEntry> entries, int from, string text, CellAt remark)
    {
        if (!Mistake().IsMatch(text) || RightHalf().Match(text) is not { Success: true } half) return false;
        var afterNoon = half.Groups[1].Value.StartsWith("p", StringComparison.OrdinalIgnoreCase);
        var changed = false;
        for (var i = from; i < entries.Count; i++)
        {
            if (entries[i].When.Stated.Hour >= HalfDayHours == afterNoon) continue;
            entries[i] = Put(entries[i] with { Start = Moved(entries[i].Start, afterNoon), End = Moved(entries[i].End, afterNoon) }, text, remark);
            changed = true;
        }

        return changed;
    }

    private static UncertainTime? Moved(UncertainTime? time, bool afterNoon)
    {
        if (time is null) return null;
        var hours = afterNoon ? HalfDayHours : -HalfDayHours;
        return UncertainTime.Between(time.Earliest.PlusHours(hours), time.Stated.PlusHours(hours), time.Latest.PlusHours(hours), time.Precision);
    }

    private static bool Value(List<CareEntry> entries, int from, string text, CellAt remark)
    {
        var (pair, one) = (Not().Match(text), ShouldBe().Match(text));
        if (!pair.Success && !one.Success || !Number((pair.Success ? pair : one).Groups[1].Value, out var now)) return false;
        double? old = pair.Success && Number(pair.Groups[2].Value, out var was) ? was : null;
        var found = Enumerable.Range(from, entries.Count - from).SelectMany(i => Candidates(entries[i], now, OfOxygen().IsMatch(text)).Where(c => (old is null || c.Was == old) && c.Was != now).Select(c => (At: i, c.Right))).ToList();
        if (found is not [var only]) return false;
        entries[only.At] = Put(only.Right, text, remark);
        return true;
    }

    // What the entry would be with one of its values put right; only values that the number could be.
    private static IEnumerable<(double? Was, CareEntry Right)> Candidates(CareEntry entry, double now, bool ofOxygen)
    {
        switch (entry)
        {
            case Check { SpO2: not null } check when now is >= 60 and <= 100: yield return (check.SpO2, check with { SpO2 = now }); break;
            case Check { Pulse: not null } check when now is > 100 and <= 250: yield return (check.Pulse, check with { Pulse = now }); break;
            case Check { OxygenLitresPerMinute: not null } check when now <= 15 && ofOxygen: yield return (check.OxygenLitresPerMinute, check with { OxygenLitresPerMinute = now }); break;
            case Sign { Kind: SignKind.Temperature } sign when now is >= 34 and <= 42: yield return (sign.Number, sign with { Number = now, Value = now.ToString("0.##", CultureInfo.InvariantCulture) + " C" }); break;
            case Feed { Millilitres: not null } feed when now >= 10: yield return (feed.Millilitres, feed with { Millilitres = now }); break;
        }
    }

    private static CareEntry Put(CareEntry entry, string text, CellAt remark) =>
        entry with { HowRead = $"Put right as the remark '{text}' says.", Sources = remark.Place.Sheet is null || entry.Sources.Any(s => s.Place == remark.Source.Place) ? entry.Sources : [.. entry.Sources, remark.Source] };

    private static bool Number(string text, out double number) => double.TryParse(text.Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out number);

    [GeneratedRegex(@"\b(?:o2|oxygen|litres?|liters?|lpm|l/min|flow)\b|\d\s*l\b", RegexOptions.IgnoreCase)]
    private static partial Regex OfOxygen();

    [GeneratedRegex(@"\b(?:sorry,?|should (?:be|read|say|have been)|s/b|meant(?: to be| to write)?|was really|is really|really was|correct(?:ion)? (?:is|to)|correction:?|read as)\s*:?\s*(\d+(?:[.,]\d+)?)\s*%?(?![\d:.,]|\s*(?:min|ml|mg|puff|am\b|pm\b|h\b|hour|late|day|time|week|x\b))", RegexOptions.IgnoreCase)]
    private static partial Regex ShouldBe();

    [GeneratedRegex(@"\b(\d+(?:[.,]\d+)?)\s*%?,?\s+(?:and )?not\s+(\d+(?:[.,]\d+)?)(?![\d:])", RegexOptions.IgnoreCase)]
    private static partial Regex Not();

    [GeneratedRegex(@"\b(?:mistake\w*|wrong\w*|error|should be|should read|meant|slip)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Mistake();

    [GeneratedRegex(@"(?<!\d\s?)(?<!(?:wrote|written|write|writing|put|put down|not|of|typed|says?)\s)\b([ap]\.?m)\b\.?", RegexOptions.IgnoreCase)]
    private static partial Regex RightHalf();
}
