using DocumentFormat.OpenXml;
using C = DocumentFormat.OpenXml.Drawing.Charts;

namespace CareRecords.Workbooks.Charts.Native;

/// <summary>A limit as a dashed black line with its label where it runs.</summary>
internal static class LimitXml
{
    private const int Width = 19050;

    public static C.LineChartSeries Line(NativeChart chart, NativeLimit limit)
    {
        var series = SeriesXml.Start(new C.LineChartSeries(), chart.Series.Count, limit.Label);
        series.Append(
            new C.ChartShapeProperties(SeriesXml.Stroke(NativeDash.Dash, "000000", Width)),
            new C.Marker(new C.Symbol { Val = C.MarkerStyleValues.None }));
        // Over columns a label cannot be read; the legend names the line.
        if (chart.Kind == NativeChartKind.Line) series.Append(Label(limit));
        series.Append(
            new C.CategoryAxisData(SeriesXml.Categories(chart, chart.Series[0])),
            new C.Values(SeriesXml.Numbers(limit.ValuesRef, limit.Values)),
            new C.Smooth { Val = false });
        return series;
    }

    public static C.ScatterChartSeries Scatter(NativeChart chart, NativeLimit limit)
    {
        var series = SeriesXml.Start(new C.ScatterChartSeries(), chart.Series.Count, limit.Label);
        series.Append(
            new C.ChartShapeProperties(SeriesXml.Stroke(NativeDash.Dash, "000000", Width)),
            new C.Marker(new C.Symbol { Val = C.MarkerStyleValues.None }),
            Label(limit),
            new C.XValues(SeriesXml.Categories(chart, chart.Series[0])),
            new C.YValues(SeriesXml.Numbers(limit.ValuesRef, limit.Values)),
            new C.Smooth { Val = false });
        return series;
    }

    /// <summary>The series' name, above one point of it.</summary>
    private static C.DataLabels Label(NativeLimit limit)
    {
        var point = Math.Max(0, limit.Values.Count * 4 / 5 - 1);
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
