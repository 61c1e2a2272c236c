namespace CareRecords.Statistics;

/// <summary>The result of a significance test.</summary>
/// <param name="Statistic">The test statistic, as the method defines it.</param>
/// <param name="PValue">The chance, were the null hypothesis true, of a statistic at least as far out; 0 to 1.</param>
/// <param name="Count">How many observations entered the test.</param>
/// <param name="Method">The name of the method.</param>
public sealed record TestResult(double Statistic, double PValue, int Count, string Method);
