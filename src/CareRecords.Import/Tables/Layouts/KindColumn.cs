using CareRecords.Import.Reading;

namespace CareRecords.Import.Tables.Layouts;

/// <summary>Finds the column that says what happened where its heading does not tell.</summary>
internal static class KindColumn
{
    private const int LongestKind = 30;

    // "percussion lower left and right" is a kind in few words.
    private static bool IsLong(string text) => text.Length > LongestKind && (text.Any(char.IsAsciiDigit) || text.Contains(',') || text.Count(c => c == ' ') >= MostKindWords);

    private const int MostKindWords = 6;

    // "What happened" over whole sentences holds free words, not kinds.
    private static Block WithoutSentences(Block block, FamilyWords words)
    {
        bool OfSentences(int i)
        {
            var filled = block.Rows.Select(r => r[i].Cell).Where(c => !c.IsEmpty).ToList();
            return filled.Count > 0 && filled.Count(c => !IsLong(c.Text) && KindWords.Read(c.Text, words) is not null) * 2 < filled.Count
                && filled.Count(c => IsLong(c.Text)) * 2 >= filled.Count;
        }

        // "Activity" beside columns of physio, feeds and sats, over words that name none of them, is a remark.
        bool OfRemarks(int i)
        {
            var filled = block.Rows.Select(r => r[i].Cell).Where(c => !c.IsEmpty).ToList();
            return block.Columns.Count(c => c.Role is Role.Session or Role.Feed or Role.FeedStart or Role.FeedEnd or Role.Dose or Role.Saturation or Role.Millilitres or Role.Medicine or Role.Minutes or Role.Area or Role.Oxygen) >= 3
                && filled.Count(c => KindWords.Read(c.Text, words) is not null) * 2 < filled.Count;
        }

        var columns = block.Columns.Select((c, i) => c.Role == Role.Kind && (OfSentences(i) || OfRemarks(i)) ? (HeadingReader.NamesEvent(c.Heading) ? c with { Role = Role.Note, Heading = "notes", Own = "notes" } : c with { Role = Role.Note }) : c).ToList();
        // Whole sentences say themselves what they are of, whatever the table is called.
        var told = Enumerable.Range(0, columns.Count).Any(i => block.Columns[i].Role == Role.Kind && OfSentences(i));
        return block with { Columns = columns, About = told ? null : block.About };
    }

    // "Measure" or "Item" over sats, pulse, physio and feed: what happened, whatever the heading says. Two kinds at least, for "medicine" over medicines is none.
    private static Block Several(Block block, FamilyWords words)
    {
        if (block.IsAcross || block.Columns.Any(c => c.Role is Role.Kind) || !block.Columns.Any(c => c.Role is Role.Time or Role.Start or Role.Date)) return block;
        var measured = block.Columns.Any(c => c.Role is Role.Session or Role.Feed or Role.Dose or Role.Area or Role.Saturation or Role.Oxygen);
        for (var i = 0; i < block.Columns.Count; i++)
        {
            // "Treatment" over CPT, tube feed and a puffer: the words say which.
            var ofEvent = block.Columns[i].Role is Role.Session or Role.Feed && block.Columns.Count(c => c.Role is Role.Session or Role.Feed or Role.Dose) == 1;
            if (!ofEvent && (measured || block.Columns[i].Role is not (Role.Amount or Role.Detail or Role.Medicine or Role.Technique or Role.Sign or Role.Word))) continue;
            var filled = block.Rows.Select(r => r[i].Cell).Where(c => !c.IsEmpty).ToList();
            if (ofEvent && filled.Exists(c => c.Kind != CellKind.Text || CellTimes.Read(c).Outcome != Outcome.Nothing || EventCell.Read(c.Text) is not null)) continue;
            var kinds = filled.Where(c => c.Text.Length <= LongestKind).Select(c => KindWords.Read(c.Text, words)).OfType<WhatHappened>().ToList();
            if (kinds.Count < 2 || kinds.Count * 5 < filled.Count * 4 || kinds.Select(k => k.Kind).Distinct().Count() < 2) continue;
            var at = i;
            return block with { Columns = [.. block.Columns.Select((c, n) => n == at ? c with { Role = Role.Kind } : c)] };
        }

        return block;
    }

    // "A/c" over 100, 200 and 300 where the family's key explains them: what happened, whatever else has columns of its own.
    private static Block Coded(Block block, FamilyWords words)
    {
        if (block.IsAcross || words.All.Count == 0 || block.Columns.Any(c => c.Role is Role.Kind)) return block;
        for (var i = 0; i < block.Columns.Count; i++)
        {
            if (block.Columns[i].Role is not (Role.Unknown or Role.Word or Role.Ignore)) continue;
            var filled = block.Rows.Select(r => r[i].Cell).Where(c => !c.IsEmpty).ToList();
            var explained = filled.Where(c => words.MeaningOf(c.Text) is not null).Select(c => KindWords.Read(c.Text, words)?.Kind).ToList();
            if (filled.Count < 3 || explained.Count * 5 < filled.Count * 4 || explained.Where(k => k is not null).Distinct().Count() < 2) continue;
            var at = i;
            return block with { Columns = [.. block.Columns.Select((c, n) => n == at ? c with { Role = Role.Kind } : c)] };
        }

        return block;
    }

    private const int FewestFeedsBeside = 2;

    // A fluid chart whose "Chest / meds / sats" stands empty in the rows of the feeds: its words are remarks of their row, and the columns of millilitres tell theirs.
    private static Block BesideFeeds(Block block)
    {
        var kind = block.Columns.ToList().FindIndex(c => c.Role == Role.Kind);
        if (kind < 0 || block.Rows.Count(r => r[kind].Cell.IsEmpty && Enumerable.Range(0, block.Columns.Count).Any(i => block.Columns[i].Role == Role.Millilitres && !r[i].Cell.IsEmpty)) < FewestFeedsBeside) return block;
        return block with { Columns = [.. block.Columns.Select((c, i) => i == kind ? c with { Role = Role.Note, Heading = "notes", Own = "notes" } : c)], About = null };
    }

    // "Medicines" over sentences with their own times ("2 puffs salbutamol at 07h50"), in a row of a shift: they say themselves when.
    private static Block MedicinesInWords(Block block)
    {
        if (block.IsAcross || block.Columns.Any(c => c.Role is Role.Time or Role.Start)) return block;
        var told = Enumerable.Range(0, block.Columns.Count).Where(i => block.Columns[i].Role == Role.Medicine && block.Rows.Select(r => r[i].Cell).Where(c => !c.IsEmpty).ToList() is { Count: > 0 } filled && filled.Count(c => c.Kind == CellKind.Text && FreeWords.HasClock(c.Text)) * 2 >= filled.Count).ToHashSet();
        return told.Count == 0 ? block : block with { Columns = [.. block.Columns.Select((c, i) => told.Contains(i) ? c with { Role = Role.Note, Heading = "notes", Own = "notes" } : c)] };
    }

    private const int FewestTicked = 2;

    // A form whose boxes were ticked ("CPT, Neb / meds, Pulse ox") beside a question for each: the answers tell what happened.
    private static Block Ticked(Block block, FamilyWords words)
    {
        var kind = block.Columns.ToList().FindIndex(c => c.Role == Role.Kind);
        if (kind < 0 || block.Columns.Select(c => c.Role is Role.Session or Role.Area or Role.Feed or Role.Dose or Role.Medicine or Role.Saturation ? c.Role : Role.Unknown).Distinct().Count() < 4) return block;
        if (block.Rows.Count(r => r[kind].Cell.Words?.Split(',', StringSplitOptions.TrimEntries) is { Length: > 1 } ticks && ticks.Select(t => KindWords.Read(t, words)?.Kind).Distinct().Count() is > 1 and var kinds && kinds == ticks.Length) < FewestTicked) return block;
        return block with { Columns = [.. block.Columns.Select((c, i) => i == kind ? c with { Role = Role.Ignore } : c)], About = null };
    }

    /// <summary>The block, with a column without a known heading named as the kind where most of its cells say what happened.</summary>
    public static Block Named(Block block, FamilyWords words)
    {
        block = Ticked(BesideFeeds(MedicinesInWords(Coded(Several(WithoutSentences(block, words), words), words))), words);
        if (block.Columns.Any(c => c.Role is Role.Kind or Role.Session or Role.Feed or Role.Dose or Role.Area) || block.IsAcross) return block;
        for (var i = 0; i < block.Columns.Count; i++)
        {
            if (block.Columns[i].Role is not Role.Unknown || block.Columns[i].Part is not null) continue;
            var filled = block.Rows.Select(r => r[i].Cell).Where(c => !c.IsEmpty).ToList();
            var known = filled.Count(c => c.Text.Length <= LongestKind && KindWords.Read(c.Text, words) is not null);
            if (known < 2 || known * 5 < filled.Count * 3) continue;
            var at = i;
            return block with { Columns = [.. block.Columns.Select((c, n) => n == at ? c with { Role = Role.Kind } : c)] };
        }

        return block;
    }
}
