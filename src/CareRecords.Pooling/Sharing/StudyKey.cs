using System.Security.Cryptography;

namespace CareRecords.Pooling;

/// <summary>The secret from which child codes are made. It is kept in a file of its own by whoever runs the study and is never part of a shared workbook.</summary>
public static class StudyKey
{
    /// <summary>The fewest bytes that a key may have.</summary>
    public const int LeastBytes = 16;

    /// <summary>A new key: 32 random bytes.</summary>
    public static byte[] Make() => RandomNumberGenerator.GetBytes(32);

    /// <summary>The text of a key file: one line of hexadecimal digits.</summary>
    public static string ToText(byte[] key) => Convert.ToHexStringLower(key) + "\n";

    /// <summary>Reads the text of a key file; space and line ends around the digits do not matter.</summary>
    /// <returns>False when it is not at least <see cref="LeastBytes"/> bytes in hexadecimal digits.</returns>
    public static bool TryRead(string text, out byte[] key)
    {
        ArgumentNullException.ThrowIfNull(text);
        var digits = text.Trim();
        var well = digits.Length >= 2 * LeastBytes && digits.Length % 2 == 0 && digits.All(char.IsAsciiHexDigit);
        key = well ? Convert.FromHexString(digits) : [];
        return well;
    }
}
