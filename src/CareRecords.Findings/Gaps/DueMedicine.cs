using CareRecords.Records;

namespace CareRecords.Findings;

/// <summary>Whether a dose is the one due before a session.</summary>
internal enum Due
{
    /// <summary>It is another medicine.</summary>
    No,

    /// <summary>The words do not name it, so it may be.</summary>
    Maybe,

    /// <summary>It is.</summary>
    Yes,
}

/// <summary>
/// The medicine that the inhaler check uses: the plan's own, by name or by class word; without one, any bronchodilator of
/// the project's table.
/// </summary>
internal sealed class DueMedicine
{
    private static readonly string[] NotInhaled = ["oral", "mouth", "po", "tube", "peg", "ng", "gastrostomy", "iv", "rectal", "skin", "patch", "eye", "cream"];
    private static readonly string[] NoneAsked = ["none", "no", "nothing", "no medicine"];

    private readonly HashSet<string> _names;
    private readonly bool _anyBronchodilator;

    private DueMedicine(HashSet<string> names, bool anyBronchodilator, bool asked) =>
        (_names, _anyBronchodilator, IsAsked) = (names, anyBronchodilator, asked);

    /// <summary>False when the plan says that no medicine is due before a session.</summary>
    public bool IsAsked { get; }

    public static DueMedicine From(string? planned)
    {
        if (string.IsNullOrWhiteSpace(planned)) return new([], true, true);
        if (NoneAsked.Contains(planned.Trim().ToLowerInvariant())) return new([], false, false);
        var words = planned.ToLowerInvariant().Split([",", ";", "+", "&", " and ", " or "], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        var any = words.Any(w => w is "bronchodilator" or "reliever" or "inhaler" or "bronchodilators");
        return new([.. words.Select(w => Medicines.GenericNameFor(w) ?? w)], any, true);
    }

    public Due Of(Dose dose)
    {
        if (!IsAsked) return Due.No;
        if (_names.Contains(dose.Medicine.ToLowerInvariant()) || (dose.MedicineAsWritten is { } words && _names.Contains(words.Trim().ToLowerInvariant()))) return Due.Yes;
        if (_anyBronchodilator && dose.Class == MedicineClass.Bronchodilator) return Due.Yes;
        return dose.Class == MedicineClass.Unknown && !IsNotInhaled(dose.Route) ? Due.Maybe : Due.No;
    }

    private static bool IsNotInhaled(string? route) =>
        route is not null && route.ToLowerInvariant().Split([' ', ',', '/', '-'], StringSplitOptions.RemoveEmptyEntries).Any(NotInhaled.Contains);
}
