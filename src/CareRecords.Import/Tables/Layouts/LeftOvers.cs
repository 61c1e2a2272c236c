using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>
/// The net under all the readers of a row: a cell that says something of care and of which no record was made is asked about, so that
/// nothing is swallowed. Questions are grouped by column.
/// </summary>
internal sealed class LeftOvers(BlockReading reading)
{
    /// <summary>The question of what a column holds.</summary>
    public static string Question(string file, string heading) => $"column:{file}:{heading.ToLowerInvariant()}";

    /// <summary>Asks about what a row still holds.</summary>
    /// <param name="row">The row, read.</param>
    /// <param name="problemsBefore">How many problems there were before it was read.</param>
    /// <param name="entriesBefore">How many records there were.</param>
    /// <param name="gave">True when it gave a record, a session left out or a question.</param>
    public void Ask(BlockRow row, int problemsBefore, int entriesBefore, bool gave)
    {
        Counts(row, reading.Into.Entries.Skip(entriesBefore).OfType<Session>().Count());
        var asked = reading.Into.Problems.Skip(problemsBefore).Select(p => p.Source).ToList();
        // A row that is asked about as a whole, and gave nothing, needs no second question.
        if (asked.Exists(s => s.Place == row.Source.Place) && !reading.Block.IsAcross && reading.Into.Entries.Count == entriesBefore) return;
        var whys = reading.Into.Problems.Skip(problemsBefore).Select(p => p.Why).ToList();
        // What hangs on a time that was refused is asked about with it.
        if (!reading.Block.IsAcross && row.Cells[0].Place.Sheet is not null && asked.Exists(s => s.Place == row[reading.Slots.Time].Source.Place || s.Place == row[reading.Slots.Date].Source.Place) && (reading.Slots.Time >= 0 || reading.Slots.Date >= 0)) return;
        var count = reading.Into.Problems.Count;
        for (var i = 0; i < row.Cells.Count; i++)
        {
            var cell = row[i];
            if (cell.Cell.IsEmpty || reading.IsUsed(cell) || asked.Exists(s => s.Place == cell.Source.Place && (cell.Place.Sheet is not null || whys.Exists(w => w.Contains(cell.Cell.Words!.Length > 2 ? cell.Cell.Words! : $"'{cell.Cell.Words}'", StringComparison.Ordinal))))) continue;
            var column = i < reading.Block.Columns.Count ? reading.Block.Columns[i] : new ColumnMeaning("", Role.Unknown);
            if (Matters(cell, column)) Column(cell, column, i);
        }

        Comments(row, problemsBefore);

        if (gave || reading.Into.Problems.Count > count || reading.Block.IsAcross) return;
        if (row.Cells.Where((_, i) => i != reading.Slots.Date && i != reading.Slots.Time && i != reading.Slots.By).Any(c => !c.Cell.IsEmpty && (HoldsEvent(c.Cell.Text) || SaysDone(c.Cell.Text))) && reading.Slots.HasTimeIn(row))
            reading.Cells.Ask(row.Source, "This row has a time, but no record could be made of it.", "Write what happened in words such as physio, feed, inhaler or sats.");
    }

    // "she did one about 9": in a row that gave nothing else these are words of something that was done.
    private static bool SaysDone(string text) =>
        text.Length > 8 && Lexicon.Split(text) is { Count: > 2 } words && words.Any(w => w is "did" or "done" or "gave" or "had" or "took" or "given") && !SameAs.SaysNotDone(text) && !SameAs.IsNo(text)
        && (words.Any(w => w is "one" or "it" or "them" or "both" or "his" or "her" or "some") || text.Any(char.IsAsciiDigit));

    // "3" under "sessions" beside two that are written.
    private void Counts(BlockRow row, int sessions)
    {
        if (reading.Slots.Time >= 0 || reading.Slots.Kind >= 0) return;
        foreach (var column in reading.Slots.Of(Role.Count).Where(c => HeadingReader.IsOfSessions(reading.Block.Columns[c].Heading)))
            if (int.TryParse(row[column].Cell.Text, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var count) && count > sessions)
                reading.Cells.Ask(row[column].Source, FormattableString.Invariant($"{count} sessions are counted, but {sessions} could be read."), "Write the time of each session.");
    }

    // A comment is read like a remark beside its row; what it tells and was not read is asked about.
    private void Comments(BlockRow row, int problemsBefore)
    {
        foreach (var (cell, comment) in reading.CommentsOf(row))
            if (HoldsEvent(comment.Text) && !reading.IsCommentRead(cell) && !reading.Into.Problems.Skip(problemsBefore).Any(p => p.Source.Place == cell.Source.Place))
                reading.Cells.Ask(cell.Source, $"The comment '{comment.Text}' was not read as a record.", "Write it in a row of its own, if it is one.");
    }

    private void Column(CellAt cell, ColumnMeaning column, int index)
    {
        var called = column.Heading.Length > 0 ? column.Heading : "column " + Place.CellName(index, 0).TrimEnd('0');
        var name = Question(cell.Place.File, called);
        reading.Into.Questions.TryAdd(name, new Notes.AskedQuestion(
            $"What does '{called}' in {cell.Place.File} hold? Cells such as '{cell.Cell.Words}' were not read.",
            ["sats", "pulse", "oxygen", "physio", "feed", "inhaler", "temperature", "note", "not of this record"]));
        reading.Cells.Ask(cell.Source, $"'{cell.Cell.Words}' under '{called}' was not read.", "Say what the column holds by answering the question, or head it with a word such as sats, pulse, physio or feed.", name);
    }

    private static bool Matters(CellAt cell, ColumnMeaning column)
    {
        var text = cell.Cell.Words!;
        if (NotSaid.Is(text) || SmallWords.ReadYesNo(text) == false) return false;
        return column.Role switch
        {
            Role.Date or Role.Time or Role.Start or Role.End or Role.By or Role.Ignore or Role.Word or Role.Means or Role.Kind or Role.Part or Role.Rate => false,
            // "3" under "R side" where no reader took it for minutes.
            Role.Side => text.Any(char.IsAsciiDigit),
            Role.Count => !HeadingReader.IsOfSessions(column.Heading) && text.Any(c => c is >= '1' and <= '9'),
            Role.Note or Role.Detail or Role.Reason => HoldsEvent(text),
            Role.Unknown => IsFigure(cell.Cell) || HoldsEvent(text),
            Role.Cough or Role.Secretions or Role.Colour or Role.Route or Role.Technique or Role.Phase => false,
            _ => text.Any(char.IsAsciiDigit) || SmallWords.ReadYesNo(text) == true || HoldsEvent(text),
        };
    }

    /// <summary>True for a tick, a number or a time alone in its cell.</summary>
    public static bool IsFigure(Cell cell) =>
        cell.Kind != CellKind.Text || SmallWords.ReadYesNo(cell.Text) == true
        || (cell.Text.Any(char.IsAsciiDigit) && (CellTimes.Read(cell).Outcome != Outcome.Nothing || !cell.Text.Any(char.IsLetter)));

    /// <summary>True for words of care beside a clock time or a number with its unit: "PT also at 1pm", "gave paracetamol 5 ml".</summary>
    public static bool HoldsEvent(string text)
    {
        if (!text.Any(char.IsAsciiDigit)) return false;
        return Lexicon.Find(text, out _).Any(k => k.Medicine is not null || k.Concept is Concept.Session or Concept.Percussion or Concept.Vibration or Concept.Feed
            or Concept.Pump or Concept.Bolus or Concept.Inhaler or Concept.Medicine or Concept.Saturation or Concept.Oxygen or Concept.Temperature or Concept.Pulse)
            || (text.Length > 12 && CellTerms.Read(text).Exists(t => t.Kind == TermKind.Word && (t.Is(Sense.Technique) || t.Is(Sense.Session) || t.Is(Sense.Device) || t.Is(Sense.Medicine) || t.Is(Sense.SatLabel))));
    }
}
