using CareRecords.Records;

namespace CareRecords.Import.Reading;

/// <summary>What was written of a session's areas.</summary>
/// <param name="Areas">One entry per side, area and technique.</param>
/// <param name="MinutesWritten">Total minutes where only a total was written; otherwise null.</param>
internal sealed record AreasWritten(IReadOnlyList<AreaMinutes> Areas, double? MinutesWritten);

/// <summary>Reads sides, areas, techniques and minutes: "LLL RLL 3 min ea, LUL RUL 2", "lowers 3+3", "3 each side clap".</summary>
internal static class AreasReader
{
    /// <summary>Reads the whole of <paramref name="text"/> as areas; "3/3/2/2" with no areas named is doubtful.</summary>
    public static Reading<AreasWritten> Read(string text, FamilyWords words)
    {
        // "L up" names the upper part here; among words of notes "up" has other uses.
        var terms = CellTerms.Read(text, words).ConvertAll(t => t is { Kind: TermKind.Word, Text: "up", Meanings.Length: 0 } ? t with { Meanings = [new Meaning(Sense.Area, "upper")] } : t);
        if (terms.Count == 0 || !terms.All(IsOfAreas)) return Reading.Nothing<AreasWritten>();
        var read = AreaGrammar.Read(terms);
        if (terms is [{ Kind: TermKind.Number or TermKind.Quantity, Unit: Unit.None or Unit.Min } total]) return Reading.Certain(new AreasWritten([], total.Number));
        var areas = read.Base.Count > 0 ? AreaChanges.Combine(read.Base, read) : read.Areas;
        if (areas.Count == 0) return Reading.Nothing<AreasWritten>();
        var written = new AreasWritten(areas, null);
        return read.AreasNotNamed ? Reading.Doubtful(written, $"'{text.Trim()}' does not say which sides or areas the minutes are for.") : Reading.Certain(written);
    }

    private static bool IsOfAreas(Term term) => term.Kind switch
    {
        TermKind.Number or TermKind.Range or TermKind.Parts or TermKind.Symbol or TermKind.Times or TermKind.Duration => true,
        TermKind.Quantity => term.Unit is Unit.Min or Unit.Sec or Unit.None,
        TermKind.Word => term.Is(Sense.Side) || term.Is(Sense.Area) || term.Is(Sense.SideArea) || term.Is(Sense.AnyArea) || term.Is(Sense.Each) || term.Is(Sense.EachSide)
            || term.Is(Sense.Technique) || term.Is(Sense.Session) || term.Is(Sense.Spots) || term.Is(Sense.And) || term.Is(Sense.Then) || term.Is(Sense.Only) || term.Is(Sense.Minus)
            || term.Is(Sense.Unit) || term.Is(Sense.Per) || term.Is(Sense.AllDone) || term.Is(Sense.Given) || (term.Is(Sense.After) && term.Text.EndsWith("end", StringComparison.Ordinal)) || term.Text is "l" or "r" or "up" or "at" or "the" or "end" or "on" or "of" or "no" or "with" or "for" or "both" or "w",
        _ => false,
    };
}
