using CareRecords.Findings;
using CareRecords.Records;
using CareRecords.Workbooks.Charts.Paper;
using NodaTime;
using OxyPlot;

namespace CareRecords.Workbooks.Charts.Pictures;

/// <summary>Draws day strips. Lengths are points.</summary>
internal sealed class DayStripDrawing
{
    private const double Left = 82;
    private const double Right = 168;
    private const double CountWidth = 42;
    private readonly ChildFindings _findings;
    private readonly double _rowHeight;
    private readonly DateTimeZone? _zone;
    private readonly string? _checkedMedicine;

    /// <summary>Where no medicine is logged at all, every session's inhaler is unknown, and a mark beside each would say nothing.</summary>
    private readonly bool _medicinesLogged;

    public DayStripDrawing(CareLog log, ChildFindings findings, double rowHeight)
    {
        (_findings, _rowHeight) = (findings, rowHeight);
        _zone = DateTimeZoneProviders.Tzdb.GetZoneOrNull(findings.Span.Zone);
        _checkedMedicine = log.Plan.ValueFor(PlanItem.MedicineBeforeSession, findings.Span.To)?.Text;
        _medicinesLogged = log.Entries.OfType<Dose>().Any();
    }

    public IReadOnlyList<KeyItem> Key =>
    [
        KeyItem.Box(ChartColours.Blue, ChartColours.Blue, "session, as long as its minutes"),
        new((ink, x, y) => ink.Box(x - 8, y - 4, 16, 8, OxyColors.White, ChartColours.Blue, 1, [2, 1.5]), "time or minutes not exact", 18),
        new((ink, x, y) => ink.Box(x - 8, y - 1.7, 16, 3.4, ChartColours.Green), "feed", 18),
        new((ink, x, y) => ink.Box(x - 8, y - 1.7, 16, 3.4, OxyColors.White, ChartColours.Green, 0.9), "feed, an end not written", 18),
        KeyItem.Of(Glyph.TriangleDown, ChartColours.Black, "inhaler given", 6),
        KeyItem.Of(Glyph.Ring, ChartColours.Blue, "not done, say the notes"),
        .. KeyItem.Illness(_findings),
        KeyItem.Of(Glyph.Cross, ChartColours.Vermilion, "after a session: feed gap short, with its minutes"),
        KeyItem.Of(Glyph.Question, ChartColours.Black, "after a session: feed gap, cannot tell"),
        KeyItem.Of(Glyph.HollowTriangleDown, ChartColours.Vermilion, "after a session: its inhaler too near or too early", 6),
        KeyItem.Of(Glyph.Dash, ChartColours.Vermilion, "after a session: no inhaler written", 6),
        .. _medicinesLogged ? (KeyItem[])[KeyItem.Of(Glyph.HollowDiamond, ChartColours.Black, "after a session: inhaler, cannot tell", 5)] : [],
    ];

    public void Draw(IRenderContext ink, OxyRect body, IReadOnlyList<DayStripRow> rows, double clockRow)
    {
        var strips = new OxyRect(body.Left + Left, body.Top + clockRow, body.Width - Left - Right, rows.Count * _rowHeight);
        for (var i = 0; i < rows.Count; i++) Ground(ink, rows[i], strips, strips.Top + i * _rowHeight);
        Clock(ink, strips);
        for (var i = 0; i < rows.Count; i++)
        {
            var top = strips.Top + i * _rowHeight;
            Marks(ink, rows[i], strips, top);
            Margins(ink, rows[i], strips, top);
        }
    }

    private void Ground(IRenderContext ink, DayStripRow row, OxyRect strips, double top)
    {
        if (row.Day.Episode is not null) ink.Hatch(new OxyRect(strips.Left, top, strips.Width, _rowHeight));
        ink.Stroke(strips.Left, top + _rowHeight, strips.Right, top + _rowHeight, ChartColours.Grid, 0.6);
    }

    private void Clock(IRenderContext ink, OxyRect strips)
    {
        for (var hour = 0; hour <= 24; hour += 2)
        {
            var x = strips.Left + strips.Width * hour / 24;
            ink.Stroke(x, strips.Top, x, strips.Bottom, hour % 4 == 0 ? ChartColours.HatchLine : ChartColours.Grid, 0.6);
            var clock = _findings.Span.DayStarts.PlusHours(hour);
            ink.Text(x, strips.Top - 8, ChartWords.Clock(clock), across: HorizontalAlignment.Center);
        }
        ink.Box(strips.Left, strips.Top, strips.Width, strips.Height, OxyColors.Undefined, ChartColours.Grey, 0.8);
        ink.Text(strips.Right + 18, strips.Top - 8, "done");
    }

    private void Marks(IRenderContext ink, DayStripRow row, OxyRect strips, double top)
    {
        var hour = strips.Width / 24;
        var (lane, feedLane) = (top + _rowHeight * 0.36, top + _rowHeight * 0.8);
        foreach (var feed in row.Feeds)
        {
            var (x, width) = (strips.Left + feed.From * hour, Math.Max(1.2, (feed.To - feed.From) * hour));
            if (feed.BothEndsWritten) ink.Box(x, feedLane - 1.8, width, 3.6, ChartColours.Green);
            else ink.Box(x, feedLane - 1.6, width, 3.2, OxyColors.White, ChartColours.Green, 0.9);
        }
        foreach (var (at, dose) in row.Doses)
        {
            if (dose.Class != MedicineClass.Bronchodilator && dose.Medicine != _checkedMedicine) continue;
            ink.Mark(Glyph.TriangleDown, strips.Left + at * hour, lane, 6, ChartColours.Black);
        }
        ClockChange(ink, row.Day.Day, strips, lane);
        foreach (var (at, _) in row.Omitted) ink.Mark(Glyph.Ring, strips.Left + at * hour, lane, 6.5, ChartColours.Blue);
        var labelledTo = double.NegativeInfinity;
        row.Unmarked = 0;
        foreach (var session in row.Sessions)
        {
            var (x, width) = DrawSession(ink, session, strips, lane);
            var marked = session.FeedGap.Verdict is GapVerdict.Short or GapVerdict.Unknown || InhalerMark(session) is not null;
            if (marked && x < labelledTo) row.Unmarked++;
            else if (marked) labelledTo = DrawVerdicts(ink, session, x, width, strips, lane);
        }
    }

    /// <summary>Draws a session's bar; returns its left edge and its width.</summary>
    private (double X, double Width) DrawSession(IRenderContext ink, SessionFinding finding, OxyRect strips, double lane)
    {
        var hours = (double)(finding.Start.TimeOfDay.NanosecondOfDay - _findings.Span.DayStarts.NanosecondOfDay) / NodaConstants.NanosecondsPerHour;
        var x = strips.Left + (hours + 24) % 24 * strips.Width / 24;
        var exact = finding.Session.Start is { IsApproximate: false } && finding.Minutes is not null;
        var width = Math.Clamp((finding.Minutes ?? 15) / 60 * strips.Width / 24, 2.5, Math.Max(2.5, strips.Right - x));
        var half = _rowHeight * 0.28;
        if (exact) ink.Box(x, lane - half, width, 2 * half, ChartColours.Blue);
        else ink.Box(x, lane - half + 0.4, width, 2 * half - 0.8, OxyColors.White, ChartColours.Blue, 1, [2, 1.5]);
        return (x, width);
    }

    /// <summary>Marks what is not kept or cannot be told after its session, or before it at the right edge; returns how far to the right marks now reach.</summary>
    private double DrawVerdicts(IRenderContext ink, SessionFinding session, double x, double width, OxyRect strips, double lane)
    {
        const double mostRoom = 48;
        var atEdge = x + width + mostRoom > strips.Right;
        var to = atEdge ? x - mostRoom : x + width;
        if (InhalerMark(session) is { } mark)
        {
            ink.Mark(mark.Glyph, to + 5.5, lane, 5.5, mark.Colour);
            to += 9;
        }

        if (session.FeedGap.Verdict == GapVerdict.Short) to = Short(ink, session.FeedGap, to + 5.5, lane);
        else if (session.FeedGap.Verdict == GapVerdict.Unknown) to = Unknown(ink, to + 5, lane);
        return atEdge ? strips.Right : to;
    }

    /// <summary>The mark of a session's own inhaler verdict; a dose may be in time for one session and too early for the next.</summary>
    private (Glyph Glyph, OxyColor Colour)? InhalerMark(SessionFinding session) => session.InhalerGap.Verdict switch
    {
        GapVerdict.Short or GapVerdict.Early => (Glyph.HollowTriangleDown, ChartColours.Vermilion),
        GapVerdict.None => (Glyph.Dash, ChartColours.Vermilion),
        GapVerdict.Unknown when _medicinesLogged => (Glyph.HollowDiamond, ChartColours.Black),
        _ => null,
    };

    private static double Short(IRenderContext ink, FeedGapFinding gap, double x, double lane)
    {
        ink.Mark(Glyph.Cross, x, lane, 5.5, ChartColours.Vermilion);
        if (gap is not { LowMinutes: { } low, HighMinutes: { } high }) return x + 5;
        var minutes = ChartWords.Range(low, high);
        ink.TextOnWhite(x + 5, lane, minutes, bold: true);
        return x + 5 + ink.Width(minutes, bold: true);
    }

    private static double Unknown(IRenderContext ink, double x, double lane)
    {
        ink.Mark(Glyph.Question, x, lane, 5, ChartColours.Black);
        return x + 5;
    }

    private void Margins(IRenderContext ink, DayStripRow row, OxyRect strips, double top)
    {
        var middle = top + _rowHeight / 2;
        ink.Text(strips.Left - 6, middle, ChartWords.Weekday(row.Day.Day), across: HorizontalAlignment.Right);
        if (!row.Day.HasRecords)
        {
            ink.TextOnWhite(strips.Center.X, middle, "nothing written", across: HorizontalAlignment.Center);
            ink.Text(strips.Right + 8, middle, "–");
            return;
        }
        var done = row.Day.SessionsPlanned is { } planned
            ? FormattableString.Invariant($"{row.Day.SessionsDone} of {ChartWords.Number(planned)}")
            : FormattableString.Invariant($"{row.Day.SessionsDone}");
        ink.Text(strips.Right + 8, middle, done);
        ink.Text(strips.Right + 8 + CountWidth, middle, Notes(ink, row, Right - CountWidth - 12));
    }

    /// <summary>What else the day has to say, as much as fits; "…" stands for the rest, which the sheet of days has in full.</summary>
    private string Notes(IRenderContext ink, DayStripRow row, double width)
    {
        var text = "";
        foreach (var note in NotesInOrder(row))
        {
            var longer = text.Length == 0 ? note : text + "; " + note;
            if (ink.Width(longer + " …") > width && ink.Width(longer) > width) return text.Length == 0 ? "…" : text + " …";
            text = longer;
        }
        return text;
    }

    private IEnumerable<string> NotesInOrder(DayStripRow row)
    {
        if (row.Day.Episode is { } episode) yield return FormattableString.Invariant($"ill {episode}, day {DayOfEpisode(row.Day, episode)}");
        foreach (var step in _findings.Taper.Done)
        {
            if (step.From == row.Day.Day && step.Direction != StepDirection.Same) yield return $"{step.Id} {(step.Direction == StepDirection.Up ? "up" : "down")}";
        }
        if (row.Unmarked > 0) yield return FormattableString.Invariant($"{row.Unmarked} marks not drawn");
        var omitted = row.Day.SessionsOmittedWithReason + row.Day.SessionsOmittedWithoutReason;
        if (omitted > 0) yield return FormattableString.Invariant($"{omitted} not done");
    }

    private int DayOfEpisode(DayFinding day, string id)
    {
        foreach (var episode in _findings.Illness.Episodes)
        {
            if (episode.Id == id) return Period.DaysBetween(episode.Onset, day.Day);
        }
        return 0;
    }

    /// <summary>Says in the strip where the clocks were changed, and by how much.</summary>
    private void ClockChange(IRenderContext ink, LocalDate day, OxyRect strips, double lane)
    {
        if (_zone is null) return;
        var starts = _findings.Span.DayStarts;
        var (before, after) = (_zone.AtLeniently(day.At(starts)), _zone.AtLeniently(day.PlusDays(1).At(starts)));
        var change = after.Offset - before.Offset;
        if (change == Offset.Zero) return;
        var clock = _zone.GetZoneInterval(after.ToInstant()).IsoLocalStart.TimeOfDay;
        var hours = (double)(clock.NanosecondOfDay - starts.NanosecondOfDay) / NodaConstants.NanosecondsPerHour;
        var x = strips.Left + (hours + 24) % 24 * strips.Width / 24;
        var words = FormattableString.Invariant($"clocks {(change > Offset.Zero ? "on" : "back")} {ChartWords.With(Math.Abs(change.Seconds) / 3600.0, "h")}");
        ink.TextOnWhite(Math.Min(x, strips.Right - ink.Width(words) / 2 - 3), lane, words, across: HorizontalAlignment.Center);
    }
}
