using CareRecords.Workbooks.Blank;
using CareRecords.Workbooks.Charts.Paper;

namespace CareRecords.Workbooks;

/// <summary>
/// A first workbook costs the runtime half a second of loading and compiling, whatever its length: more than the writing of a month. This makes an empty
/// log and a small chart on another processor while the notes are read, and throws them away; the review that follows finds the ground prepared.
/// </summary>
public static class WarmUp
{
    /// <summary>Begins; nothing has to wait for it. Does nothing on a machine with one processor.</summary>
    public static void Begin()
    {
        if (Environment.ProcessorCount > 1) _ = Task.Run(MakeAndThrowAway);
    }

    private static void MakeAndThrowAway()
    {
        BlankLog.Write(new MemoryStream());
        var page = new ChartPage { Name = "warm-up", Title = "Warm-up", AltText = "", Width = 72, BodyHeight = 36, Body = (ink, body) => PlotPanels.Empty(4).DrawInto(ink, body) };
        _ = page.Draw().Png;
    }
}
