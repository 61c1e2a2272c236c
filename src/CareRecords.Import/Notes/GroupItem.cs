using CareRecords.Import.Reading;

namespace CareRecords.Import.Notes;

/// <summary>Kinds of care that a term speaks of.</summary>
[Flags]
internal enum CareKinds
{
    /// <summary>None.</summary>
    None = 0,

    /// <summary>Chest clearance.</summary>
    Session = 1,

    /// <summary>A feed.</summary>
    Feed = 2,

    /// <summary>A medicine.</summary>
    Dose = 4,

    /// <summary>A saturation, pulse or oxygen.</summary>
    Check = 8,

    /// <summary>A sign.</summary>
    Sign = 16,

    /// <summary>"Same": any kind.</summary>
    Same = 32,
}

/// <summary>A term in its chunk, with what the cutting into groups asks of it.</summary>
internal sealed class GroupItem
{
    /// <summary>A term of a chunk.</summary>
    /// <param name="terms">The chunk's terms, without the denied ones.</param>
    /// <param name="at">Position of the term in them.</param>
    /// <param name="chunk">The chunk.</param>
    /// <param name="chunkIndex">Its number in the line.</param>
    /// <param name="before">The separator before the chunk when the term is its first; otherwise null.</param>
    public GroupItem(List<Term> terms, int at, Chunk chunk, int chunkIndex, string? before)
    {
        (Terms, At, Chunk, ChunkIndex, Before) = (terms, at, chunk, chunkIndex, before);
        var term = terms[at];
        IsTime = term.Kind == TermKind.Time && term.Clock is not null;
        Named = IsTime ? CareKinds.None : NamedAt(terms, at);
        IsValue = !IsTime && (term.Kind is TermKind.Number or TermKind.Quantity or TermKind.Range or TermKind.Parts or TermKind.Times || term.Is(Sense.Side) || term.Is(Sense.Area) || term.Is(Sense.SideArea) || term.Is(Sense.EachSide));
        Kinds = Named | (IsTime ? CareKinds.None : ByValue(term));
    }

    /// <summary>The chunk's terms.</summary>
    public List<Term> Terms { get; }

    /// <summary>Position in them.</summary>
    public int At { get; }

    /// <summary>The chunk.</summary>
    public Chunk Chunk { get; }

    /// <summary>Number of the chunk in the line.</summary>
    public int ChunkIndex { get; }

    /// <summary>The separator before it; null within a chunk.</summary>
    public string? Before { get; }

    /// <summary>The term.</summary>
    public Term Term => Terms[At];

    /// <summary>Whether it is a time or a list of times.</summary>
    public bool IsTime { get; }

    /// <summary>Whether it is a number or a place.</summary>
    public bool IsValue { get; }

    /// <summary>Kinds of care that its word names.</summary>
    public CareKinds Named { get; }

    /// <summary>Kinds of care that its word or value belongs to.</summary>
    public CareKinds Kinds { get; }

    /// <summary>The kinds of care that a term names where it stands: none for what is only spoken of.</summary>
    public static CareKinds NamedAt(List<Term> terms, int at) => IsSpokenOf(terms, at) ? CareKinds.None : KindsOf(terms[at]);

    private static CareKinds KindsOf(Term term)
    {
        var kinds = CareKinds.None;
        if (term.Kind == TermKind.Reference || (term.Is(Sense.Again) && term.Text.Contains("one", StringComparison.Ordinal))) return CareKinds.Same;
        if (term.Is(Sense.Session) || term.Is(Sense.Technique)) kinds |= CareKinds.Session;
        if (term.NamesFeed || term.Is(Sense.FeedRunning) || term.Is(Sense.Food) || term.Is(Sense.Mouth)) kinds |= CareKinds.Feed;
        if ((term.Kind == TermKind.Word && term.Is(Sense.Unit, "puffs") && term.Text.Length > 1) || term.Is(Sense.Medicine) || term.Is(Sense.Device) || term.Is(Sense.Antibiotic) || term.Is(Sense.MedicineWord)) kinds |= CareKinds.Dose;
        if (term.Is(Sense.SatLabel) || term.Is(Sense.Desat) || (term.Is(Sense.PulseLabel) && term.Text != "p") || term.Is(Sense.OxygenLabel) || term.Is(Sense.Air)) kinds |= CareKinds.Check;
        if (term.Is(Sense.Sign) || term.Is(Sense.TempLabel) || term.Is(Sense.BreathLabel)) kinds |= CareKinds.Sign;
        return kinds;
    }

    // "94", "½ L", "4 puffs", "55 ml/hr": what they can only be.
    private static CareKinds ByValue(Term term) => term switch
    {
        { Kind: TermKind.Number, IsWhole: true, Number: >= 80 and <= 100 } => CareKinds.Check,
        { Kind: TermKind.Parts, Parts: [>= 80 and <= 100, ..] } => CareKinds.Check,
        { Kind: TermKind.Range, Number: >= 80, High: <= 100 } => CareKinds.Check,
        { Kind: TermKind.Quantity, Unit: Unit.Litre or Unit.MlMin or Unit.Percent } => CareKinds.Check,
        { Kind: TermKind.Quantity, Unit: Unit.Puffs or Unit.Mg or Unit.Mcg or Unit.Neb } => CareKinds.Dose,
        { Kind: TermKind.Quantity, Unit: Unit.Rate or Unit.Oz } => CareKinds.Feed,
        { Kind: TermKind.Quantity, Unit: Unit.Celsius or Unit.Fahrenheit } => CareKinds.Sign,
        _ => term.Is(Sense.SideArea) || term.Is(Sense.Area) || term.Is(Sense.EachSide) ? CareKinds.Session : CareKinds.None,
    };

    // "after PT", "before his feed": spoken of only.
    private static bool IsSpokenOf(List<Term> terms, int at)
    {
        for (var k = at - 1; k >= 0 && k >= at - 3; k--)
        {
            if (terms[k].Is(Sense.Before) || terms[k].Is(Sense.After) || terms[k].Is(Sense.During)) return true;
            if (terms[k].Kind != TermKind.Word || terms[k].Meanings.Length > 0) return false;
        }
        return false;
    }
}
