using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import;

/// <summary>Puts the plan rows of all sources together.</summary>
internal static class PlanBuilder
{
    /// <summary>The plan: undated rows first, then by date. Rows that state different values for one item and date are left out and asked about.</summary>
    public static (CarePlan Plan, IReadOnlyList<ImportProblem> Problems) Build(IEnumerable<PlanRow> rows)
    {
        var kept = new List<PlanRow>();
        var problems = new List<ImportProblem>();
        foreach (var same in rows.GroupBy(r => (r.Item, r.From)))
        {
            var distinct = same.DistinctBy(r => (r.Low, r.High, Text: r.Low is null ? r.Value.Trim().ToUpperInvariant() : null)).ToList();
            if (distinct.Count == 1) kept.Add(distinct[0]);
            else problems.AddRange(distinct.Select(r => Disagreement(r, distinct)));
        }

        return (new CarePlan { Rows = [.. kept.OrderBy(r => r.From ?? LocalDate.MinIsoValue).ThenBy(r => r.Item)] }, problems);
    }

    private static ImportProblem Disagreement(PlanRow row, List<PlanRow> all)
    {
        var name = PlanItems.Describe(row.Item).Name;
        var from = row.From is { } date ? "from " + NodaTime.Text.LocalDatePattern.Iso.Format(date) : "without a date";
        var others = string.Join(" and ", all.Where(o => o != row).Select(o => $"'{o.Value}' ({o.Source?.Place ?? "the option"})"));
        return new ImportProblem(row.Source ?? new SourceLine("", null, null, null, row.Value),
            $"Two plans disagree: {name} {from} is '{row.Value}' here and {others} elsewhere. None of them is used.",
            "Delete the rows that do not hold, or give them the dates from which they hold.", ProblemSeverity.Ask, $"plan:{name}:{from}");
    }
}
