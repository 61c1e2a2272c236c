using CareRecords.Import.Reading;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>One event that each row of a block may hold, with the columns that speak of it.</summary>
internal sealed class Slot(TableKind kind)
{
    /// <summary>Which kind of record.</summary>
    public TableKind Kind { get; } = kind;

    /// <summary>The column of its time, or of words with its times; −1: the row's own time.</summary>
    public int Time { get; set; } = -1;

    /// <summary>The column of its end; −1 when there is none.</summary>
    public int End { get; set; } = -1;

    /// <summary>True when it begins at the row's own time and only its end has a column.</summary>
    public bool StartsWithRow { get; set; }

    /// <summary>The column that says whether it took place; −1 when there is none.</summary>
    public int Done { get; set; } = -1;

    /// <summary>The part of the day or meal that its heading names; null when it names none.</summary>
    public string? Part { get; set; }

    /// <summary>The time of day that its headings fix; null when they fix none.</summary>
    public ClockTime? At { get; set; }

    /// <summary>The columns of its values.</summary>
    public List<int> Values { get; } = [];

    /// <summary>The half of the day that its headings name.</summary>
    public HalfOfDay Half { get; set; } = HalfOfDay.Unknown;

    /// <summary>The group of columns that it stands in.</summary>
    public int Group { get; set; }
}

/// <summary>The events of a block's rows, and the columns that belong to the whole row.</summary>
internal sealed class BlockSlots
{
    private int _done = -2;

    private BlockSlots(Block block) => Block = block;

    /// <summary>The block.</summary>
    public Block Block { get; }

    /// <summary>The events.</summary>
    public List<Slot> Slots { get; } = [];

    /// <summary>Columns with the day.</summary>
    public int Date { get; private set; } = -1;

    /// <summary>The row's own time; −1 when it has none.</summary>
    public int Time { get; private set; } = -1;

    /// <summary>The row's own end; −1 when it has none.</summary>
    public int End { get; private set; } = -1;

    /// <summary>The column that says what happened; −1 when there is none.</summary>
    public int Kind { get; private set; } = -1;

    /// <summary>The part of the day that each row is of; −1 when no column says so.</summary>
    public int Part { get; private set; } = -1;

    /// <summary>Who; −1 when there is none.</summary>
    public int By { get; private set; } = -1;

    /// <summary>Columns of free words.</summary>
    public List<int> Words { get; } = [];

    /// <summary>Every column by its role, first to last.</summary>
    public IEnumerable<int> Of(Role role) => Enumerable.Range(0, Block.Columns.Count).Where(i => Block.Columns[i].Role == role);

    /// <summary>True when a day or time of its own stands in a row.</summary>
    public bool HasTimeIn(BlockRow row) => !row[Date].Cell.IsEmpty || !row[Time].Cell.IsEmpty;

    /// <summary>Sorts the columns of a block into events.</summary>
    public static BlockSlots Of(Block block)
    {
        var slots = new BlockSlots(block);
        for (var i = 0; i < block.Columns.Count; i++) slots.Place(i);
        slots.Settle();
        return slots;
    }

    private void Place(int i)
    {
        var column = Block.Columns[i];
        switch (column.Role)
        {
            case Role.Date: if (Date < 0) Date = i; else if (Time < 0) Time = i; break;
            case Role.Time or Role.Start: if (Time < 0) Time = i; else Open(TableKind.Checks, i, time: i); break;
            case Role.End: End = End < 0 ? i : End; break;
            case Role.Kind: if (Kind < 0) Kind = i; else Words.Add(i); break;
            case Role.Done: _done = i; return;
            case Role.Part: Part = Part < 0 ? i : Part; break;
            case Role.By: By = By < 0 ? i : By; break;
            case Role.Session: Open(TableKind.Sessions, i, time: i); break;
            case Role.SessionEnd: Last(TableKind.Sessions, i).End = i; break;
            case Role.Feed or Role.FeedStart: Open(TableKind.Feeds, i, time: i); break;
            case Role.FeedEnd: FeedEnd(i); break;
            case Role.Dose: Open(TableKind.Medicines, i, time: i); break;
            case Role.Side or Role.Area or Role.Minutes or Role.Technique or Role.Cough or Role.Secretions or Role.Colour or Role.Stopped or Role.Vomit:
                SessionValue(i); break;
            case Role.Millilitres or Role.Route or Role.Rate: FeedValue(i); break;
            case Role.Medicine: MedicineValue(i); break;
            case Role.Amount: Amount(i); break;
            case Role.Saturation or Role.Pulse or Role.Oxygen or Role.Phase: Measure(i); break;
            case Role.Temperature or Role.Breathing or Role.Sign: Open(TableKind.Signs, i, time: -1).Values.Add(i); break;
            case Role.Detail when Kind < 0 && NamesAreas(column) && (Find(TableKind.Sessions, i) is not null || Block.Columns.Any(c => c.Role is Role.Session or Role.Minutes && c.Group == column.Group)): SessionValue(i); break;
            case Role.Note or Role.Detail or Role.Reason or Role.Unknown: Words.Add(i); break;
        }
    }

    private static bool NamesAreas(ColumnMeaning column) => Lexicon.Split(column.Own).Any(w => w is "area" or "areas" or "lobe" or "lobes" or "zone" or "zones" or "position" or "positions" or "parts" or "segments");

    private Slot Open(TableKind kind, int column, int time)
    {
        var waiting = Slots.LastOrDefault(s => s.Kind == kind && s.Time < 0 && time >= 0 && s.Group == Block.Columns[column].Group && kind != TableKind.Signs && !(kind == TableKind.Feeds && (s.End >= 0 || s.Part is not null)));
        var slot = waiting ?? new Slot(kind);
        if (_done == column - 1) slot.Done = _done;
        slot.Time = time;
        slot.Group = Block.Columns[column].Group;
        slot.At ??= Block.Columns[column].At;
        if (slot.Half == HalfOfDay.Unknown) slot.Half = Block.Columns[column].Half;
        if (kind == TableKind.Sessions) slot.Part ??= Block.Columns[column].Part;
        if (waiting is null) Slots.Add(slot);
        return slot;
    }

    private Slot? Find(TableKind kind, int column) =>
        Slots.LastOrDefault(s => s.Kind == kind && !(kind == TableKind.Checks && s.Part is not null) && s.Group == Block.Columns[column].Group && (s.Kind != TableKind.Sessions || s.Part is null || Block.Columns[column].Part is null || s.Part == Block.Columns[column].Part) && (s.Half == HalfOfDay.Unknown || Block.Columns[column].Half == HalfOfDay.Unknown || s.Half == Block.Columns[column].Half)
            && (s.At is null || Block.Columns[column].At is null || s.At == Block.Columns[column].At));

    private Slot Last(TableKind kind, int column) => Find(kind, column) ?? Open(kind, column, time: -1);

    private void FeedEnd(int i)
    {
        if (Slots.Find(s => s.Kind == TableKind.Feeds && s.End < 0 && s.Time == i - 1 && Block.Columns[i - 1].Role == Role.FeedStart) is { } begun) begun.End = i;
        else if (Find(TableKind.Feeds, i) is { End: < 0, Time: >= 0 } feed && Block.Columns[feed.Time].Role is Role.FeedStart or Role.Feed && i - feed.Time <= 2) feed.End = i;
        // "Bottle (oz) | Bottle finished": how much, and when it ended.
        else if (Slots.Find(s => s is { Kind: TableKind.Feeds, Time: < 0, End: < 0 } && s.Values.Contains(i - 1) && s.Group == Block.Columns[i].Group) is { } amount) amount.End = i;
        else
        {
            var slot = new Slot(TableKind.Feeds) { End = i, Group = Block.Columns[i].Group, Half = Block.Columns[i].Half };
            Slots.Add(slot);
        }
    }

    // "Lunch oz" beside "feed ended": a feed of its own, at that meal.
    private void FeedValue(int i)
    {
        var meal = PartOfRow.Meal(Block.Columns[i].Heading);
        var feed = Find(TableKind.Feeds, i);
        // "Breakfast | time | oz": the meal's own time stands beside it.
        var beside = feed is { Time: >= 0 } && (Block.Columns[i].Group > 0 || PartOfRow.Meal(Block.Columns[feed.Time].Heading) == meal);
        if (meal is null || beside || (feed is not null && feed.Part == meal))
        {
            Last(TableKind.Feeds, i).Values.Add(i);
            return;
        }

        var slot = new Slot(TableKind.Feeds) { Group = Block.Columns[i].Group, Half = Block.Columns[i].Half, Part = meal };
        slot.Values.Add(i);
        Slots.Add(slot);
    }

    // Cough, secretions and colour stand for signs where the table has no session, and of the day where days stand across and each has several.
    private void SessionValue(int i)
    {
        if (Block.Columns[i].Role is Role.Cough or Role.Secretions or Role.Colour or Role.Vomit && (Find(TableKind.Sessions, i) is null && (Block.About != TableKind.Sessions || Slots.Exists(s => s.Kind == TableKind.Sessions && s.Time >= 0)) || Block.IsAcross && Block.Columns[i] is { Part: null, Half: HalfOfDay.Unknown } && Slots.Count(s => s.Kind == TableKind.Sessions) > 1 || IsOnlyOne(i)))
            Open(TableKind.Signs, i, time: -1).Values.Add(i);
        else Last(TableKind.Sessions, i).Values.Add(i);
    }

    // "Cough" once, behind the times of three sessions.
    private bool IsOnlyOne(int i) => Block.Columns[i].Role != Role.Vomit && Block.Columns[i].Group == 0 && Block.Columns.Count(c => c.Role == Block.Columns[i].Role) == 1 && Slots.Count(s => s is { Kind: TableKind.Sessions, Time: >= 0, Group: 0 }) > 1;

    private void MedicineValue(int i)
    {
        var slot = Find(TableKind.Medicines, i);
        if (slot is null || slot.Values.Any(v => Block.Columns[v].Role == Role.Medicine)) slot = Open(TableKind.Medicines, i, time: -1);
        slot.Values.Add(i);
    }

    private void Amount(int i)
    {
        // "salbutamol puffs" with no other column of that medicine: a number in it is a dose.
        if (Block.Columns[i].Medicine is { } medicine && !Slots.Exists(s => s.Kind == TableKind.Medicines && s.Group == Block.Columns[i].Group && (s.Time < 0 || Block.Columns[s.Time].Medicine is null || Block.Columns[s.Time].Medicine == medicine)))
        {
            Slots.Add(new Slot(TableKind.Medicines) { Time = i, Group = Block.Columns[i].Group, Half = Block.Columns[i].Half });
            return;
        }

        var puffs = Lexicon.Find(Block.Columns[i].Heading, out _).Any(k => k.Concept == Concept.Puffs);
        if (puffs && !Slots.Exists(s => s.Kind == TableKind.Medicines && s.Group == Block.Columns[i].Group && (s.Time < 0 || Block.Columns[s.Time].Role != Role.Amount) && s.Values.TrueForAll(v => Block.Columns[v].Role != Role.Amount)))
        {
            Slots.Add(new Slot(TableKind.Medicines) { Time = i, Group = Block.Columns[i].Group, Half = Block.Columns[i].Half });
            return;
        }

        if (Slots.LastOrDefault(s => (s.Kind is TableKind.Medicines || (s.Kind == TableKind.Feeds && !puffs)) && s.Group == Block.Columns[i].Group) is { } slot) slot.Values.Add(i);
        else if (Block.About is TableKind.Feeds or TableKind.Medicines) Last(Block.About.Value, i).Values.Add(i);
        else Words.Add(i);
    }

    // Before and after belong to the session of the row; other measures to it too where there is one, else they are checks of their own.
    private void Measure(int i)
    {
        var column = Block.Columns[i];
        if (DayRange.IsOfDay(column.Heading))
        {
            OfPart(i, "day");
            return;
        }

        if (column.At is { } fixedAt && !Slots.Exists(s => s.Kind == TableKind.Sessions && s.Group == column.Group && column.Phase != Records.CheckPhase.None))
        {
            OfPart(i, fixedAt.Time.ToString("HH:mm", System.Globalization.CultureInfo.InvariantCulture) + (column.Half == HalfOfDay.Unknown ? "" : column.Half.ToString()));
            return;
        }

        if (column.Part is { } part && !(column.Phase != Records.CheckPhase.None && Slots.Exists(s => s.Kind == TableKind.Sessions && s.Half == column.Half)) && !(column.Group > 0 && Slots.Exists(s => s.Kind == TableKind.Sessions && s.Group == column.Group)))
        {
            OfPart(i, part);
            return;
        }

        // "Sats after evening": of that part's session.
        var session = (column.Half == HalfOfDay.Unknown || column.Phase == Records.CheckPhase.None || column.Group > 0 ? null : Slots.LastOrDefault(s => s.Kind == TableKind.Sessions && s.Half == column.Half)) ?? Find(TableKind.Sessions, i) ?? Slots.LastOrDefault(s => s.Kind == TableKind.Sessions && s.Group == 0);
        // "O2" at the end of the row is of the saturations beside its session, where no others are measured.
        var ofSession = column.Role == Role.Oxygen && session is not null && session.Values.Exists(v => Block.Columns[v].Role == Role.Saturation) && !Slots.Exists(s => s.Kind == TableKind.Checks && s.Group == column.Group && s.Values.Exists(v => Block.Columns[v].Role == Role.Saturation));
        if (session is not null && (ofSession || Slots[^1].Kind is TableKind.Sessions or TableKind.Signs)) session.Values.Add(i);
        else if (session is not null && Block.Columns[i].Phase != Records.CheckPhase.None) session.Values.Add(i);
        else Last(TableKind.Checks, i).Values.Add(i);
    }

    // Measures of a part of the day, or of the day as a whole, make one check together.
    private void OfPart(int i, string part)
    {
        var slot = Slots.Find(s => s.Kind == TableKind.Checks && s.Part == part);
        if (slot is null) Slots.Add(slot = new Slot(TableKind.Checks) { Part = part, Half = Block.Columns[i].Half, Group = Block.Columns[i].Group });
        slot.Values.Add(i);
    }

    private void Settle()
    {
        // "Session log" with a start and a finish a row: a session, whatever else was measured.
        if (Block.About == TableKind.Sessions && Kind < 0 && Time >= 0 && End >= 0 && !Slots.Exists(s => s.Kind is TableKind.Sessions or TableKind.Feeds))
        {
            Slots.Insert(0, new Slot(TableKind.Sessions));
            foreach (var check in Slots.Where(s => s.Kind == TableKind.Checks && s.Time < 0 && s.Part is null).ToList())
            {
                Slots[0].Values.AddRange(check.Values);
                Slots.Remove(check);
            }
        }

        // "SpO2 in" may stand before the columns of the session that it is of.
        if (Kind < 0)
            foreach (var check in Slots.Where(s => s.Kind == TableKind.Checks && s.Time < 0 && s.Part is null && s.Values.Exists(v => Block.Columns[v].Phase != Records.CheckPhase.None) && s.Values.TrueForAll(v => Block.Columns[v].Phase != Records.CheckPhase.None || Block.Columns[v].Role == Role.Oxygen)).ToList())
                if (Slots.Where(s => s.Kind == TableKind.Sessions && s.Group == check.Group && (s.Half == check.Half || check.Half == HalfOfDay.Unknown)).ToList() is [var session])
                {
                    session.Values.AddRange(check.Values);
                    Slots.Remove(check);
                }

        if (End >= 0 && Kind < 0 && PrimarySlot() is { End: < 0 } primary)
        {
            primary.StartsWithRow = primary.Time < 0 && Time >= 0;
            (primary.End, End) = (End, -1);
        }

        // "O2" once beside the saturations of morning and evening is of each of them.
        if (Time < 0 && Kind < 0 && Slots.Find(s => s.Kind == TableKind.Checks && s.Part is null && s.Time < 0 && s.Values.TrueForAll(v => Block.Columns[v].Role == Role.Oxygen)) is { } flow && Slots.Where(s => s.Kind == TableKind.Checks && s.Part is not null && s.Part != "day").ToList() is { Count: > 0 } parts)
        {
            foreach (var part in parts.Where(p => !p.Values.Exists(v => Block.Columns[v].Role == Role.Oxygen))) part.Values.AddRange(flow.Values);
            Slots.Remove(flow);
        }

        if (Slots.Count == 0 && Kind < 0 && Block.About is { } about && (Time >= 0 || End >= 0)) Slots.Add(new Slot(about) { End = End, StartsWithRow = Time >= 0 });
        if (Time < 0 && Date < 0 && Slots.Count == 0) return;
        foreach (var slot in Slots)
            slot.Values.Sort();
    }

    private Slot? PrimarySlot() =>
        Block.About is { } about && Slots.FirstOrDefault(s => s.Kind == about) is { } named ? named
        : Slots.OrderBy(s => s.Kind switch { TableKind.Sessions => 0, TableKind.Feeds => 1, TableKind.Medicines => 2, _ => 3 }).FirstOrDefault();
}
