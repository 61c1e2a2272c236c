using CareRecords.Records;
using CareRecords.Workbooks.Building;

namespace CareRecords.Workbooks.Sheets;

/// <summary>A session's areas as cells: the six usual areas have their column, any other goes into words.</summary>
internal static class SessionCells
{
    /// <summary>The six columns of the canonical table, lower and upper being percussion.</summary>
    public static IReadOnlyList<(string Heading, Side Side, ChestArea Area, Technique Technique)> Usual { get; } =
    [
        ("left lower", Side.Left, ChestArea.Lower, Technique.Percussion),
        ("left upper", Side.Left, ChestArea.Upper, Technique.Percussion),
        ("left vibration", Side.Left, ChestArea.Unknown, Technique.Vibration),
        ("right lower", Side.Right, ChestArea.Lower, Technique.Percussion),
        ("right upper", Side.Right, ChestArea.Upper, Technique.Percussion),
        ("right vibration", Side.Right, ChestArea.Unknown, Technique.Vibration),
    ];

    /// <summary>Minutes of a usual area; null when it was not written, or not as one number.</summary>
    public static double? Minutes(Session session, int usual)
    {
        var (_, side, area, technique) = Usual[usual];
        var found = session.Areas.Where(a => Fits(a) && a.Side == side && (technique == Technique.Vibration || a.Area == area) && IsVibration(a) == (technique == Technique.Vibration)).ToList();
        return found.Count == 0 ? null : found.Sum(a => a.Minutes!.Value);
    }

    /// <summary>The areas that have no column, in words; null when there are none.</summary>
    public static string? Others(Session session)
    {
        var others = session.Areas.Where(a => !Fits(a)).Select(InWords).ToList();
        return others.Count == 0 ? null : string.Join("; ", others);
    }

    /// <summary>Minutes of the areas that have no column, lower ends of ranges; null when there are none or one has no minutes.</summary>
    public static double? OtherMinutes(Session session)
    {
        var others = session.Areas.Where(a => !Fits(a)).ToList();
        return others.Count == 0 || others.Any(a => a.Minutes is null) ? null : others.Sum(a => a.Minutes!.Value);
    }

    /// <summary>Whether every area written has a column, and none is written twice.</summary>
    public static bool AllHaveColumns(Session session) =>
        session.Areas.All(Fits) && session.Areas.Select(a => (a.Side, IsVibration(a) ? ChestArea.Unknown : a.Area, a.Technique)).Distinct().Count() == session.Areas.Count;

    private static bool IsVibration(AreaMinutes a) => a.Technique == Technique.Vibration;

    private static bool Fits(AreaMinutes a) =>
        a is { Minutes: not null, MinutesHigh: null, Side: Side.Left or Side.Right }
        && (a.Technique == Technique.Vibration
            ? a.Area is ChestArea.Unknown or ChestArea.Whole
            : a.Technique is Technique.Percussion && a.Area is ChestArea.Lower or ChestArea.Upper);

    private static string InWords(AreaMinutes a)
    {
        string?[] parts =
        [
            a.Side == Side.Unknown ? null : a.Side.ToString().ToLowerInvariant(),
            a.Area == ChestArea.Unknown ? null : a.Area.ToString().ToLowerInvariant(),
            a.Technique == Technique.Unknown ? null : a.Technique.ToString().ToLowerInvariant(),
            (a.Minutes, a.MinutesHigh) switch
            {
                ({ } low, { } high) => $"{TimeWords.Number(low)}-{TimeWords.Number(high)} min",
                ({ } low, null) => $"{TimeWords.Number(low)} min",
                _ => null,
            },
        ];
        return string.Join(' ', parts.Where(p => p is not null));
    }
}
