using CareRecords.Import.Reading;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>Reads sessions that have columns of their own.</summary>
internal sealed partial class SessionSlots(BlockReading reading, RowTimesReader times, SessionCells sessions, FreeWords words, SlotFacts of)
{
    /// <summary>Adds the sessions of one event's columns and gives them.</summary>
    public List<Session> Read(BlockRow row, Slot slot, RowWhen when)
    {
        var found = new List<Session>();
        var cell = row[slot.Time];
        var areas = slot.Time >= 0 ? reading.Block.Columns[slot.Time].Areas : [];
        if (slot.Time < 0)
        {
            if (!SessionCells.HasValues(row, slot) && of.IsToCome(row)) return found;
            if (!SessionCells.HasValues(row, slot) && !of.Others(row, slot) && when.Start is null && of.SaysNotDone(row, when)) return found;
            // "Time in" and "time out" with nothing between: it was.
            var lasted = slot.End >= 0 && !row[slot.End].Cell.IsEmpty && when.Start is not null;
            if (!SessionCells.HasValues(row, slot) && !lasted && (of.Others(row, slot) || row[reading.Slots.Time].Cell.IsEmpty)) return found;
            var onlyMeasures = slot.Values.Where(v => !of.IsMeasure(v)).All(v => row[v].Cell.IsEmpty);
            if (onlyMeasures && of.SaysNotDone(row, when)) return found;
            // Readings without a phase, among other events, are no session by themselves.
            if (onlyMeasures && SessionCells.HasValues(row, slot) && (reading.Block.About != TableKind.Sessions || reading.Block.Columns.Any(c => c.Role == Role.Millilitres)) && slot.Values.Exists(v => !of.IsMeasure(v)) && reading.Slots.Slots.Exists(s => s.Kind is TableKind.Feeds or TableKind.Medicines) && !slot.Values.Exists(v => !row[v].Cell.IsEmpty && reading.Block.Columns[v].Phase != CheckPhase.None)) return found;
            if (when.Start is null && !when.IsBad && row[reading.Slots.Date].Cell.IsEmpty && row[reading.Slots.Time].Cell.IsEmpty && sessions.Extend(row, slot) is { } longer)
            {
                found.Add(longer);
                return found;
            }

            var start = when.Start ?? of.DayOnly(row, slot, when);
            if (start is not null && of.WasLeftOut(row, slot, start, when)) return found;
            if (start is not null && sessions.Add(row, slot, start, slot.End >= 0 ? times.EndAfter(start, row[slot.End], RowTimesReader.MostHours(slot.Kind)) : when.End, reading.SourceOf(row, -1)) is { } session)
            {
                if (session.End is not null) reading.Use(row[slot.End]);
                found.Add(session);
            }

            return found;
        }

        if (cell.Cell.Text.Trim() is "?" or "??" && slot.Done < 0)
        {
            reading.Cells.Ask(cell.Source, "A question mark does not say whether this session was.", "Write yes or no, or the time.");
            return found;
        }

        // A cross, "N" or "no" among times and ticks: not done.
        if (SaysNo(cell.Cell.Text) && of.PartOrDay(slot, when) is { } skipped && !slot.Values.Exists(v => !of.IsMeasure(v) && !row[v].Cell.IsEmpty && !NotSaid.Is(row[v].Cell.Text.Trim())))
        {
            reading.Into.Omitted.Add(new OmittedSession(when.Start ?? skipped, cell.Cell.Words, cell.Source));
            reading.Use(cell);
            return found;
        }

        if (cell.Cell.IsEmpty || NotSaid.Is(cell.Cell.Text.Trim()))
        {
            if (row[slot.Done].Cell.Words is { } said)
            {
                reading.Saw(row[slot.Done]);
                if (SmallWords.ReadYesNo(said) == false && of.PartOrDay(slot, when) is { } notDone)
                {
                    reading.Into.Omitted.Add(new OmittedSession(notDone, said, row[slot.Done].Source));
                    reading.Use(row[slot.Done]);
                }

                if (SmallWords.ReadYesNo(said) == false) return found;
                if (SmallWords.ReadYesNo(said) is null) reading.Cells.Ask(reading.SourceOf(row, slot.Done), $"'{said}' does not say whether this session was.", "Write yes or no, or the time.");
                else if (of.PartOrDay(slot, when) is { } then && sessions.Add(row, slot, then, null, reading.SourceOf(row, slot.Done)) is { } ticked) found.Add(ticked);
                return found;
            }

            // "Mins each area" behind "Chest 3" and "Chest 4", of which there were none that day.
            if (slot.Values.TrueForAll(v => row[v].Cell.IsEmpty || reading.Block.Columns[v].Role == Role.Minutes && SessionCells.SaysEachPlace(reading.Block.Columns[v].Own)) && reading.Slots.Slots.Exists(s => s != slot && s.Kind == TableKind.Sessions && s.Time >= 0 && !row[s.Time].Cell.IsEmpty)) return found;
            // "not done, too tired" where what was done stands, and no time.
            if (slot.Values.Where(v => !of.IsMeasure(v) && !row[v].Cell.IsEmpty).Select(v => row[v]).ToList() is [{ IsNone: false } alone] && (SameAs.SaysNotDone(alone.Cell.Text) || SameAs.IsNo(alone.Cell.Text)) && of.PartOrDay(slot, when) is { } notThen)
            {
                reading.Into.Omitted.Add(new OmittedSession(notThen, alone.Cell.Words, alone.Source));
                reading.Use(alone);
                return found;
            }

            // Values without a time: the session was, its time was not written.
            if (slot.Values.Any(v => !of.IsMeasure(v) && !row[v].Cell.IsEmpty && !NotSaid.Is(row[v].Cell.Text.Trim())) && of.PartOrDay(slot, when) is { } unknown)
            {
                reading.Cells.Ask(reading.SourceOf(row, slot.Values[0]), "No time is written for when this session started.", "Write the time of the session.");
                if (sessions.Add(row, slot, unknown, null, reading.SourceOf(row, slot.Values[0])) is { } untimed) found.Add(untimed);
            }

            return found;
        }

        reading.Saw(row[slot.Done]);
        if (when.Start is { } atRow && reading.Slots.Time >= 0 && !RowEvents.HasOwnTime(cell.Cell)) return AtRow(row, slot, cell, areas, when, atRow);
        // "7.15 3/3" in a row with its own day: minutes of the sides, not the third of March.
        if (CellTimes.Read(cell.Cell) is { Outcome: Outcome.Certain, Clock: not null } written && !(reading.Slots.Date >= 0 && written.Date is { First: not null, Year: null }))
        {
            if (times.On(cell, slot.Half, null) is { } start)
            {
                if (of.IsAlone(slot)) reading.Anchor = reading.RowsAreEvents && start.IsExact ? start : null;
                if (of.WasLeftOut(row, slot, start, when)) return found;
                var end = slot.End >= 0 ? times.EndAfter(start, row[slot.End], RowTimesReader.MostHours(slot.Kind)) : written.Clock.End is { } to ? RowTimesReader.After(start, to, RowTimesReader.MostHours(slot.Kind)) : null;
                if (sessions.Add(row, slot, start, end, reading.SourceOf(row, slot.Time)) is { } session)
                {
                    reading.Use(cell);
                    if (end is not null) reading.Use(row[slot.End]);
                    found.Add(session);
                }
            }

            return found;
        }

        // A time that cannot be, beside a yes: it was, some time in that part of the day.
        if (CellTimes.Read(cell.Cell).Outcome == Outcome.Impossible && SmallWords.ReadYesNo(row[slot.Done].Cell.Text) == true)
        {
            times.On(cell, slot.Half, null);
            if (of.PartOrDay(slot, when) is { } then && sessions.Add(row, slot, then, null, reading.SourceOf(row, slot.Time)) is { } untimed) found.Add(untimed);
            return found;
        }

        if (SmallWords.ReadYesNo(cell.Cell.Text) is { } done)
        {
            if (done && of.PartOrDay(slot, when) is { } part && sessions.Add(row, slot, part, null, reading.SourceOf(row, slot.Time)) is { } session)
            {
                reading.Use(cell);
                found.Add(session);
            }

            return found;
        }

        if ((SameAs.IsNo(cell.Cell.Text) || SameAs.SaysNotDone(cell.Cell.Text)) && EventCell.Read(cell.Cell.Text) is null && of.PartOrDay(slot, when) is { } due)
        {
            reading.Into.Omitted.Add(new OmittedSession(due, cell.Cell.Words, cell.Source));
            reading.Use(cell);
            words.AddSigns(cell, due);
            return found;
        }

        // "✓ P", where the key says "P = poorly minutes, 5 each instead of 3": the places of the heading, each as long.
        if (EachOf(cell.Cell.Text, reading.Block.Columns[slot.Time]) is { } poorly && (poorly.Clock is { } at ? times.Settled(at.Start, slot.Half, null, cell) : when.Start ?? of.PartOrDay(slot, when)) is { } thenAt && sessions.Add(row, slot, thenAt, null, reading.SourceOf(row, slot.Time), poorly.Areas) is { } ofPoorly)
        {
            reading.Use(cell);
            found.Add(ofPoorly);
            return found;
        }

        // "✓ 10 mins": it was, and how long it took.
        if (cell.Cell.Text.Trim() is ['✓' or '✔' or '√' or '☑' or '✅', .. var beside] && MinutesReader.Read(beside.Trim(' ', '-', ',', '(', ')')).TryGet(out var total) && (when.Start ?? of.PartOrDay(slot, when)) is { } ticks && sessions.Add(row, slot, ticks, null, reading.SourceOf(row, slot.Time)) is { } timed)
        {
            reading.Into.Entries[^1] = timed with { MinutesWritten = total.Minutes };
            reading.SessionsOfDay[^1] = timed with { MinutesWritten = total.Minutes };
            reading.Use(cell);
            found.Add(timed with { MinutesWritten = total.Minutes });
            return found;
        }

        return Several(row, slot, cell, areas, when);
    }

    // A tick or a time, and a word of the key that gives other minutes to every place of the heading.
    private (ClockSpan? Clock, IReadOnlyList<AreaMinutes> Areas)? EachOf(string text, ColumnMeaning column)
    {
        if (column.EachSession.Count == 0) return null;
        var trimmed = text.Trim();
        var gap = trimmed.IndexOf(' ', StringComparison.Ordinal);
        var (lead, word) = gap > 0 ? (trimmed[..gap], trimmed[(gap + 1)..].Trim()) : ("", trimmed);
        if (reading.Context.Words.MeaningOf(word) is not { } means || MinutesEach().Match(means) is not { Success: true } each) return null;
        var clock = lead.Length == 0 || SmallWords.ReadYesNo(lead) is true ? null : CellTimes.Clock(lead) is { Outcome: Outcome.Certain, Value: { } at } ? at : null;
        if (lead.Length > 0 && clock is null && SmallWords.ReadYesNo(lead) is not true) return null;
        var minutes = double.Parse(each.Groups[1].ValueSpan, System.Globalization.CultureInfo.InvariantCulture);
        return (clock, [.. column.EachSession.Select(a => a with { Minutes = minutes, MinutesHigh = null })]);
    }

    [System.Text.RegularExpressions.GeneratedRegex(@"\b(\d{1,2}(?:\.5)?) ?(?:mins?|minutes)? each\b", System.Text.RegularExpressions.RegexOptions.IgnoreCase | System.Text.RegularExpressions.RegexOptions.CultureInvariant)]
    private static partial System.Text.RegularExpressions.Regex MinutesEach();

    private static bool SaysNo(string text) => text.Trim().ToLowerInvariant() is "x" or "×" or "n" or "no" or "✗" or "✘" or "❌";

    // The row has the time: the cell says the minutes, or only that it was.
    private List<Session> AtRow(BlockRow row, Slot slot, CellAt cell, IReadOnlyList<AreaName> order, RowWhen when, UncertainTime at)
    {
        var found = new List<Session>();
        var text = cell.Cell.Words!;
        if (SmallWords.ReadYesNo(text) == false) return found;
        if (SameAs.IsNo(text) || SameAs.SaysNotDone(text))
        {
            reading.Into.Omitted.Add(new OmittedSession(at, text, cell.Source));
            reading.Use(cell);
            words.AddSigns(cell, at);
            return found;
        }

        // "CPT" under "Treatment": it was.
        var named = !text.Any(char.IsAsciiDigit) && KindWords.Read(text, reading.Context.Words) is { Kind: TableKind.Sessions } && Lexicon.Split(text).Count <= 3;
        if (!named && SmallWords.ReadYesNo(text) is null && SessionWords(text, order) is null)
        {
            var before = reading.Into.Entries.Count;
            if (!words.Read(cell, reading.Block.Columns[slot.Time].Heading, when.Day, at, keepAll: true) && !words.Read(cell, null, when.Day, at, keepAll: true))
                reading.Cells.Ask(cell.Source, $"'{text}' could not be read as a session.", "Write its minutes, such as 3/3/2/2.");
            found.AddRange(reading.Into.Entries.Skip(before).OfType<Session>());
            reading.SessionsOfDay.AddRange(found);
            return found;
        }

        var minutes = named || SmallWords.ReadYesNo(text) is true ? [] : SameAs.PointsBack(text) ? reading.Same(text, at.Stated.TimeOfDay)?.Areas ?? []
            : ByHeading(SessionWords(text, order)!(why => reading.Cells.Refuse(cell.Source, why, "Correct the minutes.")), slot);
        if (sessions.Add(row, slot, at, slot.End >= 0 ? times.EndAfter(at, row[slot.End], RowTimesReader.MostHours(slot.Kind)) : when.End, reading.SourceOf(row, slot.Time), minutes) is { } session)
        {
            if (minutes.Count == 0 && session.MinutesWritten is null && MinutesReader.Read(text) is { Outcome: Outcome.Certain } total && SmallWords.ReadYesNo(text) is null)
            {
                reading.Into.Entries[^1] = session = session with { MinutesWritten = total.Value.Minutes };
                reading.SessionsOfDay[^1] = session;
            }

            reading.Use(cell);
            found.Add(session);
            Remark(cell, text, when.Day, at);
        }

        return found;
    }

    // Of the technique that the heading names, where the words name none.
    private IReadOnlyList<AreaMinutes> ByHeading(IReadOnlyList<AreaMinutes> areas, Slot slot) =>
        KindWords.Read(reading.Block.Columns[slot.Time].Own, reading.Context.Words) is { Kind: TableKind.Sessions, Technique: not Technique.Unknown and var technique } ? [.. areas.Select(a => a.Technique == Technique.Unknown ? a with { Technique = technique } : a)] : areas;

    private List<Session> Several(BlockRow row, Slot slot, CellAt cell, IReadOnlyList<AreaName> order, RowWhen when)
    {
        var found = new List<Session>();
        if (EventCell.Read(cell.Cell.Text.Replace(". ", ", ", StringComparison.Ordinal), p => !EventCell.BeginsWithTime(p) && (SameAs.PointsBack(p) || AreasReader.Read(Lead().Replace(p, ""), reading.Context.Words) is { Outcome: Outcome.Certain, Value.Areas.Count: > 0 })) is not { } events || !events.All(e => SessionWords(e.Words, order) is not null))
        {
            var before = reading.Into.Entries.Count;
            if (!words.Read(cell, reading.Block.Columns[slot.Time].Heading, when.Day, null, keepAll: true) && !when.IsBad)
                reading.Cells.Ask(cell.Source, $"'{cell.Cell.Words}' could not be read as sessions.", "Write each as a time and its minutes, such as 07:10 3/3/2/2.");
            found.AddRange(reading.Into.Entries.Skip(before).OfType<Session>());
            reading.SessionsOfDay.AddRange(found);
            return found;
        }

        LocalTime? previous = null;
        IReadOnlyList<AreaMinutes>? last = null;
        foreach (var item in reading.Halves.IsTwentyFour || slot.Half != HalfOfDay.Unknown ? events : ClockHabit.InOrder(events))
        {
            if (item.Impossible is { } why)
            {
                reading.Cells.Refuse(cell.Source, why, "Correct the time.");
                continue;
            }

            if (item.BareHours && item.Clock!.Start.Half == HalfOfDay.Unknown && slot.Half == HalfOfDay.Unknown)
            {
                reading.Cells.Ask(cell.Source, $"'{cell.Cell.Words}': nothing tells whether these hours are before or after noon.", "Write am or pm, or use the 24-hour clock.");
                return found;
            }

            if (times.Settled(item.Clock!.Start, slot.Half, previous, cell) is not { } start) continue;
            previous = start.Stated.TimeOfDay;
            var minutes = SameAs.PointsBack(item.Words) ? last ?? reading.Same(item.Words, start.Stated.TimeOfDay)?.Areas ?? [] : SessionWords(item.Words, order)!(why => reading.Cells.Refuse(cell.Source, why, "Correct the minutes."));
            // "Chest = clapping" in the key, over "7.20, bases 4 tops 2".
            minutes = ByHeading(minutes, slot);
            // "12:30p and 4:30p" beside one set of minutes: of both.
            if (minutes.Count == 0 && item.Words.Length == 0 && events.All(e => e.Words.Length == 0)) minutes = sessions.AreasOf(row, slot);
            if (minutes.Count == 0 && !SameAs.PointsBack(item.Words) && sessions.EachPlaceOf(row, slot) is { } each) minutes = each;
            // "Physio (perc, lower 3 min each side)" over "0715, 1900": of each of them.
            if (minutes.Count == 0 && item.Words.Length == 0) minutes = reading.Block.Columns[slot.Time].EachSession;
            last = minutes;
            var session = new Session
            {
                Sources = [reading.SourceOf(row, slot.Time)],
                Start = start,
                End = item.Clock.End is { } to ? RowTimesReader.After(start, to, RowTimesReader.MostHours(slot.Kind)) : null,
                Areas = minutes,
                MinutesWritten = minutes.Count == 0 && item.Words.Any(char.IsLetter) && MinutesReader.Read(item.Words.Trim('-', ' ')).TryGet(out var inAll) ? inAll.Minutes : null,
            };
            reading.Add(session, cell);
            found.Add(session);
            Remark(cell, item.Words, when.Day, start);
        }

        InAll(row, slot, found);
        return found;
    }

    // "20/15/20" or "20, 15" under minutes: one for each of the sessions of the cell.
    private void InAll(BlockRow row, Slot slot, List<Session> found)
    {
        foreach (var value in slot.Values.Where(v => reading.Block.Columns[v].Role == Role.Minutes && !row[v].Cell.IsEmpty))
        {
            var parts = row[value].Cell.Text.Split(['/', ',', ';', '+'], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
            if (parts.Length != found.Count || !Array.TrueForAll(parts, p => MinutesReader.Read(p).Outcome == Outcome.Certain)) continue;
            for (var i = 0; i < found.Count; i++)
            {
                var longer = found[i] with { MinutesWritten = MinutesReader.Read(parts[i]).Value.Minutes };
                if (reading.Into.Entries.LastIndexOf(found[i]) is >= 0 and var at) reading.Replace(at, found[i], longer);
                found[i] = longer;
            }

            reading.Use(row[value]);
        }
    }

    // "7:20 L6 R6 (threw up after)": what stands in brackets is a remark on the session.
    private void Remark(CellAt cell, string text, LocalDate? day, UncertainTime at)
    {
        var open = text.IndexOf('(', StringComparison.Ordinal);
        if (open < 0) return;
        var inside = text[open..].Trim(' ', '(', ')');
        // "0710 (95>97)": before and after it.
        if (CheckCell.Read(inside, why => reading.Cells.Refuse(cell.Source, why, "Correct the saturation.")) is { Count: > 0 } checks && checks.All(c => c.Phase != CheckPhase.None))
            foreach (var check in checks)
                reading.Add(new Check { Sources = [cell.Source], Start = Notes.TimesOfEvents.Borrowed(at.Stated, check.Phase), SpO2 = check.Saturation?.Percent, SpO2High = check.Saturation?.High, Pulse = check.Pulse, OxygenLitresPerMinute = check.Oxygen, Phase = check.Phase }, cell);
        else words.Read(cell, null, day, at, keepAll: false, inside);
    }

    // What the words after a time say of areas, as a reading to be done later; null when they are not about areas alone.
    private Func<Action<string>, IReadOnlyList<AreaMinutes>>? SessionWords(string text, IReadOnlyList<AreaName> order)
    {
        var bracket = text.IndexOf('(', StringComparison.Ordinal);
        var figures = (bracket < 0 ? text : text[..bracket]).Trim(' ', '.', '-');
        // "7:30am (5 min each side)".
        if (figures.Length == 0 && bracket >= 0 && AreasReader.Read(text[bracket..].Trim(' ', '(', ')'), reading.Context.Words) is { Outcome: Outcome.Certain, Value: { } inside }) return _ => inside.Areas;
        if (figures.Length == 0 || SameAs.PointsBack(figures) || SmallWords.ReadYesNo(figures) == true) return _ => [];
        var names = order.Count > 1 ? order : reading.AreaOrder;
        if (AreaNumbers.Read(figures, names, _ => { }) is not null) return refuse => AreaNumbers.Read(figures, names, refuse) ?? [];
        // "3/3/2/2 v", where the key says "v = vibes after, 1 min each side".
        if (figures.IndexOf(' ', StringComparison.Ordinal) is > 0 and var behind && AreaNumbers.Read(figures[..behind], names, _ => { }) is { Count: > 0 } && AreasReader.Read(WithoutAfter(figures[(behind + 1)..].Trim('+', ' ')), reading.Context.Words).TryGet(out var besides) && besides.Areas.Count > 0)
            return refuse => [.. AreaNumbers.Read(figures[..behind], names, refuse) ?? [], .. besides.Areas];
        if (AreasReader.Read(figures, reading.Context.Words).TryGet(out var written)) return _ => written.Areas;
        // "his mammy did it, 3 everywhere", "but only the bottoms, 3 each": the clauses that tell of areas; the others are remarks without a figure.
        var clauses = figures.Split([", ", "; ", " - "], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Select(c => Lead().Replace(c, "")).ToList();
        var ofAreas = clauses.Where(c => AreasReader.Read(c, reading.Context.Words).Outcome is Outcome.Certain or Outcome.Doubtful).ToList();
        if (ofAreas.Count == 0 || clauses.Except(ofAreas).Any(c => c.Any(char.IsAsciiDigit))) return null;
        return AreasReader.Read(string.Join(", ", ofAreas), reading.Context.Words).TryGet(out var together) ? _ => together.Areas : null;
    }

    // "vibes after, 1 min each side" of the key: when in the session says nothing of where.
    private string WithoutAfter(string word) => After().Replace(reading.Context.Words.MeaningOf(word) ?? word, "");

    [System.Text.RegularExpressions.GeneratedRegex(@"\b(?:after(?:wards)?|at the end|to finish)\b,?", System.Text.RegularExpressions.RegexOptions.IgnoreCase)]
    private static partial System.Text.RegularExpressions.Regex After();

    [System.Text.RegularExpressions.GeneratedRegex(@"^(?:but|and|then|so|with|did|we did|just did)\s+", System.Text.RegularExpressions.RegexOptions.IgnoreCase)]
    private static partial System.Text.RegularExpressions.Regex Lead();
}
