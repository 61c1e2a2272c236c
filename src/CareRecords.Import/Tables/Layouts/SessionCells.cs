using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>Makes a session, and the checks beside it, of the cells of a row.</summary>
internal sealed partial class SessionCells(BlockReading reading)
{
    private const double MostMinutesOnOneArea = 30;
    private const double MostMinutesInAll = 240;

    // A total and its parts may differ by breaks; three times as much is a slip (chosen by CareRecords).
    private const double MostTimesTheAreas = 3;

    /// <summary>True when any cell of the event's values is filled.</summary>
    public static bool HasValues(BlockRow row, Slot slot) => slot.Values.Any(v => !row[v].Cell.IsEmpty && !NotSaid.Is(row[v].Cell.Text.Trim()));

    /// <summary>Adds the session; null when its times run backwards.</summary>
    public Session? Add(BlockRow row, Slot slot, UncertainTime start, UncertainTime? end, SourceLine source, IReadOnlyList<AreaMinutes>? areasInWords = null)
    {
        if (end is not null && end.Latest < start.Earliest)
        {
            reading.Cells.Refuse(source, "It ends before it starts.", "Correct the start or the end.");
            return null;
        }

        var values = slot.Values.Concat(OfEverySession(row, slot)).Where(v => !row[v].Cell.IsEmpty).ToList();
        if (areasInWords is null && values.Count == 0 && IsOfOtherCare(row, slot)) return null;
        var areas = new List<AreaMinutes>(areasInWords ?? (slot.Time >= 0 && !values.Exists(v => reading.Block.Columns[v].Role is Role.Area or Role.Detail or Role.Minutes) ? reading.Block.Columns[slot.Time].EachSession : []));
        var parted = values.Where(v => reading.Block.Columns[v].Role == Role.Area).ToList();
        // "same as yesterday" in the first of the columns is of them all.
        if (parted is [var whole] && reading.Block.Columns.Count(c => c.Role == Role.Area) > 1 && SameAs.PointsBack(row[whole].Cell.Text) && reading.Same(row[whole].Cell.Text, start.Stated.TimeOfDay) is { } same) areas.AddRange(same.Areas);
        else foreach (var value in parted) areas.AddRange(Areas(row[value], reading.Block.Columns[value]));
        // "L 3 R 3" under "Sides".
        foreach (var value in values.Where(v => reading.Block.Columns[v].Role == Role.Side && row[v].Cell.Text.Any(char.IsAsciiDigit))) areas.AddRange(InWords(row[value], reading.Block.Columns[value]));
        if (values.Where(v => reading.Block.Columns[v].Role == Role.Side && !row[v].Cell.Text.Any(char.IsAsciiDigit)).Select(v => AreaNames.In(row[v].Cell.Text)).FirstOrDefault() is { Count: > 0 } sides)
            areas = [.. areas.SelectMany(a => a.Side != Side.Unknown ? [a] : sides.Select(s => a with { Side = s.Side }))];
        // "3/3/2/2", "3,3" under "mins", where a title says in which order the places stand.
        var listed = areas.Count == 0 ? values.Where(v => reading.Block.Columns[v].Role == Role.Minutes && AreaNumbers.Read(row[v].Cell.Text, reading.AreaOrder, _ => { }) is { Count: > 0 }).ToList() : [];
        foreach (var list in listed) areas.AddRange(AreaNumbers.Read(row[list].Cell.Text, reading.AreaOrder, why => reading.Cells.Refuse(row[list].Source, why, "Correct the minutes."))!);
        // "4/3 +v" where the key gives an example of such a pair.
        foreach (var value in areas.Count == 0 && reading.Key.PairOrder.Count > 0 ? values.Where(v => reading.Block.Columns[v].Role == Role.Minutes).ToList() : [])
            if (PairExamples.Read(row[value].Cell.Text, reading.Key.PairOrder, why => reading.Cells.Refuse(row[value].Source, why, "Correct the minutes.")) is var (paired, rest))
            {
                areas.AddRange(paired);
                if (rest.Length > 0 && AreasReader.Read(rest, reading.Context.Words).TryGet(out var more)) areas.AddRange(more.Areas);
                else if (rest.Length > 0) reading.Cells.Ask(row[value].Source, $"'{rest}' beside the minutes was not understood.", "Explain the word in the key.");
                listed.Add(value);
            }

        if (areas.Count == 0 && listed.Count == 0 && reading.MinutesEachPlace && areasInWords is null && EachPlaceOf(row, slot) is { Count: > 0 } ofEach)
        {
            areas.AddRange(ofEach);
            listed.AddRange(values.Where(v => reading.Block.Columns[v].Role == Role.Minutes));
        }

        var minutes = values.Except(listed).Where(v => reading.Block.Columns[v].Role == Role.Minutes).Select(v => Minutes(row[v], reading.Block.Columns[v], MostMinutesInAll)).FirstOrDefault(m => m is not null);
        // "LLL | 3": one part of the chest a row.
        if (areas.Count == 0 && minutes is { } ofPart && Parts(row, values) is { Count: > 0 } parts)
        {
            areas = [.. parts.Select(a => a with { Minutes = ofPart.Minutes, MinutesHigh = ofPart.High })];
            minutes = null;
        }

        // "same as am" where what was done stands.
        areas.AddRange(values.Where(v => reading.Block.Columns[v].Role == Role.Detail).SelectMany(v => SameAs.PointsBack(row[v].Cell.Text) ? reading.Same(row[v].Cell.Text, start.Stated.TimeOfDay)?.Areas ?? [] : InWords(row[v], reading.Block.Columns[v])));
        // "Mins each area" beside ticks, or "each" of the parts that the words name; vibration may have minutes of its own.
        if (minutes is { } each && areas.Exists(a => a.Minutes is null) && areas.TrueForAll(a => a.Minutes is null || a.Technique == Technique.Vibration) && values.Exists(v => reading.Block.Columns[v].Role == Role.Minutes && !row[v].Cell.IsEmpty && Lexicon.Split(reading.Block.Columns[v].Heading + " " + row[v].Cell.Text).Any(w => w is "each" or "per")))
        {
            areas = [.. areas.Select(a => a.Minutes is null ? a with { Minutes = each.Minutes, MinutesHigh = each.High } : a)];
            minutes = null;
        }

        if (minutes is not null && areas.Count == 0 && EachPlaceOf(row, slot) is { } ofAll) (areas, minutes) = ([.. ofAll], null);
        areas = OnEach(areas, values);
        // "V" of the key under "Technique": what the minutes were of.
        if (Text(row, values, Role.Technique) is { } how && KindWords.Read(how, reading.Context.Words) is { Technique: Technique.Vibration }) areas = [.. areas.Select(a => a with { Technique = Technique.Vibration })];
        var inAreas = areas.Sum(a => a.Minutes ?? 0);
        if (minutes is { } total && inAreas > 0 && (total.Minutes > MostTimesTheAreas * inAreas || total.Minutes * MostTimesTheAreas < inAreas))
            reading.Cells.Ask(source, FormattableString.Invariant($"{total.Minutes:0.#} minutes in all, but the areas add up to {inAreas:0.#}."), "Correct the one that is wrong.");
        var vomited = Text(row, values, Role.Vomit);
        var session = new Session
        {
            Sources = [source],
            Start = start,
            End = end,
            Areas = [.. areas.Distinct()],
            MinutesWritten = minutes?.Minutes,
            Techniques = Text(row, values, Role.Technique),
            Cough = Text(row, values, Role.Cough),
            Secretions = Text(row, values, Role.Secretions),
            Colour = Text(row, values, Role.Colour),
            StoppedEarly = Text(row, values, Role.Stopped) is { } early && SmallWords.ReadYesNo(early) != false ? early : null,
            Vomited = vomited is null ? null : SmallWords.ReadYesNo(vomited) ?? true,
            By = row[reading.Slots.By].Cell.Words,
        };
        reading.Add(session, [.. values.Select(v => row[v])]);
        return session;
    }

    /// <summary>
    /// "3" under "Mins each area", of a session whose places the key names ("chest is clapping on all four areas"); where nothing names them it is asked which they
    /// were, and none is given. Null where no such column has a number.
    /// </summary>
    public IReadOnlyList<AreaMinutes>? EachPlaceOf(BlockRow row, Slot slot)
    {
        var column = slot.Values.Concat(OfEverySession(row, slot)).Where(v => reading.Block.Columns[v].Role == Role.Minutes && IsOfEachPlace(reading.Block.Columns[v].Own) && !row[v].Cell.IsEmpty).DefaultIfEmpty(-1).First();
        if (column < 0) return null;
        var only = OnlyPlaces(row[column].Cell.Text);
        if (only is { } some && MinutesReader.Read(some.Minutes).TryGet(out var ofSome))
        {
            reading.Use(row[column]);
            return [.. some.Places.Select(a => new AreaMinutes(a.Side, a.Area, a.Technique, ofSome.Minutes, ofSome.High))];
        }

        if (Minutes(row[column], reading.Block.Columns[column], MostMinutesOnOneArea) is not { } each) return null;
        reading.Use(row[column]);
        if (reading.PlacesOfAll.Count == 0)
            reading.Cells.Ask(row[column].Source, $"'{row[column].Cell.Words}' under '{reading.Block.Columns[column].Own}' does not say on which places of the chest.", "Name the places above or below the table, such as: chest = percussion on all four areas.", "areas-of-numbers:" + row[column].Place.File);
        return [.. reading.PlacesOfAll.Select(a => new AreaMinutes(a.Side, a.Area, a.Technique, each.Minutes, each.High))];
    }

    // "Mins each area", or "Mins" where the key says "Mins = patting, that many on each of the 4 spots".
    private bool IsOfEachPlace(string heading) => SaysEachPlace(heading) || reading.MinutesEachPlace;

    // "2b", where the key says "b = bottoms only": those of the places.
    private (string Minutes, IEnumerable<AreaName> Places)? OnlyPlaces(string text)
    {
        var letters = text.Trim().AsSpan().LastIndexOfAnyInRange('0', '9') + 1;
        if (letters <= 0 || reading.Context.Words.MeaningOf(text.Trim()[letters..].Trim()) is not { } means || AreaNames.In(means) is not [{ Side: Side.Unknown, Area: not ChestArea.Unknown and var area }]) return null;
        return reading.PlacesOfAll.Where(p => p.Area == area).ToList() is { Count: > 0 } places ? (text.Trim()[..letters], places) : null;
    }

    /// <summary>Columns of minutes on each place that stand behind several sessions of a row, and are of each of them: "Chest 1 | Chest 2 | Mins each area".</summary>
    private IEnumerable<int> OfEverySession(BlockRow row, Slot slot) => reading.Slots.Slots.Where(s => s != slot && s.Kind == TableKind.Sessions && s.Group == slot.Group && slot.Time >= 0 && row[s.Time].Cell.IsEmpty)
        .SelectMany(s => s.Values).Where(v => reading.Block.Columns[v].Role == Role.Minutes && SaysEachPlace(reading.Block.Columns[v].Own));

    // "Shakes, 1 min on each bit tapped", "Minutes of vibration on each area": of each place that the row names.
    private List<AreaMinutes> OnEach(List<AreaMinutes> areas, List<int> values)
    {
        var places = areas.Where(a => a.Area != ChestArea.Unknown && a.Technique != Technique.Vibration).Select(a => (a.Side, a.Area)).Distinct().ToList();
        if (places.Count == 0 || !values.Exists(v => reading.Block.Columns[v].Areas is [{ Technique: Technique.Vibration }] && (reading.ShakesEachPlace || SaysEachPlace(reading.Block.Columns[v].Own)))) return areas;
        return [.. areas.SelectMany(a => a is { Side: Side.Unknown, Area: ChestArea.Unknown, Technique: Technique.Vibration } ? places.Select(p => a with { Side = p.Side, Area = p.Area }) : [a])];
    }

    [System.Text.RegularExpressions.GeneratedRegex(@"\b(\d{1,2}(?:[.,]\d)?)\s*(?:mins?|minutes?)\b", System.Text.RegularExpressions.RegexOptions.IgnoreCase)]
    private static partial System.Text.RegularExpressions.Regex InHeading();

    /// <summary>True for a heading of minutes on each place of the chest.</summary>
    public static bool SaysEachPlace(string heading) => EachPlace().IsMatch(heading);

    [System.Text.RegularExpressions.GeneratedRegex(@"\b(?:each|every|per|a)\s+(?:bit|area|part|spot|place|zone|lobe|position|one|segment)\b", System.Text.RegularExpressions.RegexOptions.IgnoreCase)]
    private static partial System.Text.RegularExpressions.Regex EachPlace();

    // "12:15; 150; 12:45" under time, ml, until and four places of the chest: a row of a feed, in which no place has its minutes.
    private bool IsOfOtherCare(BlockRow row, Slot slot) => slot.Done < 0 && slot.Values.Count(v => reading.Block.Columns[v].Role == Role.Area) >= 2
        && Enumerable.Range(0, reading.Block.Columns.Count).Any(i => !row[i].Cell.IsEmpty && reading.Block.Columns[i].Role is Role.Millilitres or Role.Feed or Role.Saturation or Role.Dose or Role.Medicine or Role.Temperature);

    /// <summary>The minutes in the columns of areas.</summary>
    public IReadOnlyList<AreaMinutes> AreasOf(BlockRow row, Slot slot)
    {
        var areas = new List<AreaMinutes>();
        foreach (var value in slot.Values.Where(v => !row[v].Cell.IsEmpty && reading.Block.Columns[v].Role == Role.Area))
        {
            areas.AddRange(Areas(row[value], reading.Block.Columns[value]));
            reading.Use(row[value]);
        }

        return areas;
    }

    // "LL RL 3 each", "LLL, RLL": the parts that words under "areas" name, with their minutes where they say them.
    private IReadOnlyList<AreaMinutes> InWords(CellAt cell, ColumnMeaning column)
    {
        var text = cell.Cell.Words!;
        // "Areas clapped"
        if (SaysClapped(column.Heading) && InWords(cell, new ColumnMeaning("", Role.Detail)) is { Count: > 0 } clapped) return [.. clapped.Select(a => a.Technique == Technique.Unknown ? a with { Technique = Technique.Percussion } : a)];
        if (AreasReader.Read(text, reading.Context.Words) is { Outcome: Outcome.Certain, Value.Areas: { Count: > 0 } told })
        {
            reading.Use(cell);
            return told;
        }

        var names = AreaNames.In(text.Replace(' ', ','));
        if (names.Count == 0 || text.Any(char.IsAsciiDigit)) return [];
        reading.Use(cell);
        return [.. names.Select(a => new AreaMinutes(a.Side, a.Area, a.Technique, null))];
    }

    /// <summary>True for a heading of places that were clapped: "Areas clapped".</summary>
    public static bool SaysClapped(string heading) => Clapped().IsMatch(heading);

    [System.Text.RegularExpressions.GeneratedRegex(@"\b(?:clapped|percussed|patted|tapped|cupped)\b", System.Text.RegularExpressions.RegexOptions.IgnoreCase)]
    private static partial System.Text.RegularExpressions.Regex Clapped();

    private List<AreaMinutes> Parts(BlockRow row, List<int> values)
    {
        var technique = Text(row, values, Role.Technique) is { } how && Lexicon.Find(how, out _).Select(k => k.Concept).ToHashSet() is var said
            ? said.Contains(Concept.Vibration) && !said.Contains(Concept.Percussion) ? Technique.Vibration : said.Contains(Concept.Percussion) ? Technique.Percussion : Technique.Unknown
            : Technique.Unknown;
        return [.. values.Where(v => reading.Block.Columns[v].Role == Role.Side).SelectMany(v => AreaNames.In(row[v].Cell.Text))
            .Select(a => new AreaMinutes(a.Side, a.Area, a.Technique == Technique.Unknown ? technique : a.Technique, null))];
    }

    /// <summary>Adds the part of the chest of a row without a day or time of its own to the session above it; null when the row is no such row.</summary>
    public Session? Extend(BlockRow row, Slot slot)
    {
        var values = slot.Values.Where(v => !row[v].Cell.IsEmpty).ToList();
        if (reading.LastSession is not { } last || Parts(row, values) is not { Count: > 0 } parts || reading.Into.Entries.LastIndexOf(last) is not (>= 0 and var at)) return null;
        var minutes = values.Where(v => reading.Block.Columns[v].Role == Role.Minutes).Select(v => Minutes(row[v], reading.Block.Columns[v], MostMinutesOnOneArea)).FirstOrDefault(m => m is not null);
        var longer = last with { Areas = [.. last.Areas, .. parts.Select(a => a with { Minutes = minutes?.Minutes, MinutesHigh = minutes?.High })], Sources = [.. last.Sources, row.Source] };
        reading.Replace(at, last, longer);
        foreach (var value in values) reading.Use(row[value]);
        return longer;
    }

    private IEnumerable<AreaMinutes> Areas(CellAt cell, ColumnMeaning column)
    {
        var text = cell.Cell.Words ?? "";
        if (NotSaid.Is(text) || SameAs.IsNo(text) || SmallWords.ReadYesNo(text) == false)
        {
            reading.Saw(cell);
            return [];
        }

        if (SameAs.PointsBack(text) && reading.Same(text) is { } earlier)
            return earlier.Areas.Where(a => column.Areas.Any(c => c.Side == a.Side && c.Area == a.Area && (c.Technique == a.Technique || column.Areas.Count > 1)));
        // "Rt 4/2, Lt 3/1" under "Minutes (base / top)".
        if (SideNumbers.Read(text, [column.Heading, .. reading.Block.Titles]) is { } bySide)
        {
            if (bySide.Any(a => a.Area == ChestArea.Unknown)) reading.Cells.Ask(cell.Source, $"'{text}' does not say which parts the two numbers of a side are for.", "Say the order in the heading, such as lower / upper.", "areas-of-numbers:" + cell.Place.File);
            reading.Use(cell);
            return bySide.Select(a => column.Areas.Count > 0 ? a with { Technique = column.Areas[0].Technique } : a);
        }

        // "3 low, 2 top" under "Left": the areas of that side.
        if (column.Areas is [{ Side: not Side.Unknown, Area: ChestArea.Unknown } side] && text.Any(char.IsLetter) && AreaGrammar.Read(CellTerms.Read("clapping " + text)).Areas is { Count: > 0 } told && told.TrueForAll(a => a.Minutes is not null && a.Area != ChestArea.Unknown)
            && told.FindAll(a => a.Side == side.Side || a.Side == Side.Unknown) is { Count: > 0 } ofSide)
        {
            reading.Use(cell);
            return ofSide.Select(a => a with { Side = side.Side, Technique = side.Technique });
        }

        // "1 min each side" under "Shakes": of the place that the heading names, or of none.
        if (column.Areas is [{ Side: Side.Unknown } ofBoth] && text.Any(char.IsLetter) && AreasReader.Read(text, reading.Context.Words) is { Outcome: Outcome.Certain, Value.Areas: { Count: 2 } sides } && sides.All(a => a is { Side: not Side.Unknown, Area: ChestArea.Unknown, Technique: Technique.Unknown, Minutes: not null }))
        {
            reading.Use(cell);
            return sides.Select(a => a with { Area = ofBoth.Area, Technique = ofBoth.Technique });
        }

        if (column.Areas.Count > 1 && text.Any(char.IsLetter) && AreasReader.Read(text, reading.Context.Words) is { Outcome: Outcome.Certain, Value.Areas: { Count: > 0 } named } && named.All(a => a.Side != Side.Unknown))
            return named.Select(a => a with { Technique = a.Technique == Technique.Unknown ? column.Areas[0].Technique : a.Technique, Area = a.Area == ChestArea.Unknown ? column.Areas[0].Area : a.Area });
        if (column.Areas.Count > 1 && !(reading.DecimalComma && BlockReading.IsDecimal(text)) && AreaNumbers.Read(text, column.Areas, why => reading.Cells.Refuse(cell.Source, why, "Correct the minutes."), SaysEachSide(column.Heading)) is { } several) return several;
        // A tick: done, the minutes not said here.
        if (!text.Any(char.IsAsciiDigit) && SmallWords.ReadYesNo(text) == true)
        {
            reading.Use(cell);
            return Ticked(column, text);
        }

        // "3/3" under "low": of left and right where the key says so; two of the same are of both sides whichever comes first.
        if (column.Areas is [{ Side: Side.Unknown, Area: not ChestArea.Unknown } ofPlace] && TwoNumbers().Match(text) is { Success: true } two && MinutesReader.Read(two.Groups[1].Value).TryGet(out var one) && MinutesReader.Read(two.Groups[2].Value).TryGet(out var other)
            && one.Minutes <= MostMinutesOnOneArea && other.Minutes <= MostMinutesOnOneArea && (FirstSide(column) is var firstSide && firstSide != Side.Unknown || one == other))
        {
            reading.Use(cell);
            var (left, right) = firstSide == Side.Right ? (other, one) : (one, other);
            return [new AreaMinutes(Side.Left, ofPlace.Area, ofPlace.Technique, left.Minutes, left.High), new AreaMinutes(Side.Right, ofPlace.Area, ofPlace.Technique, right.Minutes, right.High)];
        }

        if (TechniqueNumbers.Read(text, column.Areas, reading.Context.Words, column.Areas.All(a => a.Area == ChestArea.Unknown) && reading.NamesUpper) is { } byTechnique)
        {
            reading.Use(cell);
            return byTechnique;
        }

        if (Minutes(cell, column, MostMinutesOnOneArea) is not { } minutes) return [];
        return column.Areas.Select(a => new AreaMinutes(a.Side, a.Area, a.Technique, minutes.Minutes, minutes.High));
    }

    // "minutes left/right": which side the first of two numbers is of, where the heading, the words about the table or the family's own words say so.
    private Side FirstSide(ColumnMeaning column)
    {
        foreach (var said in Lexicon.Split(column.Own).Select(reading.Context.Words.MeaningOf).OfType<string>().Prepend(column.Heading).Concat(reading.Block.Titles))
        {
            if (LeftThenRight().IsMatch(said)) return Side.Left;
            if (RightThenLeft().IsMatch(said)) return Side.Right;
        }

        return Side.Unknown;
    }

    [System.Text.RegularExpressions.GeneratedRegex(@"^\s*(\d{1,2}(?:[.,]\d)?)\s*[/+]\s*(\d{1,2}(?:[.,]\d)?)\s*$")]
    private static partial System.Text.RegularExpressions.Regex TwoNumbers();

    [System.Text.RegularExpressions.GeneratedRegex(@"\b(?:left|l)\s*[/+&]\s*(?:right|r)\b|\bleft (?:then|first)\b", System.Text.RegularExpressions.RegexOptions.IgnoreCase)]
    private static partial System.Text.RegularExpressions.Regex LeftThenRight();

    [System.Text.RegularExpressions.GeneratedRegex(@"\b(?:right|r)\s*[/+&]\s*(?:left|l)\b|\bright (?:then|first)\b", System.Text.RegularExpressions.RegexOptions.IgnoreCase)]
    private static partial System.Text.RegularExpressions.Regex RightThenLeft();

    // "min lower/upper, each side": a number is of both sides of an area.
    private static bool SaysEachSide(string heading) => Lexicon.Find(heading, out _).Any(k => k.Concept == Concept.Both);

    // "✓ = 3 mins of clapping on that spot", "Vibes ✓ = 1 min each side": how long what is ticked took, where the key says so.
    private IEnumerable<AreaMinutes> Ticked(ColumnMeaning column, string tick)
    {
        var words = reading.Context.Words;
        var means = words.MeaningOf($"{column.Own} {tick.Trim()}") ?? words.MeaningOf(tick.Trim());
        var parts = means is null ? [] : means.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var at = Array.FindIndex(parts, p => char.IsAsciiDigit(p[0]));
        double? minutes = at >= 0 && MinutesReader.Read(string.Join(' ', parts.Skip(at).Take(2))).TryGet(out var read) ? read.Minutes : at >= 0 && MinutesReader.Read(parts[at]).TryGet(out read) && parts[at].Any(char.IsLetter) ? read.Minutes : null;
        // "Shakes, 1 min on each bit" over a tick.
        minutes ??= column.DefaultMinutes ?? (InHeading().Match(column.Own) is { Success: true } said ? double.Parse(said.Groups[1].Value.Replace(',', '.'), System.Globalization.CultureInfo.InvariantCulture) : null);
        var each = minutes is not null && means is not null && column.Areas.All(a => a.Side == Side.Unknown) && AreaNames.In(means!) is { Count: 2 } sides && sides.All(s => s.Side != Side.Unknown) ? sides : null;
        return column.Areas.SelectMany(a => each is null ? [new AreaMinutes(a.Side, a.Area, a.Technique, minutes)] : each.Select(s => new AreaMinutes(s.Side, a.Area, a.Technique, minutes)));
    }

    // A heading in seconds gives its unit to bare numbers.
    private MinutesWritten? Minutes(CellAt cell, ColumnMeaning column, double most)
    {
        if (column.Unit == "sec" && MinutesReader.Read(cell.Cell.Words + " sec").TryGet(out var seconds)) return seconds;
        return reading.Cells.Minutes(cell, most);
    }

    private string? Text(BlockRow row, List<int> values, Role role) =>
        values.Where(v => reading.Block.Columns[v].Role == role).Select(v => row[v].Cell.Words).FirstOrDefault(t => t is not null && !NotSaid.Is(t));
}
