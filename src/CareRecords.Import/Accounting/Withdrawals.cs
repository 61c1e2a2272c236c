using CareRecords.Import.Notes;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Accounting;

/// <summary>Takes entries back after reading (a time that never was, a day not asked for) and keeps the count of lines right.</summary>
internal sealed class Withdrawals(IReadOnlyList<Gathered> parts)
{
    private readonly HashSet<CareEntry> _gone = new(ReferenceEqualityComparer.Instance);
    private readonly List<ImportProblem> _problems = [];
    private readonly List<SetAsideLine> _setAside = [];

    // A million rows of one table are not copied.
    private readonly IReadOnlyList<CareEntry> _all = parts.Count == 1 ? parts[0].Entries : [.. parts.SelectMany(p => p.Entries)];

    /// <summary>The entries that stand.</summary>
    public IReadOnlyList<CareEntry> Entries => _gone.Count == 0 ? _all : [.. _all.Where(e => !_gone.Contains(e))];

    /// <summary>Problems that took entries back.</summary>
    public IReadOnlyList<ImportProblem> Problems => _problems;

    /// <summary>Lines set aside because of it.</summary>
    public IReadOnlyList<SetAsideLine> SetAside => _setAside;

    /// <summary>Refuses entries, each with its problem.</summary>
    public void Refuse(IReadOnlyList<(CareEntry Entry, ImportProblem Problem)> refused)
    {
        foreach (var (entry, problem) in refused)
        {
            _gone.Add(entry);
            _problems.Add(problem);
        }

        Account([.. refused.Select(r => r.Entry)], LineFate.Problem);
    }

    /// <summary>Sets aside the entries outside the dates asked for, both days included; an uncertain time stays when it may lie inside.</summary>
    public void KeepDates(LocalDate? from, LocalDate? to)
    {
        if (from is null && to is null) return;
        var outside = Entries.Where(e => e.When.Latest.Date < from || e.When.Earliest.Date > to).ToList();
        foreach (var entry in outside) _gone.Add(entry);
        foreach (var line in Account(outside, LineFate.NotRecord)) _setAside.Add(new SetAsideLine(line, "outside the dates asked for"));
    }

    // A line whose records are all gone no longer counts under records.
    private List<SourceLine> Account(IReadOnlyList<CareEntry> gone, LineFate fate)
    {
        var changed = new List<SourceLine>();
        foreach (var group in gone.SelectMany(e => e.Sources).GroupBy(s => (s.File, s.Sheet)))
        {
            if (parts.FirstOrDefault(p => p.File == group.Key.File && p.Sheet == group.Key.Sheet) is not { } part) continue;
            var standing = part.Entries.Where(e => !_gone.Contains(e)).SelectMany(e => e.Sources)
                .Concat(part.Omitted.Select(o => o.Source))
                .Select(SourceLines.NumberOf).ToHashSet();
            foreach (var source in group.DistinctBy(SourceLines.NumberOf).Where(s => SourceLines.NumberOf(s) > 0 && !standing.Contains(SourceLines.NumberOf(s))))
            {
                part.Ledger.Replace(SourceLines.NumberOf(source), fate);
                changed.Add(source);
            }
        }

        return changed;
    }
}
