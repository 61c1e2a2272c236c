using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Notes;

/// <summary>
/// What a family has arranged once for all and says above its first day or in a key: which medicine its "neb" or "inhaler" is, which places of the
/// chest "each spot" means, and in which order bare minutes ("3/3/2/2") stand.
/// </summary>
internal sealed class Arrangements
{
    private readonly Dictionary<string, HashSet<string>> _devices = new(StringComparer.Ordinal);
    private List<(Side Side, ChestArea Area)> _places = [];
    private Technique _technique = Technique.Unknown;


    /// <summary>Takes in a line that tells of no event: one above the first day, or a key.</summary>
    public void Take(List<Term> terms, string line)
    {
        if (terms.Exists(t => t.Kind == TermKind.Time)) return;
        Devices(terms, line);
        Places(terms);
    }

    /// <summary>The medicine that a device holds ("neb", "puffer"); null when the family has not said, or has named several.</summary>
    public string? MedicineOf(string device) => DeviceOf(device) is { } kind && _devices.TryGetValue(kind, out var held) && held.Count == 1 ? held.First() : null;

    /// <summary>Minutes without places ("3/3/2/2", "3 min each spot") put in the places that the family has named, in its order; the areas as they are when they do not fit.</summary>
    public List<AreaMinutes> Place(List<AreaMinutes> areas, AreaReading words)
    {
        if (_places.Count == 0) return areas;
        var bare = areas.Where(a => a is { Side: Side.Unknown, Area: ChestArea.Unknown } && a.Technique != Technique.Vibration).ToList();
        if (bare.Count == _places.Count && (words.AreasNotNamed || words.EverySpot.Contains(bare[0].Technique)))
        {
            var placed = bare.Zip(_places, (a, p) => a with { Side = p.Side, Area = p.Area, Technique = a.Technique == Technique.Unknown ? _technique : a.Technique }).Where(a => a.Minutes != 0);
            areas = [.. placed, .. areas.Except(bare)];
            words.AreasNotNamed = false;
        }
        return [.. areas.SelectMany(a => a is { Side: Side.Unknown, Area: ChestArea.Unknown, Minutes: not null } && words.EverySpot.Contains(a.Technique)
            ? _places.Select(p => a with { Side = p.Side, Area = p.Area }) : [a])];
    }

    // "inhaler salb 4 puffs before", "saline neb (3%)", "the puffer is salbutamol".
    private void Devices(List<Term> terms, string line)
    {
        var doses = DoseGrammar.Read(terms, line, []);
        for (var i = 0; i < doses.Count; i++)
        {
            var (dose, device) = (doses[i], doses[i].Route ?? doses[i].Written);
            if (dose.Medicine == Medicines.Unknown && i + 1 < doses.Count && doses[i + 1].Medicine != Medicines.Unknown && doses[i + 1].First - dose.Last <= 3
                && terms.GetRange(dose.Last + 1, doses[i + 1].First - dose.Last - 1).TrueForAll(t => t.Text is "is" or "=" or ":" or "the" or "of" or "always" or "with")) dose = doses[++i];
            if (dose.Medicine == Medicines.Unknown || DeviceOf(device) is not { } kind) continue;
            if (!_devices.TryGetValue(kind, out var held)) _devices[kind] = held = new(StringComparer.Ordinal);
            held.Add(dose.Medicine);
        }
    }

    private static string? DeviceOf(string words)
    {
        var terms = CellTerms.Read(words);
        if (!terms.Exists(t => t.Is(Sense.Device))) return null;
        return terms.Exists(t => t.Is(Sense.Device) && (t.Mended ?? t.Text).StartsWith("neb", StringComparison.Ordinal)) ? "nebuliser" : DoseMemory.IsColour(words) ? null : "inhaler";
    }

    // "always left bottom / right bottom / left top / right top", or the places of the usual session.
    private void Places(List<Term> terms)
    {
        var read = AreaGrammar.Read(terms);
        var named = read.Areas.Where(a => a.Technique != Technique.Vibration && a is { Side: Side.Left or Side.Right, Area: ChestArea.Lower or ChestArea.Upper or ChestArea.Middle }).ToList();
        if (named.Count < 2 || named.Count != named.Select(a => (a.Side, a.Area)).Distinct().Count() || named.Count < read.Areas.Count(a => a.Technique != Technique.Vibration)) return;
        // An order said for its own sake has no minutes; it holds before that of a usual session.
        var order = named.TrueForAll(a => a.Minutes is null);
        if (_places.Count > 0 && !order) return;
        _places = named.ConvertAll(a => (a.Side, a.Area));
        _technique = terms.Exists(t => t.Is(Sense.Technique, "percussion")) ? Technique.Percussion : Technique.Unknown;
    }
}
