using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>Reads headings in the family's own words ("blue one" over puffs).</summary>
internal static class FamilyHeadings
{
    /// <summary>The block with such columns named by what the words mean.</summary>
    public static Block Named(Block block, FamilyWords words) =>
        words.All.Count == 0 ? block : block with { Columns = [.. block.Columns.Select(c => Named(c, words))] };

    private static ColumnMeaning Named(ColumnMeaning column, FamilyWords words)
    {
        if (column.Heading.Length == 0 || column.Medicine is not null) return column;
        // "Blue one at": the time of what the family calls so.
        if (column.Role is Role.Time or Role.Start && column.Group == 0 && MedicineName.In(column.Own) is var bare && bare != column.Own.Trim() && words.MeaningOf(bare) is { } explained && HeadingReader.Read(explained) is { Role: Role.Dose } dose)
            return dose with { Heading = column.Heading, Own = column.Own, Over = column.Over, Half = column.Half, Part = column.Part, MedicineWords = bare };
        // "Chest = tapping, 3 mins each lower and 2 mins each upper unless I write different", over times.
        if (column is { Role: Role.Session, EachSession.Count: 0 } && WordsOf(column.Own).Select(words.MeaningOf).FirstOrDefault(m => m is not null) is { } every && AreasReader.Read(every.Split(" unless ")[0].Replace("each:", "each", StringComparison.OrdinalIgnoreCase), FamilyWords.None) is { Outcome: Outcome.Certain, Value.Areas: { Count: > 1 } areas } && areas.All(a => a.Minutes is not null))
            return column with { EachSession = areas };
        // "shake low", where shaking is explained as vibrations, "minutes on each lower side".
        if (column is { Role: Role.Area } && column.Own.Split(' ').Select(words.MeaningOf).FirstOrDefault(m => m is not null) is { } how && Lexicon.Find(how, out _).Select(k => k.Concept).ToHashSet() is var said && said.Contains(Concept.Vibration) && !said.Contains(Concept.Percussion))
        {
            var bothSides = said.Contains(Concept.Both) || how.Contains("each", StringComparison.OrdinalIgnoreCase) && said.Contains(Concept.Side);
            return column with { Areas = [.. column.Areas.Select(a => a with { Technique = Technique.Vibration }).SelectMany(a => bothSides && a.Side == Side.Unknown ? new[] { a with { Side = Side.Left }, a with { Side = Side.Right } } : [a])] };
        }

        if (column.IsKnown && column.Role is not (Role.Amount or Role.Dose)) return column;
        foreach (var text in new[] { column.Own, column.Over, column.Heading, MedicineName.In(column.Own) })
        {
            if (text.Length == 0 || words.MeaningOf(text) is not { } means) continue;
            var meant = HeadingReader.Read(means);
            if (!meant.IsKnown) continue;
            if (column.Role == Role.Amount && meant.Role != Role.Dose) continue;
            return meant with { Heading = column.Heading, Own = column.Own, Over = column.Over, Group = column.Group, Half = column.Half, Part = column.Part, At = column.At ?? meant.At, DefaultAmount = meant.DefaultAmount ?? column.DefaultAmount, MedicineWords = meant.Role == Role.Dose ? text : null };
        }

        return column;
    }

    // "chest" of "am chest", "Chest 7am".
    private static IEnumerable<string> WordsOf(string heading) => Lexicon.Split(heading) is { Count: > 0 } words ? [words[^1], .. words.Where(w => Lexicon.Find(w, out _).Any(k => k.Concept is Concept.Session or Concept.Percussion))] : [heading];
}
