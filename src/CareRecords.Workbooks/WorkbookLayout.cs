using CareRecords.Records;

namespace CareRecords.Workbooks;

/// <summary>
/// The names that a review workbook is read back by: sheets, tables, headings and the way in which a place is written.
/// The writer takes every name from here; the importer reads the same names (docs/workbook.md lists them for everybody).
/// </summary>
public static class WorkbookLayout
{
    /// <summary>The layout's version, kept as the custom document property <see cref="LayoutProperty"/>.</summary>
    public const string LayoutVersion = "1";

    /// <summary>The custom document property by which a review workbook is told from any other workbook.</summary>
    public const string LayoutProperty = "CareRecords layout";

    /// <summary>Sheet names, in the order of <see cref="Order"/>.</summary>
    public static class Sheet
    {
        /// <summary>The front page.</summary>
        public const string Summary = "Summary";

        /// <summary>Drawn pictures and native charts.</summary>
        public const string Charts = "Charts";

        /// <summary>One row a care day.</summary>
        public const string Days = "Days";

        /// <summary>One row a week.</summary>
        public const string Weeks = "Weeks";

        /// <summary>One row a session: its feed gap and its inhaler gap.</summary>
        public const string Gaps = "Gaps";

        /// <summary>Illness episodes and recovery.</summary>
        public const string Illness = "Illness";

        /// <summary>What was written around each illness, in order of time.</summary>
        public const string IllnessCourse = "Illness course";

        /// <summary>Steps planned and done.</summary>
        public const string Taper = "Taper";

        /// <summary>Saturation at each oxygen flow.</summary>
        public const string Saturation = "Saturation";

        /// <summary>Lines that a person should look at.</summary>
        public const string LinesToLookAt = "Lines to look at";

        /// <summary>Questions to the family; read back.</summary>
        public const string QuestionsToCheck = "Questions to check";

        /// <summary>Questions from the family to the clinic; read back.</summary>
        public const string QuestionsForClinic = "Questions for clinic";

        /// <summary>The plan; read back.</summary>
        public const string Plan = "Plan";

        /// <summary>Sessions; read back.</summary>
        public const string Sessions = "Sessions";

        /// <summary>Feeds; read back.</summary>
        public const string Feeds = "Feeds";

        /// <summary>Medicines; read back.</summary>
        public const string Medicines = "Medicines";

        /// <summary>Saturation checks; read back.</summary>
        public const string Checks = "Checks";

        /// <summary>Signs; read back.</summary>
        public const string Signs = "Signs";

        /// <summary>Sessions said not to have taken place; read back.</summary>
        public const string NotDone = "Not done";

        /// <summary>The family's own words; read back.</summary>
        public const string Words = "Words";

        /// <summary>Every line that came in, with how it was read.</summary>
        public const string WhatWasRead = "What was read";

        /// <summary>Counts that must agree, the files read, and versions.</summary>
        public const string ChecksOfTotals = "Checks of totals";

        /// <summary>Definitions and cautions.</summary>
        public const string HowWorkedOut = "How worked out";

        /// <summary>The zone's clock changes, for the formulas.</summary>
        public const string Clock = "Clock";

        /// <summary>Very hidden: the value of each cell as it was written, by row id and column.</summary>
        public const string AsRead = "As read";
    }

    /// <summary>The order of the sheets.</summary>
    public static IReadOnlyList<string> Order { get; } =
    [
        Sheet.Summary, Sheet.Charts, Sheet.Days, Sheet.Weeks, Sheet.Gaps, Sheet.Illness, Sheet.IllnessCourse, Sheet.Taper, Sheet.Saturation, Sheet.LinesToLookAt,
        Sheet.QuestionsToCheck, Sheet.QuestionsForClinic, Sheet.Plan, Sheet.Sessions, Sheet.Feeds, Sheet.Medicines, Sheet.Checks,
        Sheet.Signs, Sheet.NotDone, Sheet.Words, Sheet.WhatWasRead, Sheet.ChecksOfTotals, Sheet.HowWorkedOut, Sheet.Clock, Sheet.AsRead,
    ];

    /// <summary>The sheets whose tables are input again.</summary>
    public static IReadOnlyList<string> ReadBack { get; } =
    [
        Sheet.Sessions, Sheet.Feeds, Sheet.Medicines, Sheet.Checks, Sheet.Signs, Sheet.NotDone, Sheet.Plan, Sheet.Words,
        Sheet.QuestionsToCheck, Sheet.QuestionsForClinic,
    ];

    /// <summary>
    /// On a sheet that is read back, the table's headings stand in this row (one-based); above it are a title and a line on how to use the sheet.
    /// </summary>
    public const int HeadingRow = 4;

    /// <summary>Headings that every table read back may carry beside its own columns.</summary>
    public static class Heading
    {
        /// <summary>A letter for the table and a number ("S12"); the key of <see cref="Sheet.AsRead"/>.</summary>
        public const string RowId = "row id";

        /// <summary>How exact the time was: one of <see cref="PrecisionWords"/>.</summary>
        public const string HowExact = "how exact";

        /// <summary>Earliest local time that the words allow, of the start (or of the only time).</summary>
        public const string Earliest = "earliest";

        /// <summary>Latest local time that the words allow.</summary>
        public const string Latest = "latest";

        /// <summary>Earliest local time of the end.</summary>
        public const string EndedEarliest = "ended earliest";

        /// <summary>Latest local time of the end.</summary>
        public const string EndedLatest = "ended latest";

        /// <summary>How the words were read.</summary>
        public const string HowRead = "how read";

        /// <summary>The file; several are separated by <see cref="SourceSeparator"/>.</summary>
        public const string SourceFile = "source file";

        /// <summary>"line 12" or "sheet Feeds, R7"; several are separated by <see cref="SourceSeparator"/>.</summary>
        public const string SourcePlace = "source place";

        /// <summary>The words as written; several are separated by <see cref="SourceSeparator"/>.</summary>
        public const string SourceText = "source text";

        /// <summary>Who did or wrote it.</summary>
        public const string By = "by";

        /// <summary>Areas that have no column of their own, in words ("right middle percussion 3; both whole other 10").</summary>
        public const string OtherAreas = "other areas";

        /// <summary>The stable name of a question to the family.</summary>
        public const string QuestionName = "question name";

        /// <summary>In <see cref="Sheet.AsRead"/>: the heading of the column.</summary>
        public const string Column = "column";

        /// <summary>In <see cref="Sheet.AsRead"/>: the value as it was written, times as yyyy-MM-dd HH:mm (with :ss where there are seconds), numbers with a full stop.</summary>
        public const string Value = "value";
    }

    /// <summary>Stands between the sources of one row.</summary>
    public const string SourceSeparator = " ¦ ";

    /// <summary>The words of the column <see cref="Heading.HowExact"/>.</summary>
    public static IReadOnlyDictionary<TimePrecision, string> PrecisionWords { get; } = new Dictionary<TimePrecision, string>
    {
        [TimePrecision.Exact] = "exact",
        [TimePrecision.About] = "about",
        [TimePrecision.Rounded] = "rounded",
        [TimePrecision.PartOfDay] = "part of the day",
        [TimePrecision.DayOnly] = "day only",
        [TimePrecision.Borrowed] = "from the entry beside it",
        [TimePrecision.MessageStamp] = "message stamp",
        [TimePrecision.Reckoned] = "reckoned",
    };

    /// <summary>The place inside its file ("line 12", "sheet Feeds, R7"); empty for a file as a whole.</summary>
    public static string PlaceInFile(SourceLine source)
    {
        ArgumentNullException.ThrowIfNull(source);
        return source.Line is { } line ? FormattableString.Invariant($"line {line}")
            : source.Sheet is { } sheet ? $"sheet {sheet}, {source.Cell}"
            : "";
    }
}
