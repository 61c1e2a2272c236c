using CareRecords.Findings;
using NodaTime;
using OxyPlot;
using OxyPlot.Annotations;

namespace CareRecords.Workbooks.Charts.Paper;

/// <summary>Care days along the bottom: day 0 is the first; a whole number is the middle of a care day, so that its edges are at the halves.</summary>
internal sealed class DayScale
{
    private const double MostLabels = 10;
    private static readonly int[] Steps = [1, 2, 3, 7, 14, 28, 56, 84, 168, 364];
    private readonly LocalDate _first;
    private readonly double _dayStarts;

    public DayScale(LocalDate first, LocalDate last, LocalTime dayStarts)
    {
        _first = first;
        _dayStarts = (double)dayStarts.NanosecondOfDay / NodaConstants.NanosecondsPerDay;
        Count = Math.Max(1, Period.DaysBetween(first, last) + 1);
        LabelStep = Steps[^1];
        foreach (var step in Steps)
        {
            if (Count > step * MostLabels) continue;
            LabelStep = step;
            break;
        }
    }

    public static DayScale Of(ReviewSpan span) => new(span.From, span.To, span.DayStarts);

    /// <summary>Care days on the axis, one at least.</summary>
    public int Count { get; }

    public int LabelStep { get; }

    public double Of(LocalDate careDay) => Period.DaysBetween(_first, careDay);

    /// <summary>Local wall-clock time; a day of a clock change is drawn as wide as any other.</summary>
    public double Of(LocalDateTime at) =>
        Period.DaysBetween(_first, at.Date) + (double)at.TimeOfDay.NanosecondOfDay / NodaConstants.NanosecondsPerDay - _dayStarts - 0.5;

    public string Label(double day) =>
        day < -0.5 || day > Count ? "" : ChartWords.Day(_first.PlusDays((int)Math.Round(day)));

    /// <summary>Hatches the illness days over one panel and writes the episodes' names at its top.</summary>
    public PlotLayer IllnessBands(IReadOnlyList<DayFinding> days, string yAxis, bool named) => new(
        (ink, pen) =>
        {
            foreach (var (from, to, id) in Runs(days))
            {
                var (left, right) = (pen.X(from - 0.5), pen.X(to + 0.5));
                ink.Hatch(new OxyRect(left, pen.Top, right - left, pen.Bottom - pen.Top));
                if (named && (right - left > 14 || Count <= 62)) ink.Text(left, pen.Top - 7, id, bold: true);
            }
        },
        yAxis, AnnotationLayer.BelowAxes);

    /// <summary>Unbroken runs of days in one episode: first and last day on the axis, and the episode's name.</summary>
    public IEnumerable<(double From, double To, string Id)> Runs(IReadOnlyList<DayFinding> days)
    {
        for (var i = 0; i < days.Count; i++)
        {
            if (days[i].Episode is not { } id) continue;
            var first = i;
            while (i + 1 < days.Count && days[i + 1].Episode == id) i++;
            yield return (Of(days[first].Day), Of(days[i].Day), id);
        }
    }
}
