using System.Globalization;
using CareRecords.Benchmarks;

if (args is not [var program, var document, .. var rest])
{
    Console.Error.WriteLine("Give the published program, the document to write (docs/performance.md), and if you like: the number of runs, a folder for the inputs, words that the names of the measurements hold.");
    return 2;
}

var runs = rest.Length > 0 ? int.Parse(rest[0], CultureInfo.InvariantCulture) : 5;
var folder = Directory.CreateDirectory(rest.Length > 1 ? rest[1] : Path.Combine(Path.GetTempPath(), "carerecords-benchmarks")).FullName;
var wanted = rest.Skip(2).ToList();
var results = new List<Result>();
foreach (var measurement in Measurements.All(program, folder))
{
    if (wanted.Count > 0 && !wanted.Exists(w => measurement.Name.Contains(w, StringComparison.Ordinal))) continue;
    var times = measurement.IsLong ? Math.Min(runs, 3) : runs;
    Measured.Run(measurement.Command(program, folder)); // Not counted: it fills the disk's cache.
    var result = new Result(measurement, Pairs.Of(measurement.Command(program, folder), measurement.Yardstick?.Invoke(folder), times));
    results.Add(result);
    Console.WriteLine(Report.Line(result));
}

if (wanted.Count == 0) Report.Write(document, results);
return 0;
