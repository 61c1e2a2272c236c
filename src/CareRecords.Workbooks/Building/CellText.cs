using System.Globalization;
using System.Text;

namespace CareRecords.Workbooks.Building;

/// <summary>Words made fit for a cell: nothing vanishes, nothing becomes a formula.</summary>
internal static class CellText
{
    /// <summary>The most characters a cell can hold.</summary>
    public const int Limit = 32_767;

    /// <summary>
    /// Characters that XML cannot hold are shown by their Unicode pictures (␀ … ␟) or as [U+FFFE]; line breaks and tabs stay.
    /// Words over the limit are cut where the cell ends, and the cell says so and how many characters there were.
    /// </summary>
    public static string Fit(string words)
    {
        var shown = ShowControls(words);
        if (shown.Length <= Limit) return shown;
        var remark = string.Create(CultureInfo.InvariantCulture, $" … [cut here: {shown.Length} characters were written, a cell holds {Limit}; the rest is in the file itself]");
        var keep = Limit - remark.Length;
        if (char.IsHighSurrogate(shown[keep - 1])) keep--;
        return shown[..keep] + remark;
    }

    /// <summary>Whether a spreadsheet program might take the words for a formula when they are typed again.</summary>
    public static bool LooksLikeFormula(string words) =>
        words.Length > 0 && (words.TrimStart(' ', '\u00a0') is [var first, ..] && "=+-@'".Contains(first, StringComparison.Ordinal) || words[0] is '\t' or '\r' or '\n');

    private static string ShowControls(string words)
    {
        var clean = true;
        for (var i = 0; i < words.Length && clean; i++) clean = IsPlain(words, i);
        if (clean) return words;
        var shown = new StringBuilder(words.Length);
        for (var i = 0; i < words.Length; i++)
        {
            var c = words[i];
            if (c == '\r') shown.Append(i + 1 < words.Length && words[i + 1] == '\n' ? "" : "\n");
            else if (IsPlain(words, i)) shown.Append(c);
            else if (c < ' ') shown.Append((char)('\u2400' + c));
            else if (c == '\u007f') shown.Append('\u2421');
            else shown.Append(CultureInfo.InvariantCulture, $"[U+{(int)c:X4}]");
        }

        return shown.ToString();
    }

    private static bool IsPlain(string words, int i) => words[i] switch
    {
        '\t' or '\n' => true,
        '\r' or '\u007f' or '\ufffe' or '\uffff' => false,
        < ' ' => false,
        >= '\u0080' and <= '\u009f' => false,
        var c when char.IsHighSurrogate(c) => i + 1 < words.Length && char.IsLowSurrogate(words[i + 1]),
        var c when char.IsLowSurrogate(c) => i > 0 && char.IsHighSurrogate(words[i - 1]),
        _ => true,
    };
}
