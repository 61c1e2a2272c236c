using CareRecords.Records;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>Gives columns of sides the part of the chest that a title or legend names for all of them ("clapping, bottom of the lungs only").</summary>
internal static class TitleAreas
{
    /// <summary>The block with parts filled in where its headings leave them open and the words around it name just one.</summary>
    public static Block Applied(Block block, IEnumerable<string> around)
    {
        block = EachSide(block, around);
        if (!block.Columns.Any(c => c.Role == Role.Area && c.Areas.Any(a => a.Area == ChestArea.Unknown && a.Technique != Technique.Vibration))) return block;
        var areas = around.Where(IsOfMinutes).SelectMany(t => AreaNames.In(t)).Select(a => a.Area).Where(a => a != ChestArea.Unknown).Distinct().ToList();
        if (areas is not [var only]) return block;
        return block with { Columns = [.. block.Columns.Select(c => c.Role == Role.Area ? c with { Areas = [.. c.Areas.Select(a => a.Area == ChestArea.Unknown && a.Technique != Technique.Vibration ? a with { Area = only } : a)] } : c)] };
    }

    // "Bases and Tops = minutes each side": the columns that name no side are of both.
    private static Block EachSide(Block block, IEnumerable<string> around)
    {
        if (!block.Columns.Any(IsOfNoSide)) return block;
        var said = around.SelectMany(t => t.Split(['.', ';', '\n'])).Where(t => SaysEachSide(t)).Select(t => Lexicon.Find(t.Contains('=', StringComparison.Ordinal) ? t[..t.IndexOf('=', StringComparison.Ordinal)] : t, out _).Select(k => k.Concept).ToHashSet()).ToList();
        return said.Count == 0 ? block : block with
        {
            Columns = [.. block.Columns.Select(c => !IsOfNoSide(c) || !said.Exists(s => Speaks(s, c)) ? c : c with { Areas = [.. c.Areas.SelectMany(a => new[] { a with { Side = Side.Left }, a with { Side = Side.Right } })] })],
        };
    }

    private static bool SaysEachSide(string text) => Lexicon.Split(text) is var words && words.Zip(words.Skip(1)).Any(p => p is ("each" or "per" or "both" or "a" or "either", "side" or "sides" or "lung" or "lungs"));

    // Of the column's own part or technique; words that name none are of all.
    private static bool Speaks(HashSet<Concept> said, ColumnMeaning column) => column.Areas.All(a => a.Technique == Technique.Vibration) ? said.Contains(Concept.Vibration)
        : column.Areas.All(a => said.Contains(a.Area switch { ChestArea.Lower => Concept.Lower, ChestArea.Upper => Concept.Upper, _ => Concept.Middle })) || (!said.Overlaps([Concept.Lower, Concept.Upper, Concept.Middle, Concept.Vibration]) && said.Overlaps([Concept.Percussion, Concept.Session, Concept.Minutes]));

    private static bool IsOfNoSide(ColumnMeaning column) => column.Role == Role.Area && column.Areas.Count > 0 && column.Areas.All(a => a.Side == Side.Unknown);

    private static bool IsOfMinutes(string text) =>
        Lexicon.Find(text, out _).Any(k => k.Concept is Concept.Percussion or Concept.Minutes or Concept.Session);
}
