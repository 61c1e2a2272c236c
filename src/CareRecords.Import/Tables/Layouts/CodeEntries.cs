using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>Makes records of codes.</summary>
internal sealed class CodeEntries(BlockReading reading, FreeWords words)
{
    private readonly List<CareEntry> _ofCell = [];

    /// <summary>Adds the records of one code; false, with nothing added or asked, when what stands after its letters is not what the key says.</summary>
    /// <param name="code">The code.</param>
    /// <param name="at">Its time.</param>
    /// <param name="cell">Its cell.</param>
    /// <param name="to">Its end; null when none is written.</param>
    /// <param name="before">The time of what stands before it in the cell, which a reading before or after that borrows; null when nothing does.</param>
    public bool Add(CodeWritten code, UncertainTime at, CellAt cell, UncertainTime? before, UncertainTime? to = null)
    {
        var problems = reading.Into.Problems.Count;
        // "x = should have been chest, was not done".
        if (SameAs.SaysNotDone(code.Means))
        {
            if (code.What.Kind == TableKind.Sessions) reading.Into.Omitted.Add(new OmittedSession(at, $"{code.Code} ({code.Means}) {code.Rest}".Trim(), cell.Source));
            reading.Use(cell);
            return true;
        }

        var entries = Entries(code, at, cell, before);
        if (to is not null) entries = [.. entries.Select(e => (e is Records.Session or Records.Feed) && e.Start is not null ? e with { End = to } : e)];
        foreach (var entry in entries)
        {
            reading.Add(entry, cell);
            _ofCell.Add(entry);
        }

        return entries.Count > 0 || reading.Into.Problems.Count > problems;
    }

    /// <summary>Takes what stands behind a code of the same cell as more of it ("P, tops only", "S 93/120 before, 95/116 after"); false when it is something else.</summary>
    public bool AddMore(string text, CodeWritten code, UncertainTime at, CellAt cell)
    {
        if (code.What.Kind == TableKind.Checks && code.What.Measure == Role.Saturation)
        {
            if (!char.IsAsciiDigit(text[0])) return false;
            return Add(code with { Rest = text, MinuteTo = null }, at, cell, at.IsExact ? at : null);
        }

        if (code.What.Kind != TableKind.Sessions || _ofCell.OfType<Session>().LastOrDefault() is not { } session) return false;
        if (AreasReader.Read(text, FamilyWords.None) is not { Outcome: Outcome.Certain, Value.Areas: { Count: > 0 } told }) return false;
        IReadOnlyList<AreaMinutes> areas = told.All(t => t.Minutes is not null) && told.Any(t => t.Technique != Technique.Vibration)
            ? [.. session.Areas.Where(a => !told.Any(t => t.Side == a.Side && t.Area == a.Area && t.Technique is Technique.Unknown or Technique.Percussion && a.Technique != Technique.Vibration)), .. With(session.Areas, told)] : With(session.Areas, told);
        var longer = session with { Areas = areas };
        if (reading.Into.Entries.LastIndexOf(session) is >= 0 and var index) reading.Replace(index, session, longer);
        _ofCell[_ofCell.IndexOf(session)] = longer;
        return true;
    }

    /// <summary>Ends a cell: a flow alone is that of the saturations of its cell.</summary>
    public void Join(CellAt cell)
    {
        if (_ofCell.OfType<Check>().Where(c => c is { SpO2: null, Pulse: null, OxygenLitresPerMinute: not null, Note: null }).ToList() is [var flow] && _ofCell.OfType<Check>().Where(c => c.SpO2 is not null).ToList() is { Count: > 0 } readings && readings.TrueForAll(r => r.OxygenLitresPerMinute is null) && !IsChange(cell.Cell.Text))
        {
            foreach (var of in readings)
                if (reading.Into.Entries.LastIndexOf(of) is >= 0 and var at)
                    reading.Into.Entries[at] = of with { OxygenLitresPerMinute = flow.OxygenLitresPerMinute };
            reading.Into.Entries.Remove(flow);
        }

        _ofCell.Clear();
    }

    // "O up to 1" was turned after the reading that stands before it.
    private static bool IsChange(string text) => Lexicon.Split(text).Any(w => w is "up" or "down");

    // Parts named with minutes are as they say, parts named without are the ones of the key, another technique comes on top.
    private static IReadOnlyList<AreaMinutes> With(IReadOnlyList<AreaMinutes> key, IReadOnlyList<AreaMinutes> told)
    {
        if (told.All(t => t.Technique == Technique.Vibration)) return [.. key, .. told];
        var named = told.Select(t => t.Minutes is not null ? t with { Technique = t.Technique == Technique.Unknown && key.Count > 0 ? key[0].Technique : t.Technique }
            : key.FirstOrDefault(k => k.Side == t.Side && k.Area == t.Area) is { Side: not Side.Unknown } same ? same : t).ToList();
        return [.. named.SelectMany(t => t.Side == Side.Unknown && t.Minutes is null && key.Where(k => k.Area == t.Area).ToList() is { Count: > 0 } ofArea ? ofArea : [t])];
    }

    private IReadOnlyList<CareEntry> Entries(CodeWritten code, UncertainTime at, CellAt cell, UncertainTime? before) => code.What.Kind switch
    {
        TableKind.Sessions => One(Session(code, at, cell)),
        TableKind.Feeds => One(Feed(code, at, cell)),
        TableKind.Medicines => One(Dose(code, at, cell)),
        TableKind.Checks => Checks(code, at, cell, before),
        TableKind.Signs => One(Sign(code, at, cell)),
        _ => [],
    };

    private static IReadOnlyList<CareEntry> One(CareEntry? entry) => entry is null ? [] : [entry];

    private Session? Session(CodeWritten code, UncertainTime at, CellAt cell)
    {
        IReadOnlyList<AreaMinutes> key = OfKey(code.Means, at), also = code.Also is null ? [] : OfKey(code.Also, at);
        if (SameAs.PointsBack(code.Rest)) return new Session { Sources = [cell.Source], Start = at, Areas = reading.Same(code.Rest, at.Stated.TimeOfDay)?.Areas ?? key };
        IReadOnlyList<AreaMinutes>? areas = key;
        double? total = null;
        if (code.Rest.Length > 0)
        {
            var order = AreaNames.In(code.Code) is { Count: > 1 } inCode ? inCode : code.What.Areas.Count > 1 ? code.What.Areas : AreaNames.In(code.Means) is { Count: > 1 } inMeaning ? inMeaning : reading.AreaOrder;
            areas = AreaNumbers.Read(code.Rest, order, why => reading.Cells.Refuse(cell.Source, why, "Correct the minutes."));
            if (areas is null && AreasReader.Read(code.Rest, FamilyWords.None).TryGet(out var written)) (areas, total) = (With(key, written.Areas), written.MinutesWritten);
        }

        return areas is null ? null : new Session { Sources = [cell.Source], Start = at, Areas = Of([.. areas, .. also], code.What.Technique), MinutesWritten = total };
    }

    // "P = physio, 3 min each on L bottom and R bottom": the minutes of every P without its own.
    private IReadOnlyList<AreaMinutes> OfKey(string means, UncertainTime at)
    {
        if (!means.Any(char.IsAsciiDigit)) return [];
        return words.Told(means, null, UncertainTime.Exactly(at.Stated), "key") is [Session { Areas.Count: > 0 } session] ? session.Areas : [];
    }

    private static IReadOnlyList<AreaMinutes> Of(IReadOnlyList<AreaMinutes> areas, Technique technique) =>
        [.. areas.Select(a => a.Technique == Technique.Unknown ? a with { Technique = technique } : a)];

    private Feed? Feed(CodeWritten code, UncertainTime at, CellAt cell)
    {
        double? volume = null;
        // "F off", "F on 60/hr", "F 120".
        var first = code.Rest.Split(' ')[0];
        var turned = OnOff.Ends(first);
        var rest = turned is null ? code.Rest : code.Rest[first.Length..].Trim();
        double? rate = rest.Contains("/h", StringComparison.OrdinalIgnoreCase) && RateReader.Read(rest).TryGet(out var perHour) ? perHour : null;
        if (rest.Length > 0 && rate is null)
        {
            var read = VolumeReader.Read(rest);
            if (read.Outcome == Outcome.Impossible) reading.Cells.Refuse(cell.Source, read.Why ?? $"'{code.Rest}' cannot be a volume.", "Correct the volume.");
            else if (!read.TryGet(out var ml)) return null;
            else volume = ml;
        }

        var ends = turned ?? (code.What.IsEnd && !code.What.IsStart);
        return new Feed { Sources = [cell.Source], Start = ends ? null : at, End = ends ? at : null, Millilitres = volume, MillilitresPerHour = rate, Route = code.What.Route };
    }

    private Dose? Dose(CodeWritten code, UncertainTime at, CellAt cell)
    {
        var named = CodeWords.Clauses(code.Means).Select(m => MedicineReader.Read(m, FamilyWords.None)).Where(m => m is { Outcome: Outcome.Certain, Value: not null }).Select(m => m.Value!).FirstOrDefault(m => m.Generic != Medicines.Unknown);
        var medicine = named?.Generic ?? code.What.Medicine;
        if (medicine is null or Medicines.Unknown)
        {
            var name = "what-is:" + code.Code.ToLowerInvariant();
            reading.Into.Questions.TryAdd(name, new Notes.AskedQuestion($"Which medicine is '{code.Code}' ({code.Means})?", []));
            reading.Cells.Ask(cell.Source, $"'{code.Code}' ({code.Means}) names no medicine known here.", "Say which medicine it is in a words table.", name);
            medicine = Medicines.Unknown;
        }

        var unit = CodeWords.UnitIn(code.Means);
        var amount = code.Rest.Length == 0 ? named?.Amount : unit is not null && !code.Rest.Any(char.IsLetter) ? $"{code.Rest} {unit}" : code.Rest;
        return new Dose { Sources = [cell.Source], Start = at, Medicine = medicine, MedicineAsWritten = code.Means, Amount = amount, Route = named?.Route };
    }

    // "S94/0.5", "S 92/122", "R 95/112/0.5": the figures in the order in which the key names the measures; else as in any cell of saturations.
    private List<Check> Checks(CodeWritten code, UncertainTime at, CellAt cell, UncertainTime? before)
    {
        if (code.What.Measure != Role.Saturation) return Alone(code, at, cell) is { } alone ? [alone] : [];
        if (MeasureOrder.Read(code.Rest, MeasureOrder.In(code.Code + " " + code.Means), why => Refused<Check>(cell, why)) is { } ordered)
            return ordered is { Saturation: null, Pulse: null, Oxygen: null } ? [] : [new Check { Sources = [cell.Source], Start = at, SpO2 = ordered.Saturation?.Percent, SpO2High = ordered.Saturation?.High, Pulse = ordered.Pulse, OxygenLitresPerMinute = ordered.Oxygen }];
        if (CheckCell.Read(code.Rest, why => Refused<Check>(cell, why)) is not { } found) return [];
        return [.. found.Select(f => new Check { Sources = [cell.Source], Start = f.Phase != CheckPhase.None && before is { IsExact: true } ? Notes.TimesOfEvents.Borrowed(before.Stated, f.Phase) : at, SpO2 = f.Saturation?.Percent, SpO2High = f.Saturation?.High, Pulse = f.Pulse, OxygenLitresPerMinute = f.Oxygen, Phase = f.Phase })];
    }

    private Check? Alone(CodeWritten code, UncertainTime at, CellAt cell)
    {
        var read = code.What.Measure == Role.Pulse ? PulseReader.Read(code.Rest) : OxygenReader.Read(code.Rest);
        if (read.Outcome == Outcome.Impossible) return Refused<Check>(cell, read.Why);
        double? value = read.TryGet(out var plain) ? plain : code.What.Measure == Role.Oxygen ? KindRows.FlowTo(" " + code.Rest) : null;
        return value is null ? null : new Check { Sources = [cell.Source], Start = at, Pulse = code.What.Measure == Role.Pulse ? value : null, OxygenLitresPerMinute = code.What.Measure == Role.Oxygen ? value : null };
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
