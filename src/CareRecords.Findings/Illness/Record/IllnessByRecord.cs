using NodaTime;

namespace CareRecords.Findings;

/// <summary>
/// The child's usual and the illness days by the record, each worked out from the other until the illness days no longer
/// change (at most <see cref="MostRounds"/> rounds): the usual comes from days that are not illness days, and a day clearly
/// below the usual is evidence of illness.
/// </summary>
internal sealed class IllnessByRecord
{
    private const int MostRounds = 12;

    public IllnessByRecord(ChildRecords records)
    {
        Signs = IllnessSigns.Of(records);
        var signDays = Signs.Select(s => s.Day).ToHashSet();
        Oxygen = new(records, day => !signDays.Contains(day));
        Readings = Oxygen.RestingReadings();
        Days = DayEvidence.Of(records, Signs, Oxygen, Readings, null);
        var ill = IllDays();
        for (var round = 0; round < MostRounds; round++)
        {
            Band = UsualBand.Of(Readings.Where(r => r.Flow == FlowState.Usual && Oxygen.On(r.Day) == Oxygen.Main && !ill.Contains(r.Day)));
            Days = DayEvidence.Of(records, Signs, Oxygen, Readings, Band);
            Episodes = RecordEpisode.In(Days);
            var next = IllDays();
            if (next.SetEquals(ill)) break;
            ill = next;
        }

        Smoothed = Band is null ? [] : SmoothedSaturation.Of(Readings, Band);
        Moments = MomentsOf(records);
    }

    public IReadOnlyList<IllnessSign> Signs { get; }

    public UsualOxygen Oxygen { get; }

    public IReadOnlyList<RestingReading> Readings { get; }

    /// <summary>Null when no day without illness has a reading at usual oxygen.</summary>
    public UsualBand? Band { get; }

    public IReadOnlyList<DayEvidence> Days { get; }

    public IReadOnlyList<RecordEpisode> Episodes { get; private set; } = [];

    public IReadOnlyList<SmoothedSaturation> Smoothed { get; }

    /// <summary>The moments at which the record shows illness or shows none, in order of time.</summary>
    public IReadOnlyList<CourseMoment> Moments { get; }

    private HashSet<LocalDate> IllDays() =>
    [
        .. Days.Where(d => d.State == DayState.Ill).Select(d => d.Day),
        .. Episodes.SelectMany(e => Days.Skip(e.First).Take(e.Last - e.First + 1)).Select(d => d.Day),
    ];

    private IReadOnlyList<CourseMoment> MomentsOf(ChildRecords records)
    {
        var moments = Signs.Select(s => new CourseMoment(s.Within, true))
            .Concat(records.Checks.Where(c => Oxygen.StateOf(c.OxygenLitresPerMinute, records.DayOf(c)) == FlowState.Above).Select(c => new CourseMoment(records.Within(c), true)))
            .Concat(Smoothed.Where(s => s.IsBelow || s.IsBack).Select(s => new CourseMoment(records.Within(s.Check), s.IsBelow)))
            .ToList();

        // A day may show illness only as a whole (readings at a flow not written). Without any reading, a clear day shows the
        // child well in the same way.
        var told = Signs.Select(s => s.Day)
            .Concat(records.Checks.Where(c => Oxygen.StateOf(c.OxygenLitresPerMinute, records.DayOf(c)) == FlowState.Above).Select(records.DayOf))
            .Concat(Smoothed.Where(s => s.IsBelow).Select(s => records.DayOf(s.Check))).ToHashSet();
        moments.AddRange(Days.Where(d => d.State == DayState.Ill && !told.Contains(d.Day)).Select(d => new CourseMoment(records.Whole(d.Day), true)));
        if (Smoothed.Count == 0) moments.AddRange(Days.Where(d => d.State == DayState.Clear).Select(d => new CourseMoment(records.Whole(d.Day), false)));
        return [.. moments.OrderBy(m => m.Earliest).ThenBy(m => m.IsIll)];
    }
}

/// <summary>A moment at which the record shows illness, or shows the child in band at usual oxygen without a sign.</summary>
/// <param name="Within">When, as closely as it was written.</param>
/// <param name="IsIll">Whether it shows illness.</param>
internal readonly record struct CourseMoment(InstantRange Within, bool IsIll)
{
    public Instant Earliest => Within.Earliest;

    public Instant Latest => Within.Latest;
}
