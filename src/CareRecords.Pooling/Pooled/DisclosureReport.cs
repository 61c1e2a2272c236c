namespace CareRecords.Pooling;

/// <summary>What was kept back so that no figure rests on too few children, nor can be worked out from those shown.</summary>
/// <param name="SmallestGroup">The fewest children that a shown figure rests on.</param>
/// <param name="Suppressed">What was kept back, in order of table.</param>
public sealed record DisclosureReport(int SmallestGroup, IReadOnlyList<SuppressedCell> Suppressed);

/// <summary>A row that was kept back.</summary>
/// <param name="Table">The table.</param>
/// <param name="Row">The row.</param>
/// <param name="Why">"fewer than 5 children", or "would give another row away by subtraction".</param>
public sealed record SuppressedCell(string Table, string Row, string Why);
