using CareRecords.Import.Accounting;
using CareRecords.Import.Merging;
using CareRecords.Import.Notes;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import;

/// <summary>Puts what the sources gave into one account: zone, plan, clock changes, the same event written twice, questions, the count.</summary>
internal static class LogBuilder
{
    /// <summary>The account.</summary>
    public static CareLog Build(IReadOnlyList<Gathered> parts, SourceContext context, ImportOptions options)
    {
        var lastReview = LastReview(parts);
        EarlierReviews.Settle(parts);
        var (plan, planProblems) = PlanBuilder.Build(parts.SelectMany(p => p.Plan));
        var (zone, zoneFrom, zoneProblem) = Zone(plan, options);
        var withdrawn = new Withdrawals(parts);
        withdrawn.Refuse(ClockChanges.Skipped(withdrawn.Entries, zone));
        withdrawn.KeepDates(options.From, options.To);
        var merged = EntryMerger.Merge(withdrawn.Entries, plan, context.Answers);
        var twice = AreasTwice.Find(merged.Entries, context.Answers);
        ImportProblem[] more = [.. planProblems, .. zoneProblem is null ? [] : new[] { zoneProblem }, .. withdrawn.Problems, .. merged.Problems, .. twice.Problems];
        List<ImportProblem> problems = [.. parts.SelectMany(p => p.Problems), .. more];
        var wording = new Dictionary<string, AskedQuestion>();
        foreach (var (name, asked) in parts.SelectMany(p => p.Questions).Concat(merged.Questions).Concat(twice.Questions)) wording.TryAdd(name, asked);
        return new CareLog
        {
            Zone = zone.Id,
            ZoneFrom = zoneFrom,
            Entries = merged.Entries,
            Plan = plan,
            Omitted = [.. parts.SelectMany(p => p.Omitted).OrderBy(o => o.When.Stated)],
            FamilyQuestions = [.. parts.SelectMany(p => p.FamilyQuestions)],
            NotRecords = [.. parts.SelectMany(p => p.SetAside), .. withdrawn.SetAside],
            Problems = problems,
            Questions = QuestionGroups.Build(problems, wording, context.Answers),
            Merged = merged.Merged,
            Words = [.. context.Words.All.Select(w => new ExplainedWord(w.Word, w.Means))],
            LastReview = lastReview,
            Corrections = [.. parts.SelectMany(p => p.Corrections)],
            Lines = parts.Aggregate(new LineCount(0, 0, 0, 0, 0), (sum, part) => sum + part.Ledger.Total()),
        };
    }

    /// <summary>The review that reaches furthest; asked before its rows and their sources become one.</summary>
    private static EarlierReview? LastReview(IReadOnlyList<Gathered> parts) =>
        parts.Where(p => p.IsReview).SelectMany(p => p.Entries.Except(p.Mended).Select(e => new EarlierReview(p.File, e.When.Stated))).MaxBy(r => r.LastEntry);

    private static (DateTimeZone Zone, string From, ImportProblem? Problem) Zone(CarePlan plan, ImportOptions options)
    {
        var row = plan.Rows.LastOrDefault(r => r.Item == PlanItem.TimeZone);
        if (options.Zone is { } option)
        {
            var problem = row is { Source: { } source } && row.Value != option
                ? new ImportProblem(source, $"The plan names the zone {row.Value}, the option --zone names {option}. The option was used.", "Leave the option out, or correct the plan.", ProblemSeverity.Ask)
                : null;
            return (Importer.CheckZone(option, "--zone"), "the option --zone", problem);
        }

        return row is not null
            ? (Importer.CheckZone(row.Value, "the plan"), "the plan", null)
            : (Importer.CheckZone(options.MachineZone, "this computer"), "this computer", null);
    }
}
