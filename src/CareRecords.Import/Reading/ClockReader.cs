using System.Globalization;
using CareRecords.Import.Notes;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Reading;

/// <summary>Reads times of day: 24-hour and 12-hour writing, spoken times ("half 8", "ten to 8"), "noon", "about 9", "9ish", parts of the day, ranges.</summary>
internal static class ClockReader
{
    /// <summary>Reads the whole of <paramref name="text"/> as a time or range of times; <see cref="Outcome.Nothing"/> when other words stand beside it.</summary>
    public static Reading<ClockSpan> Read(string text)
    {
        // "0.40" where only a time can stand is twenty to one at night; among words it may be litres.
        if (text.AsSpan().Trim() is ['0', '.' or ',', _, _] night) text = "0" + night.ToString();
        var terms = CellTerms.Read(text).Where(t => !(t.Kind == TermKind.Symbol && t.Text is "." or ":" or ",")).ToList();
        return terms switch
        {
            [{ Kind: TermKind.Time, Clock: { } span }] => Reading.Certain(span),
            [{ Kind: TermKind.BadTime } bad] => Reading.Impossible<ClockSpan>($"{text[bad.Start..bad.End]} is not a time of day."),
            [{ Kind: TermKind.Time or TermKind.Number, Clock: { End: null, Start: { Time: { Hour: 0 or 12, Minute: 0 } } } twelve }, { Kind: TermKind.Word or TermKind.Time } named] when named.Text is "noon" or "midday" or "midnight" or "nn" => Reading.Certain(twelve with { Start = twelve.Start.In(named.Text == "midnight" ? HalfOfDay.Am : HalfOfDay.Pm) }),
            [{ Kind: TermKind.Number, Clock: { } bare }] => Reading.Certain(bare),
            [{ Kind: TermKind.Number } number] when LooksLikeTime(number) => Reading.Impossible<ClockSpan>($"{text.Trim()} is not a time of day."),
            [{ Kind: TermKind.Word } part] when PartOf(part) is { } kind => Reading.Certain(Part(kind, text.Trim())),
            [{ Kind: TermKind.Word, Text: "after" or "before" or "at" or "around" or "about" or "in" or "early" or "late" or "mid" }, { Kind: TermKind.Word } part] when PartOf(part) is { } kind => Reading.Certain(Part(kind, text.Trim())),
            _ => Reading.Nothing<ClockSpan>(),
        };
    }

    /// <summary>Reads a number that a sheet holds where a time belongs: 0710 or 1845 (hhmm), 7.1 or 7.10 as written (h.mm), or a fraction of a day.</summary>
    /// <param name="number">The cell's number.</param>
    /// <param name="asShown">The cell's text as shown, where known; null otherwise.</param>
    public static Reading<ClockSpan> ReadNumber(double number, string? asShown)
    {
        if (number is > 0 and < 1) return Reading.Certain(Point(LocalTime.FromMinutesSinceMidnight((int)Math.Round(number * MinutesADay) % MinutesADay)));
        var shown = asShown ?? number.ToString("0.##", CultureInfo.InvariantCulture);
        // 7.1 in a sheet is 7.10 with its last nought not shown; 15 among 710 and 1300 is shown as 0015 or means 15 o'clock.
        if (number != Math.Floor(number) && shown.Length - shown.IndexOf('.', StringComparison.Ordinal) == 2) shown += "0";
        var read = Read(shown);
        return read.Outcome == Outcome.Nothing ? Reading.Impossible<ClockSpan>($"{shown} is not a time of day.") : read;
    }

    private const int MinutesADay = 24 * 60;

    private static bool LooksLikeTime(Term number) => number.Text.Length is 3 or 4 or 5 && (number.IsWhole || number.Text.AsSpan().IndexOfAny('.', ',') == number.Text.Length - 3);

    private static string? PartOf(Term term) => term.ValueOf(Sense.DayPart) ?? term.ValueOf(Sense.Meal)
        ?? term.ValueOf(Sense.AmPm) switch { "am" => "morning", "pm" => "evening", var other => other };

    private static ClockSpan Part(string kind, string words)
    {
        var whole = TimesOfEvents.OfPart(AnyDay, kind, words);
        return new ClockSpan(new ClockTime(whole.Stated.TimeOfDay, whole.Stated.Hour < 12 ? HalfOfDay.Am : HalfOfDay.Pm, TimePrecision.PartOfDay, words, whole.Earliest.TimeOfDay, whole.Latest.TimeOfDay), null);
    }

    private static ClockSpan Point(LocalTime time) => new(new ClockTime(time, time.Hour < 12 ? HalfOfDay.Am : HalfOfDay.Pm, TimePrecision.Exact, null, time, time), null);

    private static readonly LocalDate AnyDay = new(2000, 1, 1);
}
