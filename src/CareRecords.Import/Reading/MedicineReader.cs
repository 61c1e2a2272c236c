namespace CareRecords.Import.Reading;

/// <summary>A medicine as written.</summary>
/// <param name="Generic">The generic name of the table, or <see cref="CareRecords.Records.Medicines.Unknown"/>.</param>
/// <param name="AsWritten">The words that stand for it.</param>
/// <param name="Amount">The amount as written; null when none stands beside it.</param>
/// <param name="Route">The route as written ("neb", "spacer", "oral"); null when not said.</param>
internal sealed record MedicineWritten(string Generic, string AsWritten, string? Amount, string? Route);

/// <summary>Reads a medicine: the generic names and misspellings of the table, near spellings, and the family's own words.</summary>
internal static class MedicineReader
{
    /// <summary>
    /// Reads a cell that names a medicine, perhaps with its amount and route ("salbutamol 2.5 mg neb", "blue inhaler 4p").
    /// Words that name none give <c>unknown</c> and are <see cref="Outcome.Doubtful"/> (question <c>what-is:…</c>).
    /// </summary>
    public static Reading<MedicineWritten> Read(string text, FamilyWords words)
    {
        var doses = Notes.DoseGrammar.Read(CellTerms.Read(text, words), text, []);
        return doses switch
        {
            [{ Medicine: not CareRecords.Records.Medicines.Unknown } one] => Reading.Certain(new MedicineWritten(one.Medicine, one.Written, one.Amount, one.Route)),
            [var unnamed] => Reading.Doubtful(new MedicineWritten(CareRecords.Records.Medicines.Unknown, text.Trim(), unnamed.Amount, unnamed.Route), $"'{text.Trim()}' does not say which medicine it is."),
            [] => Reading.Doubtful(new MedicineWritten(CareRecords.Records.Medicines.Unknown, text.Trim(), null, null), $"'{text.Trim()}' names no medicine known here."),
            _ => Reading.Doubtful(new MedicineWritten(doses[0].Medicine, doses[0].Written, doses[0].Amount, doses[0].Route), $"'{text.Trim()}' names more than one medicine."),
        };
    }
}
