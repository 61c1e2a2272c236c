using CareRecords.Findings;
using CareRecords.Workbooks.Charts.Paper;
using OxyPlot;

namespace CareRecords.Workbooks.Charts.Pictures;

/// <summary>Shares kept week by week with their intervals; kept, judged and unknown stand as numbers under each week.</summary>
internal static class WeeksChart
{
    private const string Days = "days";
    private const int MostUprightWeeks = 10;

    public static ChartPage? Page(ChildFindings findings)
    {
        var weeks = findings.Adherence.ByWeek;
        if (weeks.Count == 0 || findings.Sessions.Count == 0) return null;
        var overall = findings.Adherence.Overall;
        var counts = $"feed gap {Judged(overall.FeedGap)}, inhaler gap {Judged(overall.InhalerGap)}";
        return new ChartPage
        {
            Name = "weeks",
            Title = $"Week by week: {counts}",
            AltText = $"Shares kept in {ChartWords.Count(weeks.Count, "week")} with 95 % intervals and the counts behind them: {counts}.",
            SmallPrint = "Under each week: kept of judged, then how many the notes cannot tell. Interval over all weeks: " + Method(overall) + ".",
            Key =
            [
                new((ink, x, y) => Interval(ink, x, y - 7, y, y + 7), "share kept of those judged, with its 95 % interval"),
                new((ink, x, y) => Room(ink, x, y - 7, y + 7), "share if every unknown were not kept, to share if every one were kept", 6),
            ],
            BodyHeight = Panels(findings).Count * (weeks.Count <= MostUprightWeeks ? 138 : 156) + 50,
            Body = (ink, body) => Plot(findings).DrawInto(ink, body),
        };
    }

    private static PlotModel Plot(ChildFindings findings)
    {
        var weeks = findings.Adherence.ByWeek;
        var panels = Panels(findings);
        var plot = PlotPanels.Empty(right: 16);
        var every = weeks.Count switch { <= 14 => 1, <= 28 => 2, _ => (weeks.Count + 13) / 14 };
        var axis = PlotPanels.NumberAxis("week from", -0.5, weeks.Count - 0.5, every);
        axis.LabelFormatter = at => Label(weeks, (int)Math.Round(at));
        plot.Axes.Add(axis);
        for (var i = 0; i < panels.Count; i++)
        {
            var (name, heading, share) = panels[i];
            var top = 1 - (double)i / panels.Count;
            var side = PlotPanels.SideAxis(name, name == Days ? "share of days" : "share kept", weeks.Count <= MostUprightWeeks ? -0.42 : -0.72, 1.28, 0.5, top - 0.94 / panels.Count, top);
            // The room for numbers lies under zero: neither grid nor ticks belong there.
            side.MajorGridlineStyle = LineStyle.None;
            side.TickStyle = OxyPlot.Axes.TickStyle.None;
            side.LabelFormatter = value => value is < -0.01 or > 1.01 ? "" : ChartWords.Percent(value);
            plot.Axes.Add(side);
            plot.Annotations.Add(new PlotLayer((ink, pen) => Panel(ink, pen, weeks, share, heading), name));
        }
        return plot;
    }

    private static List<(string Name, string Heading, Func<AdherenceGroup, ShareKept?> Share)> Panels(ChildFindings findings)
    {
        var overall = findings.Adherence.Overall;
        var panels = new List<(string, string, Func<AdherenceGroup, ShareKept?>)>
        {
            ("feed", "Feed gap: " + Judged(overall.FeedGap), week => week.FeedGap),
            ("inhaler", "Inhaler gap: " + Judged(overall.InhalerGap), week => week.InhalerGap),
        };
        if (overall.DaysAllDone is { } days) panels.Add((Days, FormattableString.Invariant($"All planned sessions written on {days.Kept} of {ChartWords.Count(days.Judged, "day")} with records and a plan"), week => week.DaysAllDone));
        return panels;
    }

    private static void Panel(IRenderContext ink, PlotPen pen, IReadOnlyList<AdherenceGroup> weeks, Func<AdherenceGroup, ShareKept?> of, string heading)
    {
        foreach (var share in (double[])[0.5, 1]) ink.Stroke(pen.Left, pen.Y(share), pen.Right, pen.Y(share), ChartColours.Grid, 0.6);
        ink.Stroke(pen.Left, pen.Y(0), pen.Right, pen.Y(0), ChartColours.Grey, 0.8);
        ink.TextOnWhite(pen.Left + 4, pen.Y(1.16), heading, bold: true);
        var upright = weeks.Count <= MostUprightWeeks;
        var beside = Math.Min(7, (pen.X(1) - pen.X(0)) * 0.4);
        for (var i = 0; i < weeks.Count; i++)
        {
            if (of(weeks[i]) is not { } share) continue;
            var x = pen.X(i);
            if (share is { WorstCase: { } worst, BestCase: { } best } && best > worst) Room(ink, x + beside, pen.Y(best), pen.Y(worst));
            if (share is { Proportion: { } proportion, Low: { } low, High: { } high })
                Interval(ink, x, pen.Y(high), pen.Y(proportion), pen.Y(low));
            Numbers(ink, x, pen, share, upright);
        }
    }

    private static void Numbers(IRenderContext ink, double x, PlotPen pen, ShareKept share, bool upright)
    {
        var judged = FormattableString.Invariant($"{share.Kept} of {share.Judged}");
        var unknown = share.Unknown > 0 ? FormattableString.Invariant($"? {share.Unknown}") : "";
        if (upright)
        {
            ink.Text(x, pen.Y(-0.02) + 2, unknown.Length > 0 ? judged + "\n" + unknown : judged, across: HorizontalAlignment.Center, down: VerticalAlignment.Top);
            return;
        }
        var numbers = share.Unknown > 0 ? FormattableString.Invariant($"{share.Kept}/{share.Judged} ?{share.Unknown}") : FormattableString.Invariant($"{share.Kept}/{share.Judged}");
        ink.Text(x, pen.Y(-0.04), numbers, across: HorizontalAlignment.Right, rotation: -90);
    }

    private static void Interval(IRenderContext ink, double x, double high, double at, double low)
    {
        ink.Stroke(x, high, x, low, ChartColours.Blue, 1.8);
        ink.Stroke(x - 3.5, high, x + 3.5, high, ChartColours.Blue, 1.8);
        ink.Stroke(x - 3.5, low, x + 3.5, low, ChartColours.Blue, 1.8);
        ink.Mark(Glyph.Dot, x, at, 7, ChartColours.Blue);
    }

    private static void Room(IRenderContext ink, double x, double high, double low)
    {
        ink.Stroke(x, high, x, low, ChartColours.Grey, 1);
        ink.Stroke(x - 2, high, x + 2, high, ChartColours.Grey, 1);
        ink.Stroke(x - 2, low, x + 2, low, ChartColours.Grey, 1);
    }

    private static string Label(IReadOnlyList<AdherenceGroup> weeks, int at) =>
        at < 0 || at >= weeks.Count ? "" : weeks[at].From is { } from ? ChartWords.Day(from) : weeks[at].Label;

    private static string Judged(ShareKept share) => FormattableString.Invariant(
        $"kept in {share.Kept} of {share.Judged} judged{(share.Proportion is { } p ? $" ({ChartWords.Percent(p)})" : "")}, {share.Unknown} cannot tell");

    private static string Method(AdherenceGroup overall) => overall.FeedGap.Method.Length > 0 ? overall.FeedGap.Method : "as on the sheet of shares";
}
