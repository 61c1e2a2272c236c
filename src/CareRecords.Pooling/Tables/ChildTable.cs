namespace CareRecords.Pooling;

/// <summary>The table "child": one row a child.</summary>
internal static class ChildTable
{
    private const string NoBaseline = "too few days for a baseline";
    private const string NoEffect = "too few pairs of readings";
    private const string NoTimes = "no exact clock time";

    public static SharedTable<SharedChildRow> Table { get; } = new(
        "child", "One child: the span of its records and the figures of which there is one a child.", findings => [findings.Child],
        new ColumnList<SharedChildRow>()
            .Integer("tables_version", _ => SharedFindings.TablesVersion, "Version of these tables")
            .OpenCode("definitions", c => c.Definitions.ToString(2), "Version of the definitions that the figures follow (docs/definitions.md)")
            .OpenCode("child", c => c.Code.Text, "The child's code: random, or HMAC-SHA-256 under a key that is not in this file")
            .Code("age_band", c => c.AgeBand, "Age band, if the family gave one")
            .OpenCode("study_group", c => c.StudyGroup?.Text, "Study group, if given", "not given")
            .Integer("days", c => c.Days, "Care days from the first record (day 0) to the last", unit: "d")
            .Integer("days_with_records", c => c.DaysWithRecords, "Of them with anything written", unit: "d")
            .Number("baseline_spo2", c => c.BaselineSpO2, "%", "Own usual saturation at usual oxygen", NoBaseline, OpenCodes.Saturation)
            .Number("baseline_spo2_low", c => c.BaselineLow, "%", "Lower edge of the usual band", NoBaseline, OpenCodes.Saturation)
            .Number("baseline_spo2_high", c => c.BaselineHigh, "%", "Upper edge of the usual band", NoBaseline, OpenCodes.Saturation)
            .Number("usual_oxygen", c => c.UsualOxygen, "L/min", "Usual oxygen; 0 is air", "oxygen never written, or no baseline", OpenCodes.OxygenFlow)
            .Integer("baseline_days", c => c.BaselineDays, "Days that gave the baseline", unit: "d")
            .Integer("baseline_readings", c => c.BaselineReadings, "Readings that gave the baseline")
            .Boolean("baseline_provisional", c => c.BaselineProvisional, "Fewer than 14 well days gave the baseline", NoBaseline)
            .Integer("effect_pairs", c => c.EffectPairs, "Sessions with a reading before and after at the same oxygen")
            .Integer("effect_pairs_left_out", c => c.EffectPairsLeftOut, "Pairs left out because oxygen changed or was not written")
            .Number("effect_median", c => c.EffectMedian, "%", "Median change of saturation over a session, in points", NoEffect)
            .Number("effect_low", c => c.EffectLow, "%", "Its lower limit, distribution-free", NoEffect)
            .Number("effect_high", c => c.EffectHigh, "%", "Its upper limit", NoEffect)
            .Number("effect_level", c => c.EffectLevel, "1", "The level of these limits", NoEffect)
            .Integer("clock_times", c => c.ClockTimes, "Exact clock times looked at for digit preference")
            .Number("multiples_of_five", c => c.MultiplesOfFive, "1", "Share of their minutes ending in 0 or 5", NoTimes)
            .Number("multiples_of_fifteen", c => c.MultiplesOfFifteen, "1", "Share on the quarter hours", NoTimes)
            .Integer("late_entries", c => c.LateEntries, "Runs of entries that look written later or together")
            .Integer("readings_without_oxygen", c => c.ReadingsWithoutOxygen, "Saturation readings without a flow"),
        Read);

    private static SharedChildRow Read(CellReader cells)
    {
        if (cells.Integer("tables_version") != SharedFindings.TablesVersion) throw cells.Wrong("tables_version", "is another version");
        return new SharedChildRow
        {
            Code = ChildCode.TryRead(cells.OpenCode("child"), out var code) ? code : throw cells.Wrong("child", "is not a child's code"),
            Definitions = Version.TryParse(cells.OpenCode("definitions"), out var version) && version.Build < 0 ? version : throw cells.Wrong("definitions", "is not a version"),
            AgeBand = cells.Code<AgeBand>("age_band"),
            StudyGroup = GroupOf(cells),
            Days = cells.Integer("days"),
            DaysWithRecords = cells.Integer("days_with_records"),
            BaselineSpO2 = cells.NumberOrNull("baseline_spo2"),
            BaselineLow = cells.NumberOrNull("baseline_spo2_low"),
            BaselineHigh = cells.NumberOrNull("baseline_spo2_high"),
            UsualOxygen = cells.NumberOrNull("usual_oxygen"),
            BaselineDays = cells.Integer("baseline_days"),
            BaselineReadings = cells.Integer("baseline_readings"),
            BaselineProvisional = cells.BooleanOrNull("baseline_provisional"),
            EffectPairs = cells.Integer("effect_pairs"),
            EffectPairsLeftOut = cells.Integer("effect_pairs_left_out"),
            EffectMedian = cells.NumberOrNull("effect_median"),
            EffectLow = cells.NumberOrNull("effect_low"),
            EffectHigh = cells.NumberOrNull("effect_high"),
            EffectLevel = cells.NumberOrNull("effect_level"),
            ClockTimes = cells.Integer("clock_times"),
            MultiplesOfFive = cells.NumberOrNull("multiples_of_five"),
            MultiplesOfFifteen = cells.NumberOrNull("multiples_of_fifteen"),
            LateEntries = cells.Integer("late_entries"),
            ReadingsWithoutOxygen = cells.Integer("readings_without_oxygen"),
        };
    }

    private static StudyGroup? GroupOf(CellReader cells) =>
        cells.OpenCodeOrNull("study_group") is not { } text ? null
        : StudyGroup.TryRead(text, out var group) && group.Text == text ? group
        : throw cells.Wrong("study_group", "is not a group");
}
