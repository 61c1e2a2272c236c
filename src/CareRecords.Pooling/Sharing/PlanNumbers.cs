using System.Globalization;
using CareRecords.Findings;

namespace CareRecords.Pooling;

/// <summary>Takes the numbers out of a plan, by the items' written names; words stay behind.</summary>
internal static class PlanNumbers
{
    /// <summary>The written names, as in a plan table, of the items that are shared.</summary>
    public static IReadOnlyDictionary<string, SharedPlanItem> ByName { get; } = new Dictionary<string, SharedPlanItem>(StringComparer.OrdinalIgnoreCase)
    {
        ["feed gap minutes"] = SharedPlanItem.FeedGapMinutes,
        ["inhaler gap minutes"] = SharedPlanItem.InhalerGapMinutes,
        ["inhaler window minutes"] = SharedPlanItem.InhalerWindowMinutes,
        ["sessions per day"] = SharedPlanItem.SessionsPerDay,
        ["minutes per area"] = SharedPlanItem.MinutesPerArea,
        ["minutes lower"] = SharedPlanItem.MinutesLower,
        ["minutes upper"] = SharedPlanItem.MinutesUpper,
        ["minutes vibration"] = SharedPlanItem.MinutesVibration,
        ["target saturation low"] = SharedPlanItem.TargetSaturationLow,
        ["target saturation high"] = SharedPlanItem.TargetSaturationHigh,
        ["stop saturation"] = SharedPlanItem.StopSaturation,
        ["usual oxygen"] = SharedPlanItem.UsualOxygen,
        ["usual feed minutes"] = SharedPlanItem.UsualFeedMinutes,
        ["same-event minutes"] = SharedPlanItem.SameEventMinutes,
        ["target share kept"] = SharedPlanItem.TargetShareKept,
    };

    /// <summary>The value as numbers; null when the item is not shared or its value is not a number or a range of two.</summary>
    public static SharedPlanValue? Read(PlanValueInForce value, DayNumbers days)
    {
        if (!ByName.TryGetValue(value.Name, out var item)) return null;
        var ends = value.Value.Replace("to", "-", StringComparison.OrdinalIgnoreCase).Replace('–', '-').Replace("%", "", StringComparison.Ordinal).Split('-', StringSplitOptions.TrimEntries);
        if (ends.Length > 2 || Number(ends[0]) is not { } low || Number(ends[^1]) is not { } high || high < low) return null;
        return new(item, value.From is { } from ? days.Of(from) : null, low, high, value.IsDefault);
    }

    /// <summary>The last value of an item in words, to be read by a reader of closed lists; null when the plan has none.</summary>
    public static string? Words(IReadOnlyList<PlanValueInForce> plan, string name) =>
        plan.LastOrDefault(p => string.Equals(p.Name, name, StringComparison.OrdinalIgnoreCase))?.Value;

    private static double? Number(string text) =>
        double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) && number < 10_000 ? Math.Round(number, 3) : null;
}
