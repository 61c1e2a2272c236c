using CareRecords.Import.Reading;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>Reads the part of the day that a cell beside the times of its row names ("AM", "mid", "evening").</summary>
internal static class PartOfRow
{
    /// <summary>The part, in the words of the notes; null when the cell names none.</summary>
    public static string? Read(string text) => text.Trim().TrimEnd('.', ':').ToLowerInvariant() switch
    {
        "am" or "a.m" or "morning" or "morn" or "mornings" or "early" or "breakfast" or "early morning" or "waking" or "wake" or "on waking" or "wake up" or "wakeup" or "waking up" or "first thing" or "before school" or "at breakfast" or "breakfast time" => "morning",
        "mid" or "midday" or "mid day" or "noon" or "lunch" or "lunchtime" or "lunch time" or "noontime" or "middle" or "at lunch" => "midday",
        "afternoon" or "aft" or "arvo" or "after school" or "after nap" => "afternoon",
        "pm" or "p.m" or "evening" or "eve" or "teatime" or "tea" or "evenings" or "bed" or "bedtime" or "bed time" or "before bed" or "at bedtime" or "supper" or "dinner" or "tea time" or "dinner time" or "dinnertime" or "suppertime" => "evening",
        "night" or "nite" or "overnight" or "late" => "night",
        _ => null,
    };

    /// <summary>The part named by the first words of a label ("before bed", "morning (1)"); null when it begins with none.</summary>
    public static string? Begins(string text)
    {
        var words = text.Split([' ', '(', ')', ',', '/', '-'], StringSplitOptions.RemoveEmptyEntries);
        return words.Length == 0 ? null : (words.Length > 1 ? Read(words[0] + " " + words[1]) : null) ?? Read(words[0]);
    }

    /// <summary>The part of the day of a meal that heads a group of columns; null for other words.</summary>
    public static string? OfMeal(string text) => text.Trim().ToLowerInvariant() switch
    {
        "breakfast" => "morning",
        "lunch" => "midday",
        "tea" or "dinner" or "supper" => "evening",
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
