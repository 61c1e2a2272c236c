using System.Globalization;
using DocumentFormat.OpenXml;
using A = DocumentFormat.OpenXml.Drawing;
using C = DocumentFormat.OpenXml.Drawing.Charts;

namespace CareRecords.Workbooks.Charts.Native;

/// <summary>Series of native charts: their look, their cells and the values that stand in them.</summary>
internal static class SeriesXml
{
    private const int LineWidth = 19050;
    private const int EdgeWidth = 9525;

    public static T Start<T>(T series, int index, string name)
        where T : OpenXmlCompositeElement
    {
        series.Append(new C.Index { Val = (uint)index }, new C.Order { Val = (uint)index }, new C.SeriesText(new C.NumericValue(name)));
        return series;
    }

    public static C.ChartShapeProperties LineShape(NativeSeries series) =>
        new(Stroke(series.Dash, series.Colour, LineWidth));

    /// <summary>Columns have a black edge; a dash or dots becomes a pattern, so that stacked columns differ in black-and-white print.</summary>
    public static C.ChartShapeProperties ColumnShape(NativeSeries series)
    {
        OpenXmlElement fill = series.Dash switch
        {
            NativeDash.Dash => Pattern(A.PresetPatternValues.WideUpwardDiagonal, series.Colour),
            NativeDash.Dot => Pattern(A.PresetPatternValues.Percent20, series.Colour),
            _ => Solid(series.Colour),
        };
        return new C.ChartShapeProperties(fill, Stroke(NativeDash.Solid, "000000", EdgeWidth));
    }

    public static C.Marker Marker(NativeSeries series)
    {
        if (series.Marker == NativeMarker.None) return new C.Marker(new C.Symbol { Val = C.MarkerStyleValues.None });
        var style = series.Marker switch
        {
            NativeMarker.Square => C.MarkerStyleValues.Square,
            NativeMarker.Triangle => C.MarkerStyleValues.Triangle,
            NativeMarker.Diamond => C.MarkerStyleValues.Diamond,
            NativeMarker.Cross => C.MarkerStyleValues.X,
            _ => C.MarkerStyleValues.Circle,
        };
        // A cross is all edge: a fill would make it a square.
        OpenXmlElement fill = series.Marker == NativeMarker.Cross ? new A.NoFill() : Solid(series.Colour);
        return new C.Marker(
            new C.Symbol { Val = style }, new C.Size { Val = 6 }, new C.ChartShapeProperties(fill, Stroke(NativeDash.Solid, series.Colour, EdgeWidth)));
    }

    public static OpenXmlElement Categories(NativeChart chart, NativeSeries series) => series.CategoryTexts is { } texts
        ? new C.StringReference(new C.Formula(series.CategoriesRef), Words(texts))
        : new C.NumberReference(new C.Formula(series.CategoriesRef), Cache(series.CategoryNumbers ?? [], chart.CategoryNumberFormat));

    public static C.NumberReference Numbers(NativeSeries series) => Numbers(series.ValuesRef, series.Values);

    public static C.NumberReference Numbers(string cells, IReadOnlyList<double?> values) =>
        new(new C.Formula(cells), Cache(values, "General"));

    public static A.Outline Stroke(NativeDash dash, string colour, int width)
    {
        if (dash == NativeDash.None) return new A.Outline(new A.NoFill());
        var preset = dash switch
        {
            NativeDash.Dash => A.PresetLineDashValues.Dash,
            NativeDash.Dot => A.PresetLineDashValues.SystemDot,
            _ => A.PresetLineDashValues.Solid,
        };
        return new A.Outline(Solid(colour), new A.PresetDash { Val = preset }, new A.Round()) { Width = width };
    }

    /// <summary>Points of a cache; an empty cell is left out, which viewers draw as a gap.</summary>
    private static IEnumerable<C.NumericPoint> Points(IReadOnlyList<double?> values)
    {
        for (var i = 0; i < values.Count; i++)
        {
            if (values[i] is { } value)
                yield return new C.NumericPoint(new C.NumericValue(value.ToString("R", CultureInfo.InvariantCulture))) { Index = (uint)i };
        }
    }

    private static C.NumberingCache Cache(IReadOnlyList<double?> values, string format)
    {
        var cache = new C.NumberingCache(new C.FormatCode(format), new C.PointCount { Val = (uint)values.Count });
        cache.Append(Points(values));
        return cache;
    }

    private static C.StringCache Words(IReadOnlyList<string> texts)
    {
        var cache = new C.StringCache(new C.PointCount { Val = (uint)texts.Count });
        for (var i = 0; i < texts.Count; i++) cache.Append(new C.StringPoint(new C.NumericValue(texts[i])) { Index = (uint)i });
        return cache;
    }

    private static A.SolidFill Solid(string colour) => new(new A.RgbColorModelHex { Val = colour });

    private static A.PatternFill Pattern(A.PresetPatternValues pattern, string colour) => new(
        new A.ForegroundColor(new A.RgbColorModelHex { Val = colour }), new A.BackgroundColor(new A.RgbColorModelHex { Val = "FFFFFF" }))
    { Preset = pattern };
}
