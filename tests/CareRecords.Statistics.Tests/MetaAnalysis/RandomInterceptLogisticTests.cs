using CareRecords.Statistics.Tests.Reference;

namespace CareRecords.Statistics.Tests.MetaAnalysis;

public class RandomInterceptLogisticTests
{
    [Fact]
    public void Laplace_fit_agrees_with_glmer_when_its_inner_loop_is_made_to_converge()
    {
        // R 4.2.2, lme4 1.1.31: glmer(cbind(xi, ni - xi) ~ 1 + (1 | study), binomial, nAGQ = 1,
        //   control = glmerControl(optimizer = "bobyqa", tolPwrss = 1e-12))
        var t = CsvTable.Data("pritz1997.csv");
        var fit = RandomInterceptLogistic.Fit([.. t.Wholes("xi").Zip(t.Wholes("ni")).Select((c, i) => new ClusterRow(i, c.First, c.Second, []))], 1).Value;
        Near.Equal(1.375187359545, fit.Coefficients[0], 1e-6);
        Near.Equal(0.757497902153, fit.Deviation, 1e-6);
        Near.Equal(0.286243036926, fit.StandardErrors[0], 1e-5);
        Near.Equal(-32.656466739513, fit.LogLikelihood, 1e-9);
    }

    [Fact]
    public void Clusters_that_do_not_differ_give_plain_logistic_regression()
    {
        var fit = RandomInterceptLogistic.Fit([new(1, 5, 10, []), new(2, 5, 10, []), new(3, 5, 10, [])]).Value;
        Assert.Equal(0, fit.Deviation);
        Near.Equal(0, fit.Coefficients[0], 1e-6);
        Near.Equal(Math.Sqrt(1 / 7.5), fit.StandardErrors[0], 1e-6);
    }

    [Fact]
    public void None_or_all_or_one_cluster_or_a_separating_covariate_is_a_named_outcome()
    {
        Assert.False(RandomInterceptLogistic.Fit([new(1, 0, 10, []), new(2, 0, 10, [])]).IsKnown);
        Assert.False(RandomInterceptLogistic.Fit([new(1, 10, 10, []), new(2, 9, 9, [])]).IsKnown);
        Assert.False(RandomInterceptLogistic.Fit([new(1, 4, 10, [])]).IsKnown);
        Assert.False(RandomInterceptLogistic.Fit([new(1, 0, 10, [0]), new(1, 10, 10, [1]), new(2, 0, 9, [0]), new(2, 9, 9, [1])]).IsKnown);
        Assert.Throws<ArgumentOutOfRangeException>(() => RandomInterceptLogistic.Fit([new(1, 0, 0, []), new(2, 1, 1, [])]));
    }

    [Fact]
    public void Quadrature_rule_has_the_moments_of_the_normal_distribution()
    {
        var rule = GaussHermite.Rule(25);
        Near.Equal(1, rule.Sum(r => r.Weight));
        Near.Equal(0, rule.Sum(r => r.Weight * r.Node));
        Near.Equal(1, rule.Sum(r => r.Weight * Math.Pow(r.Node, 2)));
        Near.Equal(15, rule.Sum(r => r.Weight * Math.Pow(r.Node, 6)), 1e-11);
    }

    [Fact]
    public void Covariate_interval_covers_in_simulation() => Coverage.Between(0.90, 0.98, 40, random =>
    {
        var rows = Enumerable.Range(0, 30).SelectMany(c =>
        {
            var intercept = 0.5 + random.Gaussian();
            return new[] { 0.0, 1.0 }.Select(x => new ClusterRow(c, random.Successes(20, 1 / (1 + Math.Exp(-intercept - x))), 20, [x]));
        });
        return RandomInterceptLogistic.Fit([.. rows], 9).Value.Coefficient(1).Covers(1);
    });
}
