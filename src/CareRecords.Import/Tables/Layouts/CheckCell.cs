using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>One saturation of a cell with what stands beside it; the saturation is null where it was refused and the rest stands.</summary>
internal sealed record CellCheck(SaturationWritten? Saturation, double? Oxygen, CheckPhase Phase)
{
    /// <summary>The pulse beside it, beats a minute; null when none is written.</summary>
    public double? Pulse { get; init; }
}

/// <summary>Reads cells of saturations with their phase or oxygen: "b93 a95", "93 (0.5L)", "94@0", "93 → 95", "92 in air".</summary>
internal static partial class CheckCell
{
    // Below this a home oximeter's figure is more likely a slip or a slipped probe (chosen by CareRecords).
    private const double LowestUnasked = 50;

    /// <summary>The readings of one part of a cell; null when it holds anything else. Impossible ones are told to <paramref name="refuse"/>.</summary>
    public static IReadOnlyList<CellCheck>? Read(string text, Action<string> refuse)
    {
        text = text.Trim();
        // "90 pre / 94 post, on 0.5 L": the flow at the end is of all.
        if (text.LastIndexOf(',') is > 0 and var comma && comma + 1 < text.Length && text[comma + 1] == ' ' && text[(comma + 1)..].Trim() is var last && (last.Any(char.IsLetter) || last.StartsWith("on ", StringComparison.OrdinalIgnoreCase)) && OxygenReader.Read(last).TryGet(out var end) && PulseIn(last) is null
            && Read(text[..comma], refuse) is { Count: > 0 } readings && readings.All(b => b.Oxygen is null)) return [.. readings.Select(b => b with { Oxygen = end })];
        if (One(text, CheckPhase.None, refuse) is { } one) return one;
        foreach (var arrow in new[] { "→", "->", "=>", ">", " then " })
        {
            // "95→", "→97": only the one before, only the one after.
            if (text.EndsWith(arrow, StringComparison.Ordinal) && One(text[..^arrow.Length].Trim(), CheckPhase.Before, refuse) is { } onlyBefore) return onlyBefore;
            if (text.StartsWith(arrow, StringComparison.Ordinal) && One(text[arrow.Length..].Trim(), CheckPhase.After, refuse) is { } onlyAfter) return onlyAfter;
            var sides = text.Split(arrow, StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
            if (sides.Length == 2 && One(sides[0], CheckPhase.Before, refuse) is { } before && One(sides[1], CheckPhase.After, refuse) is { } after)
                // "91 → 93 on ½ L": the flow at the end is of both.
                return [.. after is [{ Oxygen: { } flow }] ? before.Select(b => b with { Oxygen = b.Oxygen ?? flow }) : before, .. after];
        }

        return ByPieces(text, refuse) ?? ByPhase(text, refuse);
    }

    /// <summary>The pulse that words name and nothing else: "HR 112", "pulse 128"; null for other words.</summary>
    public static double? PulseIn(string text) => text.Any(char.IsLetter) && Pulse(ref text) is { } beats && text.Length == 0 ? beats : null;

    private static List<CellCheck>? One(string text, CheckPhase phase, Action<string> refuse)
    {
        var (number, beside) = Apart(text);
        if (number.Length == 0) return null;
        double? oxygen = null;
        var pulse = Pulse(ref beside);
        // "91/93" is two saturations, of which nothing here says when each was.
        if (beside.Length is 2 or 3 && beside.All(char.IsAsciiDigit) && SaturationReader.Read(beside).TryGet(out var second) && second.Percent >= LowestUnasked) return null;
        if (beside.Length > 0)
        {
            var flow = OxygenReader.Read(beside);
            if (flow.Outcome == Outcome.Impossible) refuse(flow.Why ?? $"'{beside}' cannot be an oxygen flow.");
            else if (!flow.TryGet(out var litres)) return null;
            else oxygen = litres;
        }

        var saturation = SaturationReader.Read(number);
        if (saturation.TryGet(out var read) && read.Percent < LowestUnasked)
        {
            refuse($"A saturation of {number} may be a slip of the pen.");
            return Rest(oxygen, pulse, phase);
        }

        if (saturation.TryGet(out read)) return [new CellCheck(read, oxygen, phase) { Pulse = pulse }];
        if (saturation.Outcome != Outcome.Impossible) return null;
        refuse(saturation.Why ?? $"'{number}' cannot be a saturation.");
        return Rest(oxygen, pulse, phase);
    }

    private static List<CellCheck> Rest(double? oxygen, double? pulse, CheckPhase phase) =>
        oxygen is null && pulse is null ? [] : [new CellCheck(null, oxygen, phase) { Pulse = pulse }];

    // "pulse 128", "hr 112", "118 bpm", and a bare number over 100 set off by a stroke: taken out of what stands beside the saturation.
    private static double? Pulse(ref string beside)
    {
        var found = PulseWritten().Match(beside);
        if (!found.Success) return null;
        var number = found.Groups[1].Success ? found.Groups[1].Value : found.Groups[2].Success ? found.Groups[2].Value : found.Groups[3].Value;
        if (!PulseReader.Read(number).TryGet(out var beats)) return null;
        beside = (beside[..found.Index] + " " + beside[(found.Index + found.Length)..]).Trim(' ', '@', '(', ')', ',', ';', '/', '[', ']');
        foreach (var word in new[] { "on ", "in ", "with ", "and " })
            if (beside.StartsWith(word, StringComparison.OrdinalIgnoreCase))
                beside = beside[word.Length..].TrimStart();
        return beats;
    }

    [System.Text.RegularExpressions.GeneratedRegex(@"(?:pulse|puls|hr|heart rate|heart|bpm|p)[\s:=]*(\d{2,3})\b(?:\s*bpm)?|\b(\d{2,3})\s*(?:bpm|beats)|^(1\d\d|2[0-4]\d)$", System.Text.RegularExpressions.RegexOptions.IgnoreCase)]
    private static partial System.Text.RegularExpressions.Regex PulseWritten();

    // "93 (0.5L)" is 93 and "0.5L"; "94@0" is 94 and "0"; "92 on air" is 92 and "air".
    private static (string Number, string Beside) Apart(string text)
    {
        var end = 0;
        while (end < text.Length && (char.IsAsciiDigit(text[end]) || text[end] is '%' or '-' or '–' or '.' || (text[end] == ',' && end + 1 < text.Length && char.IsAsciiDigit(text[end + 1])))) end++;
        var beside = text[end..].Trim(' ', '@', '(', ')', ',', '/', '[', ']');
        foreach (var word in new[] { "on ", "in ", "with ", "at " })
            if (beside.StartsWith(word, StringComparison.OrdinalIgnoreCase))
                beside = beside[word.Length..].TrimStart();
        return (text[..end], beside);
    }

    // "92 before, 95 after", "93/120 before and 95/116 after": a word of phase behind each number.
    private static List<CellCheck>? ByPieces(string text, Action<string> refuse)
    {
        var pieces = text.Split([",", ";", "\n", " and ", " then "], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        var checks = new List<CellCheck>();
        foreach (var piece in pieces)
        {
            var space = piece.LastIndexOf(' ');
            if (space < 0 || SmallWords.ReadPhase(piece[(space + 1)..]) is not { } phase || One(piece[..space], phase, refuse) is not { } check) return null;
            checks.AddRange(check);
        }

        return checks.Count > 0 ? checks : null;
    }

    // "b93 a95", "before 93, after 95", "pre 93 post 95": a word of phase before each number.
    private static List<CellCheck>? ByPhase(string text, Action<string> refuse)
    {
        var checks = new List<CellCheck>();
        var phase = CheckPhase.None;
        foreach (var word in Spaced(text).Split([' ', ',', ':', '=', '/'], StringSplitOptions.RemoveEmptyEntries))
        {
            if (PhaseOf(word) is { } named) phase = named;
            else if (phase != CheckPhase.None && One(word, phase, refuse) is { } check) checks.AddRange(check);
            else return null;
        }

        return phase == CheckPhase.None ? null : checks;
    }

    private static CheckPhase? PhaseOf(string word) => word.ToLowerInvariant() switch
    {
        "b" or "bf" => CheckPhase.Before,
        "a" or "af" => CheckPhase.After,
        var other => SmallWords.ReadPhase(other),
    };

    // "b93" becomes "b 93".
    private static string Spaced(string text)
    {
        var spaced = new System.Text.StringBuilder();
        for (var i = 0; i < text.Length; i++)
        {
            if (i > 0 && char.IsAsciiDigit(text[i]) && char.IsLetter(text[i - 1]) && !(text[i] == '4' && text[i - 1] is 'b' or 'B')) spaced.Append(' ');
            spaced.Append(text[i]);
        }

        return spaced.ToString();
    }
}
