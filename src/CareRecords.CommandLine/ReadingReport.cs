using System.Globalization;
using System.Text;
using CareRecords.Records;

namespace CareRecords.CommandLine;

/// <summary>What was read, said on the terminal in plain words.</summary>
internal static class ReadingReport
{
    // Rows put into words at a time on one processor.
    private const int Batch = 16_384;

    /// <summary>Every line with what it was taken for, in the order of the inputs.</summary>
    public static void LineByLine(CareLog log, TextWriter output)
    {
        // A log may hold a million lines: they are put into words a few at a time, on every processor, and forgotten when written.
        var rows = InOrderOfInputs(log);
        var words = new StringBuilder[rows.Count > Batch ? Environment.ProcessorCount : 1];
        for (var part = 0; part < words.Length; part++) words[part] = new StringBuilder();
        for (var from = 0; from < rows.Count; from += words.Length * Batch)
        {
            var start = from;
            if (words.Length == 1) PutIntoWords(rows, from, words[0]);
            else Parallel.For(0, words.Length, part => PutIntoWords(rows, start + part * Batch, words[part]));
            foreach (var some in words) output.Write(some);
        }
    }

    private static List<Row> InOrderOfInputs(CareLog log)
    {
        var records = new List<Row>(log.Entries.Count);
        foreach (var entry in log.Entries)
            for (var i = 0; i < entry.Sources.Count; i++)
                records.Add(new Row(entry.Sources[i], entry));
        List<Row> others =
        [
            .. log.Omitted.Select(o => new Row(o.Source, o)), .. log.Plan.Rows.Where(r => r.Source is not null).Select(r => new Row(r.Source!, r)), .. log.FamilyQuestions.Select(q => new Row(q, q)),
            .. log.NotRecords.Select(a => new Row(a.Source, a)), .. log.Problems.Select(p => new Row(p.Source, p)),
        ];
        var sheets = Sheets(records.Concat(others));
        var ((first, places), (second, otherPlaces)) = (InOrder(records, sheets), InOrder(others, sheets));
        var rows = new List<Row>(first.Count + second.Count);
        var next = 0;
        for (var i = 0; i < first.Count; i++)
        {
            for (; next < second.Count && otherPlaces[next] < places[i]; next++) rows.Add(second[next]);
            rows.Add(first[i]);
        }

        rows.AddRange(second.Skip(next));
        return rows;
    }

    // The sheets and texts that rows name, in order.
    private static Dictionary<(string File, string? Sheet), int> Sheets(IEnumerable<Row> rows)
    {
        var sheets = new HashSet<(string File, string? Sheet)>();
        var last = (File: "", Sheet: (string?)null);
        foreach (var (source, _) in rows)
            if (!IsSameSheet(last, source)) sheets.Add(last = (source.File, source.Sheet));
        return sheets.OrderBy(p => p.File, StringComparer.Ordinal).ThenBy(p => p.Sheet, StringComparer.Ordinal).Select((p, rank) => (p, rank)).ToDictionary();
    }

    // Sorted by a number each: comparing a million places by their names would take longer than all else here. One table's records are in order already.
    private static (List<Row> Rows, long[] Places) InOrder(List<Row> rows, Dictionary<(string File, string? Sheet), int> sheets)
    {
        var places = new long[rows.Count];
        var (last, rank, ascending) = ((File: "", Sheet: (string?)null), -1, true);
        for (var i = 0; i < places.Length; i++)
        {
            var source = rows[i].Source;
            if (rank < 0 || !IsSameSheet(last, source)) (last, rank) = ((source.File, source.Sheet), sheets[(source.File, source.Sheet)]);
            places[i] = ((long)rank << 32) + (source.Line ?? RowOf(source.Cell));
            ascending &= i == 0 || places[i] >= places[i - 1];
        }

        if (ascending) return (rows, places);
        var order = Enumerable.Range(0, places.Length).OrderBy(i => places[i]).ToList();
        return (order.ConvertAll(i => rows[i]), [.. order.Select(i => places[i])]);
    }

    private static bool IsSameSheet((string File, string? Sheet) sheet, SourceLine source) => ReferenceEquals(sheet.File, source.File) && ReferenceEquals(sheet.Sheet, source.Sheet);

    private static void PutIntoWords(List<Row> rows, int from, StringBuilder words)
    {
        words.Clear();
        for (var i = from; i < rows.Count && i < from + Batch; i++)
        {
            var (source, what) = (rows[i].Source, rows[i].What);
            if (i == 0 || !IsSamePlace(rows[i - 1].Source, source)) words.Append(source.Place).Append(": ").Append(OneLine(source.Text)).Append(Environment.NewLine);
            words.Append("    -> ").Append(Meaning(what)).Append(Environment.NewLine);
        }
    }

    // A line and something that it was taken for.
    private readonly record struct Row(SourceLine Source, object What);

    private static bool IsSamePlace(SourceLine a, SourceLine b) => a.Line == b.Line && a.Cell == b.Cell && a.Place == b.Place;

    private static string Meaning(object what) => what switch
    {
        CareEntry entry => Wording.Of(entry),
        OmittedSession omitted => $"not done: {omitted.Reason ?? "no reason given"}",
        PlanRow row => Wording.Of(row),
        SourceLine => "a question for the clinic",
        SetAsideLine aside => $"set aside: {aside.Why}",
        ImportProblem problem => $"{(problem.Severity == ProblemSeverity.Ask ? "ASK" : "REFUSED")}: {problem.Why}",
        _ => throw new ArgumentException($"A line is not taken for {what.GetType()}.", nameof(what)),
    };

    /// <summary>The counts: they always add up.</summary>
    public static void Summary(CareLog log, TextWriter output)
    {
        var lines = log.Lines;
        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"Read {lines.Read} lines = {lines.InRecords} in records + {lines.NotRecords} set aside + {lines.Problems} to check + {lines.Blank} blank."));
        var (sessions, feeds, doses, checks, signs) = Counts(log);
        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"Sessions {sessions}, feeds {feeds}, doses {doses}, checks {checks}, signs {signs}; "
            + $"written twice and counted once: {log.Merged.Count}. Time zone {log.Zone}, from {log.ZoneFrom}."));
        foreach (var alone in log.Inputs.Where(i => i.Kind == "left alone")) output.WriteLine($"Left alone: {alone.Name} ({alone.Note}).");
    }

    /// <summary>The questions, the most useful first, and what was refused.</summary>
    public static void WhatNeedsChecking(CareLog log, TextWriter output, int most)
    {
        var open = log.Questions.Where(q => q.Answer is null).ToList();
        var names = log.Questions.Select(q => q.Name).ToHashSet(StringComparer.Ordinal);
        var lone = log.Problems.Where(p => p.Question is null || !names.Contains(p.Question)).ToList();
        if (open.Count + lone.Count == 0) return;
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"To check: {open.Count} questions, {lone.Count} other lines."));
        foreach (var question in open.Take(most))
        {
            var lines = question.Sources.Count == 1 ? question.Sources[0].Place : string.Create(CultureInfo.InvariantCulture, $"{question.Sources.Count} lines, the first {question.Sources[0].Place}");
            output.WriteLine($"  ? {question.Text} ({lines}) [{question.Name}]");
        }

        foreach (var problem in lone.Take(Math.Max(0, most - open.Count)))
            output.WriteLine($"  {(problem.Severity == ProblemSeverity.Ask ? "?" : "x")} {problem.Source.Place}: {problem.Why} {problem.Fix}");
        if (open.Count + lone.Count > most)
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  ... and {open.Count + lone.Count - most} more: 'carerecords read' shows all."));
    }

    /// <summary>0, or 3 under <c>--strict</c> when anything needs checking.</summary>
    public static int ExitCodeFor(CareLog log, bool strict) =>
        strict && (log.Problems.Count > 0 || log.Questions.Any(q => q.Answer is null)) ? ExitCode.NeedsChecking : ExitCode.Done;

    private static (int Sessions, int Feeds, int Doses, int Checks, int Signs) Counts(CareLog log)
    {
        var (sessions, feeds, doses, checks, signs) = (0, 0, 0, 0, 0);
        foreach (var entry in log.Entries)
            switch (entry)
            {
                case Session: sessions++; break;
                case Feed: feeds++; break;
                case Dose: doses++; break;
                case Check: checks++; break;
                case Sign: signs++; break;
            }

        return (sessions, feeds, doses, checks, signs);
    }

    private static int RowOf(string? cell) =>
        int.TryParse(cell?.TrimStart([.. "ABCDEFGHIJKLMNOPQRSTUVWXYZ"]), NumberStyles.None, CultureInfo.InvariantCulture, out var row) ? row : 0;

    private static string OneLine(string text)
    {
        var line = text.ReplaceLineEndings(" ").Trim();
        return line.Length <= 200 ? line : string.Concat(line.AsSpan(0, 200), " ...");
    }
}
