namespace CareRecords.Import.Tables.Layouts;

/// <summary>Applies the family's answers to what a column holds.</summary>
internal static class ColumnAnswers
{
    /// <summary>The block with answered columns read as if the answer were their heading.</summary>
    public static Block Applied(Block block, string file, IReadOnlyDictionary<string, string> answers)
    {
        if (!answers.Keys.Any(k => k.StartsWith("column:", StringComparison.Ordinal))) return block;
        return block with { Columns = [.. block.Columns.Select((c, i) => Applied(c, i, file, answers))] };
    }

    private static ColumnMeaning Applied(ColumnMeaning column, int index, string file, IReadOnlyDictionary<string, string> answers)
    {
        var called = column.Heading.Length > 0 ? column.Heading : "column " + Place.CellName(index, 0).TrimEnd('0');
        if (!answers.TryGetValue(LeftOvers.Question(file, called), out var answer)) return column;
        if (answer.StartsWith("no", StringComparison.OrdinalIgnoreCase) && !answer.StartsWith("note", StringComparison.OrdinalIgnoreCase)) return column with { Role = Role.Ignore };
        return HeadingReader.Read(answer) with { Heading = column.Heading, Group = column.Group, Half = column.Half };
    }
}
