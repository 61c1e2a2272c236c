using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>Reads the rows of a block that has one event a row and a column that says which ("What happened").</summary>
internal sealed partial class KindRows(BlockReading reading, RowTimesReader times, SessionCells sessions, MeasureCells measures, FreeWords words)
{
    private const int MostOfOneReading = 2;

    /// <summary>Reads one row.</summary>
    public void Read(BlockRow row, RowWhen when)
    {
        var kindCell = row[reading.Slots.Kind];
        if (kindCell.Cell.Words is not { } text || KindWords.Read(text, reading.Context.Words) is not { } what)
        {
            Unknown(row, when);
            return;
        }

        if (when.Start is null && when.End is null && IsTotal(text))
        {
            reading.Into.SetAside.Add(new SetAsideLine(row.Source, "a total or average"));
            reading.Into.Ledger.Mark(row[0].Row.Line, row[0].Row.LineCount, Notes.LineFate.NotRecord);
            foreach (var cell in row.Cells) reading.Saw(cell);
            return;
        }

        if (when.Start is null && when.End is null && !when.IsBad && when.Day is null)
        {
            reading.Cells.Ask(row.Source, "No date or time is written for this row.", "Write the date and time in the row.");
            return;
        }

        if (when.IsBad) return;
        // "clapping 7.05am" where no column has the times.
        if (reading.Slots.Time < 0 && when.Start is null && when.Day is not null && HeadingTime.Read(text) is { } inKind && times.Settled(inKind, HalfOfDay.Unknown, null, kindCell) is { } settled) when = when with { Start = settled };
        if (when.Start is { } told && IsSentence(text) && !(what.Kind == TableKind.Feeds && !Lasted(row).IsNone) && TellsAll(words.Told(text, null, told, row[0].Place.File), told) && words.Read(kindCell, null, when.Day, when.Start, keepAll: true))
        {
            foreach (var cell in TextCells(row)) words.Read(cell, null, when.Day, when.Start, keepAll: false);
            if (when.Start is { } measured) measures.AddChecks(row, Measures(), measured, []);
            return;
        }

        var at = when.Start ?? (when.Day is { } day ? UncertainTime.OnDay(day) : null);
        if (at is null) return;
        if ((SameAs.SaysNotDone(text) || SaysRefused(text) || text.StartsWith("no ", StringComparison.OrdinalIgnoreCase) || SaysNone(row)) && what.Kind is TableKind.Sessions or TableKind.Feeds or TableKind.Medicines)
        {
            LeftOut(row, what, at, text);
            return;
        }

        if (when.Start is null && when.End is null && reading.Slots.Time >= 0) reading.Cells.Ask(row.Source, "No time is written in this row.", "Write the time of the event.");
        switch (what.Kind)
        {
            case TableKind.Sessions: Session(row, what, at, when); break;
            case TableKind.Feeds: Feed(row, what, at, when); break;
            case TableKind.Medicines: Dose(row, what, at, when); break;
            case TableKind.Signs: Sign(row, what, at, when); break;
            default:
                var before = reading.Into.Entries.Count;
                Checks(row, what, at, when);
                if (reading.Into.Entries.Count > before) Remarks(row, row[reading.Slots.Kind], at, when);
                return;
        }

        if (what.Sign != SignKind.Temperature)
            foreach (var column in Of(Role.Temperature).Concat(Of(Role.Breathing)).Where(c => !row[c].Cell.IsEmpty))
                measures.AddSign(row, column, at, when.Day);
        // Before and after in columns beside a physio are of its start and end, not of a minute of their own.
        measures.AddChecks(row, Measures(), at, what.Kind == TableKind.Sessions && reading.LastSession is { } session && session.Sources[0].Place == row.Source.Place ? [session] : []);
    }

    // "Total RT feed by day", "Physio this week".
    private static bool IsTotal(string text) => Lexicon.Find(text, out _).Any(k => k.Concept == Concept.Total);

    // "Not given" in the cell beside "Nebuliser".
    private bool SaysNone(BlockRow row) =>
        Of(Role.Amount).Concat(reading.Slots.Words.Where(c => reading.Block.Columns[c].Role is Role.Detail or Role.Unknown)).Select(c => row[c].Cell.Words).Any(t => t is not null && NotSaid.SaysNotDone(t));

    // "Physio refused", "feed not given".
    private void LeftOut(BlockRow row, WhatHappened what, UncertainTime at, string text)
    {
        if (what.Kind == TableKind.Sessions)
        {
            reading.Into.Omitted.Add(new OmittedSession(at, text, row.Source));
            reading.Use(row[reading.Slots.Kind]);
            return;
        }

        reading.Into.SetAside.Add(new SetAsideLine(row.Source, what.Kind == TableKind.Feeds ? "a feed that was not taken" : "a medicine that was not given"));
        reading.Into.Ledger.Mark(row[0].Row.Line, row[0].Row.LineCount, Notes.LineFate.NotRecord);
    }

    private void Session(BlockRow row, WhatHappened what, UncertainTime at, RowWhen when)
    {
        var cells = WordsAndNumbers(row);
        // "uppers skipped" beside the minutes of the lowers leaves out a part, not the session.
        var withMinutes = Of(Role.Area).Any(c => row[c].Cell.Text.Any(char.IsAsciiDigit)) || cells.Exists(c => TellsMinutes(c, what));
        if (!withMinutes && cells.FirstOrDefault(c => SameAs.SaysNotDone(c.Cell.Text) || SameAs.IsNo(c.Cell.Text)) is { IsNone: false } missed)
        {
            reading.Into.Omitted.Add(new OmittedSession(at, missed.Cell.Words, row.Source));
            reading.Use(missed);
            words.AddSigns(missed, at);
            return;
        }

        // "perc" beside "LLL 3 RLL 3": a technique alone in its cell is that of the others.
        if (what.Technique == Technique.Unknown && cells.Select(c => OnlyTechnique(c.Cell.Text)).FirstOrDefault(t => t != Technique.Unknown) is var technique) what = what with { Technique = technique };
        cells.RemoveAll(c => IsOnlyTechniques(c.Cell.Text));
        var slot = new Slot(TableKind.Sessions);
        slot.Values.AddRange(Of(Role.Area).Concat(Of(Role.Minutes).Where(c => !cells.Exists(w => w.Column == c))).Concat(Of(Role.Technique)).Concat(Of(Role.Cough)).Concat(Of(Role.Secretions)).Concat(Of(Role.Colour)).Concat(Of(Role.Stopped)).Concat(Of(Role.Vomit)));
        // "tops left out" beside the minutes of the bases.
        if (withMinutes)
            foreach (var leftOut in cells.Where(c => SameAs.SaysNotDone(c.Cell.Text) && !c.Cell.Text.Any(char.IsAsciiDigit)).ToList())
            {
                reading.Saw(leftOut);
                cells.Remove(leftOut);
            }

        // "all 4", "everywhere": no part is named.
        foreach (var all in cells.Where(c => IsAllParts(c.Cell.Text)).ToList())
        {
            reading.Saw(all);
            cells.Remove(all);
        }

        var areas = new List<AreaMinutes>();
        var left = new List<CellAt>();
        foreach (var cell in cells)
            if (Areas(cell, what, row, at) is { } read) areas.AddRange(read);
            else left.Add(cell);
        areas = WithMinutes(areas);
        // "left base | 3 | min": the part and its minutes in two cells.
        if (areas.Count > 0 && areas.TrueForAll(a => a.Minutes is null) && InAll([.. cells, .. Of(Role.Minutes).Concat(Of(Role.Amount)).Select(c => row[c]).Where(c => !c.Cell.IsEmpty && !cells.Exists(x => x.Column == c.Column))]) is { } ofParts)
            areas = [.. areas.Select(a => a with { Minutes = ofParts / areas.Count })];
        // "Percussion LLL + RLL | 3 min each": the parts stand in the kind.
        if (areas.TrueForAll(a => a is { Side: Side.Unknown, Area: ChestArea.Unknown }) && areas.Count <= 1 && AreaNames.In(row[reading.Slots.Kind].Cell.Text) is { Count: > 0 } parts && parts.All(p => p.Side != Side.Unknown))
        {
            var each = areas.Count == 1 ? areas[0].Minutes : null;
            areas = [.. parts.Select(p => new AreaMinutes(p.Side, p.Area, p.Technique == Technique.Unknown ? what.Technique : p.Technique, each))];
        }

        // "physio L3 R3" as the kind itself.
        if (areas.Count == 0 && row[reading.Slots.Kind].Cell.Text.Any(char.IsAsciiDigit) && !slot.Values.Exists(v => !row[v].Cell.IsEmpty && reading.Block.Columns[v].Role == Role.Area) && words.Areas(row[reading.Slots.Kind], reading.Day) is { } inKind) areas.AddRange(Named(inKind, what));
        if (sessions.Add(row, slot, at, when.End, row.Source, areas) is { Areas.Count: 0, MinutesWritten: null } bare && InAll(cells) is { } total)
        {
            reading.Into.Entries[^1] = bare with { MinutesWritten = total };
            reading.SessionsOfDay[^1] = bare with { MinutesWritten = total };
        }

        cells.ForEach(reading.Saw);
        foreach (var cell in left) words.Read(cell, null, when.Day, at, keepAll: false);
    }

    // "Rt 4/2, Lt 4/2" of "Rt 4/2, Lt 4/2, vibration 1 each side".
    private static string Head(string text)
    {
        var pieces = text.Split(',');
        var count = pieces.TakeWhile(p => SideNumbers.Is(p)).Count();
        return string.Join(',', pieces.Take(count));
    }

    private static bool IsAllParts(string text) => Lexicon.Split(text) is { Count: > 0 and <= 3 } words && words[0] is "all" or "everywhere" or "both"
        && words.Skip(1).All(w => w is "4" or "four" or "6" or "six" or "areas" or "lobes" or "zones" or "parts" or "over" or "spots" or "sides" or "of" or "them" or "positions");

    // "lowers" beside "clapped, 3 a side": the parts in one cell, their minutes in another.
    private static List<AreaMinutes> WithMinutes(List<AreaMinutes> areas)
    {
        var parts = areas.Where(a => a is { Minutes: null, Area: not ChestArea.Unknown }).ToList();
        var minutes = areas.Where(a => a is { Minutes: not null, Area: ChestArea.Unknown, Side: not Side.Unknown, Technique: not Technique.Vibration }).ToList();
        if (parts.Count == 0 || minutes.Count == 0 || !parts.TrueForAll(p => minutes.Exists(m => m.Side == p.Side))) return areas;
        return [.. areas.Except(minutes).Select(a => !parts.Contains(a) ? a : minutes.First(m => m.Side == a.Side) is var of && of.Technique != Technique.Unknown ? a with { Minutes = of.Minutes, MinutesHigh = of.MinutesHigh, Technique = of.Technique } : a with { Minutes = of.Minutes, MinutesHigh = of.MinutesHigh })];
    }

    // Minutes of a cell: numbers in a known order, words that name the parts, or "same as morning". Null when the cell is about something else.
    private IReadOnlyList<AreaMinutes>? Areas(CellAt cell, WhatHappened what, BlockRow row, UncertainTime when)
    {
        var text = cell.Cell.Words!;
        if (SameAs.PointsBack(text) && text.IndexOf(',', StringComparison.Ordinal) is > 0 and var comma) words.Read(cell, null, reading.Day, when, keepAll: false, text[(comma + 1)..].Trim());
        if (SameAs.PointsBack(text)) return reading.Same(text, reading.Anchor?.Stated.TimeOfDay)?.Areas ?? [];
        if (SideNumbers.Is(Head(text)))
        {
            var explained = (reading.Context.Words.MeaningOf(row[reading.Slots.Kind].Cell.Text) is { } meant ? new[] { meant } : []).Concat(reading.Block.Titles).Concat(reading.Block.Columns.Select(c => c.Heading)).ToList();
            if (!SideNumbers.IsExplained(explained)) reading.Cells.Ask(cell.Source, $"'{text}' does not say which parts the two numbers of a side are for.", "Say the order in a words table, such as lower / upper.", "areas-of-numbers:" + cell.Place.File);
            var rest = text.Length > Head(text).Length ? AreasReader.Read(text[Head(text).Length..].Trim(' ', ',', '+'), reading.Context.Words) : default;
            return Named([.. SideNumbers.Read(Head(text), explained)!, .. rest.TryGet(out var beside) ? beside.Areas : []], what);
        }

        var order = Order(what);
        var plus = text.IndexOf('+', StringComparison.Ordinal);
        var head = plus > 0 ? text[..plus].Trim() : text.TrimStart('+', ' ');
        void Refuse(string why) => reading.Cells.Refuse(cell.Source, why, "Correct the minutes.");
        if (AreaNumbers.Read(head, order, Refuse) is { } numbers)
        {
            if (plus < 0) return numbers;
            return AreasReader.Read(text[(plus + 1)..].Trim(), reading.Context.Words).TryGet(out var more) ? [.. numbers, .. more.Areas] : numbers;
        }

        var read = AreasReader.Read(text.TrimStart('=', '+', ' '), reading.Context.Words);
        if (read.TryGet(out var written)) return Named(written.Areas, what);
        // A remark with a clock of its own is of another time.
        if (read.Outcome != Outcome.Doubtful && FreeWords.HasClock(text)) return null;
        if (read.Outcome != Outcome.Doubtful || read.Value is null) return words.Areas(cell, reading.Day) is { } told ? Named(told, what) : null;
        var name = "areas-of-numbers:" + cell.Place.File;
        reading.Into.Questions.TryAdd(name, new Notes.AskedQuestion($"Which parts of the chest are the numbers such as '{text}' in {cell.Place.File}?", read.Choices));
        reading.Cells.Ask(cell.Source, read.Why ?? $"'{text}' does not say which parts of the chest it is for.", "Say the order in a words table, such as physio, left lower / right lower / left upper / right upper.", name);
        return read.Value.Areas;
    }

    // "20 min", or the number and its unit in two cells.
    private static double? InAll(List<CellAt> cells)
    {
        foreach (var cell in cells)
        {
            var text = cell.Cell.Words!;
            if (!MinutesReader.Read(text).TryGet(out var minutes)) continue;
            if (text.Any(char.IsLetter) || cells.Exists(c => c.Column != cell.Column && c.Cell.Words!.ToLowerInvariant() is "min" or "mins" or "minutes" or "minute")) return minutes.Minutes;
        }

        return null;
    }

    private bool TellsMinutes(CellAt cell, WhatHappened what) => cell.Cell.Text.Any(c => c is >= '1' and <= '9')
        && (AreaNumbers.Read(cell.Cell.Text.Trim(), Order(what), _ => { }) is { Count: > 0 } || AreasReader.Read(cell.Cell.Text, reading.Context.Words) is { Outcome: Outcome.Certain, Value.Areas.Count: > 0 } || words.Areas(cell, reading.Day) is not null);

    private static IReadOnlyList<AreaMinutes> Named(IReadOnlyList<AreaMinutes> areas, WhatHappened what) =>
        what.Technique == Technique.Unknown ? areas : [.. areas.Select(a => a.Technique == Technique.Unknown ? a with { Technique = what.Technique } : a)];

    private IReadOnlyList<AreaName> Order(WhatHappened what) => what.Areas.Count > 0 ? what.Areas : reading.AreaOrder;

    private void Dose(BlockRow row, WhatHappened what, UncertainTime at, RowWhen when)
    {
        var kind = row[reading.Slots.Kind];
        var cells = TextCells(row);
        if (SameDose(cells) is { } again)
        {
            reading.Add(again with { Sources = [row.Source], Start = at, By = By(row) }, [row[0], .. cells]);
            return;
        }

        // "med | albuterol neb | 2.5 mg": the kind only says that it was a medicine, the next words say which.
        var named = Of(Role.Medicine).Select(c => row[c]).Concat(cells).FirstOrDefault(c => !c.Cell.IsEmpty && KindWords.Read(c.Cell.Text, FamilyWords.None)?.Medicine is not null);
        var cell = what.Medicine is null && !named.IsNone ? named : kind;
        if (reading.Cells.Several(cell) is { Count: > 1 } several)
        {
            foreach (var one in several) reading.Add(new Dose { Sources = [row.Source], Start = at, Medicine = one.Generic, MedicineAsWritten = one.AsWritten, Amount = one.Amount, Route = one.Route, By = By(row) }, row[0], cell);
            return;
        }

        if ((reading.Context.Words.MeaningOf(kind.Cell.Text) is { } means ? Meant(means) : null) is not { } medicine)
        {
            if (reading.Cells.Medicine(cell) is not { } read) return;
            medicine = read;
        }

        var amount = Of(Role.Amount).Concat(Of(Role.Millilitres)).Concat(Of(Role.Minutes)).Select(c => row[c]).FirstOrDefault(c => !c.Cell.IsEmpty);
        // "salbutamol 4 puffs" where the amount stands: the amount of it alone.
        var amountText = (!amount.IsNone && amount.Column == cell.Column && medicine.Amount is not null ? medicine.Amount : amount.Cell.Words) ?? medicine.Amount ?? cells.Where(c => c.Column != cell.Column).Select(c => DoseAmount.In(c.Cell.Words!)).FirstOrDefault(a => a is not null);
        if (amountText is null && LooseAmount(cells, cell) is { } loose) (amount, amountText) = loose;
        if (amountText is not null && amountText.All(char.IsAsciiDigit) && reading.Context.Words.MeaningOf(kind.Cell.Text)?.Contains("puff", StringComparison.OrdinalIgnoreCase) == true) amountText += " puffs";
        reading.Add(new Dose
        {
            Sources = [row.Source],
            Start = at,
            Medicine = medicine.Generic,
            MedicineAsWritten = cell.Cell.Words,
            Amount = amountText,
            Route = medicine.Route,
            By = By(row),
        }, row[0], cell, amount.IsNone ? cell : amount);
        foreach (var other in cells.Where(c => !c.Cell.Text.Any(char.IsAsciiDigit) || (amountText is not null && c.Cell.Text.Contains(amountText, StringComparison.Ordinal)))) reading.Saw(other);
        Remarks(row, cell, at, when);
    }

    // "inhaler | same dose": as the last dose of the same kind of medicine written above.
    private Dose? SameDose(List<CellAt> cells) =>
        cells.Exists(c => SameAs.PointsBack(c.Cell.Text)) ? reading.Into.Entries.OfType<Dose>().LastOrDefault(d => d.Medicine != Medicines.Unknown) : null;

    // Amount and unit in two cells without headings: "2 | puffs".
    private (CellAt Amount, string Text)? LooseAmount(List<CellAt> cells, CellAt named)
    {
        var amount = cells.FirstOrDefault(c => c.Column != named.Column && c.Cell.Text.Trim() is { Length: <= 5 } text && text.All(x => char.IsAsciiDigit(x) || x is '.' or ','));
        if (amount.IsNone) return null;
        var unit = cells.FirstOrDefault(c => c.Column != amount.Column && c.Cell.Text.Trim().ToLowerInvariant() is "puffs" or "puff" or "ml" or "mls" or "mg" or "mcg" or "drops");
        if (!unit.IsNone) reading.Saw(unit);
        return (amount, unit.IsNone ? amount.Cell.Words! : amount.Cell.Words + " " + unit.Cell.Words);
    }

    private static MedicineWritten? Meant(string means) => MeantFirst(means)
        ?? CodeWords.Clauses(means).Select(MeantFirst).FirstOrDefault(m => m is not null)
        ?? (Lexicon.Find(means, out _).FirstOrDefault(k => k.Medicine is not null).Medicine is { } generic ? new MedicineWritten(generic, generic, null, null) : null);

    private static MedicineWritten? MeantFirst(string means) =>
        MedicineReader.Read(means.Split(',')[0], FamilyWords.None) is { Outcome: Outcome.Certain, Value: { } read } && read.Generic != Medicines.Unknown ? read : null;

    private void Sign(BlockRow row, WhatHappened what, UncertainTime at, RowWhen when)
    {
        var cells = TextCells(row).Concat(Of(Role.Temperature).Concat(Of(Role.Amount)).Concat(Of(Role.Minutes)).Concat(Of(Role.Millilitres)).Select(c => row[c]).Where(c => !c.Cell.IsEmpty)).DistinctBy(c => c.Column).ToList();
        if (what.Sign == SignKind.Temperature)
        {
            foreach (var cell in cells.OrderBy(c => c.Cell.Text.Any(char.IsAsciiDigit) ? 0 : 1))
            {
                if (!cell.Cell.Text.Any(char.IsAsciiDigit)) continue;
                if (reading.Cells.Temperature(cell) is { } temperature)
                    reading.Add(NewSign(row, what.Sign, temperature.AsWritten, temperature.Celsius, at), cell);
                Remarks(row, cell, at, when);
                return;
            }

            if (!words.Read(row[reading.Slots.Kind], null, when.Day, at, keepAll: true)) reading.Cells.Ask(row.Source, "A temperature without degrees.", "Write the degrees.");
            return;
        }

        // An antibiotic started: the medicine itself stands in the words beside it.
        if (what.Sign == SignKind.Antibiotic && cells.FirstOrDefault(c => KindWords.Read(c.Cell.Text, FamilyWords.None)?.Medicine is not null) is { IsNone: false } medicine && reading.Cells.Medicine(medicine) is { } named)
            reading.Add(new Dose { Sources = [row.Source], Start = at, Medicine = named.Generic, MedicineAsWritten = medicine.Cell.Words, Amount = named.Amount ?? AmountAfter(medicine.Cell.Words!), Route = named.Route, By = By(row) }, row[0]);
        var value = string.Join(", ", cells.Select(c => c.Cell.Words));
        reading.Add(NewSign(row, what.Sign, value.Length == 0 ? null : value, null, at), [row[0], .. cells]);
    }

    // "Paracetamol 5 ml given at 3.15 pm" beside a temperature is an event of its own.
    private void Remarks(BlockRow row, CellAt except, UncertainTime at, RowWhen when)
    {
        foreach (var cell in TextCells(row).Where(c => c.Column != except.Column && reading.Block.Columns[c.Column].Role is Role.Note or Role.Unknown or Role.Detail && !reading.IsUsed(c) && c.Cell.Text.Any(char.IsLetter)))
            if (FlowRemarks.Read(reading, cell)) words.AddSigns(cell, at);
            else words.Read(cell, null, when.Day, at, keepAll: false);
    }

    private static string? AmountAfter(string text)
    {
        var at = text.AsSpan().IndexOfAnyInRange('0', '9');
        return at < 0 ? null : DoseAmount.In(text[at..]);
    }

    // A row whose kind is not known is read as a sentence: its words in the order in which they stand.
    private void Unknown(BlockRow row, RowWhen when)
    {
        var measured = Measures();
        if (when.Start is { } at && measured.Any(c => !row[c].Cell.IsEmpty)) measures.AddChecks(row, measured, at, []);
        var cells = row.Cells.Where(c => c.Column != reading.Slots.Date && c.Column != reading.Slots.Time && !measured.Contains(c.Column) && !c.Cell.IsEmpty && reading.Block.Columns.ElementAtOrDefault(c.Column)?.Role is not (Role.Ignore or Role.By or Role.Count)).ToList();
        // "E" of the key's "event" says nothing beside what happened.
        if (cells.Count > 1 && row[reading.Slots.Kind].Cell.Words is { Length: <= 2 } letter && reading.Context.Words.MeaningOf(letter) is not null && cells.RemoveAll(c => c.Column == row[reading.Slots.Kind].Column) > 0) reading.Saw(row[reading.Slots.Kind]);
        if (cells.Count == 0) return;
        if (words.Read(cells[0], null, when.Day, when.Start, keepAll: true, string.Join(' ', cells.Select(c => c.Cell.Words)))) cells.ForEach(reading.Saw);
    }

    // "4 puffs of salbutamol" says more than what kind it was.
    private static bool IsSentence(string text) =>
        text.Split(' ', StringSplitOptions.RemoveEmptyEntries) is { Length: >= 3 } parts && parts.Any(p => char.IsAsciiDigit(p[0]));

    // A sentence is taken whole where each thing that it tells has its value and the row's time; else the kind and the other cells tell more.
    private static bool TellsAll(IReadOnlyList<CareEntry> entries, UncertainTime at) => entries.Count > 0 && entries.All(e => e.When.Stated == at.Stated && e switch
    {
        Session session => session.Areas.Any(a => a.Minutes is not null) || session.MinutesWritten is not null,
        Feed feed => feed.Millilitres is not null && feed.End is null,
        Dose dose => dose.Amount is not null,
        Check check => check.SpO2 is not null || check.Pulse is not null,
        _ => true,
    });

    private static bool SaysRefused(string text)
    {
        var folded = text.ToLowerInvariant();
        return folded.Contains("didn't want", StringComparison.Ordinal) || folded.Contains("did not want", StringComparison.Ordinal) || folded.Contains("refused", StringComparison.Ordinal) || folded.Contains("nothing taken", StringComparison.Ordinal)
            || folded.Contains("not given", StringComparison.Ordinal) || folded.Contains("nil by mouth", StringComparison.Ordinal) || folded.Contains("wouldn't take", StringComparison.Ordinal) || folded.Contains("no feed", StringComparison.Ordinal) || SameAs.SaysNotDone(folded) || folded.Trim() is "npo" or "nbm";
    }

    private Sign NewSign(BlockRow row, SignKind kind, string? value, double? number, UncertainTime at) => new()
    {
        Sources = [row.Source],
        Start = at,
        Kind = kind,
        What = SignWords.NameOf(kind),
        Value = value,
        Number = number,
        By = By(row),
    };

    // Cells of words beside the kind: amounts, details, remarks.
    private List<CellAt> TextCells(BlockRow row) =>
        [.. Of(Role.Amount).Concat(reading.Slots.Words).Where(c => c != reading.Slots.Kind).Distinct().Order().Select(c => row[c]).Where(c => !c.Cell.IsEmpty && !NotSaid.Is(c.Cell.Text.Trim()))];

    // The same, and the columns of minutes and millilitres where they hold more than one bare number.
    private List<CellAt> WordsAndNumbers(BlockRow row) =>
        [.. TextCells(row).Concat(Of(Role.Minutes).Concat(Of(Role.Millilitres)).Select(c => row[c]).Where(c => !c.Cell.IsEmpty && !MinutesReader.Read(c.Cell.Words!).TryGet(out _) && !NotSaid.Is(c.Cell.Words!) && !IsNumber(c.Cell.Words!))).DistinctBy(c => c.Column).OrderBy(c => c.Column)];

    // "-15" is a slip to be told of, not minutes in some other way of writing.
    private static bool IsNumber(string text) => double.TryParse(text, System.Globalization.NumberStyles.Float, System.Globalization.CultureInfo.InvariantCulture, out _);

    private static Technique OnlyTechnique(string text)
    {
        if (!IsOnlyTechniques(text)) return Technique.Unknown;
        var kinds = Lexicon.Find(text, out _).Select(k => k.Concept).ToHashSet();
        return kinds.Contains(Concept.Percussion) && kinds.Contains(Concept.Vibration) ? Technique.Unknown
            : kinds.Contains(Concept.Percussion) ? Technique.Percussion : kinds.Contains(Concept.Vibration) ? Technique.Vibration : Technique.Unknown;
    }

    private static bool IsOnlyTechniques(string text)
    {
        var known = Lexicon.Find(text, out var share);
        return known.Count > 0 && share >= 0.6 && !text.Any(char.IsAsciiDigit) && known.All(k => k.Concept is Concept.Percussion or Concept.Vibration or Concept.Session);
    }

    private List<int> Measures() => [.. Of(Role.Saturation).Concat(Of(Role.Pulse)).Concat(Of(Role.Oxygen)).Concat(Of(Role.Phase)).Order()];

    private IEnumerable<int> Of(Role role) => reading.Slots.Of(role);

    private string? By(BlockRow row) => row[reading.Slots.By].Cell.Words;
}
