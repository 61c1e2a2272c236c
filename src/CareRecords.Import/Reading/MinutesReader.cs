namespace CareRecords.Import.Reading;

/// <summary>A number of minutes, or a range of them.</summary>
/// <param name="Minutes">Minutes, or the lower end of a range; 0 or more.</param>
/// <param name="High">The upper end where a range was written; otherwise null.</param>
internal readonly record struct MinutesWritten(double Minutes, double? High = null);

/// <summary>Reads minutes: 3, 2½, 1/2, "two and a half", "2-3 min", "0,5", "half an hour", "90 sec".</summary>
internal static class MinutesReader
{
    /// <summary>Reads the whole of <paramref name="text"/> as minutes; negative numbers and more than 24 hours are impossible.</summary>
    public static Reading<MinutesWritten> Read(string text) => throw new NotImplementedException(text);
}
