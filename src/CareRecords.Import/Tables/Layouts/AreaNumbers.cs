using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>Reads minutes written one after another for parts that a heading or legend names in order: "4/4/2½/2½", "3/3/-/-".</summary>
internal static class AreaNumbers
{
    /// <summary>
    /// The areas; null when the text is no such list of numbers. Impossible numbers are told to <paramref name="refuse"/> and left out.
    /// Fewer numbers than parts are the first of them.
    /// </summary>
    public static IReadOnlyList<AreaMinutes>? Read(string text, IReadOnlyList<AreaName> order, Action<string> refuse)
    {
        if (order.Count < 2) return null;
        var parts = Split(text.Trim());
        if (parts.Count < 2 || parts.Count > order.Count || !parts.All(p => NotSaid.Is(p) || LooksLikeNumber(p))) return null;
        var areas = new List<AreaMinutes>();
        for (var i = 0; i < parts.Count; i++)
        {
            if (NotSaid.Is(parts[i])) continue;
            var minutes = MinutesReader.Read(parts[i]);
            if (minutes.TryGet(out var read)) areas.Add(new AreaMinutes(order[i].Side, order[i].Area, order[i].Technique, read.Minutes, read.High));
            else if (minutes.Outcome == Outcome.Impossible) refuse(minutes.Why ?? $"'{parts[i]}' cannot be a number of minutes.");
            else return null;
        }

        return areas;
    }

    // By the first separator that gives more than one piece; "/" before spaces, so that "2 1/2" in a list by commas stays whole.
    private static List<string> Split(string text)
    {
        foreach (var separator in new[] { '/', '\\', '|', ';', ',', '+', ' ' })
        {
            var pieces = text.Split(separator, StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
            if (pieces.Length > 1) return [.. pieces];
        }

        return [text];
    }

    private static bool LooksLikeNumber(string text) => text.Any(c => char.IsAsciiDigit(c) || c is '½' or '¼' or '¾') && text.All(c => !char.IsLetter(c) || c is 'm' or 'i' or 'n' or 's');
}
