using System.Globalization;
using CareRecords.Records;

namespace CareRecords.CommandLine;

/// <summary>What was read, said on the terminal in plain words.</summary>
internal static class ReadingReport
{
    /// <summary>Every line with what it was taken for, in the order of the inputs.</summary>
    public static void LineByLine(CareLog log, TextWriter output)
    {
        // What it was taken for is put into words only as it is written: a log may hold a million lines.
        var rows = log.Entries.SelectMany(e => e.Sources.Select(s => (s, (object)e)))
            .Concat(log.Omitted.Select(o => (o.Source, (object)o)))
            .Concat(log.Plan.Rows.Where(r => r.Source is not null).Select(r => (r.Source!, (object)r)))
            .Concat(log.FamilyQuestions.Select(q => (q, (object)q)))
            .Concat(log.NotRecords.Select(n => (n.Source, (object)n)))
            .Concat(log.Problems.Select(p => (p.Source, (object)p)))
            .OrderBy(r => r.Item1, InOrderOfInputs);
        SourceLine? before = null;
        foreach (var (source, what) in rows)
        {
            if (before is null || !IsSamePlace(before, source)) output.WriteLine($"{source.Place}: {OneLine(source.Text)}");
            output.WriteLine($"    -> {Meaning(what)}");
            before = source;
        }
    }

    private static readonly Comparer<SourceLine> InOrderOfInputs = Comparer<SourceLine>.Create((a, b) =>
        string.CompareOrdinal(a.File, b.File) is var file && file != 0 ? file
        : string.CompareOrdinal(a.Sheet, b.Sheet) is var sheet && sheet != 0 ? sheet
        : (a.Line ?? RowOf(a.Cell)).CompareTo(b.Line ?? RowOf(b.Cell)));

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
