using CareRecords.Import.Reading;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>Reads the part of the day that a cell beside the times of its row names ("AM", "mid", "evening").</summary>
internal static class PartOfRow
{
    /// <summary>The part, in the words of the notes; null when the cell names none.</summary>
    public static string? Read(string text) => text.Trim().TrimEnd('.', ':').ToLowerInvariant() switch
    {
        "am" or "a.m" or "morning" or "morn" or "mornings" or "early" or "breakfast" or "early morning" or "waking" or "wake" or "on waking" => "morning",
        "mid" or "midday" or "mid day" or "noon" or "lunch" or "lunchtime" or "lunch time" => "midday",
        "afternoon" or "aft" or "arvo" => "afternoon",
        "pm" or "p.m" or "evening" or "eve" or "teatime" or "tea" or "evenings" or "bed" or "bedtime" => "evening",
        "night" or "nite" or "overnight" or "late" => "night",
        _ => null,
    };

    /// <summary>The meal that a heading names; null when it names none.</summary>
    public static string? Meal(string heading) =>
        Lexicon.Split(heading).FirstOrDefault(w => w is "breakfast" or "lunch" or "dinner" or "tea" or "supper" or "bedtime");

    /// <summary>The half of the day that times of such a row lie in; unknown for midday, whose times lie on both sides of noon.</summary>
    public static HalfOfDay Half(string? part) => part switch
    {
        "morning" => HalfOfDay.Am,
        "afternoon" or "evening" => HalfOfDay.Pm,
        _ => HalfOfDay.Unknown,
    };
}
