using Parquet;
using Parquet.Schema;

namespace CareRecords.Pooling;

/// <summary>One Parquet file being read.</summary>
internal sealed class ParquetFile : IDisposable
{
    private readonly TidyTable _table;
    private readonly FileStream _file;
    private readonly ParquetReader _reader;
    private readonly DataField[] _fields;

    /// <exception cref="InvalidDataException">It is not a Parquet file with this table's columns.</exception>
    public ParquetFile(TidyTable table, string path)
    {
        _table = table;
        _file = File.OpenRead(path);
        try
        {
            _reader = ParquetReader.CreateAsync(_file).GetAwaiter().GetResult();
        }
        catch (IOException)
        {
            _file.Dispose();
            throw new InvalidDataException($"{table.Table.Name}.parquet is not a Parquet file or is damaged");
        }

        var found = _reader.Schema.GetDataFields();
        _fields = [.. table.Columns.Select(c => found.FirstOrDefault(f => f.Name == c.Name && f.ClrType == ParquetTable.FieldOf(c).ClrType) ?? throw Missing(c.Name))];
        if (found.Length != _fields.Length) throw Missing("(one too many)");
    }

    public int Groups => _reader.RowGroupCount;

    public Dictionary<string, List<object?[]>> RowsByChild(int group)
    {
        var byChild = new Dictionary<string, List<object?[]>>(StringComparer.Ordinal);
        foreach (var row in RowsAsync(group).GetAwaiter().GetResult())
        {
            var code = row[_table.ChildPlace] as string ?? throw new InvalidDataException($"{_table.Table.Name}.parquet has a row without a child");
            if (!byChild.TryGetValue(code, out var rows)) byChild.Add(code, rows = []);
            rows.Add(row);
        }

        return byChild;
    }

    public void Dispose()
    {
        _reader.DisposeAsync().AsTask().GetAwaiter().GetResult();
        _file.Dispose();
    }

    private async Task<object?[][]> RowsAsync(int group)
    {
        using var reader = _reader.OpenRowGroupReader(group);
        var count = checked((int)reader.RowCount);
        var rows = Enumerable.Range(0, count).Select(_ => new object?[_fields.Length]).ToArray();
        for (var c = 0; c < _fields.Length; c++)
        {
            switch (_table.Columns[c].Type)
            {
                case ColumnType.Integer:
                    var whole = new long?[count];
                    await reader.ReadAsync<long>(_fields[c], whole);
                    Put(rows, c, whole);
                    break;
                case ColumnType.Number:
                    var numbers = new double?[count];
                    await reader.ReadAsync<double>(_fields[c], numbers);
                    Put(rows, c, numbers);
                    break;
                case ColumnType.Boolean:
                    var truths = new bool?[count];
                    await reader.ReadAsync<bool>(_fields[c], truths);
                    Put(rows, c, truths);
                    break;
                default:
                    var codes = new string[count];
                    await reader.ReadAsync(_fields[c], codes);
                    Put(rows, c, codes);
                    break;
            }
        }

        return rows;
    }

    private static void Put<T>(object?[][] rows, int column, T[] values)
    {
        for (var r = 0; r < rows.Length; r++) rows[r][column] = values[r];
    }

    private InvalidDataException Missing(string column) => new($"{_table.Table.Name}.parquet does not have the columns of this version: {column}");
}
