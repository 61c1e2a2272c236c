using CareRecords.Import.Accounting;
using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Tables.Layouts;

/// <content>Rows of sessions.</content>
internal sealed partial class KindRows
{
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
            Remarks(row, missed, at, when);
            return;
        }

        // "done twice at Nana's, forgot to write the times": how many, and not when.
        if (when.Start is null && !withMinutes && cells.Exists(c => SeveralTimes().IsMatch(c.Cell.Text)))
        {
            reading.Cells.Ask(row.Source, "Several sessions without their times.", "Write each session in a row of its own, with its time.");
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

        var areas = OfPlace(row, slot, cells, what);
        double? eachShaken = null;
        var left = new List<CellAt>();
        foreach (var cell in cells)
            if (Areas(cell, what, row, at) is { } read) areas.AddRange(read);
            else left.Add(cell);
        // "perc as Monday" as the kind itself.
        if (areas.Count == 0 && AfterTechnique(row[reading.Slots.Kind].Cell.Text) is { } pointing && SameAs.PointsBack(pointing) && reading.Same(pointing, at.Stated.TimeOfDay) is { } asThen) areas.AddRange(asThen.Areas);
        areas = WithMinutes(OfOneNumber(areas, SaysEach(cells)));
        if (Of(Role.Technique).Select(c => row[c]).Where(c => !c.Cell.IsEmpty).Select(c => OnlyTechnique(c.Cell.Text)).FirstOrDefault() is not Technique.Unknown and var named) areas = areas.ConvertAll(a => a.Technique == Technique.Unknown ? a with { Technique = named } : a);
        // "6 | min each side": the number and what it is of in two cells.
        var values = cells.Concat(Of(Role.Minutes).Concat(Of(Role.Amount)).Select(c => row[c]).Where(c => !c.Cell.IsEmpty && !cells.Exists(x => x.Column == c.Column))).ToList();
        if (areas.Count > 0 && areas.TrueForAll(a => a.Minutes is null) && values.Exists(c => UnitOfEach().IsMatch(c.Cell.Text)) && values.Find(c => c.Cell.Text.Trim().All(t => char.IsAsciiDigit(t) || t is '.' or ',')) is { IsNone: false } number && MinutesReader.Read(number.Cell.Text).TryGet(out var ofEach))
        {
            areas = areas.ConvertAll(a => a with { Minutes = ofEach.Minutes, MinutesHigh = ofEach.High });
            reading.Use(number);
        }

        // "left base | 3 | min": the part and its minutes in two cells.
        if (areas.Count > 0 && areas.TrueForAll(a => a.Minutes is null) && InAll(values) is { } ofParts)
            areas = [.. areas.Select(a => a with { Minutes = SaysEach(cells) ? ofParts : ofParts / areas.Count })];
        // "Minutes of percussion on each area" beside "Left lower, right lower".
        foreach (var column in Of(Role.Minutes).Where(c => SessionCells.SaysEachPlace(reading.Block.Columns[c].Own) && !cells.Exists(w => w.Column == c && reading.IsUsed(w)) && areas.Exists(a => a.Minutes is null && a.Area != ChestArea.Unknown)))
        {
            if (MinutesReader.Read(row[column].Cell.Text).TryGet(out var each))
            {
                var technique1 = KindWords.Read(reading.Block.Columns[column].Own, FamilyWords.None)?.Technique ?? Technique.Unknown;
                areas = [.. areas.Select(a => a.Minutes is null ? a with { Minutes = each.Minutes, MinutesHigh = each.High, Technique = a.Technique == Technique.Unknown ? technique1 : a.Technique } : a)];
                reading.Use(row[column]);
                slot.Values.Remove(column);
            }
        }

        // "PV: percussion, followed by vibrations, 1 minute on each area percussed".
        if (VibrationOnEach().Match(reading.Context.Words.MeaningOf(row[reading.Slots.Kind].Cell.Text.Trim()) ?? string.Join(". ", cells.Select(c => c.Cell.Words))) is { Success: true } shaken && !areas.Exists(a => a.Technique == Technique.Vibration && a.Area != ChestArea.Unknown)
            && MinutesReader.Read(shaken.Groups[1].Value).TryGet(out var onEach))
        {
            areas.RemoveAll(a => a is { Technique: Technique.Vibration, Area: ChestArea.Unknown });
            eachShaken = onEach.Minutes;
        }

        // "Percussion LLL + RLL | 3 min each": the parts stand in the kind.
        if (areas.TrueForAll(a => a is { Side: Side.Unknown, Area: ChestArea.Unknown }) && areas.Count <= 1 && AreaNames.In(row[reading.Slots.Kind].Cell.Text) is { Count: > 0 } parts && parts.All(p => p.Side != Side.Unknown))
        {
            var each = areas.Count == 1 ? areas[0].Minutes : null;
            areas = [.. parts.Select(p => new AreaMinutes(p.Side, p.Area, p.Technique == Technique.Unknown ? what.Technique : p.Technique, each))];
        }

        // "Percussion both lower | 3 | min each side"
        if (areas.Count > 1 && areas.TrueForAll(a => a.Area == ChestArea.Unknown && a.Side != Side.Unknown) && AreaNames.In(row[reading.Slots.Kind].Cell.Text) is { Count: > 0 } ofKind && ofKind.All(p => p.Area != ChestArea.Unknown && (p.Side == Side.Unknown || areas.Exists(a => a.Side == p.Side))))
            areas = [.. ofKind.SelectMany(p => p.Side == Side.Unknown ? areas.Select(a => a with { Area = p.Area }) : [areas.Find(a => a.Side == p.Side)! with { Area = p.Area }])];
        // "physio L3 R3" as the kind itself.
        if (areas.Count == 0 && row[reading.Slots.Kind].Cell.Text.Any(char.IsAsciiDigit) && !slot.Values.Exists(v => !row[v].Cell.IsEmpty && reading.Block.Columns[v].Role == Role.Area) && words.Areas(row[reading.Slots.Kind], reading.Day) is { } inKind) areas.AddRange(Named(inKind, what));
        if (eachShaken is null && Continued(row, what, when, at, areas, cells)) return;
        if (sessions.Add(row, slot, at, when.End, row.Source, areas) is { } added)
        {
            var full = added;
            if (added is { Areas.Count: 0, MinutesWritten: null } && InAll(cells) is { } total) full = added with { MinutesWritten = total };
            if (eachShaken is { } shaking) full = full with { Areas = [.. full.Areas, .. full.Areas.Where(a => a.Area != ChestArea.Unknown).Select(a => a with { Technique = Technique.Vibration, Minutes = shaking, MinutesHigh = null }).Distinct()] };
            if (full != added) reading.Replace(reading.Into.Entries.LastIndexOf(added), added, full);
        }

        cells.ForEach(reading.Saw);
        foreach (var cell in left) words.Read(cell, null, when.Day, at, keepAll: false);
    }

    private static bool SaysEach(List<CellAt> cells) => cells.Exists(c => Lexicon.Split(c.Cell.Text).Any(w => w is "each" or "ea" or "per"));

    // "lower | 3 | 4" under "place | left min | right min": the place in one cell, the minutes of each side beside it.
    private List<AreaMinutes> OfPlace(BlockRow row, Slot slot, List<CellAt> cells, WhatHappened what)
    {
        var place = row.Cells.FirstOrDefault(c => c.Column < reading.Block.Columns.Count && reading.Block.Columns[c.Column].Role is Role.Side or Role.Detail or Role.Unknown or Role.Note && c.Cell.Kind == CellKind.Text && Lexicon.Split(c.Cell.Text).Count == 1 && AreaNames.In(c.Cell.Text) is [{ Side: Side.Unknown, Area: not ChestArea.Unknown }]);
        var sides = slot.Values.Where(v => reading.Block.Columns[v] is { Role: Role.Area, Areas: [{ Side: not Side.Unknown, Area: ChestArea.Unknown }] } && !row[v].Cell.IsEmpty).ToList();
        if (place.IsNone || sides.Count == 0) return [];
        var area = AreaNames.In(place.Cell.Text)[0].Area;
        var areas = new List<AreaMinutes>();
        foreach (var side in sides)
            if (MinutesReader.Read(row[side].Cell.Text).TryGet(out var read)) areas.Add(new AreaMinutes(reading.Block.Columns[side].Areas[0].Side, area, what.Technique, read.Minutes, read.High));
        if (areas.Count != sides.Count) return [];
        foreach (var side in sides) reading.Use(row[side]);
        slot.Values.RemoveAll(sides.Contains);
        reading.Saw(place);
        cells.RemoveAll(c => c.Column == place.Column);
        return areas;
    }

    // "Rt 4/2, Lt 4/2" of "Rt 4/2, Lt 4/2, vibration 1 each side".
    private static string Head(string text)
    {
        var pieces = text.Split(',');
        var count = pieces.TakeWhile(p => SideNumbers.Is(p)).Count();
        return string.Join(',', pieces.Take(count));
    }

    [System.Text.RegularExpressions.GeneratedRegex(@"\b(?:vib\w*|shak\w*)\W{0,3}(\d+(?:[.,]\d+)?\s*(?:mins?|minutes?)?)\s*(?:on |to |for |at )?(?:each|every|all)\s+(?:area|part|place|spot|zone|lobe|bit|4|four)", System.Text.RegularExpressions.RegexOptions.IgnoreCase)]
    private static partial System.Text.RegularExpressions.Regex VibrationOnEach();

    [System.Text.RegularExpressions.GeneratedRegex(@"^\s*(?:mins?|minutes?)\s+(?:each|per|a|every)\s+(?:side|area|place|spot)\s*$", System.Text.RegularExpressions.RegexOptions.IgnoreCase)]
    private static partial System.Text.RegularExpressions.Regex UnitOfEach();

    [System.Text.RegularExpressions.GeneratedRegex(@"\b(?:twice|two times|three times|both times|[2-5] ?x|x ?[2-5]|[2-5] times)\b", System.Text.RegularExpressions.RegexOptions.IgnoreCase)]
    private static partial System.Text.RegularExpressions.Regex SeveralTimes();

    // "clapping, same as morning", "perc as Monday": what stands behind the technique; null for other words.
    private static string? AfterTechnique(string text)
    {
        var cut = text.IndexOfAny([' ', ',']);
        return cut > 0 && KindWords.Read(text[..cut], FamilyWords.None) is { Kind: TableKind.Sessions } ? text[cut..].Trim(' ', ',') : null;
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

    // "both | lower | 3 each": the places in one cell and what is of each of them, or of the only one, in another; "6" beside two places may be of both together.
    private static List<AreaMinutes> OfOneNumber(List<AreaMinutes> areas, bool ofEach)
    {
        var places = areas.FindAll(a => a is { Minutes: null, Area: not ChestArea.Unknown });
        if (places.Count == 0 || places.Count > 1 && !ofEach || areas.FindAll(a => a.Minutes is not null) is not [{ Side: Side.Unknown, Area: ChestArea.Unknown } number] || places.Count + 1 != areas.Count) return areas;
        return places.ConvertAll(a => a with { Minutes = number.Minutes, MinutesHigh = number.MinutesHigh, Technique = a.Technique == Technique.Unknown ? number.Technique : a.Technique });
    }

    // "7:00 | both | lower | 3", "7:00 | both | upper | 2": rows of one time that name other places, or name them with another technique, tell one session; so does a row
    // without a time of its own below it.
    private bool Continued(BlockRow row, WhatHappened what, RowWhen when, UncertainTime at, List<AreaMinutes> areas, List<CellAt> cells)
    {
        if (areas.Count == 0 || !areas.TrueForAll(a => a.Area != ChestArea.Unknown) || when.End is not null && when.End.Stated != reading.LastSession?.End?.Stated || reading.LastSession is not { Areas.Count: > 0 } last || reading.Into.Entries.LastIndexOf(last) is not (>= 0 and var place)) return false;
        var untimed = when.Start is null && reading.Slots.Time >= 0 && row[reading.Slots.Time].Cell.IsEmpty && at.Stated.Date == last.Start!.Stated.Date && SourceLines.NumberOf(last.Sources[^1]) + 1 == SourceLines.NumberOf(row.Source);
        if (!untimed && !(when.Start is { IsExact: true } && last.Start is { IsExact: true } && last.Start.Stated == at.Stated) || last.By is { } one && By(row) is { } other && one != other) return false;
        if (what.Technique != Technique.Unknown) areas = areas.ConvertAll(a => a.Technique == Technique.Unknown ? a with { Technique = what.Technique } : a);
        // What else such a row says of its session would be lost.
        if (Of(Role.Colour).Concat(Of(Role.Stopped)).Concat(Of(Role.Vomit)).Concat(last.Secretions is null ? [] : Of(Role.Secretions)).Concat(last.Cough is null ? [] : Of(Role.Cough)).Any(c => !row[c].Cell.IsEmpty)) return false;
        if (areas.Exists(a => last.Areas.Any(l => l.Side == a.Side && l.Area == a.Area && l.Technique == a.Technique)) || last.Areas.Any(l => l.Area == ChestArea.Unknown)) return false;
        reading.Replace(place, last, last with
        {
            Areas = [.. last.Areas, .. areas],
            Sources = [.. last.Sources, row.Source],
            Secretions = last.Secretions ?? Of(Role.Secretions).Select(c => row[c].Cell.Words).FirstOrDefault(t => t is not null),
            Cough = last.Cough ?? Of(Role.Cough).Select(c => row[c].Cell.Words).FirstOrDefault(t => t is not null),
        });
        reading.Joined = true;
        reading.Use(row[reading.Slots.Kind]);
        cells.ForEach(reading.Use);
        Remarks(row, row[reading.Slots.Kind], last.Start!, when);
        return true;
    }

    // Minutes of a cell: numbers in a known order, words that name the parts, or "same as morning". Null when the cell is about something else.
    private IReadOnlyList<AreaMinutes>? Areas(CellAt cell, WhatHappened what, BlockRow row, UncertainTime when)
    {
        var text = PhaseRemarks.Without(cell.Cell.Words!);
        if (what.Technique == Technique.Unknown && SessionCells.SaysClapped(reading.Block.Columns[cell.Column].Heading)) what = what with { Technique = Technique.Percussion };
        if (SameAs.PointsBack(text) && text.IndexOf(',', StringComparison.Ordinal) is > 0 and var comma) words.Read(cell, null, reading.Day, when, keepAll: false, text[(comma + 1)..].Trim());
        if (SameAs.PointsBack(text)) return reading.Same(text, reading.Anchor?.Stated.TimeOfDay)?.Areas ?? [];
        // "clapping, same as morning"
        if (AfterTechnique(text) is { } rest1 && SameAs.PointsBack(rest1) && reading.Same(rest1, reading.Anchor?.Stated.TimeOfDay) is { } asBefore) return asBefore.Areas;
        if (SideNumbers.Is(Head(text)))
        {
            var explained = (reading.Context.Words.MeaningOf(row[reading.Slots.Kind].Cell.Text) is { } meant ? new[] { meant } : []).Concat(reading.Block.Titles).Concat(reading.Block.Columns.Select(c => c.Heading)).ToList();
            if (!SideNumbers.IsExplained(explained)) reading.Cells.Ask(cell.Source, $"'{text}' does not say which parts the two numbers of a side are for.", "Say the order in a words table, such as lower / upper.", "areas-of-numbers:" + cell.Place.File);
            var rest = text.Length > Head(text).Length ? AreasReader.Read(text[Head(text).Length..].Trim(' ', ',', '+'), reading.Context.Words) : default;
            return Named([.. SideNumbers.Read(Head(text), explained)!, .. rest.TryGet(out var beside) ? beside.Areas : []], what);
        }

        var order = Order(what);
        // "3+3+2+2" are the numbers; "3/3/2/2 + vibs 1" has more behind its plus.
        var plus = text.All(c => char.IsAsciiDigit(c) || c is '+' or '.' or ' ' or '½') ? -1 : text.IndexOf('+', StringComparison.Ordinal);
        var head = plus > 0 ? text[..plus].Trim() : text.TrimStart('+', ' ');
        void Refuse(string why) => reading.Cells.Refuse(cell.Source, why, "Correct the minutes.");
        if (AreaNumbers.Read(head, order, Refuse) is { } numbers)
        {
            if (plus < 0) return Named(numbers, what);
            return AreasReader.Read(text[(plus + 1)..].Trim(), reading.Context.Words).TryGet(out var more) ? [.. numbers, .. more.Areas] : numbers;
        }

        var read = AreasReader.Read(text.TrimStart('=', '+', ' '), reading.Context.Words);
        if (read.TryGet(out var written)) return Named(written.Areas, what);
        // A remark with a clock of its own is of another time.
        if (read.Outcome != Outcome.Doubtful && FreeWords.HasClock(text)) return null;
        if (read.Outcome != Outcome.Doubtful || read.Value is null)
        {
            if (words.Areas(cell, reading.Day) is { } told) return Named(told, what);
            if (words.AreasAmongOthers(cell, reading.Day) is not { } among) return null;
            words.Read(cell, null, reading.Day, when, keepAll: false);
            return Named(among, what);
        }

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
}
