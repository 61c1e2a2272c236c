using CareRecords.Records;
using CareRecords.Workbooks.Building;
using CareRecords.Workbooks.Finishing;

namespace CareRecords.Workbooks.Blank;

/// <summary>
/// An empty log that a family fills in on a computer or a phone: one sheet a kind of record with the canonical columns, lists to choose from,
/// checks on dates and numbers, short help on each heading, and a plan sheet. The importer reads it back as it reads any table.
/// </summary>
public static class BlankLog
{
    private const int Rows = 150;

    private static readonly CellCheck Time = new CellCheck.Time();

    private static readonly CellCheck Minutes = new CellCheck.Number(0, 30, "minutes");

    /// <summary>Writes the empty log. It is the same bytes every time.</summary>
    public static void Write(Stream output)
    {
        ArgumentNullException.ThrowIfNull(output);
        using var book = new Book();
        AddHelp(book);
        Add(book, WorkbookLayout.Sheet.Sessions, "One row a session. Leave empty what you do not know.",
        [
            At("started", "When it began, as 2026-03-09 07:10. \"about 7\" beside the date is fine too."), At("ended", "When it ended. May stay empty."),
            Area("left lower", "Percussion, left lower chest"), Area("left upper", "Percussion, left upper chest"), Area("left vibration", "Vibration, left side"),
            Area("right lower", "Percussion, right lower chest"), Area("right upper", "Percussion, right upper chest"), Area("right vibration", "Vibration, right side"),
            Words("minutes", 9, "Minutes in all, if you did not count each area", new CellCheck.Number(0, 90, "minutes")), Words("by", 10, "Who did it"),
            Words("cough", 12, "Dry, loose, wet ..."), Words("secretions", 14, "How much, what colour"), Words("stopped early", 18, "The reason, if it was cut short"),
            Words("vomited", 9, "yes or no", new CellCheck.OneOf(["yes", "no"])), Words("note", 30, "Anything else"),
        ]);
        Add(book, WorkbookLayout.Sheet.Feeds, "One row a feed: the end matters most, it decides the gap before a session.",
        [
            At("started", "When it began"), At("ended", "When the pump or the bolus stopped, or the meal ended"), Words("ml", 8, "The whole feed", new CellCheck.Number(0, 2000, "ml")),
            Words("route", 10, "pump, bolus or oral", new CellCheck.OneOf(["pump", "bolus", "oral"])), Words("note", 30, "Anything else"),
        ]);
        Add(book, WorkbookLayout.Sheet.Medicines, "One row a dose. Use the medicine's own name; your family's short words can be explained on the sheet Words.",
        [
            At("given", "When it was given"), Words("medicine", 22, "Its generic name, such as salbutamol"), Words("amount", 14, "As you say it: 4 puffs, 2.5 mg"),
            Words("route", 12, "spacer, neb, tube, mouth"), Words("note", 30, "Anything else"),
        ]);
        Add(book, WorkbookLayout.Sheet.Checks, "One row a reading. Write the oxygen flow beside every saturation: 0 is air.",
        [
            At("checked", "When you looked"), Words("spo2", 8, "Saturation, %", new CellCheck.Number(50, 100, "%")), Words("pulse", 8, "Beats a minute", new CellCheck.Number(30, 250, "a minute")),
            Words("oxygen", 9, "Litres a minute; 0 is air", new CellCheck.Number(0, 15, "L/min")),
            Words("phase", 10, "before, during or after a session; empty otherwise", new CellCheck.OneOf(["before", "during", "after"])), Words("note", 30, "Awake or asleep, probe trouble ..."),
        ]);
        Add(book, WorkbookLayout.Sheet.Signs, "One row a sign of illness, or of getting better.",
        [
            At("noticed", "When you noticed it"),
            Words("sign", 16, "Choose the nearest", new CellCheck.OneOf(["unwell", "temperature", "vomit", "colour", "distress", "secretions", "antibiotic", "admitted", "discharged", "better", "other"])),
            Words("value", 20, "The temperature in °C, or a few words"), Words("note", 30, "Anything else"),
        ]);
        Add(book, WorkbookLayout.Sheet.NotDone, "A session that did not take place, and why. Not doing one can be the right decision.",
        [At("due", "When it would have been"), Words("reason", 36, "Asleep, vomited, in hospital ..."), Words("note", 30, "Anything else")]);
        Add(book, WorkbookLayout.Sheet.Plan, "What your team asked for. A row holds from its date until a later row for the same item: the steps of the wean are later rows.",
        [
            new Column<int>("from", 14, _ => CellContent.Blank) { Role = ColumnRole.Editable, Format = "yyyy-mm-dd", Check = Time, Remark = "From which day, as 2026-03-09" },
            Words("item", 26, "Choose one", new CellCheck.OneOf([.. PlanItems.All.Where(Offered).Select(i => i.Name)])), Words("value", 22, "The value: 30, 2.5, Europe/London ..."),
        ]);
        Add(book, WorkbookLayout.Sheet.Words, "Your own short words, so that they are read as you mean them.",
        [Words("word", 18, "The word as you write it: blue"), Words("means", 40, "What it means: salbutamol")]);
        Add(book, WorkbookLayout.Sheet.QuestionsForClinic, "What you want to ask at the next visit.", [Words("question", 90, "One question a row")]);
        Finish(book, output);
    }

    /// <summary>The list in a cell holds 255 characters: the items that a family is most likely to be told.</summary>
    private static bool Offered(PlanItems.Description item) => item.Item
        is PlanItem.TimeZone or PlanItem.FeedGapMinutes or PlanItem.InhalerGapMinutes or PlanItem.MedicineBeforeSession or PlanItem.SessionsPerDay
        or PlanItem.MinutesPerArea or PlanItem.TargetSaturationLow or PlanItem.TargetSaturationHigh or PlanItem.StopSaturation or PlanItem.UsualOxygen
        or PlanItem.UsualFeedMinutes;

    private static Column<int> At(string heading, string help) =>
        new(heading, 16.5, _ => CellContent.Blank) { Role = ColumnRole.Editable, Format = Look.Format.Time, Check = Time, Remark = help };

    private static Column<int> Area(string heading, string help) =>
        new(heading, 9.5, _ => CellContent.Blank) { Role = ColumnRole.Editable, Format = Look.Format.UpToTwo, Check = Minutes, Remark = help + ", minutes" };

    private static Column<int> Words(string heading, double width, string help, CellCheck? check = null) =>
        new(heading, width, _ => CellContent.Blank) { Role = ColumnRole.Editable, Wrap = check is null, Check = check, Remark = help };

    private static void Add(Book book, string name, string use, IReadOnlyList<Column<int>> columns)
    {
        var sheet = book.Add(name);
        TableSheet.Dress(sheet, name, use);
        TableSheet.Write(book, sheet, name.Replace(" ", "", StringComparison.Ordinal), columns, [.. Enumerable.Range(0, Rows)]);
        PageDress.Apply(sheet, landscape: true, Look.Green);
    }

    private static void AddHelp(Book book)
    {
        var sheet = book.Add("How to fill in");
        sheet.Column(1).Width = 100;
        book.Put(sheet.Cell(1, 1), "A log to fill in");
        Look.Title(sheet.Cell(1, 1));
        string[] lines =
        [
            "One sheet a kind of record, one row an event. Yellow cells are yours. Select a heading to see what belongs there.",
            "Times are the clock on your wall: year-month-day hour:minute. A time you are not sure of may be written as \"about 2026-03-09 07:10\".",
            "Leave empty what you do not know. An empty cell means \"not said\": it is never counted against anybody.",
            "Start with the sheet Plan: what your own team asked for. Where the plan is silent, a starting value is used and marked as such.",
            "When you want the review, give this file to the program; you can go on filling in the same file afterwards.",
            Look.ShortCaution,
        ];
        for (var i = 0; i < lines.Length; i++)
        {
            book.Put(sheet.Cell(i + 3, 1), lines[i]);
            sheet.Cell(i + 3, 1).Style.Alignment.WrapText = true;
            sheet.Row(i + 3).Height = 1.5 + (13 * TableSheet.LinesOf(lines[i], 100));
        }

        PageDress.Apply(sheet, landscape: false, Look.Blue);
    }

    private static void Finish(Book book, Stream output)
    {
        var properties = book.Workbook.Properties;
        (properties.Title, properties.Author, properties.LastModifiedBy, properties.Company) = ("Chest-clearance log", "", "", "");
        properties.Created = properties.Modified = new DateTime(2000, 1, 1, 0, 0, 0, DateTimeKind.Utc);
        PackagePass.Save(book, [], output);
    }
}
