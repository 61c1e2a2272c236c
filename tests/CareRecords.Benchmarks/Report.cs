using System.Globalization;
using System.Text;

namespace CareRecords.Benchmarks;

/// <summary>Writes the measured tables into the document, between two marks; what stands outside them was written by a person.</summary>
internal static class Report
{
    private const string Begin = "<!-- measured: begin -->";
    private const string End = "<!-- measured: end -->";

    public static string Line(Result result)
    {
        var (what, pairs) = (result.Measurement, result.Pairs);
        var rate = what.Units == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $"{what.Units / pairs.Median(m => m.Wall):N0} {what.Unit}/s");
        return $"| {what.Name} | {Ratio(pairs, m => m.Wall)} | {Ratio(pairs, m => m.Processor)} | {Ratio(pairs, m => m.Memory)} | {Memory(pairs)} | {rate} | {what.Target} |";
    }

    public static void Write(string document, IReadOnlyList<Result> results)
    {
        var text = new StringBuilder().AppendLine(Begin).AppendLine();
        text.AppendLine("| measured | wall ÷ yardstick | processor ÷ yardstick | peak memory ÷ yardstick | peak memory, MiB | rate | target |");
        text.AppendLine("|---|---|---|---|---|---|---|");
        foreach (var result in results) text.AppendLine(Line(result));
        text.AppendLine();
        if (Growth(results) is { } growth) text.AppendLine(growth).AppendLine();
        foreach (var result in results.Where(r => r.Measurement.Against.Length > 0).DistinctBy(r => r.Measurement.Against))
            text.AppendLine(CultureInfo.InvariantCulture, $"- Yardstick of {result.Measurement.Name}: a script that {result.Measurement.Against}.");
        text.AppendLine().AppendLine("Where a year's review goes, by whole processes (share of its processor time):").AppendLine();
        text.AppendLine("| part | share |").AppendLine("|---|---|");
        foreach (var (part, share) in Parts(results)) text.AppendLine(CultureInfo.InvariantCulture, $"| {part} | {share:P0} |");
        text.AppendLine().Append(End);

        var before = File.Exists(document) ? File.ReadAllText(document).ReplaceLineEndings("\n") : $"# Performance\n\n{Begin}\n{End}\n";
        var (from, to) = (before.IndexOf(Begin, StringComparison.Ordinal), before.IndexOf(End, StringComparison.Ordinal) + End.Length);
        if (from < 0 || to < from) throw new InvalidOperationException($"{document} has lost its marks {Begin} and {End}.");
        File.WriteAllText(document, before[..from] + text.ToString().ReplaceLineEndings("\n") + before[to..]);
    }

    private static string? Growth(IReadOnlyList<Result> results)
    {
        if (Find(results, "`review`, a year") is not { } year || Find(results, "`review`, ten years") is not { } ten) return null;
        return string.Create(CultureInfo.InvariantCulture,
            $"Ten years against one: {ten.Median(m => m.Processor) / year.Median(m => m.Processor):0.0} times the processor time, {ten.Median(m => m.Wall) / year.Median(m => m.Wall):0.0} times the wall time, {ten.Median(m => m.Memory) / year.Median(m => m.Memory):0.0} times the memory.");
    }

    private static IEnumerable<(string Part, double Share)> Parts(IReadOnlyList<Result> results)
    {
        if (Find(results, "`--help`") is not { } start || Find(results, "`read`, a year") is not { } read
            || Find(results, "`share`, a year") is not { } share || Find(results, "`review`, a year") is not { } review) yield break;
        var all = review.Median(m => m.Processor);
        yield return ("starting", start.Median(m => m.Processor) / all);
        yield return ("reading and merging", (read.Median(m => m.Processor) - start.Median(m => m.Processor)) / all);
        yield return ("findings (and a small workbook)", (share.Median(m => m.Processor) - read.Median(m => m.Processor)) / all);
        yield return ("the rest: sheets, formulas, charts, packing", (all - share.Median(m => m.Processor)) / all);
    }

    private static Pairs? Find(IReadOnlyList<Result> results, string name) => results.FirstOrDefault(r => r.Measurement.Name == name)?.Pairs;

    private static string Memory(Pairs pairs) => pairs.Median(m => m.Memory).ToString("0", CultureInfo.InvariantCulture);

    private static string Ratio(Pairs pairs, Func<Measured, double> of) => pairs.Ratio(of) is var (median, least, most)
        ? string.Create(CultureInfo.InvariantCulture, $"**{median:0.00}** ({least:0.00}–{most:0.00})")
        : "";
}
