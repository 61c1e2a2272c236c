namespace CareRecords.Statistics.Tests.Survival;

public class CoxRegressionTests
{
    private static CoxSubject Subject(double time, bool happened, params double[] covariates) => new(new(time, happened), covariates);

    [Fact]
    public void Three_subjects_without_ties_by_hand()
    {
        // Events in the order x = 1, 0, 1; log L = b − log(2e^b + 1) − log(1 + e^b): e^b = 1/√2 at the maximum.
        CoxSubject[] subjects = [Subject(1, true, 1), Subject(2, true, 0), Subject(3, true, 1)];
        foreach (var ties in Enum.GetValues<CoxTies>())
        {
            var fit = CoxRegression.Fit(subjects, ties).Value;
            Near.Equal(-0.5 * Math.Log(2), fit.Coefficients[0], 1e-10);
            Near.Equal(-Math.Log(6), fit.LogLikelihoodNull);
        }
    }

    [Fact]
    public void A_separating_or_constant_covariate_is_a_named_outcome()
    {
        Assert.StartsWith(
            "a coefficient runs off",
            CoxRegression.Fit([Subject(1, true, 1), Subject(2, true, 1), Subject(3, false, 0), Subject(4, false, 0)]).Missing!.Reason,
            StringComparison.Ordinal);
        Assert.False(CoxRegression.Fit([Subject(1, true, 2), Subject(2, true, 2)]).IsKnown);
        Assert.False(CoxRegression.Fit([Subject(1, false, 2), Subject(2, false, 1)]).IsKnown);
        Assert.Throws<ArgumentException>(() => CoxRegression.Fit([Subject(1, true, 2), Subject(2, true)]));
    }

    [Fact]
    public void Two_covariates_recover_the_hazard_ratios_they_were_drawn_with() => Coverage.Between(0.92, 0.975, 250, random =>
    {
        var subjects = Enumerable.Range(0, 60).Select(_ =>
        {
            var (x, y) = (random.Gaussian(), (double)random.Below(2));
            return Subject(-Math.Log(random.Uniform()) / Math.Exp((0.5 * x) - y), true, x, y);
        });
        return CoxRegression.Fit([.. subjects]).Value.HazardRatio(1).Covers(Math.Exp(-1));
    });
}
