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
        if (when.Start is { } told && IsSentence(text) && !(what.Kind == TableKind.Feeds && !Lasted(row).IsNone) && words.Told(text, null, told, row[0].Place.File) is var inWords && (TellsSeveral(inWords, text) && ReadEach(kindCell, when, text) || TellsAll(inWords, told) && words.Read(kindCell, null, when.Day, when.Start, keepAll: true)))
        {
            foreach (var cell in TextCells(row)) words.Read(cell, null, when.Day, when.Start, keepAll: false);
            if (when.Start is { } measured) measures.AddChecks(row, Measures(), measured, []);
            SignsBeside(row, told, when);
            return;
        }

        // "post CPT" beside readings: which they were.
        if (what.Kind == TableKind.Sessions && when.Start is { } read && PhaseOfSession(text) is { } phase && Measures().Exists(c => !row[c].Cell.IsEmpty && reading.Block.Columns[c].Role == Role.Saturation))
        {
            measures.AddChecks(row, Measures(), read, [], phase);
            reading.Saw(kindCell);
            SignsBeside(row, read, when);
            Remarks(row, kindCell, read, when);
            return;
        }

        var at = when.Start ?? (when.Day is { } day ? UncertainTime.OnDay(day) : null);
        if (at is null) return;
        if ((SameAs.SaysNotDone(reading.Context.Words.MeaningOf(text) ?? text) || SaysRefused(text) || text.StartsWith("no ", StringComparison.OrdinalIgnoreCase) || SaysNone(row)) && what.Kind is TableKind.Sessions or TableKind.Feeds or TableKind.Medicines)
        {
            LeftOut(row, what, at, text);
            if (when.Start is { } measured) measures.AddChecks(row, Measures(), measured, []);
            SignsBeside(row, at, when);
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
                SignsBeside(row, at, when);
                return;
        }

        if (what.Sign != SignKind.Temperature) SignsBeside(row, at, when, ofSession: what.Kind == TableKind.Sessions);
        // Before and after in columns beside a physio are of its start and end, not of a minute of their own.
        measures.AddChecks(row, Measures(), at, what.Kind == TableKind.Sessions && reading.LastSession is { } session && session.Sources[^1].Place == row.Source.Place ? [session] : []);
    }

    // The temperature, and cough, colour and the like where they are not of the row's session.
    private void SignsBeside(BlockRow row, UncertainTime at, RowWhen when, bool ofSession = false)
    {
        foreach (var column in Of(Role.Temperature).Concat(Of(Role.Breathing)).Concat(ofSession ? [] : Of(Role.Cough).Concat(Of(Role.Secretions)).Concat(Of(Role.Colour)).Concat(Of(Role.Vomit))).Where(c => !row[c].Cell.IsEmpty))
            measures.AddSign(row, column, at, when.Day);
    }

    // "post CPT", "before physio": the phase, and nothing but the session that it is of.
    private static CheckPhase? PhaseOfSession(string text) => text.IndexOf(' ', StringComparison.Ordinal) is > 0 and var space && SmallWords.ReadPhase(text[..space]) is { } phase && Lexicon.Split(text[space..]) is { Count: 1 or 2 } rest
        && Lexicon.Find(string.Join(' ', rest), out _).All(k => k.Concept is Concept.Session or Concept.Percussion) ? phase : null;

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
        // "chesty, brought up clear phlegm" beside a cough.
        if (what.Sign == SignKind.Cough)
            foreach (var cell in cells)
                foreach (var piece in cell.Cell.Text.Split(',', StringSplitOptions.TrimEntries))
                    if (KindWords.Read(piece, FamilyWords.None) is { Kind: TableKind.Signs, Sign: SignKind.Secretions }) reading.Add(NewSign(row, SignKind.Secretions, piece, null, at), cell);
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
        if (when.Start is { } then) SignsBeside(row, then, when);
        var cells = row.Cells.Where(c => c.Column != reading.Slots.Date && c.Column != reading.Slots.Time && !(c.Column == reading.Slots.End && when.End is not null) && !measured.Contains(c.Column) && !c.Cell.IsEmpty && reading.Block.Columns.ElementAtOrDefault(c.Column)?.Role is not (Role.Ignore or Role.By or Role.Count or Role.Part or Role.Temperature or Role.Breathing or Role.Cough or Role.Secretions or Role.Colour or Role.Vomit)).ToList();
        // "Same again" where what was done stands: the session before it.
        if (when.Start is { } again && cells is [{ } only] && SameAs.PointsBack(only.Cell.Text) && reading.Same(only.Cell.Text, again.Stated.TimeOfDay) is { Areas.Count: > 0 } same)
        {
            reading.Add(new Session { Sources = [row.Source], Start = again, Areas = same.Areas, By = By(row) }, only);
            return;
        }

        // "E" of the key's "event" says nothing beside what happened.
        if (cells.Count > 1 && row[reading.Slots.Kind].Cell.Words is { Length: <= 2 } letter && reading.Context.Words.MeaningOf(letter) is not null && cells.RemoveAll(c => c.Column == row[reading.Slots.Kind].Column) > 0) reading.Saw(row[reading.Slots.Kind]);
        if (cells.Count == 0) return;
        if (words.Read(cells[0], null, when.Day, when.Start, keepAll: true, string.Join(' ', cells.Select(c => c.Cell.Words)))) cells.ForEach(reading.Saw);
    }

    // "4 puffs of salbutamol" says more than what kind it was.
    private static bool IsSentence(string text) =>
        text.Split(' ', StringSplitOptions.RemoveEmptyEntries) is { Length: >= 3 } parts && parts.Any(p => char.IsAsciiDigit(p[0]));

    // The parts of a cell that tells of several events, each with its own time or the row's.
    private static string[] Pieces(string text) => text.Split([", then ", ", ", "; ", " then ", ". "], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);

    private bool ReadEach(CellAt cell, RowWhen when, string text)
    {
        var any = false;
        foreach (var piece in Pieces(text)) any |= words.Read(cell, null, when.Day, when.Start, keepAll: true, piece);
        return any;
    }

    // "alb 1945, CPT 3": two events in one cell, each with its words.
    private bool TellsSeveral(IReadOnlyList<CareEntry> entries, string text) => entries.Where(e => e is Session { } or Dose { } or Feed { }).Select(e => e.GetType()).Distinct().Count() > 1
        && Pieces(text).Select(p => KindWords.Read(p, reading.Context.Words)?.Kind).OfType<TableKind>().Distinct().Count() > 1;

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
        return folded.Contains("didn't want", StringComparison.Ordinal) || folded.Contains("didn't give", StringComparison.Ordinal) || folded.Contains("did not give", StringComparison.Ordinal) || folded.Contains("did not want", StringComparison.Ordinal) || folded.Contains("refused", StringComparison.Ordinal) || folded.Contains("nothing taken", StringComparison.Ordinal)
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

    private List<int> Measures() => [.. Of(Role.Saturation).Concat(Of(Role.Pulse)).Concat(Of(Role.Oxygen)).Concat(Of(Role.Phase)).Order()];

    private IEnumerable<int> Of(Role role) => reading.Slots.Of(role);

    private string? By(BlockRow row) => row[reading.Slots.By].Cell.Words;
}
