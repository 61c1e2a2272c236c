using CareRecords.Findings;

namespace CareRecords.Pooling;

/// <summary>
/// Turns a child's findings into what may leave the house. It copies numbers, verdicts and day numbers one by one; whatever it does not copy
/// stays at home. It cannot see the records, and nothing that it makes can hold a word.
/// </summary>
public static class Sharing
{
    /// <summary>The shared findings of a child.</summary>
    /// <param name="findings">The findings.</param>
    /// <param name="options">The child's code, and age band and study group where given.</param>
    public static SharedFindings Share(ChildFindings findings, ShareOptions options)
    {
        ArgumentNullException.ThrowIfNull(findings);
        ArgumentNullException.ThrowIfNull(options);
        var dayZero = findings.Days.FirstOrDefault(d => d.HasRecords)?.Day ?? findings.Span.From;
        var days = new DayNumbers(dayZero);
        var episodes = Numbers(findings.Illness.Episodes.Select(e => e.Id));
        var steps = Numbers(findings.Taper.Done.Select(s => s.Id));
        return new SharedFindings
        {
            Child = ChildRow(findings, options, days),
            Plan = [.. findings.Plan.Select(p => PlanNumbers.Read(p, days)).OfType<SharedPlanValue>()],
            Sessions = [.. findings.Sessions.Select(s => SessionOf(s, days, episodes, steps))],
            Days = [.. findings.Days.Where(d => d.Day >= dayZero).Select(d => DayOf(d, days, episodes, steps))],
            Episodes =
            [
                .. EpisodesOf(EpisodeDefinition.Main, findings.Illness.Episodes, days),
                .. EpisodesOf(EpisodeDefinition.ByRecord, findings.Illness.ByRecord, days),
                .. EpisodesOf(EpisodeDefinition.ByModel, findings.Illness.ByModel, days),
            ],
            Steps = [.. findings.Taper.Done.Select((s, i) => StepOf(s, i + 1, days, episodes))],
            Saturations = [.. findings.SaturationByFlow.Select(SaturationOf)],
            Completeness = [.. findings.Quality.ByKind.Select(CompletenessOf).OfType<SharedCompleteness>()],
        };
    }

    private static SharedChildRow ChildRow(ChildFindings findings, ShareOptions options, DayNumbers days)
    {
        var (baseline, effect, digits) = (findings.Baseline, findings.SessionEffect, findings.Quality.ClockMinutes);
        return new SharedChildRow
        {
            Code = options.Child,
            Definitions = Version.Parse(ChildFindings.DefinitionsVersion),
            AgeBand = options.AgeBand ?? (AgeBands.TryRead(PlanNumbers.Words(findings.Plan, "age band"), out var band) ? band : AgeBand.NotGiven),
            StudyGroup = options.StudyGroup ?? (StudyGroup.TryRead(PlanNumbers.Words(findings.Plan, "study group"), out var group) ? group : null),
            Days = days.Of(findings.Span.To) + 1,
            DaysWithRecords = findings.Span.DaysWithRecords,
            BaselineSpO2 = Tenth(baseline?.SpO2),
            BaselineLow = Tenth(baseline?.SpO2Low),
            BaselineHigh = Tenth(baseline?.SpO2High),
            UsualOxygen = Thousandth(baseline?.Oxygen),
            BaselineDays = baseline?.DaysUsed ?? 0,
            BaselineReadings = baseline?.Readings ?? 0,
            BaselineProvisional = baseline?.Provisional,
            EffectPairs = effect.Pairs,
            EffectPairsLeftOut = effect.PairsLeftOut,
            EffectMedian = Hundredth(effect.MedianChange),
            EffectLow = Hundredth(effect.Low),
            EffectHigh = Hundredth(effect.High),
            EffectLevel = Thousandth(effect.Level),
            ClockTimes = digits.Times,
            MultiplesOfFive = Thousandth(digits.MultiplesOfFive),
            MultiplesOfFifteen = Thousandth(digits.MultiplesOfFifteen),
            LateEntries = findings.Quality.LateEntries.Count,
            ReadingsWithoutOxygen = findings.Quality.ReadingsWithoutOxygen,
        };
    }

    private static SharedSession SessionOf(SessionFinding session, DayNumbers days, Dictionary<string, int> episodes, Dictionary<string, int> steps) => new()
    {
        Number = session.Number,
        Day = days.Of(session.CareDay),
        Minutes = Tenth(session.Minutes),
        MinutesPerArea = Tenth(session.MinutesPerArea),
        MinutesPerAreaPlanned = Tenth(session.MinutesPerAreaPlanned),
        AreasLeftOut = session.AreasLeftOut.Count,
        FeedGapLow = Tenth(session.FeedGap.LowMinutes),
        FeedGapHigh = Tenth(session.FeedGap.HighMinutes),
        FeedGapLimit = Tenth(session.FeedGap.LimitMinutes),
        FeedGapLimitIsDefault = session.FeedGap.LimitIsDefault,
        FeedGap = session.FeedGap.Verdict,
        FeedRunning = session.FeedGap.FeedRunning,
        InhalerGapLow = Tenth(session.InhalerGap.LowMinutes),
        InhalerGapHigh = Tenth(session.InhalerGap.HighMinutes),
        InhalerGapLimit = Tenth(session.InhalerGap.LimitMinutes),
        InhalerWindow = Tenth(session.InhalerGap.WindowMinutes),
        InhalerLimitIsDefault = session.InhalerGap.LimitIsDefault,
        InhalerGap = session.InhalerGap.Verdict,
        SpO2Before = Tenth(session.Before?.SpO2),
        OxygenBefore = Thousandth(session.Before?.OxygenLitresPerMinute),
        SpO2After = Tenth(session.After?.SpO2),
        OxygenAfter = Thousandth(session.After?.OxygenLitresPerMinute),
        Episode = NumberOf(session.Episode, episodes),
        Step = NumberOf(session.Step, steps),
    };

    private static SharedDay DayOf(DayFinding day, DayNumbers days, Dictionary<string, int> episodes, Dictionary<string, int> steps) => new()
    {
        Day = days.Of(day.Day),
        HasRecords = day.HasRecords,
        SessionsDone = day.SessionsDone,
        SessionsPlanned = Tenth(day.SessionsPlanned),
        OmittedWithReason = day.SessionsOmittedWithReason,
        OmittedWithoutReason = day.SessionsOmittedWithoutReason,
        Minutes = Tenth(day.Minutes),
        SessionsWithoutMinutes = day.SessionsWithoutMinutes,
        Readings = day.Readings,
        MedianSpO2AtUsualOxygen = Tenth(day.MedianSpO2AtUsualOxygen),
        LowestSpO2 = Tenth(day.LowestSpO2),
        HighestOxygen = Thousandth(day.HighestOxygen),
        Feeds = day.Feeds,
        Doses = day.Doses,
        Signs = day.Signs.Count,
        Episode = NumberOf(day.Episode, episodes),
        Step = NumberOf(day.Step, steps),
    };

    private static IEnumerable<SharedEpisode> EpisodesOf(EpisodeDefinition definition, IReadOnlyList<EpisodeFinding> found, DayNumbers days)
    {
        var numbers = Numbers(found.Select(e => e.Id));
        return found.Select((e, i) => new SharedEpisode
        {
            Definition = definition,
            Number = i + 1,
            OnsetDay = days.Of(e.Onset),
            OnsetDayLow = days.Of(e.OnsetLow),
            OnsetDayHigh = days.Of(e.OnsetHigh),
            PeakDay = e.Peak is { } peak ? days.Of(peak) : null,
            LowestSpO2 = Tenth(e.LowestSpO2),
            HighestOxygen = Thousandth(e.HighestOxygen),
            MostSessions = e.MostSessions,
            RelapseOf = NumberOf(e.RelapseOf, numbers),
            DaysSincePreviousRecovery = Hundredth(e.DaysSincePreviousRecovery),
            RecoveryLow = Hundredth(e.Recovery.DaysLow),
            RecoveryHigh = Hundredth(e.Recovery.DaysHigh),
            Censored = e.Recovery.Censored,
            RecoveryEstimate = Hundredth(e.Recovery.Estimate),
            RecoveryEstimateLow = Hundredth(e.Recovery.Low),
            RecoveryEstimateHigh = Hundredth(e.Recovery.High),
            BackToMaintenanceDays = Hundredth(e.BackToMaintenanceDays),
        });
    }

    private static SharedStep StepOf(TaperStep step, int number, DayNumbers days, Dictionary<string, int> episodes) => new()
    {
        Number = number,
        FromDay = days.Of(step.From),
        ToDay = days.Of(step.To),
        SessionsPerDay = Tenth(step.SessionsPerDay),
        MinutesPerArea = Tenth(step.MinutesPerArea),
        PlannedSessionsPerDay = Tenth(step.PlannedSessionsPerDay),
        PlannedMinutesPerArea = Tenth(step.PlannedMinutesPerArea),
        Direction = step.Direction,
        Episode = NumberOf(step.Episode, episodes),
        DayOfEpisode = step.DayOfEpisode,
        StableHoursBefore = Tenth(step.StableHoursBefore),
        FollowedBy = step.FollowedBy,
    };

    private static SharedSaturation SaturationOf(SaturationAtFlow at) => new(
        Thousandth(at.OxygenLitresPerMinute), at.Readings, at.Days, Tenth(at.Median), Tenth(at.LowerQuartile), Tenth(at.UpperQuartile), Tenth(at.Lowest), Tenth(at.Highest));

    private static SharedCompleteness? CompletenessOf(KindCompleteness kind) =>
        Enum.TryParse<RecordKind>(kind.Kind, ignoreCase: true, out var known) && Enum.IsDefined(known)
            ? new(known, kind.Entries, kind.Days, kind.Approximate)
            : null;

    /// <summary>Ids such as "E1" become their place in the list: an id is a text, a place is a number.</summary>
    private static Dictionary<string, int> Numbers(IEnumerable<string> ids) =>
        ids.Select((id, i) => (id, i)).DistinctBy(pair => pair.id).ToDictionary(pair => pair.id, pair => pair.i + 1, StringComparer.Ordinal);

    private static int? NumberOf(string? id, Dictionary<string, int> numbers) => id is not null && numbers.TryGetValue(id, out var number) ? number : null;

    private static double? Tenth(double? value) => Rounded(value, 1);

    private static double Tenth(double value) => Math.Round(value, 1);

    private static double? Hundredth(double? value) => Rounded(value, 2);

    private static double Hundredth(double value) => Math.Round(value, 2);

    private static double? Thousandth(double? value) => Rounded(value, 3);

    private static double? Rounded(double? value, int digits) => value is { } known && double.IsFinite(known) ? Math.Round(known, digits) : null;
}
