using CareRecords.Import.Reading;

namespace CareRecords.Import.Notes;

/// <summary>What two numbers joined by a stroke ("96/88") are in a source.</summary>
internal enum PairMeaning
{
    /// <summary>Nothing tells.</summary>
    Unknown,

    /// <summary>Before and after a session.</summary>
    Phase,

    /// <summary>Before and after a session where a stroke joins them; numbers with a dash may be a range.</summary>
    PhaseByStroke,

    /// <summary>A saturation and a pulse.</summary>
    Pulse,

    /// <summary>The lowest and highest of several readings.</summary>
    Range,
}

/// <summary>
/// Decides what joined numbers mean from the whole source: a key says it ("obs = sats/pulse"), or the numbers do, where again and again the second
/// cannot be a saturation.
/// </summary>
internal static partial class PairMeanings
{
    private const int LeastEvidence = 2;
    // Enough to know a family's way of writing.
    private const int MostLines = 2_000;
    private const int LeastSaturation = 80;
    private const int MostSaturation = 100;
    private const int LeastPulse = 40;
    private const int MostPulse = 220;

    /// <summary>The meaning of pairs in a text.</summary>
    public static PairMeaning Of(IReadOnlyList<string> lines)
    {
        var (pulse, pairs, phases, pulses, seen) = (0, 0, 0, 0, 0);
        foreach (var line in lines)
        {
            if (IsKey(line)) return PairMeaning.Pulse;
            if (IsPhaseKey(line)) return PairMeaning.PhaseByStroke;
            if (seen++ < MostLines)
            {
                if (Phases().IsMatch(line)) phases++;
                if (Pulses().IsMatch(line)) pulses++;
            }
            foreach (var (first, second) in Pairs(line))
            {
                if (first is < LeastSaturation or > MostSaturation || second is < LeastPulse or > MostPulse) continue;
                pairs++;
                if (second is > MostSaturation or < LeastSaturation) pulse++;
            }
        }
        if (pulse >= LeastEvidence && pulse * 5 >= pairs) return PairMeaning.Pulse;
        // Where the family writes before and after again and again, and never a pulse, two saturations are these.
        return pulse == 0 && pulses == 0 && phases >= LeastEvidence ? PairMeaning.PhaseByStroke : PairMeaning.Unknown;
    }

    /// <summary>Numbers with room around the stroke between them ("97 / 88") as one term, as they are without it.</summary>
    public static List<Term> Joined(List<Term> terms)
    {
        for (var i = 0; i + 2 < terms.Count; i++)
            if (terms[i] is { Kind: TermKind.Number, IsWhole: true, Number: >= LeastSaturation and <= MostSaturation } first && terms[i + 1].IsSymbol("/") && terms[i + 2] is { Kind: TermKind.Number, IsWhole: true, Number: >= LeastPulse and <= MostPulse } second
                && !(i > 0 && terms[i - 1].IsSymbol("/")) && !(i + 3 < terms.Count && terms[i + 3].IsSymbol("/")))
                terms = [.. terms.Take(i), first with { Kind = TermKind.Parts, Parts = [first.Number, second.Number], Text = first.Text + "/" + second.Text, End = second.End, Clock = null }, .. terms.Skip(i + 3)];
        return terms;
    }

    /// <summary>Whether a line says that two saturations with a stroke between are those before and after a session.</summary>
    public static bool IsPhaseKey(string line) => line.Length <= 400 && line.Contains('/') && PhaseKey().IsMatch(line);

    [System.Text.RegularExpressions.GeneratedRegex(@"\b(?:sat\w*|spo2)\s*(?:\w\s?/\s?\w\s?=\s?)?(?:[^.;=]{0,25}?(?:\bis|\bare|=)\s)?\(?(before|bef|b4|b|pre)(?: \w+)?\s?/\s?(after|aft|a|post)\b", System.Text.RegularExpressions.RegexOptions.IgnoreCase | System.Text.RegularExpressions.RegexOptions.CultureInvariant)]
    private static partial System.Text.RegularExpressions.Regex PhaseKey();

    [System.Text.RegularExpressions.GeneratedRegex(@"\b(9\d|8\d)\s?%?\s*(before|b4|pre)\b.*\b(after|aft|post)\b|\b(before|b4|pre)\s*(9\d|8\d)\b.*\b(after|aft|post)\b", System.Text.RegularExpressions.RegexOptions.IgnoreCase | System.Text.RegularExpressions.RegexOptions.CultureInvariant)]
    private static partial System.Text.RegularExpressions.Regex Phases();

    [System.Text.RegularExpressions.GeneratedRegex(@"\b(hr|pulse|bpm|heart rate|pr)\b", System.Text.RegularExpressions.RegexOptions.IgnoreCase | System.Text.RegularExpressions.RegexOptions.CultureInvariant)]
    private static partial System.Text.RegularExpressions.Regex Pulses();

    // "sats/pulse", "SpO2 / HR"
    private static bool IsKey(string line)
    {
        var stroke = line.IndexOf('/', StringComparison.Ordinal);
        if (stroke <= 0 || line.Length > 200 || !WordsAround(line, stroke)) return false;
        var terms = CellTerms.Read(line);
        // "/ hr" is one word of the vocabulary: an hour's rate, or the pulse after a saturation.
        if (Enumerable.Range(1, Math.Max(0, terms.Count - 1)).Any(i => terms[i - 1].Is(Sense.SatLabel) && terms[i].Text is "/ hr" or "/hr")) return true;
        for (var i = 0; i + 2 < terms.Count; i++)
            if (terms[i + 1].IsSymbol("/") && terms[i].Is(Sense.SatLabel) && (terms[i + 2].Is(Sense.PulseLabel) || terms[i + 2].Text is "hr" or "pr" or "p" or "bpm")) return true;
        return false;
    }

    private static bool WordsAround(string line, int stroke)
    {
        var (from, to) = (stroke - 1, stroke + 1);
        while (from >= 0 && line[from] == ' ') from--;
        while (to < line.Length && line[to] == ' ') to++;
        return from >= 0 && to < line.Length && char.IsLetterOrDigit(line[from]) && char.IsLetter(line[to]);
    }

    // Numbers of two or three digits on both sides of a stroke, with no third beside them (a date has three).
    private static IEnumerable<(int First, int Second)> Pairs(string line)
    {
        for (var stroke = line.IndexOf('/', StringComparison.Ordinal); stroke > 0; stroke = line.IndexOf('/', stroke + 1))
        {
            var (from, to) = (stroke, stroke + 1);
            while (from > 0 && char.IsAsciiDigit(line[from - 1])) from--;
            while (to < line.Length && char.IsAsciiDigit(line[to])) to++;
            if (stroke - from is < 2 or > 3 || to - stroke - 1 is < 2 or > 3 || (to < line.Length && line[to] == '/') || (from > 0 && line[from - 1] == '/')) continue;
            yield return (int.Parse(line.AsSpan(from, stroke - from), System.Globalization.CultureInfo.InvariantCulture), int.Parse(line.AsSpan(stroke + 1, to - stroke - 1), System.Globalization.CultureInfo.InvariantCulture));
        }
    }
}
