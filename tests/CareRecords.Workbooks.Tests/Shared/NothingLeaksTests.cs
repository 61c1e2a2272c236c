using System.Globalization;
using System.Reflection;
using System.Text;
using CareRecords.Findings;
using CareRecords.Pooling;
using CareRecords.Workbooks.Shared;

namespace CareRecords.Workbooks.Tests.Shared;

public sealed class NothingLeaksTests
{
    private static readonly byte[] File = Written(Sharing.Share(PlantedFindings.Filled.Findings, new ShareOptions { Child = ChildCode.Random() }));

    [Fact]
    public void Every_text_field_of_the_findings_was_planted()
    {
        Assert.True(PlantedFindings.Filled.Words.Count > 150, $"{PlantedFindings.Filled.Words.Count} words");
        Assert.Equal(PlantedFindings.Filled.Words.Count, PlantedFindings.Filled.Words.Distinct().Count());
    }

    [Fact]
    public void No_planted_word_is_anywhere_in_the_file_under_any_disguise()
    {
        var parts = Package.Parts(File);
        foreach (var word in PlantedFindings.Filled.Words)
            AssertAbsent(word, parts);

        // A part of a word would name a person as well as the whole.
        foreach (var piece in (string[])["Wilhelmina", "Ottertree", "Quillfeather", "900461", "Brannock", "Nachtzuster", "zorbleflux", "88213", "quill@feather", "Llanfair", "HYPERLINK", "漢字", "notes.txt", "Zaporozhye", "Rosalind", "Europe/"])
            AssertAbsent(piece, parts);
    }

    [Fact]
    public void A_log_full_of_names_reviewed_and_shared_has_none_of_them_left()
    {
        var shared = Sharing.Share(Reviewer.Review(PlantedLog.Make(), new ReviewOptions { Draws = 200 }), new ShareOptions { Child = ChildCode.Random() });
        Assert.True(shared.Sessions.Count > 60 && shared.Days.Count > 40);
        Assert.Equal((AgeBand.NotGiven, null), (shared.Child.AgeBand, shared.Child.StudyGroup));
        var parts = Package.Parts(Written(shared));
        foreach (var word in PlantedLog.Words) AssertAbsent(word, parts);
        foreach (var word in (string[])["Ushuaia", "Argentina", "America/", "Featherstonehaugh", "Bramblewood", "Rosalind", "salbutamol", "budesonide", "2031-07", "2031-08", "unwell"]) AssertAbsent(word, parts);
        for (var day = 0; day < 50; day++) AssertNoCell(new DateTime(2031, 7, 13).AddDays(day).ToOADate(), parts);
    }

    [Fact]
    public void The_search_finds_a_word_under_every_disguise()
    {
        foreach (var (name, bytes) in Disguises.Of("Wilhelmina Ottertree 0001"))
        {
            byte[] hidden = [.. "<x>"u8, .. bytes, .. "</x>"u8];
            Assert.True(hidden.AsSpan().IndexOf(bytes) == 3, name);
        }
    }

    [Fact]
    public void No_date_is_in_any_cell_or_text()
    {
        var parts = Package.Parts(File).Skip(1).ToList();
        foreach (var date in PlantedFindings.Filled.Dates)
        {
            var day = date.ToDateTimeUnspecified();
            foreach (var pattern in (string[])["yyyy-MM-dd", "dd/MM/yyyy", "MM/dd/yyyy", "yyyyMMdd", "d MMMM", "MMMM d", "dd.MM.yyyy"])
                AssertAbsent(day.ToString(pattern, CultureInfo.InvariantCulture), parts);
            AssertNoCell(day.ToOADate(), parts);
            AssertNoCell(new DateTimeOffset(day, TimeSpan.Zero).ToUnixTimeSeconds(), parts);
        }

        foreach (var name in CultureInfo.InvariantCulture.DateTimeFormat.DayNames) AssertAbsent(name, parts);
    }

    [Fact]
    public void No_clock_time_is_in_any_cell_or_text()
    {
        var parts = Package.Parts(File).Skip(1).ToList();
        foreach (var time in PlantedFindings.Filled.Times.Distinct())
        {
            AssertAbsent($"{time.Hour:00}:{time.Minute:00}", parts);
            AssertNoCell((time.Hour * 60) + time.Minute, parts);
            AssertNoCell(((time.Hour * 60) + time.Minute) / 1440.0, parts);
        }
    }

    [Fact]
    public void The_package_has_no_properties_comments_pictures_and_one_fixed_time()
    {
        using var zip = new System.IO.Compression.ZipArchive(new MemoryStream(File));
        Assert.All(zip.Entries, e => Assert.Equal(1980, e.LastWriteTime.Year));
        Assert.All(zip.Entries, e => Assert.Matches(@"^(\[Content_Types\]\.xml|_rels/\.rels|xl/(workbook|styles)\.xml|xl/_rels/workbook\.xml\.rels|xl/worksheets/sheet\d+\.xml)$", e.FullName));
        Assert.All(zip.Entries, e => Assert.Equal("", e.Comment));
        Assert.Equal("", zip.Comment);
    }

    [Fact]
    public void The_same_findings_give_the_same_bytes()
    {
        var findings = Sharing.Share(PlantedFindings.Filled.Findings, new ShareOptions { Child = ChildCode.FromKey(new byte[32], "x") });
        Assert.Equal(Written(findings), Written(findings));
    }

    [Fact]
    public void The_key_and_the_identifier_are_not_in_the_file()
    {
        var key = Enumerable.Range(1, 32).Select(i => (byte)(i * 7)).ToArray();
        var parts = Package.Parts(Written(Sharing.Share(PlantedFindings.Filled.Findings, new ShareOptions { Child = ChildCode.FromKey(key, "Wilhelmina Ottertree") })));
        AssertAbsent(Convert.ToHexStringLower(key), parts);
        AssertAbsent(Convert.ToBase64String(key), parts);
        AssertAbsent("Wilhelmina Ottertree", parts);
        Assert.All(parts, p => Assert.True(p.Bytes.AsSpan().IndexOf(key) < 0));
    }

    [Fact]
    public void Shared_types_can_hold_no_text_and_no_date()
    {
        var seen = new HashSet<Type>();
        Walk(typeof(SharedFindings), seen, "SharedFindings");
        Assert.Contains(typeof(SharedSession), seen);
    }

    private static void Walk(Type type, HashSet<Type> seen, string path)
    {
        type = Nullable.GetUnderlyingType(type) ?? type;
        if (type.IsGenericType) type = type.GetGenericArguments()[0];
        if (type.IsEnum || type == typeof(int) || type == typeof(double) || type == typeof(bool) || type == typeof(Version) || type == typeof(ChildCode) || type == typeof(StudyGroup)) return;
        Assert.True(type.Assembly == typeof(SharedFindings).Assembly, $"{path} is a {type}");
        if (!seen.Add(type)) return;
        foreach (var property in type.GetProperties(BindingFlags.Public | BindingFlags.Instance)) Walk(property.PropertyType, seen, $"{path}.{property.Name}");
    }

    private static void AssertAbsent(string word, IReadOnlyList<(string Name, byte[] Bytes)> parts)
    {
        foreach (var (how, bytes) in Disguises.Of(word))
            foreach (var (name, content) in parts)
                Assert.True(content.AsSpan().IndexOf(bytes) < 0, $"\"{word}\" ({how}) is in {name}");
    }

    private static void AssertNoCell(double number, IReadOnlyList<(string Name, byte[] Bytes)> parts)
    {
        var cell = Encoding.UTF8.GetBytes(FormattableString.Invariant($">{number:R}<"));
        foreach (var (name, content) in parts) Assert.True(content.AsSpan().IndexOf(cell) < 0, $"{number} is a cell of {name}");
    }

    private static byte[] Written(SharedFindings findings)
    {
        using var output = new MemoryStream();
        SharedWorkbook.Write(findings, output);
        return output.ToArray();
    }
}
