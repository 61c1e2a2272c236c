using NodaTime;

namespace CareRecords.Import;

/// <summary>Which number comes first in a written date such as 3/4/25.</summary>
public enum DateOrder
{
    /// <summary>Day, month, year.</summary>
    DayMonthYear,

    /// <summary>Month, day, year.</summary>
    MonthDayYear,

    /// <summary>Year, month, day.</summary>
    YearMonthDay,
}

/// <summary>What the person who runs an import can state beside the files themselves.</summary>
public sealed record ImportOptions
{
    /// <summary>A file with a plan table, read in addition to the inputs; null when none was named.</summary>
    public string? PlanFile { get; init; }

    /// <summary>IANA time zone to use where the plan names none (<c>--zone</c>); null when not given.</summary>
    public string? Zone { get; init; }

    /// <summary>The day order of written dates (<c>--date-order</c>); null: decided from each source, or asked.</summary>
    public DateOrder? DateOrder { get; init; }

    /// <summary>The first calendar day to keep, included (<c>--from</c>); null: from the first record.</summary>
    public LocalDate? From { get; init; }

    /// <summary>The last calendar day to keep, included (<c>--to</c>); null: to the last record.</summary>
    public LocalDate? To { get; init; }

    /// <summary>The IANA zone of the computer, used where neither plan nor option names one; handed in so that tests do not depend on the machine.</summary>
    public required string MachineZone { get; init; }

    /// <summary>The most bytes that a workbook may unpack to before it is refused (a guard against zip bombs). Default 1 GiB.</summary>
    public long LargestUnpackedWorkbook { get; init; } = 1L << 30;
}
