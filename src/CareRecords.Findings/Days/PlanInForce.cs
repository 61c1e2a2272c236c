using CareRecords.Records;

namespace CareRecords.Findings;

/// <summary>The plan as understood: its rows, and the labelled starting values where it states nothing from the first day.</summary>
internal static class PlanInForce
{
    public static IReadOnlyList<PlanValueInForce> Of(ChildRecords records)
    {
        var rows = records.Log.Plan.Rows.ToLookup(r => r.Item);
        var values = new List<PlanValueInForce>();
        foreach (var item in PlanItems.All)
        {
            if (item.Default is { } start && !rows[item.Item].Any(r => r.From is null || r.From <= records.From))
                values.Add(new(item.Item, item.Name, null, start, item.Unit, true, item.DefaultSource, null));
            values.AddRange(rows[item.Item].Select(r => new PlanValueInForce(r.Item, item.Name, r.From, r.Value, item.Unit, false, "", r.Source)));
        }

        return values;
    }
}
