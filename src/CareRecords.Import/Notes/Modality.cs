using System.Collections.Frozen;
using CareRecords.Import.Reading;

namespace CareRecords.Import.Notes;

/// <summary>Finds words that speak of what was not done, or is to be done: advice, plans, shopping, other therapies, and "no" before an event.</summary>
internal static class Modality
{
    /// <summary>Marks chunks whose words are no record. Advice runs to the end of its sentence, or of its brackets.</summary>
    public static void Mark(List<Chunk> chunks)
    {
        var (sentence, bracketed) = (-1, false);
        // "Ward plan: 5 x a day. O2 to keep 93+." is a plan to the end of its line; "4 left, please order" is shopping from its beginning.
        var planned = chunks.FindIndex(c => c.Before == ":") is var lead && lead > 0 && chunks[lead - 1].Terms.Count <= 4 && chunks[lead - 1].Terms[^1].Is(Sense.Plan) ? lead : int.MaxValue;
        var shopping = chunks.Where(c => c.Terms.Exists(t => t.Is(Sense.Shopping) && t.Text is "order" or "please order" or "need more" or "running low")).Select(c => c.Sentence).ToHashSet();
        foreach (var chunk in chunks)
        {
            // "give paracetamol 5 ml" asks for it.
            var unreal = chunk.Terms.Exists(t => IsUnreal(t) && !IsTold(chunk, t) && !(t.Is(Sense.Shopping) && t.Text is "syringe" or "syringes" && chunk.Terms.FindIndex(q => q is { Kind: TermKind.Quantity, Unit: Unit.Ml }) is >= 0 and var ml && ml < chunk.Terms.IndexOf(t))) || IsQuestion(chunk) || AsksWhether(chunks, chunk) || IsUsual(chunk) || IsAlways(chunk) || IsOfAnother(chunk) || IsNext(chunks, chunk) || (chunk.Terms.Find(t => t.Text.Any(char.IsLetter))?.Text is "give" && !chunk.Terms.Exists(t => t.Kind == TermKind.Time)) || Conditional(chunk);
            unreal |= chunks.IndexOf(chunk) >= planned || shopping.Contains(chunk.Sentence) && !chunk.Terms.Exists(t => t.Kind == TermKind.Time || t.Is(Sense.Medicine) || t.Is(Sense.SatLabel));
            unreal |= Prescribes(chunks, chunks.IndexOf(chunk)) || IsFromADayOn(chunk) || IsBackTo(chunk) || IsToBe(chunk) || chunk.Terms.Exists(t => t.Text is "when you" or "when u" or "once you") && !chunks.Exists(c => c.Terms.Exists(t => t.Kind == TermKind.Time));
            if (unreal) (sentence, bracketed) = (chunk.Sentence, chunk.Bracketed);
            var carried = sentence == chunk.Sentence && (bracketed == chunk.Bracketed || !bracketed);
            // "said start amoxicillin 5 ml three times a day, first one at 10.50": the first dose was given.
            chunk.Unreal = (unreal || carried) && !(FirstGiven(chunks, chunk)) && !(chunk.Has(Sense.First) && chunk.Terms.Exists(t => t.Kind == TermKind.Time || t is { Kind: TermKind.Offset, Text: Offsets.Writing } || t.Text == "just"));
            // "urgent care said rsv neg, azithromycin 3 ml started 12.30": a clock time with an event of its own is told, not advised.
            if (chunk.Unreal && !unreal && chunk.Before != ":" && chunk.Terms.Exists(t => t.Kind == TermKind.Time) && chunk.Terms.Exists(t => t.Is(Sense.Given) || t.Is(Sense.First) || t.Is(Sense.Start) || t.Is(Sense.Stop) || t.Is(Sense.Sign) || t.Kind is TermKind.Quantity or TermKind.Reference)) { chunk.Unreal = false; sentence = -1; }
            // Neither reaches further than its own words.
            chunk.Unreal |= IsUnsure(chunk) || LeavesOutATime(chunk) || IsSignOfAnother(chunk);
        }

        if (chunks.Find(IsUnsureOfAll) is { } unsure) foreach (var chunk in chunks) chunk.Unreal |= chunk.Sentence >= unsure.Sentence - 1 && chunk.Sentence <= unsure.Sentence;
    }

    /// <summary>"Puffer beforehand is anyone's guess": whether it was done is not known.</summary>
    public static bool IsUnsure(Chunk chunk) => IsOfEither(chunk) || chunk.Has(Sense.Unsure) && chunk.Terms.Exists(t => IsDeniable(t) && !t.Is(Sense.Sign) || t.Text == "one" || t.Is(Sense.DayPart) && chunk.Terms[0] != t);

    /// <summary>"Dad says he did it, Lily says he didn't. idk": of that sentence and the one before.</summary>
    public static bool IsUnsureOfAll(Chunk chunk) => chunk.Has(Sense.Unsure) && chunk.Terms.Count <= 4 && chunk.Terms.TrueForAll(t => t.Kind is TermKind.Word or TermKind.Symbol && !IsDeniable(t)) && !IsUnsure(chunk);

    /// <summary>"amoxicillin due 8am but sick so gave ibuprofen 8.30": a plan and what was given in one breath, with times of both.</summary>
    public static bool PlansAndTells(Chunk chunk) => chunk.Unreal && chunk.Terms.FindIndex(t => t.Is(Sense.Plan)) is >= 0 and var plan && chunk.Terms.FindIndex(plan, t => t.Is(Sense.Given)) is >= 0 and var given
        && chunk.Terms.Take(given).Skip(plan).Any(t => t.Kind == TermKind.Time) && chunk.Terms.Skip(given).Any(t => t.Kind == TermKind.Time);

    /// <summary>"physio 15 min after each, except the 4.30": one of several was left out, named by its time only.</summary>
    public static bool LeavesOutATime(Chunk chunk) => chunk.Terms.Count <= 4 && chunk.Terms[0] is { Text: "except" or "bar" or "bar the" or "apart from" } && chunk.Terms.Exists(t => t.Kind is TermKind.Time || t is { Kind: TermKind.Number, Clock: not null });

    // "has prescribed amoxicillin and he had his first spoonful, 5 ml, at five o'clock": given, with its time further on in the sentence.
    private static bool FirstGiven(List<Chunk> chunks, Chunk chunk) =>
        chunks.FindIndex(c => c.Sentence == chunk.Sentence && c.Terms.FindIndex(t => t.Is(Sense.Given)) is >= 0 and var given && c.Terms.FindIndex(given, t => t.Is(Sense.First)) >= 0) is >= 0 and var first
        && chunks.IndexOf(chunk) >= first && chunks.Skip(first).Any(c => c.Sentence == chunk.Sentence && c.Terms.Exists(t => t.Kind == TermKind.Time)) && chunks[first].Has(Sense.Medicine) && !chunks[first].Has(Sense.Plan);

    // "called clinic: R+ four times daily", "surgery rang back at 9. Chest four times a day": how often somebody said, not what was done.
    private static bool Prescribes(List<Chunk> chunks, int at)
    {
        var chunk = chunks[at];
        // "R+" may stand in a chunk of its own before "four times daily".
        if (!chunk.Has(Sense.Frequency) && !(at + 1 < chunks.Count && chunks[at + 1].Terms.Count <= 2 && chunks[at + 1].Has(Sense.Frequency))) return false;
        if (chunk.Terms.Exists(t => t.Kind == TermKind.Time || t.Is(Sense.Start) || t.Is(Sense.First) || t.Is(Sense.Given) || t.Text is "did" or "done" or "had")) return false;
        return chunk.Before == ":" && chunks[at - 1].Has(Sense.Person) || chunks.Take(at).Any(c => c.Sentence >= chunk.Sentence - 1 && c.Terms.Exists(IsCaller));
    }

    // "2 min ea starting mon", "that drops to 2 min a side from Monday": from then on.
    private static bool IsFromADayOn(Chunk chunk) => !chunk.Terms.Exists(t => t.Kind == TermKind.Time) && Enumerable.Range(1, Math.Max(0, chunk.Terms.Count - 1)).Any(i => chunk.Terms[i - 1].Text is "from" or "starting" or "start" && (chunk.Terms[i].Is(Sense.Weekday) || chunk.Terms[i].Is(Sense.DayRef, "1") || chunk.Terms[i].Text is "next"));

    // "back to morning and night for chest": how it is to be again.
    private static bool IsBackTo(Chunk chunk) => chunk.Terms[0].Text is "back to" or "back down to" or "down to" or "up to" && chunk.Has(Sense.Session) && chunk.Terms.Count(t => t.Is(Sense.DayPart) || t.Is(Sense.AmPm)) > 1 && !chunk.Terms.Exists(t => t.Kind == TermKind.Time);

    // "Percussion to be four times daily", "amoxicillin is to be given at 8": what is to come.
    private static bool IsToBe(Chunk chunk) => Enumerable.Range(1, Math.Max(0, chunk.Terms.Count - 1)).Any(i => chunk.Terms[i].Text is "be" && chunk.Terms[i - 1].Is(Sense.To) && chunk.Terms.Take(i).Any(IsDeniable)) && !chunk.Terms.Exists(t => t.Text is "did" or "seems" or "used" or "turned out");

    private static bool IsCaller(Term term) => term.Text.Split(' ')[0] is "rang" or "called" or "phoned" or "rings" || term.Is(Sense.Person) && term.Text.Contains(' ', StringComparison.Ordinal);

    // "paracetamol if more than 38": to be given, it may be.
    private static bool Conditional(Chunk chunk) => chunk.Terms.FindIndex(t => t.Text == "if") is var condition && condition > 0 && chunk.Terms.Take(condition).Any(t => t.Is(Sense.Medicine)) && !chunk.Terms.Exists(t => t.Is(Sense.Given) || t.Kind == TermKind.Time);

    // "his nebs are always salbutamol": what is arranged.
    private static bool IsAlways(Chunk chunk) => chunk.Terms.FindIndex(t => t.Text is "always") is > 1 and var always && chunk.Terms[always - 1].Text is "is" or "are" && (chunk.Terms[always - 2].Is(Sense.Device) || chunk.Terms[always - 2].Is(Sense.Unit, "puffs")) && !chunk.Terms.Exists(t => t.Kind == TermKind.Time);

    // "big brother got 10 ml too", "his cousin has a cold and had 5 ml", "took 2 puffs myself": not "got 2 puffs from his brother".
    private static bool IsOfAnother(Chunk chunk)
    {
        if (!IsOfDose(chunk)) return false;
        // "his sister had given 5 ml" gave it to the child.
        if (chunk.Terms.Exists(t => t.Text is "gave" or "given" or "give")) return false;
        var took = chunk.Terms.FindLastIndex(IsTaking);
        if (took < 0) return false;
        if (chunk.Terms.FindIndex(took, t => t.Text == "myself") >= 0) return true;
        return chunk.Terms.FindIndex(t => t.Text.Split(' ')[^1] is "brother" or "sister" or "cousin") is >= 0 and var relative && relative < took
            && !chunk.Terms.Take(relative).TakeLast(2).Any(t => t.Text.Split(' ')[0] is "with" or "by" or "from" or "to" or "for" or "like" or "after" or "and");
    }

    // "neighbour's child is having fever 39", "the cat was sick on the rug", "his brother has a cough": signs of somebody else.
    private static bool IsSignOfAnother(Chunk chunk)
    {
        if (!chunk.Terms.Exists(t => t.Is(Sense.Sign) || t.Is(Sense.TempLabel))) return false;
        var other = chunk.Terms.FindIndex(t => Others.Contains(t.Text.Split(' ')[^1]));
        if (other is < 0 or > 3 || chunk.Terms.Take(other).Any(t => t.Kind != TermKind.Word || t.NamesEvent || t.Text is "with" or "by" or "from" or "to" or "at" or "for" or "like" or "after" or "and")) return false;
        var verb = chunk.Terms.FindIndex(other + 1, t => t.Text.Split(' ')[0] is "is" or "has" or "had" or "was" or "got" or "having" or "threw" or "vomited");
        return verb >= 0 && verb <= other + 2 && !chunk.Terms.Exists(t => t.Text is "him" or "her" || t.Is(Sense.Person));
    }

    private static readonly FrozenSet<string> Others = FrozenSet.ToFrozenSet(
        ["brother", "sister", "cousin", "cousins", "neighbour", "neighbours", "neighbor", "neighbors", "cat", "dog", "friend", "husband", "wife", "uncle", "aunt", "aunty", "granny", "dad", "mum", "mom", "mam"], StringComparer.Ordinal);

    private static bool IsOfDose(Chunk chunk) => chunk.Terms.Exists(t => t.Is(Sense.Medicine) || t.Is(Sense.MedicineWord) || t.Is(Sense.Device) || t.Is(Sense.Antibiotic) || t is { Kind: TermKind.Quantity, Unit: Unit.Ml or Unit.Mg or Unit.Puffs });

    private static bool IsTaking(Term term) => term.Text is "got" or "had" or "took" or "taken";

    // "took acetaminophen 500 herself": the child, or the one who tells.
    private static bool IsOfEither(Chunk chunk) => IsOfDose(chunk) && chunk.Terms.FindIndex(IsTaking) is >= 0 and var took && chunk.Terms.FindIndex(took, t => t.Text is "herself" or "himself") >= 0;

    /// <summary>"Next tapping at 5, not earlier": still to come, or told in its turn; where its places or minutes are told, it was done.</summary>
    public static bool IsNext(List<Chunk> chunks, Chunk chunk) => !chunks.Exists(c => c.Sentence == chunk.Sentence && c.Terms.Exists(t => t.Is(Sense.SideArea) || t.Is(Sense.Area) || t.Is(Sense.Side) || t.Is(Sense.EachSide) || t.Kind is TermKind.Parts or TermKind.Reference || t is { Kind: TermKind.Quantity })) && chunk.Terms[0].Text == "next" && chunk.Terms.Count > 1 && (chunk.Terms[1].Is(Sense.Session) || chunk.Terms[1].Is(Sense.Technique) || chunk.Terms[1].Is(Sense.Feed) || chunk.Terms[1].Is(Sense.Device) || chunk.Terms[1].Is(Sense.Medicine)) && !chunk.Terms.Exists(t => t.Is(Sense.Given) || t.Is(Sense.AllDone) || t.Text is "done" or "did" or "was");

    // "usual is air in the day": no reading of a day.
    private static bool IsUsual(Chunk chunk) => chunk.Terms.Count > 1 && chunk.Terms[0].Is(Sense.Usual) && chunk.Terms[1].Text is "is" && !chunk.Terms.Exists(t => t.Kind == TermKind.Time);

    // "due 7.00 not done" left it out; "Dave says he did one" tells what was done; "forgot to ask what time" asks nothing.
    private static bool IsTold(Chunk chunk, Term term) => (term.Text == "due" && chunk.Has(Sense.Skip))
        || (term.Text is "says" or "said" or "say" && chunk.Terms.Exists(t => t.Text is "he did" or "she did" or "did" or "gave" or "i did" or "they did") && (chunk.Has(Sense.Session) || chunk.Has(Sense.Medicine) || chunk.Terms.Exists(t => t.Text == "one")))
        // "She told me he was 93 before and 95 after"
        || (term.Text is "told" or "says" or "said" && WasMeasured(chunk.Terms, chunk.Terms.IndexOf(term)))
        // "oximeter says 96"
        || (term.Text is "says" or "said" or "say" && chunk.Terms.IndexOf(term) is > 0 and var device && (chunk.Terms[device - 1].Is(Sense.SatLabel) || chunk.Terms[device - 1].Is(Sense.TempLabel) || chunk.Terms[device - 1].Text is "machine" or "monitor" or "thermometer" or "probe" or "clock"))
        // "school says he looked blue, sat 90" reports; "4 min each like the physio says" tells how it was done.
        || (term.Text is "says" or "said" && (chunk.Terms.FindIndex(t => t.Text is "looked" or "seemed" or "coughed" or "vomited" or "threw up") > chunk.Terms.IndexOf(term) || TellsOfSign(chunk.Terms, chunk.Terms.IndexOf(term)) || chunk.Terms.Take(chunk.Terms.IndexOf(term)).Any(t => t.Text is "like" or "like the" or "as" or "as the")))
        // "given at 10.40 as advised", "pump on at 50 to start"
        || (term.Text is "advised" or "prescribed" or "directed" or "instructed" && chunk.Terms.IndexOf(term) is > 0 and var asTold && chunk.Terms[asTold - 1].Text is "as")
        || (term.Text is "to start" && chunk.Terms[^1] == term)
        || (term.Is(Sense.Asking) && chunk.Terms.Exists(t => t.Text is "forgot" or "forgotten" or "unknown" || t.Is(Sense.Not)) && term.Text is "what time");

    private static bool WasMeasured(List<Term> terms, int says) => Enumerable.Range(says + 1, Math.Max(0, Math.Min(5, terms.Count - says - 2))).Any(i => terms[i].Text is "was" or "were" && terms[i + 1] is { Kind: TermKind.Number, IsWhole: true, Number: >= 70 and <= 100 });

    // "his mother says he was coughing in the night"
    private static bool TellsOfSign(List<Term> terms, int says) => says + 3 < terms.Count && terms[says + 1].Text is "he" or "she" && terms[says + 2].Text is "was" or "had" && terms.Skip(says + 3).Take(2).Any(t => t.Is(Sense.Sign));

    // "thats the amoxicillin finished then?" asks; "feed? think about 2" tells.
    private static bool IsQuestion(Chunk chunk) => chunk.Asks && chunk.Terms.Count >= 3 && !chunk.Terms.Exists(t => t.Kind is TermKind.Number or TermKind.Quantity or TermKind.Time or TermKind.Parts or TermKind.Range);

    // "I'm stuck at work, chest done?", "and the antibiotic?": asks of another, in a line without a time.
    private static bool AsksWhether(List<Chunk> chunks, Chunk chunk) => chunks[^1] == chunk && chunk.Terms.Count > 2 && chunk.Terms[^1].IsSymbol("?") && !chunks.Exists(c => c.Terms.Exists(t => t.Kind is TermKind.Time or TermKind.Number or TermKind.Quantity or TermKind.Parts or TermKind.Range));

    private static bool IsUnreal(Term term) => term.Is(Sense.Plan) || term.Is(Sense.Asking) || term.Is(Sense.Advice) || term.Is(Sense.Shopping) || term.Is(Sense.OtherTherapy) || term.Is(Sense.Rumour)
        || (term.Is(Sense.DayRef, "1") && term.Kind == TermKind.Word);

    /// <summary>What a chunk's "no" and "skipped" take away.</summary>
    /// <param name="Terms">The terms that stay.</param>
    /// <param name="Denied">The terms that are denied.</param>
    /// <param name="SkipsAll">True when the chunk only says that something did not happen ("skipped", "not done").</param>
    internal sealed record Denial(List<Term> Terms, List<Term> Denied, bool SkipsAll);

    /// <summary>Takes out what a chunk denies.</summary>
    public static Denial Deny(List<Term> terms)
    {
        var stay = new List<Term>(terms.Count);
        var denied = new List<Term>();
        var skipsAll = false;
        for (var i = 0; i < terms.Count; i++)
        {
            var term = terms[i];
            // "skipped the feed" is of the feed; "skipped the uppers" takes them out of a session.
            var skip = term.Is(Sense.Skip) || (term.Is(Sense.Minus) && term.Text is "skipped the" && i + 1 < terms.Count && (IsFeed(terms[i + 1]) || IsDose(terms[i + 1]) || terms[i + 1].Is(Sense.Session)));
            // "chest at 5 as he couldn't settle": what could not be done is not the care.
            if (skip && term.Text is "couldnt" && i + 1 < terms.Count && NextDeniable(terms, i + 1) < 0 && terms[i + 1].Text is not ("do" or "manage" or "get" or "give" or "face")) { stay.Add(term); continue; }
            // "cough not yet gone" is still there.
            if (skip && term.Text is "not yet" && !stay.Exists(t => t.Is(Sense.Session) || t.Is(Sense.Technique) || IsDose(t) || IsFeed(t))) { stay.Add(term); continue; }
            // Miss Odell is a teacher.
            if (skip && term.Text is "miss" && !(i + 1 < terms.Count && (IsDeniable(terms[i + 1]) || (terms[i + 1].Text is "the" or "a" or "his" or "her" or "one")))) { stay.Add(term); continue; }
            // "forgot to look at the clock" leaves out no care.
            if (skip && term.Text is "forgot" or "forgotten" && i + 1 < terms.Count && ((terms[i + 1].Text is "to" || terms[i + 1].Is(Sense.Question)) && NextDeniable(terms, i + 1) < 0 || terms[i + 1].Is(Sense.Times) || terms[i + 1].Text is "the" or "what" or "when" or "exact" && terms.Skip(i + 1).Take(3).Any(t => t.Is(Sense.Times) || t.Text is "when" or "time"))) { stay.Add(term); continue; }
            // "pump not on tonight": what was not turned on.
            if (term.Text == "not" && i + 1 < terms.Count && (terms[i + 1].Text is "on" or "put on" or "connected" or "running" || terms[i + 1].Text.StartsWith("on ", StringComparison.Ordinal)) && stay.Exists(IsFeed) && !stay.Exists(t => t.Kind == TermKind.Time))
            {
                denied.AddRange(stay.Where(IsDeniable));
                stay.RemoveAll(IsDeniable);
                skipsAll = true;
                continue;
            }
            if (!skip && !(term.Is(Sense.Not) && !term.Is(Sense.Correction)) && !(term.Is(Sense.Not) && i + 1 < terms.Count && IsDeniable(terms[i + 1]))) { stay.Add(term); continue; }
            // "doxy no CLARITHROMYCIN": the second is what was meant.
            if (term.Text == "no" && i > 0 && i + 1 < terms.Count && terms[i - 1].ValueOf(Sense.Medicine) is { } first && (terms[i + 1].ValueOf(Sense.Medicine) ?? (terms[i + 1].Text == "the" && i + 2 < terms.Count ? terms[i + 2].ValueOf(Sense.Medicine) : null)) is { } second && first != second)
            {
                stay.Remove(terms[i - 1]);
                continue;
            }
            // "no midday one": the one that would have been there.
            if (term.Text is "no" && terms.Skip(i + 1).Take(3).Any(t => t.Text == "one" && t.Is(Sense.NumberWord)) && !terms.Skip(i + 1).Any(IsDeniable)) { skipsAll = true; break; }
            // "no scratch that" puts right, it denies nothing.
            if (term.Text == "no" && i + 1 < terms.Count && terms[i + 1].Is(Sense.Correction)) { stay.Add(term); continue; }
            var next = NextDeniable(terms, i + 1);
            // "evening physio not done because of the vomiting": the reason is not denied.
            if (next > 0 && skip && stay.Exists(IsDeniable) && terms.Skip(i + 1).Take(next - i).Any(t => t.Text is "because" or "cos" or "cause" or "coz" or "cuz" or "bc" or "as" or "since" or "due" or "due to" or "because of" or "so" or "after")) next = -1;
            // "7pm chest not possible he was sick": a sign after it is why.
            if (next > 0 && skip && terms[next].Is(Sense.Sign) && stay.Exists(t => t.Is(Sense.Session) || t.Is(Sense.Technique))) next = -1;
            if (next < 0)
            {
                if (!skip && !terms.Skip(i + 1).Take(2).Any(t => t.Text is "done" or "given" or "needed" or "happening" or "today" or "tonight" || t.Text is "on" or "put on" or "used" or "connected" or "started" or "running" && stay.Exists(IsFeed))) { stay.Add(term); continue; }
                // "evening not done", "blue forgot": everything said before in the chunk.
                denied.AddRange(stay.Where(IsDeniable));
                stay.RemoveAll(IsDeniable);
                skipsAll = true;
                continue;
            }
            do
            {
                denied.Add(terms[next]);
                i = next;
                // A family word stands for several terms: all of them are denied.
                while (i + 1 < terms.Count && terms[i + 1].Start == terms[next].Start && terms[i + 1].Mended is not null) denied.Add(terms[++i]);
                next = i + 2 < terms.Count && (terms[i + 1].Text is "or" or "nor" || terms[i + 1].Is(Sense.And)) && IsDeniable(terms[i + 2]) && terms[i + 1].Text is "or" or "nor" ? i + 2
                    : i + 1 < terms.Count && SameThing(terms[i], terms[i + 1]) ? i + 1 : -1;
            }
            while (next > 0);
        }
        return new Denial(stay, denied, skipsAll);
    }

    // "no physio session", "no blue inhaler", "no bolus feed": two words for one thing.
    private static bool SameThing(Term first, Term second) =>
        (first.Is(Sense.Session) && (second.Is(Sense.Session) || second.Is(Sense.Technique)))
        || (IsDose(first) && IsDose(second)) || (IsFeed(first) && IsFeed(second)) || (first.Is(Sense.Side) && second.Is(Sense.Area));

    private static bool IsDose(Term term) => term.Is(Sense.Medicine) || term.Is(Sense.Device) || (term.Kind == TermKind.Word && term.Is(Sense.Unit, "puffs") && term.Text.Length > 2);

    private static bool IsFeed(Term term) => term.Is(Sense.Feed) || term.Is(Sense.Pump) || term.Is(Sense.Bolus) || term.Is(Sense.Route) || term.Is(Sense.Milk);

    private static int NextDeniable(List<Term> terms, int from)
    {
        for (var i = from; i < terms.Count && i < from + 5; i++)
        {
            if (terms[i].Kind == TermKind.Time && i > from && !(i == from + 1 && terms[from].Text is "the" or "his" or "her" or "do")) return -1;
            if (terms[i].Is(Sense.Same) || terms[i].Is(Sense.Then)) return -1;
            if (IsDeniable(terms[i])) return i;
        }
        return -1;
    }

    /// <summary>Whether "no" before the term says that the thing was not there or not done.</summary>
    internal static bool IsDeniable(Term term) => term.Kind != TermKind.Reference && (term.Is(Sense.Session) || term.Is(Sense.Technique) || term.Is(Sense.Side) || term.Is(Sense.Area)
        || term.Is(Sense.SideArea) || IsDose(term) || term.Is(Sense.Antibiotic) || IsFeed(term) || term.Is(Sense.Bottle) || term.Is(Sense.Sign) || term.Is(Sense.TempLabel)
        || term.Is(Sense.Mouth) || term.Is(Sense.SatLabel) || term.Is(Sense.OxygenLabel) || term.Is(Sense.Desat) || term.Is(Sense.MedicineWord) || term.Is(Sense.Food) || term.Is(Sense.PulseLabel) && term.Text != "p");
}
