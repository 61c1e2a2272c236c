using System.Globalization;

namespace CareRecords.Import.Reading;

/// <summary>
/// Puts numbers of several words together, as people speak them into a phone: "ninety three", "a hundred and fifty", "six twenty five",
/// "six oh five", "March third". One word alone is left to the grammars after it.
/// </summary>
internal static class NumberWords
{
    private static readonly string[] Ordinals = ["first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth", "eleventh", "twelfth", "thirteenth", "fourteenth", "fifteenth", "sixteenth", "seventeenth", "eighteenth", "nineteenth", "twentieth"];

    /// <summary>The terms with their spoken numbers put together.</summary>
    public static List<Term> Reduce(List<Term> terms)
    {
        if (!terms.Exists(t => t.Kind == TermKind.Word && (t.Is(Sense.NumberWord) || t.Is(Sense.Month) || t.Is(Sense.Weekday)))) return terms;
        var result = new List<Term>(terms.Count);
        terms = Unhyphened(terms);
        for (var i = 0; i < terms.Count;)
        {
            if (Point(terms, i, result) is { } decimals) { result[^1] = decimals; i += 2; }
            else if (Hours(terms, i) is { } hours) { result.AddRange(hours.Terms); i = hours.Next; }
            else if (ThreeQuarters(terms, i) is { } quarters) { result.Add(quarters.Term); i = quarters.Next; }
            else if (Ordinal(terms, i, result) is { } day)
            {
                if (result.Count > 1 && result[^1].Text == "the" && result[^2].Is(Sense.Weekday)) result.RemoveAt(result.Count - 1);
                result.Add(day.Term);
                i = day.Next;
            }
            // "at ate in the morning", as a telephone hears it.
            else if (terms[i].Text == "ate" && result.Count > 0 && result[^1].Is(Sense.At)) { result.Add(Make(terms[i], terms[i], 8, "8")); i++; }
            else if (Hundred(terms, i) is { } hundred) { result.Add(hundred.Term); i = hundred.Next; }
            else if (Pair(terms, i) is { } pair) { result.Add(IsTime(pair.Term, result, terms, pair.Next) ? Spoken(pair.Term) : pair.Term); i = pair.Next; }
            else { result.Add(terms[i]); i++; }
        }
        return result;
    }

    // "ninety-five", "twenty-first": the hyphen of one number.
    private static List<Term> Unhyphened(List<Term> terms)
    {
        bool Hyphen(int i) => terms[i].IsSymbol("-") && terms[i].Glued && i > 0 && i + 1 < terms.Count && terms[i + 1].Glued && terms[i + 1].Kind == TermKind.Word
            && Value(terms, i - 1) is 20 or 30 or 40 or 50 or 60 or 70 or 80 or 90 && (Value(terms, i + 1) is >= 1 and <= 9 || Ordinals.AsSpan(0, 9).Contains(terms[i + 1].Text));
        var first = 0;
        while (first < terms.Count && !Hyphen(first)) first++;
        if (first == terms.Count) return terms;
        return [.. terms.Take(first), .. Enumerable.Range(first, terms.Count - first).Where(i => !Hyphen(i)).Select(i => terms[i])];
    }

    // "thirty eight point six": the number before is put together already.
    private static Term? Point(List<Term> terms, int at, List<Term> before)
    {
        // "thirty eight comma seven", where one writes 38,7
        var ofTemperature = terms[at].Text == "comma" && before.Count > 0 && (before[^1].Number is >= 34 and <= 42 || Value(before, before.Count - 1) is >= 34 and <= 42);
        if (terms[at].Text != "point" && !ofTemperature || before.Count == 0 || Value(terms, at + 1) is not (>= 0 and <= 9 and var tenth)) return null;
        var whole = before[^1] is { IsWhole: true, Number: < 100 } number ? (int)number.Number : Value(before, before.Count - 1);
        return whole is null ? null : Make(before[^1], terms[at + 1], 0, FormattableString.Invariant($"{whole}.{tenth}")) with { Number = whole.Value + tenth / 10.0 };
    }

    private const int LeastHours = 3;
    private const int LeastStepMinutes = 60;
    private const int MostStepMinutes = 9 * 60;

    // "seven eleven three and seven", "seven thirty eleven thirty three thirty": at least three hours that run on, each with its minutes or without. Commas as people dictate: none.
    private static (List<Term> Terms, int Next)? Hours(List<Term> terms, int at)
    {
        var (found, next, last) = (new List<Term>(), at, 0);
        for (var i = at; i < terms.Count;)
        {
            if (found.Count > 0 && (terms[i].Text is "and" or "n" or "&" or "then" or "and then") && Value(terms, i + 1) is not null) i++;
            if (Value(terms, i) is not (>= 1 and <= 12 and var hour)) break;
            var minutes = Value(terms, i + 1) is 15 or 30 or 45 or 20 or 40 or 50 ? Value(terms, i + 1)! : null;
            if (minutes is not null && Value(terms, i + 2) is >= 1 and <= 9 && Value(terms, i + 1) is not (15 or 30 or 45) && !(found.Count >= LeastHours - 1)) minutes = null;
            var time = hour % 12 * 60 + (minutes ?? 0);
            if (found.Count > 0 && (time - last + 720) % 720 is < LeastStepMinutes or > MostStepMinutes) break;
            var end = minutes is null ? i : i + 1;
            found.Add(Spoken(Clock(terms[i], terms[end], hour, minutes ?? 0)));
            (next, last) = (end + 1, time);
            i = next;
        }
        // "seven eleven three and seven four puffs": the last number is of what follows.
        if (found.Count > LeastHours && next < terms.Count && terms[next].Is(Sense.Unit) && terms[next - 1].Is(Sense.NumberWord)) { found.RemoveAt(found.Count - 1); next--; }
        if (found.Count < LeastHours || next < terms.Count && (terms[next].Is(Sense.Unit) || terms[next].Is(Sense.Times) || terms[next].Is(Sense.Half) || terms[next].Is(Sense.Past) || Value(terms, next) is not null || terms[next].Kind == TermKind.Number)) return null;
        return ([found[0], .. found.Skip(1).SelectMany(t => new[] { new Term { Kind = TermKind.Symbol, Text = ",", Start = t.Start, End = t.Start }, t })], next);
    }

    // "three quarters of a litre" as 3/4 litre
    private static (Term Term, int Next)? ThreeQuarters(List<Term> terms, int at)
    {
        if (Value(terms, at) is not 3 || at + 1 >= terms.Count || !terms[at + 1].Is(Sense.Quarter)) return null;
        var next = at + 2;
        while (next < terms.Count && (terms[next].Text == "of" || terms[next].Is(Sense.Article))) next++;
        return next < terms.Count && terms[next].Is(Sense.Unit, "litre") ? (Make(terms[at], terms[at + 1], 0, "3/4") with { Kind = TermKind.Parts, Parts = [3, 4] }, next) : null;
    }

    // "March third", "March twenty first": an ordinal beside its month.
    private static (Term Term, int Next)? Ordinal(List<Term> terms, int at, List<Term> before)
    {
        var month = before.Count > 0 && (before[^1].Is(Sense.Month) || (before.Count > 1 && before[^1].Text == "the" && before[^2].Is(Sense.Month)));
        // "friday the eighth"
        month |= before.Count > 0 && (before[^1].Is(Sense.Weekday) || (before.Count > 1 && before[^1].Text == "the" && before[^2].Is(Sense.Weekday)));
        var tens = Value(terms, at) is 20 or 30 ? Value(terms, at)! : null;
        var word = tens is null ? at : at + 1;
        if (word >= terms.Count || terms[word].Kind != TermKind.Word || Array.IndexOf(Ordinals, terms[word].Text) is var n && n < 0) return null;
        if (!month && !(word + 1 < terms.Count && (terms[word + 1].Is(Sense.Month) || (terms[word + 1].Text == "of" && word + 2 < terms.Count && terms[word + 2].Is(Sense.Month))))) return null;
        var number = (tens ?? 0) + n + 1;
        // "on Thursday the second clapping" counts sessions.
        if (!(before.Count > 0 && (before[^1].Is(Sense.Month) || before.Count > 1 && before[^2].Is(Sense.Month))) && word + 1 < terms.Count && terms[word + 1] is { Kind: TermKind.Word } counted && (counted.Text is "one" or "time" or "dose" || counted.Is(Sense.Session) || counted.Is(Sense.Technique) || counted.Is(Sense.Feed) || counted.Is(Sense.Bottle) || counted.Is(Sense.Medicine) || counted.Is(Sense.Device) || counted.Is(Sense.DayPart))) return null;
        return number > 31 ? null : (Make(terms[at], terms[word], number, number.ToString(CultureInfo.InvariantCulture)), word + 1);
    }

    // "a hundred and fifty", "one hundred"
    private static (Term Term, int Next)? Hundred(List<Term> terms, int at)
    {
        var first = terms[at].Is(Sense.Article) && !terms[at].Is(Sense.NumberWord) ? 1 : Value(terms, at);
        if (first is not (>= 1 and <= 9) || Value(terms, at + 1) is not 100) return null;
        var number = first.Value * 100;
        var next = at + 2;
        var joined = next < terms.Count && terms[next].Is(Sense.And) ? next + 1 : next;
        if (Pair(terms, joined) is { } pair && pair.Term.Number < 100) { number += (int)pair.Term.Number; next = pair.Next; }
        else if (Value(terms, joined) is { } rest and < 100 && !(joined + 1 < terms.Count && Value(terms, joined + 1) is not null)) { number += rest; next = joined + 1; }
        return (Make(terms[at], terms[next - 1], number, number.ToString(CultureInfo.InvariantCulture)), next);
    }

    // "ninety three"; "six twenty five" and "six oh five" as 625 and 605, which may be a time or a volume.
    private static (Term Term, int Next)? Pair(List<Term> terms, int at)
    {
        if (Value(terms, at) is not { } first) return null;
        if (first is 20 or 30 or 40 or 50 or 60 or 70 or 80 or 90 && Value(terms, at + 1) is >= 1 and <= 9)
            return (Make(terms[at], terms[at + 1], first + Value(terms, at + 1)!.Value, (first + Value(terms, at + 1)!.Value).ToString(CultureInfo.InvariantCulture)), at + 2);
        if (first is < 1 or > 12) return null;
        if (at + 2 < terms.Count && terms[at + 1].Text is "oh" or "o" && Value(terms, at + 2) is >= 1 and <= 9 && terms[at + 2].Kind == TermKind.Word)
            return (Clock(terms[at], terms[at + 2], first, Value(terms, at + 2)!.Value), at + 3);
        if (Value(terms, at + 1) is not (>= 10 and <= 59)) return null;
        // "six twenty five": the minutes may be two words themselves.
        return Pair(terms, at + 1) is { } minutes && minutes.Term.Number is >= 20 and <= 59
            ? (Clock(terms[at], terms[minutes.Next - 1], first, (int)minutes.Term.Number), minutes.Next)
            : (Clock(terms[at], terms[at + 1], first, Value(terms, at + 1)!.Value), at + 2);
    }

    // "six twenty five albuterol" is a time; "bolus one fifty" and "one fifty ml" are volumes.
    private static bool IsTime(Term term, List<Term> before, List<Term> terms, int next) => term.Number >= 100 && (int)term.Number % 100 % 5 == 0
        && !(before.Count > 0 && (before[^1].Is(Sense.Bolus) || before[^1].Is(Sense.Feed) || before[^1].Is(Sense.Bottle) || before[^1].Is(Sense.Milk))) && !(next < terms.Count && (terms[next].Is(Sense.Unit) || terms[next].Is(Sense.RateWord)));

    private static Term Spoken(Term term) => term with { Kind = TermKind.Time, Parts = [Math.Floor(term.Number / 100), term.Number % 100], Number = 0 };

    private static int? Value(List<Term> terms, int at) => at < terms.Count && terms[at].Kind == TermKind.Word && !terms[at].Is(Sense.Unit) && terms[at].ValueOf(Sense.NumberWord) is { } value
        ? int.Parse(value, CultureInfo.InvariantCulture) : null;

    private static Term Clock(Term first, Term last, int hour, int minute) => Make(first, last, hour * 100 + minute, FormattableString.Invariant($"{hour}{minute:00}"));

    private static Term Make(Term first, Term last, int number, string text) => new()
    {
        Kind = TermKind.Number,
        Start = first.Start,
        End = last.End,
        Text = text,
        Number = number,
        Glued = first.Glued,
    };
}
