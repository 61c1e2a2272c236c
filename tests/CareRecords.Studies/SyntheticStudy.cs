using System.Security.Cryptography;
using CareRecords.Findings;
using CareRecords.Pooling;
using CareRecords.Statistics;

namespace CareRecords.Studies;

/// <summary>Children with random effects whose truth is known, made straight as shared findings: it tests pooling, not reading or analysing.</summary>
public static class SyntheticStudy
{
    /// <summary>The study's children, one after another.</summary>
    public static IEnumerable<SharedFindings> Children(StudyOptions options) => WithTruth(options).Select(c => c.Child);

    /// <summary>The study's children, each with its true share of feed gaps kept.</summary>
    public static IEnumerable<(SharedFindings Child, double FeedGapKept)> WithTruth(StudyOptions options)
    {
        var random = new SeededRandom(options.Seed);
        for (var i = 0; i < options.Children; i++)
        {
            var effect = options.BetweenChildren * random.Gaussian();
            yield return (Child(options, random, i, effect), Share(Logit(options.FeedGapKept) + effect + Shift(options, i)));
        }
    }

    /// <summary>The median of the days to recovery that the study's episodes are drawn from, over children.</summary>
    public static double MedianRecovery(StudyOptions options)
    {
        var (low, high) = (0.0, 200.0);
        for (var i = 0; i < 60; i++)
        {
            var middle = (low + high) / 2;
            if (StillRecovering(options, middle) > 0.5) low = middle; else high = middle;
        }

        return high;
    }

    /// <summary>The true share of episodes still recovering at a day: the Weibull law summed over the normal law of the children's paces.</summary>
    public static double StillRecovering(StudyOptions options, double day)
    {
        var scale = options.RecoveryMedian / Math.Pow(Math.Log(2), 1 / options.RecoveryShape);
        var (sum, weights) = (0.0, 0.0);
        for (var step = -800; step <= 800; step++)
        {
            var z = step / 100.0;
            var weight = Math.Exp(-0.5 * z * z);
            var slow = Math.Exp(options.RecoveryBetween * z);
            weights += weight;
            sum += weight * Math.Exp(-Math.Pow(day / (slow * scale), options.RecoveryShape));
        }

        return sum / weights;
    }

    private static double Shift(StudyOptions options, int index) => index % 2 == 1 ? options.GroupDifference : 0;

    private static SharedFindings Child(StudyOptions options, SeededRandom random, int index, double effect)
    {
        var (inB, shift) = (index % 2 == 1, Shift(options, index));
        var days = Math.Max(2, (int)(options.Days * (0.6 + (0.8 * random.Uniform()))));
        var silent = Enumerable.Range(0, days).Select(d => d > 0 && random.Uniform() < 0.08).ToArray();
        var sessions = Sessions(options, random, silent, Logit(options.FeedGapKept) + effect + shift, Logit(options.InhalerGapKept) + (0.8 * effect) + shift);
        var episodes = Episodes(options, random, days, inB ? options.GroupRecoveryRatio : 1);
        var steps = Steps(options, random, episodes, days);
        return new SharedFindings
        {
            Child = new SharedChildRow
            {
                Code = CodeOf(options.Seed, index),
                Definitions = new Version(1, 0),
                AgeBand = options.WithGroups ? (AgeBand)(1 + (index % 3)) : AgeBand.NotGiven,
                StudyGroup = options.WithGroups && StudyGroup.TryRead(inB ? "B" : "A", out var group) ? group : null,
                Days = days,
                DaysWithRecords = silent.Count(s => !s),
                BaselineSpO2 = 95,
                BaselineLow = 93,
                BaselineHigh = 97,
                UsualOxygen = 0,
                BaselineDays = 20,
                BaselineReadings = 80,
                BaselineProvisional = false,
                EffectPairs = 0,
                EffectPairsLeftOut = 0,
                ClockTimes = sessions.Count,
                MultiplesOfFive = 0.4,
                MultiplesOfFifteen = 0.2,
                LateEntries = 0,
                ReadingsWithoutOxygen = 3,
            },
            Plan = [new(SharedPlanItem.FeedGapMinutes, null, 30, 30, true), new(SharedPlanItem.SessionsPerDay, 0, 2, 2, false)],
            Sessions = sessions,
            Days = [.. silent.Select((s, d) => Day(d, !s, sessions.Count(x => x.Day == d), random))],
            Episodes = episodes,
            Steps = steps,
            Saturations = [new(0, 200, 60, 95, 94, 96, 88, 99)],
            Completeness = [new(RecordKind.Sessions, sessions.Count, silent.Count(s => !s), 0)],
        };
    }

    private static List<SharedSession> Sessions(StudyOptions options, SeededRandom random, bool[] silent, double feed, double inhaler)
    {
        var sessions = new List<SharedSession>();
        for (var day = 0; day < silent.Length; day++)
        {
            if (silent[day]) continue;
            for (var n = 0; n < 2 + random.Below(2); n++)
            {
                var (fed, inhaled) = (Verdict(options, random, feed, GapVerdict.Short), Verdict(options, random, inhaler, (GapVerdict)(2 + random.Below(3))));
                double? gap = fed switch { GapVerdict.Kept => 30 + random.Below(50), GapVerdict.Short => random.Below(30), _ => null };
                double? age = inhaled switch { GapVerdict.Kept => 15 + random.Below(45), GapVerdict.Short => random.Below(15), GapVerdict.Early => 61 + random.Below(100), _ => null };
                sessions.Add(new SharedSession
                {
                    Number = sessions.Count + 1,
                    Day = day,
                    Minutes = 12 + random.Below(8),
                    MinutesPerArea = 3,
                    MinutesPerAreaPlanned = 3,
                    FeedGapLow = gap,
                    FeedGapHigh = gap,
                    FeedGapLimit = 30,
                    FeedGapLimitIsDefault = true,
                    FeedGap = fed,
                    InhalerGapLow = age,
                    InhalerGapHigh = age,
                    InhalerGapLimit = 15,
                    InhalerWindow = 60,
                    InhalerLimitIsDefault = true,
                    InhalerGap = inhaled,
                    SpO2Before = 92 + random.Below(6),
                    OxygenBefore = 0,
                    SpO2After = 93 + random.Below(6),
                    OxygenAfter = 0,
                });
            }
        }

        return sessions;
    }

    private static GapVerdict Verdict(StudyOptions options, SeededRandom random, double logit, GapVerdict otherwise) =>
        random.Uniform() < options.Unknown ? GapVerdict.Unknown : random.Uniform() < Share(logit) ? GapVerdict.Kept : otherwise;

    private static List<SharedEpisode> Episodes(StudyOptions options, SeededRandom random, int days, double ratio)
    {
        var slow = Math.Exp(options.RecoveryBetween * random.Gaussian()) * ratio;
        var scale = slow * options.RecoveryMedian / Math.Pow(Math.Log(2), 1 / options.RecoveryShape);
        var episodes = new List<SharedEpisode>();

        // Onsets are set before recovery is: how many episodes a child has says nothing of how slowly it recovers.
        var count = 1 + random.Below(options.MostIllnesses);
        for (var n = 0; n < count; n++)
        {
            var onset = (int)((n + (0.1 + (0.5 * random.Uniform()))) * days / count);
            var truth = scale * Math.Pow(-Math.Log(random.Uniform()), 1 / options.RecoveryShape);
            var followed = (n + 1.0) * days / count;
            var (low, high) = Bracket(truth, followed - onset, random);
            episodes.Add(new SharedEpisode
            {
                Definition = EpisodeDefinition.Main,
                Number = episodes.Count + 1,
                OnsetDay = onset,
                OnsetDayLow = onset,
                OnsetDayHigh = onset + 1,
                LowestSpO2 = 86,
                HighestOxygen = 1,
                MostSessions = 4,
                RecoveryLow = low,
                RecoveryHigh = high,
                Censored = high is null,
            });
        }

        return episodes;
    }

    /// <summary>Looks at the child at uneven times; the truth lies between the last look before it and the first after.</summary>
    private static (double Low, double? High) Bracket(double truth, double followed, SeededRandom random)
    {
        var low = 0.0;
        for (var look = 0.3 + random.Uniform(); look < followed; look += 0.3 + (1.4 * random.Uniform()))
        {
            if (look >= truth) return (Math.Round(low, 2), Math.Round(look, 2));
            low = look;
        }

        return (Math.Round(low, 2), null);
    }

    private static List<SharedStep> Steps(StudyOptions options, SeededRandom random, List<SharedEpisode> episodes, int days)
    {
        var careful = 40 + (25 * random.Gaussian());
        var effect = 0.6 * random.Gaussian();
        var steps = new List<SharedStep>();
        foreach (var episode in episodes)
        {
            var day = episode.OnsetDay + (int)episode.RecoveryLow;
            for (var n = 0; n < 2 && day < days; n++, day += 4)
            {
                var hours = Math.Clamp(careful + (20 * random.Gaussian()), 0, 200);
                var logit = Logit(options.SetbackShare) + effect + (options.SetbackSlope * (hours - 48) / 24);
                steps.Add(new SharedStep
                {
                    Number = steps.Count + 1,
                    FromDay = day,
                    ToDay = Math.Min(days - 1, day + 3),
                    SessionsPerDay = 4 - n,
                    MinutesPerArea = 3,
                    Direction = StepDirection.Down,
                    Episode = episode.Number,
                    DayOfEpisode = day - episode.OnsetDay,
                    StableHoursBefore = random.Uniform() < 0.1 ? null : Math.Round(hours, 1),
                    FollowedBy = day + 7 > days ? StepOutcome.Unknown : random.Uniform() < Share(logit) ? StepOutcome.Setback : StepOutcome.Steady,
                });
            }
        }

        return steps;
    }

    private static SharedDay Day(int day, bool written, int done, SeededRandom random) => new()
    {
        Day = day,
        HasRecords = written,
        SessionsDone = done,
        SessionsPlanned = 2,
        Minutes = done == 0 ? null : 15 * done,
        Readings = written ? 2 + random.Below(4) : 0,
        MedianSpO2AtUsualOxygen = written ? 94 + random.Below(3) : null,
        LowestSpO2 = written ? 90 + random.Below(4) : null,
        HighestOxygen = 0,
        Feeds = written ? 4 : 0,
        Doses = written ? 2 : 0,
    };

    private static ChildCode CodeOf(int seed, int index)
    {
        var digest = SHA256.HashData([.. BitConverter.GetBytes(seed), .. BitConverter.GetBytes(index)]);
        return ChildCode.TryRead(Convert.ToHexStringLower(digest.AsSpan(0, 16)), out var code) ? code : throw new InvalidOperationException("32 hexadecimal digits are a code.");
    }

    private static double Logit(double share) => Math.Log(share / (1 - share));

    private static double Share(double logit) => 1 / (1 + Math.Exp(-logit));
}
