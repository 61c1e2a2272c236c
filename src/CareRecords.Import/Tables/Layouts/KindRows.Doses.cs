using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Tables.Layouts;

/// <content>Rows of medicines.</content>
internal sealed partial class KindRows
{
    private void Dose(BlockRow row, WhatHappened what, UncertainTime at, RowWhen when)
    {
        var kind = row[reading.Slots.Kind];
        var cells = TextCells(row);
        if (SameDose(cells) is { } again)
        {
            reading.Add(again with { Sources = [row.Source], Start = at, By = By(row) }, [row[0], .. cells]);
            return;
        }

        if (cells.Exists(c => SameAs.IsNo(c.Cell.Text) || SameAs.SaysNotDone(c.Cell.Text)))
        {
            LeftOut(row, what, at, kind.Cell.Text);
            return;
        }

        // "med | albuterol neb | 2.5 mg": the kind only says that it was a medicine, the next words say which.
        var named = Of(Role.Medicine).Select(c => row[c]).Concat(cells).Concat(Of(Role.Amount).Concat(Of(Role.Minutes)).Select(c => row[c])).FirstOrDefault(c => !c.Cell.IsEmpty && KindWords.Read(c.Cell.Text, FamilyWords.None)?.Medicine is not null);
        var cell = what.Medicine is null && !named.IsNone ? named : kind;
        if (reading.Cells.Several(cell) is { Count: > 1 } several)
        {
            foreach (var one in several) reading.Add(new Dose { Sources = [row.Source], Start = at, Medicine = one.Generic, MedicineAsWritten = one.AsWritten, Amount = one.Amount, Route = one.Route, By = By(row) }, row[0], cell);
            return;
        }

        if ((reading.Context.Words.MeaningOf(kind.Cell.Text) is { } means ? Meant(means) : null) is not { } medicine)
        {
            if (reading.Cells.Medicine(cell) is not { } read) return;
            medicine = read;
        }

        var amount = Of(Role.Amount).Concat(Of(Role.Millilitres)).Concat(Of(Role.Minutes)).Select(c => row[c]).FirstOrDefault(c => !c.Cell.IsEmpty);
        // "salbutamol 4 puffs" where the amount stands: the amount of it alone.
        var amountText = (!amount.IsNone && amount.Column == cell.Column && medicine.Amount is not null ? medicine.Amount : amount.Cell.Words) ?? medicine.Amount ?? cells.Where(c => c.Column != cell.Column).Select(c => DoseAmount.In(c.Cell.Words!)).FirstOrDefault(a => a is not null);
        if (amountText is null && LooseAmount(cells, cell) is { } loose) (amount, amountText) = loose;
        if (amountText is not null && amountText.All(c => char.IsAsciiDigit(c) || c is '.' or ',') && reading.Context.Words.MeaningOf(kind.Cell.Text) is { } ofKey && CodeWords.UnitIn(ofKey) is { } unit) amountText += " " + unit;
        reading.Add(new Dose
        {
            Sources = [row.Source],
            Start = at,
            End = when.End,
            Medicine = medicine.Generic,
            MedicineAsWritten = cell.Cell.Words,
            Amount = amountText,
            Route = medicine.Route,
            By = By(row),
        }, row[0], cell, amount.IsNone ? cell : amount);
        foreach (var other in cells.Where(c => !c.Cell.Text.Any(char.IsAsciiDigit) || (amountText is not null && c.Cell.Text.Contains(amountText, StringComparison.Ordinal)))) reading.Saw(other);
        Remarks(row, cell, at, when);
    }

    // "inhaler | same dose": as the last dose of the same kind of medicine written above.
    private Dose? SameDose(List<CellAt> cells) =>
        cells.Exists(c => SameAs.PointsBack(c.Cell.Text)) ? reading.Into.Entries.OfType<Dose>().LastOrDefault(d => d.Medicine != Medicines.Unknown) : null;

    // Amount and unit in two cells without headings: "2 | puffs".
    private (CellAt Amount, string Text)? LooseAmount(List<CellAt> cells, CellAt named)
    {
        var amount = cells.FirstOrDefault(c => c.Column != named.Column && c.Cell.Text.Trim() is { Length: <= 5 } text && text.All(x => char.IsAsciiDigit(x) || x is '.' or ','));
        if (amount.IsNone) return null;
        var unit = cells.FirstOrDefault(c => c.Column != amount.Column && c.Cell.Text.Trim().ToLowerInvariant() is "puffs" or "puff" or "ml" or "mls" or "mg" or "mcg" or "drops");
        if (!unit.IsNone) reading.Saw(unit);
        return (amount, unit.IsNone ? amount.Cell.Words! : amount.Cell.Words + " " + unit.Cell.Words);
    }

    private static MedicineWritten? Meant(string means) => MeantFirst(means)
        ?? CodeWords.Clauses(means).Select(MeantFirst).FirstOrDefault(m => m is not null)
        ?? (Lexicon.Find(means, out _).FirstOrDefault(k => k.Medicine is not null).Medicine is { } generic ? new MedicineWritten(generic, generic, null, null) : null);

    private static MedicineWritten? MeantFirst(string means) =>
        MedicineReader.Read(means.Split(',')[0], FamilyWords.None) is { Outcome: Outcome.Certain, Value: { } read } && read.Generic != Medicines.Unknown ? read : null;
}
