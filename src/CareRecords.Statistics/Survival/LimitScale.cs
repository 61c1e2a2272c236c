namespace CareRecords.Statistics;

/// <summary>The scale on which pointwise limits of a survival curve are symmetric.</summary>
public enum LimitScale
{
    /// <summary>log(−log S): limits stay within 0 and 1; recommended for small samples.</summary>
    LogLog,

    /// <summary>log S, cut at 1.</summary>
    Log,

    /// <summary>S itself, cut at 0 and 1.</summary>
    Plain,
}
