namespace CareRecords.Statistics;

/// <summary>Which departures from the null hypothesis count.</summary>
public enum Alternative
{
    /// <summary>Both directions.</summary>
    TwoSided,

    /// <summary>Only larger than the null hypothesis says.</summary>
    Greater,

    /// <summary>Only smaller than the null hypothesis says.</summary>
    Less,
}
