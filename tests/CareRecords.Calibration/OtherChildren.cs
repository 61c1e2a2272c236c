using CareRecords.Records;
using NodaTime;

namespace CareRecords.Calibration;

/// <summary>What a child of the second generator is like.</summary>
internal sealed record OtherOptions
{
    public required int Seed { get; init; }

    public int Days { get; init; } = 150;

    public int ChecksPerDay { get; init; } = 8;

    public double Noise { get; init; } = 1;

    /// <summary>The shape of the deficit; null for any.</summary>
    public string? Shape { get; init; }

    public bool Oxygen { get; init; }

    /// <summary>Share of readings with a flow; negative: only raised flows are written.</summary>
    public double OxygenWritten { get; init; } = 0.7;

    /// <summary>Points by which the usual saturation wanders slowly over the record.</summary>
    public double Drift { get; init; }

    /// <summary>Points by which evenings are lower than mornings.</summary>
    public double Circadian { get; init; }

    /// <summary>Share of readings 3 to 6 points low.</summary>
    public double Outliers { get; init; }

    /// <summary>Hours over which errors forget each other; 0 for independent errors.</summary>
    public double ErrorHours { get; init; }

    public double DaysMissing { get; init; }

    public double Depth { get; init; } = 5.5;

    public double SignsWritten { get; init; }

    /// <summary>Whether the plan states the usual oxygen.</summary>
    public bool PlanStatesOxygen { get; init; } = true;

    public double Top { get; init; } = 97;
}

/// <summary>
/// A second generator, unlike the first in shapes, oxygen and errors, so that nothing is tuned to one family: deficits are drawn through points
/// (steps, a bend, a halt, a second dip, a long tail, a slow start), and oxygen is turned at two rounds a day by fixed limits.
/// </summary>
internal static class OtherChildren
{
    public static readonly string[] Shapes = ["steps", "bend", "halt", "second dip", "long tail", "slow start", "even", "sudden"];

    private static readonly LocalDate First = new(2026, 9, 7);

    public static KnownChild Make(OtherOptions o)
    {
        var random = new Random(o.Seed);
        double Between(double a, double b) => a + ((b - a) * random.NextDouble());
        double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        var baseline = Math.Round(Between(o.Top - 3.5, o.Top), 2);
        var usual = o.Oxygen ? new[] { 0, 0.5, 1 }[random.Next(3)] : 0;
        var phase = Between(0, 6.28);

        var illnesses = new List<(string Kind, double Onset, List<(double Day, double Deficit)> Points)>();
        var day = Between(8, 30);
        while (day < o.Days - 4)
        {
            var kind = o.Shape ?? Shapes[random.Next(Shapes.Length)];
            var points = PointsOf(kind, day, o.Depth * Between(0.75, 1.35), Between);
            illnesses.Add((kind, day, points));
            day = points[^1].Day + Between(8, 45);
        }

        double Deficit(double t) => illnesses.Count == 0 ? 0 : illnesses.Max(i => At(i.Points, t));
        double slope = Between(2.5, 8), lowAt = Between(2, 3.5), highAt = Between(0.6, 1.5), flow = usual;
        var flows = new List<(double Day, double Flow)> { (0, usual) };
        var lastDown = -9.0;
        double Shown(double t, double f) => Math.Max(0, Deficit(t) - (slope * (f - usual)));
        var silent = Enumerable.Range(0, o.Days).Select(_ => random.NextDouble() < o.DaysMissing).ToArray();
        var entries = new List<CareEntry>();
        double error = 0, before = -1;
        for (var d = 0; d < o.Days; d++)
        {
            var rounds = new[] { d + Between(0.12, 0.2), d + Between(0.3, 0.6), d + Between(0.62, 0.75) };
            var readings = Enumerable.Range(0, o.ChecksPerDay + (Deficit(d) > 2 ? 2 : 0)).Select(_ => d + (random.NextDouble() < 0.92 ? Between(0.1, 0.75) : Between(0, 1)));
            foreach (var (t, turn) in readings.Select(r => (r, false)).Concat(rounds.Select(r => (r, true))).Order().ToList())
            {
                if (turn)
                {
                    if (!o.Oxygen) continue;
                    var was = flow;
                    if (Shown(t, flow) > lowAt && flow < usual + 3) flow += 0.5;
                    else if (flow > usual && Shown(t, flow - 0.5) < highAt && t - lastDown > 0.7)
                    {
                        flow -= 0.5;
                        lastDown = t;
                    }

                    if (flow == was) continue;
                    flows.Add((t, flow));
                    if (!silent[d] && random.NextDouble() < Math.Abs(o.OxygenWritten) && (o.OxygenWritten > 0 || flow > usual)) entries.Add(CheckAt(t, null, flow));
                    continue;
                }

                var keeps = o.ErrorHours > 0 ? Math.Exp(-(t - before) * 24 / o.ErrorHours) : 0;
                error = (keeps * error) + (Math.Sqrt(1 - (keeps * keeps)) * o.Noise * Normal());
                before = t;
                if (silent[d]) continue;
                var level = baseline + (o.Drift * Math.Sin(phase + (t / o.Days * 5))) - (o.Circadian * Math.Sin(Math.PI * (t - d)));
                var spo2 = level - Shown(t, flow) + error - (random.NextDouble() < o.Outliers ? Between(3, 6) : 0);
                double? written = o.Oxygen && random.NextDouble() < Math.Abs(o.OxygenWritten) && (o.OxygenWritten > 0 || flow > usual) ? flow : null;
                entries.Add(CheckAt(t, Math.Clamp(Math.Round(spo2), 60, 100), written));
            }

            if (illnesses.Any(i => i.Onset < d + 0.7 && At(i.Points, d + 0.7) > 1) && random.NextDouble() < o.SignsWritten) entries.Add(Unwell(d + 0.7));
        }

        var truths = illnesses.Select((i, n) =>
        {
            var back = LastAtLeastOne(i.Points);
            var next = n + 1 < illnesses.Count ? illnesses[n + 1].Onset : double.MaxValue;
            for (var f = 0; f < flows.Count; f++)
                if (flows[f].Flow > usual && flows[f].Day >= i.Onset && flows[f].Day < next) back = Math.Max(back, f + 1 < flows.Count ? flows[f + 1].Day : double.MaxValue);
            return new KnownEpisode((int)Math.Floor(i.Onset), i.Onset, back < o.Days ? back : null);
        });
        return new KnownChild(
            new CareLog { Zone = "Etc/UTC", ZoneFrom = "the plan", Entries = entries, Plan = o.Oxygen && o.PlanStatesOxygen ? PlanOf(usual) : CarePlan.Empty },
            First, o.Days, baseline - (o.Circadian * 0.7), [.. truths], Deficit);
    }

    private static UncertainTime When(double day) =>
        UncertainTime.Exactly(First.At(new LocalTime((int)KnownChild.DayStartsHours, 0)).PlusMinutes((long)Math.Round(day * 1440)));

    private static Check CheckAt(double day, double? spo2, double? flow) =>
        new() { Sources = [SourceLine.InText("simulated.csv", 1, "check")], Start = When(day), SpO2 = spo2, OxygenLitresPerMinute = flow };

    private static Sign Unwell(double day) =>
        new() { Sources = [SourceLine.InText("simulated.csv", 1, "sign")], Start = When(day), Kind = SignKind.Unwell, What = "unwell" };

    private static CarePlan PlanOf(double usual) =>
        new() { Rows = [new PlanRow(null, PlanItem.UsualOxygen, usual.ToString("0.##", System.Globalization.CultureInfo.InvariantCulture), usual, usual, null)] };

    private static double At(List<(double Day, double Deficit)> points, double t)
    {
        if (t <= points[0].Day || t >= points[^1].Day) return 0;
        var i = points.FindIndex(p => p.Day > t);
        var ((a, x), (b, y)) = (points[i - 1], points[i]);
        return x + ((y - x) * (t - a) / (b - a));
    }

    private static double LastAtLeastOne(List<(double Day, double Deficit)> points)
    {
        for (var i = points.Count - 1; i > 0; i--)
        {
            var ((a, x), (b, y)) = (points[i - 1], points[i]);
            if (x < 1) continue;
            return y >= 1 ? b : b - ((b - a) * (1 - y) / (x - y));
        }

        return points[0].Day;
    }

    private static List<(double Day, double Deficit)> PointsOf(string kind, double onset, double depth, Func<double, double, double> between)
    {
        var t = onset;
        var points = new List<(double, double)> { (t, 0) };
        void To(double days, double deficit) => points.Add((t += days, deficit));
        To(kind == "slow start" ? between(2, 4) : between(0.3, 2), depth);
        To(between(0.3, 4), depth * between(0.85, 1));
        switch (kind)
        {
            case "steps":
                for (var left = depth; left > 0.9;)
                {
                    left = Math.Max(0, left - between(1.2, 2.6));
                    To(0.25, left);
                    To(between(0.7, 2.5), left);
                }

                To(0.2, 0);
                break;
            case "bend":
                To(between(0.5, 2), depth * 0.45);
                To(between(3, 7), 0);
                break;
            case "halt":
                To(between(1, 3), between(1.6, 2.4));
                To(between(2, 5), points[^1].Item2);
                To(between(0.5, 2), 0);
                break;
            case "second dip":
                To(between(1, 3), between(0.6, 2));
                To(between(0.5, 1), depth * 0.7);
                To(between(1.5, 4), 0);
                break;
            case "long tail":
                for (var (left, half) = (depth, between(1.2, 2.4)); left > 0.15; left /= 2) To(half, left / 2);
                To(1, 0);
                break;
            case "sudden":
                To(between(0.2, 0.5), 0);
                break;
            default:
                To(between(2.5, 8), 0);
                break;
        }

        return points;
    }
}
