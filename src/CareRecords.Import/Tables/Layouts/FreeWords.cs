using CareRecords.Import.Accounting;
using CareRecords.Import.Notes;
using CareRecords.Import.Reading;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>Hands the free words of a cell to the notes reader with what the cell's place says about them.</summary>
internal sealed partial class FreeWords(BlockReading reading)
{
    [System.Text.RegularExpressions.GeneratedRegex(@"\bforgot\s+to\s+(?:put|write|note|log|say|enter|record|mark|add)\b", System.Text.RegularExpressions.RegexOptions.IgnoreCase)]
    private static partial System.Text.RegularExpressions.Regex Forgot();

    [System.Text.RegularExpressions.GeneratedRegex(@"\b(?:till|until|til|next|by)\s+(?:mon|tue|tues|wed|weds|thu|thur|thurs|fri|sat|sun)(?:day|nesday|sday|rsday|urday)?\b", System.Text.RegularExpressions.RegexOptions.IgnoreCase)]
    private static partial System.Text.RegularExpressions.Regex Until();

    private const int MostOfARow = 40;

    // In a sentence with a number that can be a saturation.
    [System.Text.RegularExpressions.GeneratedRegex(@"(?<=\b(?:[6-9]\d|100)\b[^.;]*|(?=[^.;]*\b(?:[6-9]\d|100)\b))\b(before|after|b4)\s+(?:the\s+)?(?:(1st|first)|(2nd|second)|(3rd|third)|(4th|fourth)|(last))(?:\s+(?:one|go|lot|session|physio|chest))?\b", System.Text.RegularExpressions.RegexOptions.IgnoreCase)]
    private static partial System.Text.RegularExpressions.Regex NthSession();

    // "Sat 96 after 2nd" beside several sessions: after that one, at its time.
    private string WithTimesOfSessions(string words) => reading.SessionsOfDay.Count < 2 ? words : NthSession().Replace(words, said =>
    {
        var starts = reading.SessionsOfDay.Select(s => s.Start).OfType<UncertainTime>().Where(s => s.IsExact).Select(s => s.Stated).Order().ToList();
        var nth = said.Groups[6].Success ? starts.Count - 1 : Enumerable.Range(0, 4).First(n => said.Groups[n + 2].Success);
        return nth < starts.Count && starts.Count == reading.SessionsOfDay.Count ? $"{said.Groups[1].Value} the {starts[nth].ToString("HH:mm", System.Globalization.CultureInfo.InvariantCulture)} session" : said.Value;
    });

    /// <summary>The minutes that a cell's words tell of a session; null when they tell of none, or of anything else besides.</summary>
    public IReadOnlyList<AreaMinutes>? Areas(CellAt cell, LocalDate? day) =>
        AsSession(cell, day) is { Entries: [Session { Areas.Count: > 0 } session], Problems.Count: 0 } ? session.Areas : null;

    /// <summary>The same where readings or signs are told beside them: "lowers 3 each, uppers 2 each. sats 96 after".</summary>
    public IReadOnlyList<AreaMinutes>? AreasAmongOthers(CellAt cell, LocalDate? day) =>
        AsSession(cell, day) is { Problems.Count: 0 } found && found.Entries.OfType<Session>().ToList() is [{ Areas.Count: > 0 } session] && found.Entries.All(e => e is Session or Check or Sign) && session.Areas.All(a => a is { Minutes: not null, Area: not ChestArea.Unknown }) ? session.Areas : null;

    private NotesReading? AsSession(CellAt cell, LocalDate? day)
    {
        if (day is not { } date || cell.Cell.Words is not { } words || !words.Any(char.IsAsciiDigit)) return null;
        var context = reading.Context.ForNotes(cell.Place.File, null) with { Date = date };
        var noon = new ClockTime(LocalTime.Noon, HalfOfDay.Pm, TimePrecision.Exact, null, LocalTime.Noon, LocalTime.Noon);
        return NotesReader.ReadCell(cell.Source with { Text = words.TrimStart('=', '+', ' ') }, new CellContext { Date = date, Heading = "physio", Time = noon }, context);
    }

    /// <summary>The records that words tell beside an event of a known kind and time, without adding them; empty when they ask or say nothing.</summary>
    public IReadOnlyList<CareEntry> Told(string text, string? heading, UncertainTime at, string file)
    {
        var context = reading.Context.ForNotes(file, null) with { Date = at.Stated.Date };
        var time = at.Stated.TimeOfDay;
        var clock = at.IsExact ? new ClockTime(time, time.Hour < 12 ? HalfOfDay.Am : HalfOfDay.Pm, TimePrecision.Exact, null, time, time) : null;
        var found = NotesReader.ReadCell(new SourceLine(file, null, null, null, text), new CellContext { Date = at.Stated.Date, Heading = heading, Time = clock }, context);
        return found.Problems.Count == 0 ? found.Entries : [];
    }

    /// <summary>Adds the signs that words of a session left out tell of: "not done, vomited 18:50".</summary>
    public void AddSigns(CellAt cell, UncertainTime at)
    {
        foreach (var sign in Told(cell.Cell.Text, null, at, cell.Place.File).OfType<Sign>().Where(s => s.Kind is not SignKind.Other))
            reading.Add(Beside(sign, at) with { Sources = [cell.Source] }, cell);
    }

    // A sign in a remark has the time of the event that the remark stands beside, not one of its own.
    private static CareEntry Beside(CareEntry entry, UncertainTime? at) =>
        entry is not Session && at is { IsExact: true } && entry.Start == UncertainTime.Exactly(at.Stated)
            ? entry with { Start = TimesOfEvents.Borrowed(at.Stated, (entry as Check)?.Phase ?? CheckPhase.None) } : entry;

    // What took the time of a row of an hour happened within it.
    private static CareEntry WithinHour(CareEntry entry, UncertainTime? at) =>
        at is not { Precision: TimePrecision.Rounded } ? entry
        : entry is Feed { Start: null, End: { IsExact: true } end } feed ? end.Stated == at.Stated ? feed with { End = at } : feed
        : entry.Start is { IsExact: true } start && start.Stated == at.Stated ? entry with { Start = at } : entry;

    // "sats after 96" in the remark of a physio is a check of its own; beside a check it is the same one in words.
    private bool IsOther(CareEntry entry, CellAt cell, UncertainTime at) =>
        entry is Check { SpO2: not null } or Dose { Medicine: not Medicines.Unknown, Amount: not null } or Feed { Millilitres: not null } or Feed { MillilitresPerHour: not null } or Feed { Start: null, End: not null }
        && !reading.Into.Entries.TakeLast(MostOfARow).Any(e => e.GetType() == entry.GetType() && e.When.Stated.Date == at.Stated.Date && SourceLines.NumberOf(e.Sources[0]) == cell.Row.Line);

    // A cell over several lines of a text: each line is the source of what it tells.
    private bool Lines(CellAt cell, string? heading, LocalDate? day, UncertainTime? at, bool keepAll, string words)
    {
        var any = false;
        var first = cell.Row.Line + Math.Max(0, cell.Row.Text.AsSpan(0, Math.Max(0, cell.Row.Text.IndexOf(words, StringComparison.Ordinal))).Count('\n'));
        foreach (var line in words.Split('\n'))
        {
            var row = new GridRow(first++, 1, [Cell.Of(line)], line);
            any |= line.Any(char.IsLetterOrDigit) && Read(new CellAt(cell.Place, row, 0), heading, day, at, keepAll, line);
        }

        if (any) reading.Saw(cell);
        return any;
    }

    // "pump 2 puffs 06h50, clapped 07h05": further on a clock is of what followed ("paracetamol 5 ml, temp 38.6, 38.0 at 03:30").
    private const int WordsToItsClock = 5;

    /// <summary>True for words with a clock time of their own.</summary>
    public static bool HasClock(string words) =>
        words.Split([' ', ',', ';', '(', ')'], StringSplitOptions.RemoveEmptyEntries).Any(w => IsFourFigures(w) || char.IsAsciiDigit(w[0]) && (w.AsSpan().IndexOfAny(':', '.') > 0 || w.AsSpan().IndexOfAny('h', 'H') is 1 or 2 && w.Length >= 4 || w.EndsWith("m", StringComparison.OrdinalIgnoreCase)) && CellTimes.Clock(w.TrimEnd('.', ':')).Outcome == Outcome.Certain);

    // "1945", "0630": of the 24-hour clock, to five minutes; "2025" is a year, "1200" may be millilitres.
    private static bool IsFourFigures(string word) => word is [>= '0' and <= '2', _, >= '0' and <= '5', '0' or '5'] && word.All(char.IsAsciiDigit) && word is not (['2', '0', '0' or '1' or '2' or '3', _] or [_, _, '0', '0']) && CellTimes.Clock(word).Outcome == Outcome.Certain;

    /// <summary>
    /// Reads a cell. True when it gave anything: a record, a session left out, a question.
    /// </summary>
    /// <param name="cell">The cell; its line is the source.</param>
    /// <param name="heading">Its heading.</param>
    /// <param name="day">The day; without one the words are asked about when they hold figures.</param>
    /// <param name="at">The time of the row; null when there is none.</param>
    /// <param name="keepAll">False for a remark beside a record: then only signs, sessions left out and what has a time of its own are taken.</param>
    /// <param name="text">The words to read instead of the cell's own; null for the cell's own.</param>
    public bool Read(CellAt cell, string? heading, LocalDate? day, UncertainTime? at, bool keepAll, string? text = null)
    {
        var words = text ?? cell.Cell.Words;
        if (text is null && words is not null && cell.Place.Sheet is null && words.Contains('\n')) return Lines(cell, heading, day, at, keepAll, words);
        if (words is null || NotSaid.Is(words)) return false;
        // "carry on till Mon" names no day of anything that was done.
        words = Until().Replace(words, "");
        if (day is not { } date) return false;
        var written = words;
        words = WithTimesOfSessions(words);
        var ofSessions = words != written;
        // A heading says what a time is of ("Feed off" over "6.15"); words without a figure say it themselves.
        if (!words.Any(char.IsAsciiDigit)) heading = null;
        var context = reading.Context.ForNotes(cell.Place.File, null) with { Date = date };
        // A table on the 24-hour clock answers beforehand what the notes would ask of "9.15" in one of its cells.
        if (reading.Halves.IsTwentyFour && !reading.WordsSayHalf) context = context with { Answers = new Dictionary<string, string>(context.Answers) { [$"am-or-pm:{cell.Place.File}:1"] = NotesRun.TwentyFourHours } };
        // Under "AM" a bare "6:00" is of the morning.
        else if (PartOfRow.Half(reading.SlotPart ?? reading.Part) is not HalfOfDay.Unknown and var half) context = context with { Answers = new Dictionary<string, string>(context.Answers) { [$"am-or-pm:{cell.Place.File}:1"] = half == HalfOfDay.Am ? "am" : "pm" } };
        // "Sats were 89 at 9.40pm" under "Evening": the heading says when in the day, and the words when.
        if (at is null && heading is not null && HeadingReader.Read(heading) is { Role: Role.Unknown or Role.Part or Role.Note, Medicine: null } meaning && (meaning.Part is not null || meaning.Half != HalfOfDay.Unknown) && HasClock(words))
        {
            heading = null;
            if (meaning.Half != HalfOfDay.Unknown && !reading.Halves.IsTwentyFour) context = context with { Answers = new Dictionary<string, string>(context.Answers) { [$"am-or-pm:{cell.Place.File}:1"] = meaning.Half == HalfOfDay.Am ? "am" : "pm" } };
        }

        var source = cell.Source with { Text = words };
        // "Sat 9: one session at 9.30": what begins with another day has no time of this row.
        var ofOtherDay = !keepAll && words.Any(char.IsAsciiDigit) && !SameAs.PointsBack(words) && CellTerms.Read(words).Exists(t => t.Kind == TermKind.Word && t.Is(Sense.Weekday));
        var time = ofOtherDay ? null : at is { Precision: TimePrecision.Exact or TimePrecision.Borrowed or TimePrecision.Rounded }
            ? new ClockTime(at.Stated.TimeOfDay, at.Stated.Hour < 12 ? HalfOfDay.Am : HalfOfDay.Pm, TimePrecision.Exact, null, at.Stated.TimeOfDay, at.Stated.TimeOfDay)
            : null;
        // "gave 2 puffs at 6.50" has its own time and needs none of the row's; so has "clapped 7.05" where the words are all that tells.
        var alone = time is not null && (heading is null || keepAll && heading == "notes") && HasClock(keepAll ? string.Join(' ', words.Split(' ').Take(WordsToItsClock)) : words) ? NotesReader.ReadCell(source, new CellContext { Date = date }, context) : null;
        var found = alone is { Problems.Count: 0, Entries.Count: > 0 } && alone.Entries.All(e => e is Sign || ((keepAll || e is not Session) && e.When.IsExact)) && !(keepAll && alone.Entries.All(e => e is Sign)) ? alone : NotesReader.ReadCell(source, new CellContext { Date = date, Heading = heading, Time = time }, context);
        var entries = found.Entries.Where(e => keepAll || e is Sign || at is null || e.When.Stated != at.Stated || IsOther(e, cell, at)).ToList();
        var kept = found with { Entries = [.. entries.Select(e => WithinHour(keepAll ? e : Beside(e, at), at) with { Sources = [cell.Source] })], Problems = keepAll || words.Any(char.IsAsciiDigit) ? found.Problems : [.. found.Problems.Where(p => p.Severity == ProblemSeverity.Refused)], SetAside = [] };
        if (kept.Entries.Any(e => e is Check { Phase: not CheckPhase.None } && e.When.Precision is TimePrecision.PartOfDay)) kept = kept with { Entries = [.. kept.Entries.Select(BesideItsSession)] };
        kept = kept with { Entries = [.. kept.Entries.Select(e => AsBefore(e, words))] };
        if (ofSessions) kept = kept with { Entries = [.. kept.Entries.Select(e => e is Check { Phase: not CheckPhase.None and var phase, Start: { IsExact: true } at2 } check ? check with { Start = TimesOfEvents.Borrowed(at2.Stated, phase) } : e)] };
        reading.Into.Take(kept);
        // "Forgot to put down Thursday - I tapped him at 7 that evening": no session left out.
        if (kept.Entries.Count == 0 && kept.Omitted.Count > 0 && kept.Problems.Count == 0 && Forgot().IsMatch(words) && LeftOvers.HoldsEvent(words))
            reading.Cells.Ask(cell.Source, $"'{words}' may tell of something that was done and written late.", "Write it in a row of its own, with its date and time.");
        foreach (var late in found.Late) Correct(late, date, cell, words);
        if (kept.Entries.Count > 0 || kept.Omitted.Count > 0) reading.Use(cell);
        else if (kept.Problems.Count > 0) reading.Into.Ledger.Mark(cell.Row.Line, cell.Row.LineCount, LineFate.Problem);
        return kept.Entries.Count > 0 || kept.Omitted.Count > 0 || kept.Problems.Count > 0 || found.Late.Count > 0;
    }

    // "06h50 same as Mon", "18h15 same": the minutes of the session that is pointed to.
    private CareEntry AsBefore(CareEntry entry, string words) =>
        entry is Session { Areas.Count: 0, MinutesWritten: null, Start: { IsExact: true } at } session && Pointing().Match(words) is { Success: true } pointing && SameAs.PointsBack(pointing.Value) && reading.Same(pointing.Value, at.Stated.TimeOfDay) is { } earlier
            ? session with { Areas = earlier.Areas } : entry;

    [System.Text.RegularExpressions.GeneratedRegex(@"(?<=\d\S*\s+)(?:same|ditto|as)\b[^\d]*$", System.Text.RegularExpressions.RegexOptions.IgnoreCase)]
    private static partial System.Text.RegularExpressions.Regex Pointing();

    // "sats 91 before and 94 after the evening klop": beside the one session of that part of the day.
    private CareEntry BesideItsSession(CareEntry entry) =>
        entry is Check { Phase: not CheckPhase.None and var phase, Start: { Precision: TimePrecision.PartOfDay } part } check
        && reading.Into.Entries.TakeLast(MostOfARow).OfType<Session>().Where(s => s.Start is { IsExact: true } at && at.Stated >= part.Earliest && at.Stated <= part.Latest).ToList() is [{ Start: { } only }]
            ? check with { Start = TimesOfEvents.Borrowed(only.Stated, phase) } : entry;

    // "Sat night chest was 7.40 not 7.10": the record stands in another row.
    private void Correct(LateCorrection late, LocalDate date, CellAt cell, string words)
    {
        reading.Use(cell);
        if (!LateCorrections.Apply(reading.Into.Entries, late, date, cell.Source))
            reading.Cells.Ask(cell.Source, $"'{words}' puts an earlier day right, and it is not certain which record.", "Correct the value where it was written.");
    }
}
