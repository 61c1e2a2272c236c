using System.Text;

namespace CareRecords.Workbooks.Tests.Shared;

/// <summary>The ways in which words could lie hidden in bytes.</summary>
internal static class Disguises
{
    /// <summary>Every byte sequence under which a text is looked for, with its name.</summary>
    public static IEnumerable<(string Name, byte[] Bytes)> Of(string text)
    {
        foreach (var (how, worn) in Spellings(text))
        {
            yield return (how, Encoding.UTF8.GetBytes(worn));
            yield return (how + ", UTF-16 little end first", Encoding.Unicode.GetBytes(worn));
            yield return (how + ", UTF-16 big end first", Encoding.BigEndianUnicode.GetBytes(worn));
            yield return (how + ", UTF-32", Encoding.UTF32.GetBytes(worn));
            yield return (how + ", hexadecimal", Encoding.ASCII.GetBytes(Convert.ToHexStringLower(Encoding.UTF8.GetBytes(worn))));
            yield return (how + ", HEXADECIMAL", Encoding.ASCII.GetBytes(Convert.ToHexString(Encoding.UTF8.GetBytes(worn))));
            foreach (var inner in Base64(Encoding.UTF8.GetBytes(worn))) yield return (how + ", base64", inner);
            foreach (var inner in Base64(Encoding.Unicode.GetBytes(worn))) yield return (how + ", base64 of UTF-16", inner);
        }
    }

    private static IEnumerable<(string, string)> Spellings(string text)
    {
        yield return ("as written", text);
        yield return ("lower case", text.ToLowerInvariant());
        yield return ("upper case", text.ToUpperInvariant());
        yield return ("reversed", new string([.. text.Reverse()]));
        yield return ("percent escapes", Uri.EscapeDataString(text));
        yield return ("letters moved by 13", new string([.. text.Select(Moved)]));
        yield return ("without spaces", text.Replace(" ", "", StringComparison.Ordinal));
    }

    /// <summary>The part of the base64 text that is the same wherever the bytes stand in a longer run, for each of the three places.</summary>
    private static IEnumerable<byte[]> Base64(byte[] bytes)
    {
        for (var shift = 0; shift < 3; shift++)
        {
            var whole = Convert.ToBase64String([.. new byte[shift], .. bytes]);
            var from = shift == 0 ? 0 : 4;
            var length = ((shift + bytes.Length) / 3 * 4) - from;
            if (length >= 8) yield return Encoding.ASCII.GetBytes(whole.Substring(from, length));
        }
    }

    private static char Moved(char c) => c switch
    {
        >= 'a' and <= 'z' => (char)('a' + ((c - 'a' + 13) % 26)),
        >= 'A' and <= 'Z' => (char)('A' + ((c - 'A' + 13) % 26)),
        _ => c,
    };
}
