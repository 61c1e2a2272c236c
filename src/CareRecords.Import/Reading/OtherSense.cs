namespace CareRecords.Import.Reading;

/// <summary>
/// Words that mean another thing beside their neighbours: the cup that milk is in or that claps, the physio who came, the treatment that is a neb, the
/// lower chest that is "down" beside minutes.
/// </summary>
internal static class OtherSense
{
    /// <summary>The terms, those words without their meaning or with the other one.</summary>
    public static List<Term> Settle(List<Term> terms)
    {
        List<Term>? settled = null;
        for (var i = 0; i < terms.Count; i++)
            if (IsLowerChest(terms, i) || IsPlaceBy(terms, i, "below") || IsAreaBesideSide(terms, i, "down")) (settled ??= [.. terms])[i] = terms[i] with { Meanings = [new Meaning(Sense.Area, "lower")] };
            else if (IsUpperChest(terms, i) || IsPlaceBy(terms, i, "above") || IsAreaBesideSide(terms, i, "up")) (settled ??= [.. terms])[i] = terms[i] with { Meanings = [new Meaning(Sense.Area, "upper")] };
            else if (IsCorner(terms, i) is { } corner) (settled ??= [.. terms])[i] = terms[i] with { Meanings = [new Meaning(Sense.SideArea, corner)] };
            else if (IsBeforeReading(terms, i)) (settled ??= [.. terms])[i] = terms[i] with { Meanings = [new Meaning(Sense.Before, "")] };
            else if (IsMealFed(terms, i)) (settled ??= [.. terms])[i] = terms[i] with { Meanings = [.. terms[i].Meanings, new Meaning(Sense.Feed, "")] };
            else if (IsFeedOver(terms, i)) (settled ??= [.. terms])[i] = terms[i] with { Meanings = [new Meaning(Sense.Stop, "")] };
            else if (IsOther(terms, i)) (settled ??= [.. terms])[i] = terms[i] with { Meanings = [] };
        return settled ?? terms;
    }

    // "LB3 RB3 LT2 RT2": "LT" beside "LB" is the left top, not the left; "BL5 BR5" with their minutes are corners of the chest too.
    private static string? IsCorner(List<Term> terms, int at) => terms[at].Text switch
    {
        "lt" or "rt" when Enumerable.Range(0, terms.Count).Any(i => Written(terms[i]) is "lb" or "rb" && !(i > 0 && terms[i - 1].Kind == TermKind.Number && !IsTimed(terms, i))) => terms[at].Text == "lt" ? "left upper" : "right upper",
        "bl" or "br" or "tl" or "tr" when terms[at].Meanings.Length == 0 && IsTimed(terms, at) && Enumerable.Range(0, terms.Count).Count(i => terms[i].Text is "bl" or "br" or "tl" or "tr" && IsTimed(terms, i)) > 1 =>
            (terms[at].Text[1] == 'l' ? "left " : "right ") + (terms[at].Text[0] == 'b' ? "lower" : "upper"),
        _ => null,
    };

    // A word that the key explains, as it stands in the line.
    private static string Written(Term term) => term.Mended?.ToLowerInvariant() ?? term.Text;

    // "94 bf 96 after": before, not breastfed.
    private static bool IsBeforeReading(List<Term> terms, int at) => terms[at].Text == "bf" && at > 0 && terms[at - 1] is { Kind: TermKind.Number, Number: >= LeastSaturation and <= 100 };

    private const int LeastSaturation = 70;

    private static bool IsTimed(List<Term> terms, int at) => at + 1 < terms.Count && terms[at + 1] is { Kind: TermKind.Number, Number: <= MostMinutes };

    // "05.45 night feed over.": it ended, and nothing says how long it took.
    private static bool IsFeedOver(List<Term> terms, int at) => terms[at].Text == "over" && at > 0 && terms[at - 1].NamesFeed && (at + 1 == terms.Count || terms[at + 1].IsSymbol(".") || terms[at + 1].IsSymbol(",") || terms[at + 1].IsSymbol(";"));

    // "12:30 lunch, 180 ml by gastrostomy": the meal is the feed.
    private static bool IsMealFed(List<Term> terms, int at) => terms[at].Is(Sense.Meal) && !terms[at].Is(Sense.Feed) && at + 3 < terms.Count && terms[at + 1].IsSymbol(",") && terms[at + 2].Kind == TermKind.Number && terms[at + 3].Is(Sense.Unit, "ml");

    private static bool IsOther(List<Term> terms, int at) => terms[at].Text switch
    {
        "treatment" or "treatments" => at > 0 && (terms[at - 1].Is(Sense.Medicine) || terms[at - 1].Is(Sense.Device)),
        "cup" or "cups" => at > 0 && (HoldsDrink(terms, at) || terms[at - 1].Is(Sense.Device) || terms[at - 1].Is(Sense.Medicine)),
        "after" => at + 1 < terms.Count && terms[at + 1].Text == "all" && at + 2 < terms.Count && terms[at + 2].Kind == TermKind.Symbol,
        // "did the middle one": of three sessions.
        "middle" => at + 1 < terms.Count && terms[at + 1].Text is "one" or "1" or "session" or "two",
        "physio" or "physiotherapy" or "pt" => IsPerson(terms, at),
        _ => terms[at].Is(Sense.Device) && (at + 2 < terms.Count && terms[at + 1].Text is "machine" && terms[at + 2].Text is "with" or "is" or "was" or "not" or "broken" or "gone" || at + 1 < terms.Count && terms[at + 1].Text is "empty" or "ran out" or "run out" or "broken" or "blocked" or "cup" or "cups" or "mask" or "masks" or "kit" or "kits" or "tubing" or "filter" or "filters" or "parts" || at > 0 && IsWashing(terms[at - 1]) || at > 1 && terms[at - 1].Text is "the" or "his" or "her" or "all" or "out" && IsWashing(terms[at - 2])),
    };

    private static bool HoldsDrink(List<Term> terms, int at) => terms[at - 1].Text is "the" or "his" or "her" or "a" or "my" or "from" or "in the" or "from the" && OfSentence(terms, at).Any(t => t.Is(Sense.Milk) || t.Is(Sense.Mouth) || t.Is(Sense.Unit, "ml") || t.Is(Sense.Technique) && t != terms[at]);

    private static bool IsWashing(Term term) => term.Text is "washed" or "washed the" or "cleaned" or "boiled" or "sterilised" or "sterilized" or "soaked" or "rinsed";

    // "clap 4 down 2 top", "4 minutes each side down": not "sats 93 down from 95", "1 litre down to a half".
    private static bool IsLowerChest(List<Term> terms, int at) => terms[at].Text == "down" && at > 0 && ((terms[at - 1].Is(Sense.Technique) || terms[at - 1].Is(Sense.Only) && terms.FindIndex(t => t.Is(Sense.Technique)) is >= 0 and var technique && technique < at) && at + 1 < terms.Count && (terms[at + 1].Kind is TermKind.Number || terms[at + 1].IsSymbol(",") || terms[at + 1].Is(Sense.EachSide)) || terms[at - 1] is { Kind: TermKind.Number, IsWhole: true, Number: <= MostMinutes } || terms[at - 1].Is(Sense.EachSide) || terms[at - 1].Is(Sense.Unit, "min"))
        && !(at + 1 < terms.Count && terms[at + 1].Text is "to" or "from" or "by") && terms.Exists(t => t.Is(Sense.Technique) || t.Is(Sense.Session));

    // "3 min each side below, 2 min each side above": not "below 92".
    private static bool IsPlaceBy(List<Term> terms, int at, string word) => terms[at].Text == word && at > 0 && (terms[at - 1].Is(Sense.EachSide) || terms[at - 1].Is(Sense.Unit, "min") || terms[at - 1].Is(Sense.Technique)) && !(at + 1 < terms.Count && terms[at + 1].Kind is TermKind.Number or TermKind.Quantity)
        && terms.Exists(t => t.Is(Sense.Technique) || t.Is(Sense.Session));

    // "4 low 3 high each side": beside the lower chest.
    private static bool IsUpperChest(List<Term> terms, int at) => terms[at].Text == "high" && at > 0 && (terms[at - 1] is { Kind: TermKind.Number, IsWhole: true, Number: <= MostMinutes } || terms[at - 1].Is(Sense.EachSide) || terms[at - 1].Is(Sense.Unit, "min")) && terms.Exists(t => t.Is(Sense.Area, "lower"));

    // "R up 2, L up 2", "up L and R 2 mins each", "percussion only down, 3 mins each side": not "sats up", "R went up".
    private static bool IsAreaBesideSide(List<Term> terms, int at, string word)
    {
        if (terms[at].Text != word || terms[at].Is(Sense.Area)) return false;
        var after = at > 0 && (terms[at - 1].Is(Sense.Side) || terms[at - 1].Text is "l" or "r") && at + 1 < terms.Count && IsMinutes(terms[at + 1]);
        var ahead = at + 1 < terms.Count && (terms[at + 1].Is(Sense.Side) || terms[at + 1].Text is "l" or "r") && terms.GetRange(at + 1, Math.Min(5, terms.Count - at - 1)).Exists(IsMinutes);
        return (after || ahead) && terms.Exists(t => t.Is(Sense.Technique) || t.Is(Sense.Session));

        static bool IsMinutes(Term term) => term is { Kind: TermKind.Number, Number: <= MostMinutes };
    }

    private const int MostMinutes = 10;

    // "physio was at school", "physio came at 2": not "physio was at 2".
    private static bool IsPerson(List<Term> terms, int at)
    {
        // "called PT line", "rang hosp physio", "rang the physio": not "rang the clinic physio 15:00 LL3".
        if (!(at + 1 < terms.Count && terms[at + 1].Kind is TermKind.Number or TermKind.Time or TermKind.Parts) && Enumerable.Range(Math.Max(0, at - 3), Math.Min(3, at)).Any(k => terms[k].Text.Split(' ')[0] is "rang" or "called" or "phoned" or "texted" or "messaged" or "emailed" && terms.Skip(k + 1).Take(at - k - 1).All(t => t.Kind == TermKind.Word && !t.Is(Sense.And) && !t.Is(Sense.Then)))) return true;
        if (at + 1 >= terms.Count) return false;
        // "Karin (physio) phoned": the word behind the bracket.
        if (terms[at + 1].IsSymbol(")") && at > 0 && terms[at - 1].IsSymbol("(")) return at + 2 < terms.Count && terms[at + 2].Text.Split(' ')[0] is "phoned" or "called" or "rang" or "came" or "says" or "said" or "texted" or "emailed" or "visited";
        var next = terms[at + 1].Text;
        if (next is "came" or "visited" or "popped" or "showed" or "arrived" or "visit" or "visits" or "appt" or "appts" or "appointment" or "clinic" or "review") return true;
        return next == "was" && at + 2 < terms.Count && (terms[at + 2].Text is "here" or "round" || terms[at + 2].Text is "at" or "in" && at + 3 < terms.Count && terms[at + 3] is { Kind: TermKind.Word } place && !place.Is(Sense.NumberWord) && !place.Is(Sense.Half) && !place.Is(Sense.Quarter) && !place.Is(Sense.Clock) && !place.Is(Sense.DayPart) && !place.Is(Sense.AmPm));
    }

    private static IEnumerable<Term> OfSentence(List<Term> terms, int at)
    {
        var from = terms.FindLastIndex(at, t => t.IsSymbol(".")) + 1;
        var to = terms.FindIndex(at, t => t.IsSymbol("."));
        return terms.Skip(from).Take((to < 0 ? terms.Count : to) - from);
    }
}
