using System.Globalization;
using CareRecords.Workbooks.Building;

namespace CareRecords.Workbooks.Finishing;

/// <summary>A cell's value as it stands in a sheet part.</summary>
internal static class CellValueText
{
    /// <summary>The type attribute (null for a number) and the text.</summary>
    public static (string? Type, string Text) Of(object? value) => value switch
    {
        double number => (null, number.ToString("R", CultureInfo.InvariantCulture)),
        DateTime at => (null, at.ToOADate().ToString("R", CultureInfo.InvariantCulture)),
        NotAvailable => ("e", "#N/A"),
        string words => ("str", CellText.Fit(words)),
        null => ("str", ""),
        _ => throw new ArgumentException($"A cell holds words, a number or a time, not {value.GetType()}.", nameof(value)),
    };
}
