using System.Runtime.CompilerServices;
using static CareRecords.Findings.Modelling.DeficitStates;

namespace CareRecords.Findings.Modelling;

/// <summary>
/// One step of the returning states: a new rise, a change of pace, then a fall by the pace. Done in that order and cell by cell, it costs a third
/// of what its matrix would.
/// </summary>
internal sealed class PaceAndFall
{
    private const double RiseAgainPerDay = 1 / 40.0, PaceChangePerDay = 0.4, AnyPacePerDay = 0.05, GonePerDay = 0.3, GoneUnder = 0.45;

    private static readonly double Any = DeficitTransitions.Within(AnyPacePerDay);
    private static readonly double Neighbour = (1 - Any) * DeficitTransitions.Within(PaceChangePerDay) / 2;

    private readonly double[] _again = new double[Cells + 1];
    private readonly double[] _gone = new double[Cells + 1];
    private readonly double[] _stays = new double[Cells + 1];
    private readonly int[] _whole = new int[Paces.Length];
    private readonly double[] _part = new double[Paces.Length];

    /// <summary>Works out the probabilities of a step.</summary>
    public PaceAndFall()
    {
        for (var cell = 1; cell <= Cells; cell++)
        {
            _again[cell] = DeficitTransitions.Within(Deficits[cell] < 1 ? DeficitTransitions.FallIllPerDay : RiseAgainPerDay);
            _gone[cell] = Deficits[cell] < GoneUnder ? (1 - _again[cell]) * DeficitTransitions.Within(GonePerDay) : 0;
            _stays[cell] = 1 - _again[cell] - _gone[cell];
        }

        for (var pace = 0; pace < Paces.Length; pace++)
        {
            var cells = Paces[pace] * DeficitTransitions.StepDays / LogStep;
            _whole[pace] = (int)Math.Floor(cells);
            _part[pace] = cells - _whole[pace];
        }
    }

    /// <summary>Adds to <paramref name="next"/> where the returning states of <paramref name="now"/> go.</summary>
    public void Forward(ReadOnlySpan<double> now, Span<double> next)
    {
        Span<double> here = stackalloc double[Paces.Length];
        for (var cell = 1; cell <= Cells; cell++)
        {
            var sum = 0.0;
            for (var pace = 0; pace < here.Length; pace++) sum += here[pace] = now[Returning(pace, cell)];
            if (sum < DeficitTransitions.Negligible) continue;
            next[Rising(cell)] += sum * _again[cell];
            next[Convalescent] += sum * _gone[cell];
            for (var pace = 0; pace < here.Length; pace++)
            {
                var p = _stays[cell] * Mixed(here, pace, Any * sum / here.Length);
                var at = cell - _whole[pace];
                next[Landing(pace, at)] += p * (1 - _part[pace]);
                next[Landing(pace, at - 1)] += p * _part[pace];
            }
        }
    }

    /// <summary>Sets, for the returning states, the expectation of <paramref name="next"/>.</summary>
    public void Backward(ReadOnlySpan<double> next, Span<double> now)
    {
        Span<double> landed = stackalloc double[Paces.Length];
        for (var cell = 1; cell <= Cells; cell++)
        {
            var sum = 0.0;
            for (var pace = 0; pace < landed.Length; pace++)
            {
                var at = cell - _whole[pace];
                sum += landed[pace] = ((1 - _part[pace]) * next[Landing(pace, at)]) + (_part[pace] * next[Landing(pace, at - 1)]);
            }

            var elsewhere = (_again[cell] * next[Rising(cell)]) + (_gone[cell] * next[Convalescent]);
            for (var pace = 0; pace < landed.Length; pace++)
                now[Returning(pace, cell)] = (_stays[cell] * Mixed(landed, pace, Any * sum / landed.Length)) + elsewhere;
        }
    }

    private static int Landing(int pace, int cell) => cell < 1 ? Convalescent : Returning(pace, cell);

    /// <summary>Change to a neighbouring pace is as likely one way as back, so that the same rule serves both directions.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static double Mixed(ReadOnlySpan<double> here, int pace, double any)
    {
        var neighbours = 0.0;
        var leaves = 0.0;
        if (pace > 0) (neighbours, leaves) = (here[pace - 1], Neighbour);
        if (pace < here.Length - 1) (neighbours, leaves) = (neighbours + here[pace + 1], leaves + Neighbour);
        return any + (Neighbour * neighbours) + ((1 - Any - leaves) * here[pace]);
    }
}
