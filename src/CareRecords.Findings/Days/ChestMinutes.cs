using CareRecords.Records;

namespace CareRecords.Findings;

/// <summary>Minutes by part of the chest: what one session gave, and the parts that this child's sessions usually treat.</summary>
internal sealed class ChestMinutes
{
    private readonly IReadOnlyList<(Side Side, ChestArea Area, Technique Technique)> _usual;

    /// <summary>A part is usual when at least half of the sessions that name parts treat it.</summary>
    public ChestMinutes(IReadOnlyCollection<Session> sessions)
    {
        var named = sessions.Where(s => s.Areas.Any(a => a.Minutes is not 0)).ToList();
        _usual =
        [
            .. named.SelectMany(s => Treated(s).Distinct()).GroupBy(p => p).Where(g => 2 * g.Count() >= named.Count)
                .Select(g => g.Key).Order(),
        ];
    }

    /// <summary>How many parts a session usually treats; null when no session names parts.</summary>
    public int? UsualParts => _usual.Count == 0 ? null : _usual.Count;

    /// <summary>Median minutes a part and technique over the parts treated; null when none has its minutes.</summary>
    public static double? PerArea(IEnumerable<Session> sessions)
    {
        var minutes = sessions.SelectMany(s => s.Areas).Where(a => a.Side != Side.Both && a.Minutes is > 0).Select(a => a.Minutes!.Value).ToList();
        return Statistics.Quantiles.Median(minutes) is { IsKnown: true } median ? median.Value : null;
    }

    /// <summary>Median minutes a side of the lower chest, the upper chest and vibration.</summary>
    public static PartMinutes ByPart(IEnumerable<Session> sessions)
    {
        var parts = sessions.SelectMany(s => s.Areas).Where(a => a.Side != Side.Both && a.Minutes is > 0).ToList();
        double? Middle(Func<AreaMinutes, bool> which) =>
            Statistics.Quantiles.Median([.. parts.Where(which).Select(a => a.Minutes!.Value)]) is { IsKnown: true } median ? median.Value : null;
        return new(
            Middle(a => a.Technique != Technique.Vibration && a.Area == ChestArea.Lower),
            Middle(a => a.Technique != Technique.Vibration && a.Area == ChestArea.Upper),
            Middle(a => a.Technique == Technique.Vibration));
    }

    /// <summary>The usual parts that this session left out, in words; none when the session names no parts.</summary>
    public IReadOnlyList<string> LeftOut(Session session)
    {
        if (session.Areas.Count == 0 || session.Areas.Any(a => a.Side is Side.Both or Side.Unknown)) return [];
        var treated = Treated(session).ToHashSet();
        return [.. _usual.Where(p => p.Side is Side.Left or Side.Right && !treated.Contains(p)).Select(Name)];
    }

    private static IEnumerable<(Side Side, ChestArea Area, Technique Technique)> Treated(Session session) =>
        session.Areas.Where(a => a.Minutes is not 0).Select(a => (a.Side, a.Area, a.Technique));

    private static string Name((Side Side, ChestArea Area, Technique Technique) part)
    {
        var side = part.Side == Side.Left ? "left" : "right";
        var area = part.Area is ChestArea.Unknown or ChestArea.Whole ? "" : " " + part.Area.ToString().ToLowerInvariant();
        var technique = part.Technique == Technique.Unknown ? "" : " " + part.Technique.ToString().ToLowerInvariant();
        return side + area + technique;
    }
}
