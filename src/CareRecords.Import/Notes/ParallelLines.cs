using CareRecords.Import.Reading;

namespace CareRecords.Import.Notes;

/// <summary>
/// Reads placed lines on all cores, a batch at a time, and gives them back in order; while one batch is joined into records the next is read.
/// A year of notes is read in about half the time of one core; what is read does not depend on the number of cores.
/// </summary>
internal static class ParallelLines
{
    private const int Batch = 2_048;

    /// <summary>Shorter texts are read on the spot: starting threads would take longer.</summary>
    private const int LeastLines = 256;

    /// <summary>The lines with what each told.</summary>
    public static IEnumerable<(PlacedLine Placed, LineRead Read)> Read(string file, TermReader reader, IReadOnlyDictionary<string, string> answers, IEnumerable<PlacedLine> lines)
    {
        using var batches = lines.Chunk(Batch).GetEnumerator();
        var next = batches.MoveNext() ? Start(file, reader, answers, batches.Current) : null;
        while (next is not null)
        {
            var (placed, reads) = (batches.Current, next.GetAwaiter().GetResult());
            next = batches.MoveNext() ? Start(file, reader, answers, batches.Current) : null;
            for (var i = 0; i < placed.Length; i++) yield return (placed[i], reads[i]);
        }
    }

    /// <summary>What each line tells when it is looked at by itself, on all cores where there are many.</summary>
    public static T[] Look<T>(IReadOnlyList<string> lines, Func<string, T> look)
    {
        var told = new T[lines.Count];
        if (lines.Count < LeastLines) for (var i = 0; i < told.Length; i++) told[i] = look(lines[i]);
        else Parallel.For(0, told.Length, i => told[i] = look(lines[i]));
        return told;
    }

    /// <summary>Looks at lines in parts, on all cores where there are many, each part with a reader of its own.</summary>
    /// <param name="count">How many lines there are.</param>
    /// <param name="reader">Reads the words; it may not learn meanwhile.</param>
    /// <param name="inOrder">Whether a line may need those above it.</param>
    /// <param name="look">Given a reader, the first line of a part and the one after its last.</param>
    public static void InParts(int count, TermReader reader, bool inOrder, Action<TermReader, int, int> look)
    {
        if (inOrder || count < LeastLines) { look(reader, 0, count); return; }
        var parts = (count / Batch) + 1;
        Parallel.For(0, parts, part => look(reader.Fork(), (int)((long)count * part / parts), (int)((long)count * (part + 1) / parts)));
    }

    private static Task<LineRead[]> Start(string file, TermReader reader, IReadOnlyDictionary<string, string> answers, PlacedLine[] lines)
    {
        var reads = new LineRead[lines.Length];
        if (lines.Length < LeastLines)
        {
            Some(new LineReader(file, reader), answers, lines, reads, 0, lines.Length);
            return Task.FromResult(reads);
        }

        var parts = Math.Max(1, Environment.ProcessorCount);
        return Task.Run(() =>
        {
            Parallel.For(0, parts, part => Some(new LineReader(file, reader.Fork()), answers, lines, reads, lines.Length * part / parts, lines.Length * (part + 1) / parts));
            return reads;
        });
    }

    private static void Some(LineReader reader, IReadOnlyDictionary<string, string> answers, PlacedLine[] lines, LineRead[] reads, int from, int to)
    {
        for (var i = from; i < to; i++)
        {
            var line = lines[i];
            if (answers.Count == 0) { reads[i] = reader.Read(line); continue; }
            var place = FormattableString.Invariant($"{reader.File}:{line.Index + 1}");
            line = line with { Words = LineAnswers.Apply(line.Words, place, answers), Pairs = LineAnswers.Pairs(line.Pairs, place, answers) };
            reads[i] = reader.Read(line);
            if (LineAnswers.Mended(line.Words, reads[i].Doubts, place, answers) is { } mended) reads[i] = reader.Read(line with { Words = mended });
        }
    }
}
