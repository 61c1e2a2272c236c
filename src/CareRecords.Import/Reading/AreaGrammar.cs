using CareRecords.Records;

namespace CareRecords.Import.Reading;

/// <summary>
/// Reads sides, areas, techniques and minutes out of a session's terms. Places and minutes are gathered into groups:
/// minutes belong to the places before them, or after them when a group starts with minutes; one number serves all places,
/// as many numbers as places are dealt out in order.
/// </summary>
internal static partial class AreaGrammar
{
    private sealed record Place(Side? Side, ChestArea? Area, bool Both, bool Named);

    private sealed class Run
    {
        public List<Place> Places { get; } = [];

        public List<(double? Low, double? High)> Minutes { get; } = [];

        public Technique Technique { get; set; }

        public bool Each, EachSide, MinutesFirst, AnyArea, Same, OnEach;

        public int Spots;

        public bool IsEmpty => Places.Count == 0 && Minutes.Count == 0 && !EachSide && !AnyArea && Spots == 0;
    }

    /// <summary>Reads the terms; those that say nothing of areas are passed over.</summary>
    public static AreaReading Read(IReadOnlyList<Term> terms)
    {
        terms = SidesFirst(AreasFirst(SideOfEach(Upwards(terms))));
        var reading = new AreaReading();
        var runs = OfOneSide(Runs(terms, reading));
        var technique = Technique.Unknown;
        var named = runs.Where(r => r.Technique != Technique.Unknown).Select(r => r.Technique).ToList();
        // "LLL 4 / RLL 4 perc": a technique said at the end of plain runs speaks of all of them; vibration speaks of its own.
        var whole = named.FirstOrDefault(t => t == Technique.Percussion);
        reading.Technique = named.Count > 0 ? named[0] : Technique.Unknown;
        var placed = new List<AreaMinutes>();
        foreach (var run in runs)
        {
            if (run.Technique != Technique.Unknown) technique = run.Technique;
            var own = run.Technique != Technique.Unknown ? run.Technique : technique is Technique.Vibration or Technique.Other && run.Places.Count > 0 && whole == Technique.Percussion ? technique : technique != Technique.Unknown ? technique : whole;
            var entries = Entries(run, own, placed, runs.TrueForAll(r => r.Places.TrueForAll(p => p.Side is Side.Left or Side.Right))).ToList();
            // "bottoms then tops, left n right, 3 mins on each": of all the places told before without minutes.
            if (run.OnEach && run.Minutes.Count == 1)
                for (var k = 0; k < reading.Areas.Count; k++)
                    if (reading.Areas[k] is { Minutes: null } bare && bare.Technique == own) reading.Areas[k] = bare with { Minutes = run.Minutes[0].Low, MinutesHigh = run.Minutes[0].High };
            if (own != Technique.Vibration) placed.AddRange(entries);
            if (run.Places.Count == 0 && (run.AnyArea || run.Spots > 0)) reading.EverySpot.Add(own);
            reading.Areas.AddRange(entries);
        }
        foreach (var session in terms.Where(t => t.Areas is not null)) { reading.Base.AddRange(session.Areas!.Except(reading.Base)); reading.BaseWord ??= session.Mended ?? session.Text; }
        Carry(reading.Areas);
        // A word of the family's that names the places, and the places told again with their minutes.
        for (var i = reading.Areas.Count - 1; i >= 0; i--)
            if (reading.Areas[i] is { Minutes: null, Area: not ChestArea.Unknown } bare && reading.Areas.Exists(a => a.Minutes is not null && a.Side == bare.Side && a.Area == bare.Area && a.Technique == bare.Technique)) reading.Areas.RemoveAt(i);
        return reading;
    }

    // "right side only, clap lower 4 min, upper 3 min": one side, named before areas that name none.
    private static List<Run> OfOneSide(List<Run> runs)
    {
        if (runs.Count == 0 || runs[0].Places is not [{ Side: Side.Left or Side.Right, Area: null } side, ..]) return runs;
        var areas = runs.Where(r => r.Technique != Technique.Vibration).SelectMany(r => r.Places).Skip(1).ToList();
        if (areas.Count == 0 || runs[0] is { Places.Count: 1, Minutes.Count: > 0 } || !areas.TrueForAll(p => p.Side is null && p.Area is ChestArea.Lower or ChestArea.Upper)) return runs;
        runs[0].Places.RemoveAt(0);
        foreach (var run in runs)
            for (var i = 0; i < run.Places.Count; i++) run.Places[i] = run.Places[i] with { Side = run.Places[i].Side ?? side.Side };
        return runs;
    }

    // "3/3 low 2/2 high", "low L 3 R 3, up L 2 R 2": the other part of the chest, where the lower is named beside its minutes.
    private static IReadOnlyList<Term> Upwards(IReadOnlyList<Term> terms)
    {
        var lower = -1;
        for (var i = 0; i < terms.Count; i++)
        {
            if (terms[i].Is(Sense.Area, "lower") && terms[i].Text is "low" or "lower" or "down") lower = i;
            if (lower < 0 || i == lower || terms[i].Text is not ("high" or "up" or "hi")) continue;
            var before = MinutesOf(terms[i - 1]) is not null && (i + 1 >= terms.Count || terms[i + 1].Kind == TermKind.Symbol || terms[i + 1].Is(Sense.Technique)) && lower > 0 && MinutesOf(terms[lower - 1]) is not null;
            var after = i + 1 < terms.Count && (SideOf(terms[i + 1]) is not null || MinutesOf(terms[i + 1]) is not null) && lower + 1 < terms.Count && (SideOf(terms[lower + 1]) is not null || MinutesOf(terms[lower + 1]) is not null);
            if (before || after) return [.. terms.Take(i), terms[i] with { Meanings = [new Meaning(Sense.Area, "upper")] }, .. terms.Skip(i + 1)];
        }

        return terms;
    }

    // "L: lower 3 upper 2, R: lower 3 upper 2": a side and then its areas, the same ones on both sides; each area is of that side.
    private static IReadOnlyList<Term> SideOfEach(IReadOnlyList<Term> terms)
    {
        var sides = new List<(int At, List<(Term Area, Term Minutes)> Told, int End)>();
        for (var i = 0; i + 4 < terms.Count; i++)
        {
            if (terms[i].Is(Sense.Area) || terms[i].Is(Sense.SideArea) || SideOf(terms[i]) is not (Side.Left or Side.Right)) continue;
            var told = new List<(Term, Term)>();
            var next = terms[i + 1].IsSymbol(":") || terms[i + 1].IsSymbol("-") ? i + 2 : i + 1;
            while (next + 1 < terms.Count && terms[next].Is(Sense.Area) && MinutesOf(terms[next + 1]) is { Count: 1 })
            {
                told.Add((terms[next], terms[next + 1]));
                next += 2;
                if (next + 1 < terms.Count && (terms[next].IsSymbol(",") || terms[next].Is(Sense.And) || terms[next].IsSymbol("+")) && terms[next + 1].Is(Sense.Area)) next++;
            }

            if (told.Count < 2) continue;
            sides.Add((i, told, next));
            i = next - 1;
        }

        if (sides is not [var one, var other] || SideOf(terms[one.At]) == SideOf(terms[other.At]) || !one.Told.Select(t => t.Area.ValueOf(Sense.Area)).SequenceEqual(other.Told.Select(t => t.Area.ValueOf(Sense.Area)))) return terms;
        return [.. terms.Take(one.At), .. Each(one), .. terms.Skip(one.End).Take(other.At - one.End), .. Each(other), .. terms.Skip(other.End)];

        IEnumerable<Term> Each((int At, List<(Term Area, Term Minutes)> Told, int End) side) => side.Told.SelectMany(t => new[] { terms[side.At], t.Area, t.Minutes });
    }

    // "left 3 low 2 top": minutes before each area of a side; the same as "left low 3 left top 2".
    private static IReadOnlyList<Term> AreasFirst(IReadOnlyList<Term> terms)
    {
        List<Term>? turned = null;
        for (var i = 0; i + 4 < (turned ?? terms).Count; i++)
        {
            var line = turned ?? terms;
            if (line[i].Is(Sense.Area) || line[i].Is(Sense.SideArea) || SideOf(line[i]) is not (Side.Left or Side.Right)) continue;
            var (told, next) = (new List<Term>(), i + 1);
            while (next + 1 < line.Count && MinutesOf(line[next]) is { Count: 1 } && line[next + 1].Is(Sense.Area))
            {
                told.AddRange([line[i], line[next + 1], line[next]]);
                next += 2;
                if (next + 2 < line.Count && (line[next].IsSymbol(",") || line[next].Is(Sense.And)) && MinutesOf(line[next + 1]) is { Count: 1 } && line[next + 2].Is(Sense.Area)) next++;
            }

            if (told.Count < 6 || next < line.Count && MinutesOf(line[next]) is not null) continue;
            turned ??= [.. terms];
            turned.RemoveRange(i, next - i);
            turned.InsertRange(i, told);
            i += told.Count - 1;
        }

        return turned ?? terms;
    }

    // "bottom 4 left 4 right": an area, and then each side behind its minutes; the same as "bottom left 4 right 4".
    private static IReadOnlyList<Term> SidesFirst(IReadOnlyList<Term> terms)
    {
        List<Term>? turned = null;
        for (var i = 0; i + 4 < terms.Count; i++)
        {
            if (!(terms[i].Is(Sense.Area) && MinutesOf(terms[i + 1]) is { Count: 1 } && SideOf(terms[i + 2]) is Side.Left or Side.Right)) continue;
            var second = terms[i + 3].Is(Sense.And) || terms[i + 3].IsSymbol(",") || terms[i + 3].IsSymbol("+") ? i + 4 : i + 3;
            if (second + 1 >= terms.Count || MinutesOf(terms[second]) is not { Count: 1 } || SideOf(terms[second + 1]) is not (Side.Left or Side.Right) || SideOf(terms[second + 1]) == SideOf(terms[i + 2])) continue;
            if (second + 2 < terms.Count && (MinutesOf(terms[second + 2]) is not null || terms[second + 2].Is(Sense.Area))) continue;
            turned ??= [.. terms];
            (turned[i + 1], turned[i + 2]) = (turned[i + 2], turned[i + 1]);
            (turned[second], turned[second + 1]) = (turned[second + 1], turned[second]);
            i = second + 1;
        }

        return turned ?? terms;
    }

    // "all four", "all 4 places": lower and upper of both sides.
    private static bool AllFour(IReadOnlyList<Term> terms, int at, out int last)
    {
        last = at + 1;
        // "all four and three": minutes of every one of several sessions.
        if (at + 3 < terms.Count && terms[at + 2].Is(Sense.And) && terms[at + 3] is { Kind: TermKind.Number } or { Kind: TermKind.Word, Number: > 0 }) return false;
        // "07.00, 11.00, 15.00 and 19.00, all four LB 4 RB 4": the sessions.
        if (at + 2 < terms.Count && IsPlace(terms[at + 2])) return false;
        if (terms[at].Text != "all" || at + 1 >= terms.Count || terms[at + 1] is not { Kind: TermKind.Number, Number: 4 }) return false;
        if (at + 2 < terms.Count && terms[at + 2].Is(Sense.Spots)) last = at + 2;
        return last > at + 1 || terms[at + 1].Is(Sense.NumberWord) || HasMinutesAfter(terms, at + 1);
    }

    // "all 4, 2 min", "all 4 3 each": the minutes come after the places.
    private static bool HasMinutesAfter(IReadOnlyList<Term> terms, int at)
    {
        if (at + 1 < terms.Count && terms[at + 1].IsSymbol(",")) at++;
        return at + 1 < terms.Count && MinutesOf(terms[at + 1]) is { Count: 1 } && (terms[at + 1].Unit == Unit.Min || at + 2 < terms.Count && terms[at + 2].Is(Sense.Each));
    }

    private static List<Run> Runs(IReadOnlyList<Term> terms, AreaReading reading)
    {
        var runs = new List<Run>();
        var run = new Run();
        for (var i = 0; i < terms.Count; i++)
        {
            var term = terms[i];
            // "he fell asleep and I left the upper"
            if (term.Text is "left the" or "i left the" or "we left the" && i + 1 < terms.Count && terms[i + 1].Is(Sense.Area) && (!run.IsEmpty || runs.Count > 0)) { i = LeftOut(terms, i, reading); continue; }
            // "left lower three minutes, no sorry, four minutes"
            if (term.Is(Sense.Correction) && !term.Is(Sense.Not) && run.Minutes.Count > 0 && i + 1 < terms.Count && MinutesOf(terms[terms[i + 1].IsSymbol(",") && i + 2 < terms.Count ? i + 2 : i + 1]) is { Count: 1 })
            {
                // "4 minutes each side on the bottom, no sorry, 5 minutes each side on the bottom": the place is said again.
                if (run is { MinutesFirst: true, Places.Count: > 0 }) run = new Run { Technique = run.Technique };
                else run.Minutes.RemoveAt(run.Minutes.Count - 1);
                continue;
            }

            // "4 each bottoms, no tops"
            if (term.Text == "no" && i + 1 < terms.Count && IsPlace(terms[i + 1])) { i = LeftOut(terms, i, reading); continue; }
            if (term.Is(Sense.Minus)) { i = LeftOut(terms, i, reading); continue; }
            // "only 2 on the tops" is of the minutes; "bottoms only 3" and "just the bottoms" are of the place.
            if (term.Is(Sense.Only)) { reading.Only |= !(i + 1 < terms.Count && MinutesOf(terms[i + 1]) is not null) || i > 0 && IsPlace(terms[i - 1]) && !IsException(terms, i); continue; }
            if (term.ValueOf(Sense.Technique) is { } value)
            {
                var technique = TechniqueOf(value);
                // "V nil": none of it.
                var none = i + 1 < terms.Count && terms[i + 1].Is(Sense.After) ? i + 2 : i + 1;
                if (none < terms.Count && terms[none].Text is "nil" or "none") { reading.LeftOut.Add((Side.Unknown, ChestArea.Unknown, technique)); i = none; continue; }
                // A technique opens a run of its own, unless it only names what the run before is.
                if (run is { Places.Count: 0, Minutes.Count: > 0, MinutesFirst: true, EachSide: false, Technique: Technique.Unknown } && (runs.Count > 0 || technique == Technique.Other || i > 0 && terms[i - 1].Text is "of" || technique == Technique.Vibration && i > 0 && terms[i - 1] is { Kind: TermKind.Quantity, Unit: Unit.Min }) && !(technique is Technique.Other or Technique.Vibration && MinutesFollow(terms, i))) { }
                else if (technique != Technique.Percussion && run.Technique != technique && !run.IsEmpty) Close();
                else if (run.Technique != Technique.Unknown && run.Technique != technique) Close();
                else if (run.Technique == Technique.Unknown && !run.IsEmpty && run.Minutes.Count > 0 && Ahead(terms, i) && !(run.MinutesFirst && run.Places.Count == 0 && !MinutesLater(terms, i))) Close();
                run.Technique = technique;
                continue;
            }
            // "both done, 4 and 3": both sessions, not both sides.
            if (term.Text is "both" && i + 1 < terms.Count && terms[i + 1].Text is "done" or "did" or "times") continue;
            // "both 4/4/3/3": both sessions; the minutes are of places in their order.
            if (term.Text is "both" or "all" && i + 1 < terms.Count && terms[i + 1] is { Kind: TermKind.Parts, Parts.Count: > 2 }) continue;
            var placeAt = i;
            if (PlaceOf(terms, ref i) is { } places)
            {
                reading.NamesPlace = true;
                // "5 min + tops 2": the first minutes are of what is not named.
                if (run is { MinutesFirst: true, Places.Count: 0, Minutes.Count: 1 } && MinutesFollow(terms, i) && placeAt > 0 && (terms[placeAt - 1].IsSymbol("+") || terms[placeAt - 1].IsSymbol(",") || terms[placeAt - 1].Is(Sense.And))) Close();
                if (run.Minutes.Count > 0 && !(run.MinutesFirst && (run.Places.Count == 0 || !MinutesFollow(terms, i))) && !Trails(terms, i, run, places)) Close();
                else if (run.Minutes.Count > 0 && run.Places.Count > 0 && run.MinutesFirst && MinutesFollow(terms, i)) Close();
                if (run is { Minutes.Count: > 0, Places.Count: > 0 } && Trails(terms, i, run, places)) { Fill(runs, run, places); continue; }
                run.Places.AddRange(places);
                continue;
            }
            if (AllFour(terms, i, out var last))
            {
                if (run.Minutes.Count > 0 && !run.MinutesFirst) Close();
                run.Places.AddRange(from area in new[] { ChestArea.Lower, ChestArea.Upper } from side in new[] { Side.Left, Side.Right } select new Place(side, area, false, true));
                reading.NamesPlace = true;
                i = last;
                continue;
            }
            // "LL 5 min, others 3": of the places that are not named, whichever they are.
            if (term.Text is "rest" or "the rest" or "others" or "the others" && run.Places.Count + runs.Count > 0 && i + 1 < terms.Count && MinutesOf(terms[i + 1]) is [{ Low: { } others }]) { reading.Rest = others; i++; Close(); continue; }
            // "1 min on each of the four": the places before it.
            if (run.Minutes.Count > 0 && term is { Kind: TermKind.Number, Number: 4 } && i > 2 && terms[i - 1].Text is "the" or "those" or "these" && terms[i - 2].Text == "of" && terms[i - 3].Is(Sense.Each) && !(i + 1 < terms.Count && terms[i + 1].Is(Sense.Spots))) { run.AnyArea = true; continue; }
            // "3 min all 4 (L+R lower, L+R upper)": the places that are named behind it.
            if (term.Text == "all" && i + 2 < terms.Count && terms[i + 1] is { Kind: TermKind.Number, Number: 4 } && (IsPlace(terms[i + 2]) || i + 3 < terms.Count && terms[i + 2].Kind == TermKind.Symbol && IsPlace(terms[i + 3])) && i > 0 && MinutesOf(terms[i - 1]) is not null) { i++; continue; }
            // "lower two only, 4 each", "bottom two, 3 each".
            if (term is { Kind: TermKind.Number, Number: 2 } && term.Is(Sense.NumberWord) && i > 0 && terms[i - 1].Is(Sense.Area) && i + 1 < terms.Count && (terms[i + 1].Is(Sense.Only) && MinutesLater(terms, i + 1) || terms[i + 1].IsSymbol(",") && i + 3 < terms.Count && MinutesOf(terms[i + 2]) is not null && terms[i + 3].Is(Sense.Each))) continue;
            // "the two bases, 3 min each": how many there are, not minutes.
            if (term is { Kind: TermKind.Number, Number: 2 } && i + 1 < terms.Count && terms[i + 1].Is(Sense.Area) && terms[i + 1].Text.EndsWith('s') && MinutesLater(terms, i + 1)) continue;
            // "3 min x 4": of each of four places.
            if (term is { Kind: TermKind.Times, Number: 2 or 4 or 6 } many && run is { Places.Count: 0, Minutes.Count: 1 } && i > 0 && terms[i - 1] is { Kind: TermKind.Quantity, Unit: Unit.Min })
            {
                run.Spots = (int)many.Number;
                continue;
            }
            // "had him 12-5": hours, for minutes go up.
            if (term.Kind == TermKind.Number && i + 2 < terms.Count && terms[i + 1].IsSymbol("-") && terms[i + 2].Kind == TermKind.Number && terms[i + 2].Number < term.Number && terms[i + 2].Number > 0) { i += 2; continue; }
            if (MinutesOf(term) is { } minutes)
            {
                if (run.Places.Count > 0 && run.MinutesFirst && run.Minutes.Count > 0) Close();
                // "left top right top four minutes each and one minute shakes": the second number is of what follows it.
                if (run is { Places.Count: > 0, Minutes.Count: > 0, Each: true } && i > 1 && terms[i - 1].Is(Sense.And) && terms[i - 2].Is(Sense.Each) && i + 1 < terms.Count && terms[i + 1].Is(Sense.Technique)) Close();
                if (run.Places.Count == 0 && run.Minutes.Count == 0 && !run.EachSide) run.MinutesFirst = true;
                run.Minutes.AddRange(minutes);
                continue;
            }
            if (term.Is(Sense.EachSide)) { run.EachSide = true; reading.NamesPlace = true; }
            else if (term.Is(Sense.AnyArea)) run.AnyArea = true;
            else if (term.Is(Sense.Each)) { run.Each = true; if (i > 1 && terms[i - 1].Text is "on" && MinutesOf(terms[i - 2]) is not null && EndsHere(terms, i)) run.OnEach = true; }
            else if (term.Is(Sense.Spots) && i > 0 && terms[i - 1] is { Kind: TermKind.Number or TermKind.Times, Number: >= 2 and <= 12 } count && run.Minutes.Count > 0)
            {
                run.Spots = (int)count.Number;
                run.Minutes.RemoveAt(run.Minutes.Count - 1);
            }
            else if (term.Text is "the same" or "same" && run.Minutes.Count == 0 && runs.Count > 0 && (run.Places.Count > 0 || i + 1 < terms.Count && IsPlace(terms[i + 1]))) run.Same = true;
            else if (term.IsSymbol(";") && !run.IsEmpty && run.Minutes.Count > 0) Close();
            else if (term.Is(Sense.Then) && !run.IsEmpty && (run.Minutes.Count > 0 || run.Technique != Technique.Unknown)) Close();
            // "3 min each of L lower, R lower, L upper": one number for a list of places.
            // "all four places 3, 3, 2, 2": as many numbers as places.
            else if (term.IsSymbol(",") && DealsOut(terms, i, run)) continue;
            else if (term.IsSymbol(",") && run.Minutes.Count > 0 && run.Places.Count > 0 && !(run.MinutesFirst && i + 1 < terms.Count && IsPlace(terms[i + 1]) && !MinutesLater(terms, i, ofRun: true))) Close();
            else if (term.IsSymbol(",") && run.Minutes.Count > 0 && run.Technique == Technique.Vibration) Close();
            // "back 3 each side, front 2 each side": each of its own, whatever the words mean.
            else if (term.IsSymbol(",") && run is { Places.Count: 0, Minutes.Count: 1, EachSide: true } && terms.Skip(i + 1).Any(t => t.Is(Sense.EachSide))) Close();
        }
        Close();
        return runs;

        void Close()
        {
            if (!run.IsEmpty || run.Technique != Technique.Unknown) runs.Add(run);
            run = new Run();
        }
    }

    private static bool EndsHere(IReadOnlyList<Term> terms, int at) => at + 1 >= terms.Count || terms[at + 1].Kind == TermKind.Symbol || terms[at + 1].Is(Sense.Then) || terms[at + 1].Is(Sense.And);

    // After "clap 3 each" a technique ahead of new places ("clap LL 3") is a new run.
    private static bool Ahead(IReadOnlyList<Term> terms, int at) => at + 1 < terms.Count && (IsPlace(terms[at + 1]) || MinutesOf(terms[at + 1]) is not null);

    private static bool MinutesLater(IReadOnlyList<Term> terms, int at, bool ofRun = false)
    {
        for (var i = at + 1; i < terms.Count && !(ofRun && terms[i].Is(Sense.Then)); i++)
            if (MinutesOf(terms[i]) is not null) return true;
        return false;
    }

    // "R but right upper only 2 min": what is otherwise than usual, not all that was done.
    private static bool IsException(IReadOnlyList<Term> terms, int at)
    {
        var i = at - 1;
        while (i >= 0 && IsPlace(terms[i])) i--;
        return i > 0 && terms[i].Text is "but" or "except" && terms.Take(i).Any(t => t.Areas is not null || t.Kind == TermKind.Reference);
    }

    // Whether numbers with commas between, from the run's first on, are as many as its places, of which there are four or more.
    private static bool DealsOut(IReadOnlyList<Term> terms, int at, Run run)
    {
        var (count, i) = (run.Minutes.Count, at);
        while (i + 1 < terms.Count && terms[i].IsSymbol(",") && MinutesOf(terms[i + 1]) is { Count: 1 }) (count, i) = (count + 1, i + 2);
        return run is { MinutesFirst: false, Places.Count: >= 4 } && count == run.Places.Count;
    }

    private static bool MinutesFollow(IReadOnlyList<Term> terms, int at) => at + 1 < terms.Count && MinutesOf(terms[at + 1]) is not null;

    // "LEFT 4 RIGHT 4 LOW", "5/5 lower", "4 each L+R low": an area (or sides) alone at the end speaks of the minutes before it.
    private static bool Trails(IReadOnlyList<Term> terms, int at, Run run, List<Place> places)
    {
        if (MinutesFollow(terms, at) || (at + 1 < terms.Count && IsPlace(terms[at + 1]) && !(run.Places.Count == 0))) return false;
        var areaOnly = places.TrueForAll(p => p.Side is null && p.Area is not null);
        var sideOnly = places.TrueForAll(p => p.Side is not null && p.Area is null);
        return (areaOnly && run.Places.Count > 0 && run.Places.TrueForAll(p => p.Area is null)) || (sideOnly && run.Places.Count > 0 && run.Places.TrueForAll(p => p.Side is null));
    }

    private static void Fill(List<Run> runs, Run run, List<Place> places)
    {
        var open = runs.Where(r => r.Technique == run.Technique || r.Technique == Technique.Unknown || run.Technique == Technique.Unknown).Append(run).ToList();
        foreach (var r in open)
        {
            if (r == run && places.Count > 1 && places.TrueForAll(p => p.Area is not null && p.Side is null) && r.Places.TrueForAll(p => p.Area is null))
            {
                // "left and right, lower and upper"
                var sides = r.Places.ToList();
                r.Places.Clear();
                r.Places.AddRange(places.SelectMany(a => sides.Select(s => s with { Area = a.Area, Named = true })));
            }
            else if (places[0].Area is { } area && r.Places.TrueForAll(p => p.Area is null))
                for (var k = 0; k < r.Places.Count; k++) r.Places[k] = r.Places[k] with { Area = area, Named = true };
            else if (places[0].Area is null && r == run && r.Places.TrueForAll(p => p.Side is null))
            {
                var was = r.Places.ToList();
                r.Places.Clear();
                r.Places.AddRange(was.SelectMany(w => places.Select(p => w with { Side = p.Side, Both = false, Named = true })));
            }
        }
    }

    private static int LeftOut(IReadOnlyList<Term> terms, int at, AreaReading reading)
    {
        var i = at + 1;
        while (i < terms.Count)
        {
            var from = i;
            if (PlaceOf(terms, ref i) is { } places)
            {
                foreach (var place in places) reading.LeftOut.Add((place.Side ?? Side.Unknown, place.Area ?? ChestArea.Unknown, Technique.Unknown));
                i++;
                continue;
            }
            i = from;
            if (terms[i].ValueOf(Sense.Technique) is { } technique) { reading.LeftOut.Add((Side.Unknown, ChestArea.Unknown, TechniqueOf(technique))); i++; continue; }
            if (!(terms[i].Is(Sense.And) || terms[i].Text is "the" or "or" or "to" or "do")) break;
            i++;
        }
        return i - 1;
    }

    /// <summary>Marks denied places and techniques ("no tops") as left out.</summary>
    public static void Deny(IReadOnlyList<Term> denied, AreaReading reading)
    {
        for (var i = 0; i < denied.Count; i++)
        {
            var from = i;
            if (PlaceOf(denied, ref i) is { } places)
                foreach (var place in places) reading.LeftOut.Add((place.Side ?? Side.Unknown, place.Area ?? ChestArea.Unknown, Technique.Unknown));
            else { i = from; if (denied[i].ValueOf(Sense.Technique) is { } t && t == "vibration") reading.LeftOut.Add((Side.Unknown, ChestArea.Unknown, Technique.Vibration)); }
        }
    }

    private static IEnumerable<AreaMinutes> Entries(Run run, Technique technique, List<AreaMinutes> before, bool individually)
    {
        var places = Expand(run);
        var minutes = run.Minutes.Count > 0 ? run.Minutes : run.Same && before.Count > 0 ? [(before[^1].Minutes, before[^1].MinutesHigh)] : [];
        if (places.Count == 0)
        {
            if (run.Spots > 0) return Enumerable.Range(0, run.Spots).Select(_ => Entry(Side.Unknown, ChestArea.Unknown, technique, First(minutes)));
            if (technique == Technique.Vibration && (run.AnyArea || run.Each && (individually || before.Count == 2)) && minutes.Count == 1 && before.Count > 1 && before.All(IsNamed))
                return before.Select(b => new { b.Side, b.Area }).Distinct().ToList().Select(b => Entry(b.Side, b.Area, technique, minutes[0]));
            if (technique == Technique.Vibration && run.Each && minutes.Count == 1 && before.Count > 1 && before.All(b => b is { Side: Side.Unknown, Area: ChestArea.Unknown }))
                return before.ToList().Select(b => Entry(b.Side, b.Area, technique, minutes[0]));
            if (technique == Technique.Vibration && minutes.Count == 2 && before.Any(b => b.Side == Side.Left) && before.Any(b => b.Side == Side.Right))
                return [Entry(Side.Left, ChestArea.Unknown, technique, minutes[0]), Entry(Side.Right, ChestArea.Unknown, technique, minutes[1])];
            if (minutes.Count == 0 && run.Technique == Technique.Vibration) return [Entry(Side.Unknown, ChestArea.Unknown, technique, null)];
            return minutes.Select(m => Entry(Side.Unknown, ChestArea.Unknown, technique, m));
        }
        // "bottoms and tops, 4 and 3": the numbers are of the areas, of both sides each.
        if (minutes.Count > 1 && minutes.Count == run.Places.Count && run.Places.TrueForAll(p => p.Side is null && p.Area is ChestArea.Lower or ChestArea.Upper))
            return run.Places.Zip(minutes, (p, m) => new[] { Entry(Side.Left, p.Area!.Value, technique, m), Entry(Side.Right, p.Area.Value, technique, m) }).SelectMany(e => e);
        // "five minutes and three minutes, both sides": two parts of the chest, not two sides; which ones is told elsewhere.
        if (minutes.Count == 2 && minutes[0] != minutes[1] && (run.Places.Count > 0 ? run.Places.TrueForAll(p => p is { Side: Side.Both, Area: null }) : run.EachSide)) return minutes.Select(m => Entry(Side.Unknown, ChestArea.Unknown, technique, m));
        if (minutes.Count <= 1) return places.Select(p => Entry(p.Side ?? Side.Unknown, p.Area ?? ChestArea.Unknown, technique, First(minutes)));
        if (minutes.Count == places.Count) return places.Zip(minutes, (p, m) => Entry(p.Side ?? Side.Unknown, p.Area ?? ChestArea.Unknown, technique, m));
        // "lowers 3+3" with two sides each: the first number is the left of each area.
        if (minutes.Count == 2 && places.Count % 2 == 0) return places.Select(p => Entry(p.Side ?? Side.Unknown, p.Area ?? ChestArea.Unknown, technique, p.Side == Side.Right ? minutes[1] : minutes[0]));
        return places.Select((p, k) => Entry(p.Side ?? Side.Unknown, p.Area ?? ChestArea.Unknown, technique, k < minutes.Count ? minutes[k] : null));
    }

    private static bool IsNamed(AreaMinutes entry) => entry.Side is not Side.Unknown && entry.Area is not ChestArea.Unknown && !entry.Both();

    private static bool Both(this AreaMinutes entry) => entry.Side == Side.Both;

    private static List<Place> Expand(Run run)
    {
        var places = new List<Place>();
        // "lowers only, left and right, 4 min each": the areas, and then of which sides.
        var sides = run.Places.FindAll(p => p.Area is null && p.Side is not null);
        if (sides.Count > 0 && run.Minutes.Count <= 1 && run.Places.FindAll(p => p.Side is null && p.Area is ChestArea.Lower or ChestArea.Upper) is { Count: > 0 } areas && areas.Count + sides.Count == run.Places.Count && run.Places[0].Side is null)
            return [.. areas.SelectMany(a => sides.SelectMany(s => s.Side == Side.Both ? (Side[])[Side.Left, Side.Right] : [s.Side!.Value]).Select(s => a with { Side = s }))];
        foreach (var place in run.Places)
        {
            if (place.Area == ChestArea.Whole) places.Add(place with { Side = Side.Both });
            else if (place.Side == Side.Both || (place.Side is null && place.Area is ChestArea.Lower or ChestArea.Upper) || (place.Side is null && run.EachSide))
            {
                places.Add(place with { Side = Side.Left });
                places.Add(place with { Side = Side.Right });
            }
            else places.Add(place);
        }
        if (run.Places.Count == 0 && run.EachSide) return [new Place(Side.Left, null, false, true), new Place(Side.Right, null, false, true)];
        return places;
    }

    // "left base 3 and right 3": a side alone takes the area of the place before it, when written in the same words.
    private static void Carry(List<AreaMinutes> areas)
    {
        // "R 3 L bottom 3", "right 3 and left 3 low": the area of both.
        if (areas is [{ Area: ChestArea.Unknown, Side: Side.Left or Side.Right, Minutes: not null } bare, { Area: ChestArea.Lower or ChestArea.Upper, Side: Side.Left or Side.Right, Minutes: not null } named] && bare.Side != named.Side && (bare.Technique == named.Technique || bare.Technique == Technique.Unknown))
            areas[0] = bare with { Area = named.Area, Technique = named.Technique };
        for (var i = 1; i < areas.Count; i++)
        {
            var (before, now) = (areas[i - 1], areas[i]);
            if (now.Area == ChestArea.Unknown && before.Area is not (ChestArea.Unknown or ChestArea.Whole) && now.Technique == before.Technique && now.Side is Side.Left or Side.Right
                && now.Technique == before.Technique && before.Side is Side.Left or Side.Right && before.Side != now.Side && areas.Count <= 6)
                areas[i] = now with { Area = before.Area };
        }
    }

    private static (double? Low, double? High) First(List<(double? Low, double? High)> minutes) => minutes.Count > 0 ? minutes[0] : (null, null);

    private static AreaMinutes Entry(Side side, ChestArea area, Technique technique, (double? Low, double? High)? minutes) =>
        new(side, area, technique, minutes?.Low, minutes?.High);
}
