namespace CareRecords.Import.Reading;

/// <summary>Terms of a short text that stands alone, such as a cell.</summary>
internal static class CellTerms
{
    [ThreadStatic]
    private static TermReader? _plain;

    /// <summary>The vocabulary built into the assembly.</summary>
    public static Vocabulary Vocabulary { get; } = new();

    /// <summary>Terms without the family's words.</summary>
    public static List<Term> Read(string text) => Plain.Read(text);

    /// <summary>Terms before times and quantities are put together.</summary>
    public static List<Term> Raw(string text) => Plain.Raw(text);

    /// <summary>Terms of a cell that holds a measure: no number in it is a time ("1200" is millilitres).</summary>
    public static List<Term> Measure(string text) => QuantityGrammar.Reduce(Plain.Raw(text));

    /// <summary>Terms with the family's words.</summary>
    public static List<Term> Read(string text, FamilyWords words) => words.All.Count == 0 ? Read(text) : new TermReader(Vocabulary, words).Read(text);

    private static TermReader Plain => _plain ??= new TermReader(Vocabulary, FamilyWords.None);
}
