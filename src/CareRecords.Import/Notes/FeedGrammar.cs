using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Notes;

/// <summary>One feed as a group's words tell it.</summary>
internal sealed class FeedReading
{
    /// <summary>Volume, ml; null when not said.</summary>
    public double? Millilitres { get; set; }

    /// <summary>Whether the volume was written with its unit.</summary>
    public bool IsVolume { get; set; }

    /// <summary>Whether the words say that it was started or stopped.</summary>
    public bool IsExplicit { get; set; }

    /// <summary>Rate, ml an hour; null when not said.</summary>
    public double? Rate { get; set; }

    /// <summary>Route.</summary>
    public FeedRoute Route { get; set; }

    /// <summary>True when its time is the feed's end ("feed off 6").</summary>
    public bool IsEnd { get; set; }

    /// <summary>True when it was stopped at a part of its volume ("180 ml, stopped at 100").</summary>
    public bool StoppedShort { get; set; }

    /// <summary>Whether it ended at the moment of writing.</summary>
    public bool EndsNow { get; set; }

    /// <summary>Minutes it took; null when not said.</summary>
    public double? Minutes { get; set; }
}

/// <summary>Reads a feed: by pump, bolus, bottle, tube or mouth; on or off; volume and rate.</summary>
internal static class FeedGrammar
{
    private const double LeastBareMillilitres = 20;
    private const double MostBareMillilitres = 1500;
    private const double MostBareRate = 150;

    /// <summary>The feed of a group's terms; null when they tell of none.</summary>
    /// <param name="terms">The group's terms.</param>
    /// <param name="used">Positions of used terms, added to.</param>
    /// <param name="timed">Whether the group has a time or a meal of its own.</param>
    /// <param name="clocked">Whether the time is a clock time.</param>
    /// <param name="hasOther">Whether the group tells of a vomit, which makes "feed" its content.</param>
    /// <param name="hasDose">Whether the group tells of a dose, whose ml are not a feed's.</param>
    /// <param name="time">The group's one time; null when it has none.</param>
    public static FeedReading? Read(IReadOnlyList<Term> terms, HashSet<int> used, bool timed, bool clocked, bool hasOther, bool hasDose, Term? time = null)
    {
        var feed = new FeedReading();
        var (heads, mouth, food, tube, pump, start, stop) = (0, false, false, false, false, -1, -1);
        for (var i = 0; i < terms.Count; i++)
        {
            var term = terms[i];
            if (IsMention(terms, i) || (term.Is(Sense.Pump) && IsInhaler(terms, i))) continue;
            if (term.Is(Sense.Feed) || term.Is(Sense.FeedRunning) || term.Is(Sense.Milk)) heads++;
            if (term.Is(Sense.Bottle)) { heads++; mouth = true; }
            if (term.Is(Sense.Bolus)) { heads++; tube = true; }
            if (term.Is(Sense.Pump)) { heads++; pump = true; }
            if (term.Is(Sense.FeedRunning) || term.Text.Contains("tube", StringComparison.Ordinal) && term.Is(Sense.Feed)) tube = true;
            if (term.Is(Sense.Route)) tube = true;
            if (term.Is(Sense.Mouth)) mouth = true;
            if (term.Is(Sense.Food)) food = true;
            if ((term.Is(Sense.Start) && !FlowFollows(terms, i)) || (term.IsSymbol("↑") && IsFed(terms, i - 1))) start = i;
            if (term.IsSymbol("↓") && IsFed(terms, i - 1)) stop = i;
            if (pump && term.Is(Sense.StoppedEarly) || heads > 0 && clocked && term.Is(Sense.OnHold) && start < 0) stop = i;
            if (term.Is(Sense.Stop) && !(term.Is(Sense.Over) && term.Text == "over") && !(term.Text == "down" && heads == 0) && !(term.Text.EndsWith("down", StringComparison.Ordinal) && IsWayIn(terms, i + 1)) && !(term.Text == "done" && heads == 0)) stop = i;
            if (term is { Unit: Unit.Rate, Kind: TermKind.Quantity }) { feed.Rate = term.Number; used.Add(i); }
        }
        // "vomit approx 50ml, pump off": what came up is no feed.
        for (var i = 0; i < terms.Count && hasOther; i++)
            if (terms[i] is { Kind: TermKind.Quantity, Unit: Unit.Ml } && Enumerable.Range(Math.Max(0, i - 3), Math.Min(3, i)).Any(k => terms[k].Is(Sense.Sign, "vomit") && !Enumerable.Range(k, i - k).Any(b => terms[b].Kind == TermKind.Symbol))) used.Add(i);
        // "we gave 150 ml at 11.15": too much for a medicine.
        if (heads == 0 && timed && clocked && !hasDose && terms.Any(t => t.Is(Sense.Given)) && terms.Any(t => t is { Kind: TermKind.Quantity, Unit: Unit.Ml, Number: >= 40 })) heads++;
        // "gave him 150 down the tube"
        if (heads == 0 && tube && timed && clocked && !hasDose && terms.Any(t => t.Is(Sense.Given)) && terms.Count(t => t is { Kind: TermKind.Number, IsWhole: true, Number: >= 40 }) == 1) heads++;
        // "75 ng at 5pm"
        if (heads == 0 && clocked && !hasDose && NumberAtRoute(terms)) heads++;
        // "tea 4.15-4.45 180": a meal that is counted.
        if (heads == 0 && timed && clocked && !hasDose && !hasOther && terms.Any(t => t.Is(Sense.Meal)) && terms.Count(t => t is { Kind: TermKind.Quantity, Unit: Unit.Ml, Number: >= 40 } or { Kind: TermKind.Number, IsWhole: true, Number: >= 60 } && t.Number % 5 == 0) == 1 && terms.All(t => t.Is(Sense.Meal) || t.Is(Sense.At) || t.Kind is TermKind.Number or TermKind.Quantity or TermKind.Symbol)) heads++;
        if (heads == 0 && feed.Rate is null && !(tube && (start >= 0 || stop >= 0 || terms.Any(t => t is { Kind: TermKind.Quantity, Unit: Unit.Ml }))) && !(mouth && timed) && !(food && (clocked || mouth) && timed && !hasOther)) return null;
        // "amox/clav 6 ml GT": the tube is the medicine's way.
        if (hasDose && heads == 0 && feed.Rate is null) return null;
        if (hasOther && start < 0 && stop < 0 && feed.Rate is null && !mouth && !AmountAfterHead(terms) && !NumberAtRoute(terms)) return null;
        if (heads == 0 && feed.Rate is null && !tube && !timed) return null;
        for (var i = 0; i < terms.Count; i++) Volume(terms, i, feed, used, hasDose, (food || mouth) && heads == 0);
        // "pump on 50": what a pump is set to.
        if ((pump || start >= 0 && heads > 0 && !mouth && !terms.Any(t => t.Is(Sense.Bolus)) && terms[start].Text is "on" or "running" or "connected" or "↑") && start >= 0 && feed is { Rate: null, Millilitres: { } set, IsVolume: false } && set <= MostBareRate) (feed.Rate, feed.Millilitres) = (set, null);
        feed.Route = feed.Rate is not null && !mouth ? FeedRoute.PumpedTube : pump ? FeedRoute.PumpedTube : terms.Any(t => t.Is(Sense.Bolus)) ? FeedRoute.BolusTube : tube ? FeedRoute.Tube : mouth || food && heads == 0 ? FeedRoute.Oral : FeedRoute.Unknown;
        if (feed.Route == FeedRoute.PumpedTube && !pump && !tube && terms.Any(t => t.Is(Sense.Milk)) && terms.Any(t => t.Is(Sense.OnHold))) feed.Route = FeedRoute.Unknown;
        feed.IsEnd = stop >= 0 && !(start > stop) && !(feed.Rate is not null && terms.Any(t => t.Is(Sense.Milk)));
        // "started 11:55 finished now": the time belongs to the word beside it.
        if (start >= 0 && stop >= 0 && time is not null) feed.IsEnd = Distance(terms[stop], time) < Distance(terms[start], time);
        feed.EndsNow = !feed.IsEnd && stop >= 0 && stop + 1 < terms.Count && terms[stop + 1].Is(Sense.Now);
        feed.IsExplicit = start >= 0 || stop >= 0;
        if (feed.IsEnd && start >= 0 && start < stop && terms.Any(t => t.Text == "running")) feed.IsEnd = false;
        for (var i = 0; i < terms.Count; i++)
            if (terms[i].Kind == TermKind.Duration && feed.Minutes is null && !hasDose) { feed.Minutes = terms[i].Number; used.Add(i); }
        // "bolus 160 by gravity, 20 min"
        if (feed.Minutes is null && !hasDose && !feed.IsEnd && terms.Count(t => t is { Kind: TermKind.Quantity, Unit: Unit.Min }) == 1 && !terms.Any(t => t.Is(Sense.Session) || t.Is(Sense.Technique))) feed.Minutes = terms.First(t => t is { Kind: TermKind.Quantity, Unit: Unit.Min }).Number;
        if (feed.Minutes is not null || feed.StoppedShort) feed.IsEnd = false;
        // "porridge by spoon, she finished it": a meal that was eaten.
        if ((food || mouth) && heads == 0 && !tube && !pump) feed.IsEnd = false;
        return feed;
    }

    // "after feed", "before the feed", "brought up feed": the feed is only spoken of.
    private static bool IsMention(IReadOnlyList<Term> terms, int at)
    {
        for (var k = at - 1; k >= 0 && k >= at - 3; k--)
        {
            if (terms[k].Is(Sense.After) || terms[k].Is(Sense.Before) || terms[k].Is(Sense.Past)) return terms[at].Is(Sense.Feed) || terms[at].Is(Sense.Milk) || terms[at].Is(Sense.Bottle) || terms[at].Is(Sense.Food);
            if (terms[k].Kind != TermKind.Word || terms[k].Meanings.Length > 0) return false;
        }
        return false;
    }

    // "feed down the button": where it goes, not that it is turned down.
    private static bool IsWayIn(IReadOnlyList<Term> terms, int at)
    {
        while (at < terms.Count && (terms[at].Is(Sense.Article) || terms[at].Text is "the" or "his" or "her")) at++;
        return at < terms.Count && (terms[at].Is(Sense.Route) || terms[at].Text is "button" or "tube");
    }

    // "Bolus 80, threw up half of it"
    private static bool AmountAfterHead(IReadOnlyList<Term> terms)
    {
        for (var i = 0; i + 1 < terms.Count; i++)
            if ((terms[i].Is(Sense.Bolus) || terms[i].Is(Sense.Bottle) || terms[i].Is(Sense.Feed)) && (terms[i + 1] is { Kind: TermKind.Quantity, Unit: Unit.Ml or Unit.Oz } or { Kind: TermKind.Number, IsWhole: true, Number: >= 20 })) return true;
        return false;
    }

    // "75 ng", "120 peg": a volume without its unit, beside the way that it goes.
    private static bool NumberAtRoute(IReadOnlyList<Term> terms) => !terms.Any(t => t.Is(Sense.SatLabel)) && Enumerable.Range(1, Math.Max(0, terms.Count - 1)).Any(i => terms[i].Is(Sense.Route) && terms[i - 1] is { Kind: TermKind.Number, IsWhole: true, Number: >= LeastBareMillilitres });

    // Characters between a word and a time; before the time is nearer than after it.
    private static int Distance(Term word, Term time) => word.End <= time.Start ? 2 * (time.Start - word.End) : 2 * (word.Start - time.End) + 1;

    // "pump↓ 0555": turned off.
    private static bool IsFed(IReadOnlyList<Term> terms, int at) => at >= 0 && (terms[at].Is(Sense.Pump) || terms[at].Is(Sense.Feed) || terms[at].Is(Sense.Milk));

    // "Pump 2 puffs": an inhaler, in some countries.
    internal static bool IsInhaler(IReadOnlyList<Term> terms, int at) => terms.Skip(at + 1).Take(3).Any(t => t is { Kind: TermKind.Quantity, Unit: Unit.Puffs }) || (at > 0 && terms[at - 1] is { Kind: TermKind.Quantity, Unit: Unit.Puffs });

    private static bool FlowFollows(IReadOnlyList<Term> terms, int at) => at + 1 < terms.Count
        && (terms[at + 1] is { Kind: TermKind.Quantity, Unit: Unit.Litre } || terms[at + 1].Fraction is not null || terms[at + 1].Is(Sense.Air) || terms[at + 1].Is(Sense.OxygenLabel) || terms[at + 1] is { Kind: TermKind.Number, Number: > 0 and < 1 });

    private static void Volume(IReadOnlyList<Term> terms, int i, FeedReading feed, HashSet<int> used, bool hasDose, bool eaten)
    {
        var term = terms[i];
        if (used.Contains(i)) return;
        if (term is { Kind: TermKind.Quantity, Unit: Unit.Ml or Unit.Oz })
        {
            used.Add(i);
            // "flushed 30 ml", "30 ml water flush": not a feed.
            if ((i > 0 && terms[i - 1].Is(Sense.Flush)) || (i + 1 < terms.Count && terms[i + 1].Is(Sense.Flush))) return;
            feed.StoppedShort |= StopsAt(terms, i) && feed.Millilitres is not null;
            feed.IsVolume = true;
            if (StopsAt(terms, i) || feed.Millilitres is null) feed.Millilitres = term.Unit == Unit.Oz ? VolumeReader.OfOunces(term.Number) : term.Number;
        }
        else if (!hasDose && (!eaten || i > 0 && terms[i - 1].Text is "drank" or "drunk") && term is { Kind: TermKind.Number, IsWhole: true, Number: >= LeastBareMillilitres and <= MostBareMillilitres } && !(i > 0 && (terms[i - 1].IsSymbol("@") || terms[i - 1].Is(Sense.Flush) || terms[i - 1].Is(Sense.SatLabel) || terms[i - 1].Is(Sense.PulseLabel) || terms[i - 1].Is(Sense.TempLabel))) && !(term.Number <= 100 && terms.Any(t => t.Is(Sense.SatLabel))))
        {
            feed.StoppedShort |= StopsAt(terms, i) && feed.Millilitres is not null;
            if (feed.Millilitres is null || StopsAt(terms, i)) feed.Millilitres = term.Number;
            used.Add(i);
        }
        else if (term is { Kind: TermKind.Number, IsWhole: true } && i > 0 && terms[i - 1].IsSymbol("@") && term.Number >= LeastBareMillilitres) { feed.Rate = term.Number; used.Add(i); }
    }

    private static bool StopsAt(IReadOnlyList<Term> terms, int at) => at > 1 && (terms[at - 1].Is(Sense.At) && terms[at - 2].Is(Sense.Stop) || terms[at - 1].Is(Sense.Stop) || terms[at - 1].Text is "took" or "only");
}
