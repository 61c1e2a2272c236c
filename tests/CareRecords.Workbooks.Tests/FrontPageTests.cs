using CareRecords.Records;

namespace CareRecords.Workbooks.Tests;

/// <summary>What a reader of the printed front page reads, against the sheets behind it.</summary>
public sealed class FrontPageTests
{
    private static readonly string[] Lines = ApprovedText.Of(ReviewWorkbookTests.Bytes(SampleMonth.Log())).Split('\n');

    private static string[] Sheet(string name) => [.. Lines.SkipWhile(l => l != $"== {name}").Skip(1).TakeWhile(l => !l.StartsWith("== ", StringComparison.Ordinal))];

    private static string[] Cells(string line) => line[(line.IndexOf(": ", StringComparison.Ordinal) + 2)..].Split(" | ");

    private static string Sentence(string beginning) => Assert.Single(Sheet("Summary"), l => Cells(l + ": ")[0].StartsWith(beginning, StringComparison.Ordinal));

    [Fact]
    public void Recovery_by_the_record_is_the_figure_of_the_record_s_own_row()
    {
        var headings = Cells(Assert.Single(Sheet("Summary"), l => l.Contains("episode | first day", StringComparison.Ordinal)));
        var front = Cells(Assert.Single(Sheet("Summary"), l => Cells(l + ": ")[0] == "E1"));
        var table = Sheet("Illness");
        var names = Cells(table.First(l => l.Contains("episode | definition", StringComparison.Ordinal)));
        var record = Cells(table.First(l => l.Contains("| by the record |", StringComparison.Ordinal)));
        double Of(string name) => Math.Round(double.Parse(record[Array.IndexOf(names, name)], System.Globalization.CultureInfo.InvariantCulture), 1);
        Assert.Equal(record[Array.IndexOf(names, "onset")], front[Array.IndexOf(headings, "by the record: first day")]);
        Assert.Equal(FormattableString.Invariant($"{Of("by the record: not recovered until, days")}–{Of("by the record: recovered from, days")}"), front[Array.IndexOf(headings, "by the record: days to recovery")]);
    }

    [Fact]
    public void Highest_oxygen_is_told_for_whole_weeks() =>
        Assert.EndsWith("16–22 Mar 1 L/min; 23–29 Mar 1.5 L/min; 30 Mar–5 Apr 0.5 L/min.", Cells(Sentence("Highest oxygen written at any time in each week"))[0]);

    [Fact]
    public void Vomiting_in_a_session_and_apart_from_one_are_told_apart()
    {
        var log = SampleMonth.Log();
        var vomit = new Sign { Sources = [SourceLine.InText("march.txt", 900, "sick after tea")], Start = UncertainTime.Exactly(SampleMonth.First.At(new NodaTime.LocalTime(13, 15))), Kind = SignKind.Vomit, What = "vomit" };
        var text = ApprovedText.Of(ReviewWorkbookTests.Bytes(log with { Entries = [.. log.Entries, vomit] }));
        Assert.Contains("Sessions stopped early: 1; with vomiting: 0. Vomiting written apart from a session: 1.", text);
    }

    [Fact]
    public void Sheets_are_named_in_their_order_for_those_who_read_on_paper()
    {
        var sheets = Lines.Where(l => l.StartsWith("== ", StringComparison.Ordinal)).Select(l => l[3..]).Where(s => s != WorkbookLayout.Sheet.AsRead);
        Assert.EndsWith($"In order: {string.Join(", ", sheets)}.", Cells(Sentence("On paper"))[0]);
    }

    /// <summary>Where the plan sets parts apart, planned minutes and their formulas follow: SampleMonth's 2.5 and 3 minutes with lower 4 from the illness on.</summary>
    [Fact]
    public void Planned_minutes_of_parts_are_worked_out_by_the_sheet_too()
    {
        var log = SampleMonth.Log();
        var lower = new PlanRow(SampleMonth.First.PlusDays(5), PlanItem.MinutesLower, "4", 4, 4, SourceLine.InText("plan.txt", 9, "4 mins on the bottoms"));
        var text = ApprovedText.Of(ReviewWorkbookTests.Bytes(log with { Plan = new CarePlan { Rows = [.. log.Plan.Rows, lower] } }));
        Assert.Contains("lower 4, upper 2.5, vibration 2.5", text);
        Assert.Contains("Plan, minutes lower: as every area, 4 from 21 Mar.", text);
        Assert.Contains("PlanRows[item],\"minutes lower\"", text);
    }
}
