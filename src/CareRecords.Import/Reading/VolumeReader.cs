namespace CareRecords.Import.Reading;

/// <summary>Reads a volume: "120", "120ml", "4 oz", "120cc", "0,12 l".</summary>
internal static class VolumeReader
{
    /// <summary>US fluid ounce in millilitres: 231 cubic inches of 2.54³ cm³ to 128 ounces, exactly (NIST Handbook 44, appendix C).</summary>
    public const double MillilitresPerOunce = 29.5735295625;

    /// <summary>US fluid ounces in millilitres, to a tenth, halves upwards: 5 oz are 147.9 ml.</summary>
    public static double OfOunces(double ounces) => Math.Round(ounces * MillilitresPerOunce, 1, MidpointRounding.AwayFromZero);

    /// <summary>Reads the whole of <paramref name="text"/> as millilitres; the written form of a converted unit is in <c>HowRead</c>.</summary>
    public static Reading<double> Read(string text) => CellTerms.Measure(text) switch
    {
        [{ Kind: TermKind.Quantity, Unit: Unit.Oz } ounces] => InRange(OfOunces(ounces.Number), text, $"{text.Trim()} read as US fluid ounces of 29.57 ml"),
        [{ Kind: TermKind.Quantity, Unit: Unit.Litre } litres] => InRange(litres.Number * 1000, text, $"{text.Trim()} read as litres"),
        [{ Kind: TermKind.Quantity or TermKind.Number, Unit: Unit.Ml or Unit.None } ml] => InRange(ml.Number, text, null),
        [{ Kind: TermKind.Symbol, Text: "-" or "–" }, { Kind: TermKind.Quantity or TermKind.Number }] => InRange(-1, text, null),
        _ => Reading.Nothing<double>(),
    };

    private const double Most = 3000;

    private static Reading<double> InRange(double millilitres, string text, string? how) =>
        millilitres is >= 0 and <= Most ? Reading.Certain(millilitres, how) : Reading.Impossible<double>($"A volume of {text.Trim()} is not possible.");
}
