using CareRecords.Simulation;
using NodaTime.Text;

namespace CareRecords.EndToEnd.Tests;

/// <summary>Children whose truth is known, through the whole tool: tables in, findings.json out.</summary>
public sealed class SimulatedVerdictTests
{
    [Theory]
    [InlineData(1, "Europe/London")]
    [InlineData(2, "America/New_York")]
    [InlineData(3, "Pacific/Auckland")]
    [InlineData(4, "Europe/Dublin")]
    [InlineData(5, "Australia/Sydney")]
    [InlineData(6, "America/St_Johns")]
    public void Every_feed_and_inhaler_verdict_agrees_with_the_truth(int seed, string zone)
    {
        var (log, truth) = SimulatedChild.Make(new SimulationOptions
        {
            Seed = seed,
            Days = 60,
            FirstDay = new(2026, 2, 16),
            Zone = zone,
            GetsExtraOxygen = seed % 2 == 0,
        });
        using var tool = new ToolRun();
        Directory.CreateDirectory(tool.PathOf("tables"));
        SimulatedTables.Write(log, tool.PathOf("tables"));

        Assert.Equal(0, tool.Run("review", "tables", "--findings", "findings.json"));

        var found = tool.Json("findings.json").GetProperty("sessions").EnumerateArray().ToList();
        Assert.Equal(truth.Sessions.Count, found.Count);
        var minute = LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm");
        var wrong = truth.Sessions.Zip(found, (t, f) => (True: $"{minute.Format(t.Start)} {Word(t.Feed)} {Word(t.Inhaler)}",
            Found: $"{f.GetProperty("start").GetString()} {Verdict(f, "feedGap")} {Verdict(f, "inhalerGap")}")).Where(p => p.True != p.Found);
        Assert.Empty(wrong);
    }

    private static string? Verdict(System.Text.Json.JsonElement session, string gap) => session.GetProperty(gap).GetProperty("verdict").GetString();

    private static string Word(TrueVerdict? verdict) => verdict?.ToString().ToLowerInvariant() ?? "unknown";
}
