using CareRecords.Import.Tables.Layouts;
using Xunit.Abstractions;
namespace CareRecords.Import.Tests.Tables;
public sealed class TmpTests(ITestOutputHelper output)
{
    [Fact]
    public void Tmp()
    {
        foreach (var h in File.ReadAllLines("/tmp/heads.txt"))
        {
            var m = HeadingReader.Read(h);
            output.WriteLine($"{m.Role,-12} {m.Phase,-7} {m.Half} areas={string.Join('+', m.Areas)} med={m.Medicine} unit={m.Unit} route={m.Route} amt={m.DefaultAmount} each={m.EachSession.Count} | {h}");
        }
    }
}
