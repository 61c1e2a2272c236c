namespace CareRecords.Pooling;

/// <summary>Takes children in one by one, and refuses one that repeats another.</summary>
internal sealed class ChildrenTaken
{
    /// <summary>Children with fewer sessions may well have the same few figures by chance.</summary>
    private const int SessionsToCompare = 10;

    private readonly List<ChildSummary> _children = [];
    private readonly Dictionary<ChildCode, (string File, string Seal)> _codes = [];
    private readonly Dictionary<string, string> _fingerprints = new(StringComparer.Ordinal);

    /// <summary>The children in the order of their codes, so that the order of files does not matter.</summary>
    public IReadOnlyList<ChildSummary> InOrder() => [.. _children.OrderBy(c => c.Code.Text, StringComparer.Ordinal)];

    /// <summary>Takes a child in.</summary>
    /// <returns>Why it is refused; null when it was taken.</returns>
    public string? Take(SharedChild child)
    {
        var (findings, code) = (child.Findings, child.Findings.Child.Code);
        if (findings.Child.Days <= 0 || findings.Days.Count == 0) return "holds no care day";
        var (seal, fingerprint) = SharedTables.SealAndFingerprint(findings);
        if (_codes.TryGetValue(code, out var other))
            return other.Seal == seal ? $"is the same as {other.File}" : $"repeats a child: {other.File} has the same code; only that one is pooled";

        if (findings.Sessions.Count >= SessionsToCompare && _fingerprints.TryGetValue(fingerprint, out var twin))
            return $"repeats a child: it holds the same records as {twin} under another code; only that one is pooled";

        _codes.Add(code, (child.File, seal));
        _fingerprints.TryAdd(fingerprint, child.File);
        _children.Add(ChildSummary.Of(findings));
        return null;
    }
}
