namespace CareRecords.Import.Tables.Layouts;

/// <summary>Tells groups of columns that are each an event of their own (its time, its minutes, its saturations) from groups that only share a word.</summary>
internal static class HeadingGroups
{
    /// <summary>The columns with the group kept where it is an event, and with what the group says of a column that alone says too little.</summary>
    public static List<ColumnMeaning> Settled(List<ColumnMeaning> columns)
    {
        var groups = columns.Where(c => c.Group > 0).GroupBy(c => c.Group).ToDictionary(g => g.Key, g => g.ToList());
        // "Session | Left | Right": with one group that has times the others are parts of it.
        var alone = groups.Values.Count(g => g.Exists(IsTime) || IsEvent(g, groups.Values)) == 1 && groups.Values.Any(g => !g.Exists(IsTime) && g.Exists(c => c.Role == Role.Area));
        for (var i = 0; i < columns.Count; i++)
        {
            var column = columns[i];
            if (column.Group == 0) continue;
            var group = groups[column.Group];
            if (column.Role == Role.Time && KindOf(group) is { } role) column = column with { Role = role };
            // "Overnight | on | off | ml": the feed's own.
            if (column.Role is Role.Start or Role.End && KindOf(group) is { } kind && kind is Role.Feed or Role.Session)
                column = column with { Role = kind == Role.Feed ? column.Role == Role.Start ? Role.FeedStart : Role.FeedEnd : column.Role == Role.Start ? Role.Session : Role.SessionEnd };
            // A count of puffs under a medicine's name with no time of its own is the dose itself.
            if (column.Role is Role.Amount && group.Count == 1 && column.Over.Length > 0)
                column = column with { Role = Role.Dose, MedicineWords = column.Over };
            columns[i] = alone || !IsEvent(group, groups.Values) ? column with { Group = 0 } : column;
        }

        return columns;
    }

    private static Role? KindOf(List<ColumnMeaning> group) =>
        group.Exists(c => c.Role is Role.Session or Role.Feed or Role.Dose) ? null
        : group.Exists(c => c.Role is Role.Area or Role.Technique) ? Role.Session
        : group.Exists(c => c.Role is Role.Millilitres or Role.Rate) ? Role.Feed
        : null;

    private static bool IsEvent(List<ColumnMeaning> group, IEnumerable<List<ColumnMeaning>> all)
    {
        if (group.Count < 2 || group[0].Over is not { Length: > 0 } over) return false;
        var words = Lexicon.Find(over, out _).Select(k => k.Concept).ToHashSet();
        // "Before" over sats and pulse, "Left" over lower and upper: parts of one event.
        if (words.Overlaps([Concept.Before, Concept.After, Concept.During, Concept.Left, Concept.Right]) && !group.Exists(IsTime)) return false;
        if (group.Exists(IsTime)) return true;
        // "Percussion | RU LU RL LL" and "Vibration | RU LU RL LL": two techniques of one session; "Clapping 1" and "Clapping 2" are two.
        if (words.Overlaps([Concept.Percussion, Concept.Vibration]) && !words.Overlaps([Concept.Morning, Concept.Midday, Concept.Evening]) && all.Count(o => Techniques(o).SetEquals(Techniques(group))) == 1) return false;
        return words.Overlaps([Concept.Morning, Concept.Midday, Concept.Evening])
            || all.Any(other => other != group && other.Count == group.Count && other.Zip(group).All(p => p.First.Own == p.Second.Own));
    }

    private static HashSet<Concept> Techniques(List<ColumnMeaning> group) => [.. Lexicon.Find(group[0].Over, out _).Select(k => k.Concept).Where(c => c is Concept.Percussion or Concept.Vibration)];

    private static bool IsTime(ColumnMeaning column) => column.Role is Role.Time or Role.Start or Role.Session or Role.Feed or Role.FeedStart or Role.FeedEnd or Role.Dose;
}
