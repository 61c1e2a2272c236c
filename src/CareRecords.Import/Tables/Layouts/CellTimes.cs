using CareRecords.Import.Reading;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>What a cell says of day and time, before order, half of day and neighbours settle it.</summary>
/// <param name="Outcome">How sure; <see cref="Outcome.Nothing"/> when it says neither.</param>
/// <param name="Date">The day as written; null when none is.</param>
/// <param name="Clock">The time or range of times; null when none is.</param>
/// <param name="Why">Why it is impossible or doubtful.</param>
internal sealed record WrittenTime(Outcome Outcome, DateWritten? Date, ClockSpan? Clock, string? Why = null)
{
    /// <summary>Neither day nor time.</summary>
    public static WrittenTime Nothing { get; } = new(Outcome.Nothing, null, null);
}

/// <summary>Reads a cell where a day, a time or both belong: real dates and times of a sheet, numbers meant as times, and words.</summary>
internal static partial class CellTimes
{
    // "c. 17:00", "sobre las 17".
    [System.Text.RegularExpressions.GeneratedRegex(@"^(?:c\.|ca\.?|circa|approx\.?|aprox\.?|roughly|sobre las?|hacia las?|a eso de las?|vers|gegen|rond|omstreeks|om en by)\s*(?=\d)", System.Text.RegularExpressions.RegexOptions.IgnoreCase)]
    private static partial System.Text.RegularExpressions.Regex About();

    // "Dt. 14-09-2026 (Mon)", "Date: 3 March".
    [System.Text.RegularExpressions.GeneratedRegex(@"^(?:dt|date|dated|datum|fecha|day)\b\s*[.:]?\s*(?=\d|[A-Za-z]{3,9},?\s+\d)", System.Text.RegularExpressions.RegexOptions.IgnoreCase)]
    private static partial System.Text.RegularExpressions.Regex Labelled();

    /// <summary>Whether words where a day belongs have the form of a date, and are none that is known: "4 xyzember", "Dnes 5 nov 2025". What stands below them is not of the day before.</summary>
    public static bool IsUnreadDate(string text) => text.Length <= LongestText && FormOfDate().IsMatch(text.Trim()) && Lexicon.Find(text, out _).Count == 0 && Read(Cell.Of(text)).Outcome == Outcome.Nothing;

    [System.Text.RegularExpressions.GeneratedRegex(@"^(?:\p{L}{2,12}[.,]?\s+){0,2}\d{1,2}[.]?\s+\p{L}{3,12}\.?(?:\s+\d{4})?$", System.Text.RegularExpressions.RegexOptions.CultureInvariant)]
    private static partial System.Text.RegularExpressions.Regex FormOfDate();

    private const int LongestText = 60;

    // A sheet's own count of days, shown as a bare number where the cell has lost its format: 1 January 1990 to 2100.
    private const double EarliestSerial = 32874;
    private const double LatestSerial = 73051;

    /// <summary>A real time of a sheet as its clock shows it, or the words of the cell.</summary>
    public static string Shown(Cell cell) => cell.Kind is CellKind.TimeOfDay or CellKind.Moment ? cell.At.TimeOfDay.ToString("HH:mm", System.Globalization.CultureInfo.InvariantCulture) : cell.Words ?? "";

    /// <summary>What the cell says. A cell with other words beside the time says nothing here: it is read as free words.</summary>
    public static WrittenTime Read(Cell cell) => cell.Kind switch
    {
        CellKind.Empty => WrittenTime.Nothing,
        CellKind.Moment => new(Outcome.Certain, Whole(cell.At.Date), Point(cell.At.TimeOfDay)),
        CellKind.Date => new(Outcome.Certain, Whole(cell.At.Date), null),
        CellKind.TimeOfDay => new(Outcome.Certain, null, Point(cell.At.TimeOfDay)),
        CellKind.Number when cell.Number is >= EarliestSerial and < LatestSerial => OfSerial(cell.Number),
        CellKind.Number => OfClock(ClockReader.ReadNumber(cell.Number, cell.Text)),
        _ => WithSeconds(OfText(cell.Text.Trim()), cell.Text),
    };

    /// <summary>Words where only a time belongs.</summary>
    public static Reading<ClockSpan> Clock(string text) =>
        text.Length > LongestText ? new Reading<ClockSpan>(Outcome.Nothing, null, null, null) : ClockReader.Read(SpacedHours.Closed(text));

    private static WrittenTime OfSerial(double days)
    {
        var at = LocalDateTime.FromDateTime(DateTime.FromOADate(days).AddSeconds(30));
        var minute = at.Date.At(new LocalTime(at.Hour, at.Minute));
        return new(Outcome.Certain, Whole(minute.Date), days == Math.Floor(days) ? null : Point(minute.TimeOfDay));
    }

    private static WrittenTime OfText(string text)
    {
        text = Spaced(text);
        text = SpacedHours.Closed(ShortWeekdays.InEnglish(text));
        // "4 nov."
        if (text.Length > 4 && text[^1] == '.' && char.IsLetter(text[^2]) && char.IsLetter(text[^3]) && char.IsLetter(text[^4]) && text.Any(char.IsAsciiDigit)) text = text[..^1];
        if (text.Length > LongestText || NotSaid.Is(text)) return WrittenTime.Nothing;
        switch (LiteralTime.Read(LiteralTime.WithoutAbout(text, out _), out var at))
        {
            case LiteralOutcome.Moment when char.IsAsciiDigit(text[0]):
                return new(Outcome.Certain, Whole(at.Date), Point(at.TimeOfDay));
            case LiteralOutcome.DateOnly when char.IsAsciiDigit(text[0]):
                return new(Outcome.Certain, Whole(at.Date), null);
            case LiteralOutcome.Impossible:
                return new(Outcome.Impossible, null, null, $"There is no such date or time as '{text}'.");
        }

        var date = DateReader.Read(text);
        if (date.Outcome == Outcome.Nothing && Labelled().Match(text) is { Success: true, Length: > 0 } label) date = DateReader.Read(text[label.Length..].Trim());
        if (date.TryGet(out var written)) return new(Outcome.Certain, written, null);
        var clock = ClockReader.Read(text);
        if (clock.Outcome == Outcome.Nothing && About().Match(text) is { Success: true } about) clock = ClockReader.Read("about " + (text[about.Length..].Trim() is { Length: <= 2 } hour ? hour + ":00" : text[about.Length..].Trim()));
        if (clock.Outcome == Outcome.Certain) return OfClock(clock);
        return Both(text)
            ?? (date.Outcome == Outcome.Impossible ? new(Outcome.Impossible, null, null, date.Why)
                : clock.Outcome is Outcome.Impossible or Outcome.Doubtful ? OfClock(clock)
                : WrittenTime.Nothing);
    }

    // "03-Mar-25", "3/Mar/2025": a month by its name between figures.
    private static string Spaced(string text)
    {
        if (text.Length < 6 || !char.IsAsciiDigit(text[0]) || text.Length > LongestText) return text;
        var first = text.AsSpan().IndexOfAnyExceptInRange('0', '9');
        if (first is < 1 or > 2 || text[first] is not ('-' or '/' or '.') || first + 4 > text.Length || !char.IsLetter(text[first + 1]) || !char.IsLetter(text[first + 2])) return text;
        var second = text.AsSpan(first + 1).IndexOfAny("-/.");
        return second < 3 ? text : $"{text[..first]} {text[(first + 1)..(first + 1 + second)]} {text[(first + second + 2)..]}";
    }

    // "3/11/25 5:45 AM", "Mon 3 March, 7.15", "7.15 on 3/3": a day and a time side by side.
    private static WrittenTime? Both(string text)
    {
        WrittenTime? half = null;
        for (var i = 1; i < text.Length - 1; i++)
        {
            if (text[i] is not (' ' or ',' or 'T')) continue;
            var (left, right) = (text[..i].Trim(' ', ','), text[(i + 1)..].Trim(' ', ','));
            if (left.Length == 0 || right.Length == 0) continue;
            foreach (var (day, time) in new[] { (left, right), (right, left) })
            {
                var date = DateReader.Read(day);
                var clock = ClockReader.Read(time);
                if (date.TryGet(out var written) && clock.TryGet(out var span)) return new(Outcome.Certain, written, span);
                if (date.Outcome == Outcome.Impossible && clock.Outcome == Outcome.Certain) half ??= new(Outcome.Impossible, null, clock.Value, date.Why);
                if (date.Outcome == Outcome.Certain && clock.Outcome == Outcome.Impossible) half = new(Outcome.Impossible, date.Value, null, clock.Why);
                if (date.Outcome == Outcome.Certain && half is null && time.Any(char.IsAsciiDigit) && clock.Outcome == Outcome.Nothing && day.Length >= time.Length - 3)
                    half = new(Outcome.Impossible, date.Value, null, $"'{time}' is not a time.");
            }
        }

        return half;
    }

    // Seconds are written by machines, and they count to 24.
    private static WrittenTime WithSeconds(WrittenTime written, string text) =>
        written.Clock is { End: null, Start: { Half: HalfOfDay.Unknown, Precision: TimePrecision.Exact } start } && text.AsSpan().Count(':') == 2
            ? written with { Clock = Point(start.Time.Hour == 0 && text.Contains("12:", StringComparison.Ordinal) ? start.Time.PlusHours(12) : start.Time) } : written;

    private static WrittenTime OfClock(Reading<ClockSpan> clock) => new(clock.Outcome, null, clock.Value, clock.Why);

    private static DateWritten Whole(LocalDate day) => new(null, null, day.Year, day.Month, day.Day, IsoDayOfWeek.None);

    private static ClockSpan Point(LocalTime time) =>
        new(new ClockTime(time, time.Hour < 12 ? HalfOfDay.Am : HalfOfDay.Pm, TimePrecision.Exact, null, time, time), null);
}
