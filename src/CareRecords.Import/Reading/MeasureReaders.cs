namespace CareRecords.Import.Reading;

/// <summary>A saturation: one reading, or a range of readings.</summary>
/// <param name="Percent">Per cent, or the lower end of a range; 0 to 100.</param>
/// <param name="High">The upper end where a range was written; otherwise null.</param>
internal readonly record struct SaturationWritten(double Percent, double? High = null);

/// <summary>Reads one saturation: 94, 94%, "94-96". Over 100 or under 30 is impossible; "9l" is doubtful.</summary>
internal static class SaturationReader
{
    /// <summary>Reads the whole of <paramref name="text"/> as a saturation.</summary>
    public static Reading<SaturationWritten> Read(string text)
    {
        var terms = CellTerms.Measure(text).Where(t => !t.Is(Sense.SatLabel)).ToList();
        if (terms is [{ Kind: TermKind.Number } number, { Kind: TermKind.Word, Glued: true, Text: "l" or "o" or "i" or "s" }] && number.Number < Lowest)
            return Reading.Doubtful(new SaturationWritten(0), $"'{text.Trim()}' looks like a slip of the pen.");
        return terms switch
        {
            [{ Kind: TermKind.Number or TermKind.Quantity, Unit: Unit.None or Unit.Percent } one] => In(one.Number) ? Reading.Certain(new SaturationWritten(one.Number)) : Impossible(text),
            [{ Kind: TermKind.Range, Unit: Unit.None or Unit.Percent } range] => In(range.Number) && In(range.High) ? Reading.Certain(new SaturationWritten(range.Number, range.High)) : Impossible(text),
            _ => Reading.Nothing<SaturationWritten>(),
        };
    }

    private const double Lowest = 30;

    private static bool In(double percent) => percent is >= Lowest and <= 100;

    private static Reading<SaturationWritten> Impossible(string text) => Reading.Impossible<SaturationWritten>($"A saturation of {text.Trim()} is not possible (0 to 100 %).");
}

/// <summary>Reads oxygen flow in litres a minute: "0.5", "1/8 L", "half litre", "125 ml/min", "air", "RA", "off". Negative or over 60 is impossible.</summary>
internal static class OxygenReader
{
    /// <summary>Reads the whole of <paramref name="text"/> as an oxygen flow, litres a minute; 0 is air. A share of oxygen ("28%") is doubtful: it is no flow.</summary>
    public static Reading<double> Read(string text)
    {
        var terms = CellTerms.Measure(text).Where(t => !(t.Is(Sense.OxygenLabel) || t.Is(Sense.Per) || t is { Kind: TermKind.Word, Text: "on" or "of" or "in" or "at" or "min" or "flow" or "l" or "lpm" or "/min" } || (t.Kind == TermKind.Symbol && t.Text is "/" or "."))).ToList();
        return terms switch
        {
            [] => Reading.Nothing<double>(),
            [{ Kind: TermKind.Word } word] when word.Is(Sense.Air) || word.Text is "nil" or "none" or "off" or "no" or "ra" or "zero" or "without" => Reading.Certain(0.0, $"'{text.Trim()}' read as 0 litres a minute"),
            [{ Kind: TermKind.Word } half] when half.Is(Sense.Half) => Reading.Certain(0.5),
            [{ Kind: TermKind.Word } quarter] when quarter.Is(Sense.Quarter) => Reading.Certain(0.25),
            [{ Fraction: { } part }] => Reading.Certain(part),
            [{ Kind: TermKind.Quantity, Unit: Unit.MlMin or Unit.Ml } ml] => InRange(ml.Number / 1000, text),
            [{ Kind: TermKind.Quantity, Unit: Unit.Percent }] => Reading.Doubtful(0.0, $"{text.Trim()} is a share of oxygen, not litres a minute."),
            [{ Kind: TermKind.Number or TermKind.Quantity, Unit: Unit.None or Unit.Litre } litres] => InRange(litres.Number, text),
            _ => Reading.Nothing<double>(),
        };
    }

    private const double Most = 60;

    private static Reading<double> InRange(double litres, string text) =>
        litres is >= 0 and <= Most ? Reading.Certain(litres) : Reading.Impossible<double>($"Oxygen of {text.Trim()} litres a minute is not possible (0 to 60).");
}

/// <summary>Reads pulse (beats a minute) and breathing rate (breaths a minute).</summary>
internal static class PulseReader
{
    /// <summary>Reads the whole of <paramref name="text"/> as a pulse; under 20 or over 300 is impossible.</summary>
    public static Reading<double> Read(string text) =>
        CellTerms.Measure(text).Where(t => !t.Is(Sense.PulseLabel) && !t.Is(Sense.BreathLabel) && t.Text is not ("bpm" or "/min" or "per" or "min")).ToList() switch
        {
            [{ Kind: TermKind.Number } number] => number.Number is >= Least and <= Most ? Reading.Certain(number.Number) : Reading.Impossible<double>($"A rate of {text.Trim()} a minute is not possible (20 to 300)."),
            _ => Reading.Nothing<double>(),
        };

    private const double Least = 20;
    private const double Most = 300;
}

/// <summary>A temperature.</summary>
/// <param name="Celsius">Degrees Celsius, rounded to 0.1.</param>
/// <param name="AsWritten">Number and unit as written, the unit supplied where only one fits ("101.3 F").</param>
internal readonly record struct TemperatureWritten(double Celsius, string AsWritten);

/// <summary>Reads a temperature in °C or °F (without a unit: 30 to 45 is °C, 86 to 113 is °F, anything else is impossible).</summary>
internal static class TemperatureReader
{
    /// <summary>Reads the whole of <paramref name="text"/> as a temperature.</summary>
    public static Reading<TemperatureWritten> Read(string text)
    {
        var terms = CellTerms.Measure(text).Where(t => !t.Is(Sense.TempLabel) && !(t.Kind == TermKind.Symbol && t.Text is "°" or "º" or ".")).ToList();
        var letter = terms is [{ Kind: TermKind.Number }, { Kind: TermKind.Word, Text: "f" or "c" or "deg" or "degrees" } unit] ? unit.Text : null;
        if (terms is not ([{ Kind: TermKind.Number or TermKind.Quantity, Unit: Unit.None or Unit.Celsius or Unit.Fahrenheit }] or [{ Kind: TermKind.Number }, { Text: "f" or "c" or "deg" or "degrees" }]))
            return Reading.Nothing<TemperatureWritten>();
        var number = terms[0].Number;
        var fahrenheit = terms[0].Unit == Unit.Fahrenheit || letter == "f" || (terms[0].Unit == Unit.None && letter != "c" && number is >= 86 and <= 113);
        var possible = fahrenheit ? number is >= 86 and <= 113 : number is >= 30 and <= 45;
        if (!possible) return Reading.Impossible<TemperatureWritten>($"A temperature of {text.Trim()} is not possible (30 to 45 °C, 86 to 113 °F).");
        var celsius = Math.Round(fahrenheit ? (number - 32) / 1.8 : number, 1, MidpointRounding.AwayFromZero);
        return Reading.Certain(new TemperatureWritten(celsius, Notes.Doubts.Plain(number) + (fahrenheit ? " F" : " C")));
    }
}

/// <summary>Reads a rate of feeding: "65ml/hr", "72/hr", "50 an hour".</summary>
internal static class RateReader
{
    /// <summary>Reads the whole of <paramref name="text"/> as millilitres an hour.</summary>
    public static Reading<double> Read(string text) =>
        CellTerms.Measure(text) is [{ Kind: TermKind.Quantity or TermKind.Number, Unit: Unit.Rate or Unit.Ml or Unit.None, Number: > 0 and <= 2000 } rate]
            ? Reading.Certain(rate.Number) : Reading.Nothing<double>();
}
