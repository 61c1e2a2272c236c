namespace CareRecords.Import.Reading;

/// <summary>Reads a volume: "120", "120ml", "4 oz", "120cc", "0,12 l".</summary>
internal static class VolumeReader
{
    /// <summary>US fluid ounce in millilitres (29.5735, rounded).</summary>
    public const double MillilitresPerOunce = 29.57;

    /// <summary>Reads the whole of <paramref name="text"/> as millilitres; the written form of a converted unit is in <c>HowRead</c>.</summary>
    public static Reading<double> Read(string text) => throw new NotImplementedException(text);
}
