using System.Text;

namespace CareRecords.CommandLine.Tests;

public sealed class SafeOutputTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("carerecords-").FullName;

    private string Target => Path.Combine(_folder, "out.txt");

    [Fact]
    public void Dispose_BeforeMoving_LeavesNothing()
    {
        using (var outputs = new SafeOutput(force: false, [])) outputs.Write(outputs.Claim(Target), stream => stream.Write(Encoding.UTF8.GetBytes("half")));

        Assert.Empty(Directory.GetFiles(_folder));
    }

    [Fact]
    public void MoveIntoPlace_WritesTheWholeFile()
    {
        using var outputs = new SafeOutput(force: false, []);
        outputs.Write(outputs.Claim(Target), stream => stream.Write(Encoding.UTF8.GetBytes("whole")));
        outputs.MoveIntoPlace();

        Assert.Equal("whole", File.ReadAllText(Target));
    }

    [Fact]
    public void Claim_AnInput_IsRefusedEvenWithForce()
    {
        using var outputs = new SafeOutput(force: true, [Target]);

        Assert.Throws<UserMistakeException>(() => outputs.Claim(Target));
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);
}
