namespace CareRecords.Statistics;

/// <summary>
/// A time known to lie after <paramref name="Left"/> and at or before <paramref name="Right"/>: (Left, Right]. Equal ends
/// mean a time known exactly.
/// </summary>
/// <param name="Left">The last time at which the event was known not to have happened; 0 when it may have happened at once.</param>
/// <param name="Right">The first time at which it was known to have happened; infinity when it had not yet (right-censored).</param>
public readonly record struct CensoredInterval(double Left, double Right)
{
    /// <summary>A time known exactly.</summary>
    public bool IsExact => Left == Right;

    /// <summary>Not yet happened when last seen.</summary>
    public bool IsRightCensored => double.IsPositiveInfinity(Right);

    internal static CensoredInterval[] Validated(IReadOnlyCollection<CensoredInterval> intervals)
    {
        ArgumentNullException.ThrowIfNull(intervals);
        CensoredInterval[] copy = [.. intervals];
        return Array.TrueForAll(copy, i => double.IsFinite(i.Left) && i.Left >= 0 && i.Right >= i.Left)
            ? copy
            : throw new ArgumentException("An interval runs from a finite time, 0 or more, to a time not before it.", nameof(intervals));
    }
}
