using System.Text;

namespace CareRecords.Import.Files;

/// <summary>Reads physical lines one by one: each ends with CR LF, LF, CR or the end of the file.</summary>
internal static class PhysicalLines
{
    /// <summary>The longest line kept whole, in characters; the rest of a longer one is dropped and the line is cut.</summary>
    public const int Longest = 1 << 20;

    /// <summary>The lines without their ends. A line end at the very end of the file opens no further line.</summary>
    public static IEnumerable<string> Read(TextReader reader)
    {
        var buffer = new char[1 << 15];
        var rest = new StringBuilder();
        var (started, afterReturn) = (false, false);
        for (int read; (read = reader.Read(buffer, 0, buffer.Length)) > 0;)
        {
            var from = 0;
            while (from < read)
            {
                if (afterReturn)
                {
                    afterReturn = false;
                    if (buffer[from] == '\n')
                    {
                        from++;
                        continue;
                    }
                }

                var at = buffer.AsSpan(from, read - from).IndexOfAny('\r', '\n');
                var piece = at < 0 ? read - from : at;
                if (at < 0)
                {
                    Append(rest, buffer.AsSpan(from, piece));
                    started = true;
                    break;
                }

                if (rest.Length == 0 && piece <= Longest) yield return new string(buffer, from, piece);
                else
                {
                    Append(rest, buffer.AsSpan(from, piece));
                    yield return rest.ToString();
                    rest.Clear();
                }

                started = false;
                afterReturn = buffer[from + at] == '\r';
                from += at + 1;
            }
        }

        if (started) yield return rest.ToString();
    }

    private static void Append(StringBuilder to, ReadOnlySpan<char> piece) =>
        to.Append(piece[..Math.Max(0, Math.Min(piece.Length, Longest - to.Length))]);
}
