using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Reading;

/// <summary>
/// Finds times of day among terms: 24-hour and 12-hour writing, spoken times, parts of the day beside a number, spans.
/// A bare number that could be a time keeps being a number and carries the time it would be, for the event to decide.
/// </summary>
internal static class TimeGrammar
{
    /// <summary>The terms with their times put together.</summary>
    public static List<Term> Reduce(List<Term> terms)
    {
        var result = new List<Term>(terms.Count);
        for (var i = 0; i < terms.Count;)
        {
            if (TryTime(terms, i, result, out var time, out var taken)) { result.Add(time); i += taken; }
            else { result.Add(WithCandidate(terms, i)); i++; }
        }
        return result;
    }

    private static bool TryTime(List<Term> terms, int at, List<Term> before, out Term time, out int taken)
    {
        (time, taken) = (terms[at], 0);
        if (!MayBegin(terms[at])) return false;
        var (i, prefixed, about) = (at, false, false);
        while (i < terms.Count && i - at < 4 && IsPrefix(terms[i], ref prefixed, ref about)) i++;
        if (i >= terms.Count) return false;
        var context = new Place(terms, before, prefixed, about);
        if (terms[i] is { IsWhole: true, Text.Length: 4, Kind: TermKind.Number } four && OfDigits(four) is null && i + 1 < terms.Count && terms[i + 1] is { Glued: true, Text: "hrs" or "hr" }) { (time, taken) = (four with { Kind = TermKind.BadTime, End = terms[i + 1].End }, i + 2 - at); return true; }
        if (BadClock(terms[i]) is { } bad) { (time, taken) = (bad, i - at + 1); return true; }
        if (!TryOne(context, i, out var start, out var next) && !TryHourBeforeSpan(context, i, out start, out next)) return false;
        ClockTime? end = null;
        if (next + 1 < terms.Count && !IsPairOfMinutes(terms, next + 1) && (terms[next].IsSymbol("-") || terms[next].IsSymbol("—") || terms[next].Is(Sense.To)))
        {
            if (TryOne(context with { Prefixed = false }, next + 1, out var until, out var after)) (end, next) = (until, after);
            else if (terms[next + 1].Is(Sense.Half) && next + 2 < terms.Count && terms[next + 2].Is(Sense.Past))
                (end, next) = (Exact(new LocalTime(start.Time.Hour, 30), start.Half), next + 3);
            // "from half past twelve to one"
            else if (terms[next].Is(Sense.To) && terms[next + 1].Is(Sense.NumberWord) && Hour(terms[next + 1]) is { } spoken && !FollowedByUnit(terms, next + 2) && !IsCounted(terms, next + 2) && (next + 2 >= terms.Count || terms[next + 2].Kind == TermKind.Symbol || at > 0 && terms[at - 1].Text == "from"))
                (end, next) = (Exact(new LocalTime(spoken % 12, 0), HalfOfDay.Unknown), next + 2);
            else if (HourOnly(terms, next + 1) is { } hour && IsStrong(start) && !FollowedByUnit(terms, next + 2))
                (end, next) = (hour, next + 2);
        }
        if (end is not null && start.Half == HalfOfDay.Unknown && end.Half != HalfOfDay.Unknown) start = Before(start, end);
        if (next < terms.Count && terms[next].Is(Sense.Ish)) { start = About(start); next++; }
        time = new Term
        {
            Kind = TermKind.Time,
            Start = terms[at].Start,
            End = terms[next - 1].End,
            Text = terms[i].Text,
            Meanings = [.. terms.Skip(at).Take(i - at).SelectMany(t => t.Meanings).Where(m => m.Sense is Sense.Since or Sense.To or Sense.At)],
            Clock = new ClockSpan(start, end),
            At = prefixed,
            Glued = terms[at].Glued,
        };
        taken = next - at;
        return true;
    }

    /// <summary>Whether two small numbers of which the second is not the larger could be minutes of two places: "7.30pm - 4 and 3 each time" is no span.</summary>
    internal static bool IsPairOfMinutes(List<Term> terms, int at) => at + 2 < terms.Count && terms[at] is { Kind: TermKind.Number, IsWhole: true, Number: >= 1 and <= 6, Glued: false } first
        && (terms[at + 1].Is(Sense.And) || terms[at + 1].IsSymbol("/")) && terms[at + 2] is { Kind: TermKind.Number, IsWhole: true, Number: >= 1 } second && first.Number - second.Number is >= 0 and <= 2;

    private static bool MayBegin(Term term) => term.Kind switch
    {
        TermKind.Number or TermKind.Time or TermKind.Parts => true,
        TermKind.Symbol => term.Text is "@" or "~",
        _ => term.Is(Sense.At) || term.Is(Sense.About) || term.Is(Sense.To) || term.Is(Sense.Clock) || term.Is(Sense.Half) || term.Is(Sense.Quarter) || term.Is(Sense.NumberWord) || term.Is(Sense.DayPart) || term.Is(Sense.AmPm),
    };

    private static bool IsPrefix(Term term, ref bool prefixed, ref bool about)
    {
        if (term.IsSymbol("~")) return about = true;
        if (term.IsSymbol("@")) return prefixed = true;
        if (term.Is(Sense.Ish)) return false;
        if (term.Is(Sense.About)) { prefixed = true; return about = true; }
        if (term.Is(Sense.At) && !term.Is(Sense.Route)) return prefixed = true;
        if (term.Is(Sense.To) && term.Text is not ("to" or "thru" or "through" or "unto")) return prefixed = true;
        return term.Kind == TermKind.Word && prefixed && term.Text is "the" or "time";
    }

    /// <summary>One time, with its am or pm.</summary>
    private static bool TryOne(Place place, int at, [NotNullWhen(true)] out ClockTime? time, out int next)
    {
        time = null;
        next = at;
        var terms = place.Terms;
        var term = terms[at];
        ClockTime? found = null;
        if (term.ValueOf(Sense.Clock) is { } named)
        {
            found = Exact(new LocalTime(named == "00:00" ? 0 : 12, 0), named == "00:00" ? HalfOfDay.Am : HalfOfDay.Pm);
            next = at + 1;
            if (next < terms.Count && terms[next] is { Kind: TermKind.Number, Number: 12 }) next++;
        }
        else if (TrySpoken(terms, at, out var spoken, out var after)) (found, next) = (spoken, after);
        else if (TryPastTheHour(place, at, out spoken, out after)) (found, next) = (spoken, after);
        else if (term is { Kind: TermKind.Time, Clock: null }) (found, next) = (OfClock(term), at + 1);
        else if ((term.Is(Sense.DayPart) || (term.Is(Sense.AmPm) && term.Text.Length > 2)) && TryAfterPart(place, at, out var parted, out after)) (found, next) = (parted, after);
        else if (term.Kind is TermKind.Number or TermKind.Word && TryNumber(place, at, out var numbered, out after)) (found, next) = (numbered, after);
        if (found is null) return false;
        Half(terms, ref next, ref found);
        time = place.About ? About(found) : found;
        return true;
    }

    // am, pm, "in the morning", "o'clock" after the time.
    private static void Half(List<Term> terms, ref int next, ref ClockTime time)
    {
        if (next < terms.Count && terms[next].Text is "uhr" or "uur" && time.Half == HalfOfDay.Unknown)
        {
            // Where hours are told with "Uhr" they run to 24.
            time = time.In(HalfOfDay.Am);
            next++;
        }
        else if (next < terms.Count && terms[next].Is(Sense.OClock) && (!terms[next].Is(Sense.Unit) || next > 0 && terms[next - 1].Text is { Length: 4 } digits && digits.All(char.IsAsciiDigit))) next++;
        // "12.00 noon": said twice.
        if (next < terms.Count && time.Time is { Hour: 0 or 12, Minute: 0 } && terms[next].ValueOf(Sense.Clock) is { } named) { time = time.In(named == "00:00" ? HalfOfDay.Am : HalfOfDay.Pm); next++; return; }
        if (next >= terms.Count || time.Half != HalfOfDay.Unknown) { SkipHalf(terms, ref next); return; }
        if (terms[next].ValueOf(Sense.AmPm) is { } half) { time = In(time, half, terms[next].Text); next++; }
        else if (terms[next] is { Glued: true, Text: "a" }) { time = time.In(HalfOfDay.Am); next++; }
        else if (terms[next] is { Glued: true, Text: "p" }) { time = time.In(HalfOfDay.Pm); next++; }
    }

    private static void SkipHalf(List<Term> terms, ref int next)
    {
        if (next < terms.Count && terms[next].Is(Sense.AmPm)) next++;
    }

    /// <summary>Settles a time by the word beside it: "2 at night" is before noon, "quarter to 6 at night" and "5 tonight" after.</summary>
    internal static ClockTime In(ClockTime time, string half, string words)
    {
        var night = half is "night" || (half == "pm" && words.Contains("night", StringComparison.Ordinal));
        var early = time.Time.Hour < (words is "tonight" or "tonite" ? 4 : words is "at night" ? 5 : 6) || time.Time.Hour == 12;
        return half switch
        {
            "am" or "morning" or "mid morning" => time.In(HalfOfDay.Am),
            _ when night && early => time.In(HalfOfDay.Am),
            "day" or "school" or "nap" => time,
            _ => time.In(HalfOfDay.Pm),
        };
    }

    private static bool TrySpoken(List<Term> terms, int at, [NotNullWhen(true)] out ClockTime? time, out int next)
    {
        (time, next) = (null, at);
        var term = terms[at];
        var i = at;
        double? minutes = term.Is(Sense.Half) || term is { Fraction: 0.5, Parts: [1, 2] } ? 30 : term.Is(Sense.Quarter) || term is { Fraction: 0.25, Parts: [1, 4] } ? 15 : SmallNumber(term);
        if (minutes is not (> 0 and < 31)) return false;
        i++;
        if (i < terms.Count && terms[i] is { Kind: TermKind.Quantity }) return false;
        if (i < terms.Count && minutes is not (15 or 30) && terms[i].Is(Sense.Unit, "min")) i++;
        if (i >= terms.Count) return false;
        var past = terms[i].Is(Sense.Past) || terms[i].Text == "after" ? 1 : terms[i].Text is "to" or "til" or "till" or "of" or "before" or "voor" ? -1 : 0;
        if (past != 0 && i + 1 < terms.Count && Hour(terms[i + 1]) is { } hour && !FollowedByUnit(terms, i + 2) && (minutes % 5 == 0 || term.Is(Sense.NumberWord)))
        {
            // "10 to 7" without "min" is a time; "7 after 3" is not.
            if (past == -1 && terms[i].Text == "before" && !term.Is(Sense.NumberWord)) return false;
            if (past == 1 && terms[i].Text == "after" && minutes is not (15 or 30 or 10 or 20 or 5)) return false;
            time = Exact(Morning(new LocalTime(hour % 12, 0).PlusMinutes(past * (long)minutes.Value)), HalfOfDay.Unknown);
            next = i + 2;
            return true;
        }
        if (minutes == 30 && Hour(terms[i]) is { } after && !FollowedByUnit(terms, i + 1) && !(i + 1 < terms.Count && terms[i + 1].Is(Sense.Each)))
        {
            time = Exact(new LocalTime(after % 12, 30), HalfOfDay.Unknown);
            next = i + 1;
            return true;
        }
        return false;
    }

    // "at half past", "by ten past" after "quarter past 8": the hour is that of the time before.
    private static bool TryPastTheHour(Place place, int at, [NotNullWhen(true)] out ClockTime? time, out int next)
    {
        (time, next) = (null, at);
        var terms = place.Terms;
        double? minutes = terms[at].Is(Sense.Half) ? 30 : terms[at].Is(Sense.Quarter) ? 15 : SmallNumber(terms[at]);
        // "Clapped him at 6. Inhaler beforehand at 20 to"
        if (minutes is 5 or 10 or 15 or 20 or 25 && place.Prefixed && at + 1 < terms.Count && terms[at + 1].Text == "to" && (at + 2 >= terms.Count || terms[at + 2].Kind == TermKind.Symbol) && HourBefore(place.Before) is { Start: { Time.Minute: 0 } named })
        {
            (time, next) = (Exact(named.Time.PlusMinutes(-(long)minutes.Value) is var early && named.Half == HalfOfDay.Unknown ? Morning(early) : early, named.Half), at + 2);
            return true;
        }

        if (minutes is not (5 or 10 or 15 or 20 or 25 or 30) || at + 1 >= terms.Count || !terms[at + 1].Is(Sense.Past) || (at + 2 < terms.Count && (Hour(terms[at + 2]) is not null || terms[at + 2].Is(Sense.Clock)))) return false;
        if (HourBefore(place.Before) is not { } last) return false;
        var hour = (last.End ?? last.Start).Time;
        var past = new LocalTime(hour.Hour, (int)minutes.Value);
        // "11.30 usual + vibs, blue quarter past": the inhaler is given before it.
        var given = Last(place.Before) is { } what && (what.Is(Sense.Device) || what.Is(Sense.Medicine)) && place.Before.Exists(t => t.Is(Sense.Session) || t.Is(Sense.Technique));
        time = Exact(past < hour && !given ? past.PlusHours(1) : past, (last.End ?? last.Start).Half);
        next = at + 2;
        return true;
    }

    // Of the time before, or of the bare hour behind an inhaler: "Puffs 7, chest quarter past".
    private static ClockSpan? HourBefore(List<Term> before)
    {
        if (before.FindLast(t => t is { Kind: TermKind.Time, Clock: not null })?.Clock is { } last) return last;
        for (var i = before.Count - 1; i > 0; i--)
            if (before[i] is { IsWhole: true, Number: >= 1 and <= 12, Clock: { } hour } && (before[i - 1].Is(Sense.Device) || before[i - 1].Text is "puffs")) return hour;
        return null;
    }

    // "Morning 6.30", "Night 9.30", "evening 5".
    private static bool TryAfterPart(Place place, int at, [NotNullWhen(true)] out ClockTime? time, out int next)
    {
        (time, next) = (null, at);
        var terms = place.Terms;
        var i = at + 1;
        while (i < terms.Count && (terms[i].Is(Sense.At) || terms[i].IsSymbol(":") || terms[i].IsSymbol("@") || terms[i].Is(Sense.About))) i++;
        if (i >= terms.Count) return false;
        var half = terms[at].ValueOf(Sense.DayPart) ?? terms[at].ValueOf(Sense.AmPm)!;
        // "last night at 8" names another day as well, which is told with the group.
        if (terms[at].Is(Sense.DayRef)) return false;
        if (half == "bed" || half == "day" || half == "nap" || half == "school") return false;
        ClockTime? found = null;
        var after = i;
        if (TrySpoken(terms, i, out var spoken, out after)) found = spoken;
        else if (terms[i] is { Kind: TermKind.Time, Clock: null }) (found, after) = (OfClock(terms[i]), i + 1);
        else if (terms[i].Kind == TermKind.Number && OfDigits(terms[i]) is { } digits && !FollowedByUnit(terms, i + 1) && !IsCounted(terms, i + 1)) (found, after) = (digits, i + 1);
        if (found is null) return false;
        (time, next) = (In(found, half, terms[at].Text), after);
        return true;
    }

    private static bool IsCounted(List<Term> terms, int at) => at < terms.Count
        && (terms[at].Is(Sense.Each) || terms[at].Is(Sense.EachSide) || terms[at].Is(Sense.AnyArea) || terms[at].Is(Sense.Times) || terms[at] is { Kind: TermKind.Number, Number: < 60 });

    private static bool TryNumber(Place place, int at, [NotNullWhen(true)] out ClockTime? time, out int next)
    {
        (time, next) = (null, at + 1);
        var terms = place.Terms;
        var term = terms[at];
        if (term.Kind == TermKind.Word && (!term.Is(Sense.NumberWord) || !(place.Prefixed || FollowedBy(terms, at + 1, Sense.OClock) && !terms[at + 1].Is(Sense.Unit) || FollowedBy(terms, at + 1, Sense.AmPm)))) return false;
        if (term.Number < 0) return false;
        // "the 7.30 one tonight"
        if (term.Text == "one" && !place.Prefixed && terms[at + 1].Text is "tonight" or "tonite") return false;
        // 17h20, 07h00, 9h
        if (next < terms.Count && terms[next] is { Glued: true, Text: "h" } && term.IsWhole && term.Number <= 24)
        {
            var minute = next + 1 < terms.Count && terms[next + 1] is { Glued: true, Kind: TermKind.Number, Text.Length: 2, IsWhole: true } m ? m : null;
            if (minute is null && !place.Prefixed && next + 1 < terms.Count && terms[next + 1].Glued) return false;
            if (term.Number > 23 || (minute?.Number ?? 0) > 59) return false;
            next += minute is null ? 1 : 2;
            time = Known((int)term.Number, (int)(minute?.Number ?? 0));
            return true;
        }
        if (term.Kind == TermKind.Word) { if (Hour(term) is not { } spoken) return false; time = Exact(new LocalTime(spoken % 12, 0), HalfOfDay.Unknown); return true; }
        if (OfDigits(term) is not { } digits) return false;
        if (term is { IsWhole: true, Text.Length: 4 } && next < terms.Count && terms[next] is { Glued: true, Text: "hrs" or "hr" or "h" }) { (time, next) = (digits, next + 1); return true; }
        // "stopped at 100" is a volume.
        if (place.Prefixed && term is { IsWhole: true, Text.Length: 3 } && term.Number % 100 == 0 && !IsHalf(place, terms, next)) return false;
        var (suffixed, four) = (IsHalf(place, terms, next), term.IsWhole && term.Text.Length == 4);
        var ish = next < terms.Count && terms[next].Is(Sense.Ish);
        if (!suffixed && !ish && FollowedByUnit(terms, next)) return false;
        var labelled = Last(place.Before) is { } last && !place.Prefixed
            && (last.Is(Sense.TempLabel) || last.Is(Sense.SatLabel) || last.Is(Sense.PulseLabel) || last.Is(Sense.BreathLabel) || last.Is(Sense.Desat));
        var dotted = term.Text.Length >= 4 && term.Text[^3] == '.';
        if (suffixed || ish || (place.Prefixed && !IsCounted(terms, next) && (term.IsWhole ? term.Number <= 12 || term.Text.Length >= 3 : dotted))
            || (!labelled && (four || (dotted && !IsAmount(place, term)))))
        {
            if (four && !suffixed && next < terms.Count && terms[next] is { Glued: true, Text: "h" or "hrs" or "hr" }) next++;
            time = ish ? About(digits) : digits;
            if (ish) next++;
            return true;
        }
        return false;
    }

    // Right after a medicine "2.50" and "1.25" are amounts; "5.40" is a time.
    private static bool IsAmount(Place place, Term term) => Last(place.Before) is { } last
        && (last.Is(Sense.Medicine) || last.Is(Sense.OxygenLabel)) && term.Number <= 5 && (int)Math.Round(term.Number * 100) % 25 == 0
        && !place.Prefixed;

    private static bool IsHalf(Place place, List<Term> terms, int at)
    {
        if (at >= terms.Count) return false;
        if (terms[at].Is(Sense.AmPm)) return true;
        if (terms[at].Is(Sense.OClock) && terms[at].Text is not ("uur" or "hrs" or "hours")) return true;
        if (!terms[at].Glued) return false;
        if (terms[at].Text == "a") return true;
        // "9p" is a time, but after a medicine "4p" is four puffs.
        return terms[at].Text == "p" && (terms[at - 1].Number > 30 || !AfterMedicine(place.Before));
    }

    private static bool AfterMedicine(List<Term> before)
    {
        for (var i = before.Count - 1; i >= 0 && before[i].Kind is not (TermKind.Symbol or TermKind.Time); i--)
            if (before[i].Is(Sense.Medicine) || before[i].Is(Sense.Device)) return true;
        return false;
    }

    // "6-6.40pm", "7-7.30": an hour before a dash and a whole time.
    private static bool TryHourBeforeSpan(Place place, int at, [NotNullWhen(true)] out ClockTime? time, out int next)
    {
        (time, next) = (null, at + 1);
        var terms = place.Terms;
        if (at + 2 >= terms.Count || !terms[at].IsWhole || !(terms[at + 1].IsSymbol("-") || terms[at + 1].Is(Sense.To))) return false;
        if (HourOnly(terms, at) is not { } hour) return false;
        var spoken = terms[at + 2].Is(Sense.Half) && at + 3 < terms.Count && terms[at + 3].Is(Sense.Past);
        if (!spoken && !(TryOne(place with { Prefixed = false }, at + 2, out var until, out _) && IsStrong(until))) return false;
        time = hour;
        return true;
    }

    private static bool IsStrong(ClockTime time) => time.Half != HalfOfDay.Unknown || time.Time.Minute != 0 || time.Time.Hour == 0;

    private static ClockTime? HourOnly(List<Term> terms, int at) => at < terms.Count && terms[at].IsWhole && terms[at].Number is >= 1 and <= 23
        ? OfDigits(terms[at]) : null;

    private static ClockTime Before(ClockTime start, ClockTime end)
    {
        var morning = start.In(HalfOfDay.Am);
        var afternoon = start.In(HalfOfDay.Pm);
        return afternoon.Time <= end.Time ? afternoon : morning.Time <= end.Time ? morning : afternoon;
    }

    /// <summary>The time that digits make: 7, 19, 630, 0640, 7.15; null when they make none.</summary>
    internal static ClockTime? OfDigits(Term term)
    {
        if (term.Number < 0) return null;
        if (term.IsWhole)
        {
            var n = (int)Math.Min(term.Number, 99999);
            return term.Text.Length switch
            {
                1 or 2 when n <= 23 && (n > 0 || term.Text.Length == 2) => n == 0 || n > 12 || term.Text[0] == '0' ? Known(n, 0) : Exact(new LocalTime(n % 12, 0), HalfOfDay.Unknown),
                3 when n % 100 < 60 && n / 100 is >= 1 and <= 9 => Exact(new LocalTime(n / 100, n % 100), HalfOfDay.Unknown),
                4 when n == 2400 => Known(0, 0) with { DayPart = NextDay },
                4 when n % 100 < 60 && n / 100 <= 23 => Known(n / 100, n % 100),
                _ => null,
            };
        }
        var text = term.Text.AsSpan();
        var dot = text.IndexOf('.');
        if (dot is not (1 or 2) || text.Length - dot - 1 != 2) return null;
        if (!int.TryParse(text[..dot], NumberStyles.None, CultureInfo.InvariantCulture, out var hour) || !int.TryParse(text[(dot + 1)..], NumberStyles.None, CultureInfo.InvariantCulture, out var minute)) return null;
        if (hour > 23 || minute > 59 || (hour == 0 && dot == 1)) return null;
        return hour > 12 || text[0] == '0' ? Known(hour, minute) : Exact(new LocalTime(hour % 12, minute), HalfOfDay.Unknown);
    }

    /// <summary>Mark of "2400": midnight at the end of the day.</summary>
    internal const string NextDay = "24:00";

    private static ClockTime? OfClock(Term term)
    {
        if (term.Parts[0] > 24 || term.Parts[1] > 59) return null;
        var (hour, minute) = ((int)term.Parts[0], (int)term.Parts[1]);
        if (hour == 24) return Known(0, 0) with { DayPart = NextDay };
        return hour is 0 or > 12 || term.Text[0] == '0' ? Known(hour, minute) : Exact(new LocalTime(hour % 12, minute), HalfOfDay.Unknown);
    }

    private static Term? BadClock(Term term) => term is { Kind: TermKind.Time, Clock: null } && (term.Parts[0] > 24 || term.Parts[1] > 59 || (term.Parts[0] == 24 && term.Parts[1] > 0))
        ? term with { Kind = TermKind.BadTime } : null;

    private static LocalTime Morning(LocalTime time) => time.Hour >= 12 ? time.PlusHours(-12) : time;

    private static ClockTime Known(int hour, int minute) => Exact(new LocalTime(hour, minute), hour < 12 ? HalfOfDay.Am : HalfOfDay.Pm) with { TwentyFourHour = hour >= 13 };

    private static ClockTime Exact(LocalTime time, HalfOfDay half) => new(time, half, TimePrecision.Exact, null, time, time);

    /// <summary>The same with a quarter of an hour's room on both sides: "about", "ish".</summary>
    internal static ClockTime About(ClockTime time) => time with
    {
        Precision = TimePrecision.About,
        From = time.Time.PlusMinutes(-RoomMinutes),
        To = time.Time.PlusMinutes(RoomMinutes),
    };

    /// <summary>Room that "about" and "ish" give a time, minutes on either side (chosen by CareRecords).</summary>
    internal const int RoomMinutes = 15;

    // "the 3.00 one", "2nd one": not the number; "one minute", "one each" are.
    private static bool CountsOne(List<Term> terms, int at) => at + 1 < terms.Count
        && (terms[at + 1].Is(Sense.Unit) || terms[at + 1].Is(Sense.Each) || terms[at + 1].Is(Sense.EachSide) || terms[at + 1].Is(Sense.And) && at + 2 < terms.Count && (terms[at + 2].Is(Sense.Half) || terms[at + 2].Is(Sense.Article)) || terms[at + 1].Is(Sense.Side));

    private static Term WithCandidate(List<Term> terms, int at)
    {
        var term = terms[at];
        if (term.Kind == TermKind.Word && term.Is(Sense.NumberWord) && !term.Is(Sense.Unit) && !(term.Text == "one" && !CountsOne(terms, at)))
        {
            var spoken = term with { Kind = TermKind.Number, Number = double.Parse(term.ValueOf(Sense.NumberWord)!, CultureInfo.InvariantCulture), Text = term.ValueOf(Sense.NumberWord)! };
            return OfDigits(spoken) is { } hour ? spoken with { Clock = new ClockSpan(hour, null) } : spoken;
        }
        if (term is { Kind: TermKind.Number, Number: >= 0 } && OfDigits(term) is { } digits) return term with { Clock = new ClockSpan(digits, null) };
        return term;
    }

    private static bool FollowedByUnit(List<Term> terms, int at) => at < terms.Count
        && ((terms[at].Is(Sense.Unit) && !(terms[at].Text is "l" or "c" or "f" or "h" or "m" or "s" or "p" or "g" && !terms[at].Glued) && !terms[at].Is(Sense.OClock)) || terms[at].IsSymbol("%")
            || (terms[at].Is(Sense.Half) && terms[at].Glued));

    private static bool FollowedBy(List<Term> terms, int at, Sense sense) => at < terms.Count && terms[at].Is(sense);

    private static int? Hour(Term term) => SmallNumber(term) is { } n and >= 1 and <= 12 ? (int)n : null;

    private static double? SmallNumber(Term term) => term.IsWhole && term.Text.Length <= 2 && term.Number < 60 ? term.Number
        : term.Is(Sense.NumberWord) ? double.Parse(term.ValueOf(Sense.NumberWord)!, CultureInfo.InvariantCulture) : null;

    private static Term? Last(List<Term> terms) => terms.Count > 0 ? terms[^1] : null;

    private sealed record Place(List<Term> Terms, List<Term> Before, bool Prefixed, bool About);
}
