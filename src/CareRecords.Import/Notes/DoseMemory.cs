using CareRecords.Records;

namespace CareRecords.Import.Notes;

/// <summary>Remembers medicines given and prescribed, so that "same", "the antibiotic" and "first one" can be named.</summary>
internal sealed class DoseMemory
{
    private const int Kept = 50;
    private static readonly string[] Colours = ["blue", "brown", "purple", "orange", "green", "grey", "red", "pink", "white", "yellow"];
    private readonly List<Known> _given = [];
    private Known? _course, _spoken;
    private readonly Arrangements _arrangements;

    /// <summary>A memory that knows what the family has arranged.</summary>
    public DoseMemory(Arrangements arrangements) => _arrangements = arrangements;

    /// <summary>A medicine with its words and amount.</summary>
    /// <param name="Medicine">Generic name or "unknown".</param>
    /// <param name="Written">Its words; null when the name came from before.</param>
    /// <param name="Amount">Amount as written.</param>
    /// <param name="How">How it was read; null when literally.</param>
    public sealed record Known(string Medicine, string? Written, string? Amount, string? How = null);

    /// <summary>Whether the words name only a colour ("blue inhaler"): only the family knows what it is.</summary>
    public static bool IsColour(string words) => Colours.Any(c => words.Contains(c, StringComparison.OrdinalIgnoreCase));

    /// <summary>Keeps a medicine that was named, given or prescribed.</summary>
    public void Prescribe(DoseReading dose)
    {
        var known = new Known(dose.Medicine, dose.Written, dose.Amount);
        if (dose.Prescribed || _spoken?.Medicine != dose.Medicine || _spoken?.Written != dose.Written) _spoken = known;
        if (dose.Medicine == Medicines.Unknown) return;
        if (Medicines.ClassOf(dose.Medicine) == MedicineClass.SystemicAntibiotic && (_course?.Medicine != dose.Medicine || dose.Prescribed)) _course = known;
    }

    /// <summary>Keeps a dose that was given.</summary>
    public void Keep(Known dose)
    {
        if (_given.Count >= 2 * Kept) _given.RemoveRange(0, Kept);
        _given.Add(dose);
    }

    /// <summary>The medicine and amount of a dose, with what it repeats and what the family has arranged filled in.</summary>
    public Known Name(Happening happening)
    {
        var known = Named(happening);
        return known.Amount is null && _arrangements.AmountOf(known.Medicine) is { } always ? known with { Amount = always, How = $"{(known.How is null ? "" : known.How + " ")}The amount ({always}) is the one that the notes give above." } : known;
    }

    private Known Named(Happening happening)
    {
        var (medicine, written, amount) = (happening.Medicine, happening.MedicineWritten, happening.Amount);
        if (happening.IsAntibioticWord)
        {
            var first = string.IsNullOrEmpty(written);
            var course = first ? _spoken ?? _course : _course;
            return course is null ? new Known(medicine, written, amount) : new Known(course.Medicine, first ? course.Written : written, amount ?? (first ? course.Amount : null), first ? "'first one' read as the medicine named before." : $"'{written}' read as {course.Medicine}, named before.");
        }
        // The first dose of a prescription takes its amount ("5 ml three times a day, first 10am").
        if (happening.Reference is not null)
        {
            var before = _given.FindLast(d => medicine != Medicines.Unknown ? d.Medicine == medicine : SameDevice(d.Written, written) || d.Written?.Contains("inhaler", StringComparison.OrdinalIgnoreCase) == true)
                ?? (medicine == Medicines.Unknown ? _given.FindLast(d => CareRecords.Records.Medicines.ClassOf(d.Medicine) == MedicineClass.Bronchodilator) : null);
            if (before is not null) return new Known(before.Medicine, written, amount ?? before.Amount, $"'same' read as {before.Medicine}{(before.Amount is null ? "" : ", " + before.Amount)}.");
        }
        if (medicine == Medicines.Unknown && written is not null && _arrangements.MedicineOf(written) is { } arranged)
            return new Known(arranged, written, amount, $"'{written}' read as {arranged}, as the notes say above.");
        // "2 puffs" alone: of the one reliever inhaler that these notes know.
        if (medicine == Medicines.Unknown && written is not null && written.StartsWith("puff", StringComparison.OrdinalIgnoreCase) && !written.StartsWith("puffer", StringComparison.OrdinalIgnoreCase)
            && _given.Where(d => Medicines.ClassOf(d.Medicine) is MedicineClass.Bronchodilator or MedicineClass.InhaledSteroid).Select(d => d.Medicine).Distinct().ToList() is [var reliever])
            return new Known(reliever, written, amount, $"'{written}' read as {reliever}, the only inhaler named before.");
        // "2 puffs blue" after "blue puffer": the same inhaler.
        if (medicine == Medicines.Unknown && written is not null && Colours.FirstOrDefault(c => written.Contains(c, StringComparison.OrdinalIgnoreCase)) is { } colour
            && _given.FindLast(d => d.Medicine != Medicines.Unknown && d.Written?.Contains(colour, StringComparison.OrdinalIgnoreCase) == true) is { } same)
            return new Known(same.Medicine, written, amount, $"'{written}' read as {same.Medicine}, as before.");
        return new Known(medicine, written, amount);
    }

    private static bool SameDevice(string? a, string? b) => a is not null && b is not null && a.Length >= 3 && b.Length >= 3 && a.Contains(b[..3], StringComparison.OrdinalIgnoreCase);
}
