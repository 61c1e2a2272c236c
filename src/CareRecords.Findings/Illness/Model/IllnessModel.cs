namespace CareRecords.Findings.Modelling;

/// <summary>Illness episodes by a model over all readings, flows and signs.</summary>
/// <remarks>
/// A hidden Markov chain in steps of six hours: well, rising, returning (with a deficit of saturation and a pace), convalescent. Saturations
/// at usual oxygen show the deficit; a raised flow shows illness and hides an unknown part of the deficit; signs add weight. The child's usual
/// saturation, its spread and how far readings lean on each other come from the days that the chain itself holds to be well, in turns until
/// they settle. Needs readings on at least <see cref="LeastDays"/> days.
/// </remarks>
internal static class IllnessModel
{
    /// <summary>Days with readings that a fit needs.</summary>
    public const int LeastDays = 5;

    /// <summary>Well days (by weight) under which the readings cannot say what is usual.</summary>
    public const double LeastWellDays = 2;

    private const int Rounds = 4;

    /// <summary>The usual is worked with to a twentieth of a point, so its error is never called smaller.</summary>
    private const double LeastError = 0.05;

    /// <summary>Fits the model. Same input, same answer: no random numbers are used.</summary>
    /// <param name="readings">Observations in any order; those outside the care days are left out.</param>
    /// <param name="input">What else is known.</param>
    public static IllnessModelResult Fit(IReadOnlyList<Observation> readings, IllnessModelInput input)
    {
        var observations = readings.Where(o => o.Hours >= 0 && o.Day < input.CareDays).OrderBy(o => o.Hours).ToList();
        var measured = observations.Where(o => o.SpO2 is not null).ToList();
        var days = measured.Select(o => o.Day).Distinct().Count();
        if (measured.Count == 0) return new IllnessModelResult { Missing = "no saturation was written" };
        if (days < LeastDays) return new IllnessModelResult { Missing = $"saturation was written on {days} of at least {LeastDays} days" };

        var oxygen = RaisedOxygen.Of(observations, input.UsualOxygen);
        var half = ReadingLikelihood.HalfStep([.. measured.Select(o => o.SpO2!.Value)]);
        var steps = StepEvidence.StepAt((24.0 * input.CareDays) - 1e-6) + 1;
        var usual = UsualFirstGuess.Of(Weighted(observations, oxygen, null), input.CareDays, input.BaselineGuess);
        DeficitPosterior posterior;
        for (var round = 1; ; round++)
        {
            posterior = DeficitSmoother.Smooth(StepEvidence.Of(observations, oxygen, usual, steps, half));
            var next = UsualFit.Of(Weighted(observations, oxygen, posterior), usual, half);
            var settled = Math.Abs(next.Centre - usual.Centre) < 0.03 && Math.Abs(next.Sd - usual.Sd) < 0.03;
            usual = next;
            if (settled || round == Rounds) break;
        }

        if (usual.WellDays < LeastWellDays) return new IllnessModelResult { Missing = "no days on which the child was well enough to say what is usual" };
        var evidences = Guesses(usual).Select(g => (StepEvidence.Of(observations, oxygen, g.Usual, steps, half), g.Weight)).ToList();
        var reach = 1.96 * Math.Sqrt((usual.StandardError * usual.StandardError) + (LeastError * LeastError));
        return new IllnessModelResult
        {
            Baseline = new ModelBaseline(usual.Centre, usual.Centre - reach, Math.Min(100, usual.Centre + reach), usual.Sd, usual.Dependence,
                (int)Math.Round(usual.WellDays), (int)Math.Round(usual.Readings)),
            UsualOxygen = input.UsualOxygen?[^1],
            Episodes = [.. EpisodeRuns.Of(posterior, oxygen, observations)
                .Select(run => EpisodeEstimate.Of(run, posterior, oxygen, usual, EpisodeCourse.Of(run, evidences)))],
            ProbabilityIll = DayIll(EpisodeRuns.IllProbability(posterior, oxygen, observations), input.CareDays),
        };
    }

    private static List<WeightedReading> Weighted(List<Observation> observations, RaisedOxygen oxygen, DeficitPosterior? posterior)
    {
        var weighted = new List<WeightedReading>(observations.Count);
        for (var i = 0; i < observations.Count; i++)
        {
            if (observations[i].SpO2 is not { } spo2) continue;
            var well = (1 - oxygen.AtObservation[i]) * (posterior?.Well(StepEvidence.StepAt(observations[i].Hours)) ?? 1);
            if (posterior is not null || well > 0.5) weighted.Add(new WeightedReading(observations[i].Day, spo2, well));
        }

        return weighted.Count > 0 ? weighted : [.. observations.Where(o => o.SpO2 is not null).Select(o => new WeightedReading(o.Day, o.SpO2!.Value, 1))];
    }

    /// <summary>The usual saturation at three points of a Gauss-Hermite rule over its standard error.</summary>
    private static IEnumerable<(UsualSaturation Usual, double Weight)> Guesses(UsualSaturation usual)
    {
        var apart = Math.Sqrt(3);
        return [(usual.Moved(-apart), 1 / 6.0), (usual, 2 / 3.0), (usual.Moved(apart), 1 / 6.0)];
    }

    private static double[] DayIll(double[] bySteps, int days)
    {
        var perDay = (int)Math.Round(1 / DeficitTransitions.StepDays);
        return [.. Enumerable.Range(0, days).Select(d => bySteps.Skip(d * perDay).Take(perDay).DefaultIfEmpty(0).Max())];
    }
}
