using System.Globalization;

namespace CareRecords.CommandLine.Tests;

public sealed class PoolingLineTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("carerecords-").FullName;
    private readonly StringWriter _output = new(CultureInfo.InvariantCulture) { NewLine = "\n" };
    private readonly StringWriter _error = new(CultureInfo.InvariantCulture) { NewLine = "\n" };

    private static string Demo { get; } = Path.Combine(Root(AppContext.BaseDirectory), "demo-data", "many-families");

    [Fact]
    public void Reading_thousands_is_told_every_twenty_and_ends_with_the_whole_number()
    {
        using (var line = PoolingLine.For(Watched(true), () => 10_000))
        {
            foreach (var n in line!.UpToTheLast(Enumerable.Range(1, 10_000))) line.Report(n);
            line.Writing();
        }

        var shown = _error.ToString().Split('\r');
        Assert.Equal(1 + 1 + 500 + 3, shown.Length);
        Assert.Equal("Read 0 of 10,000", shown[1]);
        Assert.Equal("Read 9,980 of 10,000", shown[^5]);
        Assert.Equal("Read 10,000 of 10,000. Working out the figures ...", shown[^3]);

        // What is shorter than the text before is filled up, and the line is ended.
        Assert.Equal(shown[^3].Length, shown[^2].Length);
        Assert.Equal("Read 10,000 of 10,000.", shown[^1].TrimEnd());
        Assert.EndsWith("\n", shown[^1], StringComparison.Ordinal);
    }

    [Fact]
    public void Children_of_a_tidy_folder_are_counted_without_a_total_that_is_too_small()
    {
        var tidy = Path.Combine(_folder, "tidy");
        Assert.Equal(0, Tool.Run(["pool", Demo, "--tidy", tidy], Watched(false)));
        Assert.Equal("", _error.ToString());
        Assert.Equal(0, Tool.Run(["pool", tidy, "--out", "again.xlsx"], Watched(true)));
        Assert.DoesNotContain("24 of 1", _error.ToString(), StringComparison.Ordinal);
        Assert.EndsWith("\rRead 24 workbooks and children of tidy folders.", _error.ToString().TrimEnd(), StringComparison.Ordinal);
        Assert.EndsWith("\n", _error.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_mistake_stands_on_a_line_of_its_own()
    {
        void Fails()
        {
            using var line = PoolingLine.For(Watched(true), () => 5);
            throw new InvalidOperationException("no room on the disk");
        }

        Assert.Throws<InvalidOperationException>(Fails);
        Assert.Equal("\rRead 0 of 5\rRead 0 of 5.\n", _error.ToString());
    }

    [Fact]
    public void Nobody_watching_is_told_nothing_and_nothing_is_counted() =>
        Assert.Null(PoolingLine.For(Watched(false), () => throw new InvalidOperationException("counted")));

    public void Dispose()
    {
        _output.Dispose();
        _error.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    private Surroundings Watched(bool watched) => new()
    {
        Output = _output,
        Error = _error,
        ErrorIsTerminal = watched,
        WorkingFolder = _folder,
        FindMachineZone = () => "Europe/London",
    };

    private static string Root(string folder) =>
        File.Exists(Path.Combine(folder, "CareRecords.sln")) ? folder : Root(Path.GetDirectoryName(folder) ?? throw new DirectoryNotFoundException("No solution above the tests."));
}
