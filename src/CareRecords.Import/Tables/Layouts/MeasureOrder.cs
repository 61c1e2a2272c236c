using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>Reads figures with strokes between in the order in which the family's key, or a heading, names the measures: "SpO2 / pulse / oxygen" over "95/112/0.5".</summary>
internal static class MeasureOrder
{
    /// <summary>The measures that words name, in their order.</summary>
    public static IReadOnlyList<Role> In(string text) => [.. Lexicon.Find(text, out _).Select(k => k.Concept switch
    {
        Concept.Saturation => Role.Saturation,
        Concept.Pulse => Role.Pulse,
        Concept.Oxygen => Role.Oxygen,
        _ => Role.Unknown,
    }).Where(r => r != Role.Unknown).Distinct()];

    /// <summary>The reading; null when the text is no such list. Figures that cannot be are told to <paramref name="refuse"/> and left out.</summary>
    public static CellCheck? Read(string text, IReadOnlyList<Role> order, Action<string> refuse)
    {
        var figures = text.Split(['/', '@', '\\', '|'], StringSplitOptions.TrimEntries);
        if (figures.Length < 2 || figures.Length > order.Count || !Array.TrueForAll(figures, IsFigure)) return null;
        SaturationWritten? saturation = null;
        double? pulse = null, flow = null;
        for (var i = 0; i < figures.Length; i++)
        {
            if (figures[i].Length == 0 || NotSaid.Is(figures[i])) continue;
            if (order[i] == Role.Saturation) saturation = Value(SaturationReader.Read(figures[i]), text, refuse);
            else if (order[i] == Role.Pulse) pulse = Value(PulseReader.Read(figures[i]), text, refuse);
            else flow = Value(OxygenReader.Read(figures[i]), text, refuse);
        }

        return new CellCheck(saturation, flow, CheckPhase.None) { Pulse = pulse };
    }

    private static bool IsFigure(string text) => text.Length == 0 || NotSaid.Is(text) || (char.IsAsciiDigit(text[0]) && !text.Contains(' ')) || OxygenReader.Read(text).Outcome == Outcome.Certain;

    private static T? Value<T>(Reading<T> read, string text, Action<string> refuse) where T : struct
    {
        if (read.TryGet(out var value)) return value;
        refuse(read.Why ?? $"'{text}' is not as the key says.");
        return null;
    }
}
