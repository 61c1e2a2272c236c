namespace CareRecords.Statistics;

/// <summary>The distribution of W in log T = location + scale·W: distribution function, density and its log-derivatives.</summary>
internal abstract class StandardLaw
{
    public static StandardLaw Of(SurvivalFamily family) => family switch
    {
        SurvivalFamily.LogNormal => new NormalLaw(),
        SurvivalFamily.LogLogistic => new LogisticLaw(),
        _ => new ExtremeValueLaw(),
    };

    public abstract double Lower(double w);

    public abstract double Upper(double w);

    public abstract double Density(double w);

    /// <summary>First derivative of log density.</summary>
    public abstract double Score(double w);

    /// <summary>Second derivative of log density.</summary>
    public abstract double Bend(double w);

    public abstract double Quantile(double probability);

    /// <summary>P(a &lt; W &lt;= b), from whichever tail keeps the digits.</summary>
    public double Between(double a, double b) => Lower(a) > 0.5 ? Upper(a) - Upper(b) : Lower(b) - Lower(a);

    private sealed class ExtremeValueLaw : StandardLaw
    {
        public override double Lower(double w) => -Precise.Expm1(-Math.Exp(w));

        public override double Upper(double w) => Math.Exp(-Math.Exp(w));

        public override double Density(double w) => double.IsInfinity(w) ? 0 : Math.Exp(w - Math.Exp(w));

        public override double Score(double w) => 1 - Math.Exp(w);

        public override double Bend(double w) => -Math.Exp(w);

        public override double Quantile(double probability) => Math.Log(-Precise.Log1p(-probability));
    }

    private sealed class NormalLaw : StandardLaw
    {
        public override double Lower(double w) => Gaussian.Lower(w);

        public override double Upper(double w) => Gaussian.Upper(w);

        public override double Density(double w) => Math.Exp(-0.5 * w * w) / Math.Sqrt(2 * Math.PI);

        public override double Score(double w) => -w;

        public override double Bend(double w) => -1;

        public override double Quantile(double probability) => Gaussian.Quantile(probability);
    }

    private sealed class LogisticLaw : StandardLaw
    {
        public override double Lower(double w) => w < 0 ? Math.Exp(w) / (1 + Math.Exp(w)) : 1 / (1 + Math.Exp(-w));

        public override double Upper(double w) => Lower(-w);

        public override double Density(double w) => Lower(w) * Upper(w);

        public override double Score(double w) => Upper(w) - Lower(w);

        public override double Bend(double w) => -2 * Density(w);

        public override double Quantile(double probability) => Math.Log(probability / (1 - probability));
    }
}
