namespace CareRecords.Import.Reading;

/// <summary>A saturation: one reading, or a range of readings.</summary>
/// <param name="Percent">Per cent, or the lower end of a range; 0 to 100.</param>
/// <param name="High">The upper end where a range was written; otherwise null.</param>
internal readonly record struct SaturationWritten(double Percent, double? High = null);

/// <summary>Reads one saturation: 94, 94%, "94-96". Over 100 or under 30 is impossible; "9l" is doubtful.</summary>
internal static class SaturationReader
{
    /// <summary>Reads the whole of <paramref name="text"/> as a saturation.</summary>
    public static Reading<SaturationWritten> Read(string text) => throw new NotImplementedException(text);
}

/// <summary>Reads oxygen flow in litres a minute: "0.5", "1/8 L", "half litre", "125 ml/min", "air", "RA", "off". Negative or over 60 is impossible.</summary>
internal static class OxygenReader
{
    /// <summary>Reads the whole of <paramref name="text"/> as an oxygen flow, litres a minute; 0 is air.</summary>
    public static Reading<double> Read(string text) => throw new NotImplementedException(text);
}

/// <summary>Reads pulse (beats a minute) and breathing rate (breaths a minute).</summary>
internal static class PulseReader
{
    /// <summary>Reads the whole of <paramref name="text"/> as a pulse; under 20 or over 300 is impossible.</summary>
    public static Reading<double> Read(string text) => throw new NotImplementedException(text);
}

/// <summary>A temperature.</summary>
/// <param name="Celsius">Degrees Celsius, rounded to 0.1.</param>
/// <param name="AsWritten">Number and unit as written, the unit supplied where only one fits ("101.3 F").</param>
internal readonly record struct TemperatureWritten(double Celsius, string AsWritten);

/// <summary>Reads a temperature in °C or °F (without a unit: 30 to 45 is °C, 86 to 113 is °F, anything else is impossible).</summary>
internal static class TemperatureReader
{
    /// <summary>Reads the whole of <paramref name="text"/> as a temperature.</summary>
    public static Reading<TemperatureWritten> Read(string text) => throw new NotImplementedException(text);
}

/// <summary>Reads a rate of feeding: "65ml/hr", "72/hr", "50 an hour".</summary>
internal static class RateReader
{
    /// <summary>Reads the whole of <paramref name="text"/> as millilitres an hour.</summary>
    public static Reading<double> Read(string text) => throw new NotImplementedException(text);
}
