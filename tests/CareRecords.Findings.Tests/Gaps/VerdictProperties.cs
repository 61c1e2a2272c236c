using CsCheck;
using NodaTime;

namespace CareRecords.Findings.Tests.Gaps;

/// <summary>
/// The three-valued verdicts against every exact reading of small uncertain times: the intervals have even ends, every whole
/// minute inside is tried, and the exact rule is written here a second time.
/// </summary>
public class VerdictProperties
{
    private const double Limit = 6;
    private static readonly InhalerZones Zones = new(6, 14);
    private static readonly Instant Origin = Instant.FromUtc(2026, 1, 1, 12, 0);

    private static readonly Gen<(int Low, int High)> Start = Gen.Select(Gen.Int[0, 4], Gen.Int[0, 3], (a, w) => (2 * a, 2 * (a + w)));

    private static readonly Gen<(int Low, int High)> Earlier = Gen.Select(Gen.Int[-10, 4], Gen.Int[0, 3], (a, w) => (2 * a, 2 * (a + w)));

    /// <summary>A feed of two minutes or more: one of no length, begun just after the earliest start, has a least gap that is approached and not reached.</summary>
    private static readonly Gen<((int Low, int High) Begins, (int Low, int High) Ends)> AFeed =
        Gen.Select(Earlier, Gen.Int[1, 4], Gen.Int[0, 2], (b, gap, w) => (b, (b.High + (2 * gap), b.High + (2 * (gap + w)))));

    [Fact]
    public void Feed_verdict_is_certain_exactly_when_every_reading_agrees() =>
        Gen.Select(Start, AFeed.List[0, 2]).Holds((start, feeds) =>
        {
            var bounds = FeedGapBounds.Of(Range(start), [.. feeds.Select(Span)]);
            var verdict = bounds.Against(Limit);
            var readings = FeedReadings(start, feeds).ToList();
            var verdicts = readings.Select(g => g is not { } gap ? GapVerdict.Unknown : gap >= Limit ? GapVerdict.Kept : GapVerdict.Short).Distinct().ToList();
            Assert.Equal(verdicts.Count == 1 ? verdicts[0] : GapVerdict.Unknown, verdict);
            if (readings.TrueForAll(g => g is not null)) Assert.Equal((readings.Min(), readings.Max()), (bounds.Low, bounds.High));
            else Assert.Null(bounds.High);
            Assert.Equal(readings.Exists(g => g is not null) ? readings.Min() : null, bounds.Low);
        }, count: 2000);

    [Fact]
    public void Inhaler_verdict_is_certain_exactly_when_every_reading_agrees() =>
        Gen.Select(Start, Gen.Select(Earlier, Gen.Bool).List[0, 2]).Holds((start, doses) =>
        {
            var possible = InhalerVerdicts.Possible(Range(start), [.. doses.Select(d => new PossibleDose(Range(d.Item1), d.Item2))], Zones);
            Assert.Equal(InhalerReadings(start, doses).Distinct().Order(), possible.Order());
        }, count: 2000);

    [Fact]
    public void Inhaler_verdict_reaches_back_240_minutes_and_no_further() =>
        Gen.Select(Gen.Int[-250, -230], Gen.Int[0, 20]).Holds((low, width) =>
        {
            var possible = InhalerVerdicts.Possible(Range((0, 0)), [new(Range((low, low + width)), true)], Zones);
            Assert.Equal(low < -240, possible.Contains(GapVerdict.None));
            Assert.Equal(low + width >= -240, possible.Contains(GapVerdict.Early));
        });

    [Fact]
    public void Widening_any_time_never_makes_an_unknown_feed_verdict_certain() =>
        Gen.Select(Start, AFeed.List[0, 3], Gen.Int[0, 5]).Holds((start, feeds, by) =>
        {
            GapVerdict Verdict(Duration d) => FeedGapBounds.Of(Range(start).WidenedBy(d),
                [.. feeds.Select(Span).Select(f => f with { Begins = f.Begins.WidenedBy(d), Ends = f.Ends.WidenedBy(d) })]).Against(Limit);
            var (narrow, wide) = (Verdict(Duration.Zero), Verdict(Duration.FromMinutes(by)));
            Assert.True(wide == GapVerdict.Unknown || wide == narrow);
        });

    [Fact]
    public void Widening_any_time_only_adds_inhaler_verdicts() =>
        Gen.Select(Start, Gen.Select(Earlier, Gen.Bool).List[0, 3], Gen.Int[0, 5]).Holds((start, doses, by) =>
        {
            HashSet<GapVerdict> Possible(Duration d) =>
                InhalerVerdicts.Possible(Range(start).WidenedBy(d), [.. doses.Select(x => new PossibleDose(Range(x.Item1).WidenedBy(d), x.Item2))], Zones);
            Assert.Superset(Possible(Duration.Zero), Possible(Duration.FromMinutes(by)));
        });

    [Fact]
    public void A_higher_limit_never_turns_a_feed_gap_into_kept() =>
        Gen.Select(Start, AFeed.List[0, 3], Gen.Double[0, 20], Gen.Double[0, 20]).Holds((start, feeds, limit, more) =>
        {
            var bounds = FeedGapBounds.Of(Range(start), [.. feeds.Select(Span)]);
            if (bounds.Against(limit + more) == GapVerdict.Kept) Assert.Equal(GapVerdict.Kept, bounds.Against(limit));
            if (bounds.Against(limit) == GapVerdict.Short) Assert.Equal(GapVerdict.Short, bounds.Against(limit + more));
        });

    /// <summary>Every gap: for each start and each begin and end of each feed, max(0, start − latest end of the feeds begun before).</summary>
    private static IEnumerable<double?> FeedReadings((int Low, int High) start, IReadOnlyList<((int Low, int High) Begins, (int Low, int High) Ends)> feeds)
    {
        for (var s = start.Low; s <= start.High; s++)
            foreach (var choice in Product([.. feeds.Select(f => Pairs(f).ToList())]))
            {
                var begun = choice.Where(c => c.Begins < s).ToList();
                yield return begun.Count == 0 ? null : Math.Max(0, s - begun.Max(c => c.Ends));
            }
    }

    private static IEnumerable<(int Begins, int Ends)> Pairs(((int Low, int High) Begins, (int Low, int High) Ends) feed) =>
        from b in Enumerable.Range(feed.Begins.Low, feed.Begins.High - feed.Begins.Low + 1)
        from e in Enumerable.Range(feed.Ends.Low, feed.Ends.High - feed.Ends.Low + 1)
        select (b, e);

    private static IEnumerable<GapVerdict> InhalerReadings((int Low, int High) start, IReadOnlyList<((int Low, int High) At, bool Certain)> doses)
    {
        for (var s = start.Low; s <= start.High; s++)
            foreach (var choice in Product([.. doses.Select(d => Moments(d).ToList())]))
            {
                var gaps = choice.OfType<int>().Select(t => s - t).Where(g => g >= 0).ToList();
                yield return gaps.Exists(g => g >= Zones.Limit && g <= Zones.Window) ? GapVerdict.Kept
                    : gaps.Count > 0 && gaps.Min() < Zones.Limit ? GapVerdict.Short
                    : gaps.Exists(g => g <= InhalerZones.Reach) ? GapVerdict.Early
                    : GapVerdict.None;
            }
    }

    private static IEnumerable<int?> Moments(((int Low, int High) At, bool Certain) dose)
    {
        for (var t = dose.At.Low; t <= dose.At.High; t++) yield return t;
        if (!dose.Certain) yield return null;
    }

    private static IEnumerable<IReadOnlyList<T>> Product<T>(IReadOnlyList<List<T>> choices) =>
        choices.Aggregate<List<T>, IEnumerable<IReadOnlyList<T>>>([[]], (done, next) => done.SelectMany(d => next.Select(n => (IReadOnlyList<T>)[.. d, n])));

    private static InstantRange Range((int Low, int High) minutes) =>
        new(Origin + Duration.FromMinutes(minutes.Low), Origin + Duration.FromMinutes(minutes.High));

    private static FeedSpan Span(((int Low, int High) Begins, (int Low, int High) Ends) feed) =>
        new(Range(feed.Begins), Range(feed.Ends), new CareRecords.Records.Feed { Sources = [] });
}
