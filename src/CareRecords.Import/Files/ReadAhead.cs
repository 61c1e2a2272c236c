namespace CareRecords.Import.Files;

/// <summary>Walks a sequence on another processor, a batch ahead of the one who uses it: a table's lines are cut into cells while the rows before become records.</summary>
internal static class ReadAhead
{
    /// <summary>Items of a batch: with fewer, the two sides spend more of their time waiting for each other.</summary>
    internal const int Batch = 4_096;

    /// <summary>The same sequence. Its first batch, often all of it, is walked on the spot.</summary>
    public static IEnumerable<T> Of<T>(IEnumerable<T> source)
    {
        using var batches = source.Chunk(Batch).GetEnumerator();
        if (!batches.MoveNext()) yield break;
        for (var batch = batches.Current; ;)
        {
            var next = batch.Length < Batch ? Task.FromResult<T[]?>(null) : Task.Run(() => batches.MoveNext() ? batches.Current : null);
            try
            {
                foreach (var item in batch) yield return item;
            }
            finally
            {
                // Whoever stops early closes the source: not while it is being walked.
                Task.WaitAny(next);
            }

            if (next.GetAwaiter().GetResult() is not { } following) yield break;
            batch = following;
        }
    }
}
