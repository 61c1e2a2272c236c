using System.Text.Json;
using NodaTime;
using NodaTime.Text;

namespace CareRecords.Findings;

/// <summary>Values as findings.json has them: plain numbers in the unit named, ISO dates, local times to the minute; unknown is null.</summary>
internal static class JsonValues
{
    private static readonly LocalDateTimePattern Minute = LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm");

    /// <summary>A number rounded to a millionth, so that the last bits of a sum do not show; null when unknown.</summary>
    public static void Number(this Utf8JsonWriter json, string name, double? value)
    {
        if (value is { } number && double.IsFinite(number)) json.WriteNumber(name, Math.Round(number, 6));
        else json.WriteNull(name);
    }

    public static void Text(this Utf8JsonWriter json, string name, string? value)
    {
        if (value is null) json.WriteNull(name);
        else json.WriteString(name, value);
    }

    public static void Flag(this Utf8JsonWriter json, string name, bool? value)
    {
        if (value is { } known) json.WriteBoolean(name, known);
        else json.WriteNull(name);
    }

    public static void Day(this Utf8JsonWriter json, string name, LocalDate? day) => json.Text(name, day is { } d ? LocalDatePattern.Iso.Format(d) : null);

    public static void Time(this Utf8JsonWriter json, string name, LocalDateTime at) => json.WriteString(name, Minute.Format(at));

    /// <summary>An object with the name; null when there is no value.</summary>
    public static void Object<T>(this Utf8JsonWriter json, string name, T? value, Action<T> write)
        where T : class
    {
        if (value is null)
        {
            json.WriteNull(name);
            return;
        }

        json.WriteStartObject(name);
        write(value);
        json.WriteEndObject();
    }

    public static void Objects<T>(this Utf8JsonWriter json, string name, IEnumerable<T> values, Action<T> write)
    {
        json.WriteStartArray(name);
        foreach (var value in values)
        {
            json.WriteStartObject();
            write(value);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    public static void Strings(this Utf8JsonWriter json, string name, IEnumerable<string> values)
    {
        json.WriteStartArray(name);
        foreach (var value in values) json.WriteStringValue(value);
        json.WriteEndArray();
    }

    public static string Lower<T>(T value)
        where T : struct, Enum => value.ToString().ToLowerInvariant();
}
