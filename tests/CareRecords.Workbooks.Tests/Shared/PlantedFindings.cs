using System.Collections;
using System.Reflection;
using System.Runtime.CompilerServices;
using CareRecords.Findings;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Workbooks.Tests.Shared;

/// <summary>
/// Findings in which every text, of every record reachable, is a word of its own and every date and clock time is one that occurs nowhere else. It is
/// filled by reflection, so that a field added tomorrow is planted too.
/// </summary>
internal sealed class PlantedFindings
{
    private static readonly string[] Stems =
    [
        "Wilhelmina Ottertree", "17 Quillfeather Lane", "+44 7700 900461", "St Brannock's Infirmary", "Nachtzuster Ødegård", "zorbleflux", "SN-88213-KQ", "quill@feather.example",
        "Llanfair Bottoms", "=HYPERLINK(\"x\")", "漢字メモ", "C:\\Users\\ottertree\\notes.txt", "Europe/Zaporozhye", "Rosalind-Quirke",
    ];

    private readonly List<string> _words = [];
    private readonly List<LocalDate> _dates = [];
    private readonly List<LocalTime> _times = [];
    private int _number;

    private PlantedFindings() => Findings = (ChildFindings)Make(typeof(ChildFindings), 0)!;

    public static PlantedFindings Filled { get; } = new();

    public ChildFindings Findings { get; }

    public IReadOnlyList<string> Words => _words;

    public IReadOnlyList<LocalDate> Dates => _dates;

    public IReadOnlyList<LocalTime> Times => _times;

    private object? Make(Type type, int depth)
    {
        type = Nullable.GetUnderlyingType(type) ?? type;
        if (type == typeof(string)) return Word();
        if (type == typeof(int)) return 3 + (++_number % 5);
        if (type == typeof(double)) return 11 + (++_number % 7) + 0.5;
        if (type == typeof(bool)) return true;
        if (type == typeof(LocalDate)) return Date();
        if (type == typeof(LocalTime)) return Time();
        if (type == typeof(LocalDateTime)) return Date() + Time();
        if (type == typeof(UncertainTime)) return UncertainTime.Exactly(Date() + Time());
        if (type.IsEnum) return Enum.GetValues(type).GetValue(1);
        if (type.IsGenericType && type.GetGenericTypeDefinition() == typeof(IReadOnlyList<>)) return List(type.GetGenericArguments()[0], depth);
        if (typeof(ITuple).IsAssignableFrom(type)) return Activator.CreateInstance(type, [.. type.GetGenericArguments().Select(t => Make(t, depth + 1))]);
        return Record(type, depth);
    }

    private object Record(Type type, int depth)
    {
        var constructor = type.GetConstructors().Where(c => c.GetParameters() is not [var only] || only.ParameterType != type).MaxBy(c => c.GetParameters().Length)
            ?? throw new InvalidOperationException($"No way to make {type}.");
        var made = constructor.Invoke([.. constructor.GetParameters().Select(p => Make(p.ParameterType, depth + 1))]);
        var inConstructor = constructor.GetParameters().Select(p => p.Name).ToHashSet();
        foreach (var property in type.GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(p => p.CanWrite && !inConstructor.Contains(p.Name)))
            property.SetValue(made, Make(property.PropertyType, depth + 1));
        return made;
    }

    private IList List(Type item, int depth)
    {
        var list = (IList)Activator.CreateInstance(typeof(List<>).MakeGenericType(item))!;
        for (var i = 0; i < (depth < 2 ? 3 : 1); i++) list.Add(Make(item, depth + 1));
        return list;
    }

    private string Word()
    {
        var word = $"{Stems[_number % Stems.Length]} {_number++:0000}{Stems[_number % Stems.Length].GetHashCode(StringComparison.Ordinal) & 0xFFFF:x4}";
        _words.Add(word);
        return word;
    }

    /// <summary>Days far apart, so that a difference of two is not a small number either.</summary>
    private LocalDate Date()
    {
        var date = new LocalDate(2031, 3, 9).PlusDays(_dates.Count * 3);
        _dates.Add(date);
        return date;
    }

    private LocalTime Time()
    {
        var time = new LocalTime(13 + (_times.Count % 10), 11 + (_times.Count % 47));
        _times.Add(time);
        return time;
    }
}
