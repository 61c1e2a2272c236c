using CareRecords.Findings;

namespace CareRecords.Workbooks.Building;

/// <summary>Verdicts and outcomes in the words used all over the workbook.</summary>
internal static class FindingWords
{
    public const string Kept = "kept";
    public const string Short = "short";
    public const string TooLate = "too late";
    public const string Early = "too early";
    public const string None = "none written";
    public const string First = "starting level";
    public const string CannotTell = "cannot tell";

    /// <summary>An inhaler that is not kept came too late, too early or was not written.</summary>
    public static string InhalerVerdict(GapVerdict verdict) => verdict == GapVerdict.Short ? TooLate : Verdict(verdict);

    public static string Verdict(GapVerdict verdict) => verdict switch
    {
        GapVerdict.Kept => Kept,
        GapVerdict.Short => Short,
        GapVerdict.Early => Early,
        GapVerdict.None => None,
        _ => CannotTell,
    };

    /// <summary>What followed a step down; the level that the record starts with and a step up are no steps of a wean.</summary>
    public static string? Outcome(TaperStep step, StepOutcome outcome) => step.Direction switch
    {
        StepDirection.Down => Outcome(outcome),
        StepDirection.Up => null,
        _ => Direction(step) == First ? First : null,
    };

    private static string Outcome(StepOutcome outcome) => outcome switch
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
        _ => step.Id == "S1" ? First : "as before",
    };

    public static string Flow(double? litresPerMinute) => litresPerMinute switch
    {
        null => "flow not written",
        0 => "air",
        { } flow => $"{TimeWords.Number(flow)} L/min",
    };
}
