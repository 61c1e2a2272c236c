using System.Globalization;
using System.Text.Json;
using CareRecords.Studies;
using CsvHelper;
using DuckDB.NET.Data;

namespace CareRecords.Pooling.Tests;

public sealed class TidyFolderTests : IDisposable
{
    private static readonly IReadOnlyList<SharedFindings> Study = [.. SyntheticStudy.Children(new StudyOptions { Seed = 21, Children = 150, Days = 25 })];

    private readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public void WrittenAndReadBack_EveryChildIsTheSame()
    {
        TidyFolder.Write(Study, _scratch.At("tidy"));
        var back = TidyFolder.Read(_scratch.At("tidy")).Select(i => Assert.IsType<SharedChild>(i).Findings).ToList();
        Assert.Equal(Study.Select(SharedTables.Seal), back.Select(SharedTables.Seal));
    }

    [Fact]
    public void ParquetReadByAnotherEngine_GivesTheSameCountsAndShares()
    {
        TidyFolder.Write(Study, _scratch.At("tidy"));
        using var engine = new DuckDBConnection("DataSource=:memory:");
        engine.Open();
        var sessions = Study.SelectMany(s => s.Sessions).ToList();
        Assert.Equal(Study.Count, Ask<long>(engine, $"select count(*) from '{_scratch.At("tidy")}/child.parquet'"));
        Assert.Equal(sessions.Count, Ask<long>(engine, $"select count(*) from '{_scratch.At("tidy")}/sessions.parquet'"));
        Assert.Equal(Study.Sum(s => s.Days.Count(d => !d.HasRecords)), Ask<long>(engine, $"select count(*) from '{_scratch.At("tidy")}/days.parquet' where not has_records"));
        Assert.Equal(sessions.Count(s => s.FeedGapLow is null), Ask<long>(engine, $"select count(*) from '{_scratch.At("tidy")}/sessions.parquet' where feed_gap_low is null"));
        Assert.Equal(sessions.Sum(s => s.FeedGapLow ?? 0), Ask<double>(engine, $"select sum(feed_gap_low) from '{_scratch.At("tidy")}/sessions.parquet'"), 6);

        // The query of docs/pooling.md: the share of judged feed gaps that were kept, child by child, then over children.
        var shares = Study.Select(s => (double)s.Sessions.Count(x => x.FeedGap == Findings.GapVerdict.Kept) / s.Sessions.Count(x => x.FeedGap != Findings.GapVerdict.Unknown));
        var query = $"""
            select avg(kept * 1.0 / judged) from (
              select child, count(*) filter (where feed_gap = 'kept') as kept, count(*) filter (where feed_gap <> 'unknown') as judged
              from '{_scratch.At("tidy")}/sessions.parquet' group by child)
            """;
        Assert.Equal(shares.Average(), Ask<double>(engine, query), 12);
        Assert.Equal(Ask<double>(engine, query), Ask<double>(engine, query.Replace(".parquet", ".csv", StringComparison.Ordinal)), 12);
    }

    [Fact]
    public void CsvAndDataPackageDescribeTheSameColumnsRowsAndBytes()
    {
        TidyFolder.Write(Study.Take(5), _scratch.At("tidy"));
        using var package = JsonDocument.Parse(File.ReadAllText(_scratch.At("tidy/datapackage.json")));
        var resources = package.RootElement.GetProperty("resources").EnumerateArray().ToList();
        Assert.Equal(2 * SharedTables.All.Count, resources.Count);
        foreach (var resource in resources)
        {
            var path = Path.Combine(_scratch.At("tidy"), resource.GetProperty("path").GetString() ?? "");
            Assert.Equal(new FileInfo(path).Length, resource.GetProperty("bytes").GetInt64());
            if (!path.EndsWith(".csv", StringComparison.Ordinal)) continue;
            using var csv = new CsvReader(new StreamReader(path), CultureInfo.InvariantCulture);
            csv.Read();
            csv.ReadHeader();
            var fields = resource.GetProperty("schema").GetProperty("fields").EnumerateArray().ToList();
            Assert.Equal(fields.Select(f => f.GetProperty("name").GetString()), csv.HeaderRecord);
            var rows = 0;
            while (csv.Read())
            {
                rows++;
                foreach (var field in fields) AssertFits(field, csv.GetField(field.GetProperty("name").GetString() ?? "") ?? "");
            }

            Assert.Equal(rows, resource.GetProperty("rows").GetInt32());
        }
    }

    [Fact]
    public void AChangedParquet_IsRefusedByFolderAndChild()
    {
        TidyFolder.Write(Study.Take(3), _scratch.At("tidy"));
        using (var engine = new DuckDBConnection("DataSource=:memory:"))
        {
            engine.Open();
            var steps = _scratch.At("tidy/days.parquet");
            Do(engine, $"copy (select * replace (case when child = '{Study[1].Child.Code}' and day = 0 then sessions_done + 1 else sessions_done end as sessions_done) from '{steps}') to '{steps}.new' (format parquet)");
            File.Move(steps + ".new", steps, overwrite: true);
        }

        var read = TidyFolder.Read(_scratch.At("tidy"), "north").ToList();
        Assert.Equal([true, false, true], read.Select(r => r is SharedChild));
        Assert.StartsWith("north, child " + Study[1].Child.Code.Text[..8], read[1].File, StringComparison.Ordinal);
        Assert.Contains("do not fit its seal", Assert.IsType<RefusedInput>(read[1]).Why, StringComparison.Ordinal);
    }

    [Fact]
    public void ADamagedOrMissingTable_IsRefusedAndNothingThrown()
    {
        TidyFolder.Write(Study.Take(3), _scratch.At("tidy"));
        var bytes = File.ReadAllBytes(_scratch.At("tidy/steps.parquet"));
        File.WriteAllBytes(_scratch.At("tidy/steps.parquet"), bytes[..(bytes.Length / 2)]);
        Assert.IsType<RefusedInput>(Assert.Single(TidyFolder.Read(_scratch.At("tidy"))));
        File.Delete(_scratch.At("tidy/steps.parquet"));
        Assert.Contains("steps.parquet is missing", Assert.IsType<RefusedInput>(Assert.Single(TidyFolder.Read(_scratch.At("tidy")))).Why, StringComparison.Ordinal);
    }

    [Fact]
    public void AFolderThatIsNotCompleted_LeavesNothing()
    {
        using (var writer = new TidyWriter(_scratch.At("tidy"))) writer.Add(Study[0]);
        Assert.Empty(Directory.EnumerateFileSystemEntries(_scratch.Folder));
    }

    [Fact]
    public void AFolderThatHoldsSomething_IsNotTouched()
    {
        Directory.CreateDirectory(_scratch.At("tidy"));
        File.WriteAllText(_scratch.At("tidy/mine.txt"), "mine");
        Assert.Throws<IOException>(() => new TidyWriter(_scratch.At("tidy")));
        Assert.Equal("mine", File.ReadAllText(_scratch.At("tidy/mine.txt")));
    }

    private static void AssertFits(JsonElement field, string cell)
    {
        var constraints = field.GetProperty("constraints");
        if (cell.Length == 0)
        {
            Assert.False(constraints.GetProperty("required").GetBoolean());
            Assert.False(string.IsNullOrEmpty(field.GetProperty("whenEmpty").GetString()));
            return;
        }

        switch (field.GetProperty("type").GetString())
        {
            case "integer": Assert.True(long.TryParse(cell, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out _)); break;
            case "number": Assert.True(double.TryParse(cell, NumberStyles.Float, CultureInfo.InvariantCulture, out _)); break;
            case "boolean": Assert.Contains(cell, (string[])["true", "false"]); break;
            default:
                if (constraints.TryGetProperty("enum", out var codes)) Assert.Contains(cell, codes.EnumerateArray().Select(c => c.GetString()));
                break;
        }
    }

    private static void Do(DuckDBConnection engine, string sql)
    {
        using var command = engine.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }

    private static T Ask<T>(DuckDBConnection engine, string sql)
    {
        using var command = engine.CreateCommand();
        command.CommandText = sql;
        return (T)Convert.ChangeType(command.ExecuteScalar() ?? throw new InvalidOperationException("no answer"), typeof(T), CultureInfo.InvariantCulture);
    }
}
