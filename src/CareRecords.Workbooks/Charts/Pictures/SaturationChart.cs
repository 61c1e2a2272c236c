using CareRecords.Findings;
using CareRecords.Records;
using CareRecords.Workbooks.Charts.Paper;
using OxyPlot;
using OxyPlot.Annotations;

namespace CareRecords.Workbooks.Charts.Pictures;

/// <summary>Saturation readings over oxygen flow, each on its own panel. Readings are never joined, least of all across flows.</summary>
internal static class SaturationChart
{
    private const string Saturation = "saturation";
    private const string Oxygen = "oxygen";
    private const double LongestCarriedDays = 1;

    /// <summary>One reading placed on the page's axes.</summary>
    private readonly record struct Reading(double X, double SpO2, double? High, double? Flow, CheckPhase Phase);

    /// <summary>The chart of a span, or of a part of one; null when it has no reading.</summary>
    public static ChartPage? Page(CareLog log, ChildFindings findings, string name)
    {
        var days = DayScale.Of(findings.Span);
        var (readings, flows) = Collect(log, days);
        if (readings.Count == 0) return null;
        var usual = findings.Baseline?.Oxygen ?? log.Plan.NumberFor(PlanItem.UsualOxygen, findings.Span.To);
        var counts = Counts(readings, usual, days);
        return new ChartPage
        {
            Name = name,
            Title = $"Saturation with its oxygen, {ChartWords.Days(findings.Span.From, findings.Span.To)}: {counts}",
            AltText = $"Saturation readings over time, oxygen flow on a panel below, illness days shaded: {counts}. {ByFlow(findings)}",
            SmallPrint = ByFlow(findings) + " One reading may be 2 to 4 points off (ISO 80601-2-61); readings on different oxygen are not joined.",
            Key =
            [
                KeyItem.Of(Glyph.TriangleUp, ChartColours.Blue, "before a session"),
                KeyItem.Of(Glyph.Square, ChartColours.Green, "after a session", 5.5),
                KeyItem.Of(Glyph.Dot, ChartColours.Black, "at another time"),
                KeyItem.Of(Glyph.Ring, ChartColours.Black, "hollow: not at usual oxygen"),
                KeyItem.Of(Glyph.Plus, ChartColours.Vermilion, "oxygen not written"),
                KeyItem.Line(ChartColours.Black, "day's median at usual oxygen", thickness: 2.2),
                KeyItem.Line(ChartColours.Black, "oxygen as last written, for 24 h at most", thickness: 1.2),
                .. KeyItem.Illness(findings),
            ],
            BodyHeight = 380,
            Body = (ink, body) => Plot(log, findings, days, readings, flows, usual).DrawInto(ink, body),
        };
    }

    private static bool IsOfDay(Check check) => check.When.Precision is TimePrecision.DayOnly or TimePrecision.PartOfDay;

    /// <summary>The care day: a whole number is its middle.</summary>
    private static int DayIn(DayScale days, double x) => (int)Math.Round(Math.Clamp(x, -1, days.Count), MidpointRounding.AwayFromZero);

    private static (List<Reading> Readings, List<(double X, double Flow)> Flows) Collect(CareLog log, DayScale days)
    {
        var readings = new List<Reading>();
        var flows = new List<(double X, double Flow)>();

        // A flow for a whole day has no clock: the line follows the flows that have one, where the day has any.
        var withClock = log.Entries.OfType<Check>().Where(c => c.OxygenLitresPerMinute is not null && !IsOfDay(c)).Select(c => DayIn(days, days.Of(c.When.Stated))).ToHashSet();
        foreach (var entry in log.Entries)
        {
            if (entry is not Check check) continue;
            var x = days.Of(check.When.Stated);
            if (x < -0.5 || x >= days.Count - 0.5) continue;
            if (check.SpO2 is { } value) readings.Add(new Reading(x, value, check.SpO2High, check.OxygenLitresPerMinute, check.Phase));
            if (check.OxygenLitresPerMinute is { } flow && !(IsOfDay(check) && withClock.Contains(DayIn(days, x)))) flows.Add((x, flow));
        }
        return (readings, flows);
    }

    private static PlotModel Plot(
        CareLog log, ChildFindings findings, DayScale days, List<Reading> readings, List<(double X, double Flow)> flows, double? usual)
    {
        var plot = PlotPanels.Empty(right: 104);
        var (lowest, highestFlow) = (100.0, usual ?? 0);
        foreach (var reading in readings) lowest = Math.Min(lowest, reading.SpO2);
        foreach (var (_, flow) in flows) highestFlow = Math.Max(highestFlow, flow);
        if (findings.Baseline is { } band) lowest = Math.Min(lowest, band.SpO2Low);
        var stop = log.Plan.NumberFor(PlanItem.StopSaturation, findings.Span.To);
        if (stop is { } limit) lowest = Math.Min(lowest, limit);
        var top = Math.Max(1, highestFlow * 1.15);
        plot.Axes.Add(PlotPanels.DayAxis(days));
        plot.Axes.Add(PlotPanels.SideAxis(Saturation, "saturation (%)", Math.Floor(lowest) - 1.5, 100.8, PlotPanels.Step(101 - lowest, 8), 0.36));
        plot.Axes.Add(PlotPanels.SideAxis(Oxygen, "oxygen (L/min)", -0.08 * top, top, PlotPanels.Step(top, 4), to: 0.29));
        plot.Annotations.Add(days.IllnessBands(findings.Days, Saturation, named: true));
        plot.Annotations.Add(days.IllnessBands(findings.Days, Oxygen, named: false));
        if (findings.Baseline is { } baseline) plot.Annotations.Add(UsualBand(baseline));
        if (stop is { } value) plot.Annotations.Add(StopLine(value));
        plot.Annotations.Add(DayMedians(findings, days));
        plot.Annotations.Add(new PlotLayer((ink, pen) => DrawReadings(ink, pen, readings, usual), Saturation));
        plot.Annotations.Add(new PlotLayer((ink, pen) => DrawFlows(ink, pen, flows, usual), Oxygen));
        return plot;
    }

    private static PlotLayer UsualBand(Baseline baseline) => new(
        (ink, pen) =>
        {
            var (high, low) = (pen.Y(baseline.SpO2High), pen.Y(baseline.SpO2Low));
            ink.Box(pen.Left, high, pen.Right - pen.Left, low - high, OxyColor.FromAColor(170, ChartColours.SkyWash));
            ink.Stroke(pen.Left, high, pen.Right, high, ChartColours.Blue, 0.8);
            ink.Stroke(pen.Left, low, pen.Right, low, ChartColours.Blue, 0.8);
            var words = $"usual band\n{ChartWords.Range(baseline.SpO2Low, baseline.SpO2High)} %\n({ChartWords.Count(baseline.DaysUsed, "well day")})";
            ink.Text(pen.Right + 6, (high + low) / 2, words, colour: ChartColours.Blue);
        },
        Saturation, AnnotationLayer.BelowSeries);

    private static PlotLayer StopLine(double stop) => new(
        (ink, pen) =>
        {
            ink.Stroke(pen.Left, pen.Y(stop), pen.Right, pen.Y(stop), ChartColours.Vermilion, 1.4, [2.5, 1.5]);
            ink.Text(pen.Right + 6, pen.Y(stop), $"plan: stop\nunder {ChartWords.Number(stop)} %");
        },
        Saturation, AnnotationLayer.BelowSeries);

    private static PlotLayer DayMedians(ChildFindings findings, DayScale days) => new(
        (ink, pen) =>
        {
            foreach (var day in findings.Days)
            {
                if (day.MedianSpO2AtUsualOxygen is not { } median) continue;
                var x = days.Of(day.Day);
                ink.Stroke(pen.X(x - 0.42), pen.Y(median), pen.X(x + 0.42), pen.Y(median), ChartColours.Black, 2.2);
            }
        },
        Saturation);

    private static void DrawReadings(IRenderContext ink, PlotPen pen, List<Reading> readings, double? usual)
    {
        var size = readings.Count switch { <= 250 => 5.5, <= 1000 => 4.5, _ => 3.5 };
        foreach (var reading in readings)
        {
            var (x, y) = (pen.X(reading.X), pen.Y(reading.SpO2));
            if (reading.High is { } high && high > reading.SpO2) ink.Stroke(x, y, x, pen.Y(high), ChartColours.Grey, 1);
            var atUsual = usual is null || reading.Flow == usual;
            var (glyph, colour) = reading switch
            {
                { Flow: null } => (Glyph.Plus, ChartColours.Vermilion),
                { Phase: CheckPhase.Before } => (atUsual ? Glyph.TriangleUp : Glyph.HollowTriangleUp, ChartColours.Blue),
                { Phase: CheckPhase.After } => (atUsual ? Glyph.Square : Glyph.HollowSquare, ChartColours.Green),
                _ => (atUsual ? Glyph.Dot : Glyph.Ring, ChartColours.Black),
            };
            ink.Mark(glyph, x, y, size, colour);
        }
    }

    private static void DrawFlows(IRenderContext ink, PlotPen pen, List<(double X, double Flow)> flows, double? usual)
    {
        if (usual is { } level)
        {
            ink.Stroke(pen.Left, pen.Y(level), pen.Right, pen.Y(level), ChartColours.Blue, 0.9, [2.5, 1.5]);
            ink.Text(pen.Right + 6, pen.Y(level), $"usual oxygen\n{ChartWords.Number(level)} L/min", colour: ChartColours.Blue);
        }
        for (var i = 0; i < flows.Count; i++)
        {
            var (x, y) = (pen.X(flows[i].X), pen.Y(flows[i].Flow));
            if (i + 1 < flows.Count && flows[i + 1].X - flows[i].X <= LongestCarriedDays)
            {
                var next = pen.X(flows[i + 1].X);
                ink.Stroke(x, y, next, y, ChartColours.Black, 1.2);
                ink.Stroke(next, y, next, pen.Y(flows[i + 1].Flow), ChartColours.Black, 1.2);
            }
            ink.Mark(Glyph.Dot, x, y, 2.6, ChartColours.Black);
        }
        if (flows.Count == 0) ink.TextOnWhite((pen.Left + pen.Right) / 2, (pen.Top + pen.Bottom) / 2, "oxygen flow was not written", across: HorizontalAlignment.Center);
    }

    private static string Counts(List<Reading> readings, double? usual, DayScale days)
    {
        var (lowest, atUsual, withoutFlow) = (readings[0], 0, 0);
        foreach (var reading in readings)
        {
            if (reading.SpO2 < lowest.SpO2) lowest = reading;
            if (reading.Flow is { } flow && flow == usual) atUsual++;
            if (reading.Flow is null) withoutFlow++;
        }
        var usually = usual is { } level ? FormattableString.Invariant($", {atUsual} at usual oxygen ({ChartWords.With(level, "L/min")})") : "";
        var unknown = withoutFlow > 0 ? FormattableString.Invariant($", {withoutFlow} with no oxygen written") : "";
        var flowThen = lowest.Flow is { } on ? $"on {ChartWords.With(on, "L/min")}" : "oxygen not written";
        return $"{ChartWords.Count(readings.Count, "reading")}{usually}{unknown}; lowest {ChartWords.With(lowest.SpO2, "%")}, {flowThen}, {days.Label(lowest.X)}";
    }

    private static string ByFlow(ChildFindings findings)
    {
        const int most = 6;
        var parts = new List<string>();
        foreach (var at in findings.SaturationByFlow)
        {
            if (parts.Count == most) break;
            var flow = at.OxygenLitresPerMinute is { } litres ? $"at {ChartWords.With(litres, "L/min")}" : "oxygen not written";
            parts.Add(FormattableString.Invariant($"{flow} {ChartWords.With(at.Median, "%")} ({at.Readings})"));
        }
        return parts.Count == 0 ? "" : $"Median saturation (readings), whole record: {string.Join(", ", parts)}.";
    }
}
