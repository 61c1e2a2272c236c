using CareRecords.Findings.Modelling;

namespace CareRecords.Findings.Tests.Illness.Model;

public sealed class DeficitTransitionsTests
{
    [Fact]
    public void From_every_state_the_probabilities_sum_to_one()
    {
        var (ones, sums) = (Enumerable.Repeat(1.0, DeficitStates.Count).ToArray(), new double[DeficitStates.Count]);
        DeficitTransitions.Instance.Backward(ones, sums);
        Assert.All(sums, s => Assert.Equal(1, s, 9));
    }

    [Fact]
    public void Forward_and_backward_are_the_same_matrix()
    {
        // For any a and b: sum over (a forward) b = sum over a (b backward).
        var a = Enumerable.Range(0, DeficitStates.Count).Select(i => 1.0 + (i * 7 % 13)).ToArray();
        var b = Enumerable.Range(0, DeficitStates.Count).Select(i => 1.0 + (i * 5 % 11)).ToArray();
        var (forward, backward) = (new double[a.Length], new double[b.Length]);
        DeficitTransitions.Instance.Forward(a, forward);
        DeficitTransitions.Instance.Backward(b, backward);
        Assert.Equal(forward.Zip(b, (x, y) => x * y).Sum(), a.Zip(backward, (x, y) => x * y).Sum(), 6);
    }

    [Fact]
    public void A_return_never_raises_the_deficit_but_by_a_new_rise()
    {
        var (start, next) = (new double[DeficitStates.Count], new double[DeficitStates.Count]);
        start[DeficitStates.Returning(2, 20)] = 1;
        DeficitTransitions.Instance.Forward(start, next);
        for (var s = 2 + DeficitStates.Cells; s < next.Length; s++)
            if (DeficitStates.CellOf[s] > 20) Assert.Equal(0, next[s]);
    }

    [Fact]
    public void One_point_is_an_edge_between_two_cells()
    {
        Assert.True(DeficitStates.Deficits[DeficitStates.CellsUnderOne] < 1);
        Assert.True(DeficitStates.Deficits[DeficitStates.CellsUnderOne + 1] > 1);
    }
}
