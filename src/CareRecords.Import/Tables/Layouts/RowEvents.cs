using CareRecords.Import.Reading;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>Cells of an event in a row that has a time of its own.</summary>
internal static class RowEvents
{
    /// <summary>True when the cell's figures can only be a time: a bare number beside the row's own time is an amount or minutes.</summary>
    public static bool HasOwnTime(Cell cell)
    {
        if (cell.Kind is CellKind.TimeOfDay or CellKind.Moment) return true;
        if (cell.Kind == CellKind.Number) return cell.Number is > 0 and < 1;
        var text = cell.Text.Trim();
        // "06:40 percussion LL 3, RL 3" in the row of an hour.
        if (text.AsSpan().IndexOf(':') is > 0 and < 3 && EventCell.BeginsWithTime(text)) return true;
        if (EventCell.Read(text) is not { } events) return false;
        return text.Contains(':') || text.Any(char.IsLetter) && text.Contains('m', StringComparison.OrdinalIgnoreCase) && CellTimes.Clock(text).Outcome == Outcome.Certain
            || (events.Count > 0 && text.Length > 3 && text[1..].Contains('.') && !VolumeReader.Read(text).TryGet(out _));
    }
}
