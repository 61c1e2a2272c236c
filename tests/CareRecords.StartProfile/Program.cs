using System.Reflection;
using CareRecords.StartProfile;

// Runs the program's own verbs on the demo data, in this process, and writes which methods they needed: see DEVELOPERS.md.
if (args is not [var file, var demoData])
{
    Console.Error.WriteLine("Give the profile to write (start.mibc, beside the publish profiles) and the folder demo-data.");
    return 2;
}

using var methods = new ReadyMethods();
var program = Assembly.Load("carerecords").EntryPoint ?? throw new InvalidOperationException("The program has no beginning.");
var scratch = Directory.CreateTempSubdirectory("carerecords-profile").FullName;
void Run(params string[] words) => program.Invoke(null, [words]);
string Out(string name) => Path.Combine(scratch, name);
Run("--help");
foreach (var family in new[] { "family-month", "second-family" })
{
    var notes = Path.Combine(demoData, family);
    Run("review", notes, "--out", Out("review.xlsx"), "--findings", Out("findings.json"), "--force");
    Run("share", notes, "--out", Out("share.xlsx"), "--force");
    Run("read", notes, "--records", Out("records.json"), "--force");
}

Run("pool", Path.Combine(demoData, "many-families"), "--out", Out("pooled.xlsx"));
Thread.Sleep(TimeSpan.FromSeconds(3)); // The runtime tells of its methods a little later.
Directory.Delete(scratch, recursive: true);
var found = methods.All();
ProfileFile.Write(found, file);
Console.Error.WriteLine($"{found.Count} methods.");
return 0;
