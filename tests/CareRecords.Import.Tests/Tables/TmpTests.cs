using CareRecords.Import.Reading;
using Xunit.Abstractions;
namespace CareRecords.Import.Tests.Tables;
public sealed class TmpTests(ITestOutputHelper output)
{
    [Fact]
    public void Tmp()
    {
        foreach (var t in CellTerms.Read("Sats 95 after 2nd.")) output.WriteLine($"| {t.Kind} '{t.Text}' n={t.Number} glued={t.Glued} {string.Join(',', t.Meanings.Select(m => m.Sense))}");
        foreach (var t in CellTerms.Read("Sat 92 before the 1st, 94 after")) output.WriteLine($"| {t.Kind} '{t.Text}' n={t.Number} glued={t.Glued} {string.Join(',', t.Meanings.Select(m => m.Sense))}");
    }
}
