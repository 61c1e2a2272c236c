using DocumentFormat.OpenXml;
using A = DocumentFormat.OpenXml.Drawing;
using C = DocumentFormat.OpenXml.Drawing.Charts;

namespace CareRecords.Workbooks.Charts.Native;

/// <summary>Axes of native charts.</summary>
internal static class AxisXml
{
    private const string GridColour = "D9D9D9";
    private const string LineColour = "595959";

    public static OpenXmlCompositeElement Category(NativeChart chart)
    {
        if (chart.Kind == NativeChartKind.Scatter) return Numbers(chart);
        OpenXmlCompositeElement axis = chart.CategoriesAreDates ? new C.DateAxis() : new C.CategoryAxis();
        Begin(axis, ChartXml.CategoryAxisId, new C.Scaling(Upwards()), C.AxisPositionValues.Bottom);
        End(axis, chart.CategoryAxisTitle, chart.CategoryNumberFormat, ChartXml.ValueAxisId);
        axis.Append(new C.AutoLabeled { Val = false });
        if (chart.CategoriesAreDates) axis.Append(new C.LabelOffset { Val = 100 }, new C.BaseTimeUnit { Val = C.TimeUnitValues.Days });
        else axis.Append(new C.LabelAlignment { Val = C.LabelAlignmentValues.Center }, new C.LabelOffset { Val = 100 }, new C.NoMultiLevelLabels { Val = false });
        return axis;
    }

    public static C.ValueAxis Value(NativeChart chart)
    {
        var scaling = new C.Scaling(Upwards());
        if (chart.ValueMax is { } max) scaling.Append(new C.MaxAxisValue { Val = max });
        if (chart.ValueMin is { } min) scaling.Append(new C.MinAxisValue { Val = min });
        var axis = new C.ValueAxis();
        Begin(axis, ChartXml.ValueAxisId, scaling, C.AxisPositionValues.Left);
        axis.Append(new C.MajorGridlines(Stroke(GridColour)));
        End(axis, chart.ValueAxisTitle, chart.ValueNumberFormat, ChartXml.CategoryAxisId, quarterTurn: true);
        axis.Append(new C.CrossBetween { Val = chart.Kind == NativeChartKind.Scatter ? C.CrossBetweenValues.MidpointCategory : C.CrossBetweenValues.Between });
        return axis;
    }

    private static C.ValueAxis Numbers(NativeChart chart)
    {
        var axis = new C.ValueAxis();
        Begin(axis, ChartXml.CategoryAxisId, new C.Scaling(Upwards()), C.AxisPositionValues.Bottom);
        End(axis, chart.CategoryAxisTitle, chart.CategoryNumberFormat, ChartXml.ValueAxisId);
        axis.Append(new C.CrossBetween { Val = C.CrossBetweenValues.MidpointCategory });
        return axis;
    }

    private static void Begin(OpenXmlCompositeElement axis, uint id, C.Scaling scaling, C.AxisPositionValues position) =>
        axis.Append(new C.AxisId { Val = id }, scaling, new C.Delete { Val = false }, new C.AxisPosition { Val = position });

    private static void End(OpenXmlCompositeElement axis, string title, string format, uint crosses, bool quarterTurn = false) => axis.Append(
        TextXml.Title(title, TextXml.SmallSize, bold: false, quarterTurn),
        new C.NumberingFormat { FormatCode = format, SourceLinked = false },
        new C.MajorTickMark { Val = C.TickMarkValues.Outside },
        new C.MinorTickMark { Val = C.TickMarkValues.None },
        new C.TickLabelPosition { Val = C.TickLabelPositionValues.Low },
        Stroke(LineColour),
        TextXml.Properties(TextXml.SmallSize),
        new C.CrossingAxis { Val = crosses },
        new C.Crosses { Val = C.CrossesValues.AutoZero });

    private static C.Orientation Upwards() => new() { Val = C.OrientationValues.MinMax };

    private static C.ChartShapeProperties Stroke(string colour) =>
        new(new A.Outline(new A.SolidFill(new A.RgbColorModelHex { Val = colour })) { Width = 9525 });
}
