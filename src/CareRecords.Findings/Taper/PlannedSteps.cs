using CareRecords.Records;
using NodaTime;

namespace CareRecords.Findings;

/// <summary>The plan's dated rows for sessions and minutes as steps within the span.</summary>
internal static class PlannedSteps
{
    public static IReadOnlyList<PlannedStep> Of(ChildRecords records, ChestMinutes chest)
    {
        var rows = records.Log.Plan.Rows.Where(r => r.Item is PlanItem.SessionsPerDay or PlanItem.MinutesPerArea || PlanItems.MinutesOfParts.Contains(r.Item)).ToList();
        if (rows.Count == 0 || records.IsEmpty) return [];
        List<LocalDate> starts = [.. rows.Select(r => r.From is { } from && from > records.From ? from : records.From).Where(d => d <= records.To).Distinct().Order()];
        var steps = new List<PlannedStep>();
        for (var i = 0; i < starts.Count; i++)
        {
            var to = i + 1 < starts.Count ? starts[i + 1].PlusDays(-1) : records.To;
            var step = new PlannedStep(starts[i], to, records.Plan.Number(PlanItem.SessionsPerDay, starts[i]), chest.PlannedPerArea(starts[i])) { Parts = ChestMinutes.PlannedParts(records.Plan, starts[i]) };
            if (steps.Count > 0 && step with { From = steps[^1].From, To = steps[^1].To } == steps[^1]) steps[^1] = steps[^1] with { To = to };
            else steps.Add(step);
        }

        return steps;
    }
}
