using CareRecords.Records;

namespace CareRecords.Import.Tables;

/// <summary>When a row says that something began and ended.</summary>
/// <param name="Start">The start; null when not said.</param>
/// <param name="End">The end; null when not said.</param>
internal readonly record struct RowTimes(UncertainTime? Start, UncertainTime? End);

/// <summary>Makes one record of a row whose columns and times are known. Null, with a problem, when the row holds none.</summary>
internal sealed class EntryRows(CellReaders cells)
{
    private const double MostMinutesOnOneArea = 30;
    private const double MostMinutesInAll = 240;

    private static readonly (Field Field, Side Side, ChestArea Area, Technique Technique)[] AreaFields =
    [
        (Field.LeftLower, Side.Left, ChestArea.Lower, Technique.Percussion), (Field.LeftUpper, Side.Left, ChestArea.Upper, Technique.Percussion),
        (Field.LeftVibration, Side.Left, ChestArea.Unknown, Technique.Vibration), (Field.RightLower, Side.Right, ChestArea.Lower, Technique.Percussion),
        (Field.RightUpper, Side.Right, ChestArea.Upper, Technique.Percussion), (Field.RightVibration, Side.Right, ChestArea.Unknown, Technique.Vibration),
    ];

    /// <summary>The record of a row of a table of the given kind.</summary>
    public CareEntry? Read(TableKind kind, RowCells row, RowTimes times) => kind switch
    {
        TableKind.Sessions => Session(row, times),
        TableKind.Feeds => Feed(row, times),
        TableKind.Medicines => Dose(row, times),
        TableKind.Checks => Check(row, times),
        TableKind.Signs => Sign(row, times),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private Session? Session(RowCells row, RowTimes times)
    {
        if (times.Start is null) return NoTime<Session>(row, "this session started");
        var areas = new List<AreaMinutes>(6);
        foreach (var (field, side, area, technique) in AreaFields)
            if (cells.Minutes(row.At(field), MostMinutesOnOneArea) is { } minutes)
                areas.Add(new AreaMinutes(side, area, technique, minutes.Minutes, minutes.High));
        var vomited = row.Words(Field.Vomited);
        return new Session
        {
            Sources = [row.Source],
            Start = times.Start,
            End = times.End,
            Areas = areas,
            MinutesWritten = cells.Minutes(row.At(Field.Minutes), MostMinutesInAll)?.Minutes,
            Techniques = row.Words(Field.Techniques),
            Cough = row.Words(Field.Cough),
            Secretions = row.Words(Field.Secretions),
            Colour = row.Words(Field.Colour),
            StoppedEarly = row.Words(Field.StoppedEarly) is { } early && SmallWords.ReadYesNo(early) != false ? early : null,
            // "after, a little" is not no: other words count as yes and stay readable in the note.
            Vomited = vomited is null ? null : SmallWords.ReadYesNo(vomited) ?? true,
            By = row.Words(Field.By),
            Note = Join(row.Words(Field.Note), vomited is not null && SmallWords.ReadYesNo(vomited) is null ? "vomited: " + vomited : null),
        };
    }

    private Feed? Feed(RowCells row, RowTimes times)
    {
        if (times.Start is null && times.End is null) return NoTime<Feed>(row, "this feed started or ended");
        var route = row.Words(Field.Route);
        var read = route is null ? FeedRoute.Unknown : SmallWords.ReadRoute(route);
        return new Feed
        {
            Sources = [row.Source],
            Start = times.Start,
            End = times.End,
            Millilitres = cells.Millilitres(row.At(Field.Millilitres)),
            Route = read ?? FeedRoute.Unknown,
            By = row.Words(Field.By),
            Note = Join(row.Words(Field.Note), read is null ? "route: " + route : null),
        };
    }

    private Dose? Dose(RowCells row, RowTimes times)
    {
        if (times.Start is null) return NoTime<Dose>(row, "this medicine was given");
        if (cells.Medicine(row.At(Field.Medicine)) is not { } medicine)
        {
            if (row[Field.Medicine].IsEmpty)
                cells.Ask(row.Source, "A dose with no medicine named.", "Write the medicine's name.");
            return null;
        }

        return new Dose
        {
            Sources = [row.Source],
            Start = times.Start,
            End = times.End,
            Medicine = medicine.Generic,
            MedicineAsWritten = row.Words(Field.Medicine),
            Amount = row.Words(Field.Amount) ?? medicine.Amount,
            Route = row.Words(Field.Route) ?? medicine.Route,
            By = row.Words(Field.By),
            Note = row.Words(Field.Note),
        };
    }

    private Check? Check(RowCells row, RowTimes times)
    {
        if (times.Start is null) return NoTime<Check>(row, "this was checked");
        var saturation = cells.Saturation(row.At(Field.SpO2));
        var pulse = cells.Pulse(row.At(Field.Pulse));
        var oxygen = cells.Oxygen(row.At(Field.Oxygen));
        if (saturation is null && pulse is null && oxygen is null)
        {
            if (row[Field.SpO2].IsEmpty && row[Field.Pulse].IsEmpty && row[Field.Oxygen].IsEmpty)
                cells.Ask(row.Source, "A check with no saturation, pulse or oxygen.", "Write what was read, or delete the row.");
            return null;
        }

        var phase = row.Words(Field.Phase);
        var read = phase is null ? CheckPhase.None : SmallWords.ReadPhase(phase);
        return new Check
        {
            Sources = [row.Source],
            Start = times.Start,
            End = times.End,
            SpO2 = saturation?.Percent,
            SpO2High = saturation?.High,
            Pulse = pulse,
            OxygenLitresPerMinute = oxygen,
            Phase = read ?? CheckPhase.None,
            By = row.Words(Field.By),
            Note = Join(row.Words(Field.Note), read is null ? "phase: " + phase : null),
        };
    }

    private Sign? Sign(RowCells row, RowTimes times)
    {
        if (times.Start is null) return NoTime<Sign>(row, "this was noticed");
        if (row.Words(Field.Sign) is not { } word)
        {
            cells.Ask(row.Source, "A sign that is not named.", "Write what was noticed: unwell, temperature, vomit, colour, distress, secretions, antibiotic, admitted, discharged, better or other.");
            return null;
        }

        var kind = SignWords.KindOf(word) ?? SignKind.Other;
        var value = row.Words(Field.Value);
        double? number = null;
        if (kind == SignKind.Temperature && value is not null)
        {
            if (cells.Temperature(row.At(Field.Value)) is not { } temperature) return null;
            (number, value) = (temperature.Celsius, temperature.AsWritten);
        }
        else if (kind == SignKind.BreathingRate && value is not null)
        {
            number = cells.Pulse(row.At(Field.Value));
        }

        return new Sign
        {
            Sources = [row.Source],
            Start = times.Start,
            End = times.End,
            Kind = kind,
            What = kind == SignKind.Other ? word : SignWords.NameOf(kind),
            Value = value,
            Number = number,
            By = row.Words(Field.By),
            Note = row.Words(Field.Note),
        };
    }

    private T? NoTime<T>(RowCells row, string what) where T : CareEntry
    {
        cells.Ask(row.Source, $"No time is written for when {what}.", "Write the date and time in the row.");
        return null;
    }

    private static string? Join(string? note, string? more) => more is null ? note : note is null ? more : $"{note}; {more}";
}
