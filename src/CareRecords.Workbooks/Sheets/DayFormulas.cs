using CareRecords.Records;

namespace CareRecords.Workbooks.Sheets;

/// <summary>The longer formulas of a care day; each takes the formula of the day.</summary>
internal static class DayFormulas
{
    private static readonly string[] Tables = ["Sessions", "Feeds", "Medicines", "Checks", "Signs", "NotDone"];

    public static string AnythingWritten(string day) => $"IF({string.Join('+', Tables.Select(t => $"COUNTIFS({t}[care day],{day})"))}>0,\"yes\",\"no\")";

    public static string SessionsWithMinutes(string day) => $"COUNTIFS(Sessions[care day],{day},Sessions[minutes in all],\">=0\")";

    /// <summary>Median over all areas of the day's sessions.</summary>
    public static string MinutesPerArea(string day) =>
        $"IFERROR(MEDIAN(IF((Sessions[care day]={day})*ISNUMBER({SessionsSheet.Areas}),{SessionsSheet.Areas})),\"\")";

    /// <summary>Median of the readings that are not during a session, on the usual oxygen.</summary>
    public static string MedianAtUsual(string day) =>
        $"IFERROR(MEDIAN(IF((Checks[care day]={day})*ISNUMBER(Checks[spo2])*ISNUMBER(Checks[oxygen])*(Checks[oxygen]={PlanFormulas.On(PlanItem.UsualOxygen, day)})*(Checks[phase]<>\"during\"),Checks[spo2])),\"\")";
}
