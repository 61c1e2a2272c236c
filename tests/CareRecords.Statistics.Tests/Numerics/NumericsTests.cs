namespace CareRecords.Statistics.Tests.Numerics;

public class NumericsTests
{
    // Written down once; a change of generator or machine would show here.
    private static readonly double[] Pinned = [0.055792889110163335, 0.78210377286675503, -1.4606559622289361];

    [Fact]
    public void The_generator_gives_the_same_numbers_everywhere()
    {
        var random = new SeededRandom(2024);
        double[] first = [random.Uniform(), random.Uniform(), random.Gaussian()];
        var again = new SeededRandom(2024);
        double[] second = [again.Uniform(), again.Uniform(), again.Gaussian()];
        Assert.Equal(first, second);
        Assert.NotEqual(first[0], new SeededRandom(2025).Uniform());
        Assert.Equal(Pinned[..2], first[..2]);
        Near.Equal(Pinned[2], first[2]);
    }

    [Fact]
    public void Uniform_whole_and_normal_draws_have_their_moments()
    {
        // 40 000 draws: the mean of uniforms has standard error 0.0014, of normals 0.005.
        var random = new SeededRandom(7);
        var (uniform, square, dice) = (0.0, 0.0, new int[6]);
        for (var i = 0; i < 40000; i++)
        {
            uniform += random.Uniform() / 40000;
            square += Math.Pow(random.Gaussian(), 2) / 40000;
            dice[random.Below(6)]++;
        }

        Assert.InRange(uniform, 0.494, 0.506);
        Assert.InRange(square, 0.97, 1.03);
        Assert.All(dice, d => Assert.InRange(d, 6370, 6960));
    }

    [Fact]
    public void Multivariate_draws_have_their_covariance_and_a_flat_one_is_a_point()
    {
        var law = new MultivariateNormal([1, -2], [[4, 3], [3, 9]]);
        var random = new SeededRandom(3);
        var draws = Enumerable.Range(0, 20000).Select(_ => law.Draw(random)).ToArray();
        Assert.InRange(draws.Average(d => d[0]), 0.94, 1.06);
        Assert.InRange(draws.Average(d => (d[0] - 1) * (d[1] + 2)), 2.8, 3.2);
        Assert.Equal(5, Assert.Single(new MultivariateNormal([5], [[0]]).Draw(random)));
        Assert.Throws<ArgumentException>(() => new MultivariateNormal([1, 2], [[1, 2], [3, 1]]));
        Assert.ThrowsAny<ArgumentException>(() => new MultivariateNormal([1, 2], [[1, 2], [2, 1]]));
    }

    [Theory]
    [InlineData(0.95, 1, 12.706204736174694)]
    [InlineData(0.95, 10, 2.2281388519862735)]
    [InlineData(0.99, 4, 4.604094871349993)]
    [InlineData(0.9, 200, 1.652508100910876)]
    public void Student_quantiles_are_those_of_R(double level, double freedom, double expected) => Near.Equal(expected, StudentT.Critical(level, freedom));

    [Theory]
    [InlineData(0.95, 1, 3.8414588206941236)]
    [InlineData(0.025, 12, 4.403788506981701)]
    public void Chi_square_quantiles_are_those_of_R(double probability, double freedom, double expected) => Near.Equal(expected, ChiSquare.Quantile(probability, freedom));

    [Fact]
    public void Small_arguments_keep_their_digits()
    {
        Near.Equal(-0.09516258196404042, Precise.Expm1(-0.1), 1e-15);
        Assert.Equal(1e-20, Precise.Expm1(1e-20));
        Assert.Equal(1e-20, Precise.Log1p(1e-20));
        Near.Equal(1, Precise.Log1p(1e-9) / (1e-9 - 5e-19), 1e-15);
    }

    [Fact]
    public void An_estimate_refuses_NaN_and_wrong_order()
    {
        Assert.Throws<ArgumentException>(() => new Estimate(double.NaN, 0, 1, 0.95, 1, "test"));
        Assert.Throws<ArgumentException>(() => new Estimate(0.5, 1, 0, 0.95, 1, "test"));
        Assert.Equal(2, new Outcome<double>(new TooLittleData("test", 0, 1, "none")).Or(2));
        Assert.Equal(6, new Outcome<double>(3).Then(x => 2 * x).Value);
        Assert.False(new Outcome<double>(new TooLittleData("test", 0, 1, "none")).TryGet(out _));
    }
}
