using CareRecords.Workbooks.Building;
using CareRecords.Workbooks.Charts;
using CareRecords.Workbooks.Finishing;
using CareRecords.Workbooks.Sheets;
using ClosedXML.Excel;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Validation;
using C = DocumentFormat.OpenXml.Drawing.Charts;
using Xdr = DocumentFormat.OpenXml.Drawing.Spreadsheet;

namespace CareRecords.Workbooks.Tests.Finishing;

public sealed class SheetDrawingTests
{
    [Theory]
    [InlineData(FileFormatVersions.Office2019)]
    [InlineData(FileFormatVersions.Microsoft365)]
    public void A_sheet_with_every_kind_of_chart_and_a_picture_has_no_validator_error(FileFormatVersions version)
    {
        using var book = new MemoryStream(Made());
        using var document = SpreadsheetDocument.Open(book, false);
        Assert.Empty(new OpenXmlValidator(version).Validate(document).Select(e => $"{e.Path?.XPath}: {e.Description}"));
    }

    [Fact]
    public void Pictures_and_charts_carry_their_alternative_text_and_steady_ids()
    {
        using var book = new MemoryStream(Made());
        using var document = SpreadsheetDocument.Open(book, false);
        var drawing = SheetOf(document).DrawingsPart;
        Assert.NotNull(drawing);
        var texts = drawing.WorksheetDrawing.Descendants<Xdr.NonVisualDrawingProperties>().Select(p => (p.Name?.Value, p.Description?.Value)).ToList();
        Assert.Equal([("dot", "A dot."), .. Kinds.Select(k => ((string?)k, (string?)$"A {k} chart."))], texts);
        Assert.Equal(["picture-dot", .. Kinds.Select(k => "chart-" + k)], drawing.Parts.Select(p => p.RelationshipId));
    }

    [Fact]
    public void Present_values_are_written_and_an_empty_cell_is_no_zero()
    {
        using var book = new MemoryStream(Made());
        using var document = SpreadsheetDocument.Open(book, false);
        var line = SheetOf(document).DrawingsPart?.ChartParts.First(p => p.ChartSpace.Descendants<C.DateAxis>().Any());
        Assert.NotNull(line);
        var values = line.ChartSpace.Descendants<C.Values>().First();
        Assert.Equal("Charts!$B$2:$B$5", values.Descendants<C.Formula>().Single().Text);
        Assert.Equal([("0", "2"), ("1", "4"), ("3", "3.5")], values.Descendants<C.NumericPoint>().Select(p => (p.Index?.InnerText ?? "", p.InnerText)));
        Assert.Equal(4u, values.Descendants<C.PointCount>().Single().Val?.Value);
        Assert.Equal(C.DisplayBlanksAsValues.Gap, line.ChartSpace.Descendants<C.DisplayBlanksAs>().Single().Val?.Value);
    }

    [Fact]
    public void The_drawing_stands_before_the_table_parts() // Excel repairs a sheet whose elements are out of order.
    {
        using var book = new MemoryStream(Made());
        using var document = SpreadsheetDocument.Open(book, false);
        var names = SheetOf(document).Worksheet.ChildElements.Select(e => e.LocalName).ToList();
        Assert.True(names.IndexOf("drawing") is var at && at >= 0 && at < names.IndexOf("tableParts"), string.Join(' ', names));
    }

    [Fact]
    public void A_chart_right_of_another_hangs_on_no_column()
    {
        using var book = Plain();
        using var stream = new MemoryStream();
        PackagePass.Save(book, [new(new ChartAnchor(8, 1, 100, 60) { FromEdges = (127, 50) }, null, Native("line"))], stream);
        using var document = SpreadsheetDocument.Open(stream, false);
        var anchor = Assert.Single(SheetOf(document).DrawingsPart!.WorksheetDrawing.Descendants<Xdr.AbsoluteAnchor>());
        Assert.Equal((127L * 36000, 50L * 36000), (anchor.Position?.X?.Value, anchor.Position?.Y?.Value));
    }

    [Fact]
    public void A_name_used_twice_on_a_sheet_is_refused() =>
        Assert.Throws<ArgumentException>(() => SheetDrawing.Of([new(new ChartAnchor(1, 1, 100, 60), null, Native("line")), new(new ChartAnchor(1, 20, 100, 60), null, Native("line"))]));

    [Fact]
    public void What_goes_wrong_with_a_picture_is_told_and_nothing_waits_for_ever()
    {
        using var book = Plain();
        var broken = new DrawnChart("dot", new Lazy<byte[]>(() => throw new InvalidDataException("no picture")), 1, 1, "A dot.", "Dot");
        using var stream = new MemoryStream();
        Assert.Equal("no picture", Assert.Throws<InvalidDataException>(() => PackagePass.Save(book, [new(new ChartAnchor(1, 1, 20, 20), broken, null)], stream)).Message);
    }

    [Fact]
    public void What_goes_wrong_before_a_part_is_begun_is_told_too()
    {
        using var stream = new MemoryStream();
        Assert.Throws<InvalidDataException>(() => SteadyZip.Rewrite([], ["first", "second"], stream, (_, _) => throw new InvalidDataException()));
    }

    [Fact]
    public void A_place_that_takes_no_more_ends_the_making_of_parts()
    {
        using var book = Plain();
        var large = new DrawnChart("large", new Lazy<byte[]>(new byte[4 << 20]), 1, 1, "A dot.", "Dot");
        using var full = new FullStream();
        Assert.Throws<IOException>(() => PackagePass.Save(book, [new(new ChartAnchor(1, 1, 20, 20), large, null)], full));
    }

    /// <summary>A disk with no room.</summary>
    private sealed class FullStream : MemoryStream
    {
        public override void Write(byte[] buffer, int offset, int count) => throw new IOException("full");

        public override void Write(ReadOnlySpan<byte> buffer) => throw new IOException("full");
    }

    private static readonly string[] Kinds = ["line", "column", "stacked", "scatter", "words"];

    private static byte[] Made()
    {
        var dot = new Lazy<byte[]>(Convert.FromBase64String("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNkYPhfDwAChwGA60e6kgAAAABJRU5ErkJggg=="));
        var picture = new PlacedChart(new ChartAnchor(5, 1, 20, 20), new DrawnChart("dot", dot, 1, 1, "A dot.", "Dot"), null);
        using var book = Plain();
        using var stream = new MemoryStream();
        PackagePass.Save(book, [picture, .. Kinds.Select((kind, i) => new PlacedChart(new ChartAnchor(5, 6 + (i * 18), 150, 80), null, Native(kind)))], stream);
        if (Environment.GetEnvironmentVariable("CHART_PICTURES") is { Length: > 0 } folder)
        {
            Directory.CreateDirectory(folder);
            File.WriteAllBytes(Path.Combine(folder, "native.xlsx"), stream.ToArray());
        }

        return stream.ToArray();
    }

    private static Book Plain()
    {
        var book = new Book();
        var sheet = book.Add(WorkbookLayout.Sheet.Charts);
        sheet.Cell(1, 1).SetValue("day");
        sheet.Cell(1, 2).SetValue("sessions");
        sheet.Cell(1, 3).SetValue("planned");
        sheet.Cell(1, 4).SetValue("limit");
        double?[] done = [2, 4, null, 3.5];
        for (var i = 0; i < 4; i++)
        {
            sheet.Cell(i + 2, 1).Value = new DateTime(2026, 3, 14).AddDays(i);
            if (done[i] is { } value) sheet.Cell(i + 2, 2).Value = value;
            sheet.Cell(i + 2, 3).Value = 3;
            sheet.Cell(i + 2, 4).Value = 5;
        }

        sheet.Range(1, 1, 5, 4).CreateTable("Days");
        sheet.PageSetup.PageOrientation = XLPageOrientation.Landscape;
        sheet.PageSetup.FitToPages(1, 0);
        return book;
    }

    private static NativeChart Native(string name) => new()
    {
        Name = name,
        Kind = name switch { "column" => NativeChartKind.Column, "stacked" or "words" => NativeChartKind.StackedColumn, "scatter" => NativeChartKind.Scatter, _ => NativeChartKind.Line },
        Title = $"Sessions written on 3 of 4 days ({name})",
        AltText = $"A {name} chart.",
        CategoryAxisTitle = "care day",
        ValueAxisTitle = "sessions a day",
        CategoryNumberFormat = "d mmm",
        ValueNumberFormat = "0",
        CategoriesAreDates = name is "line" or "column",
        ValueMin = 0,
        ValueMax = name == "stacked" ? null : 6,
        Limit = name == "words" ? null : new NativeLimit("limit 5 a day", "Charts!$D$2:$D$5", [5, 5, 5, 5]),
        Series =
        [
            Series("done", "B", [2, 4, null, 3.5]) with { CategoryTexts = name == "words" ? ["Sat", "Sun", "Mon", "Tue"] : null },
            Series("planned", "C", [3, 3, 3, 3]) with { Marker = NativeMarker.Cross, Dash = NativeDash.Dash, Colour = "D55E00" },
        ],
    };

    private static NativeSeries Series(string name, string column, IReadOnlyList<double?> values) => new()
    {
        Name = name,
        CategoriesRef = "Charts!$A$2:$A$5",
        ValuesRef = $"Charts!${column}$2:${column}$5",
        CategoryNumbers = [46095, 46096, 46097, 46098],
        Values = values,
    };

    private static WorksheetPart SheetOf(SpreadsheetDocument document) => document.WorkbookPart?.WorksheetParts.Single() ?? throw new InvalidOperationException();
}
