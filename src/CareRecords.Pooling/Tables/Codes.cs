using System.Collections.Frozen;
using System.Text;

namespace CareRecords.Pooling;

/// <summary>The written codes of a closed list: the member's name in lower case with hyphens ("ByRecord" is "by-record").</summary>
internal static class Codes<TCode>
    where TCode : struct, Enum
{
    private static readonly FrozenDictionary<TCode, string> Written = Enum.GetValues<TCode>().ToFrozenDictionary(code => code, code => Hyphenated(code.ToString()));
    private static readonly FrozenDictionary<string, TCode> Read = Written.ToFrozenDictionary(pair => pair.Value, pair => pair.Key);

    public static IReadOnlyList<string> All { get; } = [.. Enum.GetValues<TCode>().Select(code => Written[code])];

    public static string Of(TCode code) => Written[code];

    public static bool TryRead(string text, out TCode code) => Read.TryGetValue(text, out code);

    private static string Hyphenated(string name)
    {
        var text = new StringBuilder();
        foreach (var letter in name)
        {
            if (char.IsUpper(letter) && text.Length > 0) text.Append('-');
            text.Append(char.ToLowerInvariant(letter));
        }

        return text.ToString();
    }
}
