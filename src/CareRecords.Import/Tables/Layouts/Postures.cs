using System.Text.RegularExpressions;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>"Position: left side, back, sat up": how the child lay. It is no part of the chest and no session.</summary>
internal static partial class Postures
{
    /// <summary>The block without such a column.</summary>
    public static Block Without(Block block)
    {
        var at = block.Columns.ToList().FindIndex(c => c.Role == Role.Detail && Lexicon.Split(c.Own).Any(w => w is "position" or "positions" or "posture" or "lying"));
        if (at < 0 || !block.Rows.Any(r => r[at].Cell.Words is { } lay && Lay().IsMatch(lay))) return block;
        return block with { Columns = [.. block.Columns.Select((c, i) => i == at ? c with { Role = Role.Ignore } : c)] };
    }

    [GeneratedRegex(@"^\W*(?:on (?:his|her|the) )?(?:back|front|tummy|belly|prone|supine|upright|sat|sat up|sitting|sitting up|propped|propped up|head down|on my (?:lap|shoulder|knee))\W*$", RegexOptions.IgnoreCase)]
    private static partial Regex Lay();
}
