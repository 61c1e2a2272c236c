namespace CareRecords.Records;

/// <summary>Side of the chest, the child's own left and right.</summary>
public enum Side
{
    /// <summary>Not said.</summary>
    Unknown,

    /// <summary>The child's left.</summary>
    Left,

    /// <summary>The child's right.</summary>
    Right,

    /// <summary>One treatment of the whole chest at once.</summary>
    Both,
}

/// <summary>Part of the chest.</summary>
public enum ChestArea
{
    /// <summary>Not said.</summary>
    Unknown,

    /// <summary>Lower chest (bases).</summary>
    Lower,

    /// <summary>Upper chest (apices, tops).</summary>
    Upper,

    /// <summary>Middle chest.</summary>
    Middle,

    /// <summary>The whole chest at once.</summary>
    Whole,
}

/// <summary>What was done to an area.</summary>
public enum Technique
{
    /// <summary>Not said.</summary>
    Unknown,

    /// <summary>Percussion: clapping, cupping, tapping.</summary>
    Percussion,

    /// <summary>Vibration: shaking on the breath out.</summary>
    Vibration,

    /// <summary>Something else: positive pressure, a vest, blowing games.</summary>
    Other,
}

/// <summary>Minutes of one technique on one area of one side.</summary>
/// <param name="Side">Side of the chest.</param>
/// <param name="Area">Part of the chest.</param>
/// <param name="Technique">What was done.</param>
/// <param name="Minutes">Minutes; null when not said. Zero means written as zero: left out.</param>
/// <param name="MinutesHigh">Upper end when a range was written ("2-3 min": 2 in <paramref name="Minutes"/>, 3 here); otherwise null.</param>
public sealed record AreaMinutes(Side Side, ChestArea Area, Technique Technique, double? Minutes, double? MinutesHigh = null);
