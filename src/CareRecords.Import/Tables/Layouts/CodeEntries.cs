using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>Makes records of codes.</summary>
internal sealed class CodeEntries(BlockReading reading)
{
    /// <summary>Adds the record of one code; false, with nothing added or asked, when what stands after its letters is not what the key says.</summary>
    public bool Add(CodeWritten code, UncertainTime at, CellAt cell)
    {
        var before = reading.Into.Problems.Count;
        if (Entry(code, at, cell) is not { } entry) return reading.Into.Problems.Count > before;
        reading.Add(entry, cell);
        return true;
    }

    private CareEntry? Entry(CodeWritten code, UncertainTime at, CellAt cell) => code.What.Kind switch
    {
        TableKind.Sessions => Session(code, at, cell),
        TableKind.Feeds => Feed(code, at, cell),
        TableKind.Medicines => Dose(code, at, cell),
        TableKind.Checks => Check(code, at, cell),
        TableKind.Signs => Sign(code, at, cell),
        _ => null,
    };

    private Session? Session(CodeWritten code, UncertainTime at, CellAt cell)
    {
        IReadOnlyList<AreaMinutes>? areas = [];
        if (code.Rest.Length > 0)
        {
            var order = AreaNames.In(code.Code) is { Count: > 1 } inCode ? inCode : code.What.Areas.Count > 1 ? code.What.Areas : AreaNames.In(code.Means) is { Count: > 1 } inMeaning ? inMeaning : reading.AreaOrder;
            areas = AreaNumbers.Read(code.Rest, order, why => reading.Cells.Refuse(cell.Source, why, "Correct the minutes."));
            if (areas is null && AreasReader.Read(code.Rest, reading.Context.Words).TryGet(out var written))
                return new Session { Sources = [cell.Source], Start = at, Areas = Of(written.Areas, code.What.Technique), MinutesWritten = written.MinutesWritten };
        }

        return areas is null ? null : new Session { Sources = [cell.Source], Start = at, Areas = Of(areas, code.What.Technique) };
    }

    private static IReadOnlyList<AreaMinutes> Of(IReadOnlyList<AreaMinutes> areas, Technique technique) =>
        [.. areas.Select(a => a.Technique == Technique.Unknown ? a with { Technique = technique } : a)];

    private Feed? Feed(CodeWritten code, UncertainTime at, CellAt cell)
    {
        double? volume = null;
        if (code.Rest.Length > 0)
        {
            var read = VolumeReader.Read(code.Rest);
            if (read.Outcome == Outcome.Impossible) reading.Cells.Refuse(cell.Source, read.Why ?? $"'{code.Rest}' cannot be a volume.", "Correct the volume.");
            else if (!read.TryGet(out var ml)) return null;
            else volume = ml;
        }

        var ends = code.What.IsEnd && !code.What.IsStart;
        return new Feed { Sources = [cell.Source], Start = ends ? null : at, End = ends ? at : null, Millilitres = volume, Route = code.What.Route };
    }

    private Dose? Dose(CodeWritten code, UncertainTime at, CellAt cell)
    {
        var named = MedicineReader.Read(code.Means.Split(',')[0], FamilyWords.None) is { Outcome: Outcome.Certain, Value: { } read } ? read : null;
        var medicine = named?.Generic ?? code.What.Medicine;
        if (medicine is null or Medicines.Unknown)
        {
            var name = "what-is:" + code.Code.ToLowerInvariant();
            reading.Into.Questions.TryAdd(name, new Notes.AskedQuestion($"Which medicine is '{code.Code}' ({code.Means})?", []));
            reading.Cells.Ask(cell.Source, $"'{code.Code}' ({code.Means}) names no medicine known here.", "Say which medicine it is in a words table.", name);
            medicine = Medicines.Unknown;
        }

        var unit = Unit(code.Means);
        var amount = code.Rest.Length == 0 ? named?.Amount : unit is not null && !code.Rest.Any(char.IsLetter) ? $"{code.Rest} {unit}" : code.Rest;
        return new Dose { Sources = [cell.Source], Start = at, Medicine = medicine, MedicineAsWritten = code.Means, Amount = amount, Route = named?.Route };
    }

    private static string? Unit(string means) =>
        Lexicon.Split(means).Select(w => w switch { "puffs" or "puff" => "puffs", "ml" or "mls" => "ml", "mg" => "mg", "mcg" => "mcg", "drops" => "drops", _ => null }).FirstOrDefault(u => u is not null);

    private Check? Check(CodeWritten code, UncertainTime at, CellAt cell)
    {
        var parts = code.Rest.Split(['/', '@'], StringSplitOptions.TrimEntries);
        if (parts.Length is 0 or > 2) return null;
        double? litres = null;
        if (parts.Length == 2 && OxygenReader.Read(parts[1]) is var flow && !flow.TryGet(out var read)) return flow.Outcome == Outcome.Impossible ? Refused<Check>(cell, flow.Why) : null;
        else if (parts.Length == 2) litres = OxygenReader.Read(parts[1]).Value;
        var saturation = SaturationReader.Read(parts[0]);
        if (saturation.Outcome == Outcome.Impossible) Refused<Check>(cell, saturation.Why);
        else if (!saturation.TryGet(out _)) return null;
        if (saturation.Outcome == Outcome.Impossible && litres is null) return null;
        return new Check
        {
            Sources = [cell.Source],
            Start = at,
            SpO2 = saturation.TryGet(out var percent) ? percent.Percent : null,
            SpO2High = saturation.TryGet(out var range) ? range.High : null,
            OxygenLitresPerMinute = litres,
        };
    }

    private T? Refused<T>(CellAt cell, string? why) where T : class
    {
        reading.Cells.Refuse(cell.Source, why ?? $"'{cell.Cell.Words}' is not possible.", "Correct it.");
        return null;
    }

    private Sign? Sign(CodeWritten code, UncertainTime at, CellAt cell)
    {
        if (code.What.Sign != SignKind.Temperature)
            return new Sign { Sources = [cell.Source], Start = at, Kind = code.What.Sign, What = SignWords.NameOf(code.What.Sign), Value = code.Rest.Length == 0 ? null : code.Rest };
        var read = TemperatureReader.Read(code.Rest);
        if (read.Outcome == Outcome.Impossible) return Refused<Sign>(cell, read.Why);
        return read.TryGet(out var temperature)
            ? new Sign { Sources = [cell.Source], Start = at, Kind = SignKind.Temperature, What = SignWords.NameOf(SignKind.Temperature), Value = temperature.AsWritten, Number = temperature.Celsius } : null;
    }
}
