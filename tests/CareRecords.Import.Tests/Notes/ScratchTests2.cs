using CareRecords.Import.Reading;
using Xunit.Abstractions;
namespace CareRecords.Import.Tests.Notes;
public sealed class Scratch2Tests(ITestOutputHelper output)
{
    [Fact]
    public void Heads()
    {
        foreach (var h in File.ReadAllLines("/tmp/terms.txt"))
        {
            output.WriteLine("T " + h);
            output.WriteLine("T   " + string.Join(" | ", CareRecords.Import.Notes.Offsets.Reduce(CellTerms.Read(h)).Select(t => $"{t.Kind}:{t.Text}:{t.Number}:{t.Unit}[{string.Join(',', t.Meanings.Select(m => m.Sense))}]")));
        }
    }
}
