using System.Collections.Immutable;
using CareRecords.Records;

namespace CareRecords.Import.Reading;

/// <summary>What a term is.</summary>
internal enum TermKind
{
    /// <summary>A word or phrase; its meanings may be none.</summary>
    Word,

    /// <summary>Punctuation or a sign.</summary>
    Symbol,

    /// <summary>A bare number.</summary>
    Number,

    /// <summary>A number with a unit.</summary>
    Quantity,

    /// <summary>Two numbers as a range ("94-96", "2 to 3 min"), with or without a unit.</summary>
    Range,

    /// <summary>"x4", "3x": a count, whose meaning the event decides.</summary>
    Times,

    /// <summary>Numbers joined by slashes, or a date of numbers.</summary>
    Parts,

    /// <summary>A time of day or a span of times.</summary>
    Time,

    /// <summary>Written as a time and impossible ("25:10").</summary>
    BadTime,

    /// <summary>Minutes before or after something ("15 min before each", "5 mins ago").</summary>
    Offset,

    /// <summary>How long it took ("over 30 min", "for 10 min"): minutes in <see cref="Term.Number"/>.</summary>
    Duration,

    /// <summary>"same", "as am", "same as 2)": what was written before, repeated.</summary>
    Reference,
}

/// <summary>Units of quantities.</summary>
internal enum Unit { None, Min, Hour, Sec, Ml, Oz, Mg, Mcg, G, Puffs, Percent, Litre, MlMin, Rate, Celsius, Fahrenheit, Neb, Spoon, Money, Other, Day }

/// <summary>A word, number, quantity or time of a line, with what it can mean.</summary>
internal sealed record Term
{
    /// <summary>What it is.</summary>
    public required TermKind Kind { get; init; }

    /// <summary>Zero-based position in the line.</summary>
    public required int Start { get; init; }

    /// <summary>Position after its last character.</summary>
    public required int End { get; init; }

    /// <summary>Folded word, symbol, or number as written.</summary>
    public required string Text { get; init; }

    /// <summary>Meanings of a word; empty for others and for unknown words.</summary>
    public ImmutableArray<Meaning> Meanings
    {
        get;
        init
        {
            field = value;
            (_low, _high) = (0, 0);
            foreach (var meaning in value)
                if ((int)meaning.Sense < 64) _low |= 1UL << (int)meaning.Sense; else _high |= 1UL << ((int)meaning.Sense - 64);
        }
    } = [];

    private readonly ulong _low, _high;

    /// <summary>The number, the lower end of a range, or a count.</summary>
    public double Number { get; init; }

    /// <summary>Upper end of a range.</summary>
    public double High { get; init; }

    /// <summary>The unit of a quantity or range.</summary>
    public Unit Unit { get; init; }

    /// <summary>The numbers of joined numbers.</summary>
    public IReadOnlyList<double> Parts { get; init; } = [];

    /// <summary>The time or span of a time; for a bare number, the time that it would be ("630", "7"), or null.</summary>
    public ClockSpan? Clock { get; init; }

    /// <summary>Every time of a list of times ("7, 11 and 3"), the first included; empty when one time was written.</summary>
    public IReadOnlyList<ClockSpan> Times { get; init; } = [];

    /// <summary>True when "at", "@", "by" or the like stands before the time.</summary>
    public bool At { get; init; }

    /// <summary>True when it follows the term before without a space.</summary>
    public bool Glued { get; init; }

    /// <summary>The areas of a session that the family has this word for ("usual"); null for any other word.</summary>
    public IReadOnlyList<AreaMinutes>? Areas { get; init; }

    /// <summary>The word it was taken for when misspelt; otherwise null.</summary>
    public string? Mended { get; init; }

    /// <summary>Whether it carries a sense.</summary>
    public bool Is(Sense sense) => (int)sense < 64 ? (_low >> (int)sense & 1) != 0 : (_high >> ((int)sense - 64) & 1) != 0;

    /// <summary>Whether it tells of a feed.</summary>
    public bool NamesFeed => Is(Sense.Feed) || Is(Sense.Bolus) || Is(Sense.Route) || Is(Sense.Pump) || Is(Sense.Bottle) || Is(Sense.Milk);

    /// <summary>Whether it names an event: a session, a feed, a medicine, a reading, a sign.</summary>
    public bool NamesEvent => Is(Sense.Session) || Is(Sense.Technique) || NamesFeed || Is(Sense.FeedRunning) || Is(Sense.Medicine) || Is(Sense.Device) || Is(Sense.Antibiotic) || Is(Sense.SatLabel)
        || Is(Sense.Desat) || Is(Sense.PulseLabel) && Text != "p" || Is(Sense.TempLabel) || Is(Sense.BreathLabel) || Is(Sense.Sign) || Is(Sense.OxygenLabel) || Is(Sense.Air) || Is(Sense.Mouth)
        || Is(Sense.Food) || Kind == TermKind.Reference || Is(Sense.MedicineWord);

    /// <summary>Whether it carries a sense with this value.</summary>
    public bool Is(Sense sense, string value)
    {
        if (!Is(sense)) return false;
        foreach (var meaning in Meanings)
            if (meaning.Sense == sense && meaning.Value == value) return true;
        return false;
    }

    /// <summary>The value of a sense; null when it does not carry it.</summary>
    public string? ValueOf(Sense sense)
    {
        if (!Is(sense)) return null;
        foreach (var meaning in Meanings)
            if (meaning.Sense == sense) return meaning.Value;
        return null;
    }

    /// <summary>Whether it is this symbol.</summary>
    public bool IsSymbol(string text) => Kind == TermKind.Symbol && Text == text;

    /// <summary>A bare whole number.</summary>
    public bool IsWhole => Kind == TermKind.Number && Number == Math.Floor(Number) && Text.AsSpan().IndexOfAny('.', ',') < 0;

    /// <summary>The fraction that joined numbers make ("1/8"), where they make a usual one; otherwise null.</summary>
    public double? Fraction => Kind == TermKind.Parts && Parts.Count == 2 && (Parts[0] == 1 || (Parts[0] == 3 && Parts[1] is 4 or 8)) && Parts[1] is 2 or 4 or 8 or 3 && Text.Contains('/')
        ? Parts[0] / Parts[1] : null;
}
