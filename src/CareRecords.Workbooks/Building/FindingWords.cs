using CareRecords.Findings;

namespace CareRecords.Workbooks.Building;

/// <summary>Verdicts and outcomes in the words used all over the workbook.</summary>
internal static class FindingWords
{
    public const string Kept = "kept";
    public const string Short = "short";
    public const string Early = "early";
    public const string None = "none written";
    public const string CannotTell = "cannot tell";

    public static string Verdict(GapVerdict verdict) => verdict switch
    {
        GapVerdict.Kept => Kept,
        GapVerdict.Short => Short,
        GapVerdict.Early => Early,
        GapVerdict.None => None,
        _ => CannotTell,
    };

    public static string Outcome(StepOutcome outcome) => outcome switch
    {
        StepOutcome.Steady => "steady",
        StepOutcome.Setback => "setback",
        _ => "cannot tell",
    };

    public static string Course(CourseKind kind) => kind switch
    {
        CourseKind.Sign => "sign",
        CourseKind.Better => "said better",
        CourseKind.Medicine => "medicine begun",
        CourseKind.Oxygen => "oxygen raised",
        CourseKind.LowReading => "low reading",
        CourseKind.Session => "session",
        CourseKind.Team => "the team named",
        CourseKind.Plan => "plan",
        _ => "hospital",
    };

    public static string Direction(TaperStep step) => step.Direction switch
    {
        StepDirection.Up => "up",
        StepDirection.Down => "down",
        _ => step.Id == "S1" ? "first" : "as before",
    };

    public static string Flow(double? litresPerMinute) => litresPerMinute switch
    {
        null => "flow not written",
        0 => "air",
        { } flow => $"{TimeWords.Number(flow)} L/min",
    };
}
