namespace CareRecords.Statistics;

/// <summary>
/// The log-likelihood of a location-scale model for interval-censored log times in the parameters a = location/scale and
/// r = 1/scale, in which it is concave (Burridge J 1981, J R Stat Soc B 43:41-45); w = r·log t − a is linear in them.
/// </summary>
internal readonly record struct CensoredLikelihood(double Value, double ByA, double ByR, double AA, double AR, double RR)
{
    public static CensoredLikelihood At(StandardLaw law, CensoredInterval[] intervals, double a, double r)
    {
        var sum = default(CensoredLikelihood);
        foreach (var interval in intervals)
        {
            sum = sum.Plus(interval.IsExact ? Exact(law, interval.Right, a, r) : Within(law, interval, a, r));
        }

        return sum;
    }

    private static CensoredLikelihood Exact(StandardLaw law, double time, double a, double r)
    {
        var log = Math.Log(time);
        var w = (r * log) - a;
        var (score, bend) = (law.Score(w), law.Bend(w));
        return new(
            Math.Log(law.Density(w)) + Math.Log(r) - log,
            -score,
            (score * log) + (1 / r),
            bend,
            -bend * log,
            (bend * log * log) - (1 / (r * r)));
    }

    private static CensoredLikelihood Within(StandardLaw law, CensoredInterval interval, double a, double r)
    {
        // An end at 0 or infinity carries neither probability density nor a derivative; its log is never used.
        var (left, right) = (interval.Left > 0, !interval.IsRightCensored);
        var (logLeft, logRight) = (left ? Math.Log(interval.Left) : 0, right ? Math.Log(interval.Right) : 0);
        var wLeft = left ? (r * logLeft) - a : double.NegativeInfinity;
        var wRight = right ? (r * logRight) - a : double.PositiveInfinity;
        var chance = law.Between(wLeft, wRight);
        var (fLeft, fRight) = (left ? law.Density(wLeft) / chance : 0, right ? law.Density(wRight) / chance : 0);
        var (gLeft, gRight) = (fLeft > 0 ? fLeft * law.Score(wLeft) : 0, fRight > 0 ? fRight * law.Score(wRight) : 0);

        // dw/da = −1, dw/dr = log t.
        var byA = fLeft - fRight;
        var byR = (fRight * logRight) - (fLeft * logLeft);
        return new(
            Math.Log(chance),
            byA,
            byR,
            gRight - gLeft - (byA * byA),
            (gLeft * logLeft) - (gRight * logRight) - (byA * byR),
            (gRight * logRight * logRight) - (gLeft * logLeft * logLeft) - (byR * byR));
    }

    private CensoredLikelihood Plus(CensoredLikelihood other) => new(
        Value + other.Value, ByA + other.ByA, ByR + other.ByR, AA + other.AA, AR + other.AR, RR + other.RR);
}
