using System.Globalization;

namespace CareRecords.Pooling;

/// <summary>Reads the cells of a row by column name, strictly: a cell of another type, an unknown code or an empty cell that may not be empty is refused.</summary>
internal sealed class CellReader(SharedTable table)
{
    private readonly Dictionary<string, int> _places = table.Columns.Select((c, i) => (c.Name, i)).ToDictionary(c => c.Name, c => c.i, StringComparer.Ordinal);
    private object?[] _row = [];
    private int _number;

    public CellReader On(object?[] row)
    {
        (_row, _number) = (row, _number + 1);
        if (row.Length != table.Columns.Count) throw Wrong("the row", $"has {row.Length} cells where {table.Columns.Count} are expected");
        return this;
    }

    public int Integer(string name) => IntegerOrNull(name) ?? throw Empty(name);

    public int? IntegerOrNull(string name) => _row[_places[name]] switch
    {
        null => null,
        long value when value is >= int.MinValue and <= int.MaxValue => (int)value,
        double value when value == Math.Truncate(value) && Math.Abs(value) <= int.MaxValue => (int)value,
        _ => throw Wrong(name, "is not a whole number"),
    };

    public double Number(string name) => NumberOrNull(name) ?? throw Empty(name);

    public double? NumberOrNull(string name) => _row[_places[name]] switch
    {
        null => null,
        double value when double.IsFinite(value) => value,
        long value => value,
        _ => throw Wrong(name, "is not a number"),
    };

    public bool Boolean(string name) => BooleanOrNull(name) ?? throw Empty(name);

    public bool? BooleanOrNull(string name) => _row[_places[name]] switch
    {
        null => null,
        bool value => value,
        _ => throw Wrong(name, "is not true or false"),
    };

    public string OpenCode(string name) => OpenCodeOrNull(name) ?? throw Empty(name);

    public string? OpenCodeOrNull(string name) => _row[_places[name]] switch
    {
        null => null,
        string value => value,
        _ => throw Wrong(name, "is not a code"),
    };

    public TCode Code<TCode>(string name)
        where TCode : struct, Enum =>
        Codes<TCode>.TryRead(OpenCode(name), out var code) ? code : throw Wrong(name, "is not one of its codes");

    public InvalidDataException Wrong(string name, string what) =>
        new(string.Create(CultureInfo.InvariantCulture, $"table \"{table.Name}\", row {_number}: {name} {what}"));

    private InvalidDataException Empty(string name) => Wrong(name, "is empty and may not be");
}
