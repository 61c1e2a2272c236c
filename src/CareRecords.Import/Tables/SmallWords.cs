using System.Collections.Frozen;
using CareRecords.Records;

namespace CareRecords.Import.Tables;

/// <summary>Cells with one of a few words: yes or no, the phase of a check, the route of a feed.</summary>
internal static class SmallWords
{
    private static readonly FrozenDictionary<string, bool> YesNo = new Dictionary<string, bool>
    {
        ["yes"] = true,
        ["y"] = true,
        ["true"] = true,
        ["1"] = true,
        ["x"] = true,
        ["✓"] = true,
        ["✔"] = true,
        ["done"] = true,
        ["√"] = true,
        ["☑"] = true,
        ["✅"] = true,
        ["tick"] = true,
        ["given"] = true,
        ["yep"] = true,
        ["yeah"] = true,
        ["no"] = false,
        ["n"] = false,
        ["false"] = false,
        ["0"] = false,
        ["none"] = false,
        ["✗"] = false,
        ["✘"] = false,
        ["❌"] = false,
        ["☐"] = false,
        ["nope"] = false,
        ["not given"] = false,
        ["-"] = false,
    }.ToFrozenDictionary();

    private static readonly FrozenDictionary<string, CheckPhase> Phases = new Dictionary<string, CheckPhase>
    {
        ["before"] = CheckPhase.Before,
        ["pre"] = CheckPhase.Before,
        ["b4"] = CheckPhase.Before,
        ["b/f"] = CheckPhase.Before,
        ["bef"] = CheckPhase.Before,
        ["prior"] = CheckPhase.Before,
        ["during"] = CheckPhase.During,
        ["mid"] = CheckPhase.During,
        ["after"] = CheckPhase.After,
        ["post"] = CheckPhase.After,
        ["aft"] = CheckPhase.After,
        ["a/f"] = CheckPhase.After,
        ["none"] = CheckPhase.None,
        ["rest"] = CheckPhase.None,
        ["at rest"] = CheckPhase.None,
        ["resting"] = CheckPhase.None,
    }.ToFrozenDictionary();

    private static readonly FrozenDictionary<string, FeedRoute> Routes = new Dictionary<string, FeedRoute>
    {
        ["oral"] = FeedRoute.Oral,
        ["mouth"] = FeedRoute.Oral,
        ["by mouth"] = FeedRoute.Oral,
        ["po"] = FeedRoute.Oral,
        ["bottle"] = FeedRoute.Oral,
        ["breast"] = FeedRoute.Oral,
        ["breastfeed"] = FeedRoute.Oral,
        ["cup"] = FeedRoute.Oral,
        ["spoon"] = FeedRoute.Oral,
        ["cup and spoon"] = FeedRoute.Oral,
        ["solids"] = FeedRoute.Oral,
        ["meal"] = FeedRoute.Oral,
        ["ate"] = FeedRoute.Oral,
        ["drank"] = FeedRoute.Oral,
        ["tube"] = FeedRoute.Tube,
        ["ng"] = FeedRoute.Tube,
        ["ngt"] = FeedRoute.Tube,
        ["ng tube"] = FeedRoute.Tube,
        ["peg"] = FeedRoute.Tube,
        ["gt"] = FeedRoute.Tube,
        ["g-tube"] = FeedRoute.Tube,
        ["g tube"] = FeedRoute.Tube,
        ["gtube"] = FeedRoute.Tube,
        ["button"] = FeedRoute.Tube,
        ["gastrostomy"] = FeedRoute.Tube,
        ["nj"] = FeedRoute.Tube,
        ["j-tube"] = FeedRoute.Tube,
        ["jej"] = FeedRoute.Tube,
        ["pump"] = FeedRoute.PumpedTube,
        ["pump tube"] = FeedRoute.PumpedTube,
        ["tube pump"] = FeedRoute.PumpedTube,
        ["continuous"] = FeedRoute.PumpedTube,
        ["pumped tube"] = FeedRoute.PumpedTube,
        ["overnight pump"] = FeedRoute.PumpedTube,
        ["bolus"] = FeedRoute.BolusTube,
        ["bolus tube"] = FeedRoute.BolusTube,
        ["tube bolus"] = FeedRoute.BolusTube,
        ["gravity"] = FeedRoute.BolusTube,
        ["syringe"] = FeedRoute.BolusTube,
        ["unknown"] = FeedRoute.Unknown,
        ["not said"] = FeedRoute.Unknown,
    }.ToFrozenDictionary();

    /// <summary>Yes or no; null when it is neither.</summary>
    public static bool? ReadYesNo(string text) => YesNo.TryGetValue(text.Trim().ToLowerInvariant(), out var yes) ? yes : null;

    /// <summary>The phase of a check; null when the words name none.</summary>
    public static CheckPhase? ReadPhase(string text) => Phases.TryGetValue(text.Trim().TrimEnd('.').ToLowerInvariant(), out var phase) ? phase : null;

    /// <summary>The route of a feed; null when the words name none.</summary>
    public static FeedRoute? ReadRoute(string text) => Routes.TryGetValue(text.Trim().TrimEnd('.').ToLowerInvariant(), out var route) ? route : null;
}
