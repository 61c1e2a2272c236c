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
    /// <param name="text">The cell's words.</param>
    /// <param name="order">The parts, in the heading's order.</param>
    /// <param name="refuse">Told of an impossible number.</param>
    /// <param name="eachSide">Whether the heading says its numbers of each side: as many numbers as areas are then of both sides of each.</param>
    public static IReadOnlyList<AreaMinutes>? Read(string text, IReadOnlyList<AreaName> order, Action<string> refuse, bool eachSide = false)
    {
        if (order.Count < 2) return null;
        var parts = Split(text.Trim());
        if (parts.Count < 2 || parts.Count > order.Count || !parts.All(p => NotSaid.Is(p) || LooksLikeNumber(p))) return null;
        var places = order.Select(a => a.Area).Distinct().ToList();
        var dealt = eachSide && parts.Count < order.Count && parts.Count == places.Count ? order.Select(a => (Place: a, Part: parts[places.IndexOf(a.Area)])) : order.Zip(parts, (place, part) => (Place: place, Part: part));
        var areas = new List<AreaMinutes>();
        foreach (var (place, part) in dealt)
        {
            if (NotSaid.Is(part)) continue;
            var minutes = MinutesReader.Read(part);
            if (minutes.TryGet(out var read)) areas.Add(new AreaMinutes(place.Side, place.Area, place.Technique, read.Minutes, read.High));
            else if (minutes.Outcome == Outcome.Impossible) refuse(minutes.Why ?? $"'{part}' cannot be a number of minutes.");
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
