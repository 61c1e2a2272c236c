using CareRecords.Findings;
using CareRecords.Workbooks.Building;

namespace CareRecords.Workbooks.Sheets;

/// <summary>Each figure with its definition, its version, where its limits come from and what to beware of; then the cautions in full.</summary>
internal static class HowWorkedOutSheet
{
    private sealed record Explanation(string Figure, string Definition, string Where, string Beware);

    public static void Write(Book book, ReviewRows rows)
    {
        var sheet = book.Add(WorkbookLayout.Sheet.HowWorkedOut);
        IReadOnlyList<Column<Explanation>> columns =
        [
            new("figure", 24, e => CellContent.Of(e.Figure)) { Wrap = true },
            new("how it is worked out", 70, e => CellContent.Of(e.Definition)) { Wrap = true },
            new("in this workbook", 30, e => CellContent.Of(e.Where)) { Wrap = true },
            new("beware", 46, e => CellContent.Of(e.Beware)) { Wrap = true },
        ];
        TableSheet.Dress(sheet, "How each figure is worked out", $"Definitions version {ChildFindings.DefinitionsVersion}. Limits are the plan's own; a starting value of the program is marked \"default, not your plan\".");
        var place = TableSheet.Write(book, sheet, "HowWorkedOut", columns, Explanations(rows.Findings));
        var at = place.LastRow + 2;
        book.Put(sheet.Cell(at, 1), "Cautions");
        Look.Title(sheet.Cell(at, 1));
        foreach (var (caution, i) in Cautions.Full.Select((c, i) => (c, i)))
        {
            var range = sheet.Range(at + 1 + i, 1, at + 1 + i, 4);
            range.Merge();
            book.Put(sheet.Cell(at + 1 + i, 1), FormattableString.Invariant($"{i + 1}. {caution}"));
            range.Style.Alignment.WrapText = true;
            range.Style.Alignment.Vertical = ClosedXML.Excel.XLAlignmentVerticalValues.Top;
            sheet.Row(at + 1 + i).Height = 3 + (13 * TableSheet.LinesOf(caution, 165));
        }

        PageDress.Apply(sheet, landscape: true, Look.Orange);
    }

    private static IReadOnlyList<Explanation> Explanations(ChildFindings findings) =>
    [
        new("A written time", "An interval from the earliest to the latest moment that the words allow. An exact clock time is a point; \"about nine\", \"morning\" or a date alone are wider.",
            "Data sheets: 'how exact', 'earliest', 'latest'. A time that you correct counts as exact.", "Hand-written times are rounded even where they look exact."),
        new("Care day", "Starts at the plan's 'day starts' (default 04:00), so that a session at 00:30 belongs to the evening before.", "Days, Gaps.", "A default unless the plan says."),
        new("Minutes between two times", "Elapsed minutes on the time line of the child's zone, so that a clock change makes nothing longer or shorter.", "Sheet Clock holds the zone's changes; the hidden working columns of the data sheets use it.", "Times that the clock change skipped are asked about."),
        new("Feed gap", "From the end of the last feed begun before the session to the session's start; nought while a feed runs. A feed with only a start ends between that start and start + 'usual feed minutes'. Feeds of the last 12 hours count; none there: cannot tell.",
            "Gaps: formulas over Sessions, Feeds and Clock.", "30 minutes is common practice for a pump feed, no source; after a bolus or a meal many teams ask 60 to 120."),
        new("Inhaler gap", "The bronchodilator due before a session: kept when a dose lies at least the limit and at most the window before; too late when nearer; too early from the window to 240 minutes; none written when medicines were written that day but no such dose (a day whose medicines are written is taken as written whole); cannot tell when no medicine was written that day.",
            "Gaps: formulas over Sessions, Medicines and Clock.", "15 minutes is common practice, no source. Other inhaled medicines have another place and are not judged here."),
        new("Kept, short, cannot tell", "A gap is [least, most]. Kept if least is at or over the limit, short (not kept) if most is under it, otherwise cannot tell. No feed written in the 12 hours before, or no medicine written all day, is cannot tell. An inhaler is not kept when too late, too early or none written.", "Gaps.", "Best and worst case say what the cannot-tell could hide. A kept feed gap rests on the last feed that was written; the front page counts those over 4 hours."),
        new("Share kept and its limits", $"Kept out of kept and not kept. 95 % limits after Wilson (1927); where days hang together and a day-by-day resampling gives wider limits, the front page shows the wider. Feed gap here: {findings.Adherence.Overall.FeedGap.Method}. Inhaler gap here: {findings.Adherence.Overall.InhalerGap.Method}.",
            "Weeks: formulas. Front page: the plain limits are a formula; the wider ones come from the findings.", "Shares of a few sessions say little."),
        new("Sessions done of planned", "Sessions written over sessions planned, on care days with records and a plan (lower end of a range).", "Days, Weeks: formulas.", "A session that nobody wrote down is unknown, not missed."),
        new("Minutes of planned", "Minutes of the parts whose minutes were written (a side's lower or upper chest, or its vibration), or a session's written total, over the plan's minutes for the same parts: 'minutes lower', 'minutes upper' and 'minutes vibration' where the plan has them, else 'minutes per area'. Counted are the parts that these sessions usually treat. A part that nobody wrote is unknown: its planned minutes stand apart, in neither figure.",
            "Gaps (columns folded away at the right), Weeks; front page: formula. Taper: minutes of lower, upper and vibration apart.", "Where the plan sets no minutes for vibration, those of every area are taken: shorter vibration by the team's wish then counts as less."),
        new("The child's own usual", findings.Baseline?.Method ?? findings.BaselineMissing ?? "", "Value from the findings, not recalculated.", "Another month may give another usual."),
        new("Illness episode", findings.Illness.MainDefinition + " The second definition is a model over the daily signals; both are shown.", "Illness: values from the findings, not recalculated.", "Other sensible rules give other dates."),
        new("Recovery", "The first moment from which, for 48 hours, saturation is back in the usual band on usual oxygen and no sign of illness is written. 'By the record' brackets it: known not recovered until, known recovered from. 'By the model' is its own answer, with its 95 % limits. Not recovered by the end is a result, not a gap.",
            "Illness: values from the findings, not recalculated.", "The estimate between the brackets is the model's; its method stands beside it."),
        new("Steps", "Days with the same sessions and minutes, as done. 'Within 7 days' of a step down is setback when a step up, a new episode or more oxygen was written, steady when none was and the record goes on, else cannot tell; the starting level and steps up have none. Hours stable before: since the last sign, low saturation or change of oxygen to a flow that is not the usual (coming back to the usual does not break them); a value for a whole day counts from its noon.",
            "Taper: values from the findings; days held is a formula.", "The wean follows recovery as much as it may shape it."),
        new("Saturation by flow", "Median and quartiles of the readings at one oxygen flow. Flows are never put together.", "Saturation: formulas over Checks.", "One reading may be off by 2 to 4 points (ISO 80601-2-61)."),
        new("Change over a session", findings.SessionEffect.Method, "Saturation: values from the findings, not recalculated.", findings.SessionEffect.OximeterNote),
        new("Recovery over episodes", findings.Recovery.Method, "Illness: value from the findings, not recalculated.", "With one or two illnesses it says what happened, not what to expect."),
    ];
}
