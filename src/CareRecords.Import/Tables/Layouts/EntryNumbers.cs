using System.Globalization;
using System.Text.RegularExpressions;
using CareRecords.Import.Notes;
using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>
/// Books whose entries are numbered and speak of one another: "do. as No. 2" repeats an entry, "No. 14: for 29 read 92" puts one right,
/// "No. 19 cancelled" takes one back.
/// </summary>
internal sealed partial class EntryNumbers
{
    private static readonly HashSet<string> Headings = new(["no", "nr", "number", "#", "voucher", "voucher no", "id", "entry id", "ref no", "s no", "sl no", "entry", "entry no", "item", "item no", "ref", "line", "entry number"], StringComparer.Ordinal);

    private readonly BlockReading _reading;
    private readonly MeasureCells _measures;
    private readonly int _column;
    private readonly Dictionary<string, (int From, int To)> _entries = [];

    /// <summary>The numbers of a block's entries.</summary>
    public EntryNumbers(BlockReading reading, MeasureCells measures)
    {
        (_reading, _measures) = (reading, measures);
        _column = reading.Block.IsAcross ? -1 : Enumerable.Range(0, reading.Block.Columns.Count).FirstOrDefault(i => reading.Block.Columns[i].Role is Role.Ignore or Role.Unknown or Role.Word && Headings.Contains(string.Join(' ', Lexicon.Split(reading.Block.Columns[i].Own))), -1);
    }

    /// <summary>The block with its column of numbers left out of what is read as words.</summary>
    public static Block Named(Block block)
    {
        if (block.IsAcross) return block;
        return block with { Columns = [.. block.Columns.Select((c, i) => c.Role is Role.Unknown or Role.Word or Role.Kind && Headings.Contains(string.Join(' ', Lexicon.Split(c.Own))) && AreNumbers(block, i) ? c with { Role = Role.Ignore } : c)] };
    }

    private static bool AreNumbers(Block block, int column)
    {
        var filled = block.Rows.Select(r => r[column].Cell).Where(c => !c.IsEmpty).ToList();
        return filled.Count > 0 && filled.Count(c => Number(c.Text, out _)) * 5 >= filled.Count * 4 && Rise(filled);
    }

    // Numbers of entries go up; amounts do not.
    private static bool Rise(List<Cell> cells)
    {
        var numbers = cells.ConvertAll(c => int.TryParse(string.Concat(c.Text.Where(char.IsAsciiDigit)), NumberStyles.None, CultureInfo.InvariantCulture, out var n) ? n : 0);
        return numbers.Count > 1 && numbers.Zip(numbers.Skip(1)).Count(p => p.Second > p.First) * 5 >= (numbers.Count - 1) * 4;
    }

    /// <summary>Takes note of the records of a row.</summary>
    public void Note(BlockRow row, int from, int to)
    {
        if (_column >= 0 && to > from && Number(row[_column].Cell.Text, out var number)) _entries[number] = (from, to);
    }

    /// <summary>Reads a row that only speaks of another entry; false when it does not, or no such entry is known.</summary>
    public bool Read(BlockRow row, RowWhen when)
    {
        if (_column < 0) return false;
        foreach (var cell in row.Cells.Where(c => c.Column != row[_column].Column && c.Cell.Kind == CellKind.Text))
        {
            if (As().Match(cell.Cell.Text) is { Success: true } again && when.Start is { } at && Number(again.Groups[1].Success ? again.Groups[1].Value : again.Groups[2].Value, out var repeated) && _entries.TryGetValue(repeated, out var range)) return Repeat(row, range, at);
            if (Of().Match(cell.Cell.Text) is { Success: true } of && Number(of.Groups[1].Success ? of.Groups[1].Value : of.Groups[2].Value, out var number) && _entries.TryGetValue(number, out var meant)) return Put(row, number, meant, of.Groups[3].Value);
        }

        return false;
    }

    private bool Repeat(BlockRow row, (int From, int To) range, UncertainTime at)
    {
        var same = _reading.Into.Entries.Skip(range.From).Take(range.To - range.From).Where(e => e is Session or Dose or Feed).ToList();
        var again = same.ConvertAll(e => e with { Sources = [row.Source], Start = at, End = null });
        foreach (var entry in again) _reading.Add(entry, [.. row.Cells]);
        // What was measured is the row's own.
        if (again.Count > 0) _measures.AddChecks(row, [.. Enumerable.Range(0, _reading.Block.Columns.Count).Where(c => _reading.Block.Columns[c].Role is Role.Saturation or Role.Pulse or Role.Oxygen or Role.Phase)], at, [.. again.OfType<Session>()]);
        return again.Count > 0;
    }

    private bool Put(BlockRow row, string number, (int From, int To) range, string text)
    {
        var entries = _reading.Into.Entries;
        if (TakenBack().IsMatch(text))
        {
            for (var i = range.To - 1; i >= range.From; i--)
            {
                _reading.Into.SetAside.Add(new SetAsideLine(entries[i].Sources[0], "taken back by a later entry"));
                entries.RemoveAt(i);
            }

            foreach (var (other, place) in _entries.ToList())
                if (place.From >= range.To) _entries[other] = (place.From - (range.To - range.From), place.To - (range.To - range.From));
            _entries.Remove(number);
            _reading.Into.SetAside.Add(new SetAsideLine(row.Source, "takes an earlier entry back"));
            _reading.Into.Ledger.Mark(row[0].Row.Line, row[0].Row.LineCount, LineFate.NotRecord);
            foreach (var cell in row.Cells) _reading.Saw(cell);
            return true;
        }

        if (ForRead().Match(text) is not { Success: true } wrong) return ShouldBe().Match(text) is { Success: true } time && Retime(row, range, time.Groups[1].Value);
        var found = Enumerable.Range(range.From, range.To - range.From).Select(i => (At: i, Right: Right(entries[i], wrong.Groups[1].Value, wrong.Groups[2].Value))).Where(f => f.Right is not null).ToList();
        if (found is not [var only]) return false;
        LateCorrections.Replace(entries, only.At, only.Right! with { Sources = [.. only.Right!.Sources, row.Source], HowRead = $"'{wrong.Groups[1].Value}' put right to '{wrong.Groups[2].Value}' as {row.Source.Place} says." });
        foreach (var cell in row.Cells) _reading.Use(cell);
        return true;
    }

    // "V328 should read 07:50": the time of the entry, and of what borrowed it.
    private bool Retime(BlockRow row, (int From, int To) range, string text)
    {
        var entries = _reading.Into.Entries;
        if (range.To == range.From || entries[range.From].Start is not { IsExact: true } old || CellTimes.Clock(text) is not { Outcome: Outcome.Certain, Value.Start: { } clock }) return false;
        var now = LateCorrections.Moved(old, clock);
        for (var i = range.From; i < range.To; i++)
            if (entries[i].Start is { IsExact: true } start && start.Stated == old.Stated)
                LateCorrections.Replace(entries, i, LateCorrections.Begun(entries[i], now) with { Sources = i == range.From ? [.. entries[i].Sources, row.Source] : entries[i].Sources, HowRead = $"Its time was put right to {text} as {row.Source.Place} says." });
        foreach (var cell in row.Cells) _reading.Use(cell);
        return true;
    }

    private static CareEntry? Right(CareEntry entry, string was, string now)
    {
        if (was.Length > 2 && CellTimes.Clock(was) is { Outcome: Outcome.Certain, Value.Start: { } wrong } && CellTimes.Clock(now) is { Outcome: Outcome.Certain, Value.Start: { } right } && LateCorrections.WithTime(entry, wrong, right) is { } moved) return moved;
        if (!double.TryParse(was.Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var old) || !double.TryParse(now.Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value)) return null;
        // A saturation that could not be was refused: the right one takes its place.
        if (entry is Check { SpO2: null } refused && refused.Pulse != old && refused.OxygenLitresPerMinute != old && value is >= 30 and <= 100) return refused with { SpO2 = value };
        return LateCorrections.WithValue(entry, old, value, old < LateCorrections.LeastPercent);
    }

    // "12", "No. 12", "V303": the name of an entry without spaces and stops.
    private static bool Number(string text, out string number)
    {
        number = text.Trim().TrimEnd('.', ')', ':').Replace(" ", "", StringComparison.Ordinal).ToUpperInvariant();
        return number.Length is > 0 and <= 8 && char.IsAsciiDigit(number[^1]) && number.TrimStart("ABCDEFGHIJKLMNOPQRSTUVWXYZ-".ToCharArray()).All(char.IsAsciiDigit);
    }

    [GeneratedRegex(@"\b(?:as|like|same|ditto|repeat)\s+(?:as\s+)?(?:in\s+)?(?:(?:no\.?|nr\.?|entry|item|line|#|voucher)\s*([A-Za-z]{0,3}\d{1,6})|([A-Za-z]{1,3}-?\d{1,6}))\b", RegexOptions.IgnoreCase)]
    private static partial Regex As();

    [GeneratedRegex(@"^(?:\W|correction|contra|note|error|oops|sorry)*(?:(?:no\.?|nr\.?|entry|item|line|#|voucher)\s*([A-Za-z]{0,3}\d{1,6})|([A-Za-z]{1,3}-?\d{1,6}))\b[\s:,.–-]*(.+)$", RegexOptions.IgnoreCase)]
    private static partial Regex Of();

    [GeneratedRegex(@"\b(?:cancel\w*|delet\w*|void\w*|struck|strike|withdrawn|disregard|ignore|never happened|not given|not done)\b", RegexOptions.IgnoreCase)]
    private static partial Regex TakenBack();

    [GeneratedRegex(@"\b(?:should (?:be|read|have been)|was really|is really|read)\s+(\d{1,2}[:.h]?\d{2}\s*(?:[ap]m)?)\b", RegexOptions.IgnoreCase)]
    private static partial Regex ShouldBe();

    [GeneratedRegex(@"\b(?:for\s+)?(\d[\d.:,]*)\s*,?\s*(?:read|should be|should read|is really|->|→)\s+(\d[\d.:,]*\d|\d)", RegexOptions.IgnoreCase)]
    private static partial Regex ForRead();
}
