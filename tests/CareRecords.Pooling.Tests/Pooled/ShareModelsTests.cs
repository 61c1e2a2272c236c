using CareRecords.Studies;

namespace CareRecords.Pooling.Tests;

public sealed class ShareModelsTests
{
    // Zhou XH, Brizendine EJ, Pritz MB (1999), Stat Med 18:557: improved, of, in 14 studies (tests/reference/data/pritz1997.csv).
    private static readonly GapTally[] Pritz =
    [
        new(16, 17, 0), new(10, 12, 0), new(4, 8, 0), new(43, 58, 0), new(10, 10, 0), new(25, 42, 0), new(13, 14, 0),
        new(12, 12, 0), new(22, 41, 0), new(4, 5, 0), new(5, 6, 0), new(18, 23, 0), new(58, 68, 0), new(6, 10, 0),
    ];

    [Fact]
    public void Model_AgreesWithLme4()
    {
        // lme4 1.1.31, glmer(cbind(xi, ni-xi) ~ 1 + (1|study), family = binomial, nAGQ = 51); its error is Wald's, the limits here take t on 13 (2.16036865646)
        // and widen by the root of 14/13.
        var t = 2.16036865646 * Math.Sqrt(14.0 / 13);
        var share = ShareModels.Model(Pritz, further: true);
        Assert.Equal(0.798443485608, share.Pooled ?? 0, 6);
        Assert.Equal(0.767664986934 * 0.767664986934, share.Tau2 ?? 0, 5);
        Assert.Equal(Share(1.37659437895 - (t * 0.288379861135)), share.Low ?? 0, 5);
        Assert.Equal(Share(1.37659437895 + (t * 0.288379861135)), share.High ?? 0, 5);

        // The range of a further child: FurtherClusterTests says how R gave it.
        Assert.Equal(Share(-0.48924565819), share.PredictionLow ?? 0, 2);
        Assert.Equal(Share(3.43320878623), share.PredictionHigh ?? 0, 2);
    }

    [Fact]
    public void TwoStep_AgreesWithMetafor()
    {
        // metafor 3.8.1, e = escalc('PLO', xi = xi, ni = ni, add = 1/2, to = 'all'), rma(e$yi, mean(e$vi*(ni+1))/(ni+1), method = 'REML', test = 'knha').
        var share = ShareModels.TwoStep(Pritz);
        Assert.Equal(0.7915695191128, share.Pooled ?? 0, 8);
        Assert.Equal(0.6824048277824, share.Low ?? 0, 8);
        Assert.Equal(0.8703411794042, share.High ?? 0, 8);
        Assert.Equal(0.4747890713866, share.Tau2 ?? 0, 6);
        Assert.Equal(0.5470011605652, share.I2 ?? 0, 6);
    }

    [Fact]
    public void TwoStep_OfEqualShares_HasWidthAndNoRange()
    {
        var share = ShareModels.TwoStep([new(8, 12, 0), new(8, 12, 0), new(8, 12, 0)]);
        Assert.Equal(8.5 / 13, share.Pooled ?? 0, 8);
        Assert.True(share.Low < 0.6 && share.High > 0.7, $"{share.Low} to {share.High}");
        Assert.Null(share.PredictionLow);
        Assert.Contains("normal limits", share.Method, StringComparison.Ordinal);
    }

    [Fact]
    public void Model_OfVeryUnlikeChildren_FindsTheMaximum()
    {
        // A study found by the calibration: searching for the mode of the quadrature, Newton's steps went to and fro and the fit stopped at tau 3.0.
        var study = SyntheticStudy.Children(new StudyOptions { Seed = 100_008, Children = 25, BetweenChildren = 1.2, FeedGapKept = 0.9 });
        GapTally[] tallies = [.. study.Take(24).Select(c => ChildSummary.Of(c).FeedGap)];
        var (model, twoStep) = (ShareModels.Model(tallies), ShareModels.TwoStep(tallies));
        Assert.InRange(Math.Sqrt(model.Tau2 ?? 0), 0.9, 1.6);
        Assert.InRange(model.Pooled ?? 0, twoStep.Pooled - 0.03 ?? 0, twoStep.Pooled + 0.03 ?? 0);
        Assert.True(model.High - model.Low > 0.05);
    }

    [Fact]
    public void OnSixtySimulatedStudies_TheLimitsHoldTheTruthNearlyAlways()
    {
        // 60 studies at 95 %: fewer than 52 would happen in about 1 of 1,000 runs (binomial). docs/pooling.md has the run of many more.
        var held = Calibration.Shares(60).First();
        Assert.True(held.Held >= 52, $"{held.Held} of {held.Studies}");
    }

    private static double Share(double logit) => 1 / (1 + Math.Exp(-logit));
}
