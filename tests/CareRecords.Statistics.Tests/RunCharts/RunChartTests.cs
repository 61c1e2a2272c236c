namespace CareRecords.Statistics.Tests.RunCharts;

public class RunChartTests
{
    [Fact]
    public void Seven_of_thirteen_in_a_row_are_no_signal_and_eight_are()
    {
        // n = 13: the limit is round(log2 13 + 3) = 7, and "longer than" is strict.
        double[] seven = [1, 1, 1, 1, 1, 1, 1, -1, 1, -1, 1, -1, 1];
        double[] eight = [1, 1, 1, 1, 1, 1, 1, 1, -1, 1, -1, 1, -1];
        Assert.False(RunChart.Signals(seven, 0).Value.LongRun);
        Assert.True(RunChart.Signals(eight, 0).Value.LongRun);
    }

    [Fact]
    public void Too_few_crossings_are_a_signal()
    {
        double[] once = [1, 1, 1, 1, 1, 1, -1, -1, -1, -1, -1, -1];
        var signals = RunChart.Signals(once).Value;
        Assert.Equal((0.0, 12, 6, 7, 1, 3), (signals.Centre, signals.Useful, signals.LongestRun, signals.LongestRunLimit, signals.Crossings, signals.CrossingsLimit));
        Assert.True(signals is { LongRun: false, FewCrossings: true, Any: true });
    }

    [Fact]
    public void Points_on_the_line_do_not_count_and_all_equal_is_a_named_outcome()
    {
        Assert.Equal(0, RunChart.Signals(new double[30]).Missing!.Count);
        Assert.False(RunChart.Signals([]).IsKnown);
        Assert.False(RunChart.Signals([1, -1, 1, -1, 1, -1, 1, -1, 1], 0).IsKnown);
        Assert.Equal(10, RunChart.Signals([1, -1, 0, 1, -1, 1, -1, 1, -1, 1, -1], 0).Value.Useful);
    }

    [Fact]
    public void Chance_of_a_false_signal_equals_a_count_of_all_sequences()
    {
        const int n = 12;
        var (longest, crossings) = RunChart.Limits(n);
        var (runs, few, either) = (0, 0, 0);
        for (var mask = 0; mask < 1 << n; mask++)
        {
            var lengths = Runs.Lengths([.. Enumerable.Range(0, n).Select(i => (mask >> i) & 1)]);
            var (isLong, isFew) = (lengths.Max() > longest, lengths.Count - 1 < crossings);
            runs += isLong ? 1 : 0;
            few += isFew ? 1 : 0;
            either += isLong || isFew ? 1 : 0;
        }

        var chance = RunChart.FalseSignal(n, longest, crossings);
        Near.Equal(runs / 4096.0, chance.LongRun);
        Near.Equal(few / 4096.0, chance.FewCrossings);
        Near.Equal(either / 4096.0, chance.Either);
    }

    [Fact]
    public void Published_limits_and_false_signal_chances_for_10_to_60_points()
    {
        var t = Reference.CsvTable.Data("runchart_limits.csv");
        for (var i = 0; i < t.Count; i++)
        {
            var (longest, crossings) = RunChart.Limits(t.Wholes("n")[i]);
            Assert.Equal((t.Wholes("published.longest")[i], t.Wholes("crossings.limit")[i]), (longest, crossings));
            var (longRun, few, either) = RunChart.FalseSignal(t.Wholes("n")[i], longest, crossings);
            Near.Equal(t.Numbers("p.longrun")[i], longRun);
            Near.Equal(t.Numbers("p.crossings")[i], few);
            Near.Equal(t.Numbers("p.either")[i], either);
        }
    }

    [Fact]
    public void Runs_test_equals_a_count_of_all_orders()
    {
        // Two of one kind and three of the other: ten orders.
        int[] runs = [.. from a in Enumerable.Range(0, 5) from b in Enumerable.Range(a + 1, 4 - a)
                         select Runs.Lengths([.. Enumerable.Range(0, 5).Select(i => i == a || i == b ? 1 : 0)]).Count];
        Assert.Equal(10, runs.Length);
        for (var r = 1; r <= 5; r++)
        {
            Near.Equal(runs.Count(x => x <= r) / 10.0, RunsTest.AtMost(r, 2, 3));
        }

        Assert.False(RunsTest.Of([true, true]).IsKnown);
        Assert.Equal(1, RunsTest.Of([true, false]).Value.PValue);
    }

    [Fact]
    public void Control_limits_are_cut_and_odd_samples_refused()
    {
        var chart = ProportionChart.Of([(0, 4), (1, 4)]).Value;
        Assert.Equal((0.125, 0.0), (chart.Centre, chart.Points[0].Low));
        Near.Equal(0.125 + (3 * Math.Sqrt(0.125 * 0.875 / 4)), chart.Points[0].High);
        Assert.False(ProportionChart.Of([(1, 2)]).IsKnown);
        Assert.Throws<ArgumentOutOfRangeException>(() => ProportionChart.Of([(0, 0), (1, 2)]));
        Assert.All(ProportionChart.Of([(3, 3), (2, 2)]).Value.Points, p => Assert.False(p.Outside));
    }
}
