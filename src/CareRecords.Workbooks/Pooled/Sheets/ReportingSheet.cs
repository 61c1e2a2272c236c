using CareRecords.Pooling;
using CareRecords.Workbooks.Building;

namespace CareRecords.Workbooks.Pooled.Sheets;

/// <summary>
/// The items of STROBE (von Elm E et al. 2007) and EMERGE (De Geest S et al. 2018, Ann Intern Med 169:30) that this workbook can answer, and those
/// that only the study can.
/// </summary>
internal static class ReportingSheet
{
    private sealed record Item(string Guideline, string About, string Answer);

    public static void Write(Book book, PooledFindings findings) => PooledPage.Table(
        book, "Reporting items", "What a report of an observational study of adherence is asked, as far as these figures answer it. The rest is the study's to write.", "ReportingItems",
        [
            new Column<Item>("guideline", 16, i => CellContent.Of(i.Guideline)),
            new("about", 34, i => CellContent.Of(i.About)) { Wrap = true },
            new("answer", 110, i => CellContent.Of(i.Answer)) { Wrap = true },
        ],
        [.. Items(findings)], Look.Orange);

    private static IEnumerable<Item> Items(PooledFindings findings)
    {
        var shown = findings.Children is { } children ? FormattableString.Invariant($"{children}") : "kept back";
        yield return new("STROBE", "Study design", "Families' own records at home, pooled; observational. Episodes and steps are found in the records by fixed definitions.");
        yield return new("STROBE", "Setting and dates", "Not in shared data: days count from each child's first record. The study reports places and periods.");
        yield return new("STROBE", "Participants", $"Children pooled: {shown}. How families were asked and who declined is the study's to report. Inputs left out: {findings.Refused.Count.ToString(System.Globalization.CultureInfo.InvariantCulture)} (sheet \"{AccountSheets.LeftOut}\").");
        yield return new("STROBE", "Variables", "Gap verdicts, recovery intervals, steps and setbacks as in the definitions named in each shared workbook; columns and units in its sheet \"columns\" and in the tidy folder's data package.");
        yield return new("STROBE", "Data sources and measurement", "Hand-written and typed records; times as intervals; saturations by home oximeters (2 to 4 points either way, ISO 80601-2-61).");
        yield return new("STROBE", "Bias", "Families who write more may differ: see the funnel. Written times are rounded, and some entries are written later; both are counted in the shared workbooks.");
        yield return new("STROBE", "Study size", "Not planned by this program. The limits say how much the number of children allows.");
        yield return new("STROBE", "Statistical methods", "Sheet \"Methods\": child as the unit, random effects, interval censoring, permutation of children, seed.");
        yield return new("STROBE", "Missing data", $"Unknown is never counted as kept or not kept. Feed gaps that cannot be told: {Count(findings.FeedGap.Counts)}; inhaler gaps: {Count(findings.InhalerGap.Counts)}.");
        yield return new("STROBE", "Descriptive and outcome data", "Sheets \"Shares\", \"Recovery\", \"Setbacks\": children, sessions, episodes and steps beside every figure.");
        yield return new("STROBE", "Main results", "Front page: estimates with 95 % limits and the range of a further child. Nothing is adjusted for confounders.");
        yield return new("STROBE", "Other analyses", "By study group, age band and stable hours before steps; tests listed in full, whatever their result.");
        yield return new("STROBE", "Limitations, generalisability, funding", "The study's to write.");
        yield return new("EMERGE", "Phase of adherence", "Implementation: what was done against the plan while records were kept. Initiation and persistence are not measured: the end of a record is not the end of care.");
        yield return new("EMERGE", "Operational definition", "Gap kept: at least the plan's minutes however the times are read. Judged sessions are the denominator; unknown ones are shown beside.");
        yield return new("EMERGE", "Measurement methods", "Self-report by carers. In a study with electronic records for comparison, families reported more than was recorded (Oates et al. 2019): read shares as what was written.");
        yield return new("EMERGE", "Results", "Shares with limits; between-child variance; nothing marks a child or a carer.");
    }

    private static string Count(GapCounts? counts) => counts is null ? "kept back" : FormattableString.Invariant($"{counts.Unknown} of {counts.Unknown + counts.Judged}");
}
