namespace CareRecords.Findings.Modelling;

/// <summary>
/// The states of the illness chain: well; convalescent (saturation back, not yet counted well); rising and returning, each with a deficit,
/// the points of saturation under the child's usual at usual oxygen. Returning also has a pace.
/// </summary>
/// <remarks>
/// Deficits lie on a grid of equal ratios (12 % a cell) with an edge exactly at one point, the deficit that recovery is defined by. Cell 0 is
/// no deficit. Pace is the share of the deficit lost a day; 0 holds. Its slow change is what lets the return take any shape that only falls.
/// </remarks>
internal static class DeficitStates
{
    /// <summary>The logarithm of the ratio between neighbouring cells.</summary>
    public const double LogStep = 0.12;

    /// <summary>Cells with a deficit under one point, not counting cell 0.</summary>
    public const int CellsUnderOne = 12;

    /// <summary>Cells with a deficit, not counting cell 0.</summary>
    public const int Cells = 34;

    /// <summary>The state "well".</summary>
    public const int Well = 0;

    /// <summary>The state "convalescent".</summary>
    public const int Convalescent = 1;

    /// <summary>The share of the deficit lost a day at each pace.</summary>
    public static readonly double[] Paces = [0, 0.1, 0.2, 0.4, 0.8, 1.6, 3.2];

    /// <summary>The number of states.</summary>
    public static readonly int Count = 2 + Cells + (Paces.Length * Cells);

    /// <summary>Deficit by cell, points; the first is 0.</summary>
    public static readonly double[] Deficits =
        [0, .. Enumerable.Range(0, Cells).Select(i => Math.Exp(LogStep * (i - CellsUnderOne + 0.5)))];

    /// <summary>The cell (0 to <see cref="Cells"/>) of each state.</summary>
    public static readonly int[] CellOf = [.. Enumerable.Range(0, Count).Select(s => s < 2 ? 0 : 1 + ((s - 2) % Cells))];

    /// <summary>Whether saturation is back in a state: not rising, and the deficit under a point.</summary>
    public static bool IsBack(int state) => state is < 2 or >= 2 + Cells && CellOf[state] <= CellsUnderOne;

    /// <summary>Rising, in a cell from 1.</summary>
    public static int Rising(int cell) => 1 + cell;

    /// <summary>Returning at a pace, in a cell from 1.</summary>
    public static int Returning(int pace, int cell) => 1 + Cells + (pace * Cells) + cell;
}
