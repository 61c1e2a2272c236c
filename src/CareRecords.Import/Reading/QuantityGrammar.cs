using System.Globalization;

namespace CareRecords.Import.Reading;

/// <summary>Puts numbers together with their units, ranges, fractions and counts.</summary>
internal static class QuantityGrammar
{
    /// <summary>The terms with their quantities put together.</summary>
    public static List<Term> Reduce(List<Term> terms)
    {
        var result = new List<Term>(terms.Count);
        var rightLetter = terms.Any(t => t is { Text: "r" } && t.Is(Sense.Side)) || terms.Any(t => t.Text == "r");
        for (var i = 0; i < terms.Count;)
        {
            var (term, taken) = One(terms, i, rightLetter, result);
            result.Add(term);
            i += taken;
        }
        return result;
    }

    private static (Term Term, int Taken) One(List<Term> terms, int at, bool rightLetter, List<Term> before)
    {
        var term = terms[at];
        if (term.IsWhole && At(terms, at + 1) is { Glued: true, Text: "st" or "nd" or "rd" or "th" } ordinal) return (term with { Kind = TermKind.Word, End = ordinal.End, Text = term.Text, Meanings = term.Number == 1 ? [new Meaning(Sense.First, "")] : [] }, 2);
        if (term.Text == "x" && At(terms, at + 1) is { Kind: TermKind.Number, Number: >= 0 } count)
            return UnitAt(terms, at + 2, count, rightLetter) is var (unit, taken) && unit != Unit.None
                ? (Join(terms, at, 2 + taken, TermKind.Quantity, count.Number, unit: unit), 2 + taken)
                : (Join(terms, at, 2, TermKind.Times, count.Number), 2);
        if (Amount(terms, at) is var (number, high, used) && used > 0)
        {
            if (high is null && term.Kind == TermKind.Number && At(terms, at + used) is { Text: "x" } && At(terms, at + used + 1) is not { Kind: TermKind.Number })
                return (Join(terms, at, used + 1, TermKind.Times, number), used + 1);
            var (unit, more) = UnitAt(terms, at + used, terms[at + used - 1], rightLetter);
            if (unit != Unit.None) return (Join(terms, at, used + more, high is null ? TermKind.Quantity : TermKind.Range, number, high ?? 0, unit), used + more);
            if (high is not null) return (Join(terms, at, used, TermKind.Range, number, high.Value), used);
            if (before.Count > 0 && before[^1] is { Kind: TermKind.Symbol, Text: "$" or "£" or "€" }) return (Join(terms, at, used, TermKind.Quantity, number, unit: Unit.Money), used);
            if (used > 1 || term.Kind != TermKind.Number) return (Join(terms, at, used, TermKind.Number, number), used);
        }
        // "a quarter of an hour"
        if ((term.Is(Sense.Quarter) || term.Is(Sense.Half)) && At(terms, at + 1)?.Text == "of" && At(terms, at + 2)?.Text is "an hour" or "an hr" or "hour") return (Join(terms, at, 3, TermKind.Quantity, term.Is(Sense.Half) ? 30 : 15, unit: Unit.Min), 3);
        if (term.Fraction is { } fraction && UnitAt(terms, at + 1, term, rightLetter) is var (of, width) && of is Unit.Litre or Unit.Min or Unit.Hour or Unit.Neb or Unit.Puffs or Unit.Spoon)
            return (Join(terms, at, 1 + width, TermKind.Quantity, fraction, unit: of), 1 + width);
        // "2/3 mins a side" is two to three.
        if (term is { Kind: TermKind.Parts, Parts.Count: 2 } && term.Text.Contains('/') && UnitAt(terms, at + 1, term, rightLetter) is var (ranged, span) && ranged is Unit.Min)
            return (Join(terms, at, 1 + span, TermKind.Range, term.Parts[0], term.Parts[1], ranged), 1 + span);
        return (term, 1);
    }

    /// <summary>A number at this place, with the terms it takes: "2 1/2", "two and a half", "half a", "2-3"; 0 taken when none.</summary>
    private static (double Number, double? High, int Used) Amount(List<Term> terms, int at)
    {
        var term = terms[at];
        if (term.Kind == TermKind.Number)
        {
            // "between 92 and 95"
            if (at > 0 && terms[at - 1].Text is "between" or "btwn" or "anywhere from" && (At(terms, at + 1)?.IsSymbol("%") == true ? at + 2 : at + 1) is var last && At(terms, last)?.Is(Sense.And) == true && At(terms, last + 1) is { Kind: TermKind.Number } top && top.Number > term.Number && top.Number < term.Number * 4 + 1) return (term.Number, top.Number, last + 2 - at);
            if (term.Number >= 0 && At(terms, at + 1) is { } next)
            {
                if (next.Fraction is { } part && !next.Glued && term.IsWhole && term.Number < 20) return (term.Number + part, null, 2);
                if (next.Is(Sense.And) && At(terms, at + 2) is { } half && term.IsWhole)
                {
                    if (half.Is(Sense.Half)) return (term.Number + 0.5, null, 3);
                    if (half.Is(Sense.Article) && At(terms, at + 3)?.Is(Sense.Half) == true) return (term.Number + 0.5, null, 4);
                }
                if (next is { Kind: TermKind.Number, Glued: true } || (term.Number < 20 && next.Kind == TermKind.Number && next.Number is > 0 and < 1 && next.Text.Length == 1 && !char.IsAsciiDigit(next.Text[0])))
                    return (term.Number + (next.Number < 1 ? next.Number : 0), null, next.Number < 1 ? 2 : 1);
                if ((next.IsSymbol("-") || next.Is(Sense.To)) && At(terms, at + 2) is { Kind: TermKind.Number } high && high.Number > term.Number && high.Number < term.Number * 4 + 1
                    && At(terms, at + 3) is not { Kind: TermKind.Symbol, Text: "-" })
                    return (term.Number, high.Number, 3);
                // "95% to 97%"
                if (next.IsSymbol("%") && At(terms, at + 2) is { } joint && (joint.IsSymbol("-") || joint.Is(Sense.To)) && At(terms, at + 3) is { Kind: TermKind.Number } upper && upper.Number > term.Number && upper.Number <= 100)
                    return (term.Number, upper.Number, 4);
                // "38 point 4"
                if (next.Text == "point" && At(terms, at + 2) is { IsWhole: true, Text.Length: 1 } tenth) return (term.Number + tenth.Number / 10, null, 3);
            }
            return (term.Number, null, 1);
        }
        // "a minute of shaking", "up to a litre"
        if (term.Is(Sense.Article) && At(terms, at + 1) is { } one && (one.Text is "minute" or "min" || one.Is(Sense.Unit, "litre") && one.Text.Length > 2 && !(at > 0 && terms[at - 1].Text == "of"))) return (1, null, 1);
        var value = term.Is(Sense.Half) ? 0.5 : term.Is(Sense.Quarter) ? 0.25 : term.Is(Sense.Eighth) ? 0.125 : 0;
        if (value == 0) return (0, null, 0);
        var used = 1;
        while (At(terms, at + used) is { } filler && (filler.Is(Sense.Article) || filler.Text is "of" or "the")) used++;
        return At(terms, at + used) is { } unit && unit.Is(Sense.Unit) && UnitOf(unit) is Unit.Litre or Unit.Hour or Unit.Min or Unit.Neb or Unit.Spoon
            ? (value, null, used) : used > 1 ? (0, null, 0) : (value, null, 1);
    }

    private static (Unit Unit, int Taken) UnitAt(List<Term> terms, int at, Term number, bool rightLetter)
    {
        if (At(terms, at) is not { } term) return (Unit.None, 0);
        if (term.IsSymbol("%")) return (Unit.Percent, 1);
        if (!term.Is(Sense.Unit)) return (Unit.None, 0);
        var unit = UnitOf(term);
        var glued = term.Glued;
        return term.Text switch
        {
            "l" when glued || !rightLetter => number.Number <= 15 || number.Kind == TermKind.Parts ? (unit, 1) : (Unit.None, 0),
            "l" or "lt" => (Unit.None, 0),
            "an hr" or "an hour" when number.Is(Sense.Half) || number.Is(Sense.Quarter) => (Unit.Hour, 1),
            // "94 an hr later" is a time, not a rate.
            "an hr" or "an hour" or "a hour" when At(terms, at + 1)?.Text is "later" or "after" or "on" => (Unit.None, 0),
            // "95 hr 99" is a pulse, not hours.
            "hr" or "hrs" or "h" when number.Number > 48 || (At(terms, at + 1) is { Kind: TermKind.Number } && number.Number >= 30) => (Unit.None, 0),
            "neb" or "nebs" or "nebule" or "nebules" when !number.IsWhole || number.Number > 4 || number.Text.Length > 1 => (Unit.None, 0),
            "m" or "s" or "h" or "g" or "p" or "'" when !glued => (Unit.None, 0),
            // "4s" beside a session is four minutes each, not four seconds; "1230p" is a time.
            "s" when number.Number < 10 => (Unit.None, 0),
            "p" when number.Number > MostPuffs => (Unit.None, 0),
            // "pump off 6.15 puffs at 6.45": a time, not a count.
            _ when unit == Unit.Puffs && !number.IsWhole && number.Clock is null && number.Number % 1 != 0.5 && term.Text.Length > 1 => (Unit.None, 0),
            "c" or "f" when !glued && number.Number < 30 => (Unit.None, 0),
            _ => (unit, 1),
        };
    }

    private const double MostPuffs = 30;

    /// <summary>The unit that a word names.</summary>
    internal static Unit UnitOf(Term term) => term.ValueOf(Sense.Unit) switch
    {
        "min" => Unit.Min,
        "hour" => Unit.Hour,
        "sec" => Unit.Sec,
        "ml" => Unit.Ml,
        "oz" => Unit.Oz,
        "mg" => Unit.Mg,
        "mcg" => Unit.Mcg,
        "g" => Unit.G,
        "puffs" => Unit.Puffs,
        "percent" => Unit.Percent,
        "litre" => Unit.Litre,
        "mlmin" => Unit.MlMin,
        "rate" => Unit.Rate,
        "celsius" => Unit.Celsius,
        "fahrenheit" => Unit.Fahrenheit,
        "neb" => Unit.Neb,
        "spoon" => Unit.Spoon,
        "money" => Unit.Money,
        "day" => Unit.Day,
        null => Unit.None,
        _ => Unit.Other,
    };

    private static Term? At(List<Term> terms, int at) => at < terms.Count ? terms[at] : null;

    private static Term Join(List<Term> terms, int at, int count, TermKind kind, double number, double high = 0, Unit unit = Unit.None)
    {
        var last = terms[at + count - 1];
        return new Term
        {
            Kind = kind,
            Start = terms[at].Start,
            End = last.End,
            Number = number,
            High = high,
            Unit = unit,
            Glued = terms[at].Glued,
            Mended = terms[at].Mended,
            Text = kind == TermKind.Number ? number.ToString(CultureInfo.InvariantCulture) : count > 1 && (terms[at + 1].Is(Sense.To) || (kind == TermKind.Range && count > 3 && terms[at + 2].Is(Sense.To))) ? "to" : terms[at].Text,
            Clock = kind is TermKind.Number or TermKind.Range ? terms[at].Clock : null,
        };
    }
}
