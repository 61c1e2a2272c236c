using System.Text.RegularExpressions;
using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>
/// Reads a column of how fast a pump ran, written down again and again: "on 60", "60", "60", "off". The feed begins and ends where the words say so; a rate between the two tells
/// of no other feed.
/// </summary>
internal sealed partial class RunningFeeds(BlockReading reading)
{
    private readonly Dictionary<int, bool> _isRunning = [];
    private readonly Dictionary<int, bool> _tellsEnds = [];

    /// <summary>Reads the rate of one row; false where the column never says that the pump was turned off, so that each rate is a feed of its own.</summary>
    /// <param name="row">The row.</param>
    /// <param name="column">The column of rates.</param>
    /// <param name="at">The row's time.</param>
    public bool Read(BlockRow row, int column, UncertainTime? at)
    {
        if (!_tellsEnds.TryGetValue(column, out var tells)) _tellsEnds[column] = tells = reading.Block.Rows.Any(r => Off().IsMatch(r[column].Cell.Text)) && reading.Block.Rows.Any(r => RateReader.Read(r[column].Cell.Text.Trim()).Outcome == Outcome.Certain);
        if (!tells || at is null) return false;
        var cell = row[column];
        var text = cell.Cell.Text.Trim();
        if (cell.Cell.IsEmpty || NotSaid.Is(text)) return true;
        if (Off().IsMatch(text))
        {
            reading.Add(new Feed { Sources = [reading.SourceOf(row, -1)], End = at, Route = FeedRoute.PumpedTube, By = row[reading.Slots.By].Cell.Words }, cell);
            _isRunning[column] = false;
            return true;
        }

        var on = On().IsMatch(text);
        if (RateReader.Read(On().Replace(text, "").Trim()) is not { Outcome: Outcome.Certain, Value: var rate }) return false;
        if (on || !_isRunning.GetValueOrDefault(column))
            reading.Add(new Feed { Sources = [reading.SourceOf(row, -1)], Start = at, MillilitresPerHour = rate, Route = FeedRoute.PumpedTube, By = row[reading.Slots.By].Cell.Words, HowRead = on ? null : "The first rate written: it may have run before." }, cell);
        else reading.Saw(cell);
        _isRunning[column] = true;
        return true;
    }

    [GeneratedRegex(@"^(?:back )?(?:on|started|start|restarted|connected|running)\b(?: at)?", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex On();

    [GeneratedRegex(@"^(?:turned |switched )?(?:off|stopped|stop|ended|finished|disconnected|paused)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Off();
}
