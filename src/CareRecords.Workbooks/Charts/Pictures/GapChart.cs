using CareRecords.Findings;
using CareRecords.Workbooks.Charts.Paper;
using OxyPlot;

namespace CareRecords.Workbooks.Charts.Pictures;

/// <summary>Every session's feed gap and inhaler gap against its limit, as wide as the notes leave it.</summary>
internal static class GapChart
{
    private const string Feed = "feed";
    private const string Inhaler = "inhaler";

    /// <summary>The chart of a span, or of a part of one; null when it has no session.</summary>
    public static ChartPage? Page(ChildFindings findings, string name)
    {
        if (findings.Sessions.Count == 0) return null;
        var (feed, inhaler) = (new int[3], new int[3]);
        foreach (var session in findings.Sessions)
        {
            feed[Place(session.FeedGap.Verdict)]++;
            inhaler[Place(session.InhalerGap.Verdict)]++;
        }
        var counts = FormattableString.Invariant(
            $"Feed gap kept before {feed[0]} of {ChartWords.Count(feed[0] + feed[1], "session")} that could be judged ({feed[2]} cannot tell); inhaler gap before {inhaler[0]} of {inhaler[0] + inhaler[1]} ({inhaler[2]} cannot tell)");
        return new ChartPage
        {
            Name = name,
            Title = counts,
            AltText = counts + ". Each session's gap is drawn against its limit with the room that the written times leave.",
            SmallPrint = FormattableString.Invariant(
                $"{ChartWords.Count(findings.Sessions.Count, "session")}, {ChartWords.Days(findings.Span.From, findings.Span.To)}. A bar spans every gap that the written times allow; exactly the limit is kept."),
            Key =
            [
                KeyItem.Of(Glyph.Dot, ChartColours.Blue, "kept"),
                KeyItem.Of(Glyph.Cross, ChartColours.Vermilion, "short"),
                KeyItem.Of(Glyph.HollowDiamond, ChartColours.Green, "early (inhaler)", 5.5),
                KeyItem.Of(Glyph.Dash, ChartColours.Vermilion, "no inhaler written, though other medicines were"),
                KeyItem.Of(Glyph.Question, ChartColours.Black, "cannot tell"),
                new((ink, x, y) => Whisker(ink, x, y - 6, y + 6, ChartColours.Grey), "room in the written times", 6),
                new((ink, x, y) => Beyond(ink, x, y + 4), "longer than the panel shows", 8),
                .. KeyItem.Illness(findings),
            ],
            BodyHeight = 392,
            Body = (ink, body) => Plot(findings).DrawInto(ink, body),
        };
    }

    /// <summary>Kept, judged and not kept, cannot tell.</summary>
    private static int Place(GapVerdict verdict) => verdict switch { GapVerdict.Kept => 0, GapVerdict.Unknown => 2, _ => 1 };

    private static PlotModel Plot(ChildFindings findings)
    {
        var days = DayScale.Of(findings.Span);
        var plot = PlotPanels.Empty(right: 104);
        plot.Axes.Add(PlotPanels.DayAxis(days));
        Panel(plot, days, findings, Feed, "feed gap (min)", Gaps.OfFeeds(findings, days), 0.54, 1);
        Panel(plot, days, findings, Inhaler, "inhaler gap (min)", Gaps.OfInhalers(findings, days), 0, 0.46);
        return plot;
    }

    private static void Panel(PlotModel plot, DayScale days, ChildFindings findings, string key, string title, Gaps gaps, double from, double to)
    {
        var axis = PlotPanels.SideAxis(key, title, -0.16 * gaps.Top, 1.14 * gaps.Top, PlotPanels.Step(gaps.Top, 5), from, to);
        axis.LabelFormatter = minutes => minutes < -1e-9 || minutes > gaps.Top ? "" : ChartWords.Number(minutes);
        plot.Axes.Add(axis);
        plot.Annotations.Add(days.IllnessBands(findings.Days, key, named: key == Feed));
        plot.Annotations.Add(new PlotLayer((ink, pen) => Limits(ink, pen, gaps), key));
        plot.Annotations.Add(new PlotLayer((ink, pen) => Marks(ink, pen, gaps), key));
    }

    private static void Limits(IRenderContext ink, PlotPen pen, Gaps gaps)
    {
        ink.Stroke(pen.Left, pen.Y(0), pen.Right, pen.Y(0), ChartColours.Grey, 0.8);
        ink.Text(pen.Right + 6, pen.Y(-0.08 * gaps.Top), "nothing to\nmeasure");
        StepLine(ink, pen, gaps, p => p.Limit);
        var last = gaps.Points[^1];
        var byDefault = last.LimitIsDefault ? "\n(default, not\nyour plan)" : "";
        var limit = $"limit {ChartWords.Number(last.Limit)} min{byDefault}";
        ink.Text(pen.Right + 6, pen.Y(last.Limit) + 5, limit, bold: true, down: VerticalAlignment.Bottom);
        if (last.Window is not { } window) return;
        StepLine(ink, pen, gaps, p => p.Window ?? 0, [2, 2]);
        ink.Text(pen.Right + 6, pen.Y(window), $"at most {ChartWords.Number(window)} min");
    }

    /// <summary>A limit as it stood at each session; a changed plan gives a step.</summary>
    private static void StepLine(IRenderContext ink, PlotPen pen, Gaps gaps, Func<GapPoint, double> level, double[]? dash = null)
    {
        var (x, y) = (pen.Left, pen.Y(Math.Min(level(gaps.Points[0]), gaps.Top)));
        foreach (var point in gaps.Points)
        {
            var next = pen.Y(Math.Min(level(point), gaps.Top));
            if (next == y) continue;
            var at = pen.X(point.X);
            ink.Stroke(x, y, at, y, ChartColours.Black, 1.3, dash ?? [2.5, 1.5]);
            ink.Stroke(at, y, at, next, ChartColours.Black, 0.8, [2, 2]);
            (x, y) = (at, next);
        }
        ink.Stroke(x, y, pen.Right, y, ChartColours.Black, 1.3, dash ?? [2.5, 1.5]);
    }

    private static void Marks(IRenderContext ink, PlotPen pen, Gaps gaps)
    {
        var size = gaps.Points.Count switch { <= 120 => 6.0, <= 400 => 4.5, _ => 3.5 };
        foreach (var point in gaps.Points)
        {
            var x = pen.X(point.X);
            var (glyph, colour) = point.Verdict switch
            {
                GapVerdict.Kept => (Glyph.Dot, ChartColours.Blue),
                GapVerdict.Short => (Glyph.Cross, ChartColours.Vermilion),
                GapVerdict.Early => (Glyph.HollowDiamond, ChartColours.Green),
                GapVerdict.None => (Glyph.Dash, ChartColours.Vermilion),
                _ => (Glyph.Question, ChartColours.Black),
            };
            if (point.Low is not { } low)
            {
                ink.Mark(glyph, x, pen.Y(-0.08 * gaps.Top), size, colour);
                continue;
            }
            var high = point.High ?? double.PositiveInfinity;
            var (bottom, top) = (pen.Y(Math.Min(low, gaps.Top)), pen.Y(Math.Min(high, gaps.Top)));
            if (high > gaps.Top) Beyond(ink, x, top - (bottom == top ? size / 2 : 0));
            if (bottom > top) Whisker(ink, x, top, bottom, ChartColours.Grey);
            ink.Mark(glyph, x, (bottom + top) / 2, size, colour);
        }
    }

    private static void Whisker(IRenderContext ink, double x, double top, double bottom, OxyColor colour)
    {
        ink.Stroke(x, top, x, bottom, colour, 1.1);
        ink.Stroke(x - 2.5, top, x + 2.5, top, colour, 1.1);
        ink.Stroke(x - 2.5, bottom, x + 2.5, bottom, colour, 1.1);
    }

    private static void Beyond(IRenderContext ink, double x, double y)
    {
        ink.Stroke(x, y, x, y - 6, ChartColours.Grey, 1.1);
        ink.Stroke(x - 2.5, y - 3, x, y - 6, ChartColours.Grey, 1.1);
        ink.Stroke(x + 2.5, y - 3, x, y - 6, ChartColours.Grey, 1.1);
    }
}
