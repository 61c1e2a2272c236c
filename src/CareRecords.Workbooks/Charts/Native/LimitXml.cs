using DocumentFormat.OpenXml;
using C = DocumentFormat.OpenXml.Drawing.Charts;

namespace CareRecords.Workbooks.Charts.Native;

/// <summary>A limit as a dashed black line with its label where it runs. Its values are literal: no cell holds them.</summary>
internal static class LimitXml
{
    private const int Width = 19050;

    public static C.LineChartSeries Line(NativeChart chart, NativeLimit limit)
    {
        var count = Math.Max(1, chart.Series[0].Values.Count);
        var series = SeriesXml.Start(new C.LineChartSeries(), chart.Series.Count, limit.Label);
        series.Append(
            new C.ChartShapeProperties(SeriesXml.Stroke(NativeDash.Dash, "000000", Width)),
            new C.Marker(new C.Symbol { Val = C.MarkerStyleValues.None }),
            Label(count * 4 / 5),
            new C.CategoryAxisData(SeriesXml.Categories(chart, chart.Series[0])),
            new C.Values(Level(limit.Value, count)),
            new C.Smooth { Val = false });
        return series;
    }

    public static C.ScatterChartSeries Scatter(NativeChart chart, NativeLimit limit)
    {
        var (low, high) = Extent(chart);
        var series = SeriesXml.Start(new C.ScatterChartSeries(), chart.Series.Count, limit.Label);
        series.Append(
            new C.ChartShapeProperties(SeriesXml.Stroke(NativeDash.Dash, "000000", Width)),
            new C.Marker(new C.Symbol { Val = C.MarkerStyleValues.None }),
            Label(1),
            new C.XValues(Literal([low, low + (high - low) * 0.8, high])),
            new C.YValues(Level(limit.Value, 3)),
            new C.Smooth { Val = false });
        return series;
    }

    private static (double Low, double High) Extent(NativeChart chart)
    {
        var (low, high) = (double.PositiveInfinity, double.NegativeInfinity);
        foreach (var series in chart.Series)
        {
            foreach (var number in series.CategoryNumbers ?? [])
            {
                if (number is not { } x) continue;
                (low, high) = (Math.Min(low, x), Math.Max(high, x));
            }
        }
        return low <= high ? (low, high) : (0, 1);
    }

    private static C.NumberLiteral Level(double value, int count)
    {
        var values = new double?[count];
        Array.Fill(values, value);
        return Literal(values);
    }

    private static C.NumberLiteral Literal(double?[] values)
    {
        var literal = new C.NumberLiteral(new C.FormatCode("General"), new C.PointCount { Val = (uint)values.Length });
        literal.Append(SeriesXml.Points(values));
        return literal;
    }

    /// <summary>The series' name, above one point of it.</summary>
    private static C.DataLabels Label(int point)
    {
        var label = new C.DataLabel(new C.Index { Val = (uint)point }, new C.DataLabelPosition { Val = C.DataLabelPositionValues.Top });
        label.Append(Shown(seriesName: true));
        var labels = new C.DataLabels(label);
        labels.Append(Shown(seriesName: false));
        return labels;
    }

    private static OpenXmlElement[] Shown(bool seriesName) =>
    [
        new C.ShowLegendKey { Val = false }, new C.ShowValue { Val = false }, new C.ShowCategoryName { Val = false },
        new C.ShowSeriesName { Val = seriesName }, new C.ShowPercent { Val = false }, new C.ShowBubbleSize { Val = false },
    ];
}
