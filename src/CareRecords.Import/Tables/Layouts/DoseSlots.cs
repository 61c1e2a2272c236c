using CareRecords.Import.Reading;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>Reads medicines that have columns of their own.</summary>
internal sealed partial class DoseSlots(BlockReading reading, RowTimesReader times, FreeWords words, SlotFacts of)
{
    /// <summary>Adds the doses of one event's columns.</summary>
    public void Read(BlockRow row, Slot slot, RowWhen when)
    {
        var medicineColumn = slot.Values.FirstOrDefault(v => reading.Block.Columns[v].Role == Role.Medicine, -1);
        var amountColumn = slot.Values.FirstOrDefault(v => reading.Block.Columns[v].Role == Role.Amount, -1);
        var heading = reading.Block.Columns[slot.Time >= 0 ? slot.Time : Math.Max(medicineColumn, 0)];
        var source = reading.SourceOf(row, slot.Time >= 0 || !reading.Block.IsAcross ? slot.Time : medicineColumn);
        if (slot.Time < 0)
        {
            if (row[medicineColumn].Cell.IsEmpty) return;
            if (reading.Cells.Several(row[medicineColumn]) is { Count: > 1 } several && (when.Start ?? of.DayOnly(row, slot, when)) is { } all)
            {
                foreach (var one in several) reading.Add(Dose(source, all, one, one.AsWritten, one.Amount, row), row[medicineColumn], row[amountColumn]);
                return;
            }

            // "salbutamol 2 puffs 06:20": its own time.
            if (Timed(row[medicineColumn], slot) is { } own)
            {
                reading.Add(Dose(source, own.At, own.Medicine, own.Medicine.AsWritten, own.Medicine.Amount, row), row[medicineColumn], row[amountColumn]);
                return;
            }

            if (row[amountColumn].Cell.Words is { } not && (SameAs.IsNo(not) || SameAs.SaysNotDone(not)))
            {
                reading.Saw(row[amountColumn]);
                reading.Saw(row[medicineColumn]);
                return;
            }

            // "G-tube feed off, 420 mL in" under "Med / feed" is no medicine.
            if (row[medicineColumn].Cell.Text is var told && KindWords.Read(told, FamilyWords.None) is { Kind: TableKind.Feeds } && !(MedicineReader.Read(told, reading.Context.Words).TryGet(out var any) && any.Generic != Medicines.Unknown) && words.Read(row[medicineColumn], null, when.Day, when.Start, keepAll: true)) return;
            if ((when.Start ?? of.DayOnly(row, slot, when)) is not { } given || reading.Cells.Medicine(row[medicineColumn]) is not { } named) return;
            reading.Add(Dose(source, given, named, row[medicineColumn].Cell.Words, row[amountColumn].Cell.Words, row), row[medicineColumn], row[amountColumn]);
            return;
        }

        var cell = row[slot.Time];
        if (cell.Cell.IsEmpty || NotSaid.Is(cell.Cell.Text.Trim())) return;
        // "Inhaler time" beside "Albuterol puffs".
        var medicine = Headed(heading) ?? (amountColumn >= 0 && reading.Block.Columns[amountColumn].Medicine is not null ? Headed(reading.Block.Columns[amountColumn]) : null);
        if (AmountAndTime.Read(cell.Cell.Text) is { } amounts)
        {
            DoseEvents(row, slot, amounts, medicine, heading, source);
            return;
        }

        if (IsAmount(cell.Cell, heading) || (heading.At is not null && cell.Cell.Text.Trim() is { Length: <= 2 } few && few.All(char.IsAsciiDigit)) || (when.Start is { IsExact: true } && reading.Slots.Time >= 0 && !RowEvents.HasOwnTime(cell.Cell) && cell.Cell.Text.Trim().All(char.IsAsciiDigit) && !IsFourFigureClock(cell.Cell.Text.Trim()) && medicine is not null))
        {
            // Beside a physio of the row the dose was some time around it; in a row of its own it was then.
            var besidePhysio = reading.Slots.Slots.Exists(s => s != slot && s.Kind == TableKind.Sessions && (!row[s.Time].Cell.IsEmpty || SessionCells.HasValues(row, s)));
            if ((BeforeSession(row, slot, heading) is { } reckonedOf ? reckonedOf : when.Start is { } beside ? besidePhysio ? Notes.TimesOfEvents.Borrowed(beside.Stated, CheckPhase.None) : beside : of.PartOrDay(slot, when)) is { } during)
                reading.Add(Dose(source, during, Medicine(medicine, heading, source), heading.MedicineWords, Amount(cell, heading), row), cell);
            return;
        }

        if (CellTimes.Read(cell.Cell) is { Outcome: not Outcome.Nothing })
        {
            if (times.On(cell, slot.Half, null) is { } at)
                reading.Add(Dose(source, at, Medicine(medicine, heading, source), heading.MedicineWords, Amount(row[amountColumn], reading.Block.Columns[Math.Max(amountColumn, 0)]) ?? medicine?.Amount, row), cell, row[amountColumn]);
            return;
        }

        if (DoseAmount.In(cell.Cell.Text) is { } alone && alone.Length >= cell.Cell.Words!.TrimEnd('.', ',').Length && (when.Start ?? of.PartOrDay(slot, when)) is { } dosed)
        {
            reading.Add(Dose(source, dosed, Medicine(medicine, heading, source), heading.MedicineWords, alone, row), cell);
            return;
        }

        if (EventCell.Read(cell.Cell.Text, p => DoseAmount.In(p) is not null) is { } events)
        {
            DoseEvents(row, slot, events, medicine, heading, source);
            return;
        }

        if (Timed(cell, slot) is { } timed)
        {
            reading.Add(Dose(source, timed.At, timed.Medicine, timed.Medicine.AsWritten, timed.Medicine.Amount, row), cell);
            return;
        }

        // "2 puffs" or a tick under a medicine's name: given, at the time of the row.
        // "N = saline neb": the key's letter, no "no".
        var isExplained = reading.Context.Words.MeaningOf(cell.Cell.Text.Trim()) is { } means && CellTerms.Read(means).Exists(t => t.Is(Sense.Medicine) || t.Is(Sense.Device));
        var tick = isExplained ? null : SmallWords.ReadYesNo(cell.Cell.Text);
        if (!isExplained && (tick == false || SameAs.SaysNotDone(cell.Cell.Text) || SameAs.IsNo(cell.Cell.Text)))
        {
            reading.Saw(cell);
            return;
        }

        // Somebody's initials: given, by them.
        if (tick is null && IsInitials(cell.Cell.Text.Trim()) && (when.Start ?? of.PartOrDay(slot, when)) is { } signed)
        {
            reading.Add(Dose(source, signed, Medicine(medicine, heading, source), heading.MedicineWords, medicine?.Amount ?? heading.DefaultAmount, row) with { By = cell.Cell.Words }, cell);
            return;
        }

        if (tick is null && words.Read(cell, heading.Heading, when.Day, when.Start, keepAll: true)) return;
        if (tick is true && when.Start is { IsExact: true } session && MinutesBefore().Match(heading.Own) is { Success: true } early)
        {
            // "Salbutamol 4 puffs, 15 min before" over ticks beside a session: when, is reckoned.
            var reckoned = UncertainTime.At(session.Stated.PlusMinutes(-int.Parse(early.Groups[1].ValueSpan, System.Globalization.CultureInfo.InvariantCulture)), TimePrecision.Reckoned);
            reading.Add(Dose(source, reckoned, Medicine(medicine, heading, source), heading.MedicineWords, medicine?.Amount, row), cell);
            return;
        }

        // "Salbutamol 2 puffs 06:30" over a tick: then, whatever else the row has a time of.
        if (((heading.At is null ? when.Start : null) ?? of.PartOrDay(slot, when)) is { } then)
            reading.Add(Dose(source, then, Medicine(medicine, heading, source), heading.MedicineWords, tick is true ? medicine?.Amount : cell.Cell.Words, row), cell);
    }

    // "2" under "salbutamol puffs, 15 min before" where the session of that part of the day has its time beside it.
    private UncertainTime? BeforeSession(BlockRow row, Slot slot, ColumnMeaning heading) =>
        MinutesBefore().Match(heading.Own) is { Success: true } early && reading.Slots.Slots.FindAll(s => s.Kind == TableKind.Sessions && s.Time >= 0 && (s.Part == slot.Part || s.Group == slot.Group) && CellTimes.Read(row[s.Time].Cell).Clock is not null) is [var session]
        && times.On(row[session.Time], session.Half, null) is { IsExact: true } start
            ? UncertainTime.At(start.Stated.PlusMinutes(-int.Parse(early.Groups[1].ValueSpan, System.Globalization.CultureInfo.InvariantCulture)), TimePrecision.Reckoned) : null;

    // "salbutamol 2 puffs at 8:50": the medicine and the time behind it; null when the cell is written another way, or its time is not settled.
    private (UncertainTime At, MedicineWritten Medicine)? Timed(CellAt cell, Slot slot) =>
        AmountAndTime.Trailing(cell.Cell.Text) is { } trailing && MedicineReader.Read(trailing.Words, reading.Context.Words) is { Outcome: Outcome.Certain, Value: { } medicine } && medicine.Generic != Medicines.Unknown
        && times.Settled(trailing.Clock.Start, slot.Half, null, cell) is { } at ? (at, medicine with { AsWritten = trailing.Words }) : null;

    [System.Text.RegularExpressions.GeneratedRegex(@"\b(\d{1,2})\s*(?:mins?|minutes?) before\b", System.Text.RegularExpressions.RegexOptions.IgnoreCase)]
    private static partial System.Text.RegularExpressions.Regex MinutesBefore();

    private void DoseEvents(BlockRow row, Slot slot, IReadOnlyList<CellEvent> events, MedicineWritten? medicine, ColumnMeaning heading, SourceLine source)
    {
        var cell = row[slot.Time];
        LocalTime? previous = null;
        // "6.50 and 5.20, 2 puffs": of each.
        if (events.Count > 1 && events.SkipLast(1).All(e => e.Words.Length == 0) && DoseAmount.In(events[^1].Words) is { } each) events = [.. events.Select(e => e with { Words = each })];
        foreach (var item in reading.Halves.IsTwentyFour || slot.Half != HalfOfDay.Unknown ? events : ClockHabit.InOrder(events))
        {
            if (item.Impossible is { } why) reading.Cells.Refuse(cell.Source, why, "Correct the time.");
            else if (times.Settled(item.Clock!.Start, slot.Half, previous, cell) is { } at)
            {
                previous = at.Stated.TimeOfDay;
                var own = item.Words.Length > 0 && MedicineReader.Read(item.Words, reading.Context.Words) is { Outcome: Outcome.Certain, Value: { } inCell } && inCell.Generic != Medicines.Unknown ? inCell : null;
                var said = item.Words.Trim(' ', '(', ')');
                // "7.10 orange puffer" under the blue one is another medicine, of which the colour alone is known.
                var other = own is null && said.Length > 0 && !said.Any(char.IsAsciiDigit) && Lexicon.Find(said, out _).Any(k => k.Concept is Concept.Inhaler or Concept.Medicine);
                reading.Add(Dose(source, at, own ?? (other ? Medicine(null, new ColumnMeaning(said, Role.Dose) { MedicineWords = said }, source) : Medicine(medicine, heading, source)), own?.AsWritten ?? (other ? said : heading.MedicineWords),
                    own?.Amount ?? (said.Any(char.IsAsciiDigit) && own is null ? AmountWords(DoseAmount.In(said) ?? said, heading) : other ? null : medicine?.Amount), row), cell);
            }
        }
    }

    // "0650" under a puffer is when it was given; nobody gives 650 puffs.
    private static bool IsFourFigureClock(string text) => text.Length == 4 && string.CompareOrdinal(text, "2400") < 0 && text[2] < '6';

    private static bool IsInitials(string text) =>
        text.Length is > 0 and <= 5 && text.All(c => char.IsLetter(c) || c is '.' or '/') && text.Count(char.IsLetter) is > 1 and <= 4 && (text.All(c => !char.IsLower(c)) || char.IsUpper(text[0]) && text.Length <= 3) && Lexicon.Find(text, out _).Count == 0 && !SameAs.IsNo(text);

    // A bare number under "puffs" is how many, not when.
    private static bool IsAmount(Cell cell, ColumnMeaning heading) =>
        IsOfPuffs(heading) && cell.Text.Trim() is { Length: <= 2 } text && text.All(char.IsAsciiDigit);

    private static bool IsOfPuffs(ColumnMeaning heading) => Lexicon.Find(heading.Heading, out _).Any(k => k.Concept == Concept.Puffs);

    private static string AmountWords(string words, ColumnMeaning heading) => words.All(char.IsAsciiDigit) && IsOfPuffs(heading) ? words + " puffs" : words;

    private MedicineWritten? Headed(ColumnMeaning heading)
    {
        if (heading.Medicine is { } generic) return new MedicineWritten(generic, heading.MedicineWords ?? heading.Heading, null, null);
        foreach (var word in new[] { heading.MedicineWords, heading.MedicineWords?.Split(' ')[0], MedicineName.In(heading.Heading) })
            if (word is not null && reading.Context.Words.MeaningOf(word) is { } means && MedicineReader.Read(means, FamilyWords.None).TryGet(out var read))
                return read;
        return heading.MedicineWords is { } text && MedicineReader.Read(text, reading.Context.Words).TryGet(out var found) ? found : null;
    }

    private MedicineWritten Medicine(MedicineWritten? known, ColumnMeaning heading, SourceLine source)
    {
        if (known is not null) return known;
        var text = heading.MedicineWords ?? MedicineName.In(heading.Heading);
        var name = "what-is:" + text.ToLowerInvariant();
        reading.Into.Questions.TryAdd(name, new Notes.AskedQuestion($"Which medicine is '{text}'?", []));
        reading.Cells.Ask(source, $"'{text}' names no medicine known here.", $"Say which medicine it is in a words table: {text}, its generic name.", name);
        return new MedicineWritten(Medicines.Unknown, text, null, null);
    }

    private static string? Amount(CellAt cell, ColumnMeaning column) =>
        cell.Cell.Words is not { } text || NotSaid.Is(text) ? null
        : text.All(c => char.IsAsciiDigit(c) || c is '.' or ',') && Lexicon.Find(column.Heading, out _).Any(k => k.Concept == Concept.Puffs) ? text + " puffs"
        : text.All(c => char.IsAsciiDigit(c) || c is '.' or ',') && UnitIn(column.Heading) is { } unit ? $"{text} {unit}"
        : text;

    // "x2", "2p" of an inhaler.
    private static string? InPuffs(string? amount, string medicine) => amount is not null && Medicines.ClassOf(medicine) is MedicineClass.Bronchodilator or MedicineClass.InhaledSteroid && CountOfPuffs().Match(amount.Trim()) is { Success: true } count
        ? (count.Groups[1].Success ? count.Groups[1] : count.Groups[2]).Value is var number && number == "1" ? "1 puff" : number + " puffs" : amount;

    [System.Text.RegularExpressions.GeneratedRegex(@"^(?:x ?(\d{1,2})|(\d{1,2}) ?(?:p|x|pf))$", System.Text.RegularExpressions.RegexOptions.IgnoreCase)]
    private static partial System.Text.RegularExpressions.Regex CountOfPuffs();

    // "Paracetamol ml" over 5.
    private static string? UnitIn(string heading) => Lexicon.Split(heading).FirstOrDefault(w => w is "ml" or "mls" or "mg" or "mcg" or "drops");

    // "Albuterol is 4 puffs unless noted".
    private string? OfKey(string? asWritten) => asWritten is not null && (reading.Context.Words.MeaningOf(asWritten) ?? reading.Context.Words.MeaningOf(asWritten[(asWritten.LastIndexOf(' ') + 1)..])) is { } means ? CodeWords.Clauses(means).Select(DoseAmount.In).FirstOrDefault(a => a is not null) : null;

    private Dose Dose(SourceLine source, UncertainTime at, MedicineWritten medicine, string? asWritten, string? amount, BlockRow row) => new()
    {
        Sources = [source],
        Start = at,
        Medicine = medicine.Generic,
        MedicineAsWritten = asWritten ?? medicine.AsWritten,
        Amount = InPuffs(amount, medicine.Generic) ?? medicine.Amount ?? reading.Block.Columns.FirstOrDefault(c => c.DefaultAmount is not null && (c.Medicine == medicine.Generic || (asWritten is not null && c.MedicineWords == asWritten)))?.DefaultAmount ?? OfKey(asWritten),
        Route = medicine.Route,
        By = row[reading.Slots.By].Cell.Words,
    };
}
