using DocumentFormat.OpenXml;
using C = DocumentFormat.OpenXml.Drawing.Charts;

namespace CareRecords.Workbooks.Charts.Native;

/// <summary>Builds a chart part: title, plot, axes and legend. The order of elements is the schema's.</summary>
internal static class ChartXml
{
    public const uint CategoryAxisId = 111111111;
    public const uint ValueAxisId = 222222222;

    public static C.ChartSpace Of(NativeChart chart)
    {
        var plot = new C.PlotArea(new C.Layout());
        foreach (var drawn in Plots(chart)) plot.Append(drawn);
        plot.Append(AxisXml.Category(chart), AxisXml.Value(chart));
        var space = new C.ChartSpace(
            new C.Date1904 { Val = false },
            new C.RoundedCorners { Val = false },
            new C.Chart(
                TextXml.Title(chart.Title, TextXml.TitleSize, bold: true),
                new C.AutoTitleDeleted { Val = false },
                plot,
                new C.Legend(new C.LegendPosition { Val = C.LegendPositionValues.Bottom }, new C.Overlay { Val = false }, TextXml.Properties(TextXml.SmallSize)),
                new C.PlotVisibleOnly { Val = false },
                new C.DisplayBlanksAs { Val = C.DisplayBlanksAsValues.Gap }),
            TextXml.Properties(TextXml.SmallSize));
        space.AddNamespaceDeclaration("a", "http://schemas.openxmlformats.org/drawingml/2006/main");
        space.AddNamespaceDeclaration("r", "http://schemas.openxmlformats.org/officeDocument/2006/relationships");
        return space;
    }

    private static IEnumerable<OpenXmlElement> Plots(NativeChart chart)
    {
        switch (chart.Kind)
        {
            case NativeChartKind.Line:
                yield return Lines(chart, withSeries: true);
                break;
            case NativeChartKind.Scatter:
                yield return Scatter(chart);
                break;
            default:
                yield return Columns(chart);
                if (chart.Limit is not null) yield return Lines(chart, withSeries: false);
                break;
        }
    }

    /// <summary>A line plot of the series, and of the limit where there is one; beside columns, of the limit alone.</summary>
    private static C.LineChart Lines(NativeChart chart, bool withSeries)
    {
        var lines = new C.LineChart(new C.Grouping { Val = C.GroupingValues.Standard }, new C.VaryColors { Val = false });
        for (var i = 0; withSeries && i < chart.Series.Count; i++)
        {
            var series = SeriesXml.Start(new C.LineChartSeries(), i, chart.Series[i].Name);
            series.Append(SeriesXml.LineShape(chart.Series[i]), SeriesXml.Marker(chart.Series[i]));
            series.Append(new C.CategoryAxisData(SeriesXml.Categories(chart, chart.Series[i])), new C.Values(SeriesXml.Numbers(chart.Series[i])), new C.Smooth { Val = false });
            lines.Append(series);
        }
        if (chart.Limit is { } limit) lines.Append(LimitXml.Line(chart, limit));
        lines.Append(new C.ShowMarker { Val = true });
        return WithAxes(lines);
    }

    private static C.BarChart Columns(NativeChart chart)
    {
        var stacked = chart.Kind == NativeChartKind.StackedColumn;
        var columns = new C.BarChart(
            new C.BarDirection { Val = C.BarDirectionValues.Column },
            new C.BarGrouping { Val = stacked ? C.BarGroupingValues.Stacked : C.BarGroupingValues.Clustered },
            new C.VaryColors { Val = false });
        for (var i = 0; i < chart.Series.Count; i++)
        {
            var series = SeriesXml.Start(new C.BarChartSeries(), i, chart.Series[i].Name);
            series.Append(SeriesXml.ColumnShape(chart.Series[i]), new C.InvertIfNegative { Val = false });
            series.Append(new C.CategoryAxisData(SeriesXml.Categories(chart, chart.Series[i])), new C.Values(SeriesXml.Numbers(chart.Series[i])));
            columns.Append(series);
        }
        columns.Append(new C.GapWidth { Val = 60 });
        if (stacked) columns.Append(new C.Overlap { Val = 100 });
        return WithAxes(columns);
    }

    private static C.ScatterChart Scatter(NativeChart chart)
    {
        var scatter = new C.ScatterChart(new C.ScatterStyle { Val = C.ScatterStyleValues.LineMarker }, new C.VaryColors { Val = false });
        for (var i = 0; i < chart.Series.Count; i++)
        {
            var series = SeriesXml.Start(new C.ScatterChartSeries(), i, chart.Series[i].Name);
            series.Append(SeriesXml.LineShape(chart.Series[i]), SeriesXml.Marker(chart.Series[i]));
            series.Append(new C.XValues(SeriesXml.Categories(chart, chart.Series[i])), new C.YValues(SeriesXml.Numbers(chart.Series[i])), new C.Smooth { Val = false });
            scatter.Append(series);
        }
        if (chart.Limit is { } limit) scatter.Append(LimitXml.Scatter(chart, limit));
        return WithAxes(scatter);
    }

    private static T WithAxes<T>(T plot)
        where T : OpenXmlCompositeElement
    {
        plot.Append(new C.AxisId { Val = CategoryAxisId }, new C.AxisId { Val = ValueAxisId });
        return plot;
    }
}
