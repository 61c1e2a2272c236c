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

    private static string Low { get; } = Cell(StartLow);

    private static string High { get; } = Cell(StartHigh);

    /// <summary>Feeds that may have gone on before the session and went off, at the latest, in the twelve hours before.</summary>
    private static string PossibleFeeds { get; } = $"Feeds[{FeedOnOff.OnLow}],\"<\"&{High},Feeds[{FeedOnOff.OffHigh}],\">=\"&({Low}-{LookBack})";

    /// <summary>Feeds that certainly went on before the session.</summary>
    private static string CertainFeeds { get; } = $"Feeds[{FeedOnOff.OnHigh}],\"<\"&{Low},Feeds[{FeedOnOff.OffHigh}],\">=\"&({Low}-{LookBack})";

    public static string FeedLow { get; } = $"IF(COUNTIFS({PossibleFeeds})=0,\"\",ROUND(MAX(0,{Low}-{MaxIfs}(Feeds[{FeedOnOff.OffHigh}],{PossibleFeeds})),8))";

    /// <summary>
    /// The longest gap that the times allow: reached at the latest start, or just as a feed must have begun (an array over the feeds). Empty when
    /// no feed need have begun, or when none need lie in the last twelve hours.
    /// </summary>
    public static string FeedHigh { get; } = MakeFeedHigh();

    private static string MakeFeedHigh()
    {
        var counted = $"Feeds[{FeedOnOff.OffHigh}],\">=\"&({Low}-{LookBack})";
        string LastOff(string before) => $"{MaxIfs}(Feeds[{FeedOnOff.OffLow}],Feeds[{FeedOnOff.OnHigh}],\"<\"&{before},{counted})";
        var on = $"Feeds[{FeedOnOff.OnHigh}]";
        var between = $"IF(ISNUMBER({on})*({on}>={Low})*({on}<{High})*(Feeds[{FeedOnOff.OffHigh}]>={Low}-{LookBack}),{on}-{LastOff(on)},0)";
        var most = $"MAX(0,{High}-{LastOff(High)},{between})";
        return $"IF(COUNTIFS({CertainFeeds})=0,\"\",IF({most}>{LookBack},\"\",ROUND({most},8)))";
    }

    public static string FeedVerdict { get; } = MakeFeedVerdict();

    private static string MakeFeedVerdict()
    {
        var (low, high, limit) = (Cell("feed gap least, min"), Cell("feed gap most, min"), Cell("feed gap limit, min"));
        return $"IF(COUNT({low},{high},{limit})<3,{Text(FindingWords.CannotTell)},IF({low}>={limit},{Text(FindingWords.Kept)},IF({high}<{limit},{Text(FindingWords.Short)},{Text(FindingWords.CannotTell)})))";
    }

    public static string DoseLow { get; } = $"IFERROR(ROUND(MAX(0,{Low}-{Dose(IntervalColumns.StartHigh)}),8),\"\")";

    public static string DoseHigh { get; } = $"IFERROR(ROUND(MAX(0,{High}-{Dose(IntervalColumns.StartLow)}),8),\"\")";

    /// <summary>
    /// Kept when a due dose certainly lies in the zone; else the one verdict that the times of all due doses allow, or cannot tell when they allow
    /// more than one. A dose that the words do not name may be due or not.
    /// </summary>
    public static string InhalerVerdict { get; } = MakeInhalerVerdict();

    private static string MakeInhalerVerdict()
    {
        var (limit, window) = (Cell("inhaler gap limit, min"), $"MAX({Cell("inhaler gap limit, min")},{Cell("inhaler window, min")})");
        var (low, high, due) = ("Medicines[start low]", "Medicines[start high]", $"Medicines[{MedicinesSheet.Due}]");
        string Any(string which, params string[] conditions) => $"COUNTIFS({due},{Text(which)},{string.Join(',', conditions)})";
        string AtLeast(string column, string value) => $"{column},\">=\"&({value})";
        string AtMost(string column, string value) => $"{column},\"<=\"&({value})";
        string Under(string column, string value) => $"{column},\"<\"&({value})";
        string Over(string column, string value) => $"{column},\">\"&({value})";
        var certain = Any("yes", AtLeast(low, $"{High}-{window}"), AtMost(high, $"{Low}-{limit}"));
        var kept = Any("<>no", AtLeast(high, $"{Low}-{window}"), AtMost(low, $"{High}-{limit}"));
        var nearer = Any("<>no", Over(high, $"{Low}-{limit}"), AtMost(low, High));
        var early = $"IF({Any("yes", AtLeast(low, $"{High}-{window}"), AtMost(high, Low))}>0,0,{Any("<>no", AtLeast(high, $"{Low}-{Early}"), Under(low, $"{High}-{window}"))})";
        var none = Any("yes", AtLeast(low, $"{High}-{Early}"), AtMost(high, Low));
        var noneWord = $"IF(COUNTIFS(Medicines[care day],{Cell("care day")})=0,{Text(FindingWords.CannotTell)},{Text(FindingWords.None)})";
        // One digit a verdict: a sum that is one of them says that only one is possible.
        var possible = $"({kept}>0)+10*({nearer}>0)+100*({early}>0)+1000*({none}=0)";
        return $"IF({certain}>0,{Text(FindingWords.Kept)},IFERROR(CHOOSE(MATCH({possible},{{1,10,100,1000}},0),{Text(FindingWords.Kept)},{Text(FindingWords.TooLate)},{Text(FindingWords.Early)},{noneWord}),{Text(FindingWords.CannotTell)}))";
    }

    /// <summary>The cell of the same session in a column of this sheet.</summary>
    public static string Cell(string heading) => This(GapsSheet.Table, heading);

    /// <summary>The value of the row's session on the sheet Sessions; empty where that cell is.</summary>
    public static string Session(string heading) => Find(SessionsSheet.Table, heading, WorkbookLayout.Heading.RowId, Cell("session"));

    private static string Dose(string heading) => Find("Medicines", heading, WorkbookLayout.Heading.RowId, Cell("dose"));
}
