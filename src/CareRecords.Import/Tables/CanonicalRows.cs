using CareRecords.Import.Accounting;
using CareRecords.Import.Notes;
using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Tables;

/// <summary>Reads the rows of a table of the contract one by one, without keeping them.</summary>
internal sealed class CanonicalRows(Place place, CanonicalHeader header, Gathered into, CellReaders cells)
{
    private readonly EntryRows _entries = new(cells);

    /// <summary>
    /// Reads one row below the header. False when a time is written in another way than the contract's: then the whole table
    /// must be read as one of free layout, where the day order is decided from all of it.
    /// </summary>
    public bool TryRead(GridRow row)
    {
        if (row.IsBlank)
        {
            into.Ledger.Mark(row.Line, row.LineCount, LineFate.Blank);
            return true;
        }

        var seen = new RowCells(place, row, header.ColumnOf);
        if (IsHeaderAgain(row))
        {
            SetAside(row, "the heading again");
            return true;
        }

        var problemsBefore = into.Problems.Count;
        if (HasTooManyCells(row) is { } extra) cells.Ask(place.Of(row, extra), $"This row has more cells than its heading: '{row[extra].Words}' stands under no heading.", "Put quotes around a cell that holds the separator, or move it under a heading.");
        return header.Kind switch
        {
            TableKind.Plan => Plan(seen),
            TableKind.NotDone => NotDone(seen),
            TableKind.Words => Pair(seen, Field.Word, Field.Means, (word, means) => into.Words.Add(new FamilyWord(word, means))),
            TableKind.Answers => Answer(seen),
            TableKind.FamilyQuestions => FamilyQuestion(seen),
            _ => Entry(seen, problemsBefore),
        };
    }

    private bool Entry(RowCells row, int problemsBefore)
    {
        if (!Times(row, out var times, out var impossible)) return false;
        if (!impossible && Backwards(times) is { } why)
        {
            cells.Refuse(row.Source, why, "Correct the start or the end.");
            impossible = true;
        }

        var entry = impossible ? null : _entries.Read(header.Kind, row, times);
        if (entry is not null && row.Row.Comments.Count > 0) entry = Commented(entry, row);
        if (entry is not null)
        {
            if (row.Words(Field.HowRead) is { } how) entry = entry with { HowRead = how };
            into.Entries.Add(entry);
        }
        else if (into.Problems.Count == problemsBefore)
        {
            cells.Ask(row.Source, "This row holds no record that could be read.", "Write what happened and when, or delete the row.");
        }

        into.Ledger.Mark(row.Row.Line, row.Row.LineCount, entry is null ? LineFate.Problem : LineFate.InRecords);
        return true;
    }

    // A comment on a cell is a note; one that tells of another event is asked about.
    private CareEntry Commented(CareEntry entry, RowCells row)
    {
        var words = string.Join("; ", row.Row.Comments.Select(c => c.Text));
        foreach (var comment in row.Row.Comments.Where(c => Layouts.LeftOvers.HoldsEvent(c.Text)))
            cells.Ask(place.Of(row.Row, comment.Column), $"The comment '{comment.Text}' was not read as a record.", "Write it in a row of its own, if it is one.");
        return entry with { Note = entry.Note is null ? words : entry.Note + "; " + words };
    }

    private bool Times(RowCells row, out RowTimes times, out bool impossible)
    {
        times = default;
        impossible = false;
        if (!Time(row, Field.Started, out var start, ref impossible) || !Time(row, Field.Ended, out var end, ref impossible)
            || !Time(row, Field.Earliest, out var earliest, ref impossible) || !Time(row, Field.Latest, out var latest, ref impossible))
            return false;
        if (start is { } stated && (earliest ?? latest) is not null)
        {
            var (from, to) = (earliest?.Earliest ?? stated.Earliest, latest?.Latest ?? stated.Latest);
            if (from <= stated.Stated && stated.Stated <= to && from < to) start = UncertainTime.Between(from, stated.Stated, to, TimePrecision.About);
        }

        times = new RowTimes(start, end);
        return true;
    }

    private bool Time(RowCells row, Field field, out UncertainTime? time, ref bool impossible)
    {
        time = null;
        var cell = row[field];
        switch (cell.Kind)
        {
            case CellKind.Empty:
                return true;
            case CellKind.Moment:
                time = UncertainTime.Exactly(cell.At);
                return true;
            case CellKind.Date:
                time = UncertainTime.OnDay(cell.At.Date);
                return true;
            case CellKind.Number or CellKind.TimeOfDay:
                return false;
        }

        switch (LiteralTime.Read(LiteralTime.WithoutAbout(cell.Text, out var about), out var at))
        {
            case LiteralOutcome.Moment:
                time = about ? LiteralTime.About(at) : UncertainTime.Exactly(at);
                return true;
            case LiteralOutcome.DateOnly:
                time = UncertainTime.OnDay(at.Date);
                return true;
            case LiteralOutcome.Impossible:
                impossible = true;
                cells.Refuse(row.At(field).Source, $"There is no such date or time as '{cell.Words}'.", "Correct it: year-month-day hours:minutes, such as 2026-03-09 07:10.");
                return true;
            default:
                return NotSaid.Is(cell.Text.Trim());
        }
    }

    private static string? Backwards(RowTimes times) =>
        times is { Start: { } start, End: { } end } && end.Latest < start.Earliest
            ? $"It ends ({Shown(end)}) before it starts ({Shown(start)})."
            : null;

    private static string Shown(UncertainTime time) =>
        NodaTime.Text.LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd HH:mm").Format(time.Stated);

    private bool Plan(RowCells row)
    {
        var impossible = false;
        if (!Time(row, Field.From, out var from, ref impossible)) return false;
        var read = PlanRows.Read(row, from?.Stated.Date, impossible, cells);
        if (read is not null) into.Plan.Add(read);
        into.Ledger.Mark(row.Row.Line, row.Row.LineCount, read is null ? LineFate.Problem : LineFate.InRecords);
        return true;
    }

    private bool NotDone(RowCells row)
    {
        var impossible = false;
        if (!Time(row, Field.Started, out var due, ref impossible)) return false;
        if (due is null && !impossible) cells.Ask(row.Source, "No time is written for when this session was due.", "Write the date and time in the row.");
        if (due is not null) into.Omitted.Add(new OmittedSession(due, Reason(row), row.Source));
        into.Ledger.Mark(row.Row.Line, row.Row.LineCount, due is null ? LineFate.Problem : LineFate.InRecords);
        return true;
    }

    private static string? Reason(RowCells row) => (row.Words(Field.Reason), row.Words(Field.Note)) switch
    {
        ({ } reason, { } note) => $"{reason}; {note}",
        var (reason, note) => reason ?? note,
    };

    private bool Pair(RowCells row, Field first, Field second, Action<string, string> add)
    {
        if (row.Words(first) is { } one && row.Words(second) is { } two)
        {
            add(one, two);
            into.Ledger.Mark(row.Row.Line, row.Row.LineCount, LineFate.InRecords);
            return true;
        }

        cells.Ask(row.Source, "This row needs both of its cells.", "Fill in the empty one, or delete the row.");
        into.Ledger.Mark(row.Row.Line, row.Row.LineCount, LineFate.Problem);
        return true;
    }

    // A question with no answer yet is not a problem: it is the tool's own list coming back.
    private bool Answer(RowCells row)
    {
        if (row.Words(Field.Answer) is null && row.Words(Field.Question) is not null)
        {
            SetAside(row.Row, "a question without an answer yet");
            return true;
        }

        return Pair(row, Field.Question, Field.Answer, (question, answer) => into.Answers[question] = answer);
    }

    private bool FamilyQuestion(RowCells row)
    {
        into.FamilyQuestions.Add(row.Source with { Text = row.Words(Field.Question) ?? row.Row.Text });
        into.Ledger.Mark(row.Row.Line, row.Row.LineCount, LineFate.InRecords);
        return true;
    }

    private void SetAside(GridRow row, string why)
    {
        into.SetAside.Add(new SetAsideLine(place.Of(row), why));
        into.Ledger.Mark(row.Line, row.LineCount, LineFate.NotRecord);
    }

    private bool IsHeaderAgain(GridRow row) =>
        row.Cells.Length >= 1 && row[0].Kind == CellKind.Text && !char.IsAsciiDigit(row[0].Text[0]) && CanonicalHeader.Read(row) is { } again && again.Kind == header.Kind;

    private int? HasTooManyCells(GridRow row)
    {
        for (var i = header.Fields.Count; i < row.Cells.Length; i++)
            if (!row.Cells[i].IsEmpty)
                return i;
        return null;
    }
}
