using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Notes;

/// <summary>Minutes without a place, where an earlier session tells which places they are of.</summary>
internal static class BareMinutes
{
    /// <summary>The areas with their places and how they were found; null when nothing earlier tells.</summary>
    public static (List<AreaMinutes> Areas, string How)? Placed(List<AreaMinutes> areas, AreaReading words, SessionMemory sessions)
    {
        if (OfEverySpot(areas, words, sessions) is { } spots) return spots;
        if (areas is not [{ Side: Side.Unknown, Area: ChestArea.Unknown, Technique: not Technique.Vibration, Minutes: { } first } one, { Side: Side.Unknown, Area: ChestArea.Unknown, Technique: not Technique.Vibration, Minutes: { } second } two]) return null;
        // "4 and 3" after "4 min each lower, 3 each upper": the places that had as many.
        if (first != second && sessions.FindLast(s => HasMinutes(Clapped(s), first, second)) is { } like)
        {
            var technique = one.Technique == Technique.Unknown ? two.Technique : one.Technique;
            return (Clapped(like).ConvertAll(a => a with { Technique = technique }), System.FormattableString.Invariant($"{first} and {second} minutes read as in the session of {like.At:yyyy-MM-dd HH:mm}."));
        }

        // "5 5" after "both sides 5 5": the same two sides.
        if (sessions.Last is { Areas.Count: >= 2 } last && Clapped(last) is [{ Area: ChestArea.Unknown } left, { Area: ChestArea.Unknown } right] && left.Side != right.Side && left.Side is Side.Left or Side.Right && right.Side is Side.Left or Side.Right)
            return ([one with { Side = left.Side }, two with { Side = right.Side }], "Two numbers of minutes read as the two sides of the session before.");
        return null;
    }

    // "four places, 3 minutes each": the places of the last session that named as many.
    private static (List<AreaMinutes> Areas, string How)? OfEverySpot(List<AreaMinutes> areas, AreaReading words, SessionMemory sessions)
    {
        if (areas.Count < 2 || !areas.TrueForAll(a => a is { Side: Side.Unknown, Area: ChestArea.Unknown, Technique: not Technique.Vibration } && words.EverySpot.Contains(a.Technique) && a.Minutes == areas[0].Minutes)) return null;
        if (sessions.FindLast(s => Clapped(s) is var named && areas.Count == named.Count && named.TrueForAll(a => a.Side is Side.Left or Side.Right && a.Area != ChestArea.Unknown)) is not { } last) return null;
        return (Clapped(last).ConvertAll(a => areas[0] with { Side = a.Side, Area = a.Area }), System.FormattableString.Invariant($"Every place read as the places of the session of {last.At:yyyy-MM-dd HH:mm}."));
    }

    private static List<AreaMinutes> Clapped(ToldSession session) => [.. session.Areas.Where(a => a.Technique != Technique.Vibration)];

    // Every place has one of the two numbers, all lower ones the same and all upper ones the other.
    private static bool HasMinutes(List<AreaMinutes> areas, double first, double second) =>
        areas.TrueForAll(a => a is { Side: Side.Left or Side.Right, Area: ChestArea.Lower or ChestArea.Upper, Minutes: not null, MinutesHigh: null })
        && areas.Select(a => (a.Area, a.Minutes)).Distinct().ToList() is [var (area, minutes), var (other, others)] && area != other && (minutes == first && others == second || minutes == second && others == first);
}
