using System.Globalization;
using CareRecords.Import.Accounting;
using CareRecords.Import.Notes;
using CareRecords.Import.Reading;
using CareRecords.Records;
using NodaTime;
using NodaTime.Text;

namespace CareRecords.Import.Tables.Reviews;

/// <summary>Reads one table of an earlier review workbook back: each row with its original source and the interval of its time, and every cell that a person changed.</summary>
internal sealed class ReviewSheet(Place place, TableKind kind, GridRow heading, AsRead asRead, Gathered into, CellReaders cells)
{
    private const string Separator = " ¦ ";

    private static readonly LocalDateTimePattern Minute = LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd HH:mm");
    private static readonly LocalDateTimePattern Second = LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd HH:mm:ss");

    private static readonly Dictionary<string, TimePrecision> Precisions = new()
    {
        ["exact"] = TimePrecision.Exact,
        ["about"] = TimePrecision.About,
        ["rounded"] = TimePrecision.Rounded,
        ["part of the day"] = TimePrecision.PartOfDay,
        ["day only"] = TimePrecision.DayOnly,
        ["from the entry beside it"] = TimePrecision.Borrowed,
        ["message stamp"] = TimePrecision.MessageStamp,
        ["reckoned"] = TimePrecision.Reckoned,
    };

    private readonly Dictionary<string, int> _columns = heading.Cells.Select((c, i) => (Name: c.Text.Trim(), i)).Where(c => c.Name.Length > 0).DistinctBy(c => c.Name).ToDictionary(c => c.Name, c => c.i);
    private readonly int[] _columnOf = ColumnsOf(heading);
    private readonly EntryRows _entries = new(cells);

    /// <summary>Reads a row below the heading.</summary>
    public void Read(GridRow row)
    {
        var id = Words(row, "row id");
        var written = id is not null && asRead.Wrote(id);
        if (row.Cells.Where((_, i) => i < heading.Cells.Length).All(c => c.IsEmpty) || (!written && !HasContent(row)))
        {
            Mark(row, row.IsBlank ? LineFate.Blank : LineFate.NotRecord);
            return;
        }

        var corrections = written ? Corrections(row, id!) : [];
        into.Corrections.AddRange(corrections);
        var seen = new RowCells(place, row, ColumnsFor(row));
        var sources = Sources(row) is { Count: > 0 } original ? original : [place.Of(row)];
        switch (kind)
        {
            case TableKind.Plan: Plan(seen, sources[0], corrections.Count > 0 || !written); break;
            case TableKind.NotDone: NotDone(seen, sources[0]); break;
            case TableKind.Words: Pair(seen, Field.Word, Field.Means, (word, means) => into.Words.Add(new FamilyWord(word, means))); break;
            case TableKind.Answers: Answer(row); break;
            case TableKind.FamilyQuestions: into.FamilyQuestions.Add(sources[0] with { Text = seen.Words(Field.Question) ?? "" }); Mark(row, LineFate.InRecords); break;
            default: Entry(seen, sources, corrections, mended: corrections.Count > 0 || !written); break;
        }
    }

    private void Entry(RowCells row, IReadOnlyList<SourceLine> sources, IReadOnlyList<Correction> corrections, bool mended)
    {
        var problems = into.Problems.Count;
        var precision = Precisions.GetValueOrDefault(Words(row.Row, "how exact") ?? "exact");
        var (startName, changed) = (Name(Field.Started), corrections.Select(c => c.Field).ToHashSet());
        var start = Time(row.At(Field.Started), "earliest", "latest", startName is not null && changed.Contains(startName) ? TimePrecision.Exact : precision, startName is not null && changed.Contains(startName));
        var end = Time(row.At(Field.Ended), "ended earliest", "ended latest", start is null ? precision : TimePrecision.About, changed.Contains("ended"));
        if (start is not null && end is not null && end.Latest < start.Earliest)
        {
            cells.Refuse(row.Source, "It ends before it starts.", "Correct the start or the end.");
            Mark(row.Row, LineFate.Problem);
            return;
        }

        var entry = _entries.Read(kind, row, new RowTimes(start, end));
        if (entry is null)
        {
            if (into.Problems.Count == problems) cells.Ask(row.Source, "This row holds no record that could be read.", "Write what happened and when, or delete the row.");
            Mark(row.Row, LineFate.Problem);
            return;
        }

        entry = Beyond(entry, row.Row) with { Sources = sources, HowRead = Words(row.Row, "how read") };
        into.Entries.Add(entry);
        if (mended) into.Mended.Add(entry);
        Mark(row.Row, LineFate.InRecords);
    }

    // The columns that a review has beside those of the contract.
    private CareEntry Beyond(CareEntry entry, GridRow row) => entry switch
    {
        Session session => session with { Areas = [.. session.Areas, .. ReviewAreas.Read(Words(row, "other areas"))] },
        Feed feed => feed with { MillilitresPerHour = Number(row, "ml per hour") },
        Check check => check with { SpO2High = Number(row, "spo2 high") },
        Dose dose => dose with { MedicineAsWritten = Words(row, "medicine as written") ?? dose.MedicineAsWritten },
        Sign sign => sign with { Number = Number(row, "number") is { } number && sign.Number is not null ? number : sign.Number },
        _ => entry,
    };

    private UncertainTime? Time(CellAt cell, string earliest, string latest, TimePrecision precision, bool typed)
    {
        var at = cell.Cell.Kind switch
        {
            CellKind.Moment or CellKind.Date => cell.Cell.At,
            CellKind.Text when LiteralTime.Read(cell.Cell.Text, out var literal) is LiteralOutcome.Moment or LiteralOutcome.DateOnly => literal,
            _ => (LocalDateTime?)null,
        };
        if (at is not { } stated)
        {
            if (!cell.Cell.IsEmpty) cells.Refuse(cell.Source, $"'{cell.Cell.Words}' is not a date and time.", "Write it as 2026-03-09 07:10.");
            return null;
        }

        if (typed) return UncertainTime.Exactly(stated);
        var (from, to) = (Moment(cell.Row, earliest) ?? stated, Moment(cell.Row, latest) ?? stated);
        if (from > stated || to < stated) return UncertainTime.Exactly(stated);
        return from == to ? precision == TimePrecision.Exact ? UncertainTime.Exactly(stated) : UncertainTime.At(stated, precision)
            : UncertainTime.Between(from, stated, to, precision == TimePrecision.Exact ? TimePrecision.About : precision);
    }

    private List<Correction> Corrections(GridRow row, string id)
    {
        var found = new List<Correction>();
        foreach (var (name, column) in _columns)
        {
            var (now, before) = (InWords(row[column]), asRead.Value(id, name) ?? "");
            if (now == before || !asRead.IsEditable(id, name) || SameNumber(now, before)) continue;
            found.Add(new Correction(place.Of(row, column), name, before, now));
        }

        return found;
    }

    // As the review itself writes a cell there: times to the minute, numbers with a full stop.
    private static string InWords(Cell cell) => cell.Kind switch
    {
        CellKind.Moment or CellKind.Date => cell.At.Second == 0 ? Minute.Format(cell.At) : Second.Format(cell.At),
        CellKind.Number => cell.Number.ToString("R", CultureInfo.InvariantCulture),
        CellKind.Empty => "",
        _ => cell.Text,
    };

    private static bool SameNumber(string one, string other) =>
        double.TryParse(one, NumberStyles.Float, CultureInfo.InvariantCulture, out var a) && double.TryParse(other, NumberStyles.Float, CultureInfo.InvariantCulture, out var b) && a == b;

    private void Plan(RowCells row, SourceLine source, bool mended)
    {
        var from = row[Field.From];
        var date = from.Kind is CellKind.Date or CellKind.Moment ? from.At.Date : (LocalDate?)null;
        var problems = into.Problems.Count;
        var read = PlanRows.Read(row, date, false, cells);
        // That a row has no date was asked about when it was first read.
        if (read is not null && !mended) into.Problems.RemoveRange(problems, into.Problems.Count - problems);
        if (read is not null) into.Plan.Add(read with { Source = source });
        Mark(row.Row, read is null ? LineFate.Problem : LineFate.InRecords);
    }

    private void NotDone(RowCells row, SourceLine source)
    {
        var due = Time(row.At(Field.Started), "earliest", "latest", Precisions.GetValueOrDefault(Words(row.Row, "how exact") ?? "exact"), false);
        if (due is not null) into.Omitted.Add(new OmittedSession(due, row.Words(Field.Reason), source));
        else cells.Ask(row.Source, "No time is written for when this session was due.", "Write the date and time in the row.");
        Mark(row.Row, due is null ? LineFate.Problem : LineFate.InRecords);
    }

    private void Answer(GridRow row)
    {
        var name = Words(row, "question name") ?? Words(row, "question");
        if (name is not null && Words(row, "answer") is { } answer)
        {
            into.Answers[name] = answer;
            Mark(row, LineFate.InRecords);
        }
        else Mark(row, LineFate.NotRecord);
    }

    private void Pair(RowCells row, Field first, Field second, Action<string, string> add)
    {
        if (row.Words(first) is { } one && row.Words(second) is { } two) add(one, two);
        Mark(row.Row, row.Words(second) is null ? LineFate.NotRecord : LineFate.InRecords);
    }

    private List<SourceLine> Sources(GridRow row)
    {
        var (files, places, texts) = (Parts(row, "source file"), Parts(row, "source place"), Parts(row, "source text"));
        var sources = new List<SourceLine>();
        for (var i = 0; i < files.Length && i < places.Length; i++)
        {
            var text = i < texts.Length ? texts[i] : "";
            if (places[i].StartsWith("line ", StringComparison.Ordinal) && int.TryParse(places[i].AsSpan(5), NumberStyles.None, CultureInfo.InvariantCulture, out var line))
                sources.Add(SourceLine.InText(files[i], line, text));
            else if (places[i].StartsWith("sheet ", StringComparison.Ordinal) && places[i].LastIndexOf(", ", StringComparison.Ordinal) is > 6 and var comma)
                sources.Add(SourceLine.InSheet(files[i], places[i][6..comma], places[i][(comma + 2)..], text));
        }

        return sources;
    }

    private string[] Parts(GridRow row, string column) => Words(row, column) is { } words ? words.Split(Separator) : [];

    // A medicine that was not known is read again from its own words: a word explained since then settles it.
    private int[] ColumnsFor(GridRow row)
    {
        if (kind != TableKind.Medicines || Words(row, "medicine") != Medicines.Unknown || Words(row, "medicine as written") is null) return _columnOf;
        var columns = _columnOf.ToArray();
        columns[(int)Field.Medicine] = _columns["medicine as written"];
        return columns;
    }

    // A row that a person added: something stands in a column of the contract.
    private bool HasContent(GridRow row) => Enumerable.Range(0, _columnOf.Length).Any(f => (Field)f is not (Field.RowId or Field.SourceFile or Field.SourcePlace or Field.SourceText or Field.HowRead or Field.Earliest or Field.Latest) && _columnOf[f] >= 0 && !row[_columnOf[f]].IsEmpty);

    private string? Name(Field field) => _columnOf[(int)field] is >= 0 and var column ? heading[column].Words : null;

    private string? Words(GridRow row, string column) => _columns.TryGetValue(column, out var at) ? row[at].Words : null;

    private double? Number(GridRow row, string column) => _columns.TryGetValue(column, out var at) && row[at].Kind == CellKind.Number ? row[at].Number : null;

    private LocalDateTime? Moment(GridRow row, string column) => _columns.TryGetValue(column, out var at) && row[at].Kind is CellKind.Moment or CellKind.Date ? row[at].At : null;

    private void Mark(GridRow row, LineFate fate) => into.Ledger.Mark(row.Line, row.LineCount, fate);

    private static int[] ColumnsOf(GridRow heading)
    {
        var columns = new int[Enum.GetValues<Field>().Length];
        Array.Fill(columns, -1);
        for (var i = heading.Cells.Length - 1; i >= 0; i--)
            if (CanonicalHeader.FieldOf(heading[i].Text) is var field and not Field.Unknown)
                columns[(int)field] = i;
        return columns;
    }
}
