using CareRecords.Findings;
using CareRecords.Records;
using CareRecords.Workbooks.Charts.Paper;
using CareRecords.Workbooks.Charts.Pictures;
using NodaTime;
using OxyPlot;

namespace CareRecords.Workbooks.Tests.Charts;

/// <summary>A session's inhaler mark stands by that session, whatever the dose was good for before.</summary>
public sealed class DayStripMarksTests
{
    private static readonly LocalDate Day = new(2026, 4, 2);

    /// <summary>A strip 240 points from its left edge to its right one: ten an hour.</summary>
    private static Recorder Draw(params CareEntry[] entries)
    {
        var log = new CareLog { Zone = "Etc/UTC", ZoneFrom = "the test", Entries = entries };
        var (findings, ink) = (Reviewer.Review(log), new Recorder());
        new DayStripDrawing(log, findings, 12).Draw(ink, new OxyRect(-82, 0, 240 + 82 + 168, 100), DayStripRow.Of(log, findings), 16);
        return ink;
    }

    private static Session Session(int hour, int minute) => new() { Start = At(hour, minute), MinutesWritten = 20, Sources = [SourceLine.InText("n.txt", 1, "session")] };

    private static Dose Dose(int hour, int minute) => new() { Start = At(hour, minute), Medicine = "salbutamol", Sources = [SourceLine.InText("n.txt", 2, "blue")] };

    private static UncertainTime At(int hour, int minute) => UncertainTime.Exactly(Day.At(new LocalTime(hour, minute)));

    [Fact]
    public void A_dose_in_time_for_one_session_and_too_early_for_the_next_is_marked_at_the_next()
    {
        var ink = Draw(Dose(16, 30), Session(16, 50), Session(20, 0));
        Assert.Equal(125, Assert.Single(ink.Triangles, t => t.Colour == ChartColours.Black).X, 3);
        var early = Assert.Single(ink.Triangles, t => t.Colour == ChartColours.Vermilion);
        Assert.InRange(early.X, 160, 175);
    }

    [Fact]
    public void A_session_without_an_inhaler_on_a_day_with_one_has_its_own_mark()
    {
        var ink = Draw(Dose(7, 0), Session(7, 20), Session(17, 0));
        Assert.DoesNotContain(ink.Triangles, t => t.Colour == ChartColours.Vermilion);
        Assert.InRange(Assert.Single(ink.Strokes, s => s.Colour == ChartColours.Vermilion).X, 130, 145);
    }

    [Fact]
    public void Where_no_medicine_is_logged_no_inhaler_is_marked()
    {
        var ink = Draw(Session(7, 20), Session(17, 0));
        Assert.Empty(ink.Triangles);
    }

    [Fact]
    public void The_key_s_sample_of_a_short_gap_shows_no_number()
    {
        var log = new CareLog { Zone = "Etc/UTC", ZoneFrom = "the test", Entries = [Session(7, 0)] };
        var ink = new Recorder();
        foreach (var item in new DayStripDrawing(log, Reviewer.Review(log), 12).Key) item.Sample(ink, 0, 0);
        Assert.DoesNotContain(ink.Words, w => w.Any(char.IsDigit));
    }

    private sealed class Recorder : RenderContextBase
    {
        public List<(double X, OxyColor Colour)> Triangles { get; } = [];

        public List<(double X, OxyColor Colour)> Strokes { get; } = [];

        public List<string> Words { get; } = [];

        public override int ClipCount => 0;

        public override void DrawPolygon(IList<ScreenPoint> points, OxyColor fill, OxyColor stroke, double thickness, EdgeRenderingMode edgeRenderingMode, double[]? dashArray, LineJoin lineJoin)
        {
            if (points.Count == 3) Triangles.Add((points.Average(p => p.X), stroke));
        }

        public override void DrawLine(IList<ScreenPoint> points, OxyColor stroke, double thickness, EdgeRenderingMode edgeRenderingMode, double[]? dashArray, LineJoin lineJoin) =>
            Strokes.Add((points.Average(p => p.X), stroke));

        public override void DrawText(ScreenPoint p, string text, OxyColor fill, string? fontFamily, double fontSize, double fontWeight, double rotation, HorizontalAlignment horizontalAlignment, VerticalAlignment verticalAlignment, OxySize? maxSize) =>
            Words.Add(text);

        public override OxySize MeasureText(string text, string? fontFamily, double fontSize, double fontWeight) => new(text.Length * 5, 10);

        public override void PushClip(OxyRect clippingRectangle) { }

        public override void PopClip() { }
    }
}
