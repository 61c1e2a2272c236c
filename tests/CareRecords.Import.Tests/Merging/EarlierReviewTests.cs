using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Tests.Merging;

/// <summary>A review workbook lies among the inputs: nothing is counted twice, and what a person mended in it wins.</summary>
public sealed class EarlierReviewTests
{
    private const string Checks = "checked,spo2,pulse,oxygen,phase,note\n2026-03-09 07:05,95,,,,\n2026-03-09 18:05,94,,,,\n";
    private static readonly DateTime Morning = new(2026, 3, 9, 7, 5, 0);
    private static readonly DateTime Evening = new(2026, 3, 9, 18, 5, 0);

    [Fact]
    public void ReviewBesideItsSource_AddsNothing()
    {
        using var inputs = new Inputs().With("checks.csv", Checks).With("review.xlsx", Review(95));
        var log = inputs.Import();
        Assert.Equal([95, 94], log.Entries.Cast<Check>().Select(c => c.SpO2!.Value));
        Assert.Empty(log.Merged);
        Assert.Empty(log.Corrections);
        Assert.True(log.Lines.Balances);
        Assert.Contains(log.Inputs, i => i.Kind == "review workbook");
    }

    [Fact]
    public void ReviewAlone_GivesTheSameRecordsWithTheirFirstSources()
    {
        using var inputs = new Inputs().With("review.xlsx", Review(95));
        var log = inputs.Import();
        Assert.Equal(["checks.csv, line 2", "checks.csv, line 3"], log.Entries.Select(e => e.Sources[0].Place));
        Assert.Equal(TimePrecision.About, log.Entries[1].When.Precision);
        Assert.Equal(new LocalDateTime(2026, 3, 9, 18, 20), log.Entries[1].When.Latest);
    }

    [Fact]
    public void MendedCell_WinsOverTheSourceAndIsListed()
    {
        using var inputs = new Inputs().With("checks.csv", Checks).With("review.xlsx", Review(93));
        var log = inputs.Import();
        Assert.Equal([93, 94], log.Entries.Cast<Check>().Select(c => c.SpO2!.Value));
        var correction = Assert.Single(log.Corrections);
        Assert.Equal(("spo2", "95", "93", "C5"), (correction.Field, correction.Old, correction.New, correction.Source.Cell));
    }

    [Fact]
    public void AnswerTypedIntoTheQuestionSheet_AppliesOnTheNextRun()
    {
        var review = TinyWorkbook.Of(
            ("Questions to check", [["Questions to check"], ["How"], [], ["row id", "question", "answer", "question name"], ["Q1", "Which medicine is 'blue'?", "salbutamol", "what-is:blue"]]),
            ("As read", [["row id", "column", "value"]]));
        using var inputs = new Inputs().With("m.csv", "given,medicine,amount\n2026-03-09 07:00,blue,2 puffs\n").With("review.xlsx", review);
        Assert.Equal("salbutamol", Assert.IsType<Dose>(Assert.Single(inputs.Import().Entries)).Medicine);
    }

    private static byte[] Review(double spo2) => TinyWorkbook.Of(
        ("Summary", [["Review"], ["Saturation 95 at 07:05"]]),
        ("Checks",
        [
            ["Checks"], ["How to use"], [],
            ["row id", "checked", "spo2", "phase", "how exact", "source file", "source place", "source text", "earliest", "latest"],
            ["C1", Morning, spo2, null, "exact", "checks.csv", "line 2", "2026-03-09 07:05,95,,,,", Morning, Morning],
            ["C2", Evening, 94.0, null, "about", "checks.csv", "line 3", "2026-03-09 18:05,94,,,,", Evening.AddMinutes(-15), Evening.AddMinutes(15)],
        ]),
        ("As read", [["row id", "column", "value"], ["C1", "checked", "2026-03-09 07:05"], ["C1", "spo2", "95"], ["C2", "checked", "2026-03-09 18:05"], ["C2", "spo2", "94"]]));
}
