using CareRecords.Import.Notes;
using CsCheck;
using NodaTime;

namespace CareRecords.Import.Tests.Notes;

/// <summary>Whatever the text, it is read without an exception and every line is accounted for.</summary>
public sealed class NotesFuzzTests
{
    private static readonly ReadingContext Context = new() { Date = new LocalDate(2025, 3, 5), DateOrder = DateOrder.DayMonthYear };

    private static readonly string[] Shards =
    [
        "chest", "physio", "perc", "LLL", "RUL", "lowers", "3", "3+3", "3 each side", "2-3 min", "½", "1/2", "7.15", "0640", "half 8", "ten to 8", "noon", "7ish", "~9", "am", "pm", "sats", "93", "→", "96",
        "9l", "930", "on air", "0.5L", "1/8 L", "up to", "feed", "pump", "on", "off", "150", "60/hr", "salb", "x4 puffs", "neb", "blue inhaler", "amox", "5 ml", "temp", "38.4", "101.3F", "cough", "sick",
        "same", "ditto", "as am", "same as 2)", "yesterday", "Mon", "14/2", "31/2", "25:10", "-2", "minutes", "no", "skipped", "sorry", "meant", "=", "blue = salbutamol", ",", ".", "/", "(", ")", "?", "!!",
        "|", "x", "4p", "each", "std", "before", "after", "b94", "a96", "15 min before each", "[14/03/2025, 07:41] Nan:", "2)", "- ", "## ", "\"", "\u00a0", "😷", "肺", "كحة", "\u0000", "\u200f",
    ];

    private static readonly Gen<string> Line = Gen.Select(OneOf(Shards).List[0, 14], OneOf([" ", "", "  "])).Select((words, space) => string.Join(space, words));

    private static Gen<T> OneOf<T>(T[] of) => Gen.Int[0, of.Length - 1].Select(i => of[i]);

    private static void Read(IReadOnlyList<string> lines)
    {
        var text = new SourceText("any.txt", lines);
        Balance.Holds(text, NotesReader.Read(text, Context));
        Balance.Holds(text, NotesReader.Read(text, new ReadingContext()));
    }

    [Fact]
    public void AnyWordsOfTheTrade_AreAccountedFor() => Line.List[0, 12].Holds(Read, count: 1500);

    [Fact]
    public void AnyCharacters_AreAccountedFor() => Gen.String[Gen.Char, 0, 120].List[0, 8].Holds(Read, count: 600);

    [Fact]
    public void AnyPunctuationAndFigures_AreAccountedFor() =>
        Gen.String[OneOf("0123456789.,/:-–→½=+x×()[]|'\"%°~@&;!?<> lLrRaApPmhb".ToCharArray()), 0, 60].List[0, 8].Holds(Read, count: 1500);

    [Theory]
    [InlineData("chest 7.15 L3 R3, ")]
    [InlineData("93 ")]
    [InlineData("1/2")]
    [InlineData("(")]
    [InlineData("= ")]
    [InlineData("salbutamol ")]
    [InlineData("zzzzzzzz")]
    [InlineData("0123456789")]
    public void LineOf32767Characters_IsAccountedFor(string shard)
    {
        var line = string.Concat(Enumerable.Repeat(shard, 32_767 / shard.Length + 1))[..32_767];
        Read([line, "0640 chest"]);
    }

    [Fact]
    public void Cell_IsAccountedForAndCarriesItsSource()
    {
        Line.Holds(words =>
        {
            var source = CareRecords.Records.SourceLine.InSheet("book.xlsx", "June", "C7", words);
            var reading = NotesReader.ReadCell(source, new CellContext { Date = new LocalDate(2025, 6, 1), Heading = "Morning physio" }, Context);
            Assert.Single(reading.Fates);
            Assert.All(reading.Entries, e => Assert.Equal(source, Assert.Single(e.Sources)));
            Assert.All(reading.Problems, p => Assert.Equal(source, p.Source));
        }, count: 600);
    }
}
