using CareRecords.Pooling;
using CareRecords.Studies;
using CareRecords.Workbooks.Shared;

namespace CareRecords.Workbooks.Tests.Shared;

public sealed class SharedInputsTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("carerecords-inputs-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Everything_in_a_folder_is_pooled_or_named()
    {
        var children = SyntheticStudy.Children(new StudyOptions { Seed = 8, Children = 6, Days = 12 }).ToList();
        for (var i = 0; i < 3; i++) Save(children[i], $"site/child-{i}.xlsx");
        Save(children[0], "site/z copy.xlsx");
        TidyFolder.Write(children.Skip(3), Path.Combine(_folder, "site", "tidy"));
        Put("site/broken.xlsx", "PK not really");
        Put("site/~$child-0.xlsx", "lock");
        Put("site/readme.txt", "hello");
        Directory.CreateDirectory(Path.Combine(_folder, "empty"));

        var pooled = Pooler.Pool(
            SharedInputs.Read([Path.Combine(_folder, "site"), Path.Combine(_folder, "empty"), Path.Combine(_folder, "nowhere")]), new PoolOptions { BootstrapSamples = 20, Permutations = 19 });
        Assert.Equal(6, pooled.Children);
        string[] named =
        [
            "broken.xlsx: is not a workbook", "empty: holds no file", "nowhere: does not exist", "readme.txt: is not a workbook (.xlsx)",
            "z copy.xlsx: is the same as", "~$child-0.xlsx: is a lock file",
        ];
        var refused = pooled.Refused.Select(r => $"{Path.GetFileName(r.File)}: {r.Why}").Order(StringComparer.Ordinal).ToList();
        Assert.Equal(named.Length, refused.Count);
        for (var i = 0; i < named.Length; i++) Assert.StartsWith(named[i], refused[i], StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_named_twice_is_read_once()
    {
        Save(SyntheticStudy.Children(new StudyOptions { Seed = 8, Children = 1, Days = 5 }).Single(), "one.xlsx");
        var path = Path.Combine(_folder, "one.xlsx");
        Assert.Single(SharedInputs.Read([path, _folder, path]));
        Assert.Equal(1, SharedInputs.Count([path, _folder]));
    }

    [Fact]
    public void Files_come_in_order_of_name_however_many()
    {
        var child = SyntheticStudy.Children(new StudyOptions { Seed = 8, Children = 1, Days = 2 }).Single();
        for (var i = 0; i < 70; i++) Save(child, $"{i:000}.xlsx");
        Assert.Equal(Enumerable.Range(0, 70).Select(i => $"{i:000}.xlsx"), SharedInputs.Read([_folder]).Select(r => Path.GetFileName(r.File)));
    }

    private void Save(SharedFindings child, string name)
    {
        var path = Path.Combine(_folder, name);
        Directory.CreateDirectory(Path.GetDirectoryName(path) ?? _folder);
        using var file = File.Create(path);
        SharedWorkbook.Write(child, file);
    }

    private void Put(string name, string text) => File.WriteAllText(Path.Combine(_folder, name), text);
}
