using System.Globalization;
using CareRecords.Pooling;

namespace CareRecords.Workbooks.Pooled.Sheets;

/// <summary>Pooled figures in words.</summary>
internal static class PooledWords
{
    public static string Of(PooledGap gap) => gap.Model.Pooled is not { } pooled
        ? $"{gap.Name}: {gap.Model.Method}."
        : Invariant($"{gap.Name}: a child in the middle kept {pooled:0 %} of judged gaps (95 % limits {Limits(gap.Model.Low, gap.Model.High)}); a further child is expected at {Limits(gap.Model.PredictionLow, gap.Model.PredictionHigh)}. {Counts(gap.Counts)} Beside it, two-step REML: {TwoStep(gap.TwoStep)}.");

    public static string Of(RecoveryCurve curve) => curve switch
    {
        { Episodes: null } => $"Recovery, {curve.Label}: {curve.Method}.",
        { Episodes: 0 } => $"Recovery, {curve.Label}: no illness episode.",
        _ => Invariant($"Recovery, {curve.Label}: {curve.Episodes} episodes of {curve.Children} children{Censored(curve)}; half recovered by day {Number(curve.Median)} (95 % limits {Number(curve.MedianLow)} to {Number(curve.MedianHigh)}).{Weibull(curve.Weibull)}"),
    };

    public static string Of(SetbackBand band) => band.Share is { } share
        ? Invariant($"{band.Label}: {band.Setbacks} of {band.Steps} steps of {band.Children} children were followed by a setback within seven days, {share:0 %} ({Limits(band.Low, band.High)}).")
        : $"{band.Label}: {(band.Steps is { } steps ? Invariant($"{steps} steps, {band.Setbacks} setbacks; ") : "")}{band.Method}.";

    public static string Of(GroupTest test) => test.PValue is { } p
        ? Invariant($"{Capital(test.What)}{(test.Groups.Count > 0 ? $" ({string.Join(", ", test.Groups)})" : "")}: p = {p:0.000}.")
        : $"{Capital(test.What)}: {test.Method}.";

    private static string Counts(GapCounts? counts) => counts is null ? "" : Invariant($"{counts.Kept} of {counts.Judged} judged gaps of {counts.Children} children; {counts.Unknown} cannot be told.");

    private static string TwoStep(PooledShare share) => share.Pooled is { } pooled
        ? Invariant($"{pooled:0 %} ({Limits(share.Low, share.High)}), I² {share.I2:0 %}")
        : share.Method;

    private static string Censored(RecoveryCurve curve) => curve.Censored is { } censored ? Invariant($", {censored} not recovered by the end of the record") : "";

    private static string Weibull(WeibullRecovery? fit) => fit is null ? "" : Invariant($" Weibull beside it: day {fit.Median:0.0} ({Number(fit.MedianLow)} to {Number(fit.MedianHigh)}), shape {fit.Shape:0.00}.");

    private static string Limits(double? low, double? high) => low is { } from && high is { } to ? Invariant($"{from:0 %} to {to:0 %}") : "not given";

    private static string Number(double? value) => value is { } known ? Invariant($"{known:0.0}") : "cannot be told";

    private static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
