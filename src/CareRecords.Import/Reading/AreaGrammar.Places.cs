using CareRecords.Records;

namespace CareRecords.Import.Reading;

// Sides, areas, techniques and minutes as single terms, and a side and area written together.
internal static partial class AreaGrammar
{
    private static bool IsPlace(Term term) => term.Is(Sense.SideArea) || term.Is(Sense.Side) || term.Is(Sense.Area) || IsSideLetter(term);

    private static bool IsSideLetter(Term term) => term.Kind == TermKind.Word && term.Text is "l" or "r" or "le" or "ri";

    /// <summary>A side and area written together, in either order, at <paramref name="i"/>; leaves <paramref name="i"/> on the last term taken.</summary>
    private static List<Place>? PlaceOf(IReadOnlyList<Term> terms, ref int i)
    {
        if (terms[i].ValueOf(Sense.SideArea) is { } pair)
        {
            var words = pair.Split(' ');
            return [new Place(words[0] == "left" ? Side.Left : Side.Right, AreaOf(words[1]), false, true)];
        }
        if (!IsPlace(terms[i])) return null;
        var sides = new List<Side>();
        var areas = new List<ChestArea>();
        var (at, last) = (i, i);
        var areaFirst = terms[i].Is(Sense.Area) && !terms[i].Is(Sense.Side);
        while (at < terms.Count)
        {
            var term = terms[at];
            if (SideOf(term) is { } side)
            {
                if (areas.Count > 0 && sides.Count > 0) break;
                // "L lower 3, R lower 3": a side after a whole place starts the next.
                if (areas.Count > 0 && !areaFirst) break;
                sides.Add(side);
                last = at++;
            }
            else if (term.ValueOf(Sense.Area) is { } area)
            {
                // "lower L lower R": after an area and its side the next place begins.
                if (areaFirst && sides.Count > 0) break;
                // "left lower upper"? Only "lower and upper" joins areas.
                areas.Add(AreaOf(area));
                last = at++;
                if (sides.Count > 0 && !areaFirst && !(at < terms.Count && Joins(terms[at]) && at + 1 < terms.Count && terms[at + 1].Is(Sense.Area) && !SideFollows(terms, at + 2))) break;
            }
            else if (at > i && Joins(term) && at + 1 < terms.Count && (terms[at + 1].Is(Sense.Area) || SideOf(terms[at + 1]) is not null) && !Whole(terms, at + 1, sides, areas)) at++;
            else if (term.Text is "the" or "of" or "side" or "on" && at > i && at + 1 < terms.Count && (terms[at + 1].Is(Sense.Area) || SideOf(terms[at + 1]) is not null) && (areas.Count == 0 || sides.Count == 0)) at++;
            else if (term.Is(Sense.EachSide) && areas.Count > 0 && sides.Count == 0) { sides.Add(Side.Both); last = at++; }
            else break;
        }
        i = last;
        if (sides.Count == 0) return areas.Distinct().Select(a => new Place(null, a, false, true)).ToList();
        if (areas.Count == 0) return sides.Select(s => new Place(s, null, s == Side.Both, true)).ToList();
        return areas.SelectMany(a => sides.Select(s => new Place(s, a, s == Side.Both, true))).ToList();
    }

    private static bool Joins(Term term) => term.Is(Sense.And) || term.IsSymbol("+") || term.IsSymbol("&") || term.IsSymbol("/");

    // "left lower and right lower": the next side has an area of its own.
    private static bool Whole(IReadOnlyList<Term> terms, int at, List<Side> sides, List<ChestArea> areas) =>
        SideOf(terms[at]) is not null && areas.Count > 0 && sides.Count > 0;

    private static bool SideFollows(IReadOnlyList<Term> terms, int at) => at < terms.Count && SideOf(terms[at]) is not null;

    private static Side? SideOf(Term term) => term.ValueOf(Sense.Side) switch
    {
        "left" => Side.Left,
        "right" => Side.Right,
        "both" => Side.Both,
        _ => term.Kind == TermKind.Word && term.Text is "l" or "le" ? Side.Left : term.Kind == TermKind.Word && term.Text is "r" or "ri" ? Side.Right : null,
    };

    private static ChestArea AreaOf(string value) => value switch
    {
        "lower" => ChestArea.Lower,
        "upper" => ChestArea.Upper,
        "middle" => ChestArea.Middle,
        "whole" => ChestArea.Whole,
        _ => ChestArea.Unknown,
    };

    private static Technique TechniqueOf(string value) => value switch
    {
        "percussion" => Technique.Percussion,
        "vibration" => Technique.Vibration,
        "other" => Technique.Other,
        _ => Technique.Unknown,
    };

    /// <summary>Most minutes that a bare number can be (a longer session has its unit written).</summary>
    private const double MostBareMinutes = 30;

    // What is more is a time and minutes in one breath ("six twenty four minutes"), or a slip.
    private const double MostMinutes = 90;

    private static List<(double? Low, double? High)>? MinutesOf(Term term) => term switch
    {
        { Kind: TermKind.Quantity, Unit: Unit.Min, Number: <= MostMinutes } => [(term.Number, null)],
        { Kind: TermKind.Quantity, Unit: Unit.Sec } => [(term.Number / 60, null)],
        { Kind: TermKind.Quantity, Unit: Unit.Hour, Number: <= 1 } => [(term.Number * 60, null)],
        { Kind: TermKind.Range, Unit: Unit.Min } => [(term.Number, term.High)],
        { Kind: TermKind.Range, Unit: Unit.None, High: <= MostBareMinutes } when term.Number < term.High => [(term.Number, term.High)],
        { Kind: TermKind.Number, Number: >= 0 and <= MostBareMinutes } => [(term.Number, null)],
        { Kind: TermKind.Times, Number: >= 0 and <= MostBareMinutes } => [(term.Number, null)],
        // "1/2" alone is half of something, or one of two.
        { Fraction: not null } => null,
        { Kind: TermKind.Parts } when term.Parts.All(p => p <= MostBareMinutes) && term.Text.Contains('/') => term.Parts.Select(p => ((double?)p, (double?)null)).ToList(),
        _ => null,
    };
}
