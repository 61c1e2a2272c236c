using CareRecords.Records;

namespace CareRecords.Workbooks.Building;

/// <summary>What became of a line that came in.</summary>
/// <param name="Source">The line.</param>
/// <param name="Became">"session", "feed", … "set aside", "to check", "could not be read", "written twice", "corrected".</param>
/// <param name="RowId">The row that it gave; null when none.</param>
/// <param name="How">How it was read, or why it was set aside or asked about.</param>
/// <param name="Uncertain">What stays uncertain; empty when nothing does.</param>
internal sealed record ReadLine(SourceLine Source, string Became, string? RowId, string How, string Uncertain);

/// <summary>Every line that came in with what became of it, in the order of files and lines.</summary>
internal sealed class ReadLines
{
    private readonly Dictionary<(string File, string Place), int> _rows = [];

    public ReadLines(ReviewRows rows)
    {
        var log = rows.Log;
        List<ReadLine> lines = [];
        Add(lines, rows.Sessions, "session");
        Add(lines, rows.Feeds, "feed");
        Add(lines, rows.Doses, "medicine");
        Add(lines, rows.Checks, "check");
        Add(lines, rows.Signs, "sign");
        lines.AddRange(rows.Omitted.Select(o => new ReadLine(o.Item.Source, "not done", o.Id, o.Item.Reason is null ? "no reason written" : "reason written", TimeWords.Uncertain(o.Item.When))));
        lines.AddRange(rows.Plan.Where(p => p.Item.Source is not null).Select(p => new ReadLine(p.Item.Source!, "plan", p.Id, PlanItems.Describe(p.Item.Item).Name, "")));
        lines.AddRange(rows.FamilyQuestions.Select(q => new ReadLine(q.Item, "question for the clinic", q.Id, "", "")));
        lines.AddRange(log.NotRecords.Select(n => new ReadLine(n.Source, "set aside", null, n.Why, "")));
        lines.AddRange(log.Problems.Select(p => new ReadLine(
            p.Source, p.Severity == ProblemSeverity.Ask ? "to check" : "could not be read", QuestionId(rows, p.Question), p.Why + " " + p.Fix, "")));
        foreach (var merged in log.Merged)
        {
            var differences = string.Join("; ", merged.Differences.Select(d => $"{d.Field}: kept {d.Kept}, also written {d.Other}"));
            lines.AddRange(merged.Also.Select(also => new ReadLine(
                also, "written twice", null, $"also at {merged.Kept.Place}" + (differences.Length > 0 ? "; " + differences : ""), differences.Length > 0 ? "the two differ" : "")));
        }

        lines.AddRange(log.Corrections.Select(c => new ReadLine(c.Source, "corrected", null, $"{c.Field}: was '{c.Old}', now '{c.New}'", "")));
        Rows = [.. lines.Select((line, i) => (line, i)).OrderBy(p => p.line.Source.File, StringComparer.Ordinal)
            .ThenBy(p => p.line.Source.Sheet ?? "", StringComparer.Ordinal).ThenBy(p => PlaceNumber(p.line.Source)).ThenBy(p => p.i).Select(p => p.line)];
        for (var i = 0; i < Rows.Count; i++) _rows.TryAdd(Key(Rows[i].Source), i);
    }

    public IReadOnlyList<ReadLine> Rows { get; }

    /// <summary>The place of a line on the sheet of lines; null when the line is not on it.</summary>
    public string? LinkTo(SourceLine? source) => source is not null && _rows.TryGetValue(Key(source), out var row)
        ? FormattableString.Invariant($"'{WorkbookLayout.Sheet.WhatWasRead}'!A{WorkbookLayout.HeadingRow + 1 + row}")
        : null;

    private static (string File, string Place) Key(SourceLine source) => (source.File, WorkbookLayout.PlaceInFile(source));

    private static string? QuestionId(ReviewRows rows, string? question) => rows.Questions.FirstOrDefault(q => q.Item.Name == question)?.Id;

    private static void Add<T>(List<ReadLine> lines, IEnumerable<Numbered<T>> entries, string became)
        where T : CareEntry
    {
        foreach (var entry in entries)
        {
            for (var i = 0; i < entry.Item.Sources.Count; i++)
            {
                lines.Add(new ReadLine(
                    entry.Item.Sources[i], became, entry.Id, entry.Item.HowRead ?? (i == 0 ? "as written" : ""), TimeWords.Uncertain(entry.Item.When)));
            }
        }
    }

    private static int PlaceNumber(SourceLine source)
    {
        if (source.Line is { } line) return line;
        var digits = new string([.. (source.Cell ?? "").Where(char.IsAsciiDigit)]);
        return int.TryParse(digits, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var row) ? row : 0;
    }
}
