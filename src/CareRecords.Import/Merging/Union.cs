using CareRecords.Records;

namespace CareRecords.Import.Merging;

/// <summary>How much an entry says: the fuller writing of an event is kept.</summary>
internal static class Richness
{
    /// <summary>A count of filled fields; an exact time weighs most.</summary>
    public static int Of(CareEntry entry) =>
        (entry.When.Precision == TimePrecision.Exact ? 10 : 0) + (entry.End is not null ? 2 : 0) + (entry.Note is not null ? 1 : 0)
        + entry switch
        {
            Session s => s.Areas.Count + (s.MinutesWritten is not null ? 1 : 0),
            Feed f => (f.Millilitres is not null ? 1 : 0) + (f.Route != FeedRoute.Unknown ? 1 : 0) + (f.Start is not null ? 4 : 0),
            Dose d => (d.Medicine != Medicines.Unknown ? 4 : 0) + (d.Amount is not null ? 1 : 0),
            Check c => (c.Pulse is not null ? 1 : 0) + (c.OxygenLitresPerMinute is not null ? 1 : 0) + (c.Phase != CheckPhase.None ? 1 : 0),
            Sign s => s.Value is not null ? 1 : 0,
            _ => 0,
        };
}

/// <summary>One entry of two writings of an event: the kept one, its gaps filled from the other, with both sources.</summary>
internal static class Union
{
    /// <summary>The whole.</summary>
    public static CareEntry Of(CareEntry kept, CareEntry other)
    {
        var filled = (kept, other) switch
        {
            (Session a, Session b) => a with
            {
                Areas = a.Areas.Count > 0 ? a.Areas : b.Areas,
                MinutesWritten = a.MinutesWritten ?? (a.Areas.Count > 0 ? null : b.MinutesWritten),
                Techniques = a.Techniques ?? b.Techniques,
                Cough = a.Cough ?? b.Cough,
                Secretions = a.Secretions ?? b.Secretions,
                Colour = a.Colour ?? b.Colour,
                StoppedEarly = a.StoppedEarly ?? b.StoppedEarly,
                Vomited = a.Vomited ?? b.Vomited,
            },
            (Feed a, Feed b) => a with
            {
                Millilitres = a.Millilitres ?? b.Millilitres,
                MillilitresPerHour = a.MillilitresPerHour ?? b.MillilitresPerHour,
                Route = a.Route == FeedRoute.Unknown || (a.Route == FeedRoute.Tube && b.Route is FeedRoute.PumpedTube or FeedRoute.BolusTube) ? b.Route : a.Route,
            },
            (Dose a, Dose b) => a with
            {
                Medicine = a.Medicine == Medicines.Unknown ? b.Medicine : a.Medicine,
                MedicineAsWritten = a.MedicineAsWritten ?? b.MedicineAsWritten,
                Amount = a.Amount ?? b.Amount,
                Route = a.Route ?? b.Route,
            },
            (Check a, Check b) => a with
            {
                Pulse = a.Pulse ?? b.Pulse,
                OxygenLitresPerMinute = a.OxygenLitresPerMinute ?? b.OxygenLitresPerMinute,
                Phase = a.Phase == CheckPhase.None ? b.Phase : a.Phase,
            },
            (Sign a, Sign b) => a with { Value = a.Value ?? b.Value, Number = a.Number ?? b.Number },
            _ => kept,
        };
        return filled with
        {
            Sources = [.. kept.Sources.Concat(other.Sources).Distinct()],
            Start = kept.Start ?? other.Start,
            End = kept.End ?? other.End,
            By = kept.By is { } a1 && other.By is { } b1 && !string.Equals(a1, b1, StringComparison.OrdinalIgnoreCase) ? $"{a1}, {b1}" : kept.By ?? other.By,
            Note = kept.Note ?? other.Note,
            HowRead = kept.HowRead ?? other.HowRead,
        };
    }
}
