using System.Globalization;

namespace CareRecords.Statistics.Tests.Reference;

/// <summary>The comma-separated files of tests/reference: one heading row, quotes around text, NA and Inf as R writes them.</summary>
internal sealed class CsvTable
{
    private readonly List<string[]> _rows;
    private readonly string[] _headings;

    private CsvTable(List<string[]> lines) => (_headings, _rows) = (lines[0], lines[1..]);

    public int Count => _rows.Count;

    public static CsvTable Data(string name) => Read(Path.Combine("data", name));

    public static CsvTable Read(string name) =>
        new([.. File.ReadLines(Path.Combine(AppContext.BaseDirectory, "reference", name)).Select(Split)]);

    public string[] Text(string heading)
    {
        var column = Array.IndexOf(_headings, heading);
        return [.. _rows.Select(r => r[column])];
    }

    public double[] Numbers(string heading) => Array.ConvertAll(Text(heading), Number);

    public int[] Wholes(string heading) => Array.ConvertAll(Text(heading), t => int.Parse(t, CultureInfo.InvariantCulture));

    public static double Number(string text) => text switch
    {
        "Inf" => double.PositiveInfinity,
        "-Inf" => double.NegativeInfinity,
        "NA" or "NaN" => double.NaN,
        _ => double.Parse(text, CultureInfo.InvariantCulture),
    };

    private static string[] Split(string line)
    {
        List<string> cells = [""];
        var quoted = false;
        foreach (var c in line)
        {
            if (c == '"')
            {
                quoted = !quoted;
            }
            else if (c == ',' && !quoted)
            {
                cells.Add("");
            }
            else
            {
                cells[^1] += c;
            }
        }

        return [.. cells];
    }
}
