using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>
/// Settles what a column states from what stands in its cells, where its heading is unknown or says one thing and the cells another
/// ("by" over "pump" is how a feed went in, "when" over "pre" and "post" a phase, "when" over 7:15 a time).
/// </summary>
internal static class ColumnContent
{
    // Enough to know a column by; a year of rows says no more.
    private const int MostRows = 300;

    // A session is made longer or shorter by so much (chosen by CareRecords); whole hours near the minutes of a heading would be taken for minutes.
    private const int MostChangeOfMinutes = 2;
    private const int LongestMinutes = 180;
    private const int MinutesOfHalfDay = 12 * 60;

    /// <summary>The block with such columns renamed.</summary>
    public static Block Named(Block block, FamilyWords words)
    {
        var columns = block.Columns.ToArray();
        var filled = new List<Cell>[columns.Length];
        for (var i = 0; i < columns.Length; i++)
            filled[i] = [.. block.Rows.Take(MostRows).Select(r => r[i].Cell).Where(c => !c.IsEmpty && (c.Text.Trim() is "x" or "X" or "-" || !NotSaid.Is(c.Text.Trim())))];
        for (var i = 0; i < columns.Length; i++)
            if (filled[i].Count > 0 && Renamed(columns[i], filled[i], words) is { } role)
                columns[i] = columns[i] with { Role = role, Areas = role == Role.Area ? [.. columns[i].Areas.Select(a => a.Technique == Technique.Unknown ? a with { Technique = Technique.Percussion } : a)] : columns[i].Areas, Phase = role == Role.Saturation && columns[i].Phase == CheckPhase.None ? PhaseOf(columns[i]) : columns[i].Phase };
        // "Chest am (3 mins each lower)" over 3 and 4: what was done, not when.
        for (var i = 0; i < columns.Length; i++)
            if (columns[i].EachSession is [{ Minutes: { } told }, ..] && filled[i].Count > 0 && filled[i].TrueForAll(c => c.Text.Trim().Length <= 3 && Within(c, told - MostChangeOfMinutes, told + MostChangeOfMinutes)))
                columns[i] = columns[i] with { Role = Role.Area, Areas = [.. columns[i].EachSession.Select(a => new AreaName(a.Side, a.Area, a.Technique == Technique.Unknown ? Technique.Percussion : a.Technique))], EachSession = [] };
        // A column of times that nobody filled in tells no row's time.
        for (var i = 0; i < columns.Length; i++)
            if (filled[i].Count == 0 && columns[i].Role is Role.Time or Role.Start or Role.End && columns.Where((c, n) => n != i && c.Role is Role.Time or Role.Start && filled[n].Count > 0).Any())
                columns[i] = columns[i] with { Role = Role.Ignore };
        Parts(block, columns, filled);
        OtherParts(columns, filled);
        Areas(columns, filled);
        SeveralTimes(block, columns, filled);
        Halves(columns);
        Ticks(columns, filled);
        Date(block, columns, filled);
        block = Titled(block, columns);
        Units(block, columns, filled);
        Times(block, columns, filled);
        Ends(block, columns, filled);
        Day(columns, filled);
        MeasurePhases.Settle(columns, block.About);
        return block with { Columns = columns };
    }

    private static bool Tells(Cell cell, params Concept[] concepts) => Lexicon.Find(cell.Text, out _).Any(k => concepts.Contains(k.Concept));

    private static Role? Renamed(ColumnMeaning column, List<Cell> cells, FamilyWords words) => column.Role switch
    {
        Role.By when Most(cells, IsRoute) => Role.Route,
        // "How" over "cupping" is of the session, not of a feed.
        Role.Route when Most(cells, c => Tells(c, Concept.Percussion, Concept.Vibration)) => Role.Technique,
        // Whoever did it is no sentence with figures.
        Role.By when cells.Count(c => c.Text.Length > 12 && c.Text.Any(char.IsAsciiDigit)) * 3 >= cells.Count => Role.Note,
        // "Physio or neb": which of them stands in the cell.
        Role.Session or Role.Dose when cells.Exists(c => Tells(c, Concept.Session, Concept.Percussion)) && cells.Exists(c => !Tells(c, Concept.Session, Concept.Percussion) && (Tells(c, Concept.Inhaler) || Lexicon.Find(c.Text, out _).Any(k => k.Medicine is not null)) && c.Text.Any(char.IsLetter)) && Lexicon.Split(column.Heading).Any(w => w is "or" or "and" or "neb" or "nebs") => Role.Kind,
        // "Which bits" over "L+R lower": parts of the chest.
        Role.Note or Role.Unknown or Role.Route when cells.Count > 1 && Most(cells, IsPlace) => Role.Side,
        // "Finger number before / after" over "93 / 95": two saturations.
        Role.Phase or Role.Unknown when cells.Count > 1 && Most(cells, IsPair) && SaysBoth(column) => Role.Saturation,
        // "Oxygen" over 94 and 95 is the saturation, "oxygen level" over 0.5 and 1 the flow.
        Role.Oxygen when cells.Count > 1 && Most(cells, c => Within(c, 60, 100)) => Role.Saturation,
        Role.Saturation when cells.Count > 1 && Lexicon.Split(column.Heading).Any(w => w is "oxygen" or "o2") && cells.TrueForAll(c => Within(c, 0, 15)) => Role.Oxygen,
        Role.Feed or Role.Kind when Most(cells, c => c.Kind == CellKind.Text && !c.Text.Any(char.IsAsciiDigit) && c.Text.Length < 30 && (IsRoute(c) || KindWords.Read(c.Text, FamilyWords.None) is { Kind: TableKind.Feeds, Route: not FeedRoute.Unknown, IsEnd: false, IsStart: false })) && column.Role == Role.Feed => Role.Route,
        Role.Kind when cells.TrueForAll(c => c.Text.Trim().All(char.IsAsciiDigit)) => Role.Ignore,
        Role.Unknown or Role.By or Role.Detail or Role.Route or Role.Phase or Role.Time or Role.Date or Role.Note or Role.Session when Most(cells, c => MeasureCells.PhaseIn(c.Text, words) is not null and not CheckPhase.None) => Role.Phase,
        Role.Unknown or Role.Detail or Role.Kind or Role.Time or Role.Date or Role.Session when Most(cells, IsPart) || (cells.Count > 2 && cells.TrueForAll(c => NightShifts.IsShift(c.Words)) && cells.Exists(c => NightShifts.IsNight(c.Words))) => Role.Part,
        Role.Unknown or Role.Detail when Most(cells, IsRoute) => Role.Route,
        Role.Unknown when column.Phase != CheckPhase.None && Most(cells, IsSaturation) => Role.Saturation,
        // "Wake" and "Bed" over 95 % and "91% on 0.5L".
        Role.Unknown or Role.Part or Role.Note or Role.Time when column.Part is not null && cells.Exists(c => c.Text.Contains('%')) && Most(cells, c => CheckCell.Read(c.Text, _ => { }) is { Count: > 0 }) => Role.Saturation,
        // "Level at start" over 94 and 96: no time and no minutes.
        Role.Start or Role.End or Role.Time when cells.Count > 1 && Most(cells, c => Within(c, 70, 100)) && Lexicon.Split(column.Own).Count > 1 => Role.Saturation,
        Role.Unknown or Role.Detail or Role.Kind when cells.Count > 2 && Most(cells, c => Within(c, 80, 100)) => Role.Saturation,
        Role.Unknown or Role.Detail when cells.Count > 1 && Most(cells, c => Medicine(c, words)) => Role.Medicine,
        Role.Unknown when cells.Count > 2 && cells.TrueForAll(c => c.Text.Trim().EndsWith('%') && IsSaturation(c)) => Role.Saturation,
        // "7.00 am chest L base" over 3 and 4: minutes, not times.
        Role.Session when column.Areas.Count > 0 && column.Areas.All(a => a.Side != Side.Unknown || a.Area != ChestArea.Unknown) && cells.TrueForAll(c => Within(c, 0, 20) && !c.Text.Contains(':') && c.Kind is CellKind.Text or CellKind.Number && c.Text.Trim().Length <= 3) => Role.Area,
        // "Session" over I, II and III counts them.
        Role.Session when cells.TrueForAll(c => c.Text.Trim().TrimEnd('.') is "I" or "II" or "III" or "IV" or "V" or "1st" or "2nd" or "3rd" or "4th" or "5th") => Role.Ignore,
        Role.Session or Role.Feed or Role.Dose when column.At is null && cells.TrueForAll(IsCount) && !Lexicon.Find(column.Heading, out _).Any(k => k.Concept is Concept.Puffs or Concept.Millilitres or Concept.Amount) => Role.Count,
        // "CPT (time, min)" over "6:50 3/3/2/2".
        Role.Minutes when HeadingReader.IsOfSessions(column.Heading) && cells.Count(c => IsSession(c) && c.Text.Trim().Contains(' ')) * 3 >= cells.Count * 2 => Role.Session,
        Role.Unknown when cells.Count > 1 && Most(cells, IsSession) && cells.Count(c => EventCell.Read(c.Text)?.Any(e => e.Words.Length > 0) == true) * 2 >= cells.Count => Role.Session,
        _ => null,
    };

    private static bool IsPlace(Cell cell) => cell.Kind == CellKind.Text && !cell.Text.Any(char.IsAsciiDigit) && cell.Text.Length <= LongestPlaces && Lexicon.Find(cell.Text, out var share) is { Count: > 0 } known && share > 0.99 && AreaNames.In(cell.Text).Any(a => a.Area != ChestArea.Unknown)
        && known.All(k => k.Concept is Concept.Left or Concept.Right or Concept.Both or Concept.Lower or Concept.Upper or Concept.Middle or Concept.LeftLower or Concept.LeftUpper or Concept.RightLower or Concept.RightUpper or Concept.LeftMiddle or Concept.RightMiddle);

    private const int LongestPlaces = 60;

    private static bool IsPair(Cell cell) => cell.Text.Split('/', StringSplitOptions.TrimEntries) is [var one, var two] ? Within(Cell.Of(one), 60, 100) && (NotSaid.Is(two) || Within(Cell.Of(two.Split(' ')[0]), 60, 100)) : Within(cell, 60, 100);

    private static bool SaysBoth(ColumnMeaning column) => Lexicon.Find(column.Own, out _).Select(k => k.Concept).ToHashSet() is var has && (has.Contains(Concept.Phase) || has.IsSupersetOf([Concept.Before, Concept.After]));

    private static CheckPhase PhaseOf(ColumnMeaning column)
    {
        var has = Lexicon.Find(column.Own, out _).Select(k => k.Concept).ToHashSet();
        return has.Contains(Concept.Start) == has.Contains(Concept.End) ? CheckPhase.None : has.Contains(Concept.Start) ? CheckPhase.Before : CheckPhase.After;
    }

    // "AM | PM" under "Physio chart" or "Sats": what the title says, at that part of the day.
    private static void Parts(Block block, ColumnMeaning[] columns, List<Cell>[] filled)
    {
        if (block.About is not (TableKind.Sessions or TableKind.Checks) || columns.Any(c => c.Role is Role.Session or Role.Kind)) return;
        for (var i = 0; i < columns.Length; i++)
        {
            // "Did it?" over yes and no.
            if (block.About == TableKind.Sessions && columns[i].Role is Role.Unknown or Role.Detail && filled[i].Count > 1 && !columns.Any(c => c.Role is Role.Session or Role.Area) && Most(filled[i], IsTick)) columns[i] = columns[i] with { Role = Role.Session };
            if (columns[i].Role != Role.Unknown || filled[i].Count == 0 || PartOfRow.Read(columns[i].Own) is null) continue;
            if (block.About == TableKind.Checks && Most(filled[i], IsSaturation)) columns[i] = columns[i] with { Role = Role.Saturation };
            else if (block.About == TableKind.Sessions && Most(filled[i], c => IsTick(c) || IsSession(c) || CellTimes.Read(c).Clock is not null)) columns[i] = columns[i] with { Role = Role.Session };
        }
    }

    // "Midday", beside "Morning" and "Evening" that hold sessions, with more remarks in it.
    private static void OtherParts(ColumnMeaning[] columns, List<Cell>[] filled)
    {
        if (!columns.Any(c => c.Role == Role.Session && PartOfRow.Read(c.Own) is not null)) return;
        for (var i = 0; i < columns.Length; i++)
            if (columns[i].Role == Role.Unknown && columns[i].Part is not null && filled[i].Count(c => IsTick(c) || IsSession(c) || CellTimes.Read(c).Clock is not null) * 2 >= Math.Max(1, filled[i].Count)) columns[i] = columns[i] with { Role = Role.Session };
    }

    // "Areas" over "bases 3 each, tops 2 each": each cell is a session at the time of its row.
    private static void Areas(ColumnMeaning[] columns, List<Cell>[] filled)
    {
        if (columns.Any(c => c.Role is Role.Session or Role.Area or Role.Kind or Role.Side) || !columns.Any(c => c.Role is Role.Time or Role.Start)) return;
        var at = Array.FindIndex(columns, c => c.Role is Role.Unknown or Role.Detail);
        for (; at >= 0 && at < columns.Length; at++)
        {
            if (columns[at].Role is not (Role.Unknown or Role.Detail) || filled[at].Count == 0) continue;
            var told = filled[at].Count(c => c.Kind == CellKind.Text && c.Text.Any(char.IsLetter) && AreasReader.Read(c.Text, FamilyWords.None) is { Outcome: Outcome.Certain, Value.Areas.Count: > 0 });
            if (told == 0 || (told + filled[at].Count(c => SameAs.PointsBack(c.Text) || SameAs.SaysNotDone(c.Text))) * 5 < filled[at].Count * 4) continue;
            columns[at] = columns[at] with { Role = Role.Session };
            return;
        }
    }

    // "Times" over "7:05 & 17:10" beside a count of sessions: the sessions themselves.
    private static void SeveralTimes(Block block, ColumnMeaning[] columns, List<Cell>[] filled)
    {
        if (columns.Any(c => c.Role is Role.Session or Role.Kind) || !(block.About == TableKind.Sessions || columns.Any(c => HeadingReader.IsOfSessions(c.Heading)))) return;
        for (var i = 0; i < columns.Length; i++)
        {
            if (columns[i].Role is not (Role.Time or Role.Unknown) || filled[i].Count == 0) continue;
            var events = filled[i].Select(c => c.Kind == CellKind.Text ? EventCell.Read(c.Text) : null).ToList();
            if (!events.Exists(e => e is { Count: > 1 } && e.All(x => x.Words.Length == 0)) || !Most(filled[i], c => CellTimes.Read(c).Clock is not null || EventCell.Read(c.Text) is not null)) continue;
            columns[i] = columns[i] with { Role = Role.Session };
            return;
        }
    }

    // "AM start, AM L, AM R, PM start, ...": each half of the day is an event of its own.
    private static void Halves(ColumnMeaning[] columns)
    {
        if (columns.Any(c => c.Role == Role.Time && c.Half == HalfOfDay.Unknown && c.Group == 0)) return;
        foreach (var (half, group, part) in columns.Where(c => c.Half != HalfOfDay.Unknown || c.Part is not null).Select(c => (c.Half, c.Group, c.Part)).Distinct().ToList())
        {
            bool IsOf(ColumnMeaning c) => c.Half == half && c.Group == group && (group > 0 || half != HalfOfDay.Unknown || c.Part == part);
            if (!columns.Any(c => IsOf(c) && c.Role is Role.Area or Role.Minutes or Role.Technique) || columns.Any(c => IsOf(c) && c.Role == Role.Session)) continue;
            for (var i = 0; i < columns.Length; i++)
                if (IsOf(columns[i]) && columns[i].Role is Role.Time or Role.Start or Role.End)
                    columns[i] = columns[i] with { Role = columns[i].Role == Role.End ? Role.SessionEnd : Role.Session };
        }
    }

    // "AM PT (Y/N)" beside "AM time": the time is the physio's, and the tick says whether it was.
    private static void Ticks(ColumnMeaning[] columns, List<Cell>[] filled)
    {
        for (var i = 0; i < columns.Length; i++)
        {
            if (columns[i].Role is not (Role.Session or Role.Feed or Role.Dose) || filled[i].Count == 0 || !Most(filled[i], IsTick)) continue;
            foreach (var beside in new[] { i + 1, i - 1 })
            {
                if (beside < 0 || beside >= columns.Length || columns[beside].Role != Role.Time || columns[beside].Half != columns[i].Half || columns[beside].Group != columns[i].Group) continue;
                if (columns[i].Half == HalfOfDay.Unknown && columns[i].Group == 0) continue;
                columns[beside] = columns[beside] with { Role = columns[i].Role, Medicine = columns[i].Medicine, MedicineWords = columns[i].MedicineWords };
                columns[i] = columns[i] with { Role = Role.Done };
                break;
            }
        }
    }

    // A column of dates without a known heading, where no other column has the day.
    private static void Date(Block block, ColumnMeaning[] columns, List<Cell>[] filled)
    {
        if (block.IsAcross || columns.Any(c => c.Role is Role.Date)) return;
        // A whole date before a weekday alone.
        foreach (var whole in new[] { true, false })
            for (var i = 0; i < columns.Length; i++)
            {
                if (columns[i].Role is not (Role.Unknown or Role.Time or Role.Part or Role.Kind or Role.Detail) && i > 0 || filled[i].Count == 0) continue;
                if (!Most(filled[i], c => CellTimes.Read(c) is { Date: not null, Clock: null } && !(whole && IsWeekday(c)))) continue;
                columns[i] = columns[i] with { Role = Role.Date };
                foreach (var other in Enumerable.Range(0, columns.Length).Where(o => o != i && columns[o].Role == Role.Unknown && filled[o].Count > 0 && filled[o].TrueForAll(IsWeekday)))
                    columns[other] = columns[other] with { Role = Role.Ignore };
                return;
            }
    }

    // "TEMPS" over a first column of days is the title of the table.
    private static Block Titled(Block block, ColumnMeaning[] columns) =>
        block.About is null && columns.Length > 1 && columns[0].Role == Role.Date && KindWords.Read(columns[0].Own, FamilyWords.None) is { } what
            ? block with { About = what.Kind, Titles = [.. block.Titles, columns[0].Own] } : block;

    // A heading of a unit alone: "F" over 101.5, "%" over 95.
    private static void Units(Block block, ColumnMeaning[] columns, List<Cell>[] filled)
    {
        for (var i = 0; i < columns.Length; i++)
        {
            if (columns[i].Role != Role.Unknown || filled[i].Count == 0) continue;
            var unit = columns[i].Own.Trim(' ', '.', '(', ')', '°', 'º').ToLowerInvariant();
            Role? role = unit switch
            {
                "f" or "fahrenheit" when filled[i].Count(c => Within(c, 90, 112)) * 2 > filled[i].Count => Role.Temperature,
                "c" or "celsius" or "centigrade" when filled[i].Count(c => Within(c, 33, 44)) * 2 > filled[i].Count => Role.Temperature,
                "%" when Most(filled[i], c => Within(c, 50, 100)) => Role.Saturation,
                "" or "reading" or "result" or "value" or "number" or "level" or "figure" when block.Titles.Any(t => KindWords.Read(t, FamilyWords.None)?.Sign == SignKind.Temperature) && Most(filled[i], c => Within(c, 33, 112)) => Role.Temperature,
                "" or "reading" or "result" or "value" or "number" or "level" or "figure" when block.About == TableKind.Checks && Most(filled[i], c => Within(c, 60, 100)) && !columns.Any(c => c.Role == Role.Saturation) => Role.Saturation,
                _ => null,
            };
            if (role is { } known) columns[i] = columns[i] with { Role = known };
        }
    }

    private static bool Within(Cell cell, double low, double high) =>
        double.TryParse(cell.Text.Trim().TrimEnd('%').Replace(',', '.'), System.Globalization.NumberStyles.Float, System.Globalization.CultureInfo.InvariantCulture, out var number) && number >= low && number <= high;

    // The column with the times of the rows where its heading does not tell, and no other column has them.
    private static void Times(Block block, ColumnMeaning[] columns, List<Cell>[] filled)
    {
        if (block.IsAcross || columns.Any(c => c.Role is Role.Time or Role.Start or Role.End or Role.Session or Role.Feed or Role.FeedStart or Role.FeedEnd or Role.Dose)) return;
        if (Enumerable.Range(0, columns.Length).Any(i => columns[i].Role == Role.Date && filled[i].Exists(c => CellTimes.Read(c).Clock is not null))) return;
        for (var i = 0; i < columns.Length; i++)
        {
            if (columns[i].Role is not (Role.Unknown or Role.Amount or Role.Phase or Role.Detail or Role.Kind or Role.Medicine)) continue;
            var dated = filled[i].Count(c => CellTimes.Read(c) is { Date: not null, Clock: not null });
            var times = dated + filled[i].Count(c => CellTimes.Read(c) is { Date: null, Clock: not null } or { Date: null, Outcome: Outcome.Impossible });
            var known = columns[i].Role != Role.Unknown;
            if ((times < 2 && !(known && times == 1)) || times * 5 < filled[i].Count * 4 || (known && dated == 0 && !filled[i].TrueForAll(LooksLikeClock))) continue;
            columns[i] = columns[i] with { Role = Role.Time };
            return;
        }
    }

    // A column without a known heading right of the start, each of its times a little later: the end.
    private static void Ends(Block block, ColumnMeaning[] columns, List<Cell>[] filled)
    {
        if (block.IsAcross || columns.Any(c => c.Role is Role.End or Role.SessionEnd or Role.FeedEnd)) return;
        for (var i = 1; i < columns.Length; i++)
        {
            if (columns[i].Role != Role.Unknown || columns[i - 1].Role is not (Role.Time or Role.Start or Role.Session or Role.FeedStart) || filled[i].Count < 2) continue;
            var at = i;
            var pairs = block.Rows.Take(MostRows).Select(r => (Start: CellTimes.Read(r[at - 1].Cell).Clock, End: CellTimes.Read(r[at].Cell).Clock)).Where(p => p.Start is not null && p.End is not null).ToList();
            if (pairs.Count * 5 < filled[i].Count * 4 || !pairs.TrueForAll(p => Minutes(p.Start!.Start, p.End!.Start) is > 0 and <= LongestMinutes)) continue;
            columns[i] = columns[i] with { Role = columns[i - 1].Role == Role.Session ? Role.SessionEnd : columns[i - 1].Role == Role.FeedStart ? Role.FeedEnd : Role.End };
        }
    }

    private static long Minutes(ClockTime from, ClockTime to) => (NodaTime.Period.Between(from.Time, to.Time, NodaTime.PeriodUnits.Minutes).Minutes + MinutesOfHalfDay) % MinutesOfHalfDay;

    // "Date" over 7:05 is a time; a day beside a time of its own is no second time.
    private static void Day(ColumnMeaning[] columns, List<Cell>[] filled)
    {
        var dates = Enumerable.Range(0, columns.Length).Where(i => columns[i].Role == Role.Date).ToList();
        if (dates.Count < 2) return;
        // A total may stand at the foot of the weekdays.
        var whole = dates.Exists(i => Most(filled[i], c => CellTimes.Read(c).Date is not null && !IsWeekday(c)));
        foreach (var i in dates.Where(i => filled[i].Count > 0 && (filled[i].TrueForAll(IsWeekday) || whole && Most(filled[i], IsWeekday))))
            columns[i] = columns[i] with { Role = Role.Ignore };
        // "How was the day" over words.
        foreach (var i in dates.Skip(1).Where(i => !Most(filled[i], c => CellTimes.Read(c).Outcome != Outcome.Nothing) && filled[i].Count > 0))
            columns[i] = columns[i] with { Role = Role.Note };
    }

    private static bool Most(List<Cell> cells, Predicate<Cell> fits) => cells.Count(c => fits(c)) * 5 >= cells.Count * 4;

    private static bool IsRoute(Cell cell) => cell.Kind == CellKind.Text && SmallWords.ReadRoute(cell.Text) is not null;

    private static bool IsPart(Cell cell) => cell.Kind == CellKind.Text && PartOfRow.Read(cell.Text) is not null;

    private static bool IsSaturation(Cell cell) =>
        SaturationReader.Read(cell.Text.Trim()) is { Outcome: Outcome.Certain, Value.Percent: >= 60 } or { Outcome: Outcome.Impossible };

    private static bool Medicine(Cell cell, FamilyWords words) =>
        cell.Kind == CellKind.Text && KindWords.Read(cell.Text, words) is { Kind: TableKind.Medicines, Medicine: not null };

    private static bool IsTick(Cell cell) => cell.Text.Trim() is "?" || SmallWords.ReadYesNo(cell.Text) is not null;

    // "7.00 LL4 RL4", "5.45 same", "12.00 ✓".
    private static bool IsSession(Cell cell) =>
        cell.Kind == CellKind.Text && EventCell.Read(cell.Text, p => AreasReader.Read(p, FamilyWords.None) is { Outcome: Outcome.Certain, Value.Areas.Count: > 0 }) is { } events && events.All(e => e.Words.Length == 0 || (SameAs.PointsBack(e.Words) || SmallWords.ReadYesNo(e.Words) == true || e.Words.Contains('/') && e.Words.All(c => char.IsAsciiDigit(c) || c is '/' or '.' or '½') || AreasReader.Read(e.Words, FamilyWords.None) is { Outcome: Outcome.Certain, Value.Areas.Count: > 0 } || IsMinutes(e.Words)));

    // "7.10 3min", "18.40 - 3 min"
    private static bool IsMinutes(string words) => words.Any(char.IsLetter) && MinutesReader.Read(words.TrimStart('-', ' ')).Outcome == Outcome.Certain;

    private static bool IsCount(Cell cell) => cell.Text.Trim() is [>= '0' and <= '6'];

    private static bool IsWeekday(Cell cell) => cell.Kind == CellKind.Text && cell.Text.Trim().TrimEnd('.').ToLowerInvariant() is
        "mon" or "tue" or "tues" or "wed" or "weds" or "thu" or "thur" or "thurs" or "fri" or "sat" or "sun" or "monday" or "tuesday" or "wednesday" or "thursday" or "friday" or "saturday" or "sunday" or "m" or "t" or "w" or "f" or "s";

    private static bool LooksLikeClock(Cell cell) => cell.Kind == CellKind.TimeOfDay || cell.Text.AsSpan().IndexOfAny(":.h") > 0 || cell.Text.Length == 4;
}
