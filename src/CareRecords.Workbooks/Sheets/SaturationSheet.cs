using CareRecords.Findings;
using CareRecords.Workbooks.Building;
using static CareRecords.Workbooks.Building.Look;

namespace CareRecords.Workbooks.Sheets;

/// <summary>Saturation at each oxygen flow, never pooled, and the change over a session at one flow.</summary>
internal static class SaturationSheet
{
    public const string Table = "Flows";

    private static string Flow => Formula.This(Table, "flow, L/min");

    /// <summary>Checks on the row's flow; where it is empty, checks without a flow.</summary>
    private static string AtFlow => $"Checks[care day],\">=\"&{ClockSheet.SpanFrom},Checks[care day],\"<=\"&{ClockSheet.SpanTo},Checks[oxygen],IF({Flow}=\"\",\"\",{Flow})";

    private static string Readings =>
        $"IF(ISNUMBER(Checks[spo2])*(Checks[care day]>={ClockSheet.SpanFrom})*(Checks[care day]<={ClockSheet.SpanTo})*IF(ISNUMBER({Flow}),ISNUMBER(Checks[oxygen])*(Checks[oxygen]={Flow}),NOT(ISNUMBER(Checks[oxygen]))*1),Checks[spo2])";

    public static TablePlace Write(Book book, ReviewRows rows)
    {
        var sheet = book.Add(WorkbookLayout.Sheet.Saturation);
        var findings = rows.Findings;
        IReadOnlyList<Column<SaturationAtFlow>> columns =
        [
            new("oxygen", 20, f => CellContent.Of(FindingWords.Flow(f.OxygenLitresPerMinute)).To(rows.LinkOf(rows.Checks.FirstOrDefault(c => c.Item.SpO2 is not null && c.Item.OxygenLitresPerMinute == f.OxygenLitresPerMinute)?.Item))) { Remark = "Leads to the first such reading; filter the column oxygen there to see all." },
            new("flow, L/min", 10, f => CellContent.Of(f.OxygenLitresPerMinute)) { Format = Format.Flow },
            new("readings", 10, f => CellContent.Of(f.Readings).By($"COUNTIFS({AtFlow},Checks[spo2],\">=0\")")) { Format = Format.Whole },
            new("days", 8, f => CellContent.Of(f.Days).By($"SUMPRODUCT(SIGN(COUNTIFS(Checks[care day],Days[care day],{AtFlow},Checks[spo2],\">=0\")))")) { Format = Format.Whole },
            new("median SpO2, %", 10, f => CellContent.Of(f.Median).ByArray($"MEDIAN({Readings})")) { Format = Format.OneDecimal },
            new("lower quartile, %", 10, f => CellContent.Of(f.LowerQuartile).ByArray($"_xlfn.QUARTILE.INC({Readings},1)")) { Format = Format.OneDecimal },
            new("upper quartile, %", 10, f => CellContent.Of(f.UpperQuartile).ByArray($"_xlfn.QUARTILE.INC({Readings},3)")) { Format = Format.OneDecimal },
            new("lowest, %", 10, f => CellContent.Of(f.Lowest).ByArray($"MIN({Readings})")) { Format = Format.UpToTwo },
            new("highest, %", 10, f => CellContent.Of(f.Highest).ByArray($"MAX({Readings})")) { Format = Format.UpToTwo },
        ];
        TableSheet.Dress(
            sheet, "Saturation at each oxygen flow", "Readings on different flows are never put together: the same saturation on more oxygen is a change. One reading may be off by 2 to 4 points.");
        var place = TableSheet.Write(book, sheet, Table, columns, findings.SaturationByFlow);
        WriteEffect(book, sheet, findings.SessionEffect, place.LastRow + 3);
        PageDress.Apply(sheet, landscape: true, Blue);
        return place;
    }

    private static void WriteEffect(Book book, ClosedXML.Excel.IXLWorksheet sheet, SessionEffect effect, int at)
    {
        book.Put(sheet.Cell(at, 1), "Saturation after less before the same session, at the same oxygen (points of %; from the findings, not recalculated)");
        sheet.Cell(at, 1).Style.Font.Bold = true;
        IReadOnlyList<(string Flow, int Pairs, double? Change, double? Low, double? High)> effects =
        [
            ("all flows, pairs at one flow", effect.Pairs, effect.MedianChange, effect.Low, effect.High),
            .. effect.ByFlow.Select(f => (FindingWords.Flow(f.OxygenLitresPerMinute), f.Pairs, f.MedianChange, f.Low, f.High)),
        ];
        IReadOnlyList<Column<(string Flow, int Pairs, double? Change, double? Low, double? High)>> columns =
        [
            new("pairs at", 20, e => CellContent.Of(e.Flow)) { Wrap = true },
            new("pairs", 10, e => CellContent.Of(e.Pairs)) { Format = Format.Whole },
            new("median change", 10, e => CellContent.Of(e.Change)) { Format = Format.OneDecimal },
            new("low", 8, e => CellContent.Of(e.Low)) { Format = Format.OneDecimal },
            new("high", 10, e => CellContent.Of(e.High)) { Format = Format.OneDecimal },
        ];
        var place = TableSheet.Write(book, sheet, "SessionChange", columns, effects, at + 1, setWidths: false);
        string[] notes = [$"{effect.PairsLeftOut} pairs left out: the oxygen changed or was not written.", effect.Method, effect.OximeterNote];
        for (var i = 0; i < notes.Length; i++) book.Put(sheet.Cell(place.LastRow + 1 + i, 1), notes[i]);
    }
}
