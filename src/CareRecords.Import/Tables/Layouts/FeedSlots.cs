using CareRecords.Import.Reading;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>Reads feeds that have columns of their own.</summary>
internal sealed partial class FeedSlots(BlockReading reading, RowTimesReader times, FreeWords words, SlotFacts of)
{
    private readonly RunningFeeds _running = new(reading);

    /// <summary>Adds the feeds of one event's columns.</summary>
    public void Read(BlockRow row, Slot slot, RowWhen when)
    {
        var (ml, route) = (slot.Values.FirstOrDefault(v => reading.Block.Columns[v].Role is Role.Millilitres or Role.Amount, -1), slot.Values.FirstOrDefault(v => reading.Block.Columns[v].Role == Role.Route, -1));
        if (slot is { Time: < 0, End: < 0, Values: [var only] } && reading.Block.Columns[only].Role == Role.Rate && _running.Read(row, only, when.Start)) return;
        if (slot.Time < 0 && slot.End < 0)
        {
            if (!SessionCells.HasValues(row, slot) && (of.Others(row, slot) || (when.Start is null && when.End is null))) return;
            if (ml >= 0 && row[ml].Cell.Kind == CellKind.Text && !row[ml].Cell.IsEmpty && (slot.Part is null ? when.Start : of.PartOrDayOf(slot)) is { } then && !NotSaid.Is(row[ml].Cell.Text.Trim()) && VolumeReader.Read(row[ml].Cell.Text).Outcome == Outcome.Nothing)
            {
                InAmount(row, slot, ml, when, then, route);
                return;
            }

            // "pump" and a remark "stopped": it ended then.
            if (slot.Part is null && when.End is null && when.Start is { } stopped && reading.Slots.Words.Any(w => OnOff.Ends(row[w].Cell.Text) == true))
            {
                AddFeed(row, slot, null, stopped, ml, route, reading.Block.AreHours ? ml : null);
                return;
            }

            if (slot.Part is not null) AddFeed(row, slot, row[ml].Cell.IsEmpty ? null : of.PartOrDayOf(slot), null, ml, route, ml);
            else AddFeed(row, slot, when.Start, when.End, ml, route, reading.Block.AreHours ? ml : null);
            return;
        }

        if (when.Start is { } atRow && reading.Slots.Time >= 0 && slot.End < 0 && !row[slot.Time].Cell.IsEmpty && !RowEvents.HasOwnTime(row[slot.Time].Cell))
        {
            AtRow(row, slot, when, atRow, route);
            return;
        }

        var cell = row[slot.Time];
        var endCell = row[slot.End];
        // A tick under "noon feed 150 ml by tube" or "6am pump off": at that hour.
        if ((slot.Time >= 0) != (slot.End >= 0) && (slot.Time >= 0 ? cell : endCell).Cell.Text.Trim().Length <= LongestTick && SmallWords.ReadYesNo((slot.Time >= 0 ? cell : endCell).Cell.Text) is true && of.Due(slot) is { } due)
        {
            var before = reading.Into.Entries.Count;
            if (slot.Time >= 0) AddFeed(row, slot, due, null, -1, route, slot.Time);
            else AddFeed(row, slot, null, due, -1, route, slot.End);
            WithAmountOfHeading(before, slot);
            return;
        }

        // "✓ 100ml" under "Milk by tube 3.30pm (150ml)": less than the heading sets.
        if (slot.Time >= 0 && slot.End < 0 && cell.Cell.Text.Trim() is ['✓' or '✔' or '√' or '☑' or '✅', .. var beside] && VolumeReader.Read(beside.Trim(' ', ',', '-', '(', ')')).TryGet(out var taken) && of.Due(slot) is { } atHour)
        {
            AddFeed(row, slot, atHour, null, -1, route, slot.Time);
            if (reading.Into.Entries[^1] is Feed { Millilitres: null } given) reading.Into.Entries[^1] = given with { Millilitres = taken };
            return;
        }

        // "150" under "4pm tube feed (ml)": how much, at the time of the heading.
        if (slot.Time >= 0 && slot.End < 0 && reading.Block.Columns[slot.Time].At is not null && cell.Cell.Words is { Length: 2 or 3 } bare && bare.All(char.IsAsciiDigit))
        {
            AddFeed(row, slot, of.PartOrDayOf(slot), null, slot.Time, route, slot.Time);
            return;
        }

        // A tick beside "feed off": it ended at the time of the row.
        if (slot.Time < 0 && when.Start is { } ended && reading.Slots.Time >= 0 && SmallWords.ReadYesNo(endCell.Cell.Text) is { } off)
        {
            if (off) reading.Add(new Feed { Sources = [reading.SourceOf(row, slot.End)], End = ended, Route = reading.Block.Columns[slot.End].Route }, endCell);
            return;
        }

        if (slot.Time >= 0 && !cell.Cell.IsEmpty && CellTimes.Read(cell.Cell).Clock is null && CellTimes.Read(cell.Cell).Outcome == Outcome.Nothing)
        {
            FeedWords(row, slot, cell, slot.Time, when);
            return;
        }

        if (slot.Time < 0 && !endCell.Cell.IsEmpty && CellTimes.Read(endCell.Cell).Clock is null && CellTimes.Read(endCell.Cell).Outcome == Outcome.Nothing)
        {
            FeedWords(row, slot, endCell, slot.End, when);
            return;
        }

        if (slot.StartsWithRow && when.IsBad) return;
        var start = slot.Time >= 0 ? times.On(cell, slot.Half, null, mayStepBack: true) : slot.StartsWithRow ? when.Start : null;
        var end = slot.End < 0 ? null : start is null ? times.On(endCell, slot.Half, null, mayStepBack: true) : times.EndAfter(start, endCell, RowTimesReader.MostHours(slot.Kind));
        if (start is not null && end is null && CellTimes.Read(cell.Cell).Clock?.End is { } to) end = RowTimesReader.After(start, to, RowTimesReader.MostHours(slot.Kind));
        if (start is null && end is null && !SessionCells.HasValues(row, slot)) return;
        var count = reading.Into.Entries.Count;
        AddFeed(row, slot, start, end, ml, route, slot.Time >= 0 && start is not null ? slot.Time : slot.End);
        // "12:30" under "tube feed 150 ml, start".
        if (slot.Time >= 0 && reading.Block.Columns[slot.Time].Role == Role.FeedStart) WithAmountOfHeading(count, slot);
    }

    // The amount that the heading sets, where the cell tells none.
    private void WithAmountOfHeading(int before, Slot slot)
    {
        if (reading.Into.Entries.Count > before && reading.Into.Entries[^1] is Feed { Millilitres: null, Start: not null } feed && Amount().Match(reading.Block.Columns[slot.Time].Own) is { Success: true } amount && VolumeReader.Read(amount.Value).TryGet(out var set))
            reading.Into.Entries[^1] = feed with { Millilitres = set };
    }

    [System.Text.RegularExpressions.GeneratedRegex(@"\b\d{2,3}\s*(?:ml|mls|cc|oz)\b", System.Text.RegularExpressions.RegexOptions.IgnoreCase)]
    private static partial System.Text.RegularExpressions.Regex Amount();

    // "x threw up" is no tick.
    private const int LongestTick = 4;

    // "off", "off 0610" or "150 pump" where the amount stands.
    private void InAmount(BlockRow row, Slot slot, int ml, RowWhen when, UncertainTime then, int route)
    {
        var text = row[ml].Cell.Text;
        var refused = SameAs.IsNo(text) || SameAs.SaysNotDone(text) || SmallWords.ReadYesNo(text) == false;
        if (refused) reading.Saw(row[ml]);
        else if (OnOff.Ends(text) is { } ends)
            reading.Add(new Feed { Sources = [reading.SourceOf(row, ml)], Start = ends ? null : then, End = ends ? then : null, Route = Route(row[route].Cell.Words, reading.Block.Columns[ml].Route) }, row[ml], row[route]);
        else if (FeedAmount(text.Trim()) is { } amount)
            reading.Add(new Feed { Sources = [reading.SourceOf(row, ml)], Start = then, Millilitres = amount.Ml, Route = amount.Route != FeedRoute.Unknown ? amount.Route : Route(row[route].Cell.Words, reading.Block.Columns[ml].Route) }, row[ml], row[route]);
        else FeedWords(row, slot, row[ml], ml, when, then);
    }

    private FeedRoute Route(string? how, FeedRoute headed)
    {
        var said = how is null ? null : SmallWords.ReadRoute(how) ?? KindWords.Read(how, FamilyWords.None)?.Route;
        return said is { } route && route != FeedRoute.Unknown ? route : headed != FeedRoute.Unknown ? headed : reading.TitleRoute;
    }

    // The row has the time: the cell says how much, how, or that it was stopped.
    private void AtRow(BlockRow row, Slot slot, RowWhen when, UncertainTime at, int route)
    {
        var cell = row[slot.Time];
        var column = reading.Block.Columns[slot.Time];
        if (NotSaid.Is(cell.Cell.Text.Trim()) || SmallWords.ReadYesNo(cell.Cell.Text) == false) return;
        // "Feed pump running? yes": it was on, and began at another time.
        if (SmallWords.ReadYesNo(cell.Cell.Text) == true && reading.Block.Columns[slot.Time].Own.Contains("running", StringComparison.OrdinalIgnoreCase)) { reading.Saw(cell); return; }
        var ends = OnOff.Ends(cell.Cell.Text);
        var how = SmallWords.ReadRoute(cell.Cell.Text) ?? (row[route].Cell.Words is { } words1 ? SmallWords.ReadRoute(words1) : null);
        // "140 bolus": a bare number beside the row's own time is no time.
        if (ends is null && cell.Cell.Text.Contains(' ') && FeedAmount(cell.Cell.Text.Trim()) is { Ml: { } given, Route: not FeedRoute.Unknown and var by })
        {
            reading.Add(new Feed { Sources = [reading.SourceOf(row, slot.Time)], Start = at, Millilitres = given, Route = by, By = row[reading.Slots.By].Cell.Words }, cell);
            return;
        }

        if (ends is null && SmallWords.ReadYesNo(cell.Cell.Text) is null && how is null && !VolumeReader.Read(cell.Cell.Text).TryGet(out _))
        {
            FeedWords(row, slot, cell, slot.Time, when, at);
            return;
        }

        reading.Add(new Feed
        {
            Sources = [reading.SourceOf(row, slot.Time)],
            Start = ends == true ? null : at,
            End = ends == true ? at : null,
            Millilitres = ends is null && VolumeReader.Read(cell.Cell.Text).TryGet(out _) ? reading.Millilitres(cell, column) : null,
            Route = how ?? column.Route,
            By = row[reading.Slots.By].Cell.Words,
        }, cell, row[route]);
    }

    private void AddFeed(BlockRow row, Slot slot, UncertainTime? start, UncertainTime? end, int ml, int route, int? at)
    {
        var source = reading.SourceOf(row, at ?? -1);
        var beginning = start ?? (end is null && !row[ml].Cell.IsEmpty ? of.PartOrDayOf(slot) : null);
        if (start is null && end is null && beginning is not null) reading.Cells.Ask(source, "No time is written for when this feed started or ended.", "Write the time in the row.");
        if (beginning is null && end is null) return;
        if (beginning is not null && end is not null && end.Latest < beginning.Earliest)
        {
            reading.Cells.Refuse(source, "It ends before it starts.", "Correct the start or the end.");
            return;
        }

        var how = row[route].Cell.Words;
        // "g-tube, threw up at 12:10"
        if (how is not null && how.IndexOf(',', StringComparison.Ordinal) is > 0 and var told && words.Read(row[route], null, reading.Day, beginning ?? end, keepAll: false, how[(told + 1)..].Trim())) how = how[..told];
        var rate = slot.Values.FirstOrDefault(v => reading.Block.Columns[v].Role == Role.Rate, -1);
        var headed = new[] { slot.Time, slot.End, ml }.Where(c => c >= 0).Select(c => reading.Block.Columns[c].Route).FirstOrDefault(r => r != FeedRoute.Unknown);
        reading.Add(new Feed
        {
            Sources = [source],
            Start = beginning,
            End = end,
            Millilitres = ml < 0 ? null : reading.Millilitres(row[ml], reading.Block.Columns[ml]),
            MillilitresPerHour = rate >= 0 && row[rate].Cell.Words is { } ran && RateReader.Read(ran).TryGet(out var perHour) ? perHour : null,
            Route = Route(how, headed),
            By = row[reading.Slots.By].Cell.Words,
        }, [row[ml], row[route], row[at ?? -1], row[slot.End], row[rate]]);
    }

    private void FeedWords(BlockRow row, Slot slot, CellAt cell, int column, RowWhen when, UncertainTime? beside = null)
    {
        if (EventCell.Read(cell.Cell.Text, IsAmount) is { } events && events.All(e => FeedAmount(WithoutRemark(e.Words)) is not null))
        {
            LocalTime? previous = null;
            foreach (var item in reading.Halves.IsTwentyFour || slot.Half != HalfOfDay.Unknown ? events : ClockHabit.InOrder(events))
            {
                if (item.Impossible is { } why)
                {
                    reading.Cells.Refuse(cell.Source, why, "Correct the time.");
                    continue;
                }

                if (times.Settled(item.Clock!.Start, slot.Half, previous, cell) is not { } at) continue;
                previous = at.Stated.TimeOfDay;
                var ends = item.Ends || reading.Block.Columns[column].Role == Role.FeedEnd;
                reading.Add(new Feed
                {
                    Sources = [reading.SourceOf(row, column)],
                    Start = ends ? null : at,
                    End = ends ? at : item.Clock.End is { } to ? RowTimesReader.After(at, to, RowTimesReader.MostHours(slot.Kind)) : null,
                    Millilitres = FeedAmount(WithoutRemark(item.Words))!.Value.Ml,
                    Route = FeedAmount(WithoutRemark(item.Words))!.Value.Route is var said && said != FeedRoute.Unknown ? said : Route(null, reading.Block.Columns[column].Route),
                }, cell);
                var open = item.Words.IndexOf('(', StringComparison.Ordinal);
                if (open >= 0) words.Read(cell, null, when.Day, at, keepAll: false, item.Words[open..].Trim(' ', '(', ')'));
            }

            return;
        }

        if (!words.Read(cell, reading.Block.Columns[column].Heading, when.Day, beside, keepAll: true) && cell.Cell.Text.Any(char.IsAsciiDigit))
            reading.Cells.Ask(cell.Source, $"'{cell.Cell.Words}' could not be read as feeds.", "Write each as a time and millilitres, such as 12:00-12:30 150 ml.");
    }

    // "12.30 100 (chucked it up)", "120, slow".
    private static string WithoutRemark(string text)
    {
        if (text.IndexOf('(', StringComparison.Ordinal) is >= 0 and var open) text = text[..open].Trim();
        var comma = text.IndexOf(", ", StringComparison.Ordinal);
        return comma > 0 && FeedAmount(text[..comma]) is not null && !text[comma..].Any(char.IsAsciiDigit) ? text[..comma] : text;
    }

    // "half 12, 150": what stands behind a time and is no time itself; "1, 120, slow" with a remark.
    private static bool IsAmount(string text) => text.Length is 2 or 3 && text.All(char.IsAsciiDigit) || (VolumeReader.Read(text).Outcome == Outcome.Certain && text.Any(char.IsLetter)) || !text.Any(char.IsAsciiDigit);

    private static (double? Ml, FeedRoute Route)? FeedAmount(string text)
    {
        if (text.Length == 0) return (null, FeedRoute.Unknown);
        if (VolumeReader.Read(text).TryGet(out var ml)) return (ml, FeedRoute.Unknown);
        if (SmallWords.ReadRoute(text) is { } route) return (null, route);
        var space = text.IndexOf(' ', StringComparison.Ordinal);
        return space > 0 && VolumeReader.Read(text[..space]).TryGet(out var first) && SmallWords.ReadRoute(text[(space + 1)..]) is { } how ? (first, how) : null;
    }
}
