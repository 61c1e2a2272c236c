using System.Text.RegularExpressions;
using NodaTime;

namespace CareRecords.Import.Notes;

/// <summary>Notes kept with the newest day on top: their days, and where their times run backwards their lines too, are turned round before they are joined.</summary>
internal static partial class NewestFirst
{
    private const int LeastDays = 3;

    /// <summary>Whether the days of a text run backwards.</summary>
    public static bool Is(IReadOnlyList<string> lines, IReadOnlyDictionary<int, LocalDate?> days)
    {
        var told = days.OrderBy(d => d.Key).Select(d => d.Value).OfType<LocalDate>().ToList();
        if (told.Count < LeastDays) return false;
        var (back, on) = (0, 0);
        for (var i = 1; i < told.Count; i++)
            if (told[i] < told[i - 1]) back++; else if (told[i] > told[i - 1]) on++;
        return back >= LeastDays - 1 && back > 4 * on && lines.Count > 0;
    }

    /// <summary>The lines with the oldest day first.</summary>
    public static IEnumerable<PlacedLine> Turn(IEnumerable<PlacedLine> lines)
    {
        var blocks = new List<List<PlacedLine>>();
        foreach (var line in lines)
        {
            if (blocks.Count == 0 || line.Begins is not null) blocks.Add([]);
            blocks[^1].Add(line);
        }
        blocks.Reverse();
        foreach (var block in blocks)
        {
            var begins = block[0].Begins;
            if (RunsBack(block)) block.Reverse();
            for (var i = 0; i < block.Count; i++) yield return block[i] with { Begins = i == 0 ? begins : null };
        }
    }

    // A morning written below an afternoon: times with am and pm, or of 24 hours, tell.
    private static bool RunsBack(List<PlacedLine> block)
    {
        var (back, on, last) = (0, 0, -1);
        foreach (var line in block)
        {
            if (FirstTime().Match(line.Words) is not { Success: true } match) continue;
            var minutes = int.Parse(match.Groups[1].ValueSpan, System.Globalization.CultureInfo.InvariantCulture) * 60 + (match.Groups[2].Success ? int.Parse(match.Groups[2].ValueSpan, System.Globalization.CultureInfo.InvariantCulture) : 0);
            if (last >= 0 && minutes != last) { if (minutes < last) back++; else on++; }
            last = minutes;
        }
        // Within a half of the day the hours fall line by line; from one half to the other they leap once.
        return back > on;
    }

    [GeneratedRegex(@"^\W*(\d{1,2})[:.]?(\d{2})?\b", RegexOptions.CultureInvariant)]
    private static partial Regex FirstTime();
}
