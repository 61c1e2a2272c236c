using CareRecords.Findings;
using CareRecords.Workbooks.Charts.Paper;
using OxyPlot;

namespace CareRecords.Workbooks.Charts.Pictures;

/// <summary>Steps planned and steps as done: sessions a day above, minutes per area below.</summary>
internal static class TaperChart
{
    private const string Sessions = "sessions";
    private const string Minutes = "minutes";
    private static readonly double[] PlannedDash = [2.5, 1.5];

    public static ChartPage? Page(ChildFindings findings)
    {
        var taper = findings.Taper;
        if (taper.Done.Count == 0 && taper.Planned.Count == 0) return null;
        var (down, up, setbacks, unknown, differ) = (0, 0, 0, 0, 0);
        foreach (var step in taper.Done)
        {
            if (step.Direction == StepDirection.Down) down++;
            if (step.Direction == StepDirection.Up) up++;
            if (step is { Direction: StepDirection.Down, FollowedBy: StepOutcome.Setback }) setbacks++;
            if (step is { Direction: StepDirection.Down, FollowedBy: StepOutcome.Unknown }) unknown++;
            if (step.DiffersFromPlan is not null) differ++;
        }
        var counts = FormattableString.Invariant(
            $"{ChartWords.Count(taper.Done.Count, "step")} as done, {down} down and {up} up{(down == 0 ? "" : $"; setback within 7 days after {setbacks} of {down} down{(unknown == 0 ? "" : $" ({unknown} cannot tell)")}")}");
        return new ChartPage
        {
            Name = "taper",
            Title = $"Sessions and minutes, planned and done: {counts}",
            AltText = $"Planned and done sessions a day and minutes per area as steps, illness days shaded: {counts}. {taper.WeanInWords}".TrimEnd(),
            SmallPrint = FormattableString.Invariant(
                $"{ChartWords.Days(findings.Span.From, findings.Span.To)}, {ChartWords.Count(findings.Span.DaysWithRecords, "day")} with records. {differ} of {ChartWords.Count(taper.Done.Count, "step")} as done differ from the plan. The wean follows recovery as much as it may shape it.{(findings.Days.Count > 100 ? " Where steps stand close, not each is named." : "")}"),
            Key =
            [
                KeyItem.Line(ChartColours.Blue, "done (median of the step)", thickness: 2.4),
                KeyItem.Line(ChartColours.Black, "planned", PlannedDash, 1.4),
                KeyItem.Of(Glyph.Ring, ChartColours.Grey, "one day, as written", 4.5),
                KeyItem.Of(Glyph.Cross, ChartColours.Vermilion, "setback within 7 days of this step", 7),
                .. KeyItem.Illness(findings),
            ],
            BodyHeight = 372,
            Body = (ink, body) => Plot(findings).DrawInto(ink, body),
        };
    }

    private static PlotModel Plot(ChildFindings findings)
    {
        var days = DayScale.Of(findings.Span);
        var plot = PlotPanels.Empty(right: 84);
        plot.Axes.Add(PlotPanels.DayAxis(days));
        var (mostSessions, mostMinutes) = Most(findings);
        Panel(plot, days, findings, Sessions, "sessions a day", mostSessions, 0.52, 1, s => s.SessionsPerDay, p => p.SessionsPerDay, d => d.HasRecords ? d.SessionsDone : null);
        Panel(plot, days, findings, Minutes, "minutes per area", mostMinutes, 0, 0.45, s => s.MinutesPerArea, p => p.MinutesPerArea, d => d.MinutesPerArea);
        return plot;
    }

    private static void Panel(
        PlotModel plot, DayScale days, ChildFindings findings, string key, string title, double most, double from, double to,
        Func<TaperStep, double?> done, Func<PlannedStep, double?> planned, Func<DayFinding, double?> written)
    {
        plot.Axes.Add(PlotPanels.SideAxis(key, title, 0, most * 1.42, Math.Max(1, PlotPanels.Step(most, 5)), from, to, lastTick: most * 1.05));
        plot.Annotations.Add(days.IllnessBands(findings.Days, key, named: false));
        plot.Annotations.Add(new PlotLayer((ink, pen) => Days(ink, pen, days, findings.Days, written), key));
        plot.Annotations.Add(new PlotLayer((ink, pen) => Done(ink, pen, days, findings, done, labelled: key == Sessions, most), key));
        plot.Annotations.Add(new PlotLayer((ink, pen) => Planned(ink, pen, days, findings.Taper.Planned, planned), key));
    }

    private static void Days(IRenderContext ink, PlotPen pen, DayScale days, IReadOnlyList<DayFinding> all, Func<DayFinding, double?> written)
    {
        foreach (var day in all)
        {
            if (written(day) is { } value) ink.Mark(Glyph.Ring, pen.X(days.Of(day.Day)), pen.Y(value), days.Count <= 100 ? 4.5 : 3, ChartColours.Grey);
        }
    }

    private static void Planned(IRenderContext ink, PlotPen pen, DayScale days, IReadOnlyList<PlannedStep> steps, Func<PlannedStep, double?> value)
    {
        double? before = null;
        foreach (var step in steps)
        {
            var (left, right) = (Math.Max(pen.Left, pen.X(days.Of(step.From) - 0.5)), Math.Min(pen.Right, pen.X(days.Of(step.To) + 0.5)));
            if (value(step) is not { } level || right <= left)
            {
                before = null;
                continue;
            }
            var y = pen.Y(level);
            if (before is { } last && last != y) ink.Stroke(left, last, left, y, ChartColours.Black, 1.4, PlannedDash);
            ink.Stroke(left, y, right, y, ChartColours.Black, 1.4, PlannedDash);
            before = y;
        }
        if (before is { } end) ink.Text(pen.Right + 6, end - 5, "planned");
    }

    private static void Done(
        IRenderContext ink, PlotPen pen, DayScale days, ChildFindings findings, Func<TaperStep, double?> value, bool labelled, double most)
    {
        double? before = null;
        double[] rowsTo = [double.NegativeInfinity, double.NegativeInfinity];
        foreach (var step in findings.Taper.Done)
        {
            if (value(step) is not { } level)
            {
                before = null;
                continue;
            }
            var (left, right, y) = (pen.X(days.Of(step.From) - 0.5), pen.X(days.Of(step.To) + 0.5), pen.Y(level));
            if (before is { } last && last != y) ink.Stroke(left, last, left, y, ChartColours.Blue, 2.4);
            ink.Stroke(left, y, right, y, ChartColours.Blue, 2.4);
            before = y;
            if (labelled) Label(ink, pen, step, left, rowsTo, most);
        }
        if (before is { } end) ink.Text(pen.Right + 6, end + 6, "done", bold: true, colour: ChartColours.Blue);
    }

    /// <summary>Writes a step's name over its beginning where one of two rows is free; a setback is marked in any case.</summary>
    private static void Label(IRenderContext ink, PlotPen pen, TaperStep step, double left, double[] rowsTo, double most)
    {
        var words = step.Id + step.Direction switch { StepDirection.Up => " up", StepDirection.Down => " down", _ => "" };
        var setback = step is { FollowedBy: StepOutcome.Setback, Direction: StepDirection.Down };
        var row = left >= rowsTo[0] ? 0 : 1;
        var y = pen.Y(most * (row == 0 ? 1.31 : 1.14));
        if (left > pen.Left + 1) ink.Stroke(left, y, left, pen.Bottom, ChartColours.HatchLine, 0.8, [1.5, 2]);
        if (setback) ink.Mark(Glyph.Cross, left + 6, y, 6.5, ChartColours.Vermilion);
        if (left < rowsTo[row]) return;
        var start = left + (setback ? 12 : 2);
        ink.TextOnWhite(start, y, words, bold: true);
        rowsTo[row] = start + ink.Width(words, bold: true) + 4;
    }

    private static (double Sessions, double Minutes) Most(ChildFindings findings)
    {
        var (sessions, minutes) = (2.0, 1.0);
        foreach (var day in findings.Days)
        {
            sessions = Math.Max(sessions, day.SessionsDone);
            minutes = Math.Max(minutes, day.MinutesPerArea ?? 0);
        }
        foreach (var step in findings.Taper.Planned)
        {
            sessions = Math.Max(sessions, step.SessionsPerDay ?? 0);
            minutes = Math.Max(minutes, step.MinutesPerArea ?? 0);
        }
        return (sessions, minutes);
    }
}
