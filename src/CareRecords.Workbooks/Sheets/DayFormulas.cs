namespace CareRecords.Workbooks.Sheets;

/// <summary>The longer formulas of a care day; each takes the formula of the day.</summary>
internal static class DayFormulas
{
    private static readonly string[] Tables = ["Sessions", "Feeds", "Medicines", "Checks", "Signs"];

    public static string AnythingWritten(string day) => $"IF({string.Join('+', Tables.Select(t => $"COUNTIFS({t}[care day],{day})"))}>0,\"yes\",\"no\")";

    public static string SessionsWithMinutes(string day) => $"COUNTIFS(Sessions[care day],{day},Sessions[minutes in all],\">=0\")";

    /// <summary>Median over all areas treated in the day's sessions; the areas without a column are not in it.</summary>
    public static string MinutesPerArea(string day) =>
        $"IFERROR(MEDIAN(IF((Sessions[care day]={day})*ISNUMBER({SessionsSheet.Areas})*({SessionsSheet.Areas}>0),{SessionsSheet.Areas})),\"\")";

    /// <summary>Median of the readings at rest (neither during nor after a session, the middle of a range) on the usual oxygen.</summary>
    public static string MedianAtUsual(string day, string usualOxygen) =>
        $"IFERROR(MEDIAN(IF((Checks[care day]={day})*ISNUMBER(Checks[spo2])*ISNUMBER(Checks[oxygen])*(ROUND(ABS(Checks[oxygen]-{usualOxygen}),6)<=0.005)*(Checks[phase]<>\"during\")*(Checks[phase]<>\"after\"),Checks[{ChecksSheet.Middle}])),\"\")";
}
