using CareRecords.Import.Reading;
using NodaTime;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>
/// Settles "7.15" before or after noon: by the heading of its column, by the time before it in the same cell, by the clock that the
/// table uses, else by the order of the day. What none of these settles is asked.
/// </summary>
internal sealed class HalfOfDayRule
{
    // How long before what stands above it a feed may have stopped (chosen by CareRecords).
    public const int StepBackMinutes = 90;

    private bool _twentyFour;
    private bool _saysHalf;
    private int _am;
    private int _pm;

    // Who writes "pm" beside the times after noon, and "am" beside none, leaves the morning's bare.
    private const int FewestPm = 2;

    /// <summary>True once a time showed that the table uses the 24-hour clock.</summary>
    public bool IsTwentyFour => _twentyFour;

    /// <summary>True once a time said am or pm.</summary>
    public bool SaysHalf => _saysHalf;

    /// <summary>Takes notice of a time cell before any is settled: one time from 13:00 on without "pm" shows a 24-hour clock.</summary>
    public void Notice(Cell cell, ClockSpan span)
    {
        var words = cell.Kind == CellKind.Text && HasLetters(cell.Text);
        // "0725" is written by who counts to 24.
        if (!words && cell.Kind == CellKind.Text && cell.Text.Trim() is ['0', >= '1' and <= '9', >= '0' and <= '5', >= '0' and <= '9', ..] four && (four.Length == 4 || !char.IsAsciiDigit(four[4]))) _twentyFour = true;
        foreach (var time in new[] { span.Start, span.End })
        {
            if (time is null) continue;
            if (!words && time.Time.Hour >= 13 && time.Half != HalfOfDay.Unknown) _twentyFour = true;
            if (words && time.Half != HalfOfDay.Unknown) _saysHalf = true;
            if (words && time.Half == HalfOfDay.Am) _am++;
            if (words && time.Half == HalfOfDay.Pm) _pm++;
        }
    }

    // "7am", "7 p.m.": the letters after a figure; the "m" of "12 Mar" says nothing.
    private static bool HasLetters(string text)
    {
        for (var i = 1; i < text.Length - 1; i++)
        {
            if (text[i] is not ('a' or 'A' or 'p' or 'P') || !(char.IsAsciiDigit(text[i - 1]) || text[i - 1] == ' ')) continue;
            var m = text[i + 1] == '.' && i + 2 < text.Length ? i + 2 : i + 1;
            if (text[m] is 'm' or 'M' && (m + 1 == text.Length || !char.IsLetter(text[m + 1]))) return true;
        }

        return false;
    }

    /// <summary>The time with its half settled; null when it could be either.</summary>
    /// <param name="time">As written.</param>
    /// <param name="column">The half that the column's heading names.</param>
    /// <param name="beforeInCell">The time before it in the same cell; null for the first.</param>
    /// <param name="beforeInDay">The latest time of the rows above on the same day; null for the first of a day.</param>
    /// <param name="mayStepBack">True for what is often written after what it came before (a feed stopped before the physio of the column above).</param>
    /// <param name="spoken">True for "half 5", "10 past 6": nobody counts those to 24, whatever clock the table uses.</param>
    /// <param name="laterInDay">True when a later row of the day shows that the day's first times are before noon.</param>
    public ClockTime? Settle(ClockTime time, HalfOfDay column, LocalTime? beforeInCell, LocalTime? beforeInDay, bool laterInDay, bool mayStepBack = false, bool spoken = false)
    {
        if (time.Half != HalfOfDay.Unknown) return time;
        if (column == HalfOfDay.Am) return time.Time.Hour is 0 or 12 ? time.In(HalfOfDay.Pm) : time.In(HalfOfDay.Am);
        if (column == HalfOfDay.Pm) return time.In(HalfOfDay.Pm);
        var asPm = time.In(HalfOfDay.Pm);
        if (time.Time.Hour is 0 or 12) return asPm;
        if (beforeInCell is { } before && time.Time < before && asPm.Time > before) return asPm;
        if (!spoken && (_twentyFour || (_am == 0 && _pm >= FewestPm))) return time.In(HalfOfDay.Am);
        if (mayStepBack && beforeInDay is { } after && time.Time < after && Period.Between(time.Time, after, PeriodUnits.Minutes).Minutes <= StepBackMinutes) return null;
        if (beforeInDay is { } earlier && time.Time < earlier && asPm.Time >= earlier) return asPm;
        return laterInDay || (beforeInDay is null && _saysHalf && time.Time.Hour is >= 5 and <= 11) ? time.In(HalfOfDay.Am) : null;
    }
}
