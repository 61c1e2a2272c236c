using System.Globalization;
using System.Text;

namespace CareRecords.Calibration;

/// <summary>docs/calibration.md.</summary>
internal sealed class Report(int seed, int children, TextWriter progress)
{
    public static double Median(IReadOnlyCollection<double> values) => values.Count == 0 ? double.NaN : values.Order().ElementAt(values.Count / 2);

    /// <summary>The page of these conditions.</summary>
    public string Write(IEnumerable<Condition> conditions)
    {
        var page = new StringBuilder(string.Create(CultureInfo.InvariantCulture, $"""
            # Calibration of the illness model

            Written by `dotnet run -c Release --project tests/CareRecords.Calibration -- report docs/calibration.md {children}`; not edited by hand.
            Each row is {children} simulated children (150 days unless said otherwise; one check before and one after each session), seeds from {seed}, on
            which nothing was tuned. The same command gives the same page.

            How to read it. *F1*: episodes found against true ones; an episode is found when one of the model's overlaps it. *Onset ≤ 1 day*: found within a
            day of the true one. *Onset interval*, *recovery interval*, *usual*, *band*: how often the printed 95 % interval holds the truth; after ± one
            standard error with children as the units (Monte-Carlo error). True recovery is the first moment from which the true deficit stays under
            one point and oxygen is back at usual. The recovery interval is judged twice: *from the day*, as a moment, days counted from the start of the
            onset's care day; *from the onset*, as the time between the true onset and the true recovery. It is made to hold either way, so it covers
            more than 95 % of most children. *Width*: the median width of those intervals that have both ends. *Censored*: unfinished recoveries reported as
            not finished, of all unfinished ones; then finished ones so reported (recovered within the last days of the record: it cannot be told yet).
            Rows in bold put those above together, each illness once.
            *Usual*: the largest error of the usual saturation over the children, points, and how often its interval holds the truth. *Band*: points of the
            return curves whose band holds the true saturation at usual oxygen.

            """));
        var scores = new List<(Condition Condition, Score Score)>();
        foreach (var group in conditions.GroupBy(c => c.Group))
        {
            page.Append(CultureInfo.InvariantCulture, $"\n## {group.Key}\n\n{Introduction(group.Key)}\n\n");
            page.Append("| children | F1 | onset ≤ 1 day | onset interval | recovery interval, from the day | from the onset | width, days | median error, days | censored | usual: error, interval | band |\n");
            page.Append("|---|---|---|---|---|---|---|---|---|---|---|\n");
            foreach (var condition in group)
            {
                var score = Conditions.Run(condition, children, seed);
                scores.Add((condition, score));
                page.Append(Row(condition.Name, score));
                progress.WriteLine(condition.Name);
            }

            foreach (var together in scores.Where(s => s.Condition.Group == group.Key && s.Condition.Together is not null).GroupBy(s => s.Condition.Together!))
                page.Append(Row(together.Key, Score.Together([.. together.Select(s => s.Score)])));
        }

        page.Append(BothDefinitions);
        foreach (var (condition, s) in scores)
        {
            page.Append(CultureInfo.InvariantCulture, $"| {condition.Name} | {s.Main.F1:0.000} | {Percent(s.Main.OnsetWithinDay)} | {Percent(s.Main.Bracketed)} ");
            page.Append(CultureInfo.InvariantCulture, $"| {s.ByRecord.F1:0.000} | {Percent(s.ByRecord.OnsetWithinDay)} | {Percent(s.ByRecord.Bracketed)} | {s.ByRecord.UnfinishedCalledCensored.Yes:0} of {s.ByRecord.UnfinishedCalledCensored.All:0} |\n");
        }

        page.Append('\n').Append(Limits);
        return page.Replace("\r\n", "\n").ToString();
    }

    private static string Introduction(string group) => group switch
    {
        Conditions.Asked => "Aims: F1 at least 0.95, onset 90 %, recovery interval 92 % (aim 95) with a median width of at most 3 days, every unfinished recovery censored, usual within half a point. With noise 2: F1 0.88, onset 80 %, the same coverage, width 6 days.",
        Conditions.ChecksAndNoise => "The simulator of `tests/CareRecords.Simulation`; checks are those beside the sessions'.",
        _ => "Unlike the first: deficits drawn through points, oxygen turned at two rounds a day by the child's own limits, irregular readings. Eight readings a day, noise 1, unless said.",
    };

    private static string Row(string name, Score s) => string.Create(CultureInfo.InvariantCulture,
        $"| {name} | {s.F1:0.000} | {Percent(s.OnsetWithinDay)} | {Percent(s.OnsetCovered)} | {Percent(s.Covered)} | {Percent(s.CoveredAsDuration)} | {Median(s.Widths):0.0} | {Median(s.RecoveryErrors):+0.0;-0.0;0.0} | {s.UnfinishedCalledCensored.Yes:0} of {s.UnfinishedCalledCensored.All:0}; {s.FinishedCalledCensored.Yes:0} of {s.FinishedCalledCensored.All:0} | {s.BaselineErrors.Max(Math.Abs):0.00}, {Percent(s.BaselineCovered)} | {Percent(s.BandCovered)} |\n");

    private static string Percent(Share share) =>
        share.All == 0 ? "–" : string.Create(CultureInfo.InvariantCulture, $"{100 * share.Value:0.0} ± {100 * share.StandardError:0.0}");

    private const string BothDefinitions = """

        ## Both definitions

        The main list of episodes (the model's, with those that only stated signs show) beside the list by the record, on the same children: why the model's is the
        main one. *Bracket*: how often the true recovery lies between the last moment known not recovered and the first known recovered. By the record that
        bracket is only as wide as the gap between two readings, and readings err; in the main list it is widened to the model's interval.

        | children | main: F1 | onset ≤ 1 day | bracket | by the record: F1 | onset ≤ 1 day | bracket | unfinished called censored |
        |---|---|---|---|---|---|---|---|

        """;

    private const string Limits = """
        ## What this does not show

        - Simulated children are not children. The rows above say how the intervals behave when readings, flows and returns are of these kinds.
        - Errors that last a day or more (a probe that reads low all week) look like a small illness: see "errors forgotten in 24 h", where the intervals
          cover less than they say.
        - A usual saturation that drifts is followed over about seven weeks; a faster drift is taken for illness or hides one. The figure printed as usual is then
          an average over the record, and the row's "usual" column compares it with a single true value.
        - An illness that lasts from the first day to the last, with nothing to compare it with, cannot be told from usual.

        """;
}
