namespace CareRecords.Findings.Modelling;

/// <summary>What the illness model found; <see cref="Missing"/> says why when it found nothing to say.</summary>
internal sealed record IllnessModelResult
{
    /// <summary>Why there is no answer, in a sentence; null when there is one.</summary>
    public string? Missing { get; init; }

    /// <summary>The usual saturation and the spread about it; null when <see cref="Missing"/>.</summary>
    public ModelBaseline? Baseline { get; init; }

    /// <summary>The usual oxygen, L/min, that the model worked with on the last day; null when no flow was ever written and none was given.</summary>
    public double? UsualOxygen { get; init; }

    /// <summary>Episodes in order of onset; empty when none was found.</summary>
    public IReadOnlyList<ModelEpisode> Episodes { get; init; } = [];

    /// <summary>By care day, the probability (0 to 1) of being ill: saturation under usual by a point or more, or oxygen above usual.</summary>
    public IReadOnlyList<double> ProbabilityIll { get; init; } = [];
}

/// <summary>The child's usual saturation at usual oxygen by the model.</summary>
/// <param name="Centre">The centre, per cent.</param>
/// <param name="Low">Lower limit of its 95 % interval, per cent.</param>
/// <param name="High">Upper limit of its 95 % interval, per cent.</param>
/// <param name="NoiseSd">Robust standard deviation of one reading about the centre on well days, points.</param>
/// <param name="Dependence">How many times larger the variance of a day's mean is than independent readings would give (1 or more).</param>
/// <param name="WellDays">Care days that gave it.</param>
/// <param name="Readings">Readings that gave it.</param>
internal sealed record ModelBaseline(double Centre, double Low, double High, double NoiseSd, double Dependence, int WellDays, int Readings);

/// <summary>One episode by the model. Days are counted from the start of the first care day, recovery from the start of <see cref="OnsetDay"/>.</summary>
internal sealed record ModelEpisode
{
    /// <summary>The care day (from 0) in which the onset most probably lies: the posterior median.</summary>
    public required int OnsetDay { get; init; }

    /// <summary>The earliest care day of its 95 % interval.</summary>
    public required int OnsetLow { get; init; }

    /// <summary>The latest care day of its 95 % interval.</summary>
    public required int OnsetHigh { get; init; }

    /// <summary>The care day on which the child was furthest from usual.</summary>
    public required int PeakDay { get; init; }

    /// <summary>The last care day that counts as an illness day.</summary>
    public required int LastDay { get; init; }

    /// <summary>The model's recovery.</summary>
    public required RecoveryEstimate Recovery { get; init; }

    /// <summary>The model's saturation at usual oxygen by day from onset, with its 95 % band.</summary>
    public required IReadOnlyList<CurvePoint> Curve { get; init; }
}

/// <summary>Days from the start of the onset's care day to recovery.</summary>
/// <param name="Days">The posterior median; null when recovery is not established by the end of the record.</param>
/// <param name="Low">Lower limit of the calibrated interval.</param>
/// <param name="High">Upper limit; null when open because recovery is not established by the end of the record.</param>
/// <param name="Level">The level that the interval was calibrated to, 0.95.</param>
/// <param name="Censored">True when recovery is not established by the end of the record.</param>
internal sealed record RecoveryEstimate(double? Days, double Low, double? High, double Level, bool Censored);
