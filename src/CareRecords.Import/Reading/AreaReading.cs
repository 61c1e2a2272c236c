using CareRecords.Records;

namespace CareRecords.Import.Reading;

/// <summary>What a session's words say of its areas, before anything is carried over from an earlier session.</summary>
internal sealed class AreaReading
{
    /// <summary>One entry per side, area and technique.</summary>
    public List<AreaMinutes> Areas { get; } = [];

    /// <summary>The areas of a session that the family has a word for ("usual", "full"): what the other words change. Empty when no such word stands there.</summary>
    public List<AreaMinutes> Base { get; } = [];

    /// <summary>The family's word for that session; null when there is none.</summary>
    public string? BaseWord { get; set; }

    /// <summary>Areas that were left out ("no tops"): side unknown means both sides.</summary>
    public List<(Side Side, ChestArea Area, Technique Technique)> LeftOut { get; } = [];

    /// <summary>Minutes without an area are in <see cref="Areas"/> as unknown; true when several stand so ("3/3/2/2").</summary>
    public bool AreasNotNamed => Areas.Count(a => a is { Side: Side.Unknown, Area: ChestArea.Unknown, Technique: not Technique.Vibration }) > 1;

    /// <summary>Whether "only" or "just" narrows what is repeated from before.</summary>
    public bool Only { get; set; }

    /// <summary>The technique said of the whole session; unknown when none was.</summary>
    public Technique Technique { get; set; }

    /// <summary>Techniques whose minutes were said of every spot or a count of spots, without naming them ("3 min each spot", "4 spots 3 mins each").</summary>
    public HashSet<Technique> EverySpot { get; } = [];

    /// <summary>The minutes of every other place ("R low 4, the rest 3"); null when none are said.</summary>
    public double? Rest { get; set; }

    /// <summary>True when the words named a side or an area (not only minutes).</summary>
    public bool NamesPlace { get; set; }

    /// <summary>The same words without one of their areas.</summary>
    public AreaReading Without(AreaMinutes area)
    {
        var rest = new AreaReading { BaseWord = BaseWord, Only = Only, Technique = Technique, Rest = Rest, NamesPlace = NamesPlace };
        rest.Areas.AddRange(Areas.Where(a => !ReferenceEquals(a, area)));
        rest.Base.AddRange(Base);
        rest.LeftOut.AddRange(LeftOut);
        rest.EverySpot.UnionWith(EverySpot);
        return rest;
    }
}
