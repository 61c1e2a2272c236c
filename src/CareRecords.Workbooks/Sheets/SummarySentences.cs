using CareRecords.Findings;
using CareRecords.Workbooks.Building;

namespace CareRecords.Workbooks.Sheets;

/// <summary>The front page's sentences.</summary>
internal static class SummarySentences
{
    private const int MostCharacters = 220;

    public static CellContent Notes(ReviewRows rows)
    {
        var q = rows.Findings.Quality;
        return CellContent.Of(
            $"Notes on {q.DaysWithRecords} of {q.Days} care days: {rows.Sessions.Count} sessions, {rows.Feeds.Count} feeds, {rows.Doses.Count} doses, {rows.Checks.Count} checks, {rows.Signs.Count} signs. Times of {rows.Log.Zone}.");
    }

    public static string Usual(ChildFindings findings)
    {
        var usual = findings.Baseline is { } b
            ? $"The child's own usual: {Round(b.SpO2)} % (band {Round(b.SpO2Low)} to {Round(b.SpO2High)} %) on {FindingWords.Flow(b.Oxygen)}, from {b.DaysUsed} well days{(b.Provisional ? ", provisional" : "")}."
            : "The child's own usual cannot be given: " + findings.BaselineMissing;
        var effect = findings.SessionEffect;
        var change = effect.MedianChange is { } median
            ? $" After less before a session at the same oxygen: median {Signed(median)} points (95 % limits {Signed(effect.Low)} to {Signed(effect.High)}, {effect.Pairs} sessions); one reading may be off by 2 to 4."
            : "";
        return usual + change;
    }

    public static string Reasons(ChildFindings findings)
    {
        var days = findings.Days;
        var withReason = days.Sum(d => d.SessionsOmittedWithReason);
        var without = days.Sum(d => d.SessionsOmittedWithoutReason);
        var reasons = findings.Adherence.Reasons;
        var words = reasons.Count == 0 ? "" : " Reasons written, for those and for sessions cut short: " + string.Join("; ", reasons.Take(5).Select(r => $"{Clip(r.Reason, 40)} ({r.Times})")) + (reasons.Count > 5 ? $"; {reasons.Count - 5} more" : "") + ".";
        return $"Written as not done: {withReason} with a reason, {without} without.{words} A session that nobody wrote down is unknown, not missed.";
    }

    public static IEnumerable<CellContent> Trust(ReviewRows rows)
    {
        var findings = rows.Findings;
        var q = findings.Quality;
        var missing = findings.Span.DaysMissing;
        yield return CellContent.Of((missing.Count == 0 ? "Something is written for every care day." : $"Nothing is written for {missing.Count} care days ({string.Join(", ", missing.Take(6).Select(TimeWords.Day))}{(missing.Count > 6 ? ", …" : "")}): unknown, not missed.")
            + (q.ReadingsWithoutOxygen > 0 ? $" {q.ReadingsWithoutOxygen} readings have no oxygen flow." : "")
            + $" {q.ByKind.Sum(k => k.Approximate)} of {q.ByKind.Sum(k => k.Entries)} times are not exact." + Rounding(findings));
        if (q.Missing.Count > 0) yield return CellContent.Of("Missing that matters: " + string.Join(" ", q.Missing.Take(3)));
        var lines = rows.Log.Lines;
        yield return CellContent.Of(
            $"{lines.Read} lines came in: {lines.InRecords} in records, {lines.NotRecords} set aside, {lines.Problems} to check, {lines.Blank} blank. {rows.Questions.Count(x => x.Item.Answer is null)} questions to the family are open. {findings.Flags.Count} lines to look at.");
    }

    /// <summary>Words short enough for the front page; what is left out stands on its own sheet, and the mark says so.</summary>
    public static string Clip(string words, int most = MostCharacters)
    {
        var line = CellText.Fit(words.ReplaceLineEndings(" ").Trim());
        return line.Length <= most ? line : line[..(char.IsHighSurrogate(line[most - 1]) ? most - 1 : most)] + "… (whole on its sheet)";
    }

    private static string Rounding(ChildFindings findings) => findings.Adherence.Rounding.MaxBy(r => r.Minutes) is { } widest
        ? $" If written times were off by {widest.Minutes} minutes, {widest.FeedGapFlips} feed verdicts and {widest.InhalerGapFlips} inhaler verdicts would no longer be certain."
        : "";

    private static string Round(double value) => TimeWords.Number(Math.Round(value, 1));

    private static string Signed(double? value) => value is { } v ? Math.Round(v, 1).ToString("+0.#;−0.#;0", System.Globalization.CultureInfo.InvariantCulture) : "not known";
}
