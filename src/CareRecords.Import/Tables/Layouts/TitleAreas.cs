using CareRecords.Records;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>Gives columns of sides the part of the chest that a title or legend names for all of them ("clapping, bottom of the lungs only").</summary>
internal static class TitleAreas
{
    /// <summary>The block with parts filled in where its headings leave them open and the words around it name just one.</summary>
    public static Block Applied(Block block, IEnumerable<string> around)
    {
        if (!block.Columns.Any(c => c.Role == Role.Area && c.Areas.Any(a => a.Area == ChestArea.Unknown && a.Technique != Technique.Vibration))) return block;
        var areas = around.Where(IsOfMinutes).SelectMany(t => AreaNames.In(t)).Select(a => a.Area).Where(a => a != ChestArea.Unknown).Distinct().ToList();
        if (areas is not [var only]) return block;
        return block with { Columns = [.. block.Columns.Select(c => c.Role == Role.Area ? c with { Areas = [.. c.Areas.Select(a => a.Area == ChestArea.Unknown && a.Technique != Technique.Vibration ? a with { Area = only } : a)] } : c)] };
    }

    private static bool IsOfMinutes(string text) =>
        Lexicon.Find(text, out _).Any(k => k.Concept is Concept.Percussion or Concept.Minutes or Concept.Session);
}
