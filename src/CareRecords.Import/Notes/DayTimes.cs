using System.Globalization;
using CareRecords.Import.Reading;
using NodaTime;

namespace CareRecords.Import.Notes;

/// <summary>
/// Settles the half of the day of every time of a day at once. Each time has its one or two readings, perhaps on the next calendar day;
/// the cheapest path through them in the order of writing is taken (a shortest path, Viterbi 1967). A time whose other half costs
/// nearly as little is not settled: it is asked about.
/// </summary>
internal sealed class DayTimes
{
    // Costs are in one unit: about the surprise of going back an hour within a line. Chosen by CareRecords on invented notes.
    private const double SmallMargin = 1.5;
    private const double Night = 2;
    private const double NightAgain = 1.8;
    private const int NightRunMinutes = 150;
    private const double Late = 1;
    private const double SmallHoursByDay = 3;
    private const double BackAcrossLines = 4;
    private const double BackFromAside = 1;
    private const double SessionsTooNear = 3;
    private const int BetweenSessions = 75;
    private const double BackInList = 30;
    private const double AgainstPart = 15;
    private const double AgainstHint = 1.2;
    private const double AfterWriting = 20;
    private const double AgainstStyle = 2.2;
    private const int Day = 1440;
    private const int DayBegins = 5 * 60;
    private const double FirstAfterNoon = 1.6;
    private const double AgainstPump = 1.4;
    private const double FirstNextDay = 12;
    private const double BeforeNight = 6;
    private const int NightEnds = 10 * 60;
    private const int NearSessions = 12;
    private const double AgainstHabit = 1.6;
    private readonly Dictionary<(int Kind, int Hour), (int Am, int Pm)> _habits = [];
    private int _twentyFour, _twelve;
    private bool _anchored, _fromMorning, _ofTheNight;
    private LocalDate _base;
    private int _opening;

    /// <summary>The day that a word names, seen from a day: "yesterday", the latest "Fri" on or before it; in a night from Thursday to Friday, the Friday that it ends on.</summary>
    public static LocalDate OtherDay(Term word, LocalDate from, bool overnight = false)
    {
        if (word.ValueOf(Sense.DayRef) is { } days) return from.PlusDays(int.Parse(days, CultureInfo.InvariantCulture));
        var weekday = word.ValueOf(Sense.Weekday) is { } value ? (IsoDayOfWeek)int.Parse(value, CultureInfo.InvariantCulture) : IsoDayOfWeek.Saturday;
        var back = ((int)from.DayOfWeek - (int)weekday + 7) % 7;
        return overnight && back == 6 ? from.PlusDays(1) : from.PlusDays(-back);
    }

    /// <summary>Settles the times of one day, given in the order of writing.</summary>
    public void Settle(List<TimeMention> mentions, bool nightShift, bool underHeading = false, bool ofTheNight = false)
    {
        _fromMorning = underHeading && !nightShift && mentions.Count(m => m.After is null) > 1;
        _ofTheNight = ofTheNight;
        foreach (var mention in mentions) Count(mention);
        _anchored = mentions.Exists(m => m.Written.Half != HalfOfDay.Unknown || m.Part is not null);
        // A nurse's visit or a friend's says little of the order of care.
        var chain = mentions.Where(m => m.Date is not null && m.After is null && !m.IsAside).ToList();
        foreach (var aside in mentions.Where(m => m.IsAside && m.After is null && m.Date is not null)) aside.Settled = Likely(aside);
        if (chain.Count > 0)
        {
            Path(chain, nightShift || StartsLate(chain), []);
            // Two sessions do not follow each other within the hour: once more, with the first reading's sessions in mind.
            var sessions = chain.Where(m => m is { IsSession: true, NamesSession: false }).ToList();
            if ((sessions.Exists(s => s.Written.Half == HalfOfDay.Unknown) && sessions.Count > 1) || chain.Exists(m => m.SpeaksOfSession || m.NamesSession)) Path(chain, nightShift || StartsLate(chain), sessions.ConvertAll(s => (s.Line, s.Settled!.Value)));
        }
        Learn(chain);
        foreach (var mention in mentions.Where(m => m.After is not null && m.Date is not null)) End(mention);
    }

    // Alone, a time is settled by its words, or by the half of the day in which people meet.
    private static LocalDateTime Likely(TimeMention mention)
    {
        var time = mention.Written.Time;
        // In a message: the last such time before it was written.
        if (mention.NotAfter is { } written && mention.Written.Half == HalfOfDay.Unknown && new[] { time, time.PlusHours(12) }.Select(t => mention.Date!.Value.At(t)).Where(t => t <= written).DefaultIfEmpty(written).Max() is var latest && latest != written) return latest;
        return mention.Date!.Value.At(mention.Written.Half == HalfOfDay.Unknown && time.Hour is >= 1 and < 8 ? time.PlusHours(12) : time);
    }

    private static bool StartsLate(List<TimeMention> chain) => chain[0] is { OtherDay: false, Written.Half: HalfOfDay.Pm, Written.Time.Hour: >= 18 };

    private void Count(TimeMention mention)
    {
        if (mention.Written.TwentyFourHour) _twentyFour++;
    }

    private sealed record State(int Minutes, HalfOfDay Half, double Cost);

    private void Path(List<TimeMention> chain, bool nightShift, List<(int Line, LocalDateTime At)> sessions)
    {
        _base = chain.Find(m => !m.OtherDay)?.Date ?? chain[0].Date!.Value;
        // "off O2 since 10am yesterday" on the first line: the day begins with the time after it.
        _opening = chain.FindIndex(m => !m.OtherDay);
        var states = chain.ConvertAll(m => States(m, nightShift));
        if (sessions.Count > 0) TooNear(chain, states, sessions);
        var forward = new double[chain.Count][];
        var from = new int[chain.Count][];
        for (var i = 0; i < chain.Count; i++)
        {
            forward[i] = new double[states[i].Count];
            from[i] = new int[states[i].Count];
            for (var s = 0; s < states[i].Count; s++)
            {
                var best = i == 0 ? states[i][s].Minutes >= Day && !chain[i].OtherDay ? (_ofTheNight ? 0 : FirstNextDay) : _ofTheNight && chain[0] is { OtherDay: false, NotAfter: null } && states[0][s].Minutes < NightEnds ? BeforeNight : FromMorning(chain[0], states[0][s]) : double.MaxValue;
                for (var p = 0; i > 0 && p < states[i - 1].Count; p++)
                {
                    var cost = forward[i - 1][p] + Step(chain, i, states[i - 1][p], states[i][s], nightShift);
                    if (cost < best) (best, from[i][s]) = (cost, p);
                }
                forward[i][s] = best + states[i][s].Cost;
            }
        }
        var backward = Backward(chain, states, nightShift);
        for (var i = chain.Count - 1; i >= 0; i--) Decide(chain[i], states[i], forward[i], backward[i]);
    }

    private void TooNear(List<TimeMention> chain, List<List<State>> states, List<(int Line, LocalDateTime At)> sessions)
    {
        var earlier = 0;
        for (var i = 0; i < chain.Count; i++)
        {
            bool AtSession(State state) => sessions.Exists(o => o.At == _base.AtMidnight().PlusMinutes(state.Minutes));
            if (chain[i].SpeaksOfSession || chain[i].NamesSession && states[i].Exists(AtSession))
                for (var s = 0; s < states[i].Count; s++)
                    if (!AtSession(states[i][s])) states[i][s] = states[i][s] with { Cost = states[i][s].Cost + AgainstPart };
            if (chain[i] is { IsSession: false } or { NamesSession: true }) continue;
            for (var s = 0; s < states[i].Count; s++)
            {
                var at = _base.AtMidnight().PlusMinutes(states[i][s].Minutes);
                // "7.25 usual, 6.30 usual": the sessions of a line are told in their order.
                if (earlier > 0 && sessions[earlier - 1] is var last && last.Line == chain[i].Line && at < last.At) states[i][s] = states[i][s] with { Cost = states[i][s].Cost + SessionsTooNear };
                for (var e = Math.Max(0, earlier - NearSessions); e < earlier; e++)
                    if (sessions[e].Line != chain[i].Line && Math.Abs(Period.Between(at, sessions[e].At, PeriodUnits.Minutes).Minutes) <= BetweenSessions) { states[i][s] = states[i][s] with { Cost = states[i][s].Cost + AgainstHint + 2 }; break; }
            }
            earlier++;
        }
    }

    // A day under its heading is told from the morning on.
    private double FromMorning(TimeMention first, State state) =>
        _fromMorning && !first.OtherDay && first.NotAfter is null && first.Written.Half == HalfOfDay.Unknown ? Math.Max(0, state.Minutes - DayBegins) / 280.0 + (state.Minutes >= 12 * 60 ? FirstAfterNoon : 0) : 0;

    private double[][] Backward(List<TimeMention> chain, List<List<State>> states, bool nightShift)
    {
        var backward = new double[chain.Count][];
        for (var i = chain.Count - 1; i >= 0; i--)
        {
            backward[i] = new double[states[i].Count];
            if (i == chain.Count - 1) continue;
            for (var s = 0; s < states[i].Count; s++)
            {
                var best = double.MaxValue;
                for (var n = 0; n < states[i + 1].Count; n++)
                    best = Math.Min(best, Step(chain, i + 1, states[i][s], states[i + 1][n], nightShift) + states[i + 1][n].Cost + backward[i + 1][n]);
                backward[i][s] = best;
            }
        }
        return backward;
    }

    private void Decide(TimeMention mention, List<State> states, double[] forward, double[] backward)
    {
        var (best, other) = (-1, double.MaxValue);
        for (var s = 0; s < states.Count; s++)
            if (best < 0 || forward[s] + backward[s] < forward[best] + backward[best]) best = s;
        for (var s = 0; s < states.Count; s++)
            if (states[s].Half != states[best].Half) other = Math.Min(other, forward[s] + backward[s]);
        mention.Settled = _base.AtMidnight().PlusMinutes(states[best].Minutes);
        mention.Unsettled = mention.Written.Half == HalfOfDay.Unknown && other - (forward[best] + backward[best]) < SmallMargin;
        if (mention.Written.Half == HalfOfDay.Unknown && !mention.Unsettled && states[best].Half == HalfOfDay.Pm && mention.Written.Time.Hour > 0) _twelve++;
    }

    private List<State> States(TimeMention mention, bool nightShift)
    {
        var result = new List<State>(4);
        var written = mention.Written;
        var shift = Period.DaysBetween(_base, mention.Date!.Value) * Day;
        var minutes = written.Time.Hour * 60 + written.Time.Minute;
        if (written.DayPart == TimeGrammar.NextDay) { result.Add(new State(minutes + Day + shift, HalfOfDay.Am, 0)); return result; }
        foreach (var half in written.Half == HalfOfDay.Unknown ? new[] { HalfOfDay.Am, HalfOfDay.Pm } : [written.Half])
        {
            var at = written.Half == HalfOfDay.Unknown && half == HalfOfDay.Pm ? minutes + 720 : minutes;
            var cost = written.Half == HalfOfDay.Unknown ? Unary(mention, at, half) : 0;
            result.Add(Stamped(mention, new State(at, half, cost)));
            if (shift != 0) { result[^1] = result[^1] with { Minutes = at + shift }; continue; }
            if (mention.NotAfter is { Hour: < 8 } && at > 12 * 60) result.Add(Stamped(mention, new State(at - Day, half, cost + 1)));
            if (mention.NotAfter is null && !mention.OtherDay && (nightShift ? at < 14 * 60 : at < 11 * 60)) result.Add(new State(at + Day, half, cost));
        }
        return result;
    }

    private static State Stamped(TimeMention mention, State state)
    {
        if (mention.NotAfter is not { } stamp || mention.Date is not { } date || mention.OtherDay) return state;
        var gap = Period.Between(date.AtMidnight().PlusMinutes(state.Minutes), stamp, PeriodUnits.Minutes).Minutes;
        return gap < -3 ? state with { Cost = state.Cost + AfterWriting } : mention.Written.Half == HalfOfDay.Unknown ? state with { Cost = state.Cost + gap / 180.0 } : state;
    }

    private double Unary(TimeMention mention, int at, HalfOfDay half)
    {
        var hour = at / 60;
        var cost = 0.0;
        var night = mention.Part is "night" or "tonight";
        // Without one known time in the day, an hour of the night is nearly as likely as any.
        if (hour < 5 && !night) cost += _anchored ? Night : Night / 4;
        if (hour < 1 && !night) cost += Night;
        // Nobody clears a chest at three in the night, and school is out, unless the words say night; where nothing is known of the day yet, it is asked.
        if (hour < 5 && !night && (_anchored || _habits.Count > 0) && (mention.IsSession || mention.ByDay)) cost += SmallHoursByDay;
        if (hour is 21 && !night && mention.Part is not "bed") cost += Late;
        if (hour >= 22 && !night && mention.Part is not "bed") cost += 2 * Late;
        if ((hour >= 13 || hour == 0) && _twentyFour > 2 * _twelve && _twentyFour > 0) cost += AgainstStyle;
        if (mention.MorningHint && half == HalfOfDay.Pm) cost += AgainstHint;
        if (mention.PumpOff && half == HalfOfDay.Pm || mention.PumpOn && half == HalfOfDay.Am && hour >= 6) cost += AgainstPump;
        cost += Habit(mention, half);
        return cost + Part(mention.Part, hour);
    }

    // What the family has done at this hour on other days, once it is known from two of them.
    private double Habit(TimeMention mention, HalfOfDay half)
    {
        var (am, pm) = _habits.GetValueOrDefault(Key(mention));
        if (am + pm < 2) return 0;
        var against = half == HalfOfDay.Am ? pm : am;
        return AgainstHabit * against / (am + pm);
    }

    private static (int, int) Key(TimeMention mention) => (mention.IsSession ? 1 : mention.MorningHint ? 2 : 0, mention.Written.Time.Hour % 12);

    private void Learn(List<TimeMention> chain)
    {
        foreach (var mention in chain)
        {
            if (mention.Unsettled || mention.Settled is not { } settled || mention.Written.TwentyFourHour) continue;
            var (am, pm) = _habits.GetValueOrDefault(Key(mention));
            _habits[Key(mention)] = settled.Hour < 12 ? (am + 1, pm) : (am, pm + 1);
        }
    }

    private static double Part(string? part, int hour) => part switch
    {
        "morning" or "mid morning" or "breakfast" => hour < 12 ? 0 : AgainstPart,
        "afternoon" or "tea" or "supper" => hour >= 12 ? 0 : AgainstPart,
        "lunch" => hour is >= 11 and <= 14 ? 0 : AgainstPart,
        "evening" or "dinner" or "bed" => hour >= 12 ? 0 : AgainstPart,
        "tonight" => hour is >= 16 or <= 3 ? 0 : AgainstPart,
        "night" => hour is >= 18 or <= 7 ? hour is >= 5 and <= 7 ? 2 : 0 : AgainstPart,
        _ => 0,
    };

    private double Step(List<TimeMention> chain, int at, State a, State b, bool nightShift) =>
        at == _opening ? FromMorning(chain[at], b) + (b.Minutes >= Day ? FirstNextDay : 0) : Step(chain[at - 1], a, chain[at], b, nightShift);

    private static double Step(TimeMention before, State a, TimeMention after, State b, bool nightShift)
    {
        if ((after.OtherDay && !(before.OtherDay && before.Line == after.Line)) || (before.OtherDay && b.Minutes - a.Minutes > Day) || (before.NotAfter is not null && before.Line != after.Line)) return b.Minutes >= Day ? BackAcrossLines : 0;
        if (after.OpensSection) return b.Minutes >= Day ? FirstNextDay : Math.Max(0, b.Minutes - DayBegins) / 280.0;
        var gap = b.Minutes - a.Minutes;
        var night = before.Part is "night" or "tonight" && after.Part is "night" or "tonight";
        var crossing = b.Minutes >= Day && a.Minutes < Day ? night && a.Minutes >= 17 * 60 ? 0.5 : before.Part is not "night" && after.Part is "night" && after.Written.TwentyFourHour && a.Minutes >= 12 * 60 && b.Minutes - Day <= 7 * 60 ? 0.5 : Crossing(a, b, nightShift) + (after.InList ? 10 : after.Written.Half == HalfOfDay.Unknown && !nightShift ? 3 : 0) : 0;
        if (after.InList && before.Line == after.Line && gap is >= 0 and < 20) return crossing + BackInList;
        // "Awake at two. Three o'clock 90, half past three 94": one night's hours follow one another.
        if (gap is >= 0 and <= NightRunMinutes && a.Minutes is >= 0 and < DayBegins && b.Minutes < DayBegins && after.Written.Half == HalfOfDay.Unknown) return gap / 280.0 - NightAgain;
        if (gap >= 0) return crossing + gap / (before.Line == after.Line ? 200.0 : 280.0) + (gap > 16 * 60 ? 3 : 0) + (before.IsSession && after.IsSession && gap < BetweenSessions ? 6 : 0);
        var sameLine = before.Line == after.Line && before.Sentence == after.Sentence;
        var hours = -gap / 60.0;
        if (sameLine && ReferenceEquals(before.Written, after.Written)) return crossing;
        if (before.Line == after.Line && after.InList) return crossing + BackInList;
        if (hours <= 1.5) return crossing + (sameLine ? 0.4 : 0.3 + 2 * hours) + (before.IsSession && after.IsSession && before.Line != after.Line && -gap < BetweenSessions ? SessionsTooNear : 0);
        return crossing + (sameLine ? 2 + hours : after.StartsList && !night ? 1 : (before.IsAside ? BackFromAside : BackAcrossLines) + hours / 5);
    }

    private static double Crossing(State a, State b, bool nightShift)
    {
        if (nightShift) return a.Minutes >= 17 * 60 ? 0.5 : 4;
        if (a.Minutes < 19 * 60) return 8;
        return b.Minutes - Day < 5 * 60 ? 3 : 9;
    }

    private static void End(TimeMention end)
    {
        if (end.After!.Settled is not { } start) return;
        var written = end.Written;
        var minutes = written.Time.Hour * 60 + written.Time.Minute;
        LocalDateTime? best = null;
        foreach (var half in written.Half == HalfOfDay.Unknown ? new[] { 0, 720 } : [0])
            for (var day = 0; day <= 1; day++)
            {
                var at = start.Date.AtMidnight().PlusMinutes(minutes + half + day * Day);
                if (at > start && (best is null || at < best)) best = at;
            }
        end.Settled = best ?? start;
        end.Unsettled = end.After.Unsettled;
    }
}
