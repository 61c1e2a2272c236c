using CareRecords.Records;

namespace CareRecords.Import.Reading;

/// <summary>Areas repeated from an earlier session or from the family's usual one, with what new words change of them.</summary>
internal static class AreaChanges
{
    /// <summary>What is repeated, with what the new words change: other minutes, areas left out, areas narrowed or added.</summary>
    public static List<AreaMinutes> Combine(IReadOnlyList<AreaMinutes> before, AreaReading now)
    {
        var result = before.ToList();
        var own = now.Areas;
        var vibration = own.Where(a => a.Technique == Technique.Vibration).ToList();
        // "P4 and vibration 1 min on each area": of the places that are repeated.
        if (now.EverySpot.Contains(Technique.Vibration) && vibration is [{ Side: Side.Unknown, Area: ChestArea.Unknown } each])
            vibration = [.. before.Where(a => a.Technique != Technique.Vibration).Select(a => each with { Side = a.Side, Area = a.Area }).Distinct()];
        var places = own.Where(a => a.Technique != Technique.Vibration).ToList();
        // "only the left side, bottom and top": of that side, those areas.
        if (now.Only && places is [{ Side: Side.Left or Side.Right, Area: ChestArea.Unknown, Minutes: null } side, ..] && places.Count > 1 && places.Skip(1).All(p => p is { Area: not ChestArea.Unknown, Minutes: null }))
            return result.Where(a => a.Side == side.Side && places.Exists(p => p.Area == a.Area)).ToList();
        if (now.Only && places.Count > 0 && places.TrueForAll(p => p.Minutes is null)) return result.Where(a => places.Exists(p => Covers(p, a))).ToList();
        // "the usual but just the bottoms 3 mins each side": nothing but what is named.
        if (now.Only && places.Count > 0 && places.TrueForAll(p => p.Area != ChestArea.Unknown)) result.RemoveAll(a => a.Technique != Technique.Vibration && !places.Exists(p => Covers(p, a)));
        var unnamed = places.Where(p => p is { Side: Side.Unknown, Area: ChestArea.Unknown }).ToList();
        var plain = result.Where(a => a.Technique != Technique.Vibration).ToList();
        if (unnamed.Count > 0 && unnamed.Count == places.Count)
        {
            if (unnamed.Count == plain.Count) return [.. plain.Zip(unnamed, (a, u) => a with { Minutes = u.Minutes, MinutesHigh = u.MinutesHigh }), .. vibration.Count > 0 ? vibration : result.Where(a => a.Technique == Technique.Vibration && (unnamed.Count == 1 || a.Area != ChestArea.Unknown))];
            if (unnamed.Count == 1) return [.. plain.Select(a => a with { Minutes = unnamed[0].Minutes, MinutesHigh = unnamed[0].MinutesHigh }), .. vibration.Count > 0 ? vibration : result.Where(a => a.Technique == Technique.Vibration)];
            // "the same, 4 and 3": of the lower and the upper areas, as the session before named them.
            if (unnamed.Count == 2 && unnamed[0].Minutes >= unnamed[1].Minutes && plain.Count == 4 && plain.Select(a => a.Area).Distinct().ToList() is [var first, var second] && first != ChestArea.Unknown && second != ChestArea.Unknown)
                return [.. plain.Select(a => a with { Minutes = unnamed[a.Area == first ? 0 : 1].Minutes, MinutesHigh = unnamed[a.Area == first ? 0 : 1].MinutesHigh }), .. vibration];
            return own.ToList();
        }
        foreach (var place in places)
        {
            var at = result.FindIndex(a => a.Technique != Technique.Vibration && Covers(place, a));
            if (at >= 0) result[at] = result[at] with { Minutes = place.Minutes ?? result[at].Minutes, MinutesHigh = place.MinutesHigh };
            else result.Add(place with { Technique = place.Technique == Technique.Unknown && plain.Count > 0 ? plain[0].Technique : place.Technique });
        }
        if (now.Rest is { } rest)
            for (var i = 0; i < result.Count; i++)
                if (result[i].Technique != Technique.Vibration && !places.Exists(p => Covers(p, result[i]))) result[i] = result[i] with { Minutes = rest, MinutesHigh = null };
        // With other minutes for some areas, a vibration "of we know not what" cannot be carried over.
        if (places.Count > 0) result.RemoveAll(a => a is { Technique: Technique.Vibration, Side: Side.Unknown, Area: ChestArea.Unknown });
        if (vibration.Count > 0 && !(vibration.TrueForAll(v => v.Minutes is null) && result.Exists(a => a.Technique == Technique.Vibration)))
        {
            result.RemoveAll(a => a.Technique == Technique.Vibration);
            result.AddRange(vibration);
        }
        Leave(result, now);
        return result;
    }

    /// <summary>Takes out the areas that the words leave out.</summary>
    public static void Leave(List<AreaMinutes> areas, AreaReading now)
    {
        foreach (var (side, area, technique) in now.LeftOut)
            areas.RemoveAll(a => technique != Technique.Unknown ? a.Technique == technique
                : (side is Side.Unknown or Side.Both || a.Side == side) && (area == ChestArea.Unknown ? side is not (Side.Unknown or Side.Both) : a.Area == area));
    }

    // "Clapped: left bottom 3. Right bottom 3": areas named without a technique, beside others of percussion in the same session, are of percussion too.
    private static List<AreaMinutes> OfOneTechnique(List<AreaMinutes> areas) =>
        areas.Exists(a => a is { Technique: Technique.Percussion, Area: not ChestArea.Unknown }) && areas.TrueForAll(a => a.Technique != Technique.Other)
            ? areas.ConvertAll(a => a is { Technique: Technique.Unknown, Area: not ChestArea.Unknown } ? a with { Technique = Technique.Percussion } : a) : areas;

    /// <summary>
    /// One session's areas as a person would list them: each place once, and beside places with their minutes no side alone and no number that says no place
    /// ("bases 3 each, it may have been nearer 5": the 5 is of something else).
    /// </summary>
    public static List<AreaMinutes> Tidied(List<AreaMinutes> areas)
    {
        areas = OfOneTechnique(areas);
        if (!areas.Exists(IsTimed)) return areas;
        var loose = areas.FindAll(a => a is { Area: ChestArea.Unknown, Technique: Technique.Percussion or Technique.Unknown } && (a.Minutes is null || a.Side == Side.Unknown));
        // Several numbers without a place are asked about.
        var several = loose.Count(a => a.Minutes is not null) > 1;
        var tidied = new List<AreaMinutes>(areas.Count);
        foreach (var area in areas)
            if ((!loose.Contains(area) || several && area.Minutes is not null) && !(area.Area != ChestArea.Unknown && tidied.Contains(area))) tidied.Add(area);
        return tidied;

        static bool IsTimed(AreaMinutes area) => area is { Area: ChestArea.Lower or ChestArea.Upper or ChestArea.Middle, Minutes: not null, Technique: Technique.Percussion or Technique.Unknown };
    }

    private static bool Covers(AreaMinutes place, AreaMinutes of) => (place.Side is Side.Unknown or Side.Both || place.Side == of.Side) && (place.Area == ChestArea.Unknown || place.Area == of.Area)
        && (place.Technique is Technique.Unknown || place.Technique == of.Technique || of.Technique == Technique.Unknown);
}
