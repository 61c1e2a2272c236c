using CareRecords.Import.Reading;

namespace CareRecords.Import.Notes;

/// <summary>
/// Bare numbers that stand where a time belongs: "5 chest", "CHEST 730", "feed off 6", "chest 6". Numbers that could as well be
/// minutes or a slip ("physio 7 3 3 3 3", "7.3 perc") are marked to be asked about; "2560 CPT" as impossible.
/// </summary>
internal static class SlotTimes
{
    /// <summary>Puts the times of a chunk in place.</summary>
    public static void Reduce(List<Term> terms)
    {
        if (terms.Exists(t => t.Kind is TermKind.BadTime)) return;
        for (var i = 0; i < terms.Count; i++)
        {
            var term = terms[i];
            if (term.Kind == TermKind.Number && term.Number > 24 && At(terms, i + 1) is { Glued: true, Text: "h" } && At(terms, i + 2) is { Glued: true, Kind: TermKind.Number })
            {
                terms[i] = term with { Kind = TermKind.BadTime, End = terms[i + 2].End, Clock = null };
                terms.RemoveRange(i + 1, 2);
                return;
            }
            if (term.Kind == TermKind.Number && Slot(terms, i)) { if (terms[i].Kind == TermKind.Time) Onward(terms, i); return; }
        }
    }

    // "610 pump off 625 inhaler 645 chest": after one bare time, numbers of three or four figures that run on, each before what was done.
    private static void Onward(List<Term> terms, int at)
    {
        if (terms[at] is not { Text.Length: >= 3, Clock.Start: { } last }) return;
        for (var i = at + 2; i + 1 < terms.Count; i++)
        {
            if (terms[i] is not { Kind: TermKind.Number, IsWhole: true, Text.Length: >= 3, Clock: { Start: { } next } clock } || next.Time.Minute % 5 != 0 || terms[i].Glued) continue;
            var step = (next.Time.Hour * 60 + next.Time.Minute - last.Time.Hour * 60 - last.Time.Minute + 720) % 720;
            if (step is 0 or > 300 || !terms[i + 1].NamesEvent || terms[i + 1].Is(Sense.SatLabel) || IsFeed(terms[i - 1]) || terms[i - 1].Is(Sense.Bottle) || terms[i - 1].Is(Sense.Medicine)) continue;
            terms[i] = terms[i] with { Kind = TermKind.Time, Clock = clock };
            last = next;
        }
    }

    private static bool Slot(List<Term> terms, int i)
    {
        var term = terms[i];
        var timed = terms.Exists(t => t.Kind == TermKind.Time);
        var (before, after) = (Previous(terms, i), Next(terms, i + 1));
        // "salbutamol 2 puffs 7": a number alone at the end of a dose; "neb 11": a nebuliser is not counted in puffs.
        if (!timed && term.Clock is not null && (term.IsWhole ? term.Number <= 12 || term.Text.Length == 3 : true) && (At(terms, i + 1) is null || (term.Text.Length >= 3 && (At(terms, i + 1)!.Is(Sense.TempLabel) || At(terms, i + 1)!.Is(Sense.SatLabel) || At(terms, i + 1)!.Kind == TermKind.Symbol))) && before is { Kind: TermKind.Quantity, Unit: Unit.Puffs or Unit.Ml or Unit.Mg or Unit.Mcg } && terms.Take(i).Any(t => t.Is(Sense.Medicine) || t.Is(Sense.Device))
            || !timed && term is { IsWhole: true, Number: <= 12, Clock: not null } && (At(terms, i + 1) is null || At(terms, i + 1) is { Kind: TermKind.Reference }) && before is not null && terms.Take(i).Any(t => t.Start == before.Start && t.Is(Sense.Device) && t.Text.StartsWith("neb", StringComparison.Ordinal)) && term.Start > before.End - 1)
        {
            terms[i] = term with { Kind = TermKind.Time };
            return true;
        }
        // "4 physios", "four claps again at the same times" count them.
        if (after is { Kind: TermKind.Word } && (after.Is(Sense.Session) || after.Is(Sense.Technique) && term.Is(Sense.NumberWord)) && after.Text.EndsWith('s') && term is { IsWhole: true, Number: <= 8 }) return false;
        // "she reports 2 CPT, times not taken"
        if (after is { Kind: TermKind.Word } && after.Is(Sense.Session) && term is { IsWhole: true, Number: >= 2 and <= 6, Text.Length: 1 } && before?.Text is "reports" or "reported" or "managed" or "manages" or "only") return false;
        // "3.30 feed 180 done 4": when it ended.
        if (timed && before is not null && before.Is(Sense.Stop) && At(terms, i + 1) is null && term is { IsWhole: true, Number: <= 12, Clock: not null } && terms.Take(i).Any(IsFeed) && terms.FindIndex(t => t.Kind == TermKind.Time) < i - 1) { terms[i] = term with { Kind = TermKind.Time }; return true; }
        if (!timed && IsHourOfFeed(terms, i)) { terms[i] = term with { Kind = TermKind.Time }; return true; }
        var leads = IsLead(terms, i) && after is not null && (after.NamesEvent || after is { Kind: TermKind.Parts, Parts.Count: >= 3 } || after.Is(Sense.Stop)) && !after.Is(Sense.SatLabel) && !after.Is(Sense.Sign) && !((after.Is(Sense.Mouth) || after.Is(Sense.Food)) && term.Text.Length < 3);
        var follows = before is not null && (before.Is(Sense.Session) || (before.Is(Sense.Technique) && At(terms, i + 1) is null && term.Text.Length >= 3) || ((before.Is(Sense.Stop) || before.Is(Sense.Start)) && terms.Take(i).Any(IsFeed)) || before.Is(Sense.Pump) && i > 1 && (terms[i - 2].Is(Sense.Stop) || terms[i - 2].Is(Sense.Start)) || before.Is(Sense.WakeCue)
            || (term.Text.Length == 3 && before.Is(Sense.Device)) || (before.Is(Sense.Meal) && term.Text.Length >= 3) || (term.Text.Length == 3 && before.Is(Sense.Medicine) && Next(terms, i + 1) is { } q && q is { Kind: TermKind.Quantity, Unit: Unit.Puffs }));
        if (term is { IsWhole: true, Text.Length: 4 } && term.Clock is null && !timed && (leads || (follows && before!.Is(Sense.Session))))
        {
            terms[i] = term with { Kind = TermKind.BadTime };
            return true;
        }
        if (!term.IsWhole && term.Clock is null && term.Text.Length == 3 && term.Text[1] == '.' && leads && !timed && term.Number >= 1)
        {
            terms[i] = term with { Kind = TermKind.BadTime, Meanings = [new Meaning(Sense.Clock, "ask")] };
            return true;
        }
        if (timed || term.Clock is null || !(leads || follows)) return false;
        // "150 feed" is a volume; "630 feed off" a time.
        if (leads && term.Text.Length == 3 && after is not null && IsFeed(after) && term.Number < 500) return false;
        if (term.IsWhole && term.Number > 23 && term.Text.Length < 3) return false;
        if (Counted(terms, i + 1, follows)) return false;
        var numbers = terms.Skip(i + 1).TakeWhile(t => t.Kind == TermKind.Number && t.IsWhole && t.Number < 30).Count();
        if (follows && term.Text.Length <= 2 && numbers is 1 or 3) return false;
        // "back to his usual two with the old minutes": how many.
        if (follows && before!.Areas is not null && term.Text.Length == 1 && At(terms, i + 1)?.Text is "with" or "a" or "goes" or "sessions" or "now" or "again") return false;
        if (follows && term.Text.Length <= 2 && numbers >= 2)
        {
            terms[i] = term with { Kind = TermKind.BadTime, Meanings = [new Meaning(Sense.Clock, "minutes")] };
            return true;
        }
        if (term.Text.Length <= 2 && term.Number > 12 && !leads) return false;
        terms[i] = term with { Kind = TermKind.Time };
        return true;
    }

    /// <summary>"bottle 7 5 oz", "bolus 11 180": the first of two numbers after a feed is its time, the second its amount.</summary>
    public static bool IsHourOfFeed(List<Term> terms, int at) => at > 0 && (terms[at - 1].Is(Sense.Bottle) || terms[at - 1].Is(Sense.Bolus) || terms[at - 1].Is(Sense.Milk) || terms[at - 1].Is(Sense.Feed))
        && terms[at] is { Kind: TermKind.Number, Clock: not null } hour && (!hour.IsWhole || hour.Number <= 12 || hour.Text.Length >= 3)
        && At(terms, at + 1) is { } amount && (amount is { Kind: TermKind.Quantity, Unit: Unit.Ml or Unit.Oz } || (amount.Kind == TermKind.Number && !amount.Glued && (amount.Number >= 20 || !amount.IsWhole)));

    // A number that opens its chunk, or stands after words that carry no meaning ("yest 5 chest").
    private static bool IsLead(List<Term> terms, int at)
    {
        for (var i = 0; i < at; i++)
            if (terms[i].Kind != TermKind.Word || terms[i].NamesEvent || terms[i].Is(Sense.SideArea) || terms[i].Is(Sense.Area) || terms[i].Is(Sense.Side) || terms[i].Is(Sense.Over) || terms[i].Is(Sense.Given)) return false;
        return true;
    }

    private static bool Counted(List<Term> terms, int at, bool follows)
    {
        if (At(terms, at) is not { } next) return false;
        if (next.Is(Sense.Each) || next.Is(Sense.EachSide) || next.Is(Sense.AnyArea) || next.Is(Sense.Unit) && next.Glued || next.Is(Sense.Spots) || next.Is(Sense.Times) || next.Is(Sense.Frequency) || next.IsSymbol("%")) return true;
        // "chest 3 left 3 right" are minutes; "chest 7 left 3" is a time.
        return follows && (next.Is(Sense.Side) || next.Is(Sense.Area) || next.Is(Sense.SideArea) || next.Text is "l" or "r") && !(At(terms, at + 1) is { } second && (second.Kind == TermKind.Number || second.Is(Sense.Area) || second.Is(Sense.Side)));
    }

    private static bool IsFeed(Term term) => term.Is(Sense.Feed) || term.Is(Sense.Pump) || term.Is(Sense.Bolus) || term.Is(Sense.Route) || term.Is(Sense.Milk);

    private static Term? Previous(List<Term> terms, int at) => at > 0 ? terms[at - 1] : null;

    private static Term? Next(List<Term> terms, int at)
    {
        while (at < terms.Count && terms[at].Kind == TermKind.Word && terms[at].Meanings.Length == 0) at++;
        return At(terms, at);
    }

    private static Term? At(List<Term> terms, int at) => at >= 0 && at < terms.Count ? terms[at] : null;
}
