using System.Globalization;
using CareRecords.Records;

namespace CareRecords.CommandLine;

/// <summary>What was read, said on the terminal in plain words.</summary>
internal static class ReadingReport
{
    /// <summary>Every line with what it was taken for, in the order of the inputs.</summary>
    public static void LineByLine(CareLog log, TextWriter output)
    {
        var rows = log.Entries.SelectMany(e => e.Sources.Select(s => (Source: s, Meaning: Wording.Of(e))))
            .Concat(log.Omitted.Select(o => (o.Source, Meaning: $"not done: {o.Reason ?? "no reason given"}")))
            .Concat(log.Plan.Rows.Where(r => r.Source is not null).Select(r => (Source: r.Source!, Meaning: Wording.Of(r))))
            .Concat(log.FamilyQuestions.Select(q => (Source: q, Meaning: "a question for the clinic")))
            .Concat(log.NotRecords.Select(n => (n.Source, Meaning: $"set aside: {n.Why}")))
            .Concat(log.Problems.Select(p => (p.Source, Meaning: $"{(p.Severity == ProblemSeverity.Ask ? "ASK" : "REFUSED")}: {p.Why}")))
            .OrderBy(r => r.Source.File, StringComparer.Ordinal)
            .ThenBy(r => r.Source.Sheet, StringComparer.Ordinal)
            .ThenBy(r => r.Source.Line ?? RowOf(r.Source.Cell));
        SourceLine? before = null;
        foreach (var (source, meaning) in rows)
        {
            if (before is null || before.Place != source.Place) output.WriteLine($"{source.Place}: {OneLine(source.Text)}");
            output.WriteLine($"    -> {meaning}");
            before = source;
        }
    }

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
