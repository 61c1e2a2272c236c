using CareRecords.Import.Reading;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>The day and time of a row.</summary>
/// <param name="Day">The day; null when it is not known.</param>
/// <param name="Start">The row's own time; null when it has none.</param>
/// <param name="End">Its own end; null when it has none.</param>
/// <param name="IsBad">True when a date or time of it was refused or asked about: what hangs on it is not read.</param>
/// <param name="Words">Words that stand where a day or time belongs and are neither; null when there are none.</param>
internal sealed record RowWhen(LocalDate? Day, UncertainTime? Start, UncertainTime? End, bool IsBad, string? Words);

/// <summary>Settles the days and times of a block's rows.</summary>
internal sealed partial class RowTimesReader(BlockReading reading)
{
    private static readonly LocalTime LateEvening = new(18, 0);
    private static readonly LocalTime EarlyMorning = new(6, 0);
    private static readonly LocalTime LateMorning = new(10, 0);
    private const int LongestSessionHours = 3;
    private const int LongestFeedHours = 16;

    // How far from the row's own event the inhaler or the end of the feed beside it may lie (chosen by CareRecords).
    private const int AroundEventMinutes = 240;
    private const int FewestFeedEnds = 3;

    /// <summary>Day and time of a row; the day of the rows above it where it has none of its own.</summary>
    public RowWhen Read(BlockRow row)
    {
        var slots = reading.Slots;
        reading.Part = row[slots.Part].Cell.Words is { } part ? PartOfRow.Read(part) ?? (NightShifts.IsNight(part) ? "night" : null) : null;
        var (dateCell, timeCell) = (row[slots.Date], row[slots.Time]);
        var (day, time) = (CellTimes.Read(dateCell.Cell), CellTimes.Read(timeCell.Cell));
        // "3" where the day stands is the third of the month that the title names.
        if (day.Date is null && slots.Date >= 0 && slots.Date != slots.Time && int.TryParse(dateCell.Cell.Text.Trim(), System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var dayOfMonth) && dayOfMonth is >= 1 and <= 31)
            day = new WrittenTime(Outcome.Certain, new DateWritten(null, null, null, null, dayOfMonth, IsoDayOfWeek.None), null);
        if (reading.Block.AreHours) return Hour(day, dateCell, timeCell);
        var bad = Refused(day, dateCell) | Refused(time, timeCell);
        string? words = null;
        if (day.Outcome == Outcome.Nothing && !dateCell.Cell.IsEmpty && !NotSaid.Is(dateCell.Cell.Text.Trim()) && dateCell.Cell.Text.Trim() is not ("\"" or "〃")) words = dateCell.Cell.Words;
        // "evening" where the time stands.
        if (time.Outcome == Outcome.Nothing && slots.Part < 0 && !timeCell.Cell.IsEmpty && PartOfRow.Read(timeCell.Cell.Text) is { } partOfTime) reading.Part = partOfTime;
        else if (time.Outcome == Outcome.Nothing && !timeCell.Cell.IsEmpty && !NotSaid.Is(timeCell.Cell.Text.Trim())) words ??= timeCell.Cell.Words;
        var written = day.Date ?? time.Date;
        if (written is not null)
        {
            var settled = reading.Settle(written, day.Date is null ? timeCell : dateCell);
            if (settled is null) bad = true;
            if (settled is not null && reading.Nights.Open.Contains(row[0].Row.Line))
            {
                reading.Cells.Ask(timeCell.Source, $"'{timeCell.Cell.Words}' stands below an evening of the same date: it may be of the night after.", "Write the date on which it was.");
                reading.Open(settled);
                return new RowWhen(reading.Day, null, null, true, null);
            }

            reading.Open(settled is { } evening && reading.Nights.Next.Contains(row[0].Row.Line) ? evening.PlusDays(1) : settled);
        }
        else if (day.Outcome is Outcome.Impossible)
        {
            reading.Open(null);
        }

        // Rows under a date that could not be read are not of the day before it.
        if (written is null && words is not null && CellTimes.IsUnreadDate(words))
        {
            reading.Cells.Ask(words == dateCell.Cell.Words ? dateCell.Source : timeCell.Source, $"'{words}' is not read as a date.", "Write the date as day, month and year.");
            reading.Open(null);
            return new RowWhen(null, null, null, true, null);
        }

        if (written is not null && (day.Date is null ? timeCell : dateCell).Cell is { Kind: CellKind.Date } line && line.Text.Any(char.IsLetter)) reading.IsNight = BlockReading.SaysNight(line.Text);
        if (bad) return new RowWhen(reading.Day, null, null, true, words);
        var clock = time.Clock ?? day.Clock;
        if (clock is null)
        {
            var endOnly = slots.End >= 0 ? On(row[slots.End], HalfOfDay.Unknown, null) : null;
            return new RowWhen(reading.Day, null, endOnly, false, words);
        }

        if (written is null) PastMidnight(clock.Start);
        var half = reading.Block.Columns[slots.Time >= 0 ? slots.Time : Math.Max(slots.Date, 0)].Half;
        var start = Settled(clock.Start, half, null, time.Clock is null ? dateCell : timeCell);
        if (start is null) return new RowWhen(reading.Day, null, null, true, words);
        if (reading.RowsAreHours && start is { IsExact: true, Stated.Minute: 0 })
        {
            reading.Hour = start.Stated.TimeOfDay;
            return new RowWhen(reading.Day, HourGrid.Within59(start.Stated), null, false, words);
        }

        reading.Anchor = reading.RowsAreEvents && start.IsExact ? start : null;
        var end = clock.End is { } to ? After(start, to, LongestFeedHours) : null;
        if (slots.End >= 0) end ??= EndAfter(start, row[slots.End], LongestFeedHours);
        return new RowWhen(reading.Day, start, end, false, words);
    }

    // The row of an hour in a tick chart.
    private RowWhen Hour(WrittenTime day, CellAt dateCell, CellAt hourCell)
    {
        if (day.Date is { } written) reading.Open(reading.Settle(written, dateCell));
        if (reading.Day is not { } date || HourGrid.HourOf(hourCell.Cell) is not { Hour: <= 24, Minute: < 60 } hour)
        {
            reading.Hour = null;
            if (reading.Day is null) reading.Cells.Ask(hourCell.Source, "No date is written for the hours of this chart.", "Write the date beside or above it.");
            return new RowWhen(null, null, null, true, null);
        }

        var start = (hour.Hour == 24 ? date.PlusDays(1) : date).At(new LocalTime(hour.Hour % 24, hour.Minute));
        reading.Hour = start.TimeOfDay;
        return new RowWhen(date, reading.HoursAreTimes ? UncertainTime.Exactly(start) : HourGrid.Within59(start), null, false, null);
    }

    /// <summary>The time in a cell on the day of its row; null when it holds none (asked or refused where it should).</summary>
    public UncertainTime? On(CellAt cell, HalfOfDay half, LocalTime? before, bool mayStepBack = false)
    {
        var written = CellTimes.Read(cell.Cell);
        if (Refused(written, cell) || written.Clock is not { } clock) return null;
        if (written.Date is { } date)
        {
            if (reading.Settle(date, cell) is not { } day) return null;
            reading.Open(day);
        }

        return Settled(clock.Start, half, before, cell, mayStepBack);
    }

    /// <summary>A time settled before or after noon and put on the day; null, asked about, when it could be either or no day is known.</summary>
    public UncertainTime? Settled(ClockTime time, HalfOfDay half, LocalTime? before, CellAt cell, bool mayStepBack = false)
    {
        if (reading.Day is not { } day)
        {
            reading.Cells.Ask(cell.Source, $"'{cell.Cell.Words}' has no date.", "Write the date in the row, or above it.");
            return null;
        }

        // "7:20" under 7 pm.
        if (half == HalfOfDay.Unknown && reading.Hour is { } hour && time.Half == HalfOfDay.Unknown) return time.In(hour.Hour < 12 ? HalfOfDay.Am : HalfOfDay.Pm).On(day);
        if (half == HalfOfDay.Unknown) half = PartHalf(time);
        // "3" among "6:00am" and "5:30pm" lacks what the others have.
        if (half == HalfOfDay.Unknown && time.Half == HalfOfDay.Unknown && reading.Halves.SaysHalf && cell.Cell.Text.Trim().Length <= 2 && reading.Anchor is null) return AskHalf(time, day, cell);
        var spoken = half == HalfOfDay.Unknown && time.Half == HalfOfDay.Unknown && cell.Cell.Kind == CellKind.Text && Spoken().IsMatch(cell.Cell.Text);
        if (half == HalfOfDay.Unknown && time.Half == HalfOfDay.Unknown && (spoken || !reading.Halves.IsTwentyFour)) half = Around(time, cell, mayStepBack);
        if (mayStepBack && half == HalfOfDay.Unknown && time.Half == HalfOfDay.Unknown && !reading.Halves.IsTwentyFour && reading.StepsBack(cell, time.Time)) return AskHalf(time, day, cell);
        // A real 5:10 of a sheet in a row that says PM was typed without it.
        if (cell.Cell.Kind == CellKind.TimeOfDay && half == HalfOfDay.Pm && time.Time.Hour is > 0 and < 12) time = time with { Half = HalfOfDay.Unknown };
        if (reading.Halves.Settle(time, half, before, reading.LatestBefore(cell), laterInDay: false, mayStepBack, spoken) is not { } settled)
        {
            return AskHalf(time, day, cell);
        }

        if (settled.Precision == TimePrecision.Exact) reading.Saw(settled.Time, cell);
        return settled.On(day);
    }

    [System.Text.RegularExpressions.GeneratedRegex(@"\b(?:half|quarter|past|o'?clock)\b|\d+ to \d+\s*$|^\s*\d{1,2}\s*$", System.Text.RegularExpressions.RegexOptions.IgnoreCase | System.Text.RegularExpressions.RegexOptions.CultureInvariant)]
    private static partial System.Text.RegularExpressions.Regex Spoken();

    private UncertainTime? AskHalf(ClockTime time, LocalDate day, CellAt cell)
    {
        var name = "half-of-day:" + cell.Place.File;
        var answered = reading.Context.Answers.GetValueOrDefault(name);
        if (answered is not null && CanonicalHeader.Fold(answered) is "24hours" or "24hour" or "24h" or "morning" or "am") return time.In(HalfOfDay.Am).On(day);
        reading.Into.Questions.TryAdd(name, new Notes.AskedQuestion($"Times such as '{cell.Cell.Words}' in {cell.Place.File}: is the clock of 24 hours used?", ["24 hours", "no: write am or pm beside each"]));
        reading.Cells.Ask(cell.Source, $"'{cell.Cell.Words}' could be in the morning or in the evening.", "Write am or pm beside it, or use the 24-hour clock.", name);
        return null;
    }

    // The half that the order of the days proves, or that lies around the row's own event.
    private HalfOfDay Around(ClockTime time, CellAt cell, bool mayStepBack)
    {
        if (reading.Anchor is { } anchor)
            foreach (var half in new[] { HalfOfDay.Am, HalfOfDay.Pm })
                if (Math.Abs(Period.Between(anchor.Stated.TimeOfDay, time.In(half).Time, PeriodUnits.Minutes).Minutes) <= AroundEventMinutes)
                    return half;
        if ((mayStepBack || reading.KindOf(cell) == TableKind.Medicines) && BeforeSession(time, cell) is { } before) return before;
        return mayStepBack || time.Time.Hour is 0 or 12 ? HalfOfDay.Unknown : reading.Habit.Of(cell, time);
    }

    // Feeds are stopped, and inhalers given, some time before a session: the one half in which this was, where a whole column of such times stands there.
    private HalfOfDay? BeforeSession(ClockTime time, CellAt cell)
    {
        if (reading.FilledLike(cell) < FewestFeedEnds) return null;
        bool Fits(HalfOfDay half) => reading.SessionsOfDay.Exists(s => s.Start is { IsExact: true } start && Period.Between(time.In(half).Time, start.Stated.TimeOfDay, PeriodUnits.Minutes).Minutes is >= 5 and <= 120);
        var (am, pm) = (Fits(HalfOfDay.Am), Fits(HalfOfDay.Pm));
        return am == pm ? null : am ? HalfOfDay.Am : HalfOfDay.Pm;
    }

    // Midday is 10 to 4: the one of the two readings that lies there.
    private HalfOfDay PartHalf(ClockTime time) =>
        (reading.SlotPart ?? reading.Part ?? reading.TitlePart) is var part && part == "midday" ? time.Time.Hour is 12 or < 5 ? HalfOfDay.Pm : HalfOfDay.Am
        // A night's bare six to eleven is before midnight, its one to five after.
        : part == "night" && reading.SlotPart is not null ? time.Time.Hour is >= 6 and < 12 ? HalfOfDay.Pm : HalfOfDay.Unknown : PartOfRow.Half(part);

    /// <summary>The end in a cell, after a start: past midnight where the clock says so.</summary>
    public UncertainTime? EndAfter(UncertainTime start, CellAt cell, int mostHours)
    {
        var written = CellTimes.Read(cell.Cell);
        if (Refused(written, cell) || written.Clock is not { } clock) return null;
        if (written.Date is null) return After(start, clock.Start, mostHours);
        if (reading.Settle(written.Date, cell) is not { } day) return null;
        if (day == start.Stated.Date) return After(start, clock.Start, mostHours);
        var settled = reading.Halves.Settle(clock.Start, HalfOfDay.Unknown, null, null, laterInDay: true) ?? clock.Start.In(HalfOfDay.Am);
        return settled.On(day);
    }

    /// <summary>The hours that a feed may last at most.</summary>
    public static int MostHours(TableKind kind) => kind == TableKind.Feeds ? LongestFeedHours : LongestSessionHours;

    /// <summary>
    /// An end after a start: "16.40 - 5.10" ends at 17:10; "22.00 - 6.00" the next morning, where it would not last too long.
    /// </summary>
    public static UncertainTime After(UncertainTime start, ClockTime end, int mostHours)
    {
        var day = start.Stated.Date;
        foreach (var candidate in end.Half == HalfOfDay.Unknown ? new[] { end.In(HalfOfDay.Am), end.In(HalfOfDay.Pm) } : [end])
            if (candidate.Time >= start.Stated.TimeOfDay && Hours(start, day.At(candidate.Time)) <= mostHours)
                return candidate.On(day);
        // "12.40 to 12.15" is a slip, not a feed until midnight.
        if (end.Half == HalfOfDay.Unknown && end.Time.Hour is 0 or 12 && start.Stated.TimeOfDay < LateEvening) return end.In(HalfOfDay.Pm).On(day);
        var next = end.In(HalfOfDay.Am);
        return Hours(start, day.PlusDays(1).At(next.Time)) <= mostHours ? next.On(day.PlusDays(1)) : next.On(day);
    }

    private static double Hours(UncertainTime start, LocalDateTime end) =>
        Period.Between(start.Stated, end, PeriodUnits.Minutes).Minutes / 60.0;

    // Rows of a night shift run on past midnight under the date at the top.
    private void PastMidnight(ClockTime time)
    {
        if (reading.Day is { } day && reading.Latest >= LateEvening && time.Half != HalfOfDay.Pm && time.Time < (reading.IsNight ? LateMorning : EarlyMorning) && time.DayPart is null)
            reading.Open(day.PlusDays(1));
    }

    private bool Refused(WrittenTime written, CellAt cell)
    {
        if (written.Outcome == Outcome.Impossible)
            reading.Cells.Refuse(cell.Source, written.Why ?? $"'{cell.Cell.Words}' is not a date or time.", "Correct the date or time.");
        else if (written.Outcome == Outcome.Doubtful)
            reading.Cells.Ask(cell.Source, written.Why ?? $"'{cell.Cell.Words}' could be read in two ways.", "Write the date as 3 March 2026 and the time as 07:10.");
        return written.Outcome is Outcome.Impossible or Outcome.Doubtful;
    }
}
