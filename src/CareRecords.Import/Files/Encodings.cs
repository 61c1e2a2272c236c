using System.Security.Cryptography;
using System.Text;

namespace CareRecords.Import.Files;

/// <summary>What one pass over a file's bytes tells.</summary>
/// <param name="Sha256">SHA-256 in lower-case hexadecimal.</param>
/// <param name="Length">Bytes.</param>
/// <param name="Encoding">How its text is written.</param>
/// <param name="EncodingName">The same in words.</param>
/// <param name="LooksBinary">True when the bytes are not text in any encoding known here.</param>
internal sealed record FileSurvey(string Sha256, long Length, Encoding Encoding, string EncodingName, bool LooksBinary);

/// <summary>Tells how a text file is written: by its mark, by its zero bytes, by whether all of it is UTF-8; else Windows-1252.</summary>
internal static class Encodings
{
    private static readonly Encoding Windows1252 = CodePagesEncodingProvider.Instance.GetEncoding(1252)
        ?? throw new InvalidOperationException("Windows-1252 is part of the runtime.");

    /// <summary>Reads the whole file once in pieces: its hash and its encoding.</summary>
    public static FileSurvey Survey(Stream stream)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        var buffer = new byte[1 << 16];
        var utf8 = new Utf8Check();
        var zeros = new ZeroBytes();
        byte[]? head = null;
        long length = 0;
        for (int read; (read = stream.ReadAtLeast(buffer, buffer.Length, throwOnEndOfStream: false)) > 0;)
        {
            var bytes = buffer.AsSpan(0, read);
            head ??= [.. bytes[..Math.Min(4, read)]];
            hash.AppendData(bytes);
            utf8.Take(bytes);
            zeros.Take(bytes, length);
            length += read;
        }

        var (encoding, name) = Decide(head ?? [], utf8.IsValid, zeros);
        return new FileSurvey(Convert.ToHexStringLower(hash.GetHashAndReset()), length, encoding, name,
            zeros.Any && encoding is not UnicodeEncoding and not UTF32Encoding);
    }

    private static (Encoding, string) Decide(ReadOnlySpan<byte> head, bool isUtf8, ZeroBytes zeros) => head switch
    {
        [0xEF, 0xBB, 0xBF, ..] => (new UTF8Encoding(false), "UTF-8 with a mark"),
        [0xFF, 0xFE, 0, 0] => (new UTF32Encoding(false, true), "UTF-32"),
        [0xFF, 0xFE, ..] => (new UnicodeEncoding(false, true), "UTF-16"),
        [0xFE, 0xFF, ..] => (new UnicodeEncoding(true, true), "UTF-16, big-endian"),
        _ when zeros.MostlyOdd => (new UnicodeEncoding(false, false), "UTF-16 without a mark"),
        _ when zeros.MostlyEven => (new UnicodeEncoding(true, false), "UTF-16, big-endian, without a mark"),
        _ when isUtf8 => (new UTF8Encoding(false), "UTF-8"),
        _ => (Windows1252, "Windows-1252"),
    };

    // English text in UTF-16 has a zero in every second byte; a text in bytes has none.
    private struct ZeroBytes
    {
        private long _odd, _even, _length;

        public readonly bool Any => _odd + _even > 0;

        public readonly bool MostlyOdd => _odd > _length / 5 && _even < _odd / 20;

        public readonly bool MostlyEven => _even > _length / 5 && _odd < _even / 20;

        public void Take(ReadOnlySpan<byte> bytes, long offset)
        {
            _length += bytes.Length;
            for (var from = 0; bytes[from..].IndexOf((byte)0) is var at and >= 0; from += at + 1)
                if (((offset + from + at) & 1) == 0) _even++;
                else _odd++;
        }
    }

    // A character may be split between two pieces: the decoder keeps the rest.
    private sealed class Utf8Check
    {
        private readonly Decoder _decoder = new UTF8Encoding(false, throwOnInvalidBytes: true).GetDecoder();
        private readonly char[] _chars = new char[(1 << 16) + 8];

        public bool IsValid { get; private set; } = true;

        public void Take(ReadOnlySpan<byte> bytes)
        {
            if (!IsValid) return;
            try
            {
                _decoder.GetChars(bytes, _chars, flush: false);
            }
            catch (DecoderFallbackException)
            {
                IsValid = false;
            }
        }
    }
}
