using CareRecords.Pooling;
using CareRecords.Workbooks.Building;

namespace CareRecords.Workbooks.Pooled.Sheets;

/// <summary>How each pooled figure is worked out, with its source.</summary>
internal static class MethodsSheet
{
    private sealed record Method(string Figure, string How, string Source);

    public static void Write(Book book, PooledFindings findings) => PooledPage.Table(
        book, "Methods",
        FormattableString.Invariant($"Seed {findings.Options.Seed}, {findings.Options.BootstrapSamples} bootstrap samples of children, {findings.Options.Permutations} permutations, smallest group {findings.Options.SmallestGroup}. The same inputs in any order give the same figures."),
        "Methods",
        [
            new Column<Method>("figure", 26, m => CellContent.Of(m.Figure)) { Wrap = true },
            new("how", 100, m => CellContent.Of(m.How)) { Wrap = true },
            new("source", 44, m => CellContent.Of(m.Source)) { Wrap = true },
        ],
        Methods, Look.Orange);

    private static readonly Method[] Methods =
    [
        new("Pooled share", "Logistic model with a normal random intercept by child, by marginal likelihood with adaptive quadrature; limits by t on children less one. The share is that of a child with the middle intercept.", "Stijnen T et al. 2010, Stat Med 29:3046"),
        new("Pooled share, beside it", "Each child's logit share, a half added to both counts, with a variance smoothed over the children; REML for the variance between children; Hartung-Knapp limits.", "Hartung J, Knapp G 2001, Stat Med 20:3875; Berkey CS et al. 1995, Stat Med 14:395"),
        new("tau², I², further child", "tau² is the variance between children on the logit scale; I² its share in the variation seen; a further child: tau² is not taken as known but runs through its confidence distribution.", "Higgins JPT, Thompson SG 2002, Stat Med 21:1539; Nagashima K et al. 2019, Stat Methods Med Res 28:1689"),
        new("Recovery curve and median", "Nonparametric estimate for interval- and right-censored days; the median is the middle of the interval on which the curve passes one half. Limits: whole children drawn again, percentiles moved outwards for few children.", "Turnbull BW 1976, J R Stat Soc B 38:290; Hesterberg TC 2015, Am Stat 69:371"),
        new("Weibull", "Maximum likelihood over the same intervals; limits of the median by standard errors that take children, not episodes, as independent, and t on children less one. Children of unlike pace are together no Weibull law: in simulated studies its median tended to one 0.8 to 1.7 % too high. Read the curve first.", "Kalbfleisch JD, Prentice RL 2002; Lin DY, Wei LJ 1989, J Am Stat Assoc 84:1074"),
        new("Recovery between groups", "Log-rank scores for interval-censored days, added up by child; whole children permuted among groups.", "Finkelstein DM 1986, Biometrics 42:845; Fay MP, Shaw PA 2010, J Stat Softw 36(2)"),
        new("Shares between groups", "Weighted spread of the groups' mean logits; whole children permuted among groups.", "Phipson B, Smyth GK 2010, Stat Appl Genet Mol Biol 9:39"),
        new("Setbacks by stable hours", "In each band the logistic model with a random intercept by child. Trend: each child's covariance of setback and hours, signs turned child by child.", "as above"),
        new("Keeping back", "Rows of fewer children than the smallest group; then further rows of the same table until those kept back are two at least and hold the smallest group together. Curves stop when fewer are followed, and take no step of fewer.", "Common practice of statistical offices, no single source"),
    ];
}
