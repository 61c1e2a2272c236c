namespace CareRecords.Pooling;

/// <summary>The tables "plan", "saturations" and "completeness".</summary>
internal static class SmallTables
{
    public static SharedTable<SharedPlanValue> Plan { get; } = new(
        "plan", "One plan value from a day on, in the unit of its item.", findings => findings.Plan,
        new ColumnList<SharedPlanValue>()
            .Code("item", p => p.Item, "What it states; its unit is in its name, per cent for saturations and shares, L/min for oxygen")
            .Integer("from_day", p => p.FromDay, "From which day", "from the first", "d")
            .Number("low", p => p.Low, "1", "The value, or the lower end of a range")
            .Number("high", p => p.High, "1", "The upper end of a range, or the value")
            .Boolean("is_default", p => p.IsDefault, "A starting value of the program and not the plan's"),
        cells => new SharedPlanValue(
            cells.Code<SharedPlanItem>("item"), cells.IntegerOrNull("from_day"), cells.Number("low"), cells.Number("high"), cells.Boolean("is_default")));

    public static SharedTable<SharedSaturation> Saturations { get; } = new(
        "saturations", "Saturations at one oxygen flow; flows are never mixed.", findings => findings.Saturations,
        new ColumnList<SharedSaturation>()
            .Number("oxygen", s => s.OxygenLitresPerMinute, "L/min", "The flow; 0 is air", "flow not written", OpenCodes.OxygenFlow)
            .Integer("readings", s => s.Readings, "Readings")
            .Integer("days", s => s.Days, "Care days with such a reading", unit: "d")
            .Number("median", s => s.Median, "%", "Median", null, OpenCodes.Saturation)
            .Number("lower_quartile", s => s.LowerQuartile, "%", "Lower quartile", null, OpenCodes.Saturation)
            .Number("upper_quartile", s => s.UpperQuartile, "%", "Upper quartile", null, OpenCodes.Saturation)
            .Number("lowest", s => s.Lowest, "%", "Lowest reading", null, OpenCodes.Saturation)
            .Number("highest", s => s.Highest, "%", "Highest reading", null, OpenCodes.Saturation),
        cells => new SharedSaturation(
            cells.NumberOrNull("oxygen"), cells.Integer("readings"), cells.Integer("days"), cells.Number("median"),
            cells.Number("lower_quartile"), cells.Number("upper_quartile"), cells.Number("lowest"), cells.Number("highest")));

    public static SharedTable<SharedCompleteness> Completeness { get; } = new(
        "completeness", "One kind of record.", findings => findings.Completeness,
        new ColumnList<SharedCompleteness>()
            .Code("kind", c => c.Kind, "The kind of record")
            .Integer("entries", c => c.Entries, "Entries")
            .Integer("days", c => c.Days, "Care days with at least one", unit: "d")
            .Integer("approximate", c => c.Approximate, "Entries whose time is not exact"),
        cells => new SharedCompleteness(cells.Code<RecordKind>("kind"), cells.Integer("entries"), cells.Integer("days"), cells.Integer("approximate")));
}
