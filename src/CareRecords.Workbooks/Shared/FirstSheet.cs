using System.Globalization;
using CareRecords.Pooling;

namespace CareRecords.Workbooks.Shared;

/// <summary>
/// The first sheet: what is in the workbook and what is not, in plain words for the family, to read before sending it. Its wording belongs to the
/// tables version: a reader compares it word for word.
/// </summary>
internal static class FirstSheet
{
    public static PlainSheet Of(SharedFindings findings)
    {
        var child = findings.Child;
        List<object?[]> rows =
        [
            ["A copy for a study: read this before you send it"],
            [null],
            ["Reduced risk, not anonymous."],
            ["Names, words, dates and clock times have been taken out. What is left can still point to one child: somebody who knows how ill your child was on which days, or who has your notes, can find this copy among others. A rare condition makes that easier."],
            ["Send it only to people and studies that you agreed to, and ask them beforehand how you can withdraw it. Sending it is your choice; nothing has been sent."],
            [null],
            ["What is in it"],
            [Invariant($"Days counted from the first record, which is day 0: {child.Days} days, {child.DaysWithRecords} of them with something written.")],
            [Invariant($"For each of {findings.Sessions.Count} sessions: the day's number, minutes, minutes since the last feed and since the inhaler, whether the gap was kept, cut short or cannot be told, and saturation with oxygen before and after.")],
            [Invariant($"For each day: how many sessions, readings, feeds, doses and signs were written, the lowest saturation and the highest oxygen. {findings.Episodes.Count(e => e.Definition == EpisodeDefinition.Main)} illnesses: the day each began, how long recovery took as far as the record tells. {findings.Steps.Count} steps of sessions and minutes.")],
            ["The numbers of the plan (gaps in minutes, sessions a day, minutes per area, target saturations, usual oxygen)."],
            [child.AgeBand == AgeBand.NotGiven ? "No age." : "An age band, because one was given."],
            [child.StudyGroup is null ? "No study group." : "The study's group, because one was given."],
            ["A code of 32 letters and digits for the child. It is random, or made with a secret key that is not in this file; it does not contain the name."],
            [null],
            ["What is not in it"],
            ["No name of anybody: child, family, carers, nurses, school, clinic."],
            ["No words from your notes: no remarks, no reasons, no signs in words, no medicine names, no questions."],
            ["No date, no weekday, no clock time, no time zone, no place."],
            ["No file name, no author, no computer name, no serial number of a device, no picture."],
            [null],
            ["The other sheets hold the figures, one kind a sheet. The sheet \"columns\" says what each column means and what an empty cell means."],
            ["Please change nothing in this file: the last sheet holds a seal, and a changed file is refused by name when studies are pooled. If something is wrong, correct your own notes and share again."],
            ["A record of what was written down. Not a monitor, not advice."],
        ];
        return new PlainSheet("read me first", rows) { Widths = [110] };
    }

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
