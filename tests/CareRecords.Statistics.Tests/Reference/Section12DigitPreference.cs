namespace CareRecords.Statistics.Tests.Reference;

internal static class Section12DigitPreference
{
    public static IEnumerable<Figures> All()
    {
        yield return Ages();
        yield return Waiting();
        yield return ClockMinutes();
    }

    private static Figures Ages()
    {
        var figures = new Figures("12.1");
        var males = CsvTable.Data("pasex_males.csv").Numbers("males");
        figures.Add("Whipple ratio, ages 23-62 (x100 = index)", AgeHeaping.Whipple(males).Value);
        figures.Named(
            "digit-0 and digit-5 index (Roger et al. 1981)",
            ("W0", AgeHeaping.DigitIndex(males, 0).Value),
            ("W5", AgeHeaping.DigitIndex(males, 5).Value));
        foreach (var (form, keep) in new[] { ("orig", false), ("pasex", true) })
        {
            var (percentages, index) = AgeHeaping.Myers(males, 10, 89, keep).Value;
            for (var digit = 0; digit < 10; digit++)
            {
                figures.Add($"Myers' blended percentages, ages 10-89, {form} [{digit}]", percentages[digit]);
            }

            figures.Add($"Myers' index (half the sum of absolute deviations), {form}", index);
        }

        figures.Add("Myers' index, ages 23-82, orig", AgeHeaping.Myers(males, 23, 82).Value.Index);
        return figures;
    }

    private static Figures Waiting()
    {
        var figures = new Figures("12.2");
        var heaping = Heaping(figures, CsvTable.Data("faithful_waiting.csv").Wholes("waiting"));
        for (var digit = 0; digit < 10; digit++)
        {
            figures.Add($"last-digit counts [{digit}]", heaping.LastDigits[digit]);
        }

        return figures;
    }

    private static Figures ClockMinutes()
    {
        var figures = new Figures("12.3");
        (int Minute, int Count)[] round =
            [(0, 40), (15, 18), (30, 30), (45, 16), (5, 6), (10, 9), (20, 8), (25, 4), (35, 5), (40, 7), (50, 6), (55, 3)];
        var minutes = round.SelectMany(m => Enumerable.Repeat(m.Minute, m.Count)).Concat(Enumerable.Range(0, 60).Where(m => m % 5 != 0));
        var heaping = Heaping(figures, [.. minutes]);
        figures.Add("index with Wilson limits x500 [index]", heaping.Fives.Value);
        figures.Limits("index with Wilson limits x500", heaping.Fives);
        return figures;
    }

    private static HeapingFigures Heaping(Figures figures, int[] minutes)
    {
        var h = MinuteHeaping.Of(minutes).Value;
        figures.Named(
            "heaping figures",
            ("N", h.Count),
            ("chisq", h.ChiSquare),
            ("p", h.PValue),
            ("whipple5", h.Fives.Value),
            ("whipple10", h.Tens.Value),
            ("quarter", h.Quarters.Value));
        return h;
    }
}
