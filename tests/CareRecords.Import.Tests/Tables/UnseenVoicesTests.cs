using System.Text.Json;
using Xunit.Abstractions;

namespace CareRecords.Import.Tests.Tables;

/// <summary>
/// Ten families' tables held back while the reader was written and first scored on 25 November 2026: 68 of 356 events found. The floor holds what is
/// reached since; it is far from the goal (95 %) and is to be raised as it nears.
/// </summary>
public sealed class UnseenVoicesTests(ITestOutputHelper output)
{
    private static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "Tables", "Unseen");

    [Fact]
    public void Unseen_FoundDoesNotFallAndEveryLineIsCounted()
    {
        int found = 0, expected = 0;
        foreach (var path in Directory.GetFiles(Folder, "*.json").Order(StringComparer.Ordinal))
        {
            var reading = JsonDocument.Parse(File.ReadAllText(path)).RootElement;
            var options = new ImportOptions { MachineZone = "UTC", Zone = reading.GetProperty("zone").GetString() };
            var log = Importer.Import([Path.Combine(Folder, reading.GetProperty("file").GetString()!)], options);
            var score = VoiceScore.Of(reading, Inputs.Json(log));
            output.WriteLine($"{Path.GetFileNameWithoutExtension(path)}: found {score.Found} of {score.Expected}, false {score.False}, swallowed {score.Swallowed}, values {score.ValuesRight} of {score.Values}");
            Assert.True(log.Lines.Balances);
            (found, expected) = (found + score.Found, expected + score.Expected);
        }

        output.WriteLine($"together: found {found} of {expected}");
        Assert.True(found >= 155, $"found {found} of {expected}");
    }
}
