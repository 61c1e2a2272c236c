namespace CareRecords.Statistics.Tests.Reference;

/// <summary>Figures of one data set as this library computes them, under the names of results.csv.</summary>
internal sealed class Figures(string dataset)
{
    public List<(string Dataset, string Quantity, double Value)> Rows { get; } = [];

    /// <summary>A figure; null stands for what R prints as NA or NaN.</summary>
    public void Add(string quantity, double? value) => Rows.Add((dataset, quantity, value ?? double.NaN));

    public void Limits(string quantity, Estimate e)
    {
        Add($"{quantity} [lower]", e.Low);
        Add($"{quantity} [upper]", e.High);
    }

    public void Named(string quantity, params (string Name, double? Value)[] parts)
    {
        foreach (var (name, value) in parts)
        {
            Add($"{quantity} [{name}]", value);
        }
    }
}
