using System.Collections.Frozen;

namespace CareRecords.Import.Tables;

/// <summary>A header row that names the contract's columns.</summary>
/// <param name="Kind">Which table it is.</param>
/// <param name="Fields">What each column states, first column first.</param>
internal sealed record CanonicalHeader(TableKind Kind, IReadOnlyList<Field> Fields)
{
    // The first name of each list is the column that only this table has: its mark. The others are the rest of its columns.
    private static readonly (TableKind Kind, string[] Marks, string[] Others)[] Tables =
    [
        (TableKind.Sessions, ["started"], ["ended", "left lower", "left upper", "left vibration", "right lower", "right upper", "right vibration",
            "minutes", "techniques", "by", "cough", "secretions", "colour", "stopped early", "vomited", "note"]),
        (TableKind.Feeds, ["started"], ["ended", "ml", "route", "by", "note"]),
        (TableKind.Medicines, ["given", "medicine"], ["amount", "route", "by", "note"]),
        (TableKind.Checks, ["checked"], ["spo2", "pulse", "oxygen", "phase", "by", "note"]),
        (TableKind.Signs, ["noticed", "sign"], ["value", "by", "note"]),
        (TableKind.NotDone, ["due"], ["reason", "note"]),
        (TableKind.Plan, ["item", "value"], ["from", "note"]),
        (TableKind.Words, ["word", "means"], ["note"]),
        (TableKind.Answers, ["question", "answer"], ["note"]),
        (TableKind.FamilyQuestions, ["question"], ["note"]),
    ];

    private static readonly FrozenDictionary<string, Field> Named = new Dictionary<string, Field>
    {
        ["started"] = Field.Started,
        ["given"] = Field.Started,
        ["checked"] = Field.Started,
        ["noticed"] = Field.Started,
        ["due"] = Field.Started,
        ["ended"] = Field.Ended,
        ["earliest"] = Field.Earliest,
        ["latest"] = Field.Latest,
        ["leftlower"] = Field.LeftLower,
        ["leftupper"] = Field.LeftUpper,
        ["leftvibration"] = Field.LeftVibration,
        ["rightlower"] = Field.RightLower,
        ["rightupper"] = Field.RightUpper,
        ["rightvibration"] = Field.RightVibration,
        ["minutes"] = Field.Minutes,
        ["techniques"] = Field.Techniques,
        ["by"] = Field.By,
        ["cough"] = Field.Cough,
        ["secretions"] = Field.Secretions,
        ["colour"] = Field.Colour,
        ["color"] = Field.Colour,
        ["stoppedearly"] = Field.StoppedEarly,
        ["vomited"] = Field.Vomited,
        ["note"] = Field.Note,
        ["ml"] = Field.Millilitres,
        ["route"] = Field.Route,
        ["medicine"] = Field.Medicine,
        ["amount"] = Field.Amount,
        ["spo2"] = Field.SpO2,
        ["pulse"] = Field.Pulse,
        ["oxygen"] = Field.Oxygen,
        ["phase"] = Field.Phase,
        ["sign"] = Field.Sign,
        ["value"] = Field.Value,
        ["reason"] = Field.Reason,
        ["from"] = Field.From,
        ["item"] = Field.Item,
        ["word"] = Field.Word,
        ["means"] = Field.Means,
        ["question"] = Field.Question,
        ["answer"] = Field.Answer,
        ["sourcefile"] = Field.SourceFile,
        ["sourceplace"] = Field.SourcePlace,
        ["sourcetext"] = Field.SourceText,
        ["howread"] = Field.HowRead,
        ["rowid"] = Field.RowId,
    }.ToFrozenDictionary();

    private static readonly HashSet<Field> AnyTable =
        [Field.SourceFile, Field.SourcePlace, Field.SourceText, Field.HowRead, Field.RowId, Field.Earliest, Field.Latest];

    /// <summary>The zero-based column of each field; −1 where the table has none.</summary>
    public int[] ColumnOf { get; } = Columns(Fields);

    /// <summary>The header that a row is; null when it names no table of the contract, or a column that the table does not have.</summary>
    public static CanonicalHeader? Read(GridRow row)
    {
        var names = row.Cells.Select(c => Fold(c.Text)).ToList();
        while (names.Count > 0 && names[^1].Length == 0) names.RemoveAt(names.Count - 1);
        if (names.Count == 0 || names.Any(n => n.Length == 0) || names.Distinct().Count() < names.Count) return null;
        foreach (var (kind, marks, others) in Tables)
        {
            if (!marks.All(m => names.Contains(Fold(m)))) continue;
            var fields = names.Select(n => FieldIn(n, marks, others)).ToList();
            if (!fields.Contains(Field.Unknown) && (fields.Count > 1 || kind == TableKind.FamilyQuestions)) return new CanonicalHeader(kind, fields);
        }

        return null;
    }

    /// <summary>The field that a heading of a review workbook names; <see cref="Field.Unknown"/> for one of its own columns.</summary>
    public static Field FieldOf(string heading) => Named.GetValueOrDefault(Fold(heading), Field.Unknown);

    /// <summary>Lower case, letters and digits only: case, spaces and punctuation of a heading do not matter.</summary>
    public static string Fold(string text) => string.Concat(text.Where(char.IsLetterOrDigit)).ToLowerInvariant();

    private static Field FieldIn(string name, string[] marks, string[] others)
    {
        var field = Named.GetValueOrDefault(name, Field.Unknown);
        return AnyTable.Contains(field) || marks.Concat(others).Any(o => Fold(o) == name) || (name == "color" && others.Contains("colour"))
            ? field == Field.Unknown ? Field.Note : field
            : Field.Unknown;
    }

    private static int[] Columns(IReadOnlyList<Field> fields)
    {
        var columns = new int[Enum.GetValues<Field>().Length];
        Array.Fill(columns, -1);
        for (var i = fields.Count - 1; i >= 0; i--)
            if (fields[i] != Field.Unknown)
                columns[(int)fields[i]] = i;
        return columns;
    }
}
