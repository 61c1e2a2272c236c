namespace CareRecords.Simulation;

/// <summary>How saturation comes back.</summary>
public enum ReturnShape
{
    /// <summary>Fast first, then slower.</summary>
    Exponential,

    /// <summary>At one pace.</summary>
    Linear,

    /// <summary>Slow, fast, slow.</summary>
    Logistic,
}

/// <summary>One true illness: points of saturation under the child's own usual, at usual oxygen. Times are days from the first care day's start.</summary>
/// <param name="Onset">When the deficit begins to grow.</param>
/// <param name="RiseDays">Days until it is full.</param>
/// <param name="PlateauDays">Days at full depth.</param>
/// <param name="Depth">Full depth, points.</param>
/// <param name="Shape">The shape of the return.</param>
/// <param name="ReturnDays">Exponential: time constant; linear: days to none; logistic: days to half.</param>
public sealed record TrueIllness(double Onset, double RiseDays, double PlateauDays, double Depth, ReturnShape Shape, double ReturnDays)
{
    /// <summary>When the return begins.</summary>
    public double ReturnBegins => Onset + RiseDays + PlateauDays;

    /// <summary>The deficit at a time, points.</summary>
    public double DeficitAt(double day)
    {
        if (day <= Onset) return 0;
        if (day < Onset + RiseDays) return Depth * (day - Onset) / RiseDays;
        var since = day - ReturnBegins;
        if (since <= 0) return Depth;
        return Shape switch
        {
            ReturnShape.Exponential => Depth * Math.Exp(-since / ReturnDays),
            ReturnShape.Linear => Math.Max(0, Depth * (1 - (since / ReturnDays))),
            _ => Depth * (1 + Math.Exp(-3)) / (1 + Math.Exp(3 * ((since / ReturnDays) - 1))),
        };
    }

    /// <summary>The first time from which the deficit stays under a number of points.</summary>
    public double StaysUnder(double points)
    {
        double low = ReturnBegins, high = ReturnBegins + (20 * ReturnDays);
        if (Depth < points) return Onset;
        for (var i = 0; i < 60; i++)
        {
            var middle = (low + high) / 2;
            if (DeficitAt(middle) < points) high = middle; else low = middle;
        }

        return high;
    }
}
