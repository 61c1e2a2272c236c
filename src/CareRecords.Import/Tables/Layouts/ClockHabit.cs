using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>
/// What a table itself proves of times without a half of day. The events of a day stand in their order: where 7.05, 12.40 and 5.10 follow one another, only
/// one way of reading them runs forward. A time that no day proves is read like the proven ones near it, where none of the other half is as near.
/// </summary>
internal sealed class ClockHabit
{
    private const int MinutesOfHalf = 12 * 60;

    // How near a proven time must be, and how much nearer than one of the other half (chosen by CareRecords).
    private const int NearMinutes = 90;
    private const int ClearMinutes = 60;

    // More than this without a date between is no day, and would take long to try.
    private const int MostOfDay = 100;

    private readonly Dictionary<(int Line, int Column), HalfOfDay> _proven = [];
    private readonly HashSet<int> _am = [];
    private readonly HashSet<int> _pm = [];

    private readonly record struct Item(CellAt Cell, int Minutes, HalfOfDay Half);

    /// <summary>What the days of a block prove.</summary>
    public static ClockHabit Of(Block block)
    {
        var habit = new ClockHabit();
        var columns = Anchors(block);
        var date = block.Columns.ToList().FindIndex(c => c.Role == Role.Date);
        if (columns.Count == 0 || block.IsGrid || block.AreHours) return habit;
        var day = new List<Item>();
        string? written = null;
        foreach (var row in block.Rows)
        {
            if (row[date].Cell.Words is { } now && now != written)
            {
                habit.Prove(day);
                (day, written) = ([], now);
            }

            foreach (var column in columns)
                if (Read(row[column]) is { } item)
                    day.Add(item);
        }

        habit.Prove(day);
        return habit;
    }

    /// <summary>The columns whose times follow one another through a day: the rows' own time, else those of the sessions.</summary>
    public static IReadOnlyList<int> Anchors(Block block)
    {
        var all = Enumerable.Range(0, block.Columns.Count).Where(i => block.Columns[i].Half == HalfOfDay.Unknown).ToList();
        var own = all.Where(i => block.Columns[i].Role is Role.Time or Role.Start && block.Columns[i].Group == 0).Take(1).ToList();
        return own.Count > 0 ? own : [.. all.Where(i => block.Columns[i].Role == Role.Session || (block.Columns[i].Role is Role.Time or Role.Start))];
    }

    /// <summary>The half of a cell's time; unknown where nothing proves it.</summary>
    public HalfOfDay Of(CellAt cell, ClockTime time)
    {
        if (_proven.TryGetValue((cell.Row.Line, cell.Column), out var half)) return half;
        var minutes = Minutes(time);
        var (am, pm) = (Nearest(_am, minutes), Nearest(_pm, minutes));
        return am <= NearMinutes && pm - am >= ClearMinutes ? HalfOfDay.Am : pm <= NearMinutes && am - pm >= ClearMinutes ? HalfOfDay.Pm : HalfOfDay.Unknown;
    }

    private static int Nearest(HashSet<int> proven, int minutes) =>
        proven.Count == 0 ? MinutesOfHalf : proven.Min(p => Math.Min(Math.Abs(p - minutes), MinutesOfHalf - Math.Abs(p - minutes)));

    private static int Minutes(ClockTime time) => time.Time.Hour % 12 * 60 + time.Time.Minute;

    private static Item? Read(CellAt cell)
    {
        if (cell.Cell.Kind is CellKind.TimeOfDay or CellKind.Moment || CellTimes.Read(cell.Cell).Clock is not { Start: { Precision: TimePrecision.Exact } start }) return null;
        // Twelve of neither half is noon.
        var half = start.Half != HalfOfDay.Unknown ? start.Half : start.Time.Hour is 0 or 12 ? HalfOfDay.Pm : HalfOfDay.Unknown;
        return new Item(cell, Minutes(start), half);
    }

    // Before some place of the day's order all times are before noon, after it all are after: proven where just one place lets them run forward.
    private void Prove(List<Item> day)
    {
        if (day.Count is 0 or > MostOfDay) return;
        var places = Enumerable.Range(0, day.Count + 1).Where(noon => RunsForward(day, noon)).Take(2).ToList();
        if (places is not [var only]) return;
        for (var i = 0; i < day.Count; i++)
        {
            var half = i < only ? HalfOfDay.Am : HalfOfDay.Pm;
            if (day[i].Half == HalfOfDay.Unknown) _proven[(day[i].Cell.Row.Line, day[i].Cell.Column)] = half;
            (half == HalfOfDay.Am ? _am : _pm).Add(day[i].Minutes);
        }
    }

    private static bool RunsForward(List<Item> day, int noon) => RunsForward([.. day.Select(d => (d.Minutes, d.Half))], noon);

    private static bool RunsForward(List<(int Minutes, HalfOfDay Half)> day, int noon)
    {
        for (var i = 0; i < day.Count; i++)
        {
            if (day[i].Half != HalfOfDay.Unknown && day[i].Half != (i < noon ? HalfOfDay.Am : HalfOfDay.Pm)) return false;
            if (i > 0 && i != noon && day[i].Minutes < day[i - 1].Minutes) return false;
        }

        return true;
    }

    /// <summary>The events of one cell with their halves, where only one way of reading them runs forward ("8.30 120, 12.30 140, 5.30 140"); else as they are.</summary>
    public static IReadOnlyList<CellEvent> InOrder(IReadOnlyList<CellEvent> events)
    {
        var times = events.Where(e => e.Clock is { Start.Precision: TimePrecision.Exact }).ToList();
        if (times.Count < 2 || times.Count != events.Count || times.Exists(e => e.BareHours) || times.TrueForAll(e => e.Clock!.Start.Half != HalfOfDay.Unknown)) return events;
        var order = times.ConvertAll(e => (Minutes(e.Clock!.Start), e.Clock!.Start.Half != HalfOfDay.Unknown ? e.Clock.Start.Half : e.Clock.Start.Time.Hour is 0 or 12 ? HalfOfDay.Pm : HalfOfDay.Unknown));
        if (Enumerable.Range(0, times.Count + 1).Where(noon => RunsForward(order, noon)).Take(2).ToList() is not [var only]) return events;
        return [.. times.Select((e, i) => e.Clock!.Start.Half != HalfOfDay.Unknown ? e : e with { Clock = e.Clock with { Start = e.Clock.Start.In(i < only ? HalfOfDay.Am : HalfOfDay.Pm) } })];
    }
}
