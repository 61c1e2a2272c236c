using NodaTime;

namespace CareRecords.Import.Tables;

/// <summary>What a cell holds.</summary>
internal enum CellKind : byte
{
    /// <summary>Nothing, or only spaces.</summary>
    Empty,

    /// <summary>Words; every cell of a delimited text that is not empty.</summary>
    Text,

    /// <summary>A number of a sheet.</summary>
    Number,

    /// <summary>A real date of a sheet, without a time.</summary>
    Date,

    /// <summary>A real date with a time.</summary>
    Moment,

    /// <summary>A real time of day, without a date.</summary>
    TimeOfDay,
}

/// <summary>One cell: its words and, for a sheet, its value.</summary>
/// <param name="Kind">What it holds.</param>
/// <param name="Text">As written or shown; empty when the cell is.</param>
/// <param name="Number">The number for <see cref="CellKind.Number"/>; otherwise 0.</param>
/// <param name="At">Date and time for <see cref="CellKind.Date"/> and <see cref="CellKind.Moment"/>; the time on an arbitrary day for <see cref="CellKind.TimeOfDay"/>.</param>
internal readonly record struct Cell(CellKind Kind, string Text, double Number, LocalDateTime At)
{
    /// <summary>Nothing.</summary>
    public static Cell Empty { get; } = new(CellKind.Empty, "", 0, default);

    /// <summary>True when there is nothing in it.</summary>
    public bool IsEmpty => Kind == CellKind.Empty;

    /// <summary>Words; empty when they are only spaces.</summary>
    public static Cell Of(string text) =>
        text.AsSpan().Trim().IsEmpty ? new(CellKind.Empty, text, 0, default) : new(CellKind.Text, text, 0, default);

    /// <summary>The words without the spaces around them; null when the cell is empty.</summary>
    public string? Words => IsEmpty ? null : Text.Trim();
}
