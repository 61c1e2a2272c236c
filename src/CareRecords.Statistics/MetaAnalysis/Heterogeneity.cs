namespace CareRecords.Statistics;

/// <summary>
/// Estimates of the between-study variance τ², all cut at 0.
/// Source: Viechtbauer W (2005), J Educ Behav Stat 30:261-293; Veroniki AA et al. (2016), Res Synth Methods 7:55-79.
/// </summary>
internal static class Heterogeneity
{
    private const int MostSteps = 10000;

    public static double Estimate(StudyEffect[] studies, HeterogeneityMethod method) => method switch
    {
        HeterogeneityMethod.CommonEffect => 0,
        HeterogeneityMethod.DerSimonianLaird => DerSimonianLaird(studies),
        HeterogeneityMethod.Hedges => Hedges(studies),
        HeterogeneityMethod.SidikJonkman => SidikJonkman(studies),
        HeterogeneityMethod.PauleMandel => WhereQIs(studies, studies.Length - 1),
        HeterogeneityMethod.MaximumLikelihood => Scoring(studies, restricted: false),
        _ => Scoring(studies, restricted: true),
    };

    /// <summary>The τ² at which the generalised Q statistic equals a value; 0 when it is smaller already.</summary>
    public static double WhereQIs(StudyEffect[] studies, double target)
    {
        double Excess(double tau2) => WeightedMean.Of(studies, tau2).Q - target;
        if (Excess(0) <= 0)
        {
            return 0;
        }

        var high = 1.0;
        while (Excess(high) > 0 && high < 1e100)
        {
            high *= 2;
        }

        return Bisection.Falling(Excess, 0, high);
    }

    /// <summary>The expected information of τ² in the restricted likelihood is half of this.</summary>
    public static double RestrictedInformation(StudyEffect[] studies, double tau2)
    {
        var (w1, w2, w3) = Powers(studies, tau2);
        return w2 - (2 * w3 / w1) + (w2 * w2 / (w1 * w1));
    }

    public static double RestrictedLogLikelihood(StudyEffect[] studies, double tau2)
    {
        var pooled = WeightedMean.Of(studies, tau2);
        var k = studies.Length;
        return (-0.5 * (k - 1) * Math.Log(2 * Math.PI)) + (0.5 * Math.Log(k)) - (0.5 * studies.Sum(s => Math.Log(s.Variance + tau2)))
            - (0.5 * Math.Log(pooled.Weight)) - (0.5 * pooled.Q);
    }

    private static double DerSimonianLaird(StudyEffect[] studies)
    {
        var (w1, w2, _) = Powers(studies, 0);
        return Math.Max(0, (WeightedMean.Of(studies, 0).Q - (studies.Length - 1)) / (w1 - (w2 / w1)));
    }

    private static double Hedges(StudyEffect[] studies)
    {
        var mean = studies.Average(s => s.Value);
        return Math.Max(0, (studies.Sum(s => (s.Value - mean) * (s.Value - mean)) / (studies.Length - 1)) - studies.Average(s => s.Variance));
    }

    private static double SidikJonkman(StudyEffect[] studies)
    {
        var mean = studies.Average(s => s.Value);
        var rough = studies.Average(s => (s.Value - mean) * (s.Value - mean));
        if (rough == 0)
        {
            return 0;
        }

        StudyEffect[] relative = [.. studies.Select(s => new StudyEffect(s.Value, (s.Variance / rough) + 1))];
        return WeightedMean.Of(relative, 0).Q / (studies.Length - 1);
    }

    /// <summary>Fisher scoring; the step is halved while the likelihood falls, so that it cannot run past a maximum.</summary>
    private static double Scoring(StudyEffect[] studies, bool restricted)
    {
        var (tau2, previous) = (Math.Max(Hedges(studies), DerSimonianLaird(studies)), double.PositiveInfinity);
        for (var step = 0; step < MostSteps; step++)
        {
            var (w1, w2, w3) = Powers(studies, tau2);
            var mean = WeightedMean.Of(studies, tau2).Mean;
            var squares = studies.Sum(s => (s.Value - mean) * (s.Value - mean) / ((s.Variance + tau2) * (s.Variance + tau2)));
            var change = restricted
                ? (squares - w1 + (w2 / w1)) / (w2 - (2 * w3 / w1) + (w2 * w2 / (w1 * w1)))
                : (squares - w1) / w2;
            var next = Math.Max(0, tau2 + change);
            for (var halvings = 0; halvings < 40 && LogLikelihood(studies, next, restricted) < LogLikelihood(studies, tau2, restricted) - 1e-12; halvings++)
            {
                next = (next + tau2) / 2;
            }

            var moved = Math.Abs(next - tau2);
            tau2 = next;

            // Steps that no longer get smaller are rounding.
            if (moved == 0 || (moved >= previous && moved <= 1e-10 * Math.Max(1e-3, tau2)))
            {
                break;
            }

            previous = moved;
        }

        return tau2;
    }

    private static double LogLikelihood(StudyEffect[] studies, double tau2, bool restricted)
    {
        var pooled = WeightedMean.Of(studies, tau2);
        return -0.5 * (studies.Sum(s => Math.Log(s.Variance + tau2)) + (restricted ? Math.Log(pooled.Weight) : 0) + pooled.Q);
    }

    private static (double W1, double W2, double W3) Powers(StudyEffect[] studies, double tau2)
    {
        var sum = (W1: 0.0, W2: 0.0, W3: 0.0);
        foreach (var s in studies)
        {
            var w = 1 / (s.Variance + tau2);
            sum = (sum.W1 + w, sum.W2 + (w * w), sum.W3 + (w * w * w));
        }

        return sum;
    }
}

/// <summary>The inverse-variance mean of effects, its total weight and Cochran's Q about it.</summary>
internal readonly record struct WeightedMean(double Mean, double Weight, double Q)
{
    public static WeightedMean Of(StudyEffect[] studies, double tau2)
    {
        var weight = studies.Sum(s => 1 / (s.Variance + tau2));
        var mean = studies.Sum(s => s.Value / (s.Variance + tau2)) / weight;
        return new(mean, weight, studies.Sum(s => (s.Value - mean) * (s.Value - mean) / (s.Variance + tau2)));
    }
}
