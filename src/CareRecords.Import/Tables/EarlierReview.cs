using System.Globalization;
using System.IO.Compression;
using CareRecords.Import.Accounting;
using CareRecords.Import.Files;
using CareRecords.Import.Notes;
using CareRecords.Records;

namespace CareRecords.Import.Tables;

/// <summary>
/// Reads a review workbook back. A row whose own file is read too is counted there, unless a person changed a cell of it: then the row stands
/// for the original and the change is listed. Rows whose file is not there, and rows that somebody added, are read like any table. The sheets
/// that the review worked out are not input.
/// </summary>
internal static class EarlierReview
{
    /// <summary>The document property by which a review workbook is told from others (docs/workbook.md).</summary>
    private const string Mark = "CareRecords layout";

    private const string Separator = " ¦ ";
    private const string AsRead = "As read";

    /// <summary>The sheets that are input, each with the columns taken from it (docs/workbook.md).</summary>
    private static readonly Dictionary<string, string[]> Sheets = new()
    {
        ["Sessions"] = ["started", "ended", "left lower", "left upper", "left vibration", "right lower", "right upper", "right vibration", "minutes",
            "techniques", "by", "cough", "secretions", "colour", "stopped early", "vomited", "note"],
        ["Feeds"] = ["started", "ended", "ml", "route", "by", "note"],
        ["Medicines"] = ["given", "medicine", "amount", "route", "by", "note"],
        ["Checks"] = ["checked", "spo2", "pulse", "oxygen", "phase", "by", "note"],
        ["Signs"] = ["noticed", "sign", "value", "by", "note"],
        ["Not done"] = ["due", "reason", "note"],
        ["Plan"] = ["from", "item", "value"],
        ["Words"] = ["word", "means"],
        ["Questions to check"] = ["question", "answer"],
        ["Questions for clinic"] = ["question"],
    };

    private static readonly Dictionary<string, TimePrecision> Precisions = new()
    {
        ["exact"] = TimePrecision.Exact, ["about"] = TimePrecision.About, ["rounded"] = TimePrecision.Rounded, ["part of the day"] = TimePrecision.PartOfDay,
        ["day only"] = TimePrecision.DayOnly, ["from the entry beside it"] = TimePrecision.Borrowed, ["message stamp"] = TimePrecision.MessageStamp,
        ["reckoned"] = TimePrecision.Reckoned,
    };

    /// <summary>Whether the bytes are a review workbook.</summary>
    public static bool IsOne(Stream bytes)
    {
        try
        {
            using var zip = new ZipArchive(bytes, ZipArchiveMode.Read, leaveOpen: false);
            if (zip.GetEntry("docProps/custom.xml") is not { Length: < 100_000 } entry) return false;
            using var reader = new StreamReader(entry.Open());
            return reader.ReadToEnd().Contains(Mark, StringComparison.Ordinal);
        }
        catch (InvalidDataException)
        {
            return false;
        }
    }

    /// <summary>What the workbook's input sheets give.</summary>
    public static IReadOnlyList<Gathered> Read(SourceFile file, SourceContext context, long mostUnpacked)
    {
        var asRead = new Dictionary<(string Id, string Column), string>();
        foreach (var row in RowsOf(file, mostUnpacked, name => name == AsRead).SelectMany(s => s.Rows).Skip(1))
            if (row[0].Words is { } id && row[1].Words is { } column)
                asRead[(id, column)] = row[2].Words ?? "";
        return [.. RowsOf(file, mostUnpacked, Sheets.ContainsKey).Select(sheet => ReadSheet(new Place(file.Found.Name, sheet.Name), sheet.Rows, asRead, context))];
    }

    private static IEnumerable<(string Name, IReadOnlyList<GridRow> Rows)> RowsOf(SourceFile file, long mostUnpacked, Func<string, bool> wanted)
    {
        using var book = WorkbookFile.Open(file.OpenBytes(), mostUnpacked);
        while (book.NextSheet())
            if (wanted(book.SheetName))
                yield return (book.SheetName, [.. book.Rows()]);
    }

    private static Gathered ReadSheet(Place place, IReadOnlyList<GridRow> rows, Dictionary<(string Id, string Column), string> asRead, SourceContext context)
    {
        var columns = Sheets[place.Sheet!];
        var heading = rows.FirstOrDefault(r => columns.All(c => ColumnOf(r, c) >= 0 || c == "by"));
        if (heading is null) return TableReader.Read(place, () => rows, context);
        columns = [.. columns.Where(c => ColumnOf(heading, c) >= 0)];

        var set = new Gathered { File = place.File, Sheet = place.Sheet };
        var taken = new List<ReviewRow>();
        var ended = false;
        foreach (var row in rows)
        {
            var read = new ReviewRow(row, heading, place, asRead, columns);
            ended |= row.Line > heading.Line && !read.IsRow;
            var why = row.IsBlank || read.IsEmpty ? "an empty row"
                : row.Line <= heading.Line ? "the heading of a review sheet"
                : ended ? "below the table of a review sheet"
                : place.Sheet == "Questions to check" && row[ColumnOf(heading, "answer")].IsEmpty ? "a question not answered yet"
                : read.Changes.Count == 0 && read.Originals.Any(o => context.InputNames.Contains(o.File)) ? "counted from its own file"
                : null;
            if (why is null) taken.Add(read);
            else if (row.IsBlank) set.Ledger.Mark(row.Line, 1, LineFate.Blank);
            else
            {
                set.SetAside.Add(new SetAsideLine(place.Of(row), why));
                set.Ledger.Mark(row.Line, 1, LineFate.NotRecord);
            }
        }

        if (taken.Count == 0) return set;
        var canonical = new GridRow(heading.Line, 1, [.. columns.Select(Cell.Of)], heading.Text);
        var got = TableReader.Read(place, () => taken.Select(r => r.Plain).Prepend(canonical), context);
        Trace(got, taken.ToDictionary(r => r.Row.Line));
        got.SetAside.RemoveAll(s => SourceLines.NumberOf(s.Source) == heading.Line);
        got.SetAside.AddRange(set.SetAside);
        foreach (var row in rows)
            if (set.Ledger.FateOf(row.Line) is { } fate)
                got.Ledger.Mark(row.Line, 1, fate);
        return got;
    }

    /// <summary>Gives the entries back their original sources and intervals, and lists what was changed.</summary>
    private static void Trace(Gathered got, Dictionary<int, ReviewRow> rows)
    {
        ReviewRow? RowOf(SourceLine source) => rows.GetValueOrDefault(SourceLines.NumberOf(source));
        for (var i = 0; i < got.Entries.Count; i++)
            if (RowOf(got.Entries[i].Sources[0]) is { } row) got.Entries[i] = row.AsItWas(got.Entries[i]);
        for (var i = 0; i < got.Omitted.Count; i++)
            if (RowOf(got.Omitted[i].Source) is { Changes.Count: 0, Originals: [var original, ..] }) got.Omitted[i] = got.Omitted[i] with { Source = original };
        for (var i = 0; i < got.Plan.Count; i++)
            if (got.Plan[i].Source is { } source && RowOf(source) is { Changes.Count: 0, Originals: [var original, ..] }) got.Plan[i] = got.Plan[i] with { Source = original };
        for (var i = 0; i < got.FamilyQuestions.Count; i++)
            if (RowOf(got.FamilyQuestions[i]) is { Originals: [var original, ..] }) got.FamilyQuestions[i] = original;
        foreach (var row in rows.Values.Where(r => r.Changes.Count > 0))
        {
            got.Corrections.AddRange(row.Changes);
            got.Superseded.AddRange(row.Originals);
        }
    }

    private static int ColumnOf(GridRow heading, string name) =>
        Array.FindIndex(heading.Cells, c => c.Words is { } words && words.Equals(name, StringComparison.OrdinalIgnoreCase));

    /// <summary>One row of a review sheet, with what it was before.</summary>
    private sealed class ReviewRow
    {
        private readonly GridRow _heading;

        public ReviewRow(GridRow row, GridRow heading, Place place, Dictionary<(string Id, string Column), string> asRead, string[] columns)
        {
            (Row, _heading) = (row, heading);
            var id = At("row id").Words;
            IsRow = id is null || id.Length < 12 && id.Any(char.IsAsciiDigit);
            IsEmpty = columns.All(c => At(c).IsEmpty);
            Plain = row with { Cells = [.. columns.Select(PlainCell)] };
            Originals = [.. Split("source file").Zip(Split("source place"), Split("source text")).Select(s => Original(s.First, s.Second, s.Third))];
            Changes = id is null || row.Line <= heading.Line ? [] :
            [
                .. columns.Where(c => asRead.GetValueOrDefault((id, c), "") != InWords(At(c)))
                    .Where(c => place.Sheet is not ("Questions to check" or "Words" or "Questions for clinic"))
                    .Select(c => new Correction(place.Of(row, ColumnOf(heading, c)), c, asRead.GetValueOrDefault((id, c), ""), InWords(At(c)))),
            ];
        }

        public GridRow Row { get; }

        /// <summary>The row with the columns of the contract only.</summary>
        public GridRow Plain { get; }

        /// <summary>False where the first cell holds something else than a row's id: the table has ended.</summary>
        public bool IsRow { get; }

        public bool IsEmpty { get; }

        public IReadOnlyList<SourceLine> Originals { get; }

        public IReadOnlyList<Correction> Changes { get; }

        /// <summary>The entry with its original sources, the intervals that the words gave, and what has no column of the contract.</summary>
        public CareEntry AsItWas(CareEntry entry)
        {
            entry = entry with
            {
                Sources = Changes.Count > 0 || Originals.Count == 0 ? [.. entry.Sources, .. Originals] : Originals,
                Start = Interval(entry.Start, "earliest", "latest"),
                End = Interval(entry.End, "ended earliest", "ended latest"),
                HowRead = At("how read").Words ?? entry.HowRead,
            };
            return entry switch
            {
                Feed feed => feed with { MillilitresPerHour = NumberIn("ml per hour") },
                Check check => check with { SpO2High = NumberIn("spo2 high") },
                Session session when At("other areas").Words is { } others => session with { Areas = [.. session.Areas, .. others.Split(';').Select(OtherArea)] },
                _ => entry,
            };
        }

        private Cell At(string column) => Row[ColumnOf(_heading, column)];

        private double? NumberIn(string column) => At(column) is { Kind: CellKind.Number, Number: var number } ? number : null;

        /// <summary>A medicine not named is read from its own words again, and a question goes by its name, so that both ask the same as before.</summary>
        private Cell PlainCell(string column) => column switch
        {
            "medicine" when At(column).Words == Medicines.Unknown && !At("medicine as written").IsEmpty => At("medicine as written"),
            "question" when !At("question name").IsEmpty => At("question name"),
            _ => At(column),
        };

        private UncertainTime? Interval(UncertainTime? read, string earliest, string latest)
        {
            var changed = Changes.Any(c => c.Field is "started" or "ended" or "given" or "checked" or "noticed");
            if (read is null || changed || At(earliest) is not { Kind: CellKind.Moment or CellKind.Date, At: var low } || At(latest) is not { Kind: CellKind.Moment or CellKind.Date, At: var high })
                return read;
            var precision = Precisions.GetValueOrDefault(At("how exact").Words ?? "exact");
            return low > read.Stated || read.Stated > high ? read : UncertainTime.Between(low, read.Stated, high, precision);
        }

        private string[] Split(string column) => At(column).Words is { } words ? words.Split(Separator) : [];

        private static SourceLine Original(string file, string place, string text)
        {
            if (place.StartsWith("line ", StringComparison.Ordinal) && int.TryParse(place.AsSpan(5), NumberStyles.None, CultureInfo.InvariantCulture, out var line))
                return SourceLine.InText(file, line, text);
            var comma = place.LastIndexOf(", ", StringComparison.Ordinal);
            return place.StartsWith("sheet ", StringComparison.Ordinal) && comma > 6
                ? SourceLine.InSheet(file, place[6..comma], place[(comma + 2)..], text)
                : new SourceLine(file, null, null, null, text);
        }

        private static AreaMinutes OtherArea(string words)
        {
            var (side, area, technique) = (Side.Unknown, ChestArea.Unknown, Technique.Unknown);
            (double? low, double? high) = (null, null);
            foreach (var word in words.Split(' ', StringSplitOptions.RemoveEmptyEntries))
            {
                var ends = word.Split('-', '–');
                if (double.TryParse(ends[0], NumberStyles.Float, CultureInfo.InvariantCulture, out var number))
                {
                    low = number;
                    if (ends.Length == 2 && double.TryParse(ends[1], NumberStyles.Float, CultureInfo.InvariantCulture, out var upper)) high = upper;
                }
                else if (Enum.TryParse<Side>(word, true, out var s) && s != Side.Unknown) side = s;
                else if (Enum.TryParse<ChestArea>(word, true, out var a) && a != ChestArea.Unknown) area = a;
                else if (Enum.TryParse<Technique>(word, true, out var t) && t != Technique.Unknown) technique = t;
            }

            return new AreaMinutes(side, area, technique, low, high);
        }

        private static string InWords(Cell cell) => cell.Kind switch
        {
            CellKind.Empty => "",
            CellKind.Number => cell.Number.ToString("R", CultureInfo.InvariantCulture),
            CellKind.Date or CellKind.Moment => cell.At.ToString(cell.At.Second == 0 ? "uuuu-MM-dd HH:mm" : "uuuu-MM-dd HH:mm:ss", CultureInfo.InvariantCulture),
            _ => cell.Text.Trim(),
        };
    }
}
