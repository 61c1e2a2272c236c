using CareRecords.Import.Reading;

namespace CareRecords.Import.Notes;

/// <summary>
/// Finds what a group names and no event was told of: a medicine, a feed, a session, a reading. Its line is asked about, so that nothing that
/// the grammar does not understand is passed over in silence.
/// </summary>
internal static class Leftovers
{
    /// <summary>Words of a group that name care or give a value, without an event; null when there are none.</summary>
    public static string? Of(Group group, GroupReader.Told told)
    {
        if (told.Details is not null) return null;
        var (terms, happenings) = (group.Terms, told.Happenings);
        var timed = group.Times.Count > 0 || group.Part is not null;
        var values = terms.Exists(t => t.Kind is TermKind.Number or TermKind.Quantity or TermKind.Range or TermKind.Parts);
        for (var i = 0; i < terms.Count; i++)
        {
            var kinds = GroupItem.NamedAt(terms, i);
            if (kinds == CareKinds.None || terms[i].Is(Sense.Person) || terms[i].Is(Sense.Visit)) continue;
            if ((kinds & CareKinds.Dose) != 0 && timed && told.NamesPrescription is not { Prescribed: true } && !Has(happenings, HappeningKind.Dose)) return terms[i].Text;
            if ((kinds & CareKinds.Feed) != 0 && (group.Times.Count > 0 || (values && (terms[i].Is(Sense.Feed) || terms[i].Is(Sense.Pump) || terms[i].Is(Sense.Bolus) || terms[i].Is(Sense.Bottle)))) && !Has(happenings, HappeningKind.Feed) && !Has(happenings, HappeningKind.Sign)) return terms[i].Text;
            if ((kinds & CareKinds.Session) != 0 && group.Times.Count > 0 && !Has(happenings, HappeningKind.Session) && !Has(happenings, HappeningKind.Omitted) && !told.Mentions.Any(m => m.Start.SpeaksOfSession)) return terms[i].Text;
            if ((kinds & CareKinds.Check) != 0 && values && !Has(happenings, HappeningKind.Check) && !(terms[i].Is(Sense.Desat) && !terms.Exists(t => t.Number is >= 60 and <= 100)) && !terms[i].Is(Sense.Route)) return terms[i].Text;
            if (terms[i].Is(Sense.TempLabel) && values && !Has(happenings, HappeningKind.Sign)) return terms[i].Text;
        }
        if (terms.Exists(t => t.Is(Sense.Flush))) return null;
        if (timed && told.NamesPrescription is null && !Has(happenings, HappeningKind.Dose) && !Has(happenings, HappeningKind.Feed) && terms.Find(t => t is { Kind: TermKind.Quantity, Unit: Unit.Ml or Unit.Mg or Unit.Mcg or Unit.Puffs or Unit.Oz }) is { } amount) return amount.Text;
        // "did the right side for 5 minutes"
        if (happenings.Count == 0 && terms.Exists(t => t.Is(Sense.Side) || t.Is(Sense.SideArea) || t.Is(Sense.Area)) && terms.Find(t => t.Kind == TermKind.Duration || t is { Kind: TermKind.Quantity, Unit: Unit.Min }) is { } done) return done.Text;
        // "bottle 6.30 4, 10.30 4": a time and a number, without what they are of.
        if (group.Times.Count > 0 && happenings.Count == 0 && group.Denied.Count == 0 && terms.Exists(t => t.Kind == TermKind.Number) && terms.TrueForAll(t => t.Kind is TermKind.Number or TermKind.Symbol)) return terms.Find(t => t.Kind == TermKind.Number)!.Text;
        // A time, and no word that says of what.
        if (group.Times.Count > 0 && told.Happenings.Count == 0 && group.Denied.Count == 0 && terms.Count > 0 && terms.TrueForAll(t => t.Is(Sense.Then) || t.Is(Sense.And) || t.Is(Sense.Again) || t.Is(Sense.At) || t.Kind == TermKind.Symbol)) return terms[0].Text;
        if (happenings.Count > 0 || told.NamesPrescription is { Prescribed: true }) return null;
        // "wet nappy x1" counts nothing of this record.
        if (!terms.Exists(t => t.NamesEvent) && terms.Exists(t => t.Text is "diaper" or "diapers" or "nappy" or "nappies" or "stool" or "urine" or "poo" or "wee")) return null;
        // A reading, an amount or minutes at a time, of nothing that was named.
        var value = terms.Find(t => t is { Kind: TermKind.Number, IsWhole: true, Number: >= 80 and <= 100 } or { Kind: TermKind.Quantity, Unit: Unit.Percent or Unit.Litre or Unit.MlMin or Unit.Puffs or Unit.Ml or Unit.Mg or Unit.Mcg or Unit.Oz or Unit.Rate or Unit.Celsius or Unit.Fahrenheit }
            || (timed && (t.Kind is TermKind.Reference or TermKind.Times || t.Is(Sense.SideArea) || t.Is(Sense.EachSide))));
        return value is null || (!timed && terms.Count > 6) ? null : value.Text;
    }

    private static bool Has(List<Happening> happenings, HappeningKind kind) => happenings.Exists(h => h.Kind == kind);
}
