namespace CareRecords.Pooling;

/// <summary>Age in bands wide enough to say little; given by the family or not at all.</summary>
public enum AgeBand
{
    /// <summary>Not given.</summary>
    NotGiven,

    /// <summary>Under one year.</summary>
    Under1,

    /// <summary>One to four years.</summary>
    From1To4,

    /// <summary>Five to nine years.</summary>
    From5To9,

    /// <summary>Ten to fourteen years.</summary>
    From10To14,

    /// <summary>Fifteen to seventeen years.</summary>
    From15To17,
}

/// <summary>Reads age bands as people write them.</summary>
public static class AgeBands
{
    /// <summary>The bands as they are written on the command line and in a plan.</summary>
    public static IReadOnlyList<string> Written { get; } = ["<1", "1-4", "5-9", "10-14", "15-17"];

    /// <summary>Reads "1-4", "1–4", "under 1", "&lt;1".</summary>
    /// <returns>False for anything else; an exact age is refused, not rounded.</returns>
    public static bool TryRead(string? text, out AgeBand band)
    {
        var plain = (text ?? "").Replace(" ", "", StringComparison.Ordinal).Replace('–', '-').Replace("under", "<", StringComparison.OrdinalIgnoreCase);
        var at = Written.ToList().IndexOf(plain);
        band = at < 0 ? AgeBand.NotGiven : (AgeBand)(at + 1);
        return at >= 0;
    }
}
