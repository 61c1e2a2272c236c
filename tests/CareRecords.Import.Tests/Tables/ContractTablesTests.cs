using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Tests.Tables;

public sealed class ContractTablesTests
{
    private const string Checks = "checked,spo2,pulse,oxygen,phase,note\n";
    private const string Sessions = "started,ended,left lower,left upper,left vibration,right lower,right upper,right vibration,note\n";

    [Fact]
    public void Checks_InTheContractsForm_AreReadLiterally()
    {
        var log = Inputs.Import("checks.csv", Checks + "2026-03-09 07:05,95,115,0.5,before,foot warm\n");
        var check = Assert.IsType<Check>(Assert.Single(log.Entries));
        Assert.Equal(new LocalDateTime(2026, 3, 9, 7, 5), check.Start!.Stated);
        Assert.True(check.Start.IsExact);
        Assert.Equal((95, 115, 0.5, CheckPhase.Before, "foot warm"), (check.SpO2!.Value, check.Pulse!.Value, check.OxygenLitresPerMinute!.Value, check.Phase, check.Note));
        Assert.Equal("checks.csv, line 2", check.Sources[0].Place);
        Assert.Empty(log.Problems);
    }

    [Fact]
    public void EmptyCells_AreUnknownNotZero()
    {
        var check = Assert.IsType<Check>(Assert.Single(Inputs.Import("checks.csv", Checks + "2026-03-09 07:05,95,,,,\n").Entries));
        Assert.Null(check.OxygenLitresPerMinute);
        Assert.Null(check.Pulse);
    }

    [Fact]
    public void Sessions_LowerAndUpperColumns_ArePercussionAndZeroMeansLeftOut()
    {
        var session = Assert.IsType<Session>(Assert.Single(Inputs.Import("s.csv", Sessions + "2026-03-09 07:10,2026-03-09 07:30,3,2.5,1,3,0,,\n").Entries));
        Assert.Contains(new AreaMinutes(Side.Left, ChestArea.Upper, Technique.Percussion, 2.5), session.Areas);
        Assert.Contains(new AreaMinutes(Side.Left, ChestArea.Unknown, Technique.Vibration, 1), session.Areas);
        Assert.Contains(new AreaMinutes(Side.Right, ChestArea.Upper, Technique.Percussion, 0), session.Areas);
        Assert.Equal(5, session.Areas.Count);
    }

    [Theory]
    [InlineData("2026-03-09 07:05,930,115,0.5,,", "930")]
    [InlineData("2026-02-31 07:05,95,115,0.5,,", "2026-02-31")]
    [InlineData("2026-03-09 25:10,95,115,0.5,,", "25:10")]
    [InlineData("2026-03-09 07:05,95,1150,0.5,,", "1150")]
    public void ImpossibleValue_IsRefusedWithItsPlaceAndWords(string row, string words)
    {
        var log = Inputs.Import("checks.csv", Checks + row + "\n");
        var problem = Assert.Single(log.Problems);
        Assert.Equal(ProblemSeverity.Refused, problem.Severity);
        Assert.Equal(2, problem.Source.Line);
        Assert.Contains(words, problem.Why, StringComparison.Ordinal);
        Assert.NotEmpty(problem.Fix);
        Assert.DoesNotContain(log.Entries.OfType<Check>(), c => c.SpO2 > 100 || c.Pulse > 300);
    }

    [Fact]
    public void NegativeMinutes_AreRefusedAndTheRestOfTheRowStands()
    {
        var log = Inputs.Import("s.csv", Sessions + "2026-03-09 07:10,,3,-2,1,3,3,1,\n");
        Assert.Equal(5, Assert.IsType<Session>(Assert.Single(log.Entries)).Areas.Count);
        Assert.Contains("-2", Assert.Single(log.Problems).Why, StringComparison.Ordinal);
    }

    [Fact]
    public void SessionThatEndsBeforeItStarts_IsRefused()
    {
        var log = Inputs.Import("s.csv", Sessions + "2026-03-09 07:10,2026-03-09 06:30,3,3,1,3,3,1,\n");
        Assert.Empty(log.Entries);
        Assert.Contains("before it starts", Assert.Single(log.Problems).Why, StringComparison.Ordinal);
        Assert.Equal(1, log.Lines.Problems);
    }

    [Fact]
    public void TimeThatTheClockChangeSkipped_IsRefused_AndOneThatCameTwice_Stands()
    {
        var log = Inputs.Import("checks.csv", Checks + "2026-03-29 01:30,95,,,,\n2026-10-25 01:30,94,,,,\n");
        Assert.Equal(94, Assert.IsType<Check>(Assert.Single(log.Entries)).SpO2);
        Assert.Contains("did not exist", Assert.Single(log.Problems).Why, StringComparison.Ordinal);
        Assert.Equal(new LineCount(3, 0, 1, 1, 1), log.Lines);
    }

    [Fact]
    public void FeedWithOnlyAnEnd_HasNoStart()
    {
        var log = Inputs.Import("feeds.csv", "started,ended,ml,route,note\n,2026-03-09 06:00,,pump,\n");
        var feed = Assert.IsType<Feed>(Assert.Single(log.Entries));
        Assert.Null(feed.Start);
        Assert.Equal(FeedRoute.PumpedTube, feed.Route);
        Assert.Equal(System.Text.Json.JsonValueKind.Null, Inputs.Json(log).GetProperty("records")[0].GetProperty("start").ValueKind);
    }

    [Theory]
    [InlineData("=1+1")]
    [InlineData("+44")]
    [InlineData("-later")]
    [InlineData("@home")]
    public void TextThatLooksLikeAFormula_StaysText(string words)
    {
        var log = Inputs.Import("checks.csv", Checks + $"2026-03-09 07:05,95,,,,{words}\n");
        Assert.Equal(words, Assert.Single(log.Entries).Note);
    }

    [Fact]
    public void QuoteNeverClosed_DoesNotSwallowTheLinesAfterIt()
    {
        var log = Inputs.Import("checks.csv", Checks + "2026-03-09 07:05,95,,,,\"oops\n2026-03-09 08:05,94,,,,\n2026-03-09 09:05,93,,,,\n");
        Assert.Equal([95, 94, 93], log.Entries.Cast<Check>().Select(c => c.SpO2!.Value));
        Assert.Equal(4, log.Lines.Read);
    }

    [Fact]
    public void QuotedCellOverTwoLines_IsOneRecordOfTwoLines()
    {
        var log = Inputs.Import("checks.csv", Checks + "2026-03-09 07:05,95,,,,\"first\nsecond\"\n2026-03-09 08:05,94,,,,\n");
        Assert.Equal(2, log.Entries.Count);
        Assert.Equal(new LineCount(4, 0, 3, 1, 0), log.Lines);
        Assert.Equal(4, log.Entries[1].Sources[0].Line);
    }

    [Fact]
    public void RaggedRow_IsReadAndItsExtraCellAskedAbout()
    {
        var log = Inputs.Import("checks.csv", Checks + "2026-03-09 07:05,95\n2026-03-09 08:05,94,,,,,,extra\n");
        Assert.Equal(2, log.Entries.Count);
        Assert.Contains("extra", Assert.Single(log.Problems).Why, StringComparison.Ordinal);
    }

    [Fact]
    public void PlansThatDisagree_AreAskedAboutAndNeitherIsUsed()
    {
        using var inputs = new Inputs().With("a.csv", "from,item,value\n2026-03-01,sessions per day,2\n").With("b.csv", "from,item,value\n2026-03-01,sessions per day,3\n").With("c.csv", Checks + "2026-03-09 07:05,95,,,,\n");
        var log = inputs.Import();
        Assert.Empty(log.Plan.Rows);
        Assert.Equal(2, log.Problems.Count(p => p.Severity == ProblemSeverity.Ask && p.Why.Contains("disagree", StringComparison.Ordinal)));
    }

    [Fact]
    public void PlanOfParts_IsReadUnderItsNamesAndTheFamilys()
    {
        var log = Inputs.Import("plan.csv", "from,item,value\n2026-03-01,minutes per area,3\n2026-03-09,minutes on the bottoms,4\n2026-03-09,minutes upper,2.5\n2026-03-09,minutes vibration,1\n");
        Assert.Empty(log.Problems);
        Assert.Equal([(PlanItem.MinutesLower, 4d), (PlanItem.MinutesPerArea, 3d), (PlanItem.MinutesUpper, 2.5d), (PlanItem.MinutesVibration, 1d)],
            log.Plan.Rows.OrderBy(r => r.Item.ToString(), StringComparer.Ordinal).Select(r => (r.Item, r.Low!.Value)));
    }

    [Fact]
    public void PlanWithoutDates_HoldsFromTheFirstRecordAndIsAskedAbout()
    {
        var log = Inputs.Import("plan.csv", "item,value\nfeed gap minutes,45\n");
        Assert.Null(Assert.Single(log.Plan.Rows).From);
        Assert.Equal(45, log.Plan.NumberFor(PlanItem.FeedGapMinutes, new LocalDate(2026, 3, 9)));
        Assert.Equal(ProblemSeverity.Ask, Assert.Single(log.Problems).Severity);
    }

    [Theory]
    [InlineData(null, "America/Chicago", "the plan")]
    [InlineData("Asia/Kolkata", "Asia/Kolkata", "the option --zone")]
    public void Zone_ComesFromTheOptionElseThePlan(string? option, string zone, string from)
    {
        var log = Inputs.Import("plan.csv", "from,item,value\n2026-03-01,time zone,America/Chicago\n", new ImportOptions { MachineZone = "UTC", Zone = option });
        Assert.Equal((zone, from), (log.Zone, log.ZoneFrom));
    }

    [Fact]
    public void NotDoneAndQuestionsForClinic_AreKeptApartFromRecords()
    {
        using var inputs = new Inputs().With("not-done.csv", "due,reason,note\n2026-03-18 21:00,asleep,\n").With("q.csv", "question\nWas it too soon?\n");
        var log = inputs.Import();
        Assert.Empty(log.Entries);
        Assert.Equal("asleep", Assert.Single(log.Omitted).Reason);
        Assert.Equal("Was it too soon?", Assert.Single(log.FamilyQuestions).Text);
        Assert.True(log.Lines.Balances);
    }

    [Fact]
    public void FamilyWord_SettlesTheMedicineOfEveryFile()
    {
        using var inputs = new Inputs().With("m.csv", "given,medicine,amount,route,note\n2026-03-09 07:00,blue inhaler,2 puffs,,\n").With("z-words.csv", "word,means\nblue inhaler,salbutamol\n");
        Assert.Equal("salbutamol", Assert.IsType<Dose>(Assert.Single(inputs.Import().Entries)).Medicine);
        using var without = new Inputs().With("m.csv", "given,medicine,amount,route,note\n2026-03-09 07:00,blue inhaler,2 puffs,,\n");
        var log = without.Import();
        Assert.Equal(Medicines.Unknown, Assert.IsType<Dose>(Assert.Single(log.Entries)).Medicine);
        Assert.Equal("what-is:blue inhaler", Assert.Single(log.Questions).Name);
    }

    [Fact]
    public void AnswerToAQuestion_AppliesOnTheNextRun()
    {
        using var inputs = new Inputs().With("m.csv", "given,medicine,amount,route,note\n2026-03-09 07:00,blue inhaler,2 puffs,,\n").With("answers.csv", "question,answer\nwhat-is:blue inhaler,salbutamol\n");
        var log = inputs.Import();
        Assert.Equal("salbutamol", Assert.IsType<Dose>(Assert.Single(log.Entries)).Medicine);
        Assert.Empty(log.Questions);
    }

    [Fact]
    public void SameInputsTwice_GiveTheSameRecords()
    {
        using var inputs = new Inputs().With("a.csv", Checks + "2026-03-09 07:05,95,,,,\n").With("copy/a.csv", Checks + "2026-03-09 07:05,95,,,,\n");
        var log = inputs.Import();
        Assert.Single(log.Entries);
        Assert.Contains(log.Inputs, i => i.Kind == "left alone" && i.Note!.Contains("same bytes", StringComparison.Ordinal));
    }

    [Fact]
    public void OtherKindsOfFile_AreNamedAsLeftAlone()
    {
        using var inputs = new Inputs().With("a.csv", Checks + "2026-03-09 07:05,95,,,,\n").With("photo.png", [1, 2, 3]);
        Assert.Contains(inputs.Import().Inputs, i => i is { Name: "photo.png", Kind: "left alone" });
    }

    [Fact]
    public void MissingFile_StopsWithASentence()
    {
        var stop = Assert.Throws<InputException>(() => Importer.Import(["/no/such/notes.csv"], Inputs.London));
        Assert.Contains("/no/such/notes.csv", stop.Message, StringComparison.Ordinal);
        Assert.NotEmpty(stop.Advice);
    }

    [Fact]
    public void EmptyFile_IsAProblemInASentence()
    {
        using var inputs = new Inputs().With("a.csv", "").With("b.csv", Checks + "2026-03-09 07:05,95,,,,\n");
        Assert.Equal("The file a.csv is empty.", Assert.Single(inputs.Import().Problems).Why);
    }

    [Theory]
    [InlineData("utf-8", true)]
    [InlineData("utf-16", true)]
    [InlineData("utf-16BE", false)]
    [InlineData("windows-1252", false)]
    public void Encodings_OfFamiliesPrograms_AreToldApart(string encoding, bool mark)
    {
        var how = System.Text.CodePagesEncodingProvider.Instance.GetEncoding(encoding) ?? System.Text.Encoding.GetEncoding(encoding);
        byte[] bytes = [.. mark ? how.GetPreamble() : [], .. how.GetBytes(Checks + "2026-03-09 07:05,95,,,,café 38° naïve\r\n")];
        using var inputs = new Inputs().With("a.csv", bytes);
        Assert.Equal("café 38° naïve", Assert.Single(inputs.Import().Entries).Note);
    }

    [Fact]
    public void FromAndTo_SetAsideWhatLiesOutside()
    {
        var log = Inputs.Import("a.csv", Checks + "2026-03-08 07:05,95,,,,\n2026-03-09 07:05,94,,,,\n", Inputs.London with { From = new LocalDate(2026, 3, 9) });
        Assert.Equal(94, Assert.IsType<Check>(Assert.Single(log.Entries)).SpO2);
        Assert.Equal(new LineCount(3, 0, 1, 2, 0), log.Lines);
    }
}
