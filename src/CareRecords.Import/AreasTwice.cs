using CareRecords.Import.Notes;
using CareRecords.Import.Reading;
using CareRecords.Import.Reading.Keys;
using CareRecords.Records;

namespace CareRecords.Import;

/// <summary>
/// Notices sessions in which the same side and area was treated twice by the same technique. Families hardly ever write so: more often a word was taken for a
/// place that it does not mean, and then in every session of the book. The sessions stand; the family is asked, once a file.
/// </summary>
internal static class AreasTwice
{
    /// <summary>The answer that settles it: it was written so.</summary>
    public const string Meant = "yes, treated twice";

    /// <summary>The name of a file's question.</summary>
    public static string Question(string file) => "areas-twice:" + file;

    /// <summary>The words that an answer explains ("LT = left top"): they hold before the file's own key.</summary>
    public static IReadOnlyList<FamilyWord> Explained(string answer) => answer.Contains('=', StringComparison.Ordinal) ? KeyReader.Read(answer) : [];

    /// <summary>A problem for each such session, with the question of its file; none where the family has answered that it was meant.</summary>
    public static (IReadOnlyList<ImportProblem> Problems, IReadOnlyDictionary<string, AskedQuestion> Questions) Find(IReadOnlyList<CareEntry> entries, IReadOnlyDictionary<string, string> answers)
    {
        var problems = new List<ImportProblem>();
        var questions = new Dictionary<string, AskedQuestion>();
        foreach (var entry in entries)
        {
            if (entry is not Session session || Twice(session.Areas) is not { } area) continue;
            var source = session.Sources[0];
            var name = Question(source.File);
            if (answers.TryGetValue(name, out var answer) && answer.TrimStart().StartsWith("yes", StringComparison.OrdinalIgnoreCase)) continue;
            var place = area.Side == Side.Unknown ? Word(area.Area) : $"{Word(area.Side)} {Word(area.Area)}";
            questions.TryAdd(name, new AskedQuestion(
                $"Was the same part of the chest treated twice in one session? '{source.Text}' ({source.Place}) was read as {place} two times. If not, one of its words means another place: answer with the word and its meaning, such as LA = left lower.",
                [Meant]));
            problems.Add(new ImportProblem(source, $"The {place} was read twice in this session. It is kept so; a word of it may mean another place.",
                "Answer the question, or put the key right.", ProblemSeverity.Ask, name));
        }

        return (problems, questions);
    }

    // What is not said of a place cannot be the same place.
    private static AreaMinutes? Twice(IReadOnlyList<AreaMinutes> areas)
    {
        for (var i = 1; i < areas.Count; i++)
            for (var k = 0; k < i; k++)
                if (areas[i].Side == areas[k].Side && areas[i].Area == areas[k].Area && areas[i].Technique == areas[k].Technique && IsOnePlace(areas[i]))
                    return areas[i];
        return null;
    }

    private static bool IsOnePlace(AreaMinutes area) => area.Area != ChestArea.Unknown;

    private static string Word<T>(T value) where T : struct, Enum => value.ToString().ToLowerInvariant();
}
