using System.Text.RegularExpressions;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>Short days of the week in French and German, which are other words elsewhere: "mar. 4 nov.", "sam. 8 nov.", "Mo 3.11.2025". They are known by the date behind them.</summary>
internal static partial class ShortWeekdays
{
    /// <summary>The words with such a day in English; as they are where they begin with none.</summary>
    public static string InEnglish(string text) => text.Length > 0 && char.IsLetter(text[0]) ? Before().Replace(text, m => Name(m.Groups[1].Value.ToLowerInvariant()) + " ") : text;

    private static string Name(string weekday) => weekday switch
    {
        "lun" or "mo" => "Mon",
        "mar" or "di" => "Tue",
        "mer" or "mi" => "Wed",
        "jeu" or "do" => "Thu",
        "ven" or "fr" => "Fri",
        "sam" or "sa" => "Sat",
        _ => "Sun",
    };

    [GeneratedRegex(@"^(?:(lun|mar|mer|jeu|ven|sam|dim)\.\s+(?=\d{1,2}\s)|(?<1>mo|di|mi|do|fr|sa|so)\.?,?\s+(?=\d{1,2}\.\s?\d{1,2}\.))", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Before();
}
