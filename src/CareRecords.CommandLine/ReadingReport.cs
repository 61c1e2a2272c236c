using System.Globalization;
using System.Text;
using CareRecords.Records;

namespace CareRecords.CommandLine;

/// <summary>What was read, said on the terminal in plain words.</summary>
internal static class ReadingReport
{
    // Rows put into words at a time on one processor.
    private const int Batch = 4_096;

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
        var rows = new List<Row>(log.Entries.Count + log.NotRecords.Count + log.Problems.Count);
        foreach (var entry in log.Entries)
            foreach (var source in entry.Sources)
                rows.Add(new Row(source, entry));
        foreach (var omitted in log.Omitted) rows.Add(new Row(omitted.Source, omitted));
        foreach (var row in log.Plan.Rows)
            if (row.Source is { } source)
                rows.Add(new Row(source, row));
        foreach (var question in log.FamilyQuestions) rows.Add(new Row(question, question));
        foreach (var aside in log.NotRecords) rows.Add(new Row(aside.Source, aside));
        foreach (var problem in log.Problems) rows.Add(new Row(problem.Source, problem));
        // Sorted by a number each: comparing a million places by their names would take longer than all else here.
        var places = new HashSet<(string File, string? Sheet)>();
        foreach (var row in rows) places.Add((row.Source.File, row.Source.Sheet));
        var ranks = places.OrderBy(p => p.File, StringComparer.Ordinal).ThenBy(p => p.Sheet, StringComparer.Ordinal).Select((p, rank) => (p, rank)).ToDictionary();
        return [.. rows.OrderBy(r => ((long)ranks[(r.Source.File, r.Source.Sheet)] << 32) + (r.Source.Line ?? RowOf(r.Source.Cell)))];
    }

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
        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"Sessions {Count<Session>(log)}, feeds {Count<Feed>(log)}, doses {Count<Dose>(log)}, checks {Count<Check>(log)}, signs {Count<Sign>(log)}; "
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

    private static int Count<T>(CareLog log) => log.Entries.Count(e => e is T);

    private static int RowOf(string? cell) =>
        int.TryParse(cell?.TrimStart([.. "ABCDEFGHIJKLMNOPQRSTUVWXYZ"]), NumberStyles.None, CultureInfo.InvariantCulture, out var row) ? row : 0;

    private static string OneLine(string text)
    {
        var line = text.ReplaceLineEndings(" ").Trim();
        return line.Length <= 200 ? line : string.Concat(line.AsSpan(0, 200), " ...");
    }
}
