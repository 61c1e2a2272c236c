using System.Buffers;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace CareRecords.Pooling;

/// <summary>All shared tables, and the way back from their rows.</summary>
public static class SharedTables
{
    private const int WordsAtOnce = 8192;

    /// <summary>The tables in order.</summary>
    public static IReadOnlyList<SharedTable> All { get; } =
    [
        ChildTable.Table, SmallTables.Plan, SessionTable.Table, DayTable.Table, EpisodeTable.Table, StepTable.Table, SmallTables.Saturations, SmallTables.Completeness,
    ];

    /// <summary>A child from the rows of its tables.</summary>
    /// <param name="rowsOf">The rows of a table; whole numbers may come as <see cref="double"/>.</param>
    /// <exception cref="InvalidDataException">A cell is not what its column says; the message names table, row and column and holds none of the file's own words.</exception>
    public static SharedFindings Assemble(Func<SharedTable, IEnumerable<object?[]>> rowsOf)
    {
        ArgumentNullException.ThrowIfNull(rowsOf);
        var children = ChildTable.Table.Read(rowsOf(ChildTable.Table));
        if (children.Count != 1) throw new InvalidDataException("table \"child\" does not have exactly one row");
        return new SharedFindings
        {
            Child = children[0],
            Plan = SmallTables.Plan.Read(rowsOf(SmallTables.Plan)),
            Sessions = SessionTable.Table.Read(rowsOf(SessionTable.Table)),
            Days = DayTable.Table.Read(rowsOf(DayTable.Table)),
            Episodes = EpisodeTable.Table.Read(rowsOf(EpisodeTable.Table)),
            Steps = StepTable.Table.Read(rowsOf(StepTable.Table)),
            Saturations = SmallTables.Saturations.Read(rowsOf(SmallTables.Saturations)),
            Completeness = SmallTables.Completeness.Read(rowsOf(SmallTables.Completeness)),
        };
    }

    /// <summary>
    /// The seal: SHA-256 over every cell of every table, in lower-case hexadecimal digits. It shows that a file was changed; it does not stop someone
    /// who means to forge one, for anybody can work it out.
    /// </summary>
    public static string Seal(SharedFindings findings) => SealAndFingerprint(findings).Seal;

    /// <summary>The seal, and the same without the child's own row: two codes with one fingerprint are one child's records shared twice.</summary>
    internal static (string Seal, string Fingerprint) SealAndFingerprint(SharedFindings findings)
    {
        ArgumentNullException.ThrowIfNull(findings);
        using var seal = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        using var fingerprint = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        // A few rows at a time: the words of a long child's tables in one piece would be collected with the oldest memory only.
        var words = new ArrayBufferWriter<byte>(2 * WordsAtOnce);
        foreach (var table in All)
        {
            Append(words, table.Name);
            words.Write("\n"u8);
            foreach (var row in table.Rows(findings))
            {
                foreach (var cell in row)
                {
                    Append(words, cell);
                    words.Write("\t"u8);
                }

                words.Write("\n"u8);
                if (words.WrittenCount > WordsAtOnce) Hash(table);
            }

            Hash(table);
        }

        return (Convert.ToHexStringLower(seal.GetHashAndReset()), Convert.ToHexStringLower(fingerprint.GetHashAndReset()));

        void Hash(SharedTable of)
        {
            seal.AppendData(words.WrittenSpan);
            if (of != ChildTable.Table) fingerprint.AppendData(words.WrittenSpan);
            words.ResetWrittenCount();
        }
    }

    private static void Append(ArrayBufferWriter<byte> words, object? cell)
    {
        switch (cell)
        {
            case null:
                break;
            case bool value:
                words.Write(value ? "true"u8 : "false"u8);
                break;
            case IUtf8SpanFormattable number:
                number.TryFormat(words.GetSpan(32), out var written, default, CultureInfo.InvariantCulture);
                words.Advance(written);
                break;
            default:
                Encoding.UTF8.GetBytes((string)cell, words);
                break;
        }
    }
}
