using System.Globalization;
using CareRecords.Import.Notes;

namespace CareRecords.Import.Tests.Notes;

/// <summary>How a reading of notes compares with the reading that was fixed before: events found, records true, values right, none swallowed.</summary>
internal sealed class ReadingScore
{
    public int Expected { get; private set; }

    public int Found { get; private set; }

    public int Read { get; private set; }

    public int True { get; private set; }

    public int Values { get; private set; }

    public int ValuesRight { get; private set; }

    public int Asks { get; private set; }

    public int Asked { get; private set; }

    public int Swallowed { get; private set; }

    public int AskedInVain { get; private set; }

    public List<string> Wrong { get; } = [];

    public double FoundShare => Share(Found, Expected);

    public double TrueShare => Share(True, Read);

    public double ValuesShare => Share(ValuesRight, Values);

    private static double Share(int part, int whole) => whole == 0 ? 1 : (double)part / whole;

    /// <summary>Compares a reading with what was expected of it.</summary>
    public static ReadingScore Of(NotesReading reading, IReadOnlyList<ExpectedReading> expected, IReadOnlyCollection<int> askedLines)
    {
        var score = new ReadingScore();
        var left = reading.Entries.ToList();
        var problems = reading.Problems.Select(p => p.Source.Line!.Value).ToHashSet();
        var records = expected.Where(e => !e.IsAsk).OrderBy(e => e.Optional).ToList();
        var taken = new HashSet<ExpectedReading>();
        foreach (var nearby in new[] { true, false })
            foreach (var wanted in records)
            {
                if (taken.Contains(wanted)) continue;
                var found = left.Where(e => wanted.Is(e) && (!nearby || e.Sources.Any(s => s.Line == wanted.Line))).MinBy(e => wanted.Values(e).Count(v => !v.Right));
                if (found is null) continue;
                left.Remove(found);
                taken.Add(wanted);
                if (!wanted.Optional) { score.Expected++; score.Found++; }
                score.Read++;
                score.True++;
                foreach (var (name, right) in wanted.Values(found))
                {
                    score.Values++;
                    if (right) score.ValuesRight++;
                    else score.Wrong.Add($"line {wanted.Line} {name}: {ExpectedReading.Show(found)} but expected {wanted}");
                }
            }
        foreach (var wanted in records.Where(r => !taken.Contains(r) && !r.Optional))
        {
            score.Expected++;
            if (!problems.Contains(wanted.Line)) { score.Swallowed++; score.Wrong.Add($"line {wanted.Line} SWALLOWED: {wanted}"); }
            else score.Wrong.Add($"line {wanted.Line} missed (but asked): {wanted}");
        }
        foreach (var extra in left) { score.Read++; score.Wrong.Add($"line {extra.Sources[0].Line} not expected: {ExpectedReading.Show(extra)}"); }
        var asks = expected.Where(e => e.IsAsk).Select(e => e.Line).Concat(askedLines).ToList();
        score.Asks = asks.Count;
        foreach (var ask in asks)
            if (problems.Contains(ask)) score.Asked++; else score.Wrong.Add($"line {ask} not asked about");
        foreach (var vain in problems.Where(p => !asks.Contains(p))) { score.AskedInVain++; score.Wrong.Add($"line {vain} asked in vain: {reading.Problems.First(p => p.Source.Line == vain).Why}"); }
        return score;
    }

    public void Add(ReadingScore other)
    {
        Expected += other.Expected; Found += other.Found; Read += other.Read; True += other.True; Values += other.Values; ValuesRight += other.ValuesRight;
        Asks += other.Asks; Asked += other.Asked; Swallowed += other.Swallowed; AskedInVain += other.AskedInVain;
    }

    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"found {Found}/{Expected} = {FoundShare:P1}, true {True}/{Read} = {TrueShare:P1}, values {ValuesRight}/{Values} = {ValuesShare:P1}, asked {Asked}/{Asks}, in vain {AskedInVain}, swallowed {Swallowed}");
}
