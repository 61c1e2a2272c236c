namespace CareRecords.Import.Reading;

/// <summary>Reads times of day: 24-hour and 12-hour writing, spoken times ("half 8", "ten to 8"), "noon", "about 9", "9ish", parts of the day, ranges.</summary>
internal static class ClockReader
{
    /// <summary>Reads the whole of <paramref name="text"/> as a time or range of times; <see cref="Outcome.Nothing"/> when other words stand beside it.</summary>
    public static Reading<ClockSpan> Read(string text) => throw new NotImplementedException(text);

    /// <summary>Reads a number that a sheet holds where a time belongs: 0710 or 1845 (hhmm), 7.1 or 7.10 as written (h.mm), or a fraction of a day.</summary>
    /// <param name="number">The cell's number.</param>
    /// <param name="asShown">The cell's text as shown, where known; null otherwise.</param>
    public static Reading<ClockSpan> ReadNumber(double number, string? asShown) => throw new NotImplementedException(asShown);
}
