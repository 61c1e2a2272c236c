using System.Text.Json;
using Xunit.Abstractions;

namespace CareRecords.Import.Tests.Tables;

/// <summary>
/// Nine families' tables by two more writers, written without sight of the program and kept back until the reading of the other sets was done.
/// First scored on 25 November 2026 before anything was mended on them: 266 of 398 events found, 22 of 301 false, 15 swallowed; two files (a grid of ticks, an
/// export of an odd shape) were not read at all and asked about. The floors hold what is reached.
/// </summary>
public sealed class LaterVoicesTests(ITestOutputHelper output)
{
    private static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "Tables", "Later");

    [Fact]
    public void Later_FoundDoesNotFallAndEveryLineIsCounted()
    {
        int found = 0, expected = 0, wrong = 0, read = 0, right = 0, values = 0, swallowed = 0;
        foreach (var path in Directory.GetFiles(Folder, "*.json").Order(StringComparer.Ordinal))
        {
            var reading = JsonDocument.Parse(File.ReadAllText(path)).RootElement;
            var options = new ImportOptions { MachineZone = "UTC", Zone = reading.GetProperty("zone").GetString() };
            var log = Importer.Import([Path.Combine(Folder, reading.GetProperty("file").GetString()!)], options);
            var score = VoiceScore.Of(reading, Inputs.Json(log));
            foreach (var missing in score.Missing) output.WriteLine("    " + missing);
            output.WriteLine($"{Path.GetFileNameWithoutExtension(path)}: found {score.Found} of {score.Expected}, false {score.False}, swallowed {score.Swallowed}, values {score.ValuesRight} of {score.Values}");
            Assert.True(log.Lines.Balances);
            (found, expected, swallowed) = (found + score.Found, expected + score.Expected, swallowed + score.Swallowed);
            (wrong, read, right, values) = (wrong + score.False, read + score.Read, right + score.ValuesRight, values + score.Values);
        }

        var total = $"found {found} of {expected}, false {wrong} of {read}, values {right} of {values}, swallowed {swallowed}";
        output.WriteLine("together: " + total);
        Assert.True(found >= 0.66 * expected && wrong <= 0.08 * read && right >= 0.94 * values && swallowed <= 15, total);
    }
}
