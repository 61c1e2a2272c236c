using System.Globalization;

namespace CareRecords.Statistics.Tests.Reference;

internal static class Section11Disclosure
{
    public static IEnumerable<Figures> All()
    {
        yield return Sweeney();
        yield return Inpatients();
    }

    private static void Measures(Figures figures, string quantity, string[][] columns, string[] sensitive)
    {
        string[][] rows = [.. sensitive.Select((_, i) => (string[])[.. columns.Select(c => c[i])])];
        var risk = DisclosureRisk.Of(rows, sensitive).Value;
        figures.Named(
            quantity,
            ("k", risk.SmallestClass),
            ("l.distinct", risk.DistinctDiversity),
            ("l.entropy", risk.EntropyDiversity),
            ("worst.share", risk.WorstShare),
            ("classes", risk.Classes),
            ("unique.records", risk.UniqueRows));
    }

    private static Figures Sweeney()
    {
        var figures = new Figures("11.1");
        var t = CsvTable.Data("sweeney2002.csv");
        Measures(figures, "QI = race,birth,gender,zip", [t.Text("race"), t.Text("birth"), t.Text("gender"), t.Text("zip")], t.Text("problem"));
        Measures(figures, "QI = race,gender", [t.Text("race"), t.Text("gender")], t.Text("problem"));
        return figures;
    }

    private static Figures Inpatients()
    {
        var figures = new Figures("11.2");
        var t = CsvTable.Data("machanavajjhala2007.csv");
        var (zip, age, condition) = (t.Text("zip"), t.Text("age"), t.Text("condition"));
        static int Years(string a) => int.Parse(a, CultureInfo.InvariantCulture);
        Measures(figures, "raw: QI = zip,age,nationality", [zip, age, t.Text("nationality")], condition);
        string[] bands = [.. age.Select(a => Years(a) < 30 ? "<30" : Years(a) >= 40 ? ">=40" : "3*")];
        Measures(figures, "4-anonymous table", [[.. zip.Select(z => z.StartsWith("14", StringComparison.Ordinal) ? "1485*" : "130**")], bands], condition);
        Measures(figures, "3-diverse table", [[.. zip.Select(z => z[..4])], [.. age.Select(a => Years(a) <= 40 ? "<=40" : ">40")]], condition);
        return figures;
    }
}
