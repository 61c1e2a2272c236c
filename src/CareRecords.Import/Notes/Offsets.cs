using CareRecords.Import.Reading;

namespace CareRecords.Import.Notes;

/// <summary>
/// Finds times reckoned from something else ("15 min before each", "40 min before chest", "5 mins ago", "an hr later", "after 10 min")
/// and durations ("over 30 min", "for 10 min"). An offset's minutes are signed; its value says from what.
/// </summary>
internal static class Offsets
{
    /// <summary>From each session of the day.</summary>
    public const string Each = "each";

    /// <summary>From the session named next.</summary>
    public const string Session = "session";

    /// <summary>From the moment of writing.</summary>
    public const string Writing = "writing";

    /// <summary>From the event before.</summary>
    public const string Event = "event";

    /// <summary>The terms with their offsets and durations put together.</summary>
    public static List<Term> Reduce(List<Term> terms)
    {
        if (!terms.Exists(t => t.Is(Sense.Before) || t.Is(Sense.Ago) || t.Is(Sense.Over) || t.Is(Sense.JustNow) || t.Is(Sense.After) || t.Text is "for" or "na" or "later" or "back" or "an hour" or "an hr")) return terms;
        var result = new List<Term>(terms.Count);
        for (var i = 0; i < terms.Count;)
        {
            if (Read(terms, i, result) is { } found) { result.Add(found.Term); i = found.Next; }
            else { result.Add(terms[i]); i++; }
        }
        return result;
    }

    private static (Term Term, int Next)? Read(List<Term> terms, int at, List<Term> before)
    {
        var term = terms[at];
        if (term.Is(Sense.JustNow)) return (Make(term, term, 0, Writing), at + 1);
        // "over 30", "for 10 min", "after 10 min", "in 10 min"
        // "the lower parts for 3 minutes each side and the upper parts for 2": minutes of places, not how long it lasted.
        if (term.Text == "for" && At(terms, at + 1) is { Kind: TermKind.Quantity, Unit: Unit.Min } && (before.Count > 0 && IsOfPlace(before[^1]) || At(terms, At(terms, at + 2)?.Text is "on" or "to" ? at + 3 : at + 2) is { } behind && (IsOfPlace(behind) || behind.Is(Sense.Each)))) return null;
        if (term.Kind == TermKind.Word && (term.Is(Sense.Over) || term.Text is "for" or "after" or "and after" or "na") && At(terms, at + 1) is { } length)
        {
            if (term.Is(Sense.Over) && length.Text is "an hour" or "an hr" or "a hour") return (Make(term, length, 60, null), at + 2);
            if (Minutes(length) is { } minutes) return term.Text is "after" or "and after" or "na" ? (Make(term, length, minutes, Event), at + 2) : (Make(term, length, minutes, null), at + 2);
            if (term.Is(Sense.Over) && term.Text == "over" && length is { IsWhole: true, Number: >= 5 and <= 240 } && before.Any(t => t.Is(Sense.Feed) || t.Is(Sense.Bolus) || t.Is(Sense.Device) || t.Is(Sense.Medicine) || t.Is(Sense.Bottle)))
                return (Make(term, length, length.Number, null), at + 2);
        }
        if (term.Text is "an hour" or "an hr" or "a hour" && At(terms, at + 1) is { } past && (past.Is(Sense.Ago) || past.Text == "back")) return (Make(term, past, -60, Writing), at + 2);
        if (Hour(terms, at) is { } hour) return (Make(term, terms[hour.Next - 1], hour.Minutes, Event), hour.Next);
        if ((Minutes(term) ?? (term is { IsWhole: true, Number: >= 5 and <= 90 } && term.Kind == TermKind.Number ? term.Number : null)) is not { } amount) return null;
        var unit = term.Kind == TermKind.Quantity;
        if (At(terms, at + 1) is not { } next) return null;
        if ((next.Is(Sense.Ago) || next.Text == "back") && unit) return (Make(term, next, -amount, Writing), at + 2);
        if (next.Text is "later" or "after" or "afterwards" && unit && (before.Count > 0 && (before[^1].Is(Sense.SatLabel) || before[^1] is { Kind: TermKind.Number, IsWhole: true, Number: >= 60 and <= 100 } && (at + 2 >= terms.Count || terms[at + 2].Kind == TermKind.Symbol)) || next.Text == "later")) return (Make(term, next, amount, Event), at + 2);
        // "20 mins after each"
        if (unit && next.Is(Sense.After) && At(terms, at + 2) is { } every && (every.Is(Sense.Each) || every.Text is "all" or "both" or "every")) return (Make(term, every, amount, Each), at + 3);
        // "pump on at 50 to start" is a rate, not minutes before.
        if (!next.Is(Sense.Before) || !unit && next.Text is not ("before" or "b4" or "prior" or "beforehand" or "pre" or "prior to" or "voor" or "vor")) return null;
        var i = at + 2;
        while (At(terms, i) is { } filler && (filler.Is(Sense.To) || filler.Text is "the" or "his" or "her" or "every" or "of" or "start" or "starting")) i++;
        var last = At(terms, i);
        if (last is not null && (last.Is(Sense.Each) || last.Is(Sense.AnyArea) || last.Text is "all" or "every" or "both" || last.Is(Sense.Side, "both") || (last.Text == "one" && At(terms, i - 1)?.Text == "every") || last is { Kind: TermKind.Number, Text: "1" } && At(terms, i - 1)?.Text == "every"))
        {
            while (At(terms, i + 1) is { } more && (more.Is(Sense.Session) || more.Is(Sense.Technique) || more.Text is "one" or "time")) i++;
            return (Make(term, terms[i], -amount, Each), i + 1);
        }
        if (last is not null && (last.Is(Sense.Session) || last.Is(Sense.Technique) || last.Text is "that" or "it" or "this")) return (Make(term, next, -amount, Session), at + 2);
        // "neb also same times 15 min before"
        if (unit && (last is null || last.Kind == TermKind.Symbol)) return (Make(term, next, -amount, Each), at + 2);
        return null;
    }

    private static bool IsOfPlace(Term term) => term.Is(Sense.Area) || term.Is(Sense.SideArea) || term.Is(Sense.Side) || term.Is(Sense.EachSide);

    // "an hr later", "an hour after"
    private static (double Minutes, int Next)? Hour(List<Term> terms, int at) =>
        terms[at].Text is "an hour" or "an hr" && At(terms, at + 1)?.Text is "later" or "after" or "on" ? (60, at + 2)
        : terms[at] is { Kind: TermKind.Quantity, Unit: Unit.Hour } hours && At(terms, at + 1)?.Text is "later" ? (hours.Number * 60, at + 2) : null;

    private static double? Minutes(Term term) => term.Kind != TermKind.Quantity ? null
        : term.Unit == Unit.Min ? term.Number : term.Unit == Unit.Hour ? term.Number * 60 : null;

    private static Term? At(List<Term> terms, int at) => at < terms.Count ? terms[at] : null;

    private static Term Make(Term first, Term last, double minutes, string? from) => first with
    {
        Kind = from is null ? TermKind.Duration : TermKind.Offset,
        End = last.End,
        Number = minutes,
        Unit = Unit.None,
        Clock = null,
        Text = from ?? "",
        Meanings = [],
    };
}
