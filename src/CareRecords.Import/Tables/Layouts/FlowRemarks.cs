using System.Text.RegularExpressions;
using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>Reads what a remark beside a reading says of oxygen: "put her up to 1", "put on 0.5, came up to 93", "on 0.5".</summary>
internal static partial class FlowRemarks
{
    // More than this is not turned at home by hand.
    private const double MostLitres = 6;

    /// <summary>Gives the row's readings the flow at which they were taken, where that is all that the remark says: "on 0.5", "on air now thank God"; true when it did.</summary>
    public static bool Beside(BlockReading reading, CellAt remark)
    {
        var from = reading.RowFrom;
        if (remark.Cell.Words?.Split([',', ';'], StringSplitOptions.TrimEntries).Select(p => On().Match(p)).FirstOrDefault(m => m.Success) is not { } on || Litres(on.Groups[1].Value) is not { } flow) return false;
        if (reading.Into.Entries.Skip(from).OfType<Check>().LastOrDefault(c => c.Start is not null) is not { OxygenLitresPerMinute: null }) return false;
        for (var i = from; i < reading.Into.Entries.Count; i++)
            if (reading.Into.Entries[i] is Check { OxygenLitresPerMinute: null } check) reading.Into.Entries[i] = check with { OxygenLitresPerMinute = flow };
        reading.Use(remark);
        return true;
    }

    /// <summary>Adds what the remark tells; true when it told of oxygen.</summary>
    public static bool Read(BlockReading reading, CellAt remark)
    {
        if (Beside(reading, remark)) return true;
        var from = reading.RowFrom;
        if (remark.Cell.Words is not { } text || reading.Into.Entries.Skip(from).OfType<Check>().LastOrDefault(c => c.Start is not null) is not { } beside) return false;
        // "03h00 sats 89 in air, put on 0,5 l" tells of more, at a time of its own.
        if (FreeWords.HasClock(text) || AtNoon().IsMatch(text) || Turned().Match(text) is { Success: true, Index: var told } && text.AsSpan(0, told).ContainsAnyInRange('0', '9')) return false;
        if (Turned().Match(text) is not { Success: true } turned || Litres(turned.Groups[1].Value) is not { } litres || !OfOxygen().IsMatch(turned.Value) && !OfOxygen().IsMatch(text)) return false;
        var rest = text[(turned.Index + turned.Length)..];
        double? percent = Came().Match(rest) is { Success: true } came && SaturationReader.Read(came.Groups[1].Value).TryGet(out var read) ? read.Percent : null;
        // The same change in a column of its own, or a row further down, is the record.
        if (percent is null && beside.OxygenLitresPerMinute == litres || reading.IsUsed(remark) && reading.Into.Entries.Skip(from).Any(e => e is Check told && told.OxygenLitresPerMinute == litres)) return false;
        reading.Add(new Check { Sources = [remark.Source], Start = beside.Start is { IsExact: true } at ? Notes.TimesOfEvents.Borrowed(at.Stated, CheckPhase.None) : beside.Start, SpO2 = percent, OxygenLitresPerMinute = litres }, remark);
        return true;
    }

    private static double? Litres(string text) => OxygenReader.Read(text).TryGet(out var litres) && litres <= MostLitres ? litres : null;

    [GeneratedRegex(@"\b(?:noon|midday|midnight)\b", RegexOptions.IgnoreCase)]
    private static partial Regex AtNoon();

    // "put on 2 jumpers" is no flow: a flow has a fraction, a unit or a direction, or oxygen is named.
    [GeneratedRegex(@"\b(?:o2|oxygen|litres?|liters?|lpm|l/min|up to|down to|back to)\b|\d[.,/]\d|\d\s*l\b", RegexOptions.IgnoreCase)]
    private static partial Regex OfOxygen();

    [GeneratedRegex(@"^(?:(?:still |now |back )?(?:on|in)\s+|(?=(?:room )?air\b))((?:room )?air|half (?:an? )?lit(?:re|er)|\d+(?:[.,/]\d+)?\s*(?:l|lpm|litres?|liters?|l/min)?)(?: now\b[^\d]*)?\W*$", RegexOptions.IgnoreCase)]
    private static partial Regex On();

    [GeneratedRegex(@"\b(?:put|turned|bumped|moved|went|increased|lowered|reduced|raised|dropped)\s+(?:(?:him|her|it|them|back|the|o2|oxygen)\s+)*(?:on|(?:(?:up|down|back)\s+)?to)\s+(?:(?:the\s+)?(?:o2|oxygen)\s+(?:at\s+)?)?(half (?:an? )?lit(?:re|er)|\d(?:[.,/]\d+)?)\s*(?:l|lpm|litres?|liters?|l/min)?(?![\d:%]|\s*(?:puffs?|mls?|mg|min|mins|times|am|pm|o'clock))", RegexOptions.IgnoreCase)]
    private static partial Regex Turned();

    [GeneratedRegex(@"\b(?:came|went|back|rose|up|got|then|now|and)\b[^\d]{0,20}\b(\d\d)\b(?!\s*(?:min|am|pm|:))", RegexOptions.IgnoreCase)]
    private static partial Regex Came();
}
