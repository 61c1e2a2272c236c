using CsCheck;

namespace CareRecords.Statistics.Tests.HiddenMarkovModels;

public class HiddenMarkovTests
{
    private static readonly HiddenMarkovModel Two = new([new PoissonState(1), new PoissonState(4)], [[0.8, 0.2], [0.3, 0.7]], [0.6, 0.4]);

    private static readonly Gen<double?[]> Counts =
        Gen.Int[-1, 7].Select(v => v < 0 ? null : (double?)v).Array[1, 7].Where(a => a.Any(v => v is not null));

    [Fact]
    public void Recursions_equal_sums_and_maxima_over_all_paths() => Counts.Holds(x =>
    {
        var paths = Enumerable.Range(0, 1 << x.Length).Select(mask => Enumerable.Range(0, x.Length).Select(t => (mask >> t) & 1).ToArray()).ToArray();
        double Joint(int[] path) => Math.Exp(Enumerable.Range(0, x.Length).Sum(t =>
            Math.Log(t == 0 ? Two.Initial[path[0]] : Two.Transition[path[t - 1]][path[t]]) + (x[t] is { } v ? Two.States[path[t]].LogDensity(v) : 0)));
        var total = paths.Sum(Joint);
        var p = HiddenMarkov.Probabilities(Two, x).Value;
        var best = HiddenMarkov.LikeliestPath(Two, x).Value;
        return Math.Abs(p.LogLikelihood - Math.Log(total)) < 1e-10
            && Math.Abs(best.LogProbability - Math.Log(paths.Max(Joint))) < 1e-10
            && Enumerable.Range(0, x.Length).All(t => Math.Abs(p.Posterior[t][1] - (paths.Where(q => q[t] == 1).Sum(Joint) / total)) < 1e-10);
    });

    [Fact]
    public void Stationary_distribution_of_a_two_state_chain_is_in_the_ratio_of_the_moves()
    {
        Near.Equal(0.6, Two.Stationary[0]);
        Near.Equal(0.4, Two.Stationary[1]);
    }

    [Fact]
    public void A_far_off_observation_does_not_underflow()
    {
        var model = new HiddenMarkovModel([new GaussianState(96, 1, 0.5), new GaussianState(90, 1, 0.5)], [[0.9, 0.1], [0.1, 0.9]]);
        var p = HiddenMarkov.Probabilities(model, [96, 96, -5000, 90]).Value;
        Assert.True(double.IsFinite(p.LogLikelihood));
        Assert.All(p.Posterior, row => Near.Equal(1, row.Sum()));
    }

    [Fact]
    public void Long_gaps_run_back_to_the_stationary_distribution()
    {
        var p = HiddenMarkov.Probabilities(Two, [9, .. Enumerable.Repeat<double?>(null, 200)]).Value;
        Near.Equal(0.4, p.Posterior[^1][1]);
    }

    [Fact]
    public void Gradient_of_the_stationary_likelihood_equals_differences()
    {
        var random = new SeededRandom(4);
        double?[] x = [.. Enumerable.Range(0, 40).Select(t => t % 9 == 0 ? null : (double?)(90 + (3 * random.Gaussian())))];
        var start = new HiddenMarkovModel(
            [new GaussianState(88, 2, 0.1), new GaussianState(91, 1.5, 0.1), new GaussianState(94, 1, 0.1)],
            [[0.8, 0.1, 0.1], [0.2, 0.7, 0.1], [0.1, 0.3, 0.6]]);
        var problem = new StationaryLikelihood(start, x);
        var at = StationaryLikelihood.Pack(start);
        var gradient = problem.Negative(at).Gradient;
        for (var j = 0; j < at.Length; j++)
        {
            double Value(double step)
            {
                var moved = (double[])at.Clone();
                moved[j] += step;
                return problem.Negative(moved).Value;
            }

            Near.Equal((Value(1e-5) - Value(-1e-5)) / 2e-5, gradient[j], 1e-6);
        }
    }

    [Fact]
    public void Two_gaussian_states_are_recovered_from_a_simulated_series()
    {
        var random = new SeededRandom(11);
        var state = 0;
        List<double?> x = [];
        for (var t = 0; t < 500; t++)
        {
            state = random.Uniform() < 0.05 ? 1 - state : state;
            x.Add(t % 10 == 3 ? null : (state == 0 ? 96 : 91) + random.Gaussian());
        }

        var start = HiddenMarkovFit.Start(x, 2, c => new GaussianState(c, 2, 0.3)).Value;
        foreach (var fit in new[] { HiddenMarkovFit.ByEm(start, x).Value, HiddenMarkovFit.Stationary(start, x).Value })
        {
            Assert.True(fit.Converged);
            Assert.Equal(450, fit.Count);
            Assert.InRange(fit.Model.States[0].Centre, 90.7, 91.3);
            Assert.InRange(fit.Model.States[1].Centre, 95.7, 96.3);
            Assert.InRange(fit.Model.Transition[0][1], 0.02, 0.09);
        }
    }

    [Fact]
    public void Too_little_or_level_data_and_broken_models_are_named()
    {
        Assert.False(HiddenMarkov.Probabilities(Two, []).IsKnown);
        Assert.False(HiddenMarkov.LikeliestPath(Two, [null, null]).IsKnown);
        Assert.Equal(10, HiddenMarkovFit.ByEm(Two, [1, 2, 3]).Missing!.Smallest);
        Assert.False(HiddenMarkovFit.Stationary(Two, [.. Enumerable.Repeat<double?>(3, 30)]).IsKnown);
        Assert.False(HiddenMarkovFit.Start([null], 2, c => new PoissonState(c)).IsKnown);
        Assert.Throws<ArgumentException>(() => HiddenMarkov.Probabilities(Two, [1.5]));
        Assert.Throws<ArgumentException>(() => new HiddenMarkovModel([new PoissonState(1)], [[0.5]]));
        Assert.Throws<ArgumentException>(() => new HiddenMarkovModel([new PoissonState(1), new GaussianState(1, 1, 0.1)], [[1, 0], [0, 1]]));
    }

    [Fact]
    public void A_series_with_a_stretch_of_zeros_still_fits()
    {
        double?[] x = [.. Enumerable.Repeat<double?>(0, 20), .. Enumerable.Range(0, 20).Select(i => (double?)(3 + (i % 3)))];
        var fit = HiddenMarkovFit.Stationary(HiddenMarkovFit.Start(x, 2, c => new PoissonState(c + 0.5)).Value, x).Value;
        Assert.InRange(fit.Model.States[1].Centre, 3.5, 4.5);
        Assert.True(double.IsFinite(fit.LogLikelihood));
    }
}
