using System.Security.Cryptography;
using System.Text.Json;

namespace CareRecords.Pooling;

/// <summary>
/// The data package of a tidy folder: a descriptor in the Frictionless form (Table Schema), with units in UCUM, codes of open vocabularies, and what an
/// empty cell means; each table once as CSV and once as Parquet, with its bytes and SHA-256.
/// </summary>
internal static class DataPackage
{
    public static void Write(string folder, IReadOnlyList<(TidyTable Table, int Rows)> tables)
    {
        using var file = File.Create(Path.Combine(folder, TidyFolder.PackageFile));
        using var json = new Utf8JsonWriter(file, new JsonWriterOptions { Indented = true, NewLine = "\n" });
        json.WriteStartObject();
        json.WriteString("name", "carerecords-tidy");
        json.WriteString("profile", "data-package");
        json.WriteString("title", "Shared care records of many children, one table a kind");
        json.WriteString("description", "Rows of single children without names, words, dates or clock times: reduced risk, not anonymous. Nothing is suppressed here; keep it as shared workbooks are kept. Days count from each child's first record, which is day 0. An empty cell is not known or does not apply, never zero; each field's whenEmpty says which.");
        json.WriteNumber("tablesVersion", SharedFindings.TablesVersion);
        json.WriteStartArray("resources");
        foreach (var (table, rows) in tables)
        {
            Resource(json, folder, table, rows, "csv", "text/csv");
            Resource(json, folder, table, rows, "parquet", "application/vnd.apache.parquet");
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Resource(Utf8JsonWriter json, string folder, TidyTable table, int rows, string format, string mediaType)
    {
        var path = $"{table.Table.Name}.{format}";
        var bytes = new FileInfo(Path.Combine(folder, path)).Length;
        using var content = File.OpenRead(Path.Combine(folder, path));
        json.WriteStartObject();
        json.WriteString("name", format == "csv" ? table.Table.Name : $"{table.Table.Name}-{format}");
        json.WriteString("path", path);
        json.WriteString("profile", format == "csv" ? "tabular-data-resource" : "data-resource");
        json.WriteString("format", format);
        json.WriteString("mediatype", mediaType);
        if (format == "csv") json.WriteString("encoding", "utf-8");
        json.WriteString("description", table.Table.Meaning);
        json.WriteNumber("rows", rows);
        json.WriteNumber("bytes", bytes);
        json.WriteString("hash", "sha256:" + Convert.ToHexStringLower(SHA256.HashData(content)));
        Schema(json, table);
        json.WriteEndObject();
    }

    private static void Schema(Utf8JsonWriter json, TidyTable table)
    {
        json.WriteStartObject("schema");
        json.List("fields", table.Columns, column => Field(json, column));
        json.Words("missingValues", [""]);
        if (PrimaryKey(table) is { Count: > 0 } key) json.Words("primaryKey", key);
        if (!table.IsChildren)
        {
            json.List("foreignKeys", [table], _ =>
            {
                json.WriteString("fields", TidyTable.ChildColumn);
                json.WriteStartObject("reference");
                json.WriteString("resource", SharedTables.All[0].Name);
                json.WriteString("fields", TidyTable.ChildColumn);
                json.WriteEndObject();
            });
        }

        json.WriteEndObject();
    }

    private static void Field(Utf8JsonWriter json, TableColumn column)
    {
        json.WriteString("name", column.Name);
        json.WriteString("type", column.Type switch { ColumnType.Code => "string", var type => type.ToString().ToLowerInvariant() });
        json.WriteString("description", column.Meaning);
        if (column.Unit.Length > 0) json.WriteString("unit", column.Unit);
        if (column.WhenEmpty is { } whenEmpty) json.WriteString("whenEmpty", whenEmpty);
        json.WriteStartObject("constraints");
        json.WriteBoolean("required", column.WhenEmpty is null);
        if (column.Codes.Count > 0) json.Words("enum", column.Codes);
        json.WriteEndObject();
        if (column.OpenCodes.Count == 0) return;
        json.List("codings", column.OpenCodes, code =>
        {
            json.WriteString("system", code.System);
            json.WriteString("code", code.Code);
            json.WriteString("display", code.Display);
        });
    }

    /// <summary>The key where no part of it can be empty; plan values and saturations have none.</summary>
    private static IReadOnlyList<string> PrimaryKey(TidyTable table) => table.Table.Name switch
    {
        "child" => [TidyTable.ChildColumn],
        "sessions" => [TidyTable.ChildColumn, "session"],
        "days" => [TidyTable.ChildColumn, "day"],
        "episodes" => [TidyTable.ChildColumn, "definition", "episode"],
        "steps" => [TidyTable.ChildColumn, "step"],
        "completeness" => [TidyTable.ChildColumn, "kind"],
        _ => [],
    };
}
