using System.Globalization;

namespace CareRecords.Benchmarks;

/// <summary>Something measured: a command, what it is held against, and the target of its ratios or its rate.</summary>
internal sealed record Measurement(string Name, Func<string, string, string[]> Command)
{
    /// <summary>The yardstick's command for the same input.</summary>
    public Func<string, string[]>? Yardstick { get; init; }

    /// <summary>What the yardstick does.</summary>
    public string Against { get; init; } = "";

    /// <summary>Lines, rows or workbooks that the command goes through; 0 when no rate is asked for.</summary>
    public int Units { get; init; }

    public string Unit { get; init; } = "";

    public string Target { get; init; } = "";

    /// <summary>So long that three runs are enough.</summary>
    public bool IsLong { get; init; }
}

internal sealed record Result(Measurement Measurement, Pairs Pairs);

/// <summary>Everything that is measured.</summary>
internal static class Measurements
{
    private const string Script = "reads the tables, works out gaps and weekly shares, writes the data sheets and three charts";

    public static IEnumerable<Measurement> All(string program, string folder)
    {
        var inputs = new Inputs(folder);
        string Out(string name) => Path.Combine(folder, name);
        yield return new("`--help`", (tool, _) => [tool, "--help"])
        {
            Yardstick = _ => ["/usr/bin/python3", "-c", "import pandas, openpyxl"],
            Against = "imports pandas and openpyxl",
            Target = "at once",
        };
        foreach (var (name, input, isLong) in new[] { ("a month", inputs.Month, false), ("a year", inputs.Year, false), ("ten years", inputs.TenYears, true) })
        {
            yield return new($"`review`, {name}", (tool, _) => [tool, "review", input, "--out", Out("review.xlsx"), "--force"])
            {
                Yardstick = _ => Measured.Yardstick("review.py", input, Out("yardstick.xlsx")),
                Against = Script,
                IsLong = isLong,
                Target = isLong ? "no worse than ten times a year" : "wall ≤ 1.0, memory ≤ 1.5",
            };
        }

        yield return new("`share`, a year", (tool, _) => [tool, "share", inputs.Year, "--out", Out("share.xlsx"), "--force"])
        {
            Yardstick = _ => Measured.Yardstick("review.py", inputs.Year, Out("yardstick.xlsx")),
            Against = Script,
        };
        yield return new("`read`, a year", (tool, _) => [tool, "read", inputs.Year]);
        yield return Reading("rows", Inputs.CheckRows, "of checks", inputs.Checks, "checks.py", "pandas reads the table and its times", 500_000);
        yield return Reading("lines", Inputs.NoteLines, "of notes", inputs.Notes, "notes.py", "splits lines into words and finds clock times; understands nothing", 50_000);
        yield return Pooling(200);
        yield return Pooling(2000);

        Measurement Pooling(int workbooks)
        {
            var shared = SharedFolder.Make(folder, workbooks);
            return new(string.Create(CultureInfo.InvariantCulture, $"`pool`, {workbooks:N0} workbooks"), (tool, _) => [tool, "pool", shared, "--out", Out("pooled.xlsx"), "--force"])
            {
                Yardstick = _ => Measured.Yardstick("pool.py", shared),
                Against = "openpyxl reads every cell, read-only; pools nothing",
                Units = workbooks,
                Unit = "workbooks",
                Target = "wall ≤ 0.1, ≥ 40 workbooks/s, ≤ 300 MB",
                IsLong = true,
            };
        }
    }

    private static Measurement Reading(string unit, int units, string what, string input, string script, string does, int target) =>
        new(string.Create(CultureInfo.InvariantCulture, $"`read`, {units:N0} {unit} {what}"), (tool, _) => [tool, "read", input])
        {
            Yardstick = _ => Measured.Yardstick(script, input),
            Against = does,
            Units = units,
            Unit = unit,
            Target = string.Create(CultureInfo.InvariantCulture, $"≥ {target:N0} {unit}/s"),
            IsLong = true,
        };
}
