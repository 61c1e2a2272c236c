using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace CareRecords.Pooling;

/// <summary>All shared tables, and the way back from their rows.</summary>
public static class SharedTables
{
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
    public static string Seal(SharedFindings findings) => Hash(findings, All);

    /// <summary>The same without the child's own row: two codes with one fingerprint are one child's records shared twice.</summary>
    internal static string Fingerprint(SharedFindings findings) => Hash(findings, All.Skip(1));

    private static string Hash(SharedFindings findings, IEnumerable<SharedTable> tables)
    {
        ArgumentNullException.ThrowIfNull(findings);
        var text = new StringBuilder();
        foreach (var table in tables)
        {
            text.Append(table.Name).Append('\n');
            foreach (var row in table.Rows(findings))
            {
                foreach (var cell in row) Append(text, cell).Append('\t');
                text.Append('\n');
            }
        }

        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())));
    }

    private static StringBuilder Append(StringBuilder text, object? cell) => cell switch
    {
        null => text,
        bool value => text.Append(value ? "true" : "false"),
        double value => text.Append(value.ToString("R", CultureInfo.InvariantCulture)),
        long value => text.Append(value.ToString(CultureInfo.InvariantCulture)),
        _ => text.Append((string)cell),
    };
}
