using CareRecords.Import.Notes;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Merging;

/// <summary>The entries after the same event written twice was put together.</summary>
/// <param name="Entries">In order of time, each event once.</param>
/// <param name="Merged">What was put together.</param>
/// <param name="Problems">Twins that may be two events, and clocks that disagree.</param>
/// <param name="Questions">Wording of the questions that the problems name.</param>
internal sealed record MergeResult(
    IReadOnlyList<CareEntry> Entries, IReadOnlyList<MergedEntry> Merged, IReadOnlyList<ImportProblem> Problems, IReadOnlyDictionary<string, AskedQuestion> Questions);

/// <summary>
/// Finds the same event written twice: in two books or by two people, of the same kind, as near in time as the plan's same-event minutes.
/// Two rows of one source by one person are two events. Twins whose values differ so that both may be real are asked about and kept.
/// </summary>
internal sealed class EntryMerger
{
    private readonly CarePlan _plan;
    private readonly List<CareEntry?> _entries;
    private readonly Dictionary<int, MergedEntry> _merged = [];
    private readonly List<ImportProblem> _problems = [];
    private readonly Dictionary<string, AskedQuestion> _questions = [];
    private readonly ClockOffsets _offsets = new();

    private EntryMerger(IReadOnlyList<CareEntry> sorted, CarePlan plan) => (_entries, _plan) = ([.. sorted], plan);

    /// <summary>The entries in order of time, each event once.</summary>
    public static MergeResult Merge(IReadOnlyList<CareEntry> entries, CarePlan plan, IReadOnlyDictionary<string, string> answers)
    {
        var sorted = ByTime.Sort(entries);
        if (!MayHoldTwins(sorted)) return new MergeResult(sorted, [], [], new Dictionary<string, AskedQuestion>());
        var merger = new EntryMerger(sorted, plan);
        merger.Walk(answers);
        merger.JoinPumpOnAndOff();
        merger.AskHalfDays(answers);
        merger._problems.AddRange(merger._offsets.Problems());
        return new MergeResult(ByTime.Sort([.. merger._entries.OfType<CareEntry>()]), [.. merger._merged.OrderBy(m => m.Key).Select(m => m.Value)], merger._problems, merger._questions);
    }

    // One source by one person holds no event twice: a million readings of one device need no look.
    private static bool MayHoldTwins(IReadOnlyList<CareEntry> entries)
    {
        if (entries.Count == 0) return false;
        var first = Hand.Of(entries[0]);
        foreach (var entry in entries)
            if (!Hand.Of(entry).Equals(first))
                return true;
        return false;
    }

    private void Walk(IReadOnlyDictionary<string, string> answers)
    {
        // The newest entries of each kind, oldest first, as far back as any pair may lie.
        var recent = new Dictionary<Type, Queue<int>>();
        for (var i = 0; i < _entries.Count; i++)
        {
            var entry = _entries[i]!;
            if (!recent.TryGetValue(entry.GetType(), out var queue)) recent[entry.GetType()] = queue = [];
            var room = _plan.NumberFor(PlanItem.SameEventMinutes, entry.When.Stated.Date) ?? 10;
            while (queue.Count > 0 && (_entries[queue.Peek()] is not { } old || Minutes(old.When.Stated, entry.When.Stated) > room)) queue.Dequeue();
            if (Twin(queue, entry, answers) is { } at)
            {
                Put(at, i);
            }
            else queue.Enqueue(i);
        }
    }

    private int? Twin(Queue<int> near, CareEntry entry, IReadOnlyDictionary<string, string> answers)
    {
        int? best = null;
        foreach (var index in near)
        {
            if (_entries[index] is not { } other || !Hand.Differs(other, entry)) continue;
            switch (Sameness.Of(other, entry))
            {
                case Likeness.Same:
                    best = index;
                    break;
                case Likeness.MayBe when Ask(other, entry, answers):
                    best = index;
                    break;
            }
        }

        return best;
    }

    // True when the family has answered that they are the same.
    private bool Ask(CareEntry one, CareEntry other, IReadOnlyDictionary<string, string> answers)
    {
        var name = $"same-event:{one.Sources[0].Place}+{other.Sources[0].Place}";
        if (answers.TryGetValue(name, out var answer)) return answer.Trim().StartsWith("same", StringComparison.OrdinalIgnoreCase) || answer.Trim().Equals("yes", StringComparison.OrdinalIgnoreCase);
        _questions.TryAdd(name, new AskedQuestion($"Is '{one.Sources[0].Text}' ({one.Sources[0].Place}) the same event as '{other.Sources[0].Text}' ({other.Sources[0].Place})?", ["same", "two events"]));
        _problems.Add(new ImportProblem(other.Sources[0], $"This may be the event of {one.Sources[0].Place} written a second time, or a second event: they lie close together and differ. Both are kept.",
            "Answer the question, or delete the one that is too many.", ProblemSeverity.Ask, name));
        return false;
    }

    // Sessions of two books twelve hours apart to the minute: asked, both kept until the family says which.
    private void AskHalfDays(IReadOnlyDictionary<string, string> answers)
    {
        foreach (var (morning, evening) in HalfDayTwins.Find(_entries, (int)(_plan.NumberFor(PlanItem.SameEventMinutes, _entries.OfType<CareEntry>().First().When.Stated.Date) ?? 10)))
        {
            if (_entries[morning] is not Session early || _entries[evening] is not Session late) continue;
            var (name, asked) = HalfDayTwins.Question(early, late);
            if (answers.TryGetValue(name, out var answer))
            {
                if (HalfDayTwins.IsMorning(answer, early, late) is { } first) Join(first ? morning : evening, first ? evening : morning);
                continue;
            }

            _questions.TryAdd(name, asked);
            _problems.Add(new ImportProblem(late.Sources[0], $"This session is twelve hours to the minute after that of {early.Sources[0].Place}, in another book of the same day: it may be the same one in the wrong half of the day. Both are kept.",
                "Answer the question, or correct the time.", ProblemSeverity.Ask, name));
        }
    }

    // As the family says: the time of the one, and what else the other tells.
    private void Join(int at, int from)
    {
        var (kept, added) = (_entries[at]!, _entries[from]!);
        _entries[at] = Union.Of(kept, added);
        _entries[from] = null;
        IReadOnlyList<MergeDifference> before = [.. Taken(at), .. Taken(from)];
        _merged.Remove(from);
        _merged[at] = new MergedEntry(kept.Sources[0], [.. _entries[at]!.Sources.Skip(1)], [.. before, .. Differences.Between(kept, added)]);
    }

    // The entry at one place takes in the entry at another, with whatever that one took in before.
    private void Put(int at, int from)
    {
        var (one, other) = (_entries[at]!, _entries[from]!);
        var (kept, added) = Richness.Of(other) > Richness.Of(one) ? (other, one) : (one, other);
        _offsets.Saw(kept, added);
        _entries[at] = Union.Of(kept, added);
        _entries[from] = null;
        IReadOnlyList<MergeDifference> before = [.. Taken(at), .. Taken(from)];
        _merged.Remove(from);
        _merged[at] = new MergedEntry(kept.Sources[0], [.. _entries[at]!.Sources.Skip(1)], [.. before, .. Differences.Between(kept, added)]);
    }

    private IReadOnlyList<MergeDifference> Taken(int at) => _merged.TryGetValue(at, out var merged) ? merged.Differences : [];

    // "Pump on" in the day's book and "pump off" in the night's: one feed, where nothing else was fed between.
    private void JoinPumpOnAndOff()
    {
        const int longestHours = 16;
        for (var i = 0; i < _entries.Count; i++)
        {
            if (_entries[i] is not Feed { Start: { } start, End: null } on) continue;
            for (var k = i + 1; k < _entries.Count && Minutes(start.Stated, _entries[k]?.When.Stated ?? start.Stated) <= longestHours * 60; k++)
            {
                if (_entries[k] is not Feed next) continue;
                if (next is { Start: null, End: not null } && Hand.Differs(on, next) && (on.Route == next.Route || on.Route == FeedRoute.Unknown || next.Route == FeedRoute.Unknown || (on.Route != FeedRoute.Oral && next.Route != FeedRoute.Oral)))
                {
                    Put(i, k);
                }

                break;
            }
        }
    }

    private static long Minutes(LocalDateTime from, LocalDateTime to) => Math.Abs(Period.Between(from, to, PeriodUnits.Minutes).Minutes);
}
