using CareRecords.Import.Reading;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>
/// A medicine chart: "Medicine | Dose | How | Due | Mon 13 | Tue 14 …". What stands before the days is of one thing, so it is put together into the label of its row ("Salbutamol inhaler 4 puffs");
/// where the name is written once over several times due, the rows below have it too. How it is given and when it was due are no record.
/// </summary>
internal static class DrugCharts
{
    private const int FewestDays = 3;

    /// <summary>The rows with one label each; as they are where no row heads such a chart.</summary>
    public static IReadOnlyList<GridRow> Plain(IReadOnlyList<GridRow> rows)
    {
        GridRow[]? plain = null;
        for (var i = 0; i < rows.Count; i++)
        {
            if (Heading(rows[i]) is not var (dose, days)) continue;
            plain ??= [.. rows];
            plain[i] = Labelled(rows[i], "", days);
            var label = "";
            for (i++; i < rows.Count && !rows[i].IsBlank; i++)
            {
                if (!rows[i][0].IsEmpty) label = Label(rows[i][0].Text.Trim(), rows[i][dose].Words ?? "");
                plain[i] = Labelled(rows[i], label, days);
            }
        }

        return plain ?? rows;
    }

    private static GridRow Labelled(GridRow row, string label, int days) =>
        row with { Cells = [Cell.Of(label), .. Enumerable.Repeat(Cell.Empty, days - 1), .. row.Cells.Skip(days)], Written = row.Written ?? row.Text };

    // "Chest physio | clap L and R lower 3 min each": what is done each time.
    private static string Label(string name, string dose) =>
        dose.Length == 0 ? name : KindWords.Read(name, FamilyWords.None) is { Kind: TableKind.Sessions } ? $"{name} - {dose}" : $"{name.Split(" (")[0]} {dose}";

    // The column of the dose, and the first of the days.
    private static (int Dose, int Days)? Heading(GridRow row)
    {
        var days = Array.FindIndex(row.Cells, c => CellTimes.Read(c) is { Outcome: Outcome.Certain, Date: not null, Clock: null });
        if (days < 2 || row.Cells.Skip(days).Count(c => CellTimes.Read(c) is { Outcome: Outcome.Certain, Date: not null }) < FewestDays) return null;
        var headings = Enumerable.Range(0, days).Select(c => row[c].Kind == CellKind.Text ? HeadingReader.Read(row[c].Text.Trim()).Role : Role.Unknown).ToList();
        return headings[0] is Role.Medicine or Role.Dose or Role.Kind && headings.IndexOf(Role.Amount) is > 0 and var dose ? (dose, days) : null;
    }
}
