using CareRecords.Import.Reading;

namespace CareRecords.Import.Tables.Layouts;

/// <content>Tables with their days, or their hours, across.</content>
internal sealed partial class BlockFinder
{
    // Right of the last day one cell alone may be a remark in the margin.
    private const int FewestOfColumn = 2;

    // "TIME | MON |  | TUE |" over " | PT | SATS | PT | SATS": under each day the same few columns.
    private bool IsDaysOverColumns(int at)
    {
        var row = _rows[at];
        if (!RowShape.IsDayLabels(row with { Cells = [Cell.Of("time"), .. row.Cells.Skip(1)] }) || at + 1 >= _rows.Count || CellTimes.Read(row[0]).Date is not null) return false;
        var under = _rows[at + 1];
        var (filled, dated) = (under.Cells.Skip(1).Where(c => !c.IsEmpty).ToList(), row.Cells.Skip(1).Count(c => !c.IsEmpty));
        return under[0].Kind is CellKind.Empty or CellKind.Text && RowShape.IsWordsOnly(under) && filled.Count > dated && !filled.TrueForAll(c => PartOfRow.Read(c.Text) is not null)
            && filled.Count(c => HeadingReader.Read(c.Text) is { IsKnown: true } or { Phase: not Records.CheckPhase.None }) * 3 >= filled.Count * 2;
    }

    private int DaysOverColumns(int at)
    {
        var (days, under) = (_rows[at], _rows[at + 1]);
        var starts = Enumerable.Range(1, days.Cells.Length - 1).Where(c => !days[c].IsEmpty).ToList();
        var width = Enumerable.Range(0, starts.Count).Max(i => (i + 1 < starts.Count ? starts[i + 1] : under.Cells.Length) - starts[i]);
        var first = !under[0].IsEmpty ? under[0] : days[0];
        var headings = Enumerable.Range(0, width).Select(w => under[starts[0] + w].Words ?? "").ToList();
        var records = new List<BlockRow>();
        var next = at + 2;
        _loose.Add(new LooseRow(days, "the heading of dates"));
        _loose.Add(new LooseRow(under, "the heading"));
        for (; next < _rows.Count && !_rows[next].IsBlank && !RowShape.IsDatesAcross(_rows[next]); next++)
        {
            var row = _rows[next];
            if (RowShape.IsTotal(row) || IsOneCell(row)) _loose.Add(new LooseRow(row, RowShape.IsTotal(row) ? "a total or average" : null));
            else
                foreach (var (start, i) in starts.Select((s, i) => (s, i)))
                {
                    var to = i + 1 < starts.Count ? starts[i + 1] : start + width;
                    if (Enumerable.Range(start, to - start).Any(c => !row[c].IsEmpty))
                        records.Add(new BlockRow([new CellAt(_place, days, start), new CellAt(_place, row, 0), .. Enumerable.Range(start, width).Select(c => new CellAt(_place, c < to ? row : under, c < to ? c : -1))]));
                }
        }

        // Days one after another, each from its first row on.
        var label = first.IsEmpty ? new ColumnMeaning("", Role.Unknown) : HeadingReader.Read(first.Text.Trim());
        if (!label.IsKnown) label = label with { Role = Role.Time };
        _blocks.Add(new Block { Columns = [new("Date", Role.Date), label, .. headings.Select(h => HeadingReader.Read(h))], Rows = [.. records.OrderBy(r => r[0].Column)], About = About(_place.Sheet), IsAcross = true, Titles = [.. _titles] });
        _titles.Clear();
        return next;
    }

    // One day or two over lines that are headed at their side.
    private bool IsFewDays(int at)
    {
        var row = _rows[at];
        if (!RowShape.IsDayLabels(row, fewest: 1) || HeadingAt(at) is not null) return false;
        var next = at + 1;
        while (next < _rows.Count && _rows[next].IsBlank) next++;
        if (next < _rows.Count && _rows[next].Cells.Skip(1).Count(c => PartOfRow.Read(c.Text) is not null) is > 1 and var named && named == _rows[next].Cells.Count(c => !c.IsEmpty)) return true;
        while (next < _rows.Count && (IsOneCell(_rows[next]) || _rows[next].IsBlank)) next++;
        return LabelsBeside(next).Count >= 2;
    }

    // "Medicine | Dose | 1 | 2 | 3 ..." under "November 2025": the days of that month. Null for numbers of another kind.
    private GridRow? DaysOfMonth(GridRow row)
    {
        if (row[0].Kind is not (CellKind.Text or CellKind.Empty)) return null;
        if (Lexicon.Split(row[0].Text).Any(w => w is "hour" or "hours" or "time" or "clock")) return null;
        var (cells, last, count) = (row.Cells.ToArray(), 0, 0);
        for (var c = 0; c < cells.Length; c++)
        {
            if (cells[c].IsEmpty || (cells[c].Kind == CellKind.Text && !cells[c].Text.Any(char.IsAsciiDigit))) continue;
            if (!int.TryParse(cells[c].Text.Trim(), System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var day) || day is < 1 or > 31 || day <= last || (last > 0 && day != last + 1)) return null;
            (last, count) = (day, count + 1);
            cells[c] = Cell.Of(FormattableString.Invariant($"{day}{(day is 1 or 21 or 31 ? "st" : day is 2 or 22 ? "nd" : day is 3 or 23 ? "rd" : "th")}"));
        }

        return count >= 3 && TitleDay.Months(_place, _rows).Count == 1 ? row with { Cells = cells } : null;
    }

    // "Dt. 14-09-2026 | Morning | Evening" over labels: the one day stands over each of its parts.
    private GridRow? DayOverParts(int at)
    {
        var row = _rows[at];
        if (row.Cells.Length < 2 || CellTimes.Read(row[0]) is not { Date: not null, Clock: null } || row.Cells.Skip(1).Any(c => !c.IsEmpty && PartOfRow.Read(c.Text) is null) || row.Cells.Skip(1).All(c => c.IsEmpty)) return null;
        var labels = _rows.Skip(at + 1).TakeWhile(r => !r.IsBlank).Where(r => !IsOneCell(r)).Take(8).ToList();
        if (labels.Count < 2 || labels.Count(l => l[0].Kind == CellKind.Text && HeadingReader.Read(l[0].Text.Trim()).IsKnown) * 3 < labels.Count * 2) return null;
        return row with { Cells = [Cell.Empty, .. row.Cells.Skip(1).Select(c => c.IsEmpty ? Cell.Empty : row[0])] };
    }

    // Dates across: each column of dates is one record, the labels down the side are its headings.
    private int Across(int at, GridRow? days = null)
    {
        var dates = days ?? _rows[at];
        var labels = new List<GridRow>();
        var next = at + 1;
        // "am | pm" under each date: two records a day.
        var over = days is not null && PartOfRow.Read(_rows[at].Cells[^1].Text) is not null;
        var parts = over ? _rows[at] : next < _rows.Count && _rows[next].Cells.Skip(1).Count(c => PartOfRow.Read(c.Text) is not null) is > 1 and var named && named == _rows[next].Cells.Skip(1).Count(c => !c.IsEmpty) ? _rows[next++] : null;
        if (parts is not null && !over) _loose.Add(new LooseRow(parts, "the heading of parts of the day"));
        var deep = !over && TwoLabels(dates, next);
        string? overLabel = null;
        for (; next < _rows.Count; next++)
        {
            var row = _rows[next];
            if (deep && !row.IsBlank && !row[1].IsEmpty)
            {
                // "8am | chest": the hour at which it is due.
                var hour = row[0].Words is { } due && HeadingTime.Read(row[1].Text) is null && HeadingTime.Read($"{due} {row[1].Text}") is not null ? due : null;
                overLabel = hour is not null ? null : row[0].Words ?? overLabel;
                labels.Add(row with { Cells = [Cell.Of(hour is null ? row[1].Text : $"{hour} {row[1].Text}"), Cell.Empty, .. row.Cells.Skip(2)], Text = overLabel ?? "", Written = row.Written ?? row.Text });
                continue;
            }

            if (RowShape.IsDatesAcross(row) || (!row.IsBlank && !Repeats(row, labels.Count > 0 ? labels[^1] : null) && HourGrid.HourOf(row[0]) is null && PartOfRow.Read(row[0].Text) is null && HeadingAt(next) is not null && row.Cells.Skip(1).All(c => c.IsEmpty || c.Kind == CellKind.Text) && labels.Count > 2 && row.Cells.Count(c => !c.IsEmpty) > 2 && !IsRemarks(row))) break;
            if (row.IsBlank) continue;
            if (DayOverParts(next) is not null) break;
            if (labels.Count > 0 && _rows[next - 1].IsBlank && RowShape.IsDayLabels(row)) break;
            if (labels.Count > 0 && RowShape.IsTotal(row) && HeadingReader.Read(row[0].Text).Role is Role.Ignore or Role.Unknown)
            {
                _loose.Add(new LooseRow(row, "a total or average"));
                continue;
            }

            if (row.Cells.Skip(1).All(c => c.IsEmpty) && row[0].Text.Trim() is ['1', '9', _, _] or ['2', '0', _, _]) _loose.Add(new LooseRow(row, null));
            else if (row.Cells.Skip(1).All(c => c.IsEmpty) && (row[0].Text.Contains('=') || RowShape.IsKeyHeading(row[0].Text))) _loose.Add(new LooseRow(row, null));
            else if (RowShape.IsRule(row) || row[0].IsEmpty) _loose.Add(new LooseRow(row, row[0].IsEmpty ? null : "a drawn line"));
            else if (row.Cells.Skip(1).All(c => c.IsEmpty) && !HeadingReader.Read(row[0].Text).IsKnown && !AnyLabelBelow(next)) _loose.Add(new LooseRow(row, null));
            else labels.Add(row);
        }

        // "OXYGEN LEVEL | Mon | Tue": what stands in the corner is what the whole table is about.
        var corner = KindWords.Read(dates[0].Text, Reading.FamilyWords.None) is null ? null : dates[0].Words;
        if (corner is not null) _titles.Add(corner);
        if (HourGrid.IsHours([.. labels.Select(l => l[0])]) || (corner is not null && labels.Count > 0 && labels.TrueForAll(l => HourGrid.HourOf(l[0]) is not null))) return Grid(dates, labels, next);
        var columns = new List<ColumnMeaning> { new("Date", Role.Date) };
        columns.AddRange(AcrossColumns(dates, labels, Array.FindIndex(dates.Cells, c => CellTimes.Read(c).Date is not null), corner, deep).Select((c, i) => c with { DefaultAmount = AmountBeside(dates, labels[i]) ?? c.DefaultAmount, DefaultMinutes = MinutesBeside(dates, labels[i]) }));
        if (parts is not null) columns.Insert(1, new ColumnMeaning("Part", Role.Part));
        var rows = new List<BlockRow>();
        var lastDate = Array.FindLastIndex(dates.Cells, c => CellTimes.Read(c).Date is not null);
        var dated = -1;
        for (var c = 1; c < Math.Max(dates.Cells.Length, parts?.Cells.Length ?? 0); c++)
        {
            if (CellTimes.Read(dates[c]).Date is not null) dated = c;
            // A day written once over several of its sessions, merged or not, stands over the filled columns to its right.
            else if (!dates[c].IsEmpty || (parts is null ? labels.Count(l => !l[c].IsEmpty) < (c < lastDate ? 1 : FewestOfColumn) : parts[c].IsEmpty)) dated = -1;
            if (dated < 0) continue;
            CellAt[] head = parts is null ? [new CellAt(_place, dates, dated)] : [new CellAt(_place, dates, dated), new CellAt(_place, parts, c)];
            rows.Add(new BlockRow([.. head, .. labels.Select(l => new CellAt(_place, l, c))]));
        }

        _loose.Add(new LooseRow(dates, "the heading of dates"));
        foreach (var (label, column) in labels.Zip(columns.Skip(parts is null ? 1 : 2)))
            if (column.Role == Role.Ignore || rows.All(r => r.Cells.First(c => c.Row == label).Cell.IsEmpty))
                _loose.Add(new LooseRow(label, column.Role == Role.Ignore ? "not of this record" : label[0].Text.Contains('=') || AirByDefault.Says(label[0].Text) ? null : "a label with nothing beside it"));
        _blocks.Add(new Block { Columns = columns, Rows = rows, About = About(_place.Sheet), IsAcross = true, Titles = [.. _titles] });
        _titles.Clear();
        return next;
    }

    // "O2 during | school | air" under rows of the same "school": one more line of the table.
    private static bool Repeats(GridRow row, GridRow? above) => above is not null && Enumerable.Range(1, Math.Max(0, row.Cells.Length - 1)).Any(c => !row[c].IsEmpty && row[c].Kind == CellKind.Text && row[c].Text == above[c].Text);

    // Dates down, hours across.
    private int Hours(int at)
    {
        var rows = new List<GridRow>();
        var next = at + 1;
        for (; next < _rows.Count && !RowShape.IsDatesAcross(_rows[next]) && !HoursAcross.IsHeading(_rows[next]); next++)
        {
            var row = _rows[next];
            if (row.IsBlank) continue;
            if (_rows[next - 1].IsBlank && HeadingAt(next) is not null) break;
            if (RowShape.IsRule(row)) _loose.Add(new LooseRow(row, "a drawn line"));
            else if (RowShape.IsTotal(row)) _loose.Add(new LooseRow(row, "a total or average"));
            else if (IsOneCell(row) && row.Cells[Array.FindIndex(row.Cells, c => !c.IsEmpty)].Kind == CellKind.Text && CellTimes.Read(row[0]).Outcome == Reading.Outcome.Nothing) _loose.Add(new LooseRow(row, null));
            else rows.Add(row);
        }

        _loose.Add(new LooseRow(_rows[at], "the heading of hours"));
        List<string> titles = [.. _titles];
        _blocks.AddRange(HoursAcross.Blocks(_place, HoursAcross.Unwound(_rows[at]) ?? _rows[at], rows, About(_place.Sheet)).Select(b => b with { Titles = titles }));
        foreach (var row in rows.Where(r => !_blocks.Exists(b => b.Rows.Any(x => x.Cells.Any(c => c.Row == r))))) _loose.Add(new LooseRow(row, "a day with nothing else"));
        _titles.Clear();
        return next;
    }

    // Hours down, dates across: every filled cell is a record of its own.
    private int Grid(GridRow dates, List<GridRow> labels, int next)
    {
        // Hours that begin again after noon: counted to 24 as in a heading.
        if (HoursAcross.Unwound(new GridRow(0, 1, [.. labels.Select(l => l[0])], "")) is { } unwound)
            labels = [.. labels.Select((l, i) => l with { Cells = [unwound.Cells[i], .. l.Cells.Skip(1)] })];
        _loose.Add(new LooseRow(dates, "the heading of dates"));
        foreach (var label in labels.Where(l => HourGrid.HourOf(l[0]) is null || l.Cells.Skip(1).All(c => c.IsEmpty)))
            _loose.Add(new LooseRow(label, HourGrid.HourOf(label[0]) is null ? "beside the hours: a total or a remark" : "an hour with nothing beside it"));
        var rows = from column in Enumerable.Range(1, dates.Cells.Length - 1)
                   where CellTimes.Read(dates[column]).Date is not null
                   from label in labels
                   where HourGrid.HourOf(label[0]) is not null && !label[column].IsEmpty
                   select new BlockRow([new CellAt(_place, dates, column), new CellAt(_place, label, 0), new CellAt(_place, label, column)]);
        _blocks.Add(new Block { Columns = [new("Date", Role.Date), new("Hour", Role.Time), new("", Role.Unknown)], Rows = [.. rows], About = About(_place.Sheet), IsAcross = true, IsGrid = true, HoursRunDown = true, AfterMidnight = HourGrid.AfterMidnight([.. labels.Select(l => (l.Line, l[0]))]).ToHashSet() });
        _titles.Clear();
        return next;
    }

    // "SESSION 1 | TIME", under it " | LEFT": a group and its labels in two columns.
    private bool TwoLabels(GridRow dates, int from)
    {
        // "Hour | What | Mon 3 | Tue 4"
        if (!dates[1].IsEmpty && !HeadingReader.TellsWhat(dates[1].Text) || RowShape.IsDayLabels(dates with { Cells = [dates[0], dates[1]] }, fewest: 1)) return false;
        var rows = _rows.Skip(from).TakeWhile(r => !RowShape.IsDatesAcross(r)).Where(r => !r.IsBlank && !IsOneCell(r)).Take(40).ToList();
        return rows.Count >= 2 && rows.Count(r => r[1].Kind == CellKind.Text && PartOfRow.Read(r[1].Text) is null && HeadingReader.Read(r[1].Text, rows[0][0].Words).IsKnown) * 3 >= rows.Count * 2;
    }

    // "Salbutamol | 2 puffs" down the side: the amount of every dose of the line.
    private static string? AmountBeside(GridRow dates, GridRow label)
    {
        for (var i = 1; i < dates.Cells.Length && CellTimes.Read(dates[i]).Date is null; i++)
            if (!label[i].IsEmpty && Lexicon.Find(dates[i].Text, out _).Any(k => k.Concept is Concept.Amount or Concept.Puffs))
                return label[i].Words;
        return null;
    }

    // "Left lower ribs | 3" under "Position | Minutes": the printed minutes, of every tick of the line.
    private static double? MinutesBeside(GridRow dates, GridRow label)
    {
        for (var i = 1; i < dates.Cells.Length && CellTimes.Read(dates[i]).Date is null; i++)
            if (!label[i].IsEmpty && HeadingReader.Read(dates[i].Text).Role == Role.Minutes && Reading.MinutesReader.Read(label[i].Words!).TryGet(out var minutes))
                return minutes.Minutes;
        return null;
    }

    // "Notes | | asleep so no evening chest | temp 38.4 at 2pm" is a line of remarks, not the heading of another table.
    private static bool IsRemarks(GridRow row) => HeadingReader.Read(row[0].Text).Role is Role.Note or Role.Reason or Role.Sign or Role.By or Role.Cough or Role.Secretions
        || row.Cells.Skip(1).Any(c => c.Text.AsSpan().ContainsAnyInRange('0', '9') || Lexicon.Split(c.Text).Count > 4);

    private bool AnyLabelBelow(int at) => _rows.Skip(at + 1).Take(3).Any(r => !r.IsBlank && r.Cells.Skip(1).Any(c => !c.IsEmpty));

    // "Physio" or "Morning" with nothing beside it stands over "time" and "left"; "Physio finish" or "Vibration each side" was only left empty that day.
    private static bool IsGroup(GridRow label, GridRow? next) =>
        HeadingReader.Read(label[0].Text.Trim()).Role is not (Role.SessionEnd or Role.FeedEnd or Role.End or Role.Note or Role.Temperature or Role.Secretions or Role.Minutes or Role.Amount or Role.Millilitres)
        && (next is null || HeadingReader.Read(label[0].Text.Trim()).Role is not Role.Area || HeadingReader.Read(next[0].Text.Trim()).Role is Role.Area or Role.Minutes or Role.Unknown or Role.Side);

    // A label with nothing beside it ("Morning") is the group heading of those under it.
    private static IEnumerable<ColumnMeaning> AcrossColumns(GridRow dates, List<GridRow> labels, int firstDate, string? corner, bool deep)
    {
        var (group, number) = (corner, 0);
        string? before = null;
        for (var index = 0; index < labels.Count; index++)
        {
            var label = labels[index];
            if (deep && label.Text != before) (group, before, number) = (label.Text, label.Text, number + 1);
            if (!deep && label.Cells.Skip(1).All(c => c.IsEmpty) && IsGroup(label, index + 1 < labels.Count ? labels[index + 1] : null)) (group, number) = (label[0].Words, number + 1);
            var beside = Enumerable.Range(1, Math.Max(0, firstDate - 1)).Where(i => label[i].Kind == CellKind.TimeOfDay || (label[i].Kind == CellKind.Text && (PartOfRow.Read(label[i].Text) is not null || HeadingTime.Read(label[i].Text) is not null))).Select(i => label[i].Text.Trim()).ToList();
            // "2000" under "Time" is eight in the evening.
            for (var i = 1; i < firstDate; i++)
                if (HeadingReader.Read(dates[i].Text).Role == Role.Time && label[i].Kind is CellKind.Text or CellKind.Number && CellTimes.Read(label[i]).Clock is { End: null, Start: { Half: not Reading.HalfOfDay.Unknown } at } && !beside.Contains(label[i].Text.Trim()))
                    beside.Add(FormattableString.Invariant($"{at.Time.Hour}:{at.Time.Minute:00}"));
            var own = string.Join(' ', beside.Prepend(label[0].Text.Trim()));
            // A part of the day under "CHEST PT" is a session of that part.
            var part = corner is not null && group == corner ? PartOfRow.Read(own) : null;
            var meaning = HeadingReader.Read(part is null ? own : corner!, part is null ? group : null) with { Group = number };
            yield return part is null ? meaning : meaning with { Heading = $"{corner} {own}", Own = own, Part = part, Half = part == "midday" ? Reading.HalfOfDay.Unknown : part == "morning" ? Reading.HalfOfDay.Am : Reading.HalfOfDay.Pm };
        }
    }
}
