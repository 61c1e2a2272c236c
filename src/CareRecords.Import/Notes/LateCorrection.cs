using CareRecords.Import.Reading;
using NodaTime;

namespace CareRecords.Import.Notes;

/// <summary>
/// A value of an earlier day put right: "On Tuesday I wrote the neb as 6.40 and it was 6.50", "Thursday's 15:00 physio was 15:40",
/// "Thursday at teatime should be 37.4, not 37.9".
/// </summary>
/// <param name="Day">The word for the day.</param>
/// <param name="Wrong">The value as it was written.</param>
/// <param name="Right">The value as it was.</param>
/// <param name="Kinds">What is named; none when nothing is.</param>
/// <param name="Medicine">The medicine named; null when none.</param>
/// <param name="At">A time that tells which record, where the values are no times; null when none.</param>
internal sealed record LateCorrection(Term Day, Term Wrong, Term Right, CareKinds Kinds, string? Medicine, ClockTime? At)
{
    /// <summary>The correction that a line makes, and the terms of the line without it; null when it makes none.</summary>
    public static (LateCorrection Found, List<Term> Others)? Take(List<Term> terms)
    {
        NameSaturday(terms);
        if (!terms.Exists(IsEarlierDay)) return OfTheDay(terms) is { } same ? (same, []) : null;
        for (var from = 0; from < terms.Count;)
        {
            var to = terms.FindIndex(from, t => IsStop(t));
            if (to < 0) to = terms.Count;
            var found = Read(terms, from, to);
            // "I correct the entry for Tuesday. It ended at 06:55 and not 07:00": the value in the next sentence.
            if (found is null && to + 1 < terms.Count && terms.FindIndex(from, to - from, IsEarlierDay) >= 0 && terms.FindIndex(from, to - from, t => t.Is(Sense.Correction) || t.Text is "correct" or "wrong" or "wrote" or "write" or "put") >= 0)
            {
                var next = terms.FindIndex(to + 1, t => IsStop(t));
                if (next < 0) next = terms.Count;
                found = Read(terms, from, next);
                if (found is not null) to = next;
            }
            if (found is not null)
            {
                var rest = terms.GetRange(0, from);
                if (to + 1 < terms.Count) rest.AddRange(terms.GetRange(to + 1, terms.Count - to - 1));
                return (found, rest);
            }
            from = to + 1;
        }
        return null;
    }

    // "Correction, the 0400 was 94 not 96": a reading of the same day or night, named by its time.
    private static LateCorrection? OfTheDay(List<Term> terms)
    {
        if (!terms.Exists(t => t.Is(Sense.Correction) && t.Text is not "not")) return null;
        var values = Enumerable.Range(0, terms.Count).Where(i => IsValue(terms[i])).ToList();
        if (Pair(terms, 0, terms.Count, values) is not var (wrong, right) || terms[wrong].Kind == TermKind.Time || terms[right].Kind == TermKind.Time || values.Count(i => terms[i].Kind == TermKind.Time) != 1 || values.Count != 3) return null;
        return new LateCorrection(new Term { Kind = TermKind.Word, Start = 0, End = 0, Text = "today", Meanings = [new Meaning(Sense.DayRef, "0")] }, terms[wrong], terms[right], CareKinds.None, null, terms[values.Find(i => terms[i].Kind == TermKind.Time)].Clock!.Start);
    }

    // "sat chest was 3.30", "Sat night": before a part of the day, or at a head before a session, a medicine or a feed, "sat" is the day.
    private static void NameSaturday(List<Term> terms)
    {
        for (var i = 0; i + 1 < terms.Count; i++)
            if (terms[i].Text == "sat" && (terms[i + 1].Is(Sense.DayPart) || terms[i + 1].Is(Sense.AmPm) || (i == 0 || terms[i - 1].Kind == TermKind.Symbol || terms[i - 1].Text is "on" or "for" or "fyi" or "the") && (terms[i + 1].Is(Sense.Session) || terms[i + 1].Is(Sense.Medicine) || terms[i + 1].Is(Sense.Device) || terms[i + 1].NamesFeed)))
                terms[i] = terms[i] with { Text = "saturday", Meanings = [new Meaning(Sense.Weekday, "6")] };
    }

    private static bool IsStop(Term term) => term.Kind == TermKind.Symbol && term.Text is "." or ";" or "!";

    private static bool IsEarlierDay(Term term) => term.Kind == TermKind.Word && (term.Is(Sense.DayRef, "-1") || term.Is(Sense.Weekday) || term.Text == "saturday");

    private static LateCorrection? Read(List<Term> terms, int from, int to)
    {
        if (terms.FindIndex(from, to - from, IsEarlierDay) is var day && day < 0) return null;
        var values = Enumerable.Range(from, to - from).Where(i => IsValue(terms[i])).ToList();
        if (Pair(terms, from, to, values) is not var (wrong, right)) return null;
        var kinds = CareKinds.None;
        for (var i = from; i < to; i++) kinds |= GroupItem.NamedAt(terms, i);
        var timed = IsTime(terms[wrong]) && IsTime(terms[right]);
        var at = timed ? null : values.Where(i => i != wrong && i != right && terms[i].Kind == TermKind.Time).Select(i => terms[i].Clock!.Start).FirstOrDefault();
        var medicine = terms.GetRange(from, to - from).Find(t => t.Is(Sense.Medicine))?.ValueOf(Sense.Medicine);
        return new LateCorrection(terms[day], terms[wrong], terms[right], kinds, medicine, at);
    }

    private static (int Wrong, int Right)? Pair(List<Term> terms, int from, int to, List<int> values)
    {
        for (var v = 0; v + 1 < values.Count; v++)
        {
            var between = terms.GetRange(values[v] + 1, values[v + 1] - values[v] - 1);
            // "37.4, not 37.9": the right one first.
            if (between.Exists(t => t.Text is "not" or "and not" or "instead of" or "rather than") && between.Count <= 3 && Alike(terms[values[v]], terms[values[v + 1]])) return (values[v + 1], values[v]);
        }
        var wrote = terms.FindIndex(from, to - from, t => t.Text is "wrote" or "put" or "said" or "written" or "noted" or "logged" or "wrote down" or "put down" or "had down" or "entered");
        for (var right = values.Count - 1; right > 0; right--)
        {
            var was = terms.FindLastIndex(values[right], values[right] - from + 1, t => IsWas(t));
            if (was < 0 || values[right] - was > 4) continue;
            var wrong = values.FindLast(i => i < was && i > wrote && Alike(terms[i], terms[values[right]]));
            if (wrong == 0 && !values.Contains(0) || wrong >= was) continue;
            // Without "I wrote", only a time that names its event ("Thursday's 15:00 physio was 15:40"), or that stands beside its day ("Friday's 3.15 was quarter to 4").
            var day = terms.FindIndex(from, to - from, IsEarlierDay);
            if (wrote < 0 && !(IsTime(terms[wrong]) && IsTime(terms[values[right]]) && (Enumerable.Range(wrong + 1, was - wrong).Any(i => GroupItem.NamedAt(terms, i) != CareKinds.None) || day < wrong && wrong - day <= 3))) continue;
            return (wrong, values[right]);
        }
        return null;
    }

    private static bool IsWas(Term term) => term.Text is "was" or "it was" or "that was" or "should be" or "it should be" or "should have been" or "is" or "were" or "really" or "actually";

    private static bool IsValue(Term term) => term is { Kind: TermKind.Time, Clock: not null } or { Kind: TermKind.Number or TermKind.Quantity };

    private static bool IsTime(Term term) => term.Clock is not null && term.Kind is TermKind.Time or TermKind.Number;

    private static bool Alike(Term a, Term b) => a.Kind == TermKind.Time || b.Kind == TermKind.Time ? IsTime(a) && IsTime(b) && a.Clock is not null && b.Clock is not null : a.Unit == b.Unit || a.Unit == Unit.None || b.Unit == Unit.None;

    /// <summary>The day that is spoken of, from the day on which the line was written.</summary>
    public LocalDate Of(LocalDate written)
    {
        if (Day.ValueOf(Sense.DayRef) is { } days) return written.PlusDays(int.Parse(days, System.Globalization.CultureInfo.InvariantCulture));
        var weekday = Day.ValueOf(Sense.Weekday) is { } value ? (IsoDayOfWeek)int.Parse(value, System.Globalization.CultureInfo.InvariantCulture) : IsoDayOfWeek.Saturday;
        return written.Previous(weekday);
    }
}
