using System.Text.Json;
using CareRecords.Simulation;

namespace CareRecords.Findings.Tests.Json;

public class FindingsJsonTests
{
    private static readonly JsonElement Root = Written();

    private static JsonElement Written()
    {
        var (log, _) = SimulatedChild.Make(new() { Seed = 3, Days = 80, DaysNotWritten = 0.05, FeedsWritten = 0.9 });
        using var stream = new MemoryStream();
        FindingsJson.Write(Reviewer.Review(log), stream);
        Assert.True(stream.CanWrite);
        return JsonDocument.Parse(stream.ToArray()).RootElement.Clone();
    }

    [Fact]
    public void Top_level_keys_are_the_ones_promised()
    {
        var keys = Root.EnumerateObject().Select(p => p.Name).ToHashSet();
        Assert.Superset(new HashSet<string> { "span", "sessions", "adherence", "baseline", "episodes", "taper", "recovery", "sessionEffect", "quality", "flags" }, keys);
    }

    [Theory]
    [InlineData("span", "from", "to", "zone", "daysWithRecords", "daysMissing")]
    [InlineData("sessions/0", "start", "minutes", "feedGap", "inhalerGap", "before", "after", "episode", "step")]
    [InlineData("sessions/0/feedGap", "low", "high", "verdict")]
    [InlineData("sessions/0/inhalerGap", "low", "high", "medicine", "verdict")]
    [InlineData("sessions/0/before", "spo2", "oxygen")]
    [InlineData("adherence", "feedGap", "inhalerGap", "sessions", "minutes", "byWeek")]
    [InlineData("adherence/feedGap", "kept", "judged", "unknown", "proportion", "low", "high", "level", "method")]
    [InlineData("adherence/sessions", "done", "planned", "proportion")]
    [InlineData("adherence/byWeek/0", "feedGap", "inhalerGap", "sessions", "minutes")]
    [InlineData("baseline", "spo2", "spo2Low", "oxygen", "daysUsed")]
    [InlineData("episodes/0", "id", "onset", "onsetLow", "onsetHigh", "peak", "lowestSpo2", "highestOxygen", "mostSessions", "relapseOf", "recovery", "backToMaintenanceDays")]
    [InlineData("episodes/0/recovery", "daysLow", "daysHigh", "estimate", "low", "high", "level", "censored", "method")]
    [InlineData("taper/0", "id", "from", "to", "sessionsPerDay", "minutesPerArea", "planned", "direction", "episode", "dayOfEpisode", "stableHoursBefore", "followedBy")]
    [InlineData("recovery", "curve", "median", "medianLow", "medianHigh", "method")]
    [InlineData("recovery/curve/0", "day", "stillRecovering", "low", "high")]
    [InlineData("flags/0", "when", "what", "why", "sources")]
    public void Objects_carry_their_keys(string path, params string[] keys)
    {
        var at = path.Split('/').Aggregate(Root, (e, part) => int.TryParse(part, System.Globalization.CultureInfo.InvariantCulture, out var i) ? e[i] : e.GetProperty(part));
        Assert.Superset(keys.ToHashSet(), at.EnumerateObject().Select(p => p.Name).ToHashSet());
    }

    [Fact]
    public void Verdicts_and_times_are_written_as_promised()
    {
        foreach (var session in Root.GetProperty("sessions").EnumerateArray())
        {
            Assert.Contains(session.GetProperty("feedGap").GetProperty("verdict").GetString(), new[] { "kept", "short", "unknown" });
            Assert.Contains(session.GetProperty("inhalerGap").GetProperty("verdict").GetString(), new[] { "kept", "short", "early", "none", "unknown" });
            Assert.Matches(@"^\d{4}-\d\d-\d\dT\d\d:\d\d$", session.GetProperty("start").GetString());
        }
    }
}
