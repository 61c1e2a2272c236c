using CareRecords.Import.Reading;

namespace CareRecords.Import.Notes;

/// <summary>Words whose meaning hangs on the words beside them: "sick 2.20", "both 3 minutes each side", "did not do the 7 pm chest", "1145 … 1130 not 1145".</summary>
internal static class Neighbours
{
    private static readonly Meaning Vomit = new(Sense.Sign, "vomit");
    private static readonly Meaning Saturday = new(Sense.Weekday, "6");

    /// <summary>The terms with such words given their meaning, or taken out where they only repeat.</summary>
    public static List<Term> Reduce(List<Term> terms)
    {
        for (var i = 0; i < terms.Count; i++)
            i = Numbered(terms, i) ?? InsteadOf(terms, i) ?? HourOfTemperature(terms, i) ?? Finished(terms, i) ?? OxygenOff(terms, i) ?? Carrier(terms, i) ?? HalfBefore(terms, i) ?? GivenLate(terms, i) ?? SecondOne(terms, i) ?? Twos(terms, i) ?? Sick(terms, i) ?? BothEachSide(terms, i) ?? TimeSaidAgain(terms, i) ?? BothOfAreas(terms, i) ?? SaturdayEvening(terms, i) ?? Gap(terms, i) ?? LeftOver(terms, i) ?? Do(terms, i) ?? NotTheTimeBefore(terms, i) ?? Observed(terms, i) ?? HourOfDevice(terms, i) ?? Lying(terms, i) ?? High(terms, i) ?? Up(terms, i) ?? SideBySide(terms, i) ?? Right(terms, i) ?? i;
        return terms;
    }

    // "CPT 2: 11:30 am", "session 3 - 15:45": which of the day's it was, before its time.
    private static int? Numbered(List<Term> terms, int i)
    {
        if (!terms[i].Is(Sense.Session) || terms.Take(i).Any(t => t.Kind != TermKind.Symbol) || At(terms, i + 1) is not { Kind: TermKind.Number, IsWhole: true, Number: >= 1 and <= 6 } || At(terms, i + 2) is not { Text: ":" or "-" }) return null;
        var next = i + 3;
        while (At(terms, next)?.IsSymbol("*") == true) next++;
        if (At(terms, next) is not { Kind: TermKind.Time }) return null;
        terms.RemoveRange(i + 1, next - i - 1);
        return i;
    }

    // "her evening session at 6 instead of 7": only the first was.
    private static int? InsteadOf(List<Term> terms, int i)
    {
        if (terms[i].Text is not ("instead of" or "rather than" or "instead of at") || At(terms, i + 1) is not ({ Kind: TermKind.Number, IsWhole: true, Number: >= 1 and <= 12, Clock: not null } or { Kind: TermKind.Time, Times.Count: 0 })) return null;
        if (!terms.Take(i).TakeLast(2).Any(t => t.Kind == TermKind.Time)) return null;
        terms.RemoveRange(i, 2);
        return i - 1;
    }

    // "temp at 2 38.9": the hour, and then what it was.
    private static int? HourOfTemperature(List<Term> terms, int i)
    {
        if (!terms[i].Is(Sense.At) || At(terms, i + 1) is not { Kind: TermKind.Number, IsWhole: true, Number: >= 1 and <= 12, Clock: not null } hour || At(terms, i + 2) is not { } value || !SignGrammar.IsBareTemperature(value)) return null;
        terms[i + 1] = hour with { Kind = TermKind.Time };
        return i + 1;
    }

    // "4.30pm feed 150 by tube, finished 5": the hour at which what began in the line ended.
    private static int? Finished(List<Term> terms, int i)
    {
        if (!terms[i].Is(Sense.Stop) || terms[i].Text is not ("finished" or "ended" or "stopped" or "done") || i == 0 || !terms[i - 1].IsSymbol(",") || At(terms, i + 1) is not { Kind: TermKind.Number, IsWhole: true, Number: >= 1 and <= 12, Clock: not null } hour) return null;
        if (At(terms, i + 2) is { } after && after.Kind != TermKind.Symbol || terms.Take(i).Count(t => t.Kind == TermKind.Time) != 1 || !terms.Take(i).Any(t => t.NamesFeed)) return null;
        terms[i + 1] = hour with { Kind = TermKind.Time };
        return i + 1;
    }

    // "10:00 o2: off"
    private static int? OxygenOff(List<Term> terms, int i)
    {
        if (!terms[i].Is(Sense.OxygenLabel) || At(terms, i + 1)?.IsSymbol(":") != true || At(terms, i + 2) is not { Text: "off" or "stopped" }) return null;
        terms.RemoveAt(i + 1);
        return i;
    }

    // "gave the first one at 5:30 in applesauce": what a medicine was mixed with is no feed.
    private static int? Carrier(List<Term> terms, int i)
    {
        if (!terms[i].Is(Sense.Food) || i < 2 || terms[i - 1].Text is not ("in" or "with" or "in some" or "mixed in")) return null;
        if (!terms.Take(i).TakeLast(CarrierWithin).Any(t => t.Is(Sense.First) || t.Is(Sense.Antibiotic) || t.Is(Sense.Medicine))) return null;
        terms.RemoveRange(i - 1, 2);
        return i - 2;
    }

    private const int CarrierWithin = 8;

    // "forgot antibiotic at 8am, gave it at 10": when it was due is not when it was given.
    private static int? GivenLate(List<Term> terms, int i)
    {
        if (!terms[i].Text.StartsWith("forgot", StringComparison.Ordinal) && !terms[i].Text.StartsWith("missed", StringComparison.Ordinal)) return null;
        var due = terms.FindIndex(i, t => t.Kind == TermKind.Time);
        if (due < 0 || due > i + 4 || !terms.GetRange(i, due - i).Exists(t => t.Is(Sense.Medicine) || t.Is(Sense.Antibiotic) || t.Is(Sense.Device))) return null;
        var given = terms.FindIndex(due, t => t.Text is "gave" or "gave it" or "given" || t.Is(Sense.Given));
        if (given < 0 || given > due + 4 || terms.FindIndex(given, t => t.Kind == TermKind.Time) is not (> 0 and var at) || at > given + 3) return null;
        terms.RemoveRange(due, given - due);
        terms.RemoveAt(i);
        return i;
    }

    // "PM pats 6.30", "AM pats were 8.45": the half of the day stands before what was done.
    private static int? HalfBefore(List<Term> terms, int i)
    {
        if (terms[i].ValueOf(Sense.AmPm) is not { } half || terms[i].Kind != TermKind.Word || i > 0 && terms[i - 1].Kind is TermKind.Time or TermKind.Number) return null;
        var at = i + 1;
        while (at < terms.Count && at <= i + 3 && (terms[at].NamesEvent && terms[at].Kind == TermKind.Word || terms[at].Text is "was" or "were" or "at" or "one" or "done" or "session" || terms[at].IsSymbol("-") || terms[at].IsSymbol(":"))) at++;
        if (at == i + 1 || at >= terms.Count || terms[at] is not { Kind: TermKind.Time, Times.Count: 0, Clock: { Start.Half: HalfOfDay.Unknown, End: null } clock } || clock.Start.TwentyFourHour || !terms[i + 1].NamesEvent) return null;
        var settled = half == "am" ? HalfOfDay.Am : HalfOfDay.Pm;
        // "AM pats 12.30" is no morning time.
        if (half == "am" && clock.Start.Time.Hour == 12) return null;
        terms[at] = terms[at] with { Clock = clock with { Start = clock.Start.In(settled) } };
        return i;
    }

    // "usual 7.30am. School trip so the second one was at 7pm": a session that was told of before in the line, and has one time so far.
    private static int? SecondOne(List<Term> terms, int i)
    {
        if (terms[i].Text is not ("second one" or "other one" or "2nd one") || !terms.Take(i).Any(t => t.Is(Sense.Session) || t.Is(Sense.Technique) || t.Areas is not null) || terms.Take(i).Count(t => t.Kind == TermKind.Time) != 1) return null;
        var time = i + 1;
        while (time < terms.Count && time < i + 3 && terms[time].Text is "was" or "was at" or "at") time++;
        return time < terms.Count && terms[time] is { Kind: TermKind.Time, Times.Count: 0 } ? Means(terms, i, new Meaning(Sense.Session, "")) : null;
    }

    // "8.15 and 6.15 4s and 2s": minutes below and above, and so a session where nothing else is named.
    private static int? Twos(List<Term> terms, int i)
    {
        if (!IsSeveral(terms[i]) || At(terms, i + 1)?.Is(Sense.And) != true || At(terms, i + 2) is not { } second || !IsSeveral(second)) return null;
        (terms[i], terms[i + 2]) = (Bare(terms[i]), Bare(second));
        if (terms.Exists(t => t.Is(Sense.Session) || t.Is(Sense.Technique) || t.Areas is not null || t.Is(Sense.Area))) return i + 2;
        terms.Insert(i, new Term { Kind = TermKind.Word, Start = terms[i].Start, End = terms[i].Start, Text = "session", Meanings = [new Meaning(Sense.Session, "")] });
        return i + 3;

        static bool IsSeveral(Term term) => term is { Kind: TermKind.Quantity, Unit: Unit.Sec, Number: >= 1 and <= 6 } && term.End - term.Start == 2;
        static Term Bare(Term term) => term with { Kind = TermKind.Number, Unit = Unit.None, Clock = null, Text = term.Number.ToString(System.Globalization.CultureInfo.InvariantCulture) };
    }

    private const int MostMinutesAfterInhaler = 45;

    // "blue 7 physio 7.20": the hour of the inhaler, not its puffs.
    private static int? HourOfDevice(List<Term> terms, int i)
    {
        if (!(terms[i].Is(Sense.Device) || terms[i].Is(Sense.Medicine)) || At(terms, i + 1) is not { Kind: TermKind.Number, IsWhole: true, Number: >= 1 and <= 12, Clock: { } clock } hour || At(terms, i + 2)?.Is(Sense.Session) != true || At(terms, i + 3) is not { Kind: TermKind.Time or TermKind.Number, Clock: { } session }) return null;
        var after = (session.Start.Time.Hour * 60 + session.Start.Time.Minute - clock.Start.Time.Hour * 60 - clock.Start.Time.Minute + 720) % 720;
        if (after is 0 or > MostMinutesAfterInhaler) return null;
        terms[i + 1] = hour with { Kind = TermKind.Time };
        return i + 1;
    }

    // "two each side high", "three a side low"
    // "low and high both sides"
    private static int? High(List<Term> terms, int i) => i > 1 && terms[i] is { Text: "high", Meanings.Length: 0 } && (terms[i - 1].Is(Sense.And) || terms[i - 1].IsSymbol("/") || terms[i - 1].IsSymbol("+")) && terms[i - 2].Is(Sense.Area, "lower") ? Means(terms, i, new Meaning(Sense.Area, "upper")) : i > 0 && terms[i] is { Text: "high", Meanings.Length: 0 } && (terms[i - 1].Is(Sense.EachSide) || terms[i - 1].Is(Sense.Each) || terms[i - 1].Is(Sense.Side)) ? Means(terms, i, new Meaning(Sense.Area, "upper")) : null;

    // "repositioned to R side", "asleep on his left side": how the child lay, not where it was clapped.
    private static int? Lying(List<Term> terms, int i)
    {
        if (!terms[i].Is(Sense.Side) || !terms.Skip(Math.Max(0, i - 4)).Take(Math.Min(4, i)).Any(t => t.Text is "repositioned" or "turned" or "lying" or "laid" or "lay" or "asleep" or "sleeping" or "rolled" or "propped" or "positioned" or "settled")) return null;
        if (!terms.Skip(Math.Max(0, i - 2)).Take(Math.Min(2, i)).Any(t => t.Text is "to" or "on" or "onto" or "his" or "her" or "the")) return null;
        return Means(terms, i);
    }

    // "obs: T 37.1, P 96, R 28, S 94": the letters of a nurse's observations.
    private static int? Observed(List<Term> terms, int i)
    {
        if (terms[i].Text is not ("obs" or "observations" or "vitals")) return null;
        for (var k = i + 1; k + 1 < terms.Count; k++)
        {
            if (terms[k].Kind != TermKind.Word || terms[k + 1].Kind is not (TermKind.Number or TermKind.Quantity)) continue;
            var (sense, word) = terms[k].Text switch { "t" => (Sense.TempLabel, "temp"), "p" => (Sense.PulseLabel, "pulse"), "r" => (Sense.BreathLabel, "resp"), "s" => (Sense.SatLabel, "sats"), _ => (Sense.None, "") };
            if (sense != Sense.None) terms[k] = terms[k] with { Text = word, Meanings = [new Meaning(sense, "")] };
        }
        return i;
    }

    // Each rule gives the position to go on from, or null where it does not apply.
    private static int? Sick(List<Term> terms, int i) => terms[i] is { Kind: TermKind.Word, Text: "sick", Meanings.Length: 0 } && IsAtTime(terms, i) ? Means(terms, i, Vomit) : null;

    // "both 3 minutes each side": the side is said twice.
    private static int? BothEachSide(List<Term> terms, int i) =>
        terms[i].Text == "both" && terms[i].Is(Sense.Side) && At(terms, i + 1)?.Kind is TermKind.Quantity or TermKind.Number && terms.Skip(i + 2).Take(2).Any(t => t.Is(Sense.EachSide) || t.Is(Sense.Each)) ? Means(terms, i) : null;

    // "off at 5.40 no scratch that 5.50", "7.00pm (correction: 7.30pm)": the later time stands for the earlier.
    private static int? TimeSaidAgain(List<Term> terms, int i)
    {
        if (i == 0 || !(terms[i].Is(Sense.Correction) && !terms[i].Is(Sense.Not)) && terms[i].Text is not "no" || At(terms, i + 1) is not { } next) return null;
        var last = next.IsSymbol(":") ? i + 2 : i + 1;
        if (At(terms, last) is not { Kind: TermKind.Time, Times.Count: 0, Clock: { } meant }) return null;
        var first = i > 1 && terms[i - 1].Text is "no" or "," or "(" ? i - 2 : i - 1;
        if (terms[first] is not { Kind: TermKind.Time, Times.Count: 0 } said) return null;
        terms[first] = said with { Clock = meant.Start is { Half: HalfOfDay.Unknown, TwentyFourHour: false } && said.Clock is { Start.Half: not HalfOfDay.Unknown and var half } ? meant with { Start = meant.Start.In(half) } : meant };
        if (terms[i - 1].IsSymbol("(") && At(terms, last + 1)?.IsSymbol(")") == true) last++;
        terms.RemoveRange(first + 1, last - first);
        return first;
    }

    // "both sides, lower 3 each and upper 2 each", "both patting, lower 4 each": the areas that follow are of both sides.
    private static int? BothOfAreas(List<Term> terms, int i)
    {
        if (!terms[i].Is(Sense.Side, "both") || At(terms, i + 1) is not { } next || !(next.IsSymbol(",") || next.Is(Sense.Technique))) return null;
        if (i > 0 && (terms[i - 1].Is(Sense.Area) || terms[i - 1].Kind is TermKind.Quantity or TermKind.Number)) return null;
        return terms.Skip(i + 1).Take(4).Any(t => t.Is(Sense.Area)) && terms.Skip(i + 1).Any(t => t.Is(Sense.Each) || t.Is(Sense.EachSide)) ? Means(terms, i) : null;
    }

    // "low 3 each, up 2 each": the upper areas, beside the lower.
    private static int? Up(List<Term> terms, int i) => i > 2 && terms[i].Text == "up" && terms[i - 1].IsSymbol(",") && At(terms, i + 1)?.Kind is TermKind.Number or TermKind.Quantity && At(terms, i + 2) is { } each && (each.Is(Sense.Each) || each.Is(Sense.EachSide))
        && terms.GetRange(Math.Max(0, i - 4), Math.Min(4, i)).Exists(t => t.Is(Sense.Area, "lower")) ? Means(terms, i, new Meaning(Sense.Area, "upper")) : null;

    // "the lower part three minutes on the left and three on the right": each side before its minutes, so that the area is of both.
    private static int? SideBySide(List<Term> terms, int i)
    {
        if (i == 0 || terms[i].Kind is not (TermKind.Number or TermKind.Quantity) || SideAfter(terms, i) is not { } first || !terms.GetRange(Math.Max(0, i - 3), Math.Min(3, i)).Exists(t => t.Is(Sense.Area))) return null;
        if (At(terms, first + 1) is not { } and || !(and.Is(Sense.And) || and.IsSymbol(",")) || At(terms, first + 2) is not { Kind: TermKind.Number or TermKind.Quantity } || SideAfter(terms, first + 2) is not { } second) return null;
        if (terms[first].ValueOf(Sense.Side) == terms[second].ValueOf(Sense.Side) || At(terms, second + 1) is { } next && next.Is(Sense.Area)) return null;
        List<Term> ordered = [terms[first], terms[i], terms[first + 1], terms[second], terms[first + 2]];
        terms.RemoveRange(i, second - i + 1);
        terms.InsertRange(i, ordered);
        return i + ordered.Count - 1;
    }

    // "right I did her chest at 7": no side.
    private static int? Right(List<Term> terms, int i) => i == 0 && terms[0].Text == "right" && At(terms, 1)?.Text is "i" or "so" or "we" or "then" or "well" or "ok" or "he" or "she" or "this" or "that" or "here" ? Means(terms, 0) : null;

    // The side that minutes are of: "three minutes on the left".
    private static int? SideAfter(List<Term> terms, int i)
    {
        var at = i + 1;
        while (at < terms.Count && at < i + 4 && terms[at].Text is "on" or "the" or "on the" or "of") at++;
        return at < terms.Count && terms[at].Is(Sense.Side) && terms[at].ValueOf(Sense.Side) is "left" or "right" ? at : null;
    }

    // "Sat evening the physio was at 7": the day, not a reading.
    private static int? SaturdayEvening(List<Term> terms, int i) =>
        terms[i] is { Kind: TermKind.Word, Text: "sat" } && At(terms, i + 1)?.Text is "evening" or "morning" or "afternoon" or "night" or "eve" or "tea"
        && !terms.Skip(i + 2).Take(3).Any(t => t is { Kind: TermKind.Number, Number: >= 60 and <= 100 }) ? Means(terms, i, Saturday) : null;

    // "only 10 min gap": between two things, not of a session.
    private static int? Gap(List<Term> terms, int i)
    {
        if (terms[i].Text is not ("gap" or "gaps") || i == 0 || terms[i - 1] is not { Kind: TermKind.Quantity, Unit: Unit.Min }) return null;
        terms.RemoveAt(i - 1);
        return i - 1;
    }

    // "14 nappies left": what remains.
    private static int? LeftOver(List<Term> terms, int i) =>
        i > 1 && terms[i].Text == "left" && terms[i].Is(Sense.Side) && (terms[i - 1] is { Kind: TermKind.Word, Meanings.Length: 0 } || terms[i - 1].Is(Sense.None)) && terms[i - 2].Kind is TermKind.Number or TermKind.Quantity
        && !(At(terms, i + 1) is { } next && (next.Kind is TermKind.Number or TermKind.Quantity || next.Is(Sense.Area))) ? Means(terms, i) : null;

    // "did not do the chest", "nana did do tapping": no ditto.
    private static int? Do(List<Term> terms, int i) =>
        terms[i].Text == "do" && (i > 0 && terms[i - 1].Is(Sense.Not) || At(terms, i + 1) is { } next && (next.Is(Sense.Session) || next.Is(Sense.Technique))) ? Means(terms, i) : null;

    // "1145 … 1130 not 1145": the time told first in the same line was wrong.
    private static int? NotTheTimeBefore(List<Term> terms, int i)
    {
        if (terms[i].Text is not "not" || i < 2 || terms[i - 1] is not { Kind: TermKind.Time, Times.Count: 0, Clock: { } right } || At(terms, i + 1) is not { Kind: TermKind.Time, Times.Count: 0, Clock: { } wrong }) return null;
        var told = terms.FindIndex(0, i - 1, t => t is { Kind: TermKind.Time, Times.Count: 0, Clock: { } clock } && clock.Start.Time == wrong.Start.Time);
        if (told < 0) return null;
        terms[told] = terms[told] with { Clock = right };
        terms.RemoveRange(i - 1, 3);
        return i - 2;
    }

    private static int Means(List<Term> terms, int i, params Meaning[] meanings)
    {
        terms[i] = terms[i] with { Meanings = [.. meanings] };
        return i;
    }

    private static Term? At(List<Term> terms, int at) => at >= 0 && at < terms.Count ? terms[at] : null;

    // "sick 2.20", "2.20 sick", "sick again at 6.40"; not "off sick 9.00".
    private static bool IsAtTime(List<Term> terms, int at)
    {
        if (at > 0 && terms[at - 1].Text is "off" or "home" or "is" or "feeling" or "not" or "call" or "called") return false;
        if (at > 0 && terms[at - 1].Kind == TermKind.Time) return true;
        var next = at + 1;
        while (next < terms.Count && next <= at + 2 && terms[next].Kind != TermKind.Time && (terms[next].Text is "again" or "about" or "around" or "twice" || terms[next].Is(Sense.At))) next++;
        return next < terms.Count && (terms[next].Kind == TermKind.Time || (next > at + 1 && (terms[next].Number is > 0 and <= 12 || terms[next].Text is "half" or "quarter" || terms[next].Is(Sense.Half))));
    }
}
