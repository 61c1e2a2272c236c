using CareRecords.Findings;
using CareRecords.Pooling;
using CareRecords.Workbooks.Building;

namespace CareRecords.Workbooks.Pooled.Sheets;

/// <summary>The figures as tables: pooled shares, rows of the forest plots, recovery, its curves, setbacks, tests, the funnel.</summary>
internal static class FigureSheets
{
    private const string Share = "0.0%";
    private const string Days = "0.0";

    private sealed record NamedShare(string Gap, string Model, GapCounts? Counts, PooledShare Share);

    private sealed record NamedRow(string Gap, ForestRow Row);

    private sealed record NamedCurve(string By, RecoveryCurve Curve);

    private sealed record NamedPoint(string By, string Label, CurvePoint Point);

    public static void Write(Book book, PooledFindings findings)
    {
        Shares(book, findings);
        Rows(book, findings);
        var curves = Curves(findings.Recovery).ToList();
        Recovery(book, curves);
        Points(book, curves);
        Setbacks(book, findings.Setbacks);
        Tests(book, findings);
        Funnel(book, findings.Completeness);
    }

    private static void Shares(Book book, PooledFindings findings) => PooledPage.Table(
        book, "Shares", "Share of judged gaps kept, by two models. The pooled share is that of a child in the middle of the distribution of children.", "Shares",
        [
            new Column<NamedShare>("gap", 14, s => CellContent.Of(s.Gap)),
            new("model", 22, s => CellContent.Of(s.Model)),
            new("children", 10, s => CellContent.Of(s.Counts?.Children)),
            new("kept", 10, s => CellContent.Of(s.Counts?.Kept)),
            new("judged", 10, s => CellContent.Of(s.Counts?.Judged)),
            new("cannot tell", 10, s => CellContent.Of(s.Counts?.Unknown)),
            new("pooled", 10, s => CellContent.Of(s.Share.Pooled)) { Format = Share },
            new("low 95 %", 10, s => CellContent.Of(s.Share.Low)) { Format = Share },
            new("high 95 %", 10, s => CellContent.Of(s.Share.High)) { Format = Share },
            new("further child low", 12, s => CellContent.Of(s.Share.PredictionLow)) { Format = Share },
            new("further child high", 12, s => CellContent.Of(s.Share.PredictionHigh)) { Format = Share },
            new("tau² (logit)", 10, s => CellContent.Of(s.Share.Tau2)) { Format = "0.000" },
            new("I²", 8, s => CellContent.Of(s.Share.I2)) { Format = Share },
            new("method", 60, s => CellContent.Of(s.Share.Method)) { Wrap = true },
        ],
        [.. new[] { findings.FeedGap, findings.InhalerGap }.SelectMany(g => new NamedShare[] { new(g.Name, "random intercept", g.Counts, g.Model), new(g.Name, "two-step", g.Counts, g.TwoStep) })],
        Look.Green);

    private static void Rows(Book book, PooledFindings findings) => PooledPage.Table(
        book, "Forest rows", "What the forest plots draw. Batches are children in order of their share; limits of batches are Wilson's over their sessions.", "ForestRows",
        [
            new Column<NamedRow>("gap", 14, r => CellContent.Of(r.Gap)),
            new("row", 34, r => CellContent.Of(r.Row.Label)),
            new("children", 10, r => CellContent.Of(r.Row.Children)),
            new("judged", 10, r => CellContent.Of(r.Row.Judged)),
            new("share kept", 10, r => CellContent.Of(r.Row.Share)) { Format = Share },
            new("low 95 %", 10, r => CellContent.Of(r.Row.Low)) { Format = Share },
            new("high 95 %", 10, r => CellContent.Of(r.Row.High)) { Format = Share },
            new("kept back", 12, r => CellContent.Of(r.Row.Children is null ? "kept back" : null)),
        ],
        [.. new[] { findings.FeedGap, findings.InhalerGap }.SelectMany(g => g.Forest.Select(r => new NamedRow(g.Name, r)))],
        Look.Green);

    private static IEnumerable<NamedCurve> Curves(PooledRecovery recovery) =>
    [
        new("all children", recovery.All),
        .. recovery.ByStudyGroup.Select(c => new NamedCurve("study group", c)),
        .. recovery.ByAgeBand.Select(c => new NamedCurve("age band", c)),
        .. recovery.ByStability.Select(c => new NamedCurve("stable hours before steps down", c)),
    ];

    private static void Recovery(Book book, IReadOnlyList<NamedCurve> curves) => PooledPage.Table(
        book, "Recovery", "Days from onset to recovery. Nonparametric (Turnbull) and Weibull; limits take whole children, not episodes, as independent.", "Recovery",
        [
            new Column<NamedCurve>("by", 24, c => CellContent.Of(c.By)),
            new("group", 20, c => CellContent.Of(c.Curve.Label)),
            new("children", 10, c => CellContent.Of(c.Curve.Children)),
            new("episodes", 10, c => CellContent.Of(c.Curve.Episodes)),
            new("not recovered by the end", 12, c => CellContent.Of(c.Curve.Censored)),
            new("median, days", 10, c => CellContent.Of(c.Curve.Median)) { Format = Days },
            new("low 95 %", 10, c => CellContent.Of(c.Curve.MedianLow)) { Format = Days },
            new("high 95 %", 10, c => CellContent.Of(c.Curve.MedianHigh)) { Format = Days },
            new("Weibull median, days", 10, c => CellContent.Of(c.Curve.Weibull?.Median)) { Format = Days },
            new("Weibull low", 10, c => CellContent.Of(c.Curve.Weibull?.MedianLow)) { Format = Days },
            new("Weibull high", 10, c => CellContent.Of(c.Curve.Weibull?.MedianHigh)) { Format = Days },
            new("Weibull shape", 10, c => CellContent.Of(c.Curve.Weibull?.Shape)) { Format = "0.00" },
            new("method", 60, c => CellContent.Of(c.Curve.Method)) { Wrap = true },
        ],
        curves, Look.Green);

    private static void Points(Book book, IReadOnlyList<NamedCurve> curves) => PooledPage.Table(
        book, "Recovery curves", "Share of episodes still recovering on whole days from onset, as far as enough children are followed.", "RecoveryCurves",
        [
            new Column<NamedPoint>("by", 24, p => CellContent.Of(p.By)),
            new("group", 20, p => CellContent.Of(p.Label)),
            new("day", 8, p => CellContent.Of(p.Point.Day)) { Format = "0" },
            new("still recovering", 12, p => CellContent.Of(p.Point.Value)) { Format = Share },
            new("low 95 %", 10, p => CellContent.Of(p.Point.Low)) { Format = Share },
            new("high 95 %", 10, p => CellContent.Of(p.Point.High)) { Format = Share },
        ],
        [.. curves.SelectMany(c => c.Curve.Curve.Select(p => new NamedPoint(c.By, c.Curve.Label, p)))], Look.Green);

    private static void Setbacks(Book book, PooledSetbacks setbacks) => PooledPage.Table(
        book, "Setbacks", "Steps down followed by a setback within seven days, by hours stable before the step.", "Setbacks",
        [
            new Column<SetbackBand>("hours stable before", 20, b => CellContent.Of(b.Label)),
            new("children", 10, b => CellContent.Of(b.Children)),
            new("steps", 10, b => CellContent.Of(b.Steps)),
            new("setbacks", 10, b => CellContent.Of(b.Setbacks)),
            new("outcome cannot be told", 12, b => CellContent.Of(b.Unknown)),
            new("share", 10, b => CellContent.Of(b.Share)) { Format = Share },
            new("low 95 %", 10, b => CellContent.Of(b.Low)) { Format = Share },
            new("high 95 %", 10, b => CellContent.Of(b.High)) { Format = Share },
            new("method", 60, b => CellContent.Of(b.Method)) { Wrap = true },
        ],
        setbacks.Bands, Look.Green);

    private static void Tests(Book book, PooledFindings findings) => PooledPage.Table(
        book, "Tests", "Whole children are permuted among groups, or their signs turned, so that the child is the unit.", "Tests",
        [
            new Column<GroupTest>("compared", 50, t => CellContent.Of(t.What)) { Wrap = true },
            new("groups", 40, t => CellContent.Of(string.Join(", ", t.Groups))) { Wrap = true },
            new("p", 8, t => CellContent.Of(t.PValue)) { Format = "0.000" },
            new("method", 70, t => CellContent.Of(t.Method)) { Wrap = true },
        ],
        [.. findings.GroupTests, findings.Setbacks.Trend], Look.Green);

    private static void Funnel(Book book, PooledCompleteness completeness) => PooledPage.Table(
        book, "Funnel", "Batches of children in order of how many of their sessions could be judged.", "Funnel",
        [
            new Column<FunnelPoint>("gap", 14, p => CellContent.Of(p.Gap)),
            new("children", 10, p => CellContent.Of(p.Children)),
            new("could be judged", 12, p => CellContent.Of(p.Completeness)) { Format = Share },
            new("share kept", 10, p => CellContent.Of(p.Share)) { Format = Share },
            new("standard error (logit)", 14, p => CellContent.Of(p.StandardError)) { Format = "0.000" },
        ],
        completeness.Funnel, Look.Green);
}
