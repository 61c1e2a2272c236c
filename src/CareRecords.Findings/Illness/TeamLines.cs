using System.Text.RegularExpressions;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Findings;

/// <summary>
/// Lines that hold no record and name somebody of the team. They are not understood, only shown, on the care day of the record written last
/// before them in the same text.
/// </summary>
internal static partial class TeamLines
{
    public static IEnumerable<(SourceLine Line, LocalDate Day, LocalDateTime After)> Of(ChildRecords records)
    {
        var named = records.Log.NotRecords.Select(n => n.Source).Where(s => s.Line is not null && Team().IsMatch(s.Text)).ToList();
        if (named.Count == 0) yield break;
        var byFile = records.Entries.SelectMany(e => e.Sources.Where(s => s.Line is not null).Select(s => (s.File, Line: s.Line!.Value, Entry: e)))
            .GroupBy(s => s.File).ToDictionary(g => g.Key, g => g.OrderBy(s => s.Line).ToList());
        foreach (var line in named)
        {
            var before = byFile.GetValueOrDefault(line.File)?.LastOrDefault(s => s.Line < line.Line).Entry;
            if (before is not null) yield return (line, records.DayOf(before), before.When.Stated);
        }
    }

    [GeneratedRegex(@"\b(nurse|doctor|dr|gp|consultant|hospital|clinic|ward|paediatrician|pediatrician|a&e|er|ambulance|out of hours)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Team();
}
