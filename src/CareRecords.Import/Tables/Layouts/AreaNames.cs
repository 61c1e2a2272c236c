using CareRecords.Records;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>Reads the parts of the chest that a heading or legend names, in the order in which it names them.</summary>
internal static partial class AreaNames
{
    [System.Text.RegularExpressions.GeneratedRegex(@"[,;(-]?\s*\b(?:lying|laying|lies|lie|sitting|sat up|propped|prone|supine|head down|tilted|tipped|turned)\b.*$|[,;(-]?\s*\bon (?:his|her|the) (?:back|tummy|front|belly)\b.*$", System.Text.RegularExpressions.RegexOptions.IgnoreCase)]
    private static partial System.Text.RegularExpressions.Regex Posture();

    [System.Text.RegularExpressions.GeneratedRegex(@"\b(?:(?:L|left)\s*(?:[+&]|and)\s*(?:R|right)|(?:R|right)\s*(?:[+&]|and)\s*(?:L|left))\b(?=\s+(?:low|bottom|base|up|top|mid|apic)|\W*$)", System.Text.RegularExpressions.RegexOptions.IgnoreCase)]
    private static partial System.Text.RegularExpressions.Regex BothSides();

    // "Mins each base": of the left one and of the right one.
    [System.Text.RegularExpressions.GeneratedRegex(@"\b(?:each|per|both)\s+(?:lung\s+)?(bases?|bottoms?|tops?|apex|apices)\b", System.Text.RegularExpressions.RegexOptions.IgnoreCase)]
    private static partial System.Text.RegularExpressions.Regex EachOfTwo();

    /// <summary>
    /// "L low" is one part; "lower L/R" two; "LL/RL/LU/RU" four. A side alone is a part with its area not said. Empty when no side is named
    /// and no area either.
    /// </summary>
    public static IReadOnlyList<AreaName> In(string text)
    {
        var names = new List<AreaName>();
        // How the child lies says nothing of the part: "Left lower ribs, lying on the right side".
        text = Posture().Replace(text, "");
        // "L+R lower", "lower left and right": both sides of it.
        text = EachOfTwo().Replace(BothSides().Replace(text, "both"), "both $1");
        foreach (var piece in text.Split(['/', ',', ';', '|', ':', '(', ')', '&', '+', '\n', '>', '→']))
            names.AddRange(InPiece(piece));
        return Complete(names);
    }

    /// <summary>The same for a heading that stands under another, which says what it leaves open ("L" under "lower", "each side" under "shaking").</summary>
    public static IReadOnlyList<AreaName> Under(string text, string? over)
    {
        var own = In(text);
        if (over is null) return own;
        var around = In(over);
        if (own.Count == 0) return around;
        var (side, area, technique) = (One(around.Select(a => a.Side)), One(around.Select(a => a.Area)), One(around.Select(a => a.Technique)));
        if (technique == Technique.Unknown && Lexicon.Find(over, out _).Any(k => k.Concept == Concept.Percussion)) technique = Technique.Percussion;
        return [.. own.Select(a => new AreaName(a.Side == Side.Unknown ? side : a.Side, a.Area == ChestArea.Unknown ? area : a.Area, a.Technique == Technique.Unknown ? technique : a.Technique))];
    }

    // The one value that is said; the default when none is, or more than one.
    private static T One<T>(IEnumerable<T> said) where T : struct, Enum =>
        said.Where(s => !s.Equals(default(T))).Distinct().ToList() is [var only] ? only : default;

    /// <summary>What one word says of side and area, for readers that go word by word; null when it says nothing.</summary>
    private static IEnumerable<AreaName> InPiece(string piece)
    {
        var (side, area, technique) = (Side.Unknown, ChestArea.Unknown, Technique.Unknown);
        var (any, both) = (false, false);
        foreach (var known in Lexicon.Find(piece, out _))
        {
            // "left lower right lower": one after another, without a stroke between them.
            if (SideOf(known.Concept) is { } next && side != Side.Unknown && next != side) yield return new AreaName(side, area, technique);
            switch (known.Concept)
            {
                case Concept.Left: (side, any) = (Side.Left, true); break;
                case Concept.Right: (side, any) = (Side.Right, true); break;
                case Concept.Lower: (area, any) = (ChestArea.Lower, true); break;
                case Concept.Upper: (area, any) = (ChestArea.Upper, true); break;
                case Concept.Middle: (area, any) = (ChestArea.Middle, true); break;
                case Concept.LeftLower: (side, area, any) = (Side.Left, ChestArea.Lower, true); break;
                case Concept.LeftUpper: (side, area, any) = (Side.Left, ChestArea.Upper, true); break;
                case Concept.LeftMiddle: (side, area, any) = (Side.Left, ChestArea.Middle, true); break;
                case Concept.RightLower: (side, area, any) = (Side.Right, ChestArea.Lower, true); break;
                case Concept.RightUpper: (side, area, any) = (Side.Right, ChestArea.Upper, true); break;
                case Concept.RightMiddle: (side, area, any) = (Side.Right, ChestArea.Middle, true); break;
                case Concept.Both: (both, any) = (true, true); break;
                case Concept.Vibration: (technique, any) = (Technique.Vibration, true); break;
                case Concept.Percussion when technique == Technique.Unknown: technique = Technique.Percussion; break;
            }
        }

        if (!any) yield break;
        if (!both || side != Side.Unknown)
        {
            yield return new AreaName(side, area, technique);
            yield break;
        }

        yield return new AreaName(Side.Left, area, technique);
        yield return new AreaName(Side.Right, area, technique);
    }

    private static Side? SideOf(Concept concept) => concept switch
    {
        Concept.Left or Concept.LeftLower or Concept.LeftUpper or Concept.LeftMiddle => Side.Left,
        Concept.Right or Concept.RightLower or Concept.RightUpper or Concept.RightMiddle => Side.Right,
        _ => null,
    };

    // "lower L/R": the area said once holds for both sides. "L lower/upper": the side said once holds for both areas.
    private static List<AreaName> Complete(List<AreaName> names)
    {
        // "Shakes (vibration), each side": said twice.
        for (var i = names.Count - 1; i > 0; i--)
            if (names[i] == names[i - 1] && names[i] is { Side: Side.Unknown, Area: ChestArea.Unknown }) names.RemoveAt(i);
        // "L/upper" is one part: the side of it and the area.
        if (names is [{ Side: not Side.Unknown, Area: ChestArea.Unknown } side, { Side: Side.Unknown, Area: not ChestArea.Unknown } area]) return [area with { Side = side.Side, Technique = area.Technique == Technique.Unknown ? side.Technique : area.Technique }];
        if (names is [{ Side: Side.Unknown, Area: not ChestArea.Unknown } alone, { Side: not Side.Unknown, Area: ChestArea.Unknown } of]) return [alone with { Side = of.Side, Technique = alone.Technique == Technique.Unknown ? of.Technique : alone.Technique }];
        // "Lower both sides (percussion, min each side)": the sides said twice.
        if (names.Count > 2 && names[^2] is { Side: Side.Left, Area: ChestArea.Unknown, Technique: not Technique.Vibration } && names[^1] is { Side: Side.Right, Area: ChestArea.Unknown, Technique: not Technique.Vibration } last && names.SkipLast(2).All(n => n is { Side: not Side.Unknown, Area: not ChestArea.Unknown }))
            return [.. names.SkipLast(2).Select(n => n.Technique == Technique.Unknown ? n with { Technique = last.Technique } : n)];
        // "Lowers (mins each side)": the area once, and both sides of it.
        if (names.Count > 2 && names.TakeLast(2).Select(n => n with { Technique = Technique.Unknown }).SequenceEqual([new(Side.Left, ChestArea.Unknown, Technique.Unknown), new(Side.Right, ChestArea.Unknown, Technique.Unknown)]) && names.SkipLast(2).All(n => n is { Side: Side.Unknown, Area: not ChestArea.Unknown }))
            return [.. names.SkipLast(2).SelectMany(n => new[] { n with { Side = Side.Left }, n with { Side = Side.Right } })];
        // "mins each side lower / upper": both sides of each area.
        if (names is [{ Side: Side.Left, Area: not ChestArea.Unknown } first, { Side: Side.Right } second, .. { Count: > 0 } others] && first with { Side = Side.Right } == second && others.All(o => o is { Side: Side.Unknown, Area: not ChestArea.Unknown }))
            return [first, second, .. others.SelectMany(o => new[] { o with { Side = Side.Left, Technique = first.Technique }, o with { Side = Side.Right, Technique = first.Technique } })];
        // "Shaking R/L": one technique said first is that of both.
        if (names.Count > 1 && names[0] is { Area: ChestArea.Unknown, Technique: not Technique.Unknown } && names.Skip(1).All(n => n is { Technique: Technique.Unknown, Area: ChestArea.Unknown })) names = [.. names.Skip(names[0].Side == Side.Unknown ? 1 : 0).Select(n => n with { Technique = names[0].Technique })];
        for (var i = 1; i < names.Count; i++)
        {
            var (before, here) = (names[i - 1], names[i]);
            if (here.Area == ChestArea.Unknown && here.Side != Side.Unknown && before.Area != ChestArea.Unknown && here.Technique == Technique.Unknown)
                names[i] = here with { Area = before.Area, Technique = before.Technique };
            else if (here.Side == Side.Unknown && before.Side != Side.Unknown)
                names[i] = here with { Side = before.Side };
        }

        return names;
    }
}
