using CareRecords.Import.Notes;
using CareRecords.Records;

namespace CareRecords.Import.Accounting;

/// <summary>
/// The account of one text or sheet: how each line or row ended. A line marked twice keeps the weightier fate
/// (record, then problem, then set aside, then blank), so that the count balances by construction.
/// </summary>
internal sealed class LineLedger
{
    private readonly List<byte> _fates = [];

    /// <summary>Lines or rows entered so far.</summary>
    public int Entered => _fates.Count;

    /// <summary>Marks the lines from <paramref name="line"/> (one-based) on; lines up to there that were never marked stay unmarked.</summary>
    public void Mark(int line, int count, LineFate fate)
    {
        while (_fates.Count < line - 1 + count) _fates.Add(Unmarked);
        for (var i = line - 1; i < line - 1 + count; i++)
            if (_fates[i] == Unmarked || Weight(fate) > Weight((LineFate)_fates[i]))
                _fates[i] = (byte)fate;
    }

    /// <summary>Changes a line's fate whatever it was: for a record that was withdrawn later.</summary>
    public void Replace(int line, LineFate fate) => _fates[line - 1] = (byte)fate;

    /// <summary>Whether a line has a fate.</summary>
    public bool IsMarked(int line) => line <= _fates.Count && _fates[line - 1] != Unmarked;

    /// <summary>The fate of a line; null when it has none yet.</summary>
    public LineFate? FateOf(int line) => IsMarked(line) ? (LineFate)_fates[line - 1] : null;

    /// <summary>The count; a line without a fate counts as blank, so ask <see cref="IsMarked"/> for every line that is not.</summary>
    public LineCount Total()
    {
        Span<int> by = stackalloc int[4];
        foreach (var fate in _fates) by[fate == Unmarked ? (int)LineFate.Blank : fate]++;
        return new LineCount(_fates.Count, by[(int)LineFate.Blank], by[(int)LineFate.InRecords], by[(int)LineFate.NotRecord], by[(int)LineFate.Problem]);
    }

    private const byte Unmarked = byte.MaxValue;

    private static int Weight(LineFate fate) => fate switch
    {
        LineFate.InRecords => 3,
        LineFate.Problem => 2,
        LineFate.NotRecord => 1,
        _ => 0,
    };
}
