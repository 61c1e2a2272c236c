namespace CareRecords.Statistics.Tests.MetaAnalysis;

public class EmpiricalLogitTests
{
    [Fact]
    public void Two_studies_by_hand()
    {
        // 1 of 3 and 5 of 5: (1½, 2½) and (5½, ½). Variances 2/3 + 2/5 = 16/15 and 2/11 + 2 = 24/11; times 4 and 6 their mean is (64/15 + 144/11)/2 = 1432/165.
        var smoothed = EmpiricalLogit.Smoothed([new(1, 3), new(5, 5)]);
        Near.Equal(Math.Log(0.6), smoothed[0].Value);
        Near.Equal(Math.Log(11), smoothed[1].Value);
        Near.Equal(16 / 15.0, EmpiricalLogit.Of(new(1, 3)).Variance);
        Near.Equal(1432 / 165.0 / 4, smoothed[0].Variance);
        Near.Equal(1432 / 165.0 / 6, smoothed[1].Variance);
    }

    [Fact]
    public void None_and_all_are_finite_and_mirror_each_other()
    {
        var (none, all) = (EmpiricalLogit.Of(new(0, 7)), EmpiricalLogit.Of(new(7, 7)));
        Near.Equal(-all.Value, none.Value);
        Near.Equal(all.Variance, none.Variance);
        Assert.Empty(EmpiricalLogit.Smoothed([]));
        Assert.Throws<ArgumentOutOfRangeException>(() => EmpiricalLogit.Of(new(0, 0)));
    }

    [Fact]
    public void Many_small_studies_pool_without_leaning_to_one_half() => Coverage.Between(0.93, 0.97, 1000, random =>
    {
        // Sixty studies of forty trials, middle 0.8, deviation 0.7: with each study's own variance the mean leans to one half.
        var truth = Math.Log(4);
        var counts = Enumerable.Range(0, 60).Select(_ =>
        {
            var share = 1 / (1 + Math.Exp(-(truth + (0.7 * random.Gaussian()))));
            return new TrialCount(Enumerable.Range(0, 40).Count(_ => random.Uniform() < share), 40);
        });
        return RandomEffects.Fit(EmpiricalLogit.Smoothed([.. counts])).Value.Mean.Covers(truth);
    });
}
