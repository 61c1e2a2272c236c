using System.CommandLine;
using System.Text;
using CareRecords.Pooling;
using CareRecords.Records;
using CareRecords.Workbooks.Shared;

namespace CareRecords.CommandLine.Verbs;

/// <summary><c>carerecords share</c>: a workbook that carries what pooling needs and nothing that names anyone.</summary>
internal static class ShareVerb
{
    public static Command Create(Surroundings surroundings)
    {
        var reading = new ReadingOptions();
        var outFile = new Option<string>("--out") { Description = "The shared workbook to write.", HelpName = "file.xlsx", DefaultValueFactory = _ => "share.xlsx" };
        var keyFile = new Option<string?>("--study-key") { Description = "The study's secret key: the same child gets the same code each time. Without it the code is random.", HelpName = "file" };
        var makeKey = new Option<bool>("--make-study-key") { Description = "Make the key file if it does not exist." };
        var child = new Option<string?>("--child") { Description = "What tells this child from others in the study, with --study-key (default: the plan's 'child'). Never stored.", HelpName = "text" };
        var ageBand = new Option<string?>("--age-band") { Description = $"Age band, if you want it shared: {string.Join(", ", AgeBands.Written)}.", HelpName = "band" };
        var group = new Option<string?>("--group") { Description = $"Study group, if you want it shared: {StudyGroup.Accepted}.", HelpName = "group" };
        var command = new Command("share", "Write a workbook for research with names, words, dates and clock times taken out: reduced risk, not anonymous.")
        {
            outFile, keyFile, makeKey, child, ageBand, group,
        };
        reading.AddTo(command);
        command.SetAction(parsed =>
        {
            using var outputs = reading.Outputs(parsed, surroundings);
            var target = outputs.Claim(surroundings.FullPath(parsed.GetRequiredValue(outFile)));
            var (band, studyGroup) = (BandOf(parsed.GetValue(ageBand)), GroupOf(parsed.GetValue(group)));
            var key = parsed.GetValue(keyFile) is { } file ? Key(surroundings.FullPath(file), parsed.GetValue(makeKey), outputs) : null;

            var log = reading.ReadAll(parsed, surroundings);
            var code = key is null ? ChildCode.Random() : ChildCode.FromKey(key, Identifier(parsed.GetValue(child), log));
            var shared = Sharing.Share(ReviewVerb.FindingsOf(log), new ShareOptions { Child = code, AgeBand = band, StudyGroup = studyGroup });
            outputs.Write(target, stream => SharedWorkbook.Write(shared, stream));
            outputs.MoveIntoPlace();

            surroundings.Output.WriteLine($"The shared workbook is in {target}.");
            surroundings.Output.WriteLine("Open it and read its first sheet before you send it: it says what is in it and what is not. Reduced risk, not anonymous.");
            return ReadingReport.ExitCodeFor(log, reading.Strict(parsed));
        });
        return command;
    }

    private static AgeBand? BandOf(string? written) =>
        written is null ? null
        : AgeBands.TryRead(written, out var band) ? band
        : throw new UserMistakeException($"--age-band is '{written}': it can be {string.Join(", ", AgeBands.Written)}.");

    private static StudyGroup? GroupOf(string? written) =>
        written is null ? null
        : StudyGroup.TryRead(written, out var group) ? group
        : throw new UserMistakeException($"--group is '{written}': it can be {StudyGroup.Accepted}.");

    private static string Identifier(string? given, CareLog log)
    {
        var words = given ?? log.Plan.Rows.LastOrDefault(r => r.Item == PlanItem.ChildCalled)?.Value;
        return string.IsNullOrWhiteSpace(words)
            ? throw new UserMistakeException("--study-key needs something that tells this child from others: give --child, or the item 'child' in the plan.")
            : words;
    }

    private static byte[] Key(string file, bool make, SafeOutput outputs)
    {
        if (File.Exists(file))
            return StudyKey.TryRead(File.ReadAllText(file), out var key)
                ? key
                : throw new UserMistakeException($"{file} is not a study key: give the key file of the study, or another name with --make-study-key.");
        if (!make) throw new UserMistakeException($"{file} does not exist: give the study's key file, or add --make-study-key to make one.");
        var made = StudyKey.Make();
        outputs.Write(outputs.Claim(file), stream => stream.Write(Encoding.ASCII.GetBytes(StudyKey.ToText(made))));
        return made;
    }
}
