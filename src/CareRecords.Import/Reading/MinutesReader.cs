namespace CareRecords.Import.Reading;

/// <summary>A number of minutes, or a range of them.</summary>
/// <param name="Minutes">Minutes, or the lower end of a range; 0 or more.</param>
/// <param name="High">The upper end where a range was written; otherwise null.</param>
internal readonly record struct MinutesWritten(double Minutes, double? High = null);

/// <summary>Reads minutes: 3, 2½, 1/2, "two and a half", "2-3 min", "0,5", "half an hour", "90 sec".</summary>
internal static class MinutesReader
{
    /// <summary>Reads the whole of <paramref name="text"/> as minutes; negative numbers and more than 24 hours are impossible.</summary>
    public static Reading<MinutesWritten> Read(string text)
    {
        if (text.AsSpan().TrimStart() is ['-' or '–' or '−', .. var rest] && !rest.IsEmpty && char.IsAsciiDigit(rest.TrimStart()[0])) return Impossible(text);
        return CellTerms.Read(text) switch
        {
            [{ Fraction: { } part }] => Of(part, null, text),
            [{ Kind: TermKind.Duration } over] => Of(over.Number, null, text),
            [{ Kind: TermKind.Number or TermKind.Quantity, Unit: Unit.None or Unit.Min } one] => Of(one.Number, null, text),
            [{ Kind: TermKind.Quantity, Unit: Unit.Hour } hours] => Of(hours.Number * 60, null, text),
            [{ Kind: TermKind.Quantity, Unit: Unit.Sec } seconds] => Of(seconds.Number / 60, null, text),
            [{ Kind: TermKind.Range, Unit: Unit.None or Unit.Min } range] => Of(range.Number, range.High, text),
            [{ Kind: TermKind.Word } half] when half.Is(Sense.Half) => Of(0.5, null, text),
            _ => Reading.Nothing<MinutesWritten>(),
        };
    }

    private const double MostMinutes = 24 * 60;

    private static Reading<MinutesWritten> Of(double minutes, double? high, string text) =>
        minutes < 0 || (high ?? minutes) > MostMinutes ? Impossible(text) : Reading.Certain(new MinutesWritten(minutes, high));

    private static Reading<MinutesWritten> Impossible(string text) => Reading.Impossible<MinutesWritten>($"{text.Trim()} minutes is not possible.");
}
