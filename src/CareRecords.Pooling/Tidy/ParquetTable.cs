using Parquet;
using Parquet.Schema;

namespace CareRecords.Pooling;

/// <summary>One Parquet file being written: rows wait until they are flushed as a row group.</summary>
internal sealed class ParquetTable : IDisposable
{
    private readonly TidyTable _table;
    private readonly FileStream _file;
    private readonly ParquetWriter _writer;
    private readonly DataField[] _fields;
    private readonly List<object?[]> _rows = [];

    public ParquetTable(TidyTable table, string path)
    {
        _table = table;
        _fields = [.. table.Columns.Select(FieldOf)];
        _file = File.Create(path);
        _writer = ParquetWriter.CreateAsync(new ParquetSchema(_fields), _file).GetAwaiter().GetResult();
    }

    public static DataField FieldOf(TableColumn column) => column.Type switch
    {
        ColumnType.Integer => new DataField<long?>(column.Name),
        ColumnType.Number => new DataField<double?>(column.Name),
        ColumnType.Boolean => new DataField<bool?>(column.Name),
        _ => new DataField<string>(column.Name),
    };

    public void Add(object?[] row) => _rows.Add(row);

    /// <summary>Ends a row group, also one without rows: the groups of all tables go together.</summary>
    public void Flush()
    {
        FlushAsync().GetAwaiter().GetResult();
        _rows.Clear();
    }

    public void Dispose()
    {
        _writer.DisposeAsync().AsTask().GetAwaiter().GetResult();
        _file.Dispose();
    }

    private async Task FlushAsync()
    {
        using var group = _writer.CreateRowGroup();
        for (var c = 0; c < _fields.Length; c++)
        {
            var place = c;
            switch (_table.Columns[c].Type)
            {
                case ColumnType.Integer:
                    await group.WriteAsync<long>(_fields[c], _rows.ConvertAll(r => (long?)r[place]).ToArray());
                    break;
                case ColumnType.Number:
                    await group.WriteAsync<double>(_fields[c], _rows.ConvertAll(r => (double?)r[place]).ToArray());
                    break;
                case ColumnType.Boolean:
                    await group.WriteAsync<bool>(_fields[c], _rows.ConvertAll(r => (bool?)r[place]).ToArray());
                    break;
                default:
                    await group.WriteAsync(_fields[c], _rows.ConvertAll(r => (string?)r[place]));
                    break;
            }
        }

        group.CompleteValidate();
    }
}
