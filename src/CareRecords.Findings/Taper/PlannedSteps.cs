using CareRecords.Records;
using NodaTime;

namespace CareRecords.Findings;

/// <summary>The plan's dated rows for sessions and minutes as steps within the span.</summary>
internal static class PlannedSteps
{
    public static IReadOnlyList<PlannedStep> Of(ChildRecords records)
    {
        var rows = records.Log.Plan.Rows.Where(r => r.Item is PlanItem.SessionsPerDay or PlanItem.MinutesPerArea).ToList();
        if (rows.Count == 0 || records.IsEmpty) return [];
        List<LocalDate> starts = [.. rows.Select(r => r.From is { } from && from > records.From ? from : records.From).Where(d => d <= records.To).Distinct().Order()];
        var steps = new List<PlannedStep>();
        for (var i = 0; i < starts.Count; i++)
        {
            var to = i + 1 < starts.Count ? starts[i + 1].PlusDays(-1) : records.To;
            var (sessions, minutes) = (records.Plan.Number(PlanItem.SessionsPerDay, starts[i]), records.Plan.Number(PlanItem.MinutesPerArea, starts[i]));
            if (steps.Count > 0 && steps[^1].SessionsPerDay == sessions && steps[^1].MinutesPerArea == minutes) steps[^1] = steps[^1] with { To = to };
            else steps.Add(new(starts[i], to, sessions, minutes));
        }

        return steps;
    }
}
