using System.Globalization;
using CareRecords.Records;

namespace CareRecords.Import.Notes;

/// <summary>The wording of every question and refusal of the notes, in one place.</summary>
internal static class Doubts
{
    /// <summary>A value that cannot be.</summary>
    public static Doubt Impossible(int line, string what, string written, string range) => new(line, null,
        $"{what} {written} is not possible ({range}).", $"Write the {what} as it was meant.", ProblemSeverity.Refused, null);

    /// <summary>A time that cannot be.</summary>
    public static Doubt BadTime(int line, string written) => new(line, null,
        $"{written} is not a time of day.", "Write the time that was meant, for example 07:30.", ProblemSeverity.Refused, null);

    /// <summary>A day that cannot be.</summary>
    public static Doubt BadDate(int line, string written) => new(line, null,
        $"{written} is not a day of the calendar.", "Write the day that was meant, for example 2025-02-14.", ProblemSeverity.Refused, null);

    /// <summary>A word whose meaning only the family knows.</summary>
    public static Doubt WhatIs(int line, string words) => Ask(line, $"what-is:{words}",
        $"'{words}' does not say which medicine it is.", $"Answer the question, or add a line '{words} = …' with the medicine's name.",
        $"Which medicine is '{words}'?");

    /// <summary>A word of the family's own that stands beside times.</summary>
    public static Doubt WhatMeans(int line, string word) => Ask(line, $"what-means:{word}",
        $"'{word}' stands beside a time, and nobody explains it.", $"Answer the question, or add a line '{word} = …' at the top of the notes.",
        $"What does '{word}' mean?", "a chest session", "nothing to keep");

    /// <summary>Morning or evening.</summary>
    public static Doubt AmOrPm(int line, string file, string written, string am, string pm) => Ask(line, $"am-or-pm:{file}:{line + 1}",
        $"'{written}' could be {am} or {pm}.", "Write am or pm beside the time.", $"Is '{written}' {am} or {pm}?", "am", "pm");

    /// <summary>Minutes without their areas.</summary>

    public static Doubt WhichAreas(int line, string written) => Ask(line, $"which-areas:{written}",
        $"'{written}' does not say which sides or areas the minutes are for.", $"Answer the question, or add a line '{written} = …' with the areas in order.",
        $"Which sides and areas are '{written}'?");

    /// <summary>Two saturations that may be before and after, or a range.</summary>
    public static Doubt BeforeAfterOrRange(int line, string file, string written) => Ask(line, $"before-after:{file}:{line + 1}",
        $"'{written}' could be before and after the session, or a range.", "Write 'before' and 'after', or 'between'.",
        $"Is '{written}' before and after the session, or a range of readings?", "before and after", "range");

    /// <summary>A saturation and a pulse, or two saturations.</summary>
    public static Doubt PulseOrSaturation(int line, string file, string written) => Ask(line, $"pulse-or-sat:{file}:{line + 1}",
        $"'{written}' could be a saturation with its pulse, or two saturations.", "Write 'hr' before the pulse, or an arrow between two saturations.",
        $"Is '{written}' a saturation with its pulse, or two saturations?", "saturation and pulse", "two saturations");

    /// <summary>A number that may have a slip of the pen.</summary>
    public static Doubt Slip(int line, string file, string written, string perhaps) => Ask(line, $"slip:{file}:{line + 1}",
        $"'{written}' looks like a slip of the pen, perhaps {perhaps}.", "Write the number again.", $"What is '{written}'?", perhaps);

    /// <summary>Sessions counted, not timed.</summary>
    public static Doubt Untimed(int line, string file, string what) => Ask(line, $"when:{file}:{line + 1}",
        $"{what} without a time.", "Write the times, if they are known.", $"At what time was this ({what.ToLowerInvariant()})?");

    /// <summary>A line too long to be a note.</summary>
    public static Doubt TooLong(int line, string file, int characters) => Ask(line, $"too-long:{file}:{line + 1}",
        FormattableString.Invariant($"The line is {characters} characters long, too long to be read as a note."), "Break it into lines of one or a few events.",
        "Can this long line be broken into shorter ones?");

    /// <summary>Anything else that could be read in more than one way.</summary>
    public static Doubt Unclear(int line, string file, string why, params string[] choices) => Ask(line, $"unclear:{file}:{line + 1}",
        why, "Write the line in other words.", why, choices);

    /// <summary>One number of minutes beside a word whose places have two.</summary>
    public static Doubt OfWhichPart(int line, string file, double minutes) =>
        Unclear(line, file, $"The {Plain(minutes)} minutes do not say whether they are of every place or of one part of the chest.");

    /// <summary>Words of care that gave no record.</summary>
    public static Doubt NotRead(int line, string file, string? word) => Ask(line, word is null ? $"when:{file}:{line + 1}" : $"not-read:{word}",
        word is null ? "The line tells of care without a time." : $"'{word}' on this line was not understood.", "Write the line in other words, with its time.",
        word is null ? "At what time was this?" : $"What do the lines with '{word}' tell?");

    /// <summary>Day and month could change places.</summary>
    public static Doubt DayOrder(int line, string file, string written) => Ask(line, $"day-order:{file}",
        $"'{written}' could be day and month or month and day.", "Answer the question, or give --date-order dmy or mdy.",
        $"In {file}, is the day or the month written first?", "day first", "month first");

    /// <summary>A line whose day is not known.</summary>
    public static Doubt NoDay(int line, string file) => Ask(line, $"which-day:{file}",
        "No day is written above this line.", "Write the day at the top of the notes, for example 2025-02-14.",
        $"On which day do the notes in {file} begin?");

    private static Doubt Ask(int line, string cause, string why, string fix, string question, params string[] choices) =>
        new(line, cause, why, fix, ProblemSeverity.Ask, new AskedQuestion(question, choices));

    /// <summary>A number in an invariant form.</summary>
    public static string Plain(double number) => number.ToString("0.###", CultureInfo.InvariantCulture);
}
