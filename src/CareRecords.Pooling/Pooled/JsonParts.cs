using System.Text.Json;

namespace CareRecords.Pooling;

/// <summary>Small parts of the JSON.</summary>
internal static class JsonParts
{
    public static void Number(this Utf8JsonWriter json, string name, double? value)
    {
        if (value is { } known) json.WriteNumber(name, known); else json.WriteNull(name);
    }

    public static void Number(this Utf8JsonWriter json, string name, int? value)
    {
        if (value is { } known) json.WriteNumber(name, known); else json.WriteNull(name);
    }

    public static void List<T>(this Utf8JsonWriter json, string name, IEnumerable<T> items, Action<T> write)
    {
        json.WriteStartArray(name);
        foreach (var item in items)
        {
            json.WriteStartObject();
            write(item);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    public static void Words(this Utf8JsonWriter json, string name, IEnumerable<string> words)
    {
        json.WriteStartArray(name);
        foreach (var word in words) json.WriteStringValue(word);
        json.WriteEndArray();
    }
}
