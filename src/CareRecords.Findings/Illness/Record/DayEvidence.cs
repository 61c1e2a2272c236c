using CareRecords.Records;
using NodaTime;

namespace CareRecords.Findings;

/// <summary>How a care day stands to illness by the record.</summary>
internal enum DayState
{
    /// <summary>Neither: nothing was written that could tell.</summary>
    Missing,

    /// <summary>Something was written that could tell, and no evidence of illness.</summary>
    Clear,

    /// <summary>Evidence of illness.</summary>
    Ill,
}

/// <summary>A care day's evidence of illness.</summary>
/// <param name="Day">The care day.</param>
/// <param name="State">How it stands.</param>
/// <param name="Evidence">The evidence in words.</param>
/// <param name="Sources">Where it was written.</param>
internal sealed record DayEvidence(LocalDate Day, DayState State, IReadOnlyList<string> Evidence, IReadOnlyList<SourceLine> Sources)
{
    private const int SourcesADay = 3;

    /// <summary>
    /// The evidence of every day: a stated sign, oxygen written above usual, or a day's median of resting readings clearly
    /// below usual (at usual oxygen, or at a flow not written: extra oxygen would only raise it).
    /// </summary>
    public static IReadOnlyList<DayEvidence> Of(
        ChildRecords records, IReadOnlyList<IllnessSign> signs, UsualOxygen oxygen, IReadOnlyList<RestingReading> readings, UsualBand? band)
    {
        var signsByDay = signs.ToLookup(s => s.Day);
        var readingsByDay = readings.ToLookup(r => r.Day);
        var hasReadings = readings.Count > 0;
        return
        [
            .. records.Days.Select(day =>
            {
                var (words, sources) = (new List<string>(), new List<SourceLine>());
                foreach (var sign in signsByDay[day])
                {
                    words.Add(sign.What);
                    sources.AddRange(sign.Sources);
                }

                var raised = records.On(day).OfType<Check>()
                    .Where(c => c.Phase != CheckPhase.During && oxygen.StateOf(c.OxygenLitresPerMinute, day) == FlowState.Above).ToList();
                if (raised.MaxBy(c => c.OxygenLitresPerMinute) is { OxygenLitresPerMinute: { } flow } highest)
                {
                    words.Add($"oxygen {Words.Flow(flow)}, above the usual");
                    sources.AddRange(highest.Sources);
                }

                var told = readingsByDay[day].Where(r => r.Flow is FlowState.Usual or FlowState.Unknown).ToList();
                if (band is not null && told.Count > 0 && Statistics.Quantiles.Median([.. told.Select(r => r.SpO2)]).Value is var median && median < band.MedianLow(told.Count))
                {
                    words.Add($"saturation {Words.Number(median)} % (median of {Words.Count(told.Count, "reading", "readings")}), below the usual {Words.Number(band.Centre)} %");
                    sources.AddRange(told.OrderBy(r => r.SpO2).First().Check.Sources);
                }

                var tells = hasReadings
                    ? readingsByDay[day].Any() || records.On(day).OfType<Sign>().Any()
                    : records.HasRecords(day);
                return new DayEvidence(day, words.Count > 0 ? DayState.Ill : tells ? DayState.Clear : DayState.Missing,
                    [.. words.Distinct()], [.. sources.Distinct().Take(SourcesADay)]);
            }),
        ];
    }
}
