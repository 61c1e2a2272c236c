using System.Security.Cryptography;
using System.Text;

namespace CareRecords.Pooling;

/// <summary>
/// The code under which a child's shared workbook goes: 32 hexadecimal digits, drawn at random or by a keyed hash (HMAC-SHA-256) whose key
/// stays with whoever made it. Without the key the code says nothing of the words it was made from, and cannot be made again by trying names.
/// </summary>
public readonly record struct ChildCode
{
    private const int Bytes = 16;

    private ChildCode(string text) => Text = text;

    /// <summary>32 lower-case hexadecimal digits.</summary>
    public string Text { get => field ?? new string('0', 2 * Bytes); }

    /// <summary>A code that nobody can make again: another one each time.</summary>
    public static ChildCode Random() => new(Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(Bytes)));

    /// <summary>
    /// The code that belongs to a key and a family's own identifier: the first 128 bits of HMAC-SHA-256 over the identifier, with case and
    /// surrounding space evened out. Same key and identifier, same code; an accented letter must be typed the same way each time.
    /// </summary>
    /// <param name="key">The study key, at least 16 bytes.</param>
    /// <param name="familyIdentifier">What tells this child from others within the study; never stored.</param>
    /// <exception cref="ArgumentException">The key is too short or the identifier is blank.</exception>
    public static ChildCode FromKey(byte[] key, string familyIdentifier)
    {
        ArgumentNullException.ThrowIfNull(key);
        ArgumentException.ThrowIfNullOrWhiteSpace(familyIdentifier);
        if (key.Length < StudyKey.LeastBytes)
            throw new ArgumentException($"A study key has at least {StudyKey.LeastBytes} bytes.", nameof(key));
        var evened = familyIdentifier.Trim().ToLowerInvariant();
        return new(Convert.ToHexStringLower(HMACSHA256.HashData(key, Encoding.UTF8.GetBytes(evened)).AsSpan(0, Bytes)));
    }

    /// <summary>Reads a code as written in a shared workbook.</summary>
    /// <returns>False when the text is not 32 lower-case hexadecimal digits.</returns>
    public static bool TryRead(string? text, out ChildCode code)
    {
        var well = text is { Length: 2 * Bytes } && text.All(char.IsAsciiHexDigitLower);
        code = well ? new(text!) : default;
        return well;
    }

    /// <summary>The text.</summary>
    public override string ToString() => Text;
}
