using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>Words that point to an earlier session ("same", "as am", "ditto") or say that there was none ("skipped", "missed").</summary>
internal static partial class SameAs
{
    private static readonly string[] Same = ["same", "ditto", "as am", "as morning", "as above", "as before", "same as", "same dose", "same again", "\"", "〃", "do.", "=", "as this morning", "as pm", "as last", "as usual today", "as b4", "as yesterday", "igual", "lo mismo", "idem", "pareil", "gleich", "wie am", "dieselbe", "soos", "zelfde", "pareho"];
    private static readonly string[] NotDone = ["skipped", "skip", "not done", "missed", "no physio", "no chest", "didn't do", "didnt do", "did not do", "not today", "cancelled", "refused", "declined", "wouldn't let", "wouldnt let", "couldn't do", "couldnt do", "never got to", "never got round", "didn't get round", "never happened", "ran out of time", "no cpt", "no pt", "none done", "left out", "did not happen", "didn't happen", "nobody to", "no one to", "noone to", "nobody here", "unable to do", "not able to", "no time for", "didn't manage", "didnt manage", "could not", "didn't get to", "didn't need", "didnt need", "not needed", "no need", "did not need", "no hecha", "no hecho", "no se hizo", "sin hacer", "nicht gemacht", "pas fait", "nie gedoen", "niet gedaan", "hindi nagawa"];

    /// <summary>True when the words only point to an earlier session.</summary>
    public static bool PointsBack(string text)
    {
        var folded = text.Trim().TrimStart('=').Trim().ToLowerInvariant();
        if (TimeMeant(folded) is not null) return true;
        if (folded.Length < 30 && !folded.Any(char.IsAsciiDigit) && Lexicon.Split(folded) is ["as" or "like", var day, ..] && DayOfWeek(day) is not null) return true;
        return folded is "same" or "ditto" or "\"" or "〃" or "as am" or "as pm" || Same.Any(s => s.Length > 3 && folded.StartsWith(s, StringComparison.Ordinal) && folded.Length < 40 && !folded.Any(char.IsAsciiDigit));
    }

    // "same as 6:30", "as 7.15 one".
    private static ClockTime? TimeMeant(string folded)
    {
        foreach (var mark in new[] { "same as ", "as at ", "as ", "same as at " })
            if (folded.StartsWith(mark, StringComparison.Ordinal) && folded.Length < 30 && folded[mark.Length..].Trim() is [>= '0' and <= '9', ..] time && CellTimes.Clock(time).TryGet(out var span) && span.End is null)
                return span.Start;
        return null;
    }

    /// <summary>True when the words say that it did not take place.</summary>
    public static bool SaysNotDone(string text)
    {
        var folded = text.ToLowerInvariant();
        return folded.Trim() is not ("not sure" or "not sure how long" or "not known") && NotDone.Any(n => folded.Contains(n, StringComparison.Ordinal)) && !PartOnly().IsMatch(folded);
    }

    // "she refused right side", "skipped the tops": a part of it.
    [System.Text.RegularExpressions.GeneratedRegex(@"\b(?:refused|skipped|missed|wouldn'?t (?:do|let me do)|no time for) (?:the |his |her |any )?(?:left|right|uppers?|lowers?|tops?|bottoms?|bases?|vib\w*|shak\w*)\b")]
    private static partial System.Text.RegularExpressions.Regex PartOnly();

    /// <summary>True for a plain no where a session would be written: "no", "no - asleep", "nee".</summary>
    public static bool IsNo(string text)
    {
        var folded = text.Trim().ToLowerInvariant();
        // How long it was is not known.
        if (folded.StartsWith("not sure", StringComparison.Ordinal) || folded.StartsWith("not known", StringComparison.Ordinal)) return false;
        if (folded.Length > 0 && folded[0] is '✗' or '✘' or '❌') return true;
        if (folded.StartsWith("forgot", StringComparison.Ordinal) && folded.Length < 14) return true;
        return folded is "no" or "none" or "nil" or "nope" or "nee" or "non" or "nein" or "not" or "0" || (folded.StartsWith("no", StringComparison.Ordinal) && folded.Length > 3 && (folded[2] is ',' or '-' or ':' or ';' or '.' or '(' || folded[2..].TrimStart() is ['-' or '–' or '—' or ',' or '(', ..]))
            || folded.StartsWith("not ", StringComparison.Ordinal) || folded.StartsWith("none ", StringComparison.Ordinal);
    }

    /// <summary>The session of an earlier day that is pointed to ("same as Mon", "as yesterday"): the one nearest in time of day. Null when no day is named, or it has none.</summary>
    /// <param name="text">The words.</param>
    /// <param name="all">The sessions so far.</param>
    /// <param name="day">The day of the words.</param>
    /// <param name="at">The time of the session that is the same; null when it is not known.</param>
    public static Session? OfDay(string text, IEnumerable<Session> all, NodaTime.LocalDate day, NodaTime.LocalTime? at)
    {
        var words = Lexicon.Split(text);
        NodaTime.LocalDate? meant = words.Contains("yesterday") ? day.PlusDays(-1) : words.Skip(1).Select(DayOfWeek).FirstOrDefault(d => d is not null) is { } weekday ? day.Previous(weekday) : null;
        if (meant is not { } date) return null;
        if (words.Any(w => w is "morning" or "am")) at = NodaTime.LocalTime.Midnight;
        else if (words.Any(w => w is "evening" or "night" or "pm")) at = new NodaTime.LocalTime(23, 59);
        return all.Where(s => s.Start is { } start && start.Stated.Date == date).MinBy(s => at is { } time ? Math.Abs(NodaTime.Period.Between(time, s.Start!.Stated.TimeOfDay, NodaTime.PeriodUnits.Minutes).Minutes) : 0);
    }

    private static NodaTime.IsoDayOfWeek? DayOfWeek(string word) => word.Length < 2 ? null : word switch
    {
        "mon" or "monday" => NodaTime.IsoDayOfWeek.Monday,
        "tue" or "tues" or "tuesday" => NodaTime.IsoDayOfWeek.Tuesday,
        "wed" or "weds" or "wednesday" => NodaTime.IsoDayOfWeek.Wednesday,
        "thu" or "thur" or "thurs" or "thursday" => NodaTime.IsoDayOfWeek.Thursday,
        "fri" or "friday" => NodaTime.IsoDayOfWeek.Friday,
        "sat" or "saturday" => NodaTime.IsoDayOfWeek.Saturday,
        "sun" or "sunday" => NodaTime.IsoDayOfWeek.Sunday,
        _ => null,
    };

    /// <summary>The session that is pointed to: for "morning" or "am" the first of the day, else the last one written.</summary>
    public static Session? Find(string text, IReadOnlyList<Session> ofDay, Session? last)
    {
        var folded = text.ToLowerInvariant();
        if (TimeMeant(folded) is { } at)
            return ofDay.LastOrDefault(s => s.Start is { } start && (start.Stated.TimeOfDay == at.Time || (at.Half == HalfOfDay.Unknown && start.Stated.Hour % 12 == at.Time.Hour % 12 && start.Stated.Minute == at.Time.Minute)));
        var early = folded.Contains("morning", StringComparison.Ordinal) || folded.Contains("mañana", StringComparison.Ordinal) || folded.Contains("matin", StringComparison.Ordinal) || folded.Contains("oggend", StringComparison.Ordinal) || folded.Contains("am", StringComparison.Ordinal) && folded.Contains("as am", StringComparison.Ordinal);
        return early && ofDay.Count > 0 ? ofDay[0] : ofDay.Count > 0 ? ofDay[^1] : last;
    }
}
