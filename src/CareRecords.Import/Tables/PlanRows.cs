using System.Collections.Frozen;
using System.Globalization;
using CareRecords.Import.Reading;
using CareRecords.Records;
using NodaTime;
using NodaTime.Text;

namespace CareRecords.Import.Tables;

/// <summary>Reads one row of a plan table.</summary>
internal static class PlanRows
{
    private static readonly FrozenDictionary<string, PlanItem> Items = PlanItems.All
        .Select(d => (Name: CanonicalHeader.Fold(d.Name), d.Item))
        .Concat(
        [
            ("timezone", PlanItem.TimeZone), ("zone", PlanItem.TimeZone), ("daystart", PlanItem.DayStarts), ("dayfrom", PlanItem.DayStarts),
            ("feedgap", PlanItem.FeedGapMinutes), ("feedstopminutes", PlanItem.FeedGapMinutes), ("inhalergap", PlanItem.InhalerGapMinutes),
            ("inhalerwindow", PlanItem.InhalerWindowMinutes), ("medicinebefore", PlanItem.MedicineBeforeSession), ("inhaler", PlanItem.MedicineBeforeSession),
            ("sessionsaday", PlanItem.SessionsPerDay), ("sessions", PlanItem.SessionsPerDay), ("minutesanarea", PlanItem.MinutesPerArea),
            ("minutesperspot", PlanItem.MinutesPerArea), ("lowerminutes", PlanItem.MinutesLower), ("minutesbottoms", PlanItem.MinutesLower), ("minutesonthebottoms", PlanItem.MinutesLower), ("minutesbases", PlanItem.MinutesLower),
            ("upperminutes", PlanItem.MinutesUpper), ("minutestops", PlanItem.MinutesUpper), ("minutesonthetops", PlanItem.MinutesUpper), ("vibrationminutes", PlanItem.MinutesVibration), ("minutesvibrations", PlanItem.MinutesVibration), ("minutesvibs", PlanItem.MinutesVibration),
            ("targetlow", PlanItem.TargetSaturationLow), ("targethigh", PlanItem.TargetSaturationHigh),
            ("stopbelow", PlanItem.StopSaturation), ("oxygen", PlanItem.UsualOxygen), ("usualfeed", PlanItem.UsualFeedMinutes),
            ("sameevent", PlanItem.SameEventMinutes), ("name", PlanItem.ChildCalled), ("childcalled", PlanItem.ChildCalled), ("age", PlanItem.AgeBand), ("group", PlanItem.StudyGroup),
        ])
        .DistinctBy(p => p.Item1)
        .ToFrozenDictionary(p => p.Item1, p => p.Item2);

    private static readonly FrozenSet<PlanItem> InWords =
        new[] { PlanItem.TimeZone, PlanItem.MedicineBeforeSession, PlanItem.ChildCalled, PlanItem.AgeBand, PlanItem.StudyGroup }.ToFrozenSet();

    /// <summary>The row; null, with a problem, when it cannot be used. A row without a date is kept and asked about: it holds from the first record.</summary>
    public static PlanRow? Read(RowCells row, LocalDate? from, bool dateIsBad, CellReaders cells)
    {
        if (dateIsBad) return null;
        var (itemWords, value) = (row.Words(Field.Item), row.Words(Field.Value));
        if (itemWords is null || value is null)
        {
            cells.Ask(row.Source, "A plan row needs both an item and a value.", "Write both, or delete the row.");
            return null;
        }

        if (!Items.TryGetValue(CanonicalHeader.Fold(itemWords), out var item))
        {
            cells.Ask(row.At(Field.Item).Source, $"'{itemWords}' is not an item of a plan.",
                "Use one of: " + string.Join(", ", PlanItems.All.Select(d => d.Name)) + ".");
            return null;
        }

        if (Value(item, value, row, cells) is not { } read) return null;
        if (from is null && item is not (PlanItem.TimeZone or PlanItem.ChildCalled or PlanItem.DayStarts or PlanItem.AgeBand or PlanItem.StudyGroup or PlanItem.SameEventMinutes))
            cells.Ask(row.Source, $"This plan row has no date: '{itemWords}' is taken to hold from the first record.", "Write the date from which it holds under from.");
        return new PlanRow(from, item, read.Text, read.Low, read.High, row.Source);
    }

    private static (string Text, double? Low, double? High)? Value(PlanItem item, string value, RowCells row, CellReaders cells)
    {
        if (item == PlanItem.TimeZone)
        {
            if (DateTimeZoneProviders.Tzdb.GetZoneOrNull(value) is not null) return (value, null, null);
            cells.Refuse(row.At(Field.Value).Source, $"'{value}' is not a time zone.", "Write its name as region and city, such as Europe/London or America/Chicago.");
            return null;
        }

        if (item == PlanItem.DayStarts) return DayStarts(value, row, cells);
        if (InWords.Contains(item)) return (value, null, null);
        if (Range(value) is { } range && range.Low >= 0 && range.Low <= range.High && Fits(item, range.High)) return (value, range.Low, range.High);
        cells.Refuse(row.At(Field.Value).Source, $"'{value}' cannot be the plan's {PlanItems.Describe(item).Name}.",
            $"Write a number{(PlanItems.Describe(item).Unit is { Length: > 0 } unit ? " of " + unit : "")}, or a range such as 3-5.");
        return null;
    }

    // The plan's readers take hours and minutes with a colon, so that form is kept.
    private static (string, double?, double?)? DayStarts(string value, RowCells row, CellReaders cells)
    {
        var time = row[Field.Value].Kind == CellKind.TimeOfDay ? row[Field.Value].At.TimeOfDay
            : LocalTimePattern.CreateWithInvariantCulture("H:mm").Parse(value).TryGetValue(default, out var parsed) ? parsed
            : ClockReader.Read(value) is { Outcome: Outcome.Certain, Value: { End: null, Start.Precision: TimePrecision.Exact } span } ? span.Start.Time
            : (LocalTime?)null;
        if (time is { } at) return (LocalTimePattern.CreateWithInvariantCulture("HH:mm").Format(at), null, null);
        cells.Refuse(row.At(Field.Value).Source, $"'{value}' is not a clock time for the start of the day.", "Write it as 04:00.");
        return null;
    }

    private static bool Fits(PlanItem item, double high) => item switch
    {
        PlanItem.TargetSaturationLow or PlanItem.TargetSaturationHigh or PlanItem.StopSaturation or PlanItem.TargetShareKept => high <= 100,
        PlanItem.SessionsPerDay => high <= 24,
        PlanItem.UsualOxygen => high <= 60,
        _ => high <= 24 * 60,
    };

    private static (double Low, double High)? Range(string text)
    {
        var parts = text.Replace("–", "-", StringComparison.Ordinal).Replace(" to ", "-", StringComparison.OrdinalIgnoreCase).Split('-');
        if (parts.Length is < 1 or > 2 || Number(parts[0]) is not { } low) return null;
        return parts.Length == 1 ? (low, low) : Number(parts[1]) is { } high ? (low, high) : null;
    }

    private static double? Number(string text) =>
        double.TryParse(text.Trim().TrimEnd('%').Replace(',', '.').Replace(" min", "", StringComparison.OrdinalIgnoreCase).Trim(), NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite, CultureInfo.InvariantCulture, out var number) ? number : null;
}
