using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;

namespace CareRecords.Pooling;

/// <summary>Writes a tidy folder child by child with bounded memory. The folder appears under its name only when it is complete.</summary>
public sealed class TidyWriter : IDisposable
{
    /// <summary>Children whose rows are held before they go into a Parquet row group; the groups of all tables end at the same child.</summary>
    private const int ChildrenInGroup = 64;

    private readonly string _folder;
    private readonly string _unfinished;
    private readonly List<CsvWriter> _csv = [];
    private readonly List<ParquetTable> _parquet = [];
    private readonly int[] _rows = new int[TidyTable.All.Count];
    private int _waiting;
    private bool _open = true;

    /// <summary>Begins a folder.</summary>
    /// <param name="folder">A folder that does not exist yet, or is empty.</param>
    /// <exception cref="IOException">The folder exists and holds something.</exception>
    public TidyWriter(string folder)
    {
        _folder = Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder));
        if (File.Exists(_folder) || (Directory.Exists(_folder) && Directory.EnumerateFileSystemEntries(_folder).Any()))
            throw new IOException($"\"{folder}\" already exists and is not empty.");
        _unfinished = _folder + ".unfinished-" + Guid.NewGuid().ToString("N");
        Directory.CreateDirectory(_unfinished);
        foreach (var table in TidyTable.All)
        {
            var csv = new CsvWriter(new StreamWriter(PathOf(table, "csv")) { NewLine = "\n" }, new CsvConfiguration(CultureInfo.InvariantCulture) { NewLine = "\n" });
            foreach (var column in table.Columns) csv.WriteField(column.Name);
            csv.NextRecord();
            _csv.Add(csv);
            _parquet.Add(new ParquetTable(table, PathOf(table, "parquet")));
        }
    }

    /// <summary>Adds a child that a pool took in.</summary>
    public void Add(SharedChild child)
    {
        ArgumentNullException.ThrowIfNull(child);
        Add(child.Findings);
    }

    /// <summary>Adds a child.</summary>
    public void Add(SharedFindings findings)
    {
        var seal = SharedTables.Seal(findings);
        for (var t = 0; t < TidyTable.All.Count; t++)
        {
            foreach (var row in TidyTable.All[t].Rows(findings, seal))
            {
                foreach (var cell in row) _csv[t].WriteField(Text(cell));
                _csv[t].NextRecord();
                _parquet[t].Add(row);
                _rows[t]++;
            }
        }

        if (++_waiting == ChildrenInGroup) Flush();
    }

    /// <summary>Closes the tables, writes the data package and moves the folder to its name.</summary>
    public void Complete()
    {
        if (_waiting > 0) Flush();
        Close();
        DataPackage.Write(_unfinished, [.. TidyTable.All.Zip(_rows)]);
        if (Directory.Exists(_folder)) Directory.Delete(_folder);
        Directory.Move(_unfinished, _folder);
    }

    /// <summary>Closes the tables; a folder that was not completed is taken away.</summary>
    public void Dispose()
    {
        Close();
        if (Directory.Exists(_unfinished)) Directory.Delete(_unfinished, recursive: true);
    }

    private void Flush()
    {
        foreach (var table in _parquet) table.Flush();
        _waiting = 0;
    }

    private void Close()
    {
        if (!_open) return;
        _open = false;
        foreach (var csv in _csv) csv.Dispose();
        foreach (var table in _parquet) table.Dispose();
    }

    private string PathOf(TidyTable table, string kind) => Path.Combine(_unfinished, $"{table.Table.Name}.{kind}");

    private static string Text(object? cell) => cell switch
    {
        null => "",
        bool value => value ? "true" : "false",
        double value => value.ToString("R", CultureInfo.InvariantCulture),
        long value => value.ToString(CultureInfo.InvariantCulture),
        _ => (string)cell,
    };
}
