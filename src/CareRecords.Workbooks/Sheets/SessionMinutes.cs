using CareRecords.Findings;
using CareRecords.Records;
using CareRecords.Workbooks.Building;

namespace CareRecords.Workbooks.Sheets;

/// <summary>
/// A session's minutes that are set against the plan, over the six columns of the sheet Sessions. Where those columns cannot say what the findings say
/// (areas without a column, a side that is not said), the cell keeps the findings' value without following them.
/// </summary>
internal static class SessionMinutes
{
    /// <summary>Minutes compared: the written total, else the sum over the columns of the parts usually treated.</summary>
    public static CellContent Compared(ReviewRows rows, SessionFinding session)
    {
        var cell = CellContent.Of(session.AgainstPlan?.Done);
        if (session.AgainstPlan is null || !Follows(rows, session)) return cell;
        var columns = string.Join(',', rows.Findings.Adherence.UsualParts.SelectMany(u => Columns(u.Item)).Select(i => GapFormulas.Session(SessionCells.Usual[i].Heading)));
        var total = GapFormulas.Session("minutes");
        return cell.By($"IF(ISNUMBER({total}),{total},IF(COUNT({columns})=0,\"\",SUM({columns})))");
    }

    /// <summary>How many parts of one item of the plan are written, as a formula or a number.</summary>
    public static string Written(ReviewRows rows, SessionFinding session, PlanItem item)
    {
        if (!Follows(rows, session)) return Formula.Number(Parts(session.AgainstPlan!.Written, item));
        var columns = string.Join(',', Columns(item).Select(i => GapFormulas.Session(SessionCells.Usual[i].Heading)));
        var counted = columns.Length == 0 ? "0" : $"COUNT({columns})";
        return $"IF(ISNUMBER({GapFormulas.Session("minutes")}),{Formula.Number(Parts(rows.Findings.Adherence.UsualParts, item))},{counted})";
    }

    /// <summary>Whether the columns give what the findings give.</summary>
    private static bool Follows(ReviewRows rows, SessionFinding session)
    {
        var (against, usual) = (session.AgainstPlan!, rows.Findings.Adherence.UsualParts);
        double?[] written = [.. Enumerable.Range(0, SessionCells.Usual.Count).Select(i => SessionCells.Minutes(session.Session, i))];
        List<double?> counted = [.. usual.SelectMany(u => Columns(u.Item)).Select(i => written[i]).Where(m => m is not null)];
        var minutes = session.Session.MinutesWritten ?? (counted.Count == 0 ? null : counted.Sum());
        bool Same(PlanItem item) => Parts(against.Written, item) == (session.Session.MinutesWritten is null ? Columns(item).Count(i => written[i] is not null) : Parts(usual, item));
        return (minutes is null) == (against.Done is null) && Math.Abs((minutes ?? 0) - (against.Done ?? 0)) < 1e-9 && usual.All(u => Same(u.Item));
    }

    private static IEnumerable<int> Columns(PlanItem item) => Enumerable.Range(0, SessionCells.Usual.Count).Where(i => item switch
    {
        PlanItem.MinutesVibration => SessionCells.Usual[i].Technique == Technique.Vibration,
        PlanItem.MinutesLower => SessionCells.Usual[i].Area == ChestArea.Lower,
        PlanItem.MinutesUpper => SessionCells.Usual[i].Area == ChestArea.Upper,
        _ => false,
    });

    private static int Parts(IReadOnlyList<(PlanItem Item, int Parts)> parts, PlanItem item) => parts.Where(p => p.Item == item).Sum(p => p.Parts);
}
