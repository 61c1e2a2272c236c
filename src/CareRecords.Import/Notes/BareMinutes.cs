using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Notes;

/// <summary>Minutes without a place, where an earlier session tells which places they are of.</summary>
internal static class BareMinutes
{
    /// <summary>The areas with their places and how they were found; null when nothing earlier tells.</summary>
    /// <param name="areas">What was told.</param>
    /// <param name="words">Its words.</param>
    /// <param name="sessions">The sessions before.</param>
    /// <param name="whole">The session that the notes tell above their first day; empty when they tell none.</param>
    public static (List<AreaMinutes> Areas, string How)? Placed(List<AreaMinutes> areas, AreaReading words, SessionMemory sessions, IReadOnlyList<AreaMinutes> whole)
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
        return first != second ? InTheirOrder(one, two, sessions, whole) : null;
    }

    /// <summary>
    /// "The lot with the 5s", after "5 minutes on the bottoms": the one number is of the part of the chest that an earlier session gave as many minutes; "back to 3s" is the session as it is
    /// explained. Null where nothing tells, or the whole session has one number of minutes.
    /// </summary>
    public static AreaReading? OfOnePart(IReadOnlyList<AreaMinutes> explained, AreaReading words, SessionMemory sessions)
    {
        if (words.Areas.Where(a => a.Technique != Technique.Vibration).ToList() is not [{ Side: Side.Unknown, Area: ChestArea.Unknown, Minutes: { } minutes, MinutesHigh: null } one] || words.EverySpot.Count > 0) return null;
        if (!IsLowerAndUpper(Clapped(explained)) || Clapped(explained).TrueForAll(a => a.Minutes == Clapped(explained)[0].Minutes)) return null;
        var now = words.Without(one);
        if (Clapped(explained).Exists(a => a.Minutes == minutes)) return now;
        if (sessions.FindLast(s => s.Areas.Any(a => a.Minutes == minutes) && IsLowerAndUpper(Clapped(s))) is not { } like || Clapped(like).FindAll(a => a.Minutes == minutes) is not { Count: > 0 } part || part.Exists(a => a.Area != part[0].Area)) return null;
        now.Areas.AddRange(part.Select(a => one with { Side = a.Side, Area = a.Area }));
        return now;
    }

    /// <summary>
    /// The one number of minutes beside a word whose places have two ("the programme with the four minutes", of which 3 low and 2 up), where neither the words nor an earlier session say whether it
    /// is of one part of the chest or of every place; null elsewhere.
    /// </summary>
    public static double? OfUnknownPart(IReadOnlyList<AreaMinutes> explained, AreaReading words, SessionMemory sessions) =>
        words.Areas.Where(a => a.Technique != Technique.Vibration).ToList() is [{ Side: Side.Unknown, Area: ChestArea.Unknown, Minutes: { } minutes, MinutesHigh: null }] && words.EverySpot.Count == 0
        && IsLowerAndUpper(Clapped(explained)) && Clapped(explained).Exists(a => a.Minutes != Clapped(explained)[0].Minutes) && OfOnePart(explained, words, sessions) is null ? minutes : null;

    // "5s and 4s", "4/2" where the notes tell the lower chest before the upper, each with as many minutes on both sides, or longer on it: in the same order.
    private static (List<AreaMinutes> Areas, string How)? InTheirOrder(AreaMinutes one, AreaMinutes two, SessionMemory sessions, IReadOnlyList<AreaMinutes> whole)
    {
        var told = sessions.FindLast(s => IsLowerAndUpper(Clapped(s.Areas)));
        if (told is null && !IsLowerAndUpper(Clapped(whole))) return null;
        var like = Clapped(told?.Areas ?? whole);
        var (lower, upper) = (like.Find(a => a.Area == ChestArea.Lower)!, like.Find(a => a.Area == ChestArea.Upper)!);
        var lowerFirst = like[0].Area == ChestArea.Lower;
        if (lower.Minutes != upper.Minutes && (lower.Minutes > upper.Minutes) != (lowerFirst ? one.Minutes > two.Minutes : two.Minutes > one.Minutes)) return null;
        return (like.ConvertAll(a => (a.Area == ChestArea.Lower) == lowerFirst ? one with { Side = a.Side, Area = a.Area, Technique = TechniqueOf(one, a) } : two with { Side = a.Side, Area = a.Area, Technique = TechniqueOf(two, a) }),
            System.FormattableString.Invariant($"{one.Minutes} and {two.Minutes} minutes read as of the {(lowerFirst ? "lower and the upper" : "upper and the lower")} chest, in the order of {(told is null ? "the session that the notes tell above" : $"the session of {told.At:yyyy-MM-dd HH:mm}")}."));
    }

    private static Technique TechniqueOf(AreaMinutes told, AreaMinutes like) => told.Technique == Technique.Unknown ? like.Technique : told.Technique;

    private static bool IsLowerAndUpper(List<AreaMinutes> areas) =>
        areas.Count >= 2 && areas.TrueForAll(a => a is { Area: ChestArea.Lower or ChestArea.Upper, Minutes: not null, MinutesHigh: null }) && areas.Select(a => a.Area).Distinct().Count() == 2
        && areas.GroupBy(a => a.Area).All(g => g.Select(a => a.Minutes).Distinct().Count() == 1 && g.Count() == areas.Count / 2);

    // "four places, 3 minutes each": the places of the last session that named as many.
    private static (List<AreaMinutes> Areas, string How)? OfEverySpot(List<AreaMinutes> areas, AreaReading words, SessionMemory sessions)
    {
        if (areas.Count < 2 || !areas.TrueForAll(a => a is { Side: Side.Unknown, Area: ChestArea.Unknown, Technique: not Technique.Vibration } && words.EverySpot.Contains(a.Technique) && a.Minutes == areas[0].Minutes)) return null;
        if (sessions.FindLast(s => Clapped(s) is var named && areas.Count == named.Count && named.TrueForAll(a => a.Side is Side.Left or Side.Right && a.Area != ChestArea.Unknown)) is not { } last) return null;
        return (Clapped(last).ConvertAll(a => areas[0] with { Side = a.Side, Area = a.Area }), System.FormattableString.Invariant($"Every place read as the places of the session of {last.At:yyyy-MM-dd HH:mm}."));
    }

    private static List<AreaMinutes> Clapped(ToldSession session) => Clapped(session.Areas);

    private static List<AreaMinutes> Clapped(IReadOnlyList<AreaMinutes> areas) => [.. areas.Where(a => a.Technique != Technique.Vibration)];

    // Every place has one of the two numbers, all lower ones the same and all upper ones the other.
    private static bool HasMinutes(List<AreaMinutes> areas, double first, double second) =>
        areas.TrueForAll(a => a is { Side: Side.Left or Side.Right, Area: ChestArea.Lower or ChestArea.Upper, Minutes: not null, MinutesHigh: null })
        && areas.Select(a => (a.Area, a.Minutes)).Distinct().ToList() is [var (area, minutes), var (other, others)] && area != other && (minutes == first && others == second || minutes == second && others == first);
}
