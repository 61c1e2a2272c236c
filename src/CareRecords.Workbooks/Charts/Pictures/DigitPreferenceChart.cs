using CareRecords.Findings;
using CareRecords.Workbooks.Charts.Paper;
using OxyPlot;

namespace CareRecords.Workbooks.Charts.Pictures;

/// <summary>How far written clock times are rounded: shares found beside shares to be expected of times written to the minute.</summary>
internal static class DigitPreferenceChart
{
    private const string Share = "share";
    private const double ExpectedFives = 12.0 / 60;
    private const double ExpectedQuarters = 4.0 / 60;

    public static ChartPage? Page(ChildFindings findings)
    {
        var digits = findings.Quality.ClockMinutes;
        if (digits is not { Times: > 0, MultiplesOfFive: { } fives, MultiplesOfFifteen: { } quarters }) return null;
        var counts = FormattableString.Invariant($"{ChartWords.Percent(fives)} of {ChartWords.Count(digits.Times, "exact clock time")} end in 0 or 5");
        return new ChartPage
        {
            Name = "rounding",
            Title = $"Written times are rounded: {counts}",
            AltText = $"Rounding of written clock times: {counts}, where 20 % would be expected of times written to the minute; {ChartWords.Percent(quarters)} stand on a quarter hour, where 7 % would be expected.",
            SmallPrint = "Rounding is usual in hand-written notes; it is why a gap near its limit is less sure than it looks.",
            Width = 400,
            Key =
            [
                KeyItem.Box(ChartColours.Blue, ChartColours.Blue, "written"),
                KeyItem.Box(OxyColors.White, ChartColours.Black, "expected to the minute"),
            ],
            BodyHeight = 170,
            Body = (ink, body) => Plot(fives, quarters).DrawInto(ink, body),
        };
    }

    private static PlotModel Plot(double fives, double quarters)
    {
        var plot = PlotPanels.Empty(right: 12);
        var groups = PlotPanels.NumberAxis("minutes past the hour", -0.5, 1.5, 1);
        groups.LabelFormatter = at => at switch { 0 => "end in 0 or 5", 1 => "on a quarter hour", _ => "" };
        plot.Axes.Add(groups);
        var side = PlotPanels.SideAxis(Share, "share of times", 0, 1.12, 0.25);
        side.LabelFormatter = value => value > 1.01 ? "" : ChartWords.Percent(value);
        plot.Axes.Add(side);
        plot.Annotations.Add(new PlotLayer(
            (ink, pen) =>
            {
                Bar(ink, pen, -0.16, fives, ChartColours.Blue);
                Bar(ink, pen, 0.16, ExpectedFives, OxyColors.White);
                Bar(ink, pen, 0.84, quarters, ChartColours.Blue);
                Bar(ink, pen, 1.16, ExpectedQuarters, OxyColors.White);
            },
            Share));
        return plot;
    }

    private static void Bar(IRenderContext ink, PlotPen pen, double at, double share, OxyColor fill)
    {
        var (left, right, top) = (pen.X(at - 0.14), pen.X(at + 0.14), pen.Y(share));
        ink.Box(left, top, right - left, pen.Y(0) - top, fill, ChartColours.Black);
        ink.Text((left + right) / 2, top - 2, ChartWords.Percent(share), across: HorizontalAlignment.Center, down: VerticalAlignment.Bottom);
    }
}
