using CareRecords.Findings;
using CareRecords.Records;
using CareRecords.Workbooks.Building;

namespace CareRecords.Workbooks.Sheets;

/// <summary>The front page's sentences.</summary>
internal static class SummarySentences
{
    private const int MostCharacters = 220;

    public static CellContent Notes(ReviewRows rows)
    {
        var days = rows.Findings.Days;
        var signs = rows.Signs.Count;
        return CellContent.Of(
            $"Notes on {days.Count(d => d.HasRecords)} of {days.Count} care days: {days.Sum(d => d.SessionsDone)} sessions, {days.Sum(d => d.Feeds)} feeds, {days.Sum(d => d.Doses)} doses, {days.Sum(d => d.Readings)} saturation readings, {signs} signs. Times of {rows.Log.Zone}.")
            .By("\"Notes on \"&COUNTIFS(Days[anything written],\"yes\")&\" of \"&COUNT(Days[care day])&\" care days: \"&SUM(Days[sessions done])&\" sessions, \"&SUM(Days[feeds])&\" feeds, \"&SUM(Days[medicines])&\" doses, \"&SUM(Days[readings])"
                + $"&\" saturation readings, \"&COUNTIFS(Signs[row id],\"?*\")&\" signs. Times of {rows.Log.Zone}.\"");
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

    /// <summary>Days off usual oxygen, low readings, sessions cut short or with vomiting, and whether the state was written beside readings.</summary>
    public static string OffUsual(ReviewRows rows)
    {
        var findings = rows.Findings;
        int Count(FlagKind kind) => findings.Flags.Count(f => f.Kind == kind);
        var vomited = findings.Sessions.Count(s => s.Session.Vomited == true);
        return $"Oxygen above usual on {Count(FlagKind.OxygenAboveUsual)} of {findings.Days.Count} days (hours a day are not written). {Under(rows, PlanItem.TargetSaturationLow, "target")} {Under(rows, PlanItem.StopSaturation, "stop value")} "
            + $"Sessions stopped early: {Count(FlagKind.StoppedEarly)}; with vomiting: {vomited}. Vomiting written apart from a session: {Count(FlagKind.Vomit) - vomited}. Admissions written: {Count(FlagKind.Admitted)}. Asleep and awake are not told apart.";
    }

    /// <summary>Readings under a value of the plan, out of those on days with one, with their days.</summary>
    private static string Under(ReviewRows rows, PlanItem item, string called)
    {
        var days = rows.Findings.Days.Select(d => d.Day).ToHashSet();
        var readings = rows.Checks.Where(c => c.Item.SpO2 is not null).Select(c => (c.Item.When.Stated, Day: rows.TimeLine.CareDay(c.Item.When.Stated), SpO2: c.Item.SpO2!.Value))
            .Where(r => days.Contains(r.Day)).Select(r => (r.Stated, r.SpO2, Limit: rows.Log.Plan.NumberFor(item, r.Day))).Where(r => r.Limit is not null).ToList();
        if (readings.Count == 0) return $"Readings under the plan's {called}: cannot tell.";
        var under = readings.Where(r => r.SpO2 < r.Limit).ToList();
        var on = under.Select(r => TimeWords.Day(r.Stated.Date)).Distinct().ToList();
        var where = on.Count == 0 ? "" : $" ({string.Join(", ", on.Take(4))}{(on.Count > 4 ? ", …" : "")})";
        return $"Readings under the plan's {called}: {under.Count} of {readings.Count}{where}.";
    }

    /// <summary>How the minutes planned are reckoned, and the minutes of each part as written.</summary>
    public static string MinutesReckoned(ChildFindings findings)
    {
        var (all, ill) = findings.Adherence.Parts;
        var (written, whenIll) = (Parts(all), Parts(ill));
        var apart = findings.Plan.Any(p => PlanItems.MinutesOfParts.Contains(p.Item));
        return $"Planned are the plan's minutes for each of the {findings.Adherence.UsualParts.Sum(u => u.Parts)} parts (sides, lower and upper, vibration) that sessions usually treat"
            + (apart ? "." : "; the plan sets no others for vibration, so where the team sets less a full round comes to less.")
            + (written.Length == 0 ? "" : $" Median minutes a side, as written: {written}{(whenIll.Length == 0 ? "" : $"; on illness days {whenIll}")}.");
    }

    private static string Parts(PartMinutes parts) => string.Join(", ", new[] { ("lower", parts.Lower), ("upper", parts.Upper), ("vibration", parts.Vibration) }
        .Where(p => p.Item2 is not null).Select(p => $"{p.Item1} {TimeWords.Number(p.Item2!.Value)}"));

    /// <summary>Who wrote or did the sessions, as far as the notes say.</summary>
    private static string Who(ChildFindings findings)
    {
        var writers = findings.Adherence.ByWriter;
        if (writers.Count == 0) return "Who did the sessions is not written.";
        string Sessions(AdherenceGroup g) => $"{Clip(g.Label, 30)} {g.FeedGap.Judged + g.FeedGap.Unknown}";
        return $"Sessions by who did or wrote them: {string.Join(", ", writers.Take(5).Select(Sessions))}{(writers.Count > 5 ? $", {writers.Count - 5} more" : "")}.";
    }

    public static CellContent NotDone(ChildFindings findings)
    {
        const string Head = "Written as not done: ", Middle = " with a reason, ", Tail = " without. A session that nobody wrote down is unknown, not missed.";
        return CellContent.Of($"{Head}{findings.Days.Sum(d => d.SessionsOmittedWithReason)}{Middle}{findings.Days.Sum(d => d.SessionsOmittedWithoutReason)}{Tail}")
            .By($"{Formula.Text(Head)}&SUM(Days[not done, reason written])&{Formula.Text(Middle)}&SUM(Days[not done, no reason])&{Formula.Text(Tail)}");
    }

    /// <summary>The reasons as written: the family's words stand in no formula. Null when there are none.</summary>
    public static string? Reasons(ChildFindings findings)
    {
        var reasons = findings.Adherence.Reasons;
        return reasons.Count == 0 ? null
            : "Reasons, also for sessions cut short: " + string.Join("; ", reasons.Take(4).Select(r => $"{Clip(r.Reason, 60)} ({r.Times})")) + (reasons.Count > 4 ? $"; {reasons.Count - 4} more" : "") + ".";
    }

    public static IEnumerable<CellContent> Trust(ReviewRows rows)
    {
        var findings = rows.Findings;
        var q = findings.Quality;
        var missing = findings.Span.DaysMissing;
        yield return CellContent.Of((missing.Count == 0 ? "Something is written for every care day." : $"Nothing is written for {Count(missing.Count, "care day")} ({string.Join(", ", missing.Take(6).Select(TimeWords.Day))}{(missing.Count > 6 ? ", …" : "")}): unknown, not missed.")
            + (q.ReadingsWithoutOxygen > 0 ? $" {Count(q.ReadingsWithoutOxygen, "reading")} without an oxygen flow." : "")
            + $" {q.ByKind.Sum(k => k.Approximate)} of {q.ByKind.Sum(k => k.Entries)} times are not exact." + Rounding(findings) + " " + Who(findings));
        if (q.LateEntries.Count > 0) yield return CellContent.Of(string.Join(" ", q.LateEntries.Take(2)));
        var lines = rows.Log.Lines;
        yield return CellContent.Of(
            $"{lines.Read} lines came in: {lines.InRecords} in records, {lines.NotRecords} set aside, {lines.Problems} to check, {lines.Blank} blank. Open questions to the family: {rows.Questions.Count(x => x.Item.Answer is null)}. Lines to look at: {findings.Flags.Count}.");
        yield return CellContent.Of("What this cannot show: why anything happened (with so few illnesses, order is not cause), what happened when nothing was written, and any difference of a few points between single readings.");
    }

    /// <summary>Words short enough for the front page; what is left out stands on its own sheet, and the mark says so.</summary>
    public static string Clip(string words, int most = MostCharacters)
    {
        var line = CellText.Fit(words.ReplaceLineEndings(" ").Trim());
        return line.Length <= most ? line : line[..(char.IsHighSurrogate(line[most - 1]) ? most - 1 : most)] + "… (whole on its sheet)";
    }

    private static string Count(int count, string of) => $"{count} {of}{(count == 1 ? "" : "s")}";

    private static string Rounding(ChildFindings findings) => findings.Adherence.Rounding.MaxBy(r => r.Minutes) is { } widest
        ? $" Were written times off by {widest.Minutes} minutes, {widest.FeedGapFlips} feed and {widest.InhalerGapFlips} inhaler verdicts would not be certain."
        : "";

    private static string Round(double value) => TimeWords.Number(Math.Round(value, 1));

    private static string Signed(double? value) => value is { } v ? Math.Round(v, 1).ToString("+0.#;−0.#;0", System.Globalization.CultureInfo.InvariantCulture) : "not known";
}
