namespace CareRecords.Workbooks.Sheets;

/// <summary>Wilson's limits of a share at 95 % (Wilson 1927) as a formula; empty when nothing was judged.</summary>
internal static class WilsonFormula
{
    public static string Limit(string kept, string judged, bool upper)
    {
        const string z = ClockSheet.Quantile;
        var root = $"{z}*SQRT({kept}*({judged}-{kept})/{judged}+{z}^2/4)";
        // At the ends the limit is the end itself; the root would leave dust there.
        var end = upper ? $"IF({kept}={judged},1," : $"IF({kept}=0,0,";
        return $"IF({judged}=0,\"\",{end}({kept}+{z}^2/2{(upper ? "+" : "-")}{root})/({judged}+{z}^2)))";
    }
}
