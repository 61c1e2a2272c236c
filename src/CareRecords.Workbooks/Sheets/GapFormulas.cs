using CareRecords.Workbooks.Building;
using static CareRecords.Workbooks.Building.Formula;

namespace CareRecords.Workbooks.Sheets;

/// <summary>
/// The gaps again, by formula. Minutes run on the time line of the sheet Clock. The feed gap looks at every feed of the twelve hours before; the
/// inhaler gap takes the dose named beside it.
/// </summary>
internal static class GapFormulas
{
    public const string StartLow = "start low";
    public const string StartHigh = "start high";

    /// <summary>Feeds further back do not count, minutes.</summary>
    private const string LookBack = "720";

    /// <summary>A dose further back than this is not early but none, minutes.</summary>
    private const string Early = "240";

    private static string Low => Cell(StartLow);

    private static string High => Cell(StartHigh);

    /// <summary>Feeds that may have gone on before the session and went off, at the latest, in the twelve hours before.</summary>
    private static string PossibleFeeds => $"Feeds[{FeedOnOff.OnLow}],\"<\"&{High},Feeds[{FeedOnOff.OffHigh}],\">=\"&({Low}-{LookBack})";

    /// <summary>Feeds that certainly went on before the session.</summary>
    private static string CertainFeeds => $"Feeds[{FeedOnOff.OnHigh}],\"<\"&{Low},Feeds[{FeedOnOff.OffHigh}],\">=\"&({Low}-{LookBack})";

    public static string FeedLow => $"IF(COUNTIFS({PossibleFeeds})=0,\"\",ROUND(MAX(0,{Low}-{MaxIfs}(Feeds[{FeedOnOff.OffHigh}],{PossibleFeeds})),8))";

    public static string FeedHigh => $"IF(COUNTIFS({CertainFeeds})=0,\"\",ROUND(MAX(0,{High}-{MaxIfs}(Feeds[{FeedOnOff.OffLow}],{CertainFeeds})),8))";

    public static string FeedVerdict
    {
        get
        {
            var (low, high, limit) = (Cell("feed gap least, min"), Cell("feed gap most, min"), Cell("feed gap limit, min"));
            return $"IF(AND(ISNUMBER({low}),ISNUMBER({limit})),IF({low}>={limit},{Text(FindingWords.Kept)},IF(ISNUMBER({high}),IF({high}<{limit},{Text(FindingWords.Short)},{Text(FindingWords.CannotTell)}),{Text(FindingWords.CannotTell)})),{Text(FindingWords.CannotTell)})";
        }
    }

    public static string DoseLow => $"IFERROR(ROUND(MAX(0,{Low}-{Dose(IntervalColumns.StartHigh)}),8),\"\")";

    public static string DoseHigh => $"IFERROR(ROUND(MAX(0,{High}-{Dose(IntervalColumns.StartLow)}),8),\"\")";

    public static string InhalerVerdict
    {
        get
        {
            var (low, high, limit, window) = (Cell("inhaler gap least, min"), Cell("inhaler gap most, min"), Cell("inhaler gap limit, min"), Cell("inhaler window, min"));
            var noDose = $"IF(COUNTIFS(Medicines[care day],{Cell("care day")})=0,{Text(FindingWords.CannotTell)},{Text(FindingWords.None)})";
            return $"IF({Cell("dose")}=\"\",{noDose},IF(AND({low}>={limit},{high}<={window}),{Text(FindingWords.Kept)},IF({high}<{limit},{Text(FindingWords.Short)},"
                + $"IF(AND({low}>{window},{high}<={Early}),{Text(FindingWords.Early)},{Text(FindingWords.CannotTell)}))))";
        }
    }

    /// <summary>The cell of the same session in a column of this sheet.</summary>
    public static string Cell(string heading) => This(GapsSheet.Table, heading);

    /// <summary>The value of the row's session on the sheet Sessions; empty where that cell is.</summary>
    public static string Session(string heading) => Find(SessionsSheet.Table, heading, WorkbookLayout.Heading.RowId, Cell("session"));

    private static string Dose(string heading) => Find("Medicines", heading, WorkbookLayout.Heading.RowId, Cell("dose"));
}
