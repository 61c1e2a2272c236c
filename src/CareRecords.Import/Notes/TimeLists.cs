using CareRecords.Import.Reading;
using NodaTime;

namespace CareRecords.Import.Notes;

/// <summary>
/// Puts times that stand side by side into one list ("7, 11.30, half 3 and 8"). Bare numbers join when they could be times, when a
/// real time or a third number stands with them, and when each follows the one before by half an hour to nine hours round the clock:
/// "3 3 2 2" are minutes.
/// </summary>
internal static class TimeLists
{
    private const int LeastStepMinutes = 30;
    private const int MostStepMinutes = 9 * 60;
    private const int WellApartMinutes = 150;
    private const int LongestDayMinutes = 20 * 60;
    private const int LeastReading = 80;

    /// <summary>The terms with their lists of times put together.</summary>
    public static List<Term> Reduce(List<Term> terms)
    {
        Spoken(terms);
        var possible = 0;
        for (var i = 0; i < terms.Count; i++)
            if (IsTime(terms[i]) || IsCandidate(terms, i)) possible++;
        if (possible < 2) return terms;
        var result = new List<Term>(terms.Count);
        for (var i = 0; i < terms.Count;)
        {
            if (IsTime(terms[i]) || IsCandidate(terms, i))
            {
                var (list, taken) = Run(terms, i);
                if (list.Count > 1)
                {
                    result.Add(terms[i] with { Kind = TermKind.Time, Clock = list[0], Times = list, End = terms[i + taken - 1].End, At = true });
                    i += taken;
                    continue;
                }
            }
            result.Add(terms[i]);
            i++;
        }
        return result;
    }

    // "at eight, one and six": hours in words go on with a time, where no minutes follow them.
    private static void Spoken(List<Term> terms)
    {
        // "clapping seven and ten past five": the first of two.
        for (var i = 1; i + 2 < terms.Count; i++)
            if ((terms[i - 1].Is(Sense.Session) || terms[i - 1].Is(Sense.Technique)) && terms[i + 1].Is(Sense.And) && IsTime(terms[i + 2]) && terms[i].ValueOf(Sense.NumberWord) is { } first && int.TryParse(first, System.Globalization.CultureInfo.InvariantCulture, out var begins) && begins is >= 1 and <= 12)
                terms[i] = terms[i] with { Kind = TermKind.Time, Meanings = [], At = true, Clock = new ClockSpan(new ClockTime(new LocalTime(begins % 12, 0), HalfOfDay.Unknown, CareRecords.Records.TimePrecision.Exact, null, new LocalTime(begins % 12, 0), new LocalTime(begins % 12, 0)), null) };
        // "usual 8 and usual 6.15": what has its minutes in a key has none beside its name, before another with its time.
        for (var i = 1; i + 3 < terms.Count; i++)
            if (terms[i] is { Kind: TermKind.Number, IsWhole: true, Number: >= 1 and <= 12, Clock: not null } && IsWhole(terms[i - 1]) && terms[i + 1].Is(Sense.And) && IsWhole(terms[i + 2]) && IsTime(terms[i + 3])) terms[i] = terms[i] with { Kind = TermKind.Time, At = true };
        for (var i = 2; i < terms.Count; i++)
        {
            if (terms[i] is not { Kind: TermKind.Word } word || word.ValueOf(Sense.NumberWord) is not { } value || !int.TryParse(value, System.Globalization.CultureInfo.InvariantCulture, out var hour) || hour is < 1 or > 12) continue;
            if (!(terms[i - 1].IsSymbol(",") || terms[i - 1].Is(Sense.And)) || !(IsTime(terms[i - 2]) || terms[i - 2] is { Kind: TermKind.Number, Clock: not null })) continue;
            if (i + 1 < terms.Count && (terms[i + 1].Is(Sense.Unit) || terms[i + 1].Is(Sense.Each) || terms[i + 1].Is(Sense.EachSide) || terms[i + 1].Is(Sense.Times) || terms[i + 1].Is(Sense.Spots) || terms[i + 1].Is(Sense.Side) || terms[i + 1].NamesEvent || terms[i + 1].Kind == TermKind.Word && terms[i + 1].Meanings.Length == 0)) continue;
            var time = new LocalTime(hour, 0);
            terms[i] = word with { Kind = TermKind.Number, Number = hour, Text = value, Meanings = [], Clock = new ClockSpan(new ClockTime(time, HalfOfDay.Unknown, CareRecords.Records.TimePrecision.Exact, null, time, time), null) };
        }
    }

    private static (List<ClockSpan> List, int Taken) Run(List<Term> terms, int at)
    {
        var list = new List<ClockSpan> { terms[at].Clock! };
        var (taken, next, bare, commas) = (1, at + 1, terms[at].Kind == TermKind.Time ? 0 : 1, 0);
        while (true)
        {
            var i = next;
            var (joined, slash) = (0, false);
            while (i < terms.Count && i - next < 3 && (terms[i].IsSymbol(",") || terms[i].IsSymbol("/") || terms[i].Is(Sense.And) || (terms[i].Kind == TermKind.Word && terms[i].Is(Sense.At)) || terms[i].IsSymbol("+") || terms[i].Text == "an" && i + 1 < terms.Count && IsTime(terms[i + 1]) || IsOrdinal(terms, i) || IsThen(terms, i))) { slash |= terms[i].IsSymbol("/"); i++; joined++; }
            if (i >= terms.Count || !(IsTime(terms[i]) || IsCandidate(terms, i, list.Count))) break;
            if ((list.Count > bare || !terms[at].IsWhole) && GoesBack(terms, i)) break;
            if (!Follows(list[^1], terms[i].Clock!))
            {
                // "3, 3, 2, 2": where one of a row of bare numbers is no time, none is.
                if (joined > 0 && bare == list.Count && terms[i].Kind == TermKind.Number) return ([list[0]], 1);
                // "06h40 3 3 2 2": nor is one of a row behind a time.
                if (joined == 0 && bare > 0 && commas == 0 && terms[i].Kind == TermKind.Number && terms[i - 1].Kind == TermKind.Number) return ([list[0]], 1);
                break;
            }
            // "R 5 / 15h00 ditto": a stroke parts a number from the time of the next event.
            if (slash && (terms[i].Kind == TermKind.Time) != (terms[at].Kind == TermKind.Time)) break;
            if (terms[i].Kind != TermKind.Time) bare++;
            if (joined > 0) commas++;
            list.Add(terms[i].Clock!);
            next = i + 1;
            taken = next - at;
        }
        // "06h40 3 3 2 2": hours that would run on past the next morning are minutes.
        if (bare > 2 && commas == 0 && list.Count > 3 && Enumerable.Range(1, list.Count - 1).Sum(k => Step(list[k - 1], list[k])) > LongestDayMinutes) return ([list[0]], 1);
        // "physio 7.20, 7.05 salbutamol", "O2 to 0.25 L at 2 pm, 2.30 pm SpO2 95": the last time is of what follows it.
        var ofNext = at > 0 && (terms[at - 1].NamesEvent || IsFlow(terms, at - 1)) && next < terms.Count && terms[next].Kind == TermKind.Word && terms[next].NamesEvent && terms[next].Areas is null && terms[next - 1].Kind == TermKind.Time
            // "turned the oxygen off at ten, and at eleven he was 95"
            || next + 2 < terms.Count && terms[next].Text is "he" or "she" or "it" or "sats" && terms.Skip(next + 1).Take(2).Any(t => t is { Kind: TermKind.Number, IsWhole: true, Number: >= LeastReading and <= 100 });
        if (list.Count >= 2 && commas > 0 && ofNext)
        {
            list.RemoveAt(list.Count - 1);
            next--;
            while (next > at + 1 && terms[next - 1].Kind is TermKind.Symbol or TermKind.Word) next--;
            taken = next - at;
            if (list.Count == 1) return (list, 1);
        }
        // "puffer 6.25, 2": who writes minutes writes them twice; "puffer 8am, 4" may be two times.
        if (terms[at].Kind == TermKind.Time && terms[at].Clock!.Start.Time.Minute != 0 && at > 0 && list.Count == 2 && bare == 1 && terms[next - 1] is { Kind: TermKind.Number, IsWhole: true, Number: <= 12 } && Enumerable.Range(Math.Max(0, at - 2), at - Math.Max(0, at - 2)).Any(k => terms[k].Is(Sense.Device) || terms[k].Text == "puffs" || IsInhaled(terms[k])))
        {
            terms[next - 1] = terms[next - 1] with { Kind = TermKind.Quantity, Unit = Unit.Puffs, Clock = null };
            return ([list[0]], 1);
        }
        // "puffer 2, 6.25": the number is an amount; so is the 6 of "amox 6 0700 1500 2300".
        if (terms[at].Kind == TermKind.Number && at > 0 && list.Count == 2 && terms[next - 1].Kind == TermKind.Time && (terms[at - 1].Is(Sense.Device) || IsInhaled(terms[at - 1]))) return ([list[0]], 1);
        if (terms[at].Kind == TermKind.Number && at > 0 && list.Count >= 3 && (terms[at - 1].Is(Sense.Medicine) || terms[at - 1].Is(Sense.Device)) && Enumerable.Range(at + 1, next - at - 1).All(k => terms[k].Kind != TermKind.Number)) return ([list[0]], 1);
        // "inhaler 4, 6.45 chest": the number is an amount, the time opens what follows.
        if (terms[at].Kind == TermKind.Number && at > 0 && (terms[at - 1].Is(Sense.Device) || terms[at - 1].Is(Sense.Medicine)) && next < terms.Count && terms[next].NamesEvent) return ([list[0]], 1);
        // "at four o'clock, three and three": the same number twice is minutes.
        if (list.Count >= 3 && terms[at].Kind == TermKind.Time && list.Skip(1).All(t => t.Start.Time == list[1].Start.Time)) return ([list[0]], 1);
        // One or two bare numbers alone are a list only when written as one ("8, 2", "10 / 10").
        var sure = bare == 0 || (bare < list.Count && commas > 0) || (bare < list.Count && list.Count > 2) || (list.Count > 2 && commas >= list.Count - 2);
        sure |= list.Count == 2 && commas == 1 && at > 0 && (terms[at - 1].Is(Sense.Medicine) || terms[at - 1].Is(Sense.Antibiotic)) && !terms[at - 1].Is(Sense.Device);
        // "chest 7 12 7 same", "chest 7 7 bases 3 each", "amoxi 8 2 8": times, because what follows tells the minutes, or nothing could be counted.
        sure |= list.Count >= 2 && at > 0 && (((terms[at - 1].Is(Sense.Session) || terms[at - 1].Is(Sense.Technique)) && next < terms.Count && (terms[next].Kind == TermKind.Reference || terms[next].Areas is not null || (!terms[next].Is(Sense.Each) && MinutesLater(terms, next))))
            || (list.Count >= 3 && terms[at - 1].ValueOf(Sense.Medicine) is { } medicine && CareRecords.Records.Medicines.ClassOf(medicine) == CareRecords.Records.MedicineClass.SystemicAntibiotic));
        // "11 and 3 both done same", "did seven, eleven, three and seven all the same"
        sure |= list.Count >= 2 && next + 1 < terms.Count && terms[next].Text is "both" or "all" && (terms[next + 1].Text is "done" or "did" || terms[next + 1].Kind == TermKind.Reference || terms[next + 1].Is(Sense.AllDone)) && (list.Count > 2 || commas > 0);
        sure |= list.Count >= 3 && terms[at] is { Kind: TermKind.Time, At: true } && commas >= list.Count - 1;
        sure |= list.Count >= 3 && at > 0 && terms[at - 1].Text is "did" or "done at" or "we did" or "i did";
        // "co-amoxiclav 5 ml 8 and 8": after the amount only times are left.
        // "done twice, 8 and 5": as many times as were counted.
        sure |= list.Count >= 2 && commas == list.Count - 1 && Enumerable.Range(Math.Max(0, at - 4), at - Math.Max(0, at - 4)).Any(k => (terms[k].Kind is TermKind.Times or TermKind.Number && terms[k].Number == list.Count && k + 1 < at && (terms[k].Kind == TermKind.Times || terms[k + 1].Is(Sense.Times))) || (terms[k].Text == "twice" && list.Count == 2) || (terms[k].Text == "thrice" && list.Count == 3));
        sure |= list.Count >= 2 && (commas == list.Count - 1 || list.Count >= 3) && at > 1 && terms[at - 1] is { Kind: TermKind.Quantity, Unit: Unit.Ml or Unit.Mg or Unit.Puffs } && terms.Take(at).Any(t => t.Is(Sense.Medicine) || t.Is(Sense.Antibiotic) || t.Is(Sense.Device));
        // "at 7 11 3 and 7": hours of a day that lie well apart; minutes do not.
        sure |= list.Count >= (at > 0 && terms[at - 1].Is(Sense.At) ? 3 : 4) && Enumerable.Range(1, list.Count - 1).All(k => (Minutes(list[k].Start.Time) - Minutes(list[k - 1].Start.Time) + 720) % 720 >= WellApartMinutes);
        // "3, 3, 2, 2": minutes come twice, hours do not.
        if (list.Count > 2 && bare == list.Count && Enumerable.Range(1, list.Count - 1).Any(k => list[k].Start.Time == list[k - 1].Start.Time)) sure = false;
        return sure ? (list, taken) : ([list[0]], 1);
    }

    // "the first at noon and the second at 9 p.m."
    private static bool IsOrdinal(List<Term> terms, int at) => terms.Take(at).Any(t => t.Is(Sense.First))
        && (terms[at].Text == "the" && at + 1 < terms.Count && IsOrdinal(terms, at + 1) || terms[at].Text is "second" or "third" or "second one" or "third one" && at + 1 < terms.Count && IsTime(terms[at + 1]));

    // "at 7 and then 1": a time like the others, if nothing else is told of it.
    private static bool IsThen(List<Term> terms, int at) => terms[at].Text is "then" or "and then" or "again" && at + 1 < terms.Count && terms[at + 1].Clock is not null && (at + 2 >= terms.Count || terms[at + 2].Kind is TermKind.Symbol or TermKind.Reference || terms[at + 2] is { Kind: TermKind.Quantity, Unit: Unit.Min } || terms[at + 2].Is(Sense.And) || IsThen(terms, at + 2));

    // "7am, 12 and 5pm, 4 and 3": minutes of two areas. Hours that went back by one or two would lie nearly half a day apart.
    private static bool GoesBack(List<Term> terms, int at) => TimeGrammar.IsPairOfMinutes(terms, at) && terms[at].Number != terms[at + 2].Number
        && !(at + 3 < terms.Count && (terms[at + 3].Kind is TermKind.Number or TermKind.Time || terms[at + 3].IsSymbol(",") && at + 4 < terms.Count && terms[at + 4].Kind is TermKind.Number or TermKind.Time));

    // "3 bottoms and 2 tops", "3 lower 2 upper": minutes stand before their places, and none after the last.
    private static bool BeforePlaces(List<Term> terms, int at)
    {
        var (i, pairs) = (at, 0);
        while (i + 1 < terms.Count && terms[i] is { Kind: TermKind.Number } && terms[i + 1].Is(Sense.Area))
        {
            i += 2;
            pairs++;
            if (i < terms.Count && (terms[i].Is(Sense.And) || terms[i].IsSymbol(",") || terms[i].IsSymbol("+")) && i + 2 < terms.Count && terms[i + 2].Is(Sense.Area)) i++;
        }

        return pairs > 1 && !(i < terms.Count && terms[i].Kind is TermKind.Number or TermKind.Quantity);
    }

    private static bool IsFlow(List<Term> terms, int at) => terms[at] is { Kind: TermKind.Quantity, Unit: Unit.Litre or Unit.MlMin } || terms[at].Kind == TermKind.Number && terms.GetRange(Math.Max(0, at - 3), Math.Min(3, at)).Exists(t => t.Is(Sense.OxygenLabel));

    private static bool IsInhaled(Term term) => term.ValueOf(Sense.Medicine) is { } medicine && CareRecords.Records.Medicines.ClassOf(medicine) is CareRecords.Records.MedicineClass.Bronchodilator or CareRecords.Records.MedicineClass.InhaledSteroid;

    private static bool MinutesLater(List<Term> terms, int at)
    {
        for (var i = at; i + 1 < terms.Count; i++)
        {
            if (terms[i] is { Kind: TermKind.Quantity, Unit: Unit.Min } || (terms[i].Kind == TermKind.Number && (terms[i + 1].Is(Sense.Each) || terms[i + 1].Is(Sense.EachSide)))
                || (terms[i + 1].Kind == TermKind.Number && (terms[i].Is(Sense.SideArea) || terms[i].Is(Sense.Side) || terms[i].Text is "l" or "r"))) return true;
            if (terms[i].Kind == TermKind.Time || terms[i].IsSymbol(".")) return false;
        }
        return false;
    }

    private static bool IsWhole(Term term) => term.Areas is not null || term.Is(Sense.Usual) || term.Kind == TermKind.Reference;

    private static bool IsTime(Term term) => term is { Kind: TermKind.Time, Clock: not null } && term.Times.Count == 0;

    private static bool IsCandidate(List<Term> terms, int at, int listed = 0) => terms[at] is { Kind: TermKind.Number, Clock: not null }
        && (terms[at].IsWhole ? terms[at].Number <= 12 || terms[at].Text.Length == 3 : terms[at].Text.Length >= 4)
        && !(at + 1 < terms.Count && !(listed > 1 && terms[at].Text.Length >= 3) && !(listed > 2 && terms[at + 1].Is(Sense.Technique)) && terms[at + 1].NamesEvent && terms[at + 1].Kind != TermKind.Reference)
        && !(at + 1 < terms.Count && (terms[at + 1].Is(Sense.Side) || terms[at + 1].Is(Sense.Area) || terms[at + 1].Is(Sense.SideArea)) && !(at + 2 < terms.Count && (terms[at + 2].Kind == TermKind.Number || terms[at + 2].Is(Sense.Area) || terms[at + 2].Is(Sense.Side))))
        && !(at + 1 < terms.Count && (terms[at + 1].Is(Sense.Times) || terms[at + 1].Is(Sense.Spots) || terms[at + 1].Is(Sense.Each) && !(terms[at + 1].Text == "all" && at + 2 < terms.Count && (terms[at + 2].Kind == TermKind.Reference || terms[at + 2].Areas is not null || terms[at + 2].Is(Sense.Usual))) || terms[at + 1].Is(Sense.EachSide) || (terms[at + 1].Glued && terms[at + 1].Kind != TermKind.Symbol)))
        && !BeforePlaces(terms, at)
        // "CPT 6:50a LLL 3 RLL 3, 4:20p": the minutes of the second place.
        && !(at > 2 && terms[at - 1].Is(Sense.SideArea) && terms[at].Number <= 12 && Enumerable.Range(1, at - 2).Any(k => terms[k - 1].Is(Sense.SideArea) && terms[k].Kind is TermKind.Number or TermKind.Quantity))
        // "under 3, up 2, 13.00 same": of the second area.
        && !(at > 2 && terms[at - 1].Is(Sense.Area) && terms[at].Number <= 12 && Enumerable.Range(1, at - 2).Any(k => terms[k - 1].Is(Sense.Area) && terms[k].Kind is TermKind.Number or TermKind.Quantity))
        && !(at > 1 && terms[at].Text.Length == 3 && terms[at].Number % 5 == 0 && terms[at - 1].Kind == TermKind.Time && terms.Take(at - 1).Any(t => t.NamesFeed) && !terms.Take(at - 1).Any(t => t.Is(Sense.Session) || t.Is(Sense.Technique)))
        && !terms[at].Glued;

    private static bool Follows(ClockSpan before, ClockSpan after)
    {
        // "0700-0720 and 1715-1735"
        if (before.End is not null && after.End is not null) return (Minutes(after.Start.Time) - Minutes(before.End.Time) + 1440) % 720 is >= LeastStepMinutes and <= 660;
        if (before.End is not null || after.End is not null) return false;
        var (known, other) = (before.Start, after.Start);
        var step = Step(before, after);
        var most = known.Half != HalfOfDay.Unknown && other.Half != HalfOfDay.Unknown ? 16 * 60 : step == 720 ? 720 : MostStepMinutes + 180;
        return step is >= LeastStepMinutes && step <= most;
    }

    // The shortest way on from one time to the next.
    private static int Step(ClockSpan before, ClockSpan after)
    {
        var (known, other) = (before.Start, after.Start);
        var step = Minutes(other.Time) - Minutes(known.Time);
        if (known.Half != HalfOfDay.Unknown && other.Half != HalfOfDay.Unknown) return step < 0 ? step + 1440 : step;
        step = ((step % 720) + 720) % 720;
        return step == 0 ? 720 : step;
    }

    private static int Minutes(LocalTime time) => time.Hour * 60 + time.Minute;
}
