using System.Globalization;
using CareRecords.Import.Accounting;
using CareRecords.Import.Notes;
using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Tables;

/// <summary>
/// Reads the one value of a cell with the readers that notes use too. What is doubtful, impossible or no such value goes
/// among the problems with its cell, and the value is left out: the rest of the row stands.
/// </summary>
internal sealed class CellReaders(Gathered into, FamilyWords words)
{
    private readonly Memo<SaturationWritten> _saturations = new(text => Plain(text, 50, 100, n => new SaturationWritten(n)) ?? SaturationReader.Read(text));
    // "RL" where the key says that it is room air.
    private readonly Memo<double> _oxygen = new(text => Plain(text, 0, 15, n => n) ?? (words.MeaningOf(text) is { } means && OxygenReader.Read(means) is { Outcome: Outcome.Certain } meant ? meant : OxygenReader.Read(text)));
    private readonly Memo<double> _pulses = new(text => Plain(text, 40, 250, n => n) ?? PulseReader.Read(text));
    private readonly Memo<TemperatureWritten> _temperatures = new(text => Plain(text, 34, 42, n => new TemperatureWritten(n, text + " C")) ?? TemperatureReader.Read(text));
    private readonly Memo<MinutesWritten> _minutes = new(text => Plain(text, 0, 240, n => new MinutesWritten(n)) ?? MinutesReader.Read(text));
    private readonly Memo<double> _volumes = new(text => Plain(text, 0, 2000, n => n) ?? VolumeReader.Read(text));
    private readonly Memo<MedicineWritten> _medicines = new(text => Medicines.GenericNameFor(text) is { } generic
        ? new Reading<MedicineWritten>(Outcome.Certain, new MedicineWritten(generic, text, null, null), null, null)
        : MedicineReader.Read(text, words));

    /// <summary>A saturation; null when not said or not usable.</summary>
    public SaturationWritten? Saturation(CellAt at) => Value(_saturations, at, "a saturation", "a number of per cent such as 94");

    /// <summary>Oxygen, litres a minute; null when not said or not usable.</summary>
    public double? Oxygen(CellAt at) => Value(_oxygen, at, "an oxygen flow", "litres a minute such as 0.5, or air");

    /// <summary>Pulse, beats a minute; null when not said or not usable.</summary>
    public double? Pulse(CellAt at) => Value(_pulses, at, "a pulse", "beats a minute such as 120");

    /// <summary>A temperature; null when not said or not usable.</summary>
    public TemperatureWritten? Temperature(CellAt at) => Value(_temperatures, at, "a temperature", "degrees such as 38.2 or 101 F");

    /// <summary>A feed's volume, millilitres; null when not said or not usable.</summary>
    public double? Millilitres(CellAt at) => Value(_volumes, at, "a volume", "millilitres such as 120");

    /// <summary>Minutes; null when not said or not usable. More than <paramref name="most"/> is asked about.</summary>
    public MinutesWritten? Minutes(CellAt at, double most)
    {
        var minutes = Value(_minutes, at, "a number of minutes", "minutes such as 3 or 2.5");
        if (minutes is not { } read || (read.High ?? read.Minutes) <= most) return minutes;
        Ask(at.Source, FormattableString.Invariant($"'{at.Cell.Words}' minutes is more than the {most:0.#} that one such part of a session is likely to last."),
            "Correct the minutes, or write the time of the whole session under minutes.");
        return null;
    }

    /// <summary>A medicine. Words that name none give <see cref="Medicines.Unknown"/> and a question; null only for an empty cell.</summary>
    public MedicineWritten? Medicine(CellAt at)
    {
        if (at.Cell.Words is not { } text || NotSaid.Is(text) && text is not ("x" or "X")) return null;
        var reading = _medicines[text];
        if (reading.TryGet(out var medicine)) return medicine;
        // A spelling further off than the notes allow: in a column of medicines it can hardly be another word.
        if (Layouts.Lexicon.Find(text, out _).FirstOrDefault(k => k.Medicine is not null).Medicine is { } near)
            return new MedicineWritten(near, text, reading.Value?.Amount, reading.Value?.Route);
        if (reading.Outcome == Outcome.Impossible)
        {
            Refuse(at.Source, reading.Why ?? $"'{text}' is no medicine.", "Write the medicine's generic name.");
            return null;
        }

        var name = "what-is:" + text.ToLowerInvariant();
        into.Questions.TryAdd(name, new AskedQuestion($"Which medicine is '{text}'?", reading.Choices));
        Ask(at.Source, reading.Why ?? $"'{text}' names no medicine known here.", $"Say which medicine it is in a words table: {text}, its generic name.", name);
        return reading.Value ?? new MedicineWritten(Medicines.Unknown, text, null, null);
    }

    /// <summary>The medicines of a cell that names more than one, each with its amount: "salbutamol 2.5 mg, budesonide 0.5 mg"; empty when it names none or one.</summary>
    public IReadOnlyList<MedicineWritten> Several(CellAt at)
    {
        if (at.Cell.Words is not { } text) return [];
        var found = text.Split([",", ";", "+", "&", "\n", " and ", " then "], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
            .Select(p => MedicineReader.Read(p, words) is { Outcome: Outcome.Certain, Value: { } read } && read.Generic != Medicines.Unknown ? read : null).ToList();
        return found.Count > 1 && found.TrueForAll(f => f is not null) ? [.. found.OfType<MedicineWritten>()] : [];
    }

    /// <summary>Adds a question.</summary>
    public void Ask(SourceLine at, string why, string fix, string? question = null) =>
        into.Problems.Add(new ImportProblem(at, why, fix, ProblemSeverity.Ask, question));

    /// <summary>Adds a refusal.</summary>
    public void Refuse(SourceLine at, string why, string fix) =>
        into.Problems.Add(new ImportProblem(at, why, fix, ProblemSeverity.Refused));

    private T? Value<T>(Memo<T> memo, CellAt at, string what, string example) where T : struct
    {
        if (at.Cell.Words is not { } text || NotSaid.Is(text)) return null;
        var reading = memo[text];
        switch (reading.Outcome)
        {
            case Outcome.Certain:
                return reading.Value;
            case Outcome.Impossible:
                Refuse(at.Source, reading.Why ?? $"'{text}' cannot be {what}.", $"Correct it: {example}, or leave the cell empty.");
                return null;
            case Outcome.Doubtful:
                Ask(at.Source, reading.Why ?? $"'{text}' could be read in two ways as {what}.", $"Write {example}.");
                return null;
            default:
                Ask(at.Source, $"'{text}' could not be read as {what}.", $"Write {example}, and put other words under note.");
                return null;
        }
    }

    // Most cells of a log are a bare number well within what is possible.
    private static Reading<T>? Plain<T>(string text, double least, double most, Func<double, T> of) =>
        double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) && number >= least && number <= most
            ? new Reading<T>(Outcome.Certain, of(number), null, null)
            : null;
}
