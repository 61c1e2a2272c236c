using CareRecords.Import.Notes;
using CareRecords.Records;

namespace CareRecords.Import;

/// <summary>Gathers problems into questions by cause.</summary>
internal static class QuestionGroups
{
    /// <summary>
    /// One question for each name that problems carry and one for each other problem that asks, the ones that settle the most lines first.
    /// </summary>
    public static IReadOnlyList<Question> Build(
        IReadOnlyList<ImportProblem> problems, IReadOnlyDictionary<string, AskedQuestion> wording, IReadOnlyDictionary<string, string> answers) =>
    [
        .. problems.Where(p => p.Question is not null)
            .GroupBy(p => p.Question!)
            .Select(group => Of(group.Key, [.. group], wording, answers))
            .OrderByDescending(q => q.Sources.Count)
            .ThenBy(q => q.Name, StringComparer.Ordinal),
    ];

    private static Question Of(string name, IReadOnlyList<ImportProblem> problems, IReadOnlyDictionary<string, AskedQuestion> wording, IReadOnlyDictionary<string, string> answers)
    {
        var asked = wording.GetValueOrDefault(name) ?? new AskedQuestion(problems[0].Why, []);
        return new Question(name, asked.Text, asked.Choices, [.. problems.Select(p => p.Source).Distinct()], answers.GetValueOrDefault(name));
    }
}
