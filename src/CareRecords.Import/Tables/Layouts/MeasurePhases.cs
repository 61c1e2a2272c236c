using CareRecords.Records;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>
/// Gives columns of measures the phase that their headings say only side by side: "in" beside "out", "1st" beside "2nd", a plain "sats" beside "sats after".
/// </summary>
internal static class MeasurePhases
{
    private static readonly HashSet<string> First = new(["in", "start", "begin", "beginning", "arrival", "arriving", "arrive", "on", "first", "1st", "1", "from", "pre", "beginn", "initial", "i", "a"], StringComparer.Ordinal);
    private static readonly HashSet<string> Second = new(["out", "end", "finish", "leaving", "leave", "departure", "off", "second", "2nd", "2", "to", "post", "final", "ii", "b", "later"], StringComparer.Ordinal);

    /// <summary>Settles the phases of a table that has sessions; others measure at rest.</summary>
    public static void Settle(ColumnMeaning[] columns, TableKind? about)
    {
        if (about != TableKind.Sessions && !columns.Any(c => c.Role is Role.Session or Role.SessionEnd or Role.Area or Role.Technique or Role.Minutes)) return;
        foreach (var role in new[] { Role.Saturation, Role.Pulse, Role.Oxygen })
            foreach (var group in Enumerable.Range(0, columns.Length).Where(i => columns[i].Role == role).GroupBy(i => (columns[i].Group, columns[i].Half, columns[i].Part)))
                if (group.ToList() is [var one, var other])
                    Pair(columns, one, other);
    }

    private static void Pair(ColumnMeaning[] columns, int one, int other)
    {
        var (a, b) = (columns[one], columns[other]);
        if (a.Phase != CheckPhase.None && b.Phase != CheckPhase.None || DayRange.IsOfDay(a.Heading) || DayRange.IsOfDay(b.Heading)) return;
        if (b.Phase == CheckPhase.After) columns[one] = a with { Phase = CheckPhase.Before };
        else if (a.Phase == CheckPhase.Before) columns[other] = b with { Phase = CheckPhase.After };
        else if (a.Phase == CheckPhase.None && b.Phase == CheckPhase.None && Says(a, b, First) && Says(b, a, Second))
            (columns[one], columns[other]) = (a with { Phase = CheckPhase.Before }, b with { Phase = CheckPhase.After });
    }

    // A word of the heading that the other has not.
    private static bool Says(ColumnMeaning column, ColumnMeaning beside, HashSet<string> words)
    {
        var others = Lexicon.Split(beside.Own);
        return Lexicon.Split(column.Own).Any(w => words.Contains(w) && !others.Contains(w));
    }
}
