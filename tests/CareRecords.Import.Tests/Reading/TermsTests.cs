using CareRecords.Import.Notes;
using CareRecords.Import.Reading;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Tests.Reading;

/// <summary>The parts of the grammar, each alone: times, quantities, lists, references, offsets, areas, spelling.</summary>
public sealed class TermsTests
{
    private static Term TimeIn(string text) => Assert.Single(TimeLists.Reduce(CellTerms.Read(text)), t => t.Kind == TermKind.Time);

    [Theory]
    [InlineData("7.15am", "07:15", HalfOfDay.Am)]
    [InlineData("@ 0640", "06:40", HalfOfDay.Am)]
    [InlineData("7 o clock", "07:00", HalfOfDay.Unknown)]
    [InlineData("half 6", "06:30", HalfOfDay.Unknown)]
    [InlineData("1/2 past 9", "09:30", HalfOfDay.Unknown)]
    [InlineData("10 to 7", "06:50", HalfOfDay.Unknown)]
    [InlineData("5 past 7", "07:05", HalfOfDay.Unknown)]
    [InlineData("a quarter to 12", "11:45", HalfOfDay.Unknown)]
    [InlineData("17h20", "17:20", HalfOfDay.Pm)]
    [InlineData("um 7:00 Uhr", "07:00", HalfOfDay.Am)]
    [InlineData("9p", "21:00", HalfOfDay.Pm)]
    [InlineData("12noon", "12:00", HalfOfDay.Pm)]
    [InlineData("Morning 6:45", "06:45", HalfOfDay.Am)]
    [InlineData("night 2 am", "02:00", HalfOfDay.Am)]
    [InlineData("Night 9.30", "21:30", HalfOfDay.Pm)]
    [InlineData("8 in the evening", "20:00", HalfOfDay.Pm)]
    [InlineData("2400", "00:00", HalfOfDay.Am)]
    public void Time_IsReadWithItsHalfOfTheDay(string text, string time, object half)
    {
        var clock = TimeIn(text).Clock!.Start;
        Assert.Equal(time, clock.Time.ToString("HH:mm", System.Globalization.CultureInfo.InvariantCulture));
        Assert.Equal(half, (object)clock.Half);
    }

    [Theory]
    [InlineData("6-6.40pm", "18:00", "18:40")]
    [InlineData("1530-1550", "15:30", "15:50")]
    [InlineData("16:00–16:25", "16:00", "16:25")]
    [InlineData("2 till half past", "02:00", "02:30")]
    public void Span_HasBothEnds(string text, string start, string end)
    {
        var span = TimeIn(text).Clock!;
        Assert.Equal(start, span.Start.Time.ToString("HH:mm", System.Globalization.CultureInfo.InvariantCulture));
        Assert.Equal(end, span.End!.Time.ToString("HH:mm", System.Globalization.CultureInfo.InvariantCulture));
    }

    [Theory]
    [InlineData("~3ish")]
    [InlineData("about 3 pm")]
    [InlineData("around 3 in the morning")]
    public void About_GivesATimeRoom(string text)
    {
        var clock = TimeIn(text).Clock!.Start;
        Assert.Equal(TimePrecision.About, clock.Precision);
        Assert.Equal(Period.FromMinutes(30), Period.Between(clock.From, clock.To, PeriodUnits.Minutes));
    }

    [Theory]
    [InlineData("8, 2, 8", 3)]
    [InlineData("7, 10:30, 2, 5:30, 9", 5)]
    [InlineData("at 7, at 11.30, at half 3 and at 8 in the evening", 4)]
    [InlineData("7.30 6.00", 2)]
    public void TimesSideBySide_AreOneList(string text, int count) => Assert.Equal(count, TimeIn(text).Times.Count);

    [Theory]
    [InlineData("3 3 2 2")]
    [InlineData("93 95")]
    [InlineData("minutes 3, 3")]
    [InlineData("sats 92")]
    [InlineData("stopped at 100")]
    public void NumbersThatAreNoTimes_StayNumbers(string text) => Assert.DoesNotContain(TimeLists.Reduce(CellTerms.Read(text)), t => t.Kind == TermKind.Time);

    [Theory]
    [InlineData("2½ min", 2.5, Unit.Min)]
    [InlineData("two and a half minutes", 2.5, Unit.Min)]
    [InlineData("1/2L", 0.5, Unit.Litre)]
    [InlineData("1/8 L", 0.125, Unit.Litre)]
    [InlineData("half a litre", 0.5, Unit.Litre)]
    [InlineData("0,5 l", 0.5, Unit.Litre)]
    [InlineData("2 Hub", 2, Unit.Puffs)]
    [InlineData("x4 puffs", 4, Unit.Puffs)]
    [InlineData("65ml/hr", 65, Unit.Rate)]
    [InlineData("50 an hour", 50, Unit.Rate)]
    [InlineData("120cc", 120, Unit.Ml)]
    [InlineData("101.3F", 101.3, Unit.Fahrenheit)]
    [InlineData("a minute", 1, Unit.Min)]
    public void Quantity_HasItsNumberAndUnit(string text, double number, object unit)
    {
        var quantity = Assert.Single(CellTerms.Read(text), t => t.Kind == TermKind.Quantity);
        Assert.Equal(number, quantity.Number);
        Assert.Equal(unit, (object)quantity.Unit);
    }

    [Theory]
    [InlineData("15 min before each", -15, Offsets.Each)]
    [InlineData("20 min voor each one", -20, Offsets.Each)]
    [InlineData("15 before physio", -15, Offsets.Session)]
    [InlineData("finished 5 mins ago", -5, Offsets.Writing)]
    [InlineData("94 an hr later", 60, Offsets.Event)]
    public void Offset_SaysFromWhat(string text, double minutes, string from)
    {
        var offset = Assert.Single(Offsets.Reduce(CellTerms.Read(text)), t => t.Kind == TermKind.Offset);
        Assert.Equal(minutes, offset.Number);
        Assert.Equal(from, offset.Text);
    }

    [Theory]
    [InlineData("same again", ReferTo.Last)]
    [InlineData("as am", ReferTo.Part)]
    [InlineData("as 0640", ReferTo.Time)]
    [InlineData("same as 2)", ReferTo.Item)]
    [InlineData("same as kahapon", ReferTo.Day)]
    [InlineData("the usual", ReferTo.Usual)]
    public void Reference_SaysWhatIsRepeated(string text, object to)
    {
        var reference = Assert.Single(References.Reduce(CellTerms.Read(text)), t => t.Kind == TermKind.Reference);
        Assert.Equal(to.ToString(), reference.ValueOf(Sense.Same));
    }

    [Theory]
    [InlineData("salbutimol", "salbutamol")]
    [InlineData("Amoxycilin", "amoxicillin")]
    [InlineData("albuterol", "salbutamol")]
    [InlineData("acetaminophen", "paracetamol")]
    [InlineData("paracetomol", "paracetamol")]
    public void Medicine_IsKnownThroughItsSpelling(string text, string generic) => Assert.Equal(generic, Assert.Single(CellTerms.Read(text)).ValueOf(Sense.Medicine));

    [Theory]
    [InlineData("salb", "sale", 1)]
    [InlineData("temprature", "temperature", 1)]
    [InlineData("wedensday", "wednesday", 1)]
    [InlineData("cat", "dog", 3)]
    public void Slips_AreCounted(string a, string b, int slips) => Assert.Equal(slips, Spelling.Slips(a, b, 3));

    [Theory]
    [InlineData("LLL RLL 3 min ea, LUL RUL 2 min ea", "left.lower.3 right.lower.3 left.upper.2 right.upper.2")]
    [InlineData("lowers 3+3, uppers 2", "left.lower.3 right.lower.3 left.upper.2 right.upper.2")]
    [InlineData("3 each side", "left.unknown.3 right.unknown.3")]
    [InlineData("LEFT 4 RIGHT 4 LOW", "left.lower.4 right.lower.4")]
    [InlineData("5/5 lower only", "left.lower.5 right.lower.5")]
    [InlineData("3 L 3 R", "left.unknown.3 right.unknown.3")]
    [InlineData("lower L&R 3mins each", "left.lower.3 right.lower.3")]
    [InlineData("LL RL LU RU 3 3 2 2", "left.lower.3 right.lower.3 left.upper.2 right.upper.2")]
    [InlineData("4 min each: LLL RLL RML", "left.lower.4 right.lower.4 right.middle.4")]
    [InlineData("left base for about 3 minutes and the right base the same", "left.lower.3 right.lower.3")]
    [InlineData("3 all over", "unknown.unknown.3")]
    public void Areas_AreReadWithTheirMinutes(string text, string expected)
    {
        var areas = AreaGrammar.Read(CellTerms.Read(text)).Areas;
        Assert.Equal(expected.Split(' ').Order(), areas.Select(a => FormattableString.Invariant($"{a.Side}.{a.Area}.{a.Minutes}").ToLowerInvariant()).Order());
    }
}
