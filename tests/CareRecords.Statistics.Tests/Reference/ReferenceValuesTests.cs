namespace CareRecords.Statistics.Tests.Reference;

/// <summary>Every figure of tests/reference/results.csv is reproduced, or named in <see cref="NotCovered"/> with the reason.</summary>
public class ReferenceValuesTests
{
    private static readonly Lazy<Dictionary<(string, string, int), double>> Computed = new(Compute);

    public static TheoryData<string, string, int> Figures()
    {
        var data = new TheoryData<string, string, int>();
        foreach (var f in ReferenceFigure.All.Where(f => NotCovered.Reason(f) is null))
        {
            data.Add(f.Dataset, f.Quantity, f.Occurrence);
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(Figures), DisableDiscoveryEnumeration = true)]
    public void Figure_of_the_reference_set_is_reproduced(string dataset, string quantity, int occurrence)
    {
        var expected = ReferenceFigure.All.Single(f => f.Key == (dataset, quantity, occurrence));
        Assert.True(Computed.Value.TryGetValue(expected.Key, out var actual), $"{dataset} / {quantity} is neither computed nor listed as not covered");
        Assert.True(
            Tolerance.Agrees(expected, actual),
            $"{dataset} / {quantity}: {actual:R}, reference {expected.Value:R}, relative difference {Math.Abs(actual - expected.Value) / Math.Abs(expected.Value):e1}, allowed {Tolerance.Relative(expected):e0}");
    }

    [Fact]
    public void Every_computed_figure_stands_in_the_reference_set_and_no_exclusion_is_stale()
    {
        var keys = ReferenceFigure.All.Select(f => f.Key).ToHashSet();
        Assert.DoesNotContain(Computed.Value.Keys, k => !keys.Contains(k));
        Assert.DoesNotContain(ReferenceFigure.All, f => NotCovered.Reason(f) is not null && Computed.Value.ContainsKey(f.Key));
        Assert.All(NotCovered.Rules, rule => Assert.Contains(ReferenceFigure.All, rule.Matches));
    }

    private static Dictionary<(string, string, int), double> Compute()
    {
        Dictionary<(string, string, int), double> computed = [];
        Dictionary<(string, string), int> seen = [];
        foreach (var (dataset, quantity, value) in AllSections().SelectMany(f => f.Rows))
        {
            var occurrence = seen.GetValueOrDefault((dataset, quantity));
            seen[(dataset, quantity)] = occurrence + 1;
            computed.Add((dataset, quantity, occurrence), value);
        }

        return computed;
    }

    private static IEnumerable<Figures> AllSections() =>
    [
        .. Section01Proportions.All(),
        .. Section02Survival.All(),
        .. Section03IntervalCensoring.All(),
        .. Section04MetaAnalysis.All(),
        .. Section05LeastSquares.All(),
        .. Section06Robust.All(),
        .. Section07RunCharts.All(),
        .. Section08ChangePoints.All(),
        .. Section09HiddenMarkov.All(),
        .. Section11Disclosure.All(),
        .. Section12DigitPreference.All(),
    ];
}
