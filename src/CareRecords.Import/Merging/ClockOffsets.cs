using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Merging;

/// <summary>Notices that the clock of one book runs ahead of another's: the same events, always as many minutes apart.</summary>
internal sealed class ClockOffsets
{
    // Chosen by CareRecords: fewer pairs or smaller steps are the rounding of two hands.
    private const int FewestPairs = 4;
    private const int LeastMinutes = 3;
    private const int RoomMinutes = 1;

    private readonly Dictionary<(string One, string Other), List<(long Minutes, SourceLine At)>> _pairs = [];

    /// <summary>Takes note of one event written in two books.</summary>
    public void Saw(CareEntry one, CareEntry other)
    {
        if (one.Start is not { Precision: TimePrecision.Exact } a || other.Start is not { Precision: TimePrecision.Exact } b) return;
        var (fileA, fileB) = (one.Sources[0].File, other.Sources[0].File);
        if (fileA == fileB) return;
        var minutes = Period.Between(a.Stated, b.Stated, PeriodUnits.Minutes).Minutes;
        var (key, signed, at) = string.CompareOrdinal(fileA, fileB) < 0 ? ((fileA, fileB), minutes, other.Sources[0]) : ((fileB, fileA), -minutes, one.Sources[0]);
        if (!_pairs.TryGetValue(key, out var list)) _pairs[key] = list = [];
        list.Add((signed, at));
    }

    /// <summary>One problem for each two books whose clocks disagree steadily.</summary>
    public IEnumerable<ImportProblem> Problems()
    {
        foreach (var ((one, other), pairs) in _pairs)
        {
            if (pairs.Count < FewestPairs) continue;
            var middle = pairs.Select(p => p.Minutes).Order().ElementAt(pairs.Count / 2);
            var agreeing = pairs.Count(p => Math.Abs(p.Minutes - middle) <= RoomMinutes);
            if (Math.Abs(middle) < LeastMinutes || agreeing * 5 < pairs.Count * 4) continue;
            yield return new ImportProblem(pairs[0].At,
                FormattableString.Invariant($"The clock of {other} seems to run {Math.Abs(middle)} minutes {(middle > 0 ? "ahead of" : "behind")} that of {one}: so it is in {agreeing} of {pairs.Count} events written in both."),
                "Check both clocks. Nothing was moved.", ProblemSeverity.Ask, $"clocks:{one}+{other}");
        }
    }
}
