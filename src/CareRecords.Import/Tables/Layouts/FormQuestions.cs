namespace CareRecords.Import.Tables.Layouts;

/// <summary>
/// The questions of a form that ask for several things at once: "Feed: how much, tube or mouth, when did it end?", "How many minutes of clapping on each spot?
/// (lower L, lower R, upper L, upper R)". The answers say which is which, so the heading is no more than what they are of.
/// </summary>
internal static class FormQuestions
{
    private const int FewestPlaces = 3;

    /// <summary>What the answers are of, as a plain heading; null when the heading is no such question.</summary>
    public static string? Plain(string heading)
    {
        if (!heading.Contains(',', StringComparison.Ordinal)) return null;
        var asked = Lexicon.Find(heading, out _).Select(k => k.Concept).ToHashSet();
        if (asked.Overlaps([Concept.Session, Concept.Percussion]) && asked.Contains(Concept.Minutes) && AreaNames.In(heading).Where(a => a.Area != Records.ChestArea.Unknown).Distinct().Count() >= FewestPlaces)
            return asked.Contains(Concept.Percussion) ? "clapping" : "chest";
        if (!asked.Contains(Concept.Amount) || !asked.Overlaps([Concept.Kind, Concept.Time, Concept.End, Concept.Route])) return null;
        return asked.Overlaps([Concept.Medicine, Concept.Inhaler]) ? asked.Contains(Concept.Medicine) ? "meds" : "inhaler" : asked.Contains(Concept.Feed) ? "feed" : null;
    }
}
