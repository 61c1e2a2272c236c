using CareRecords.Import.Reading;

namespace CareRecords.Import.Notes;

/// <summary>What was written about one time (or list of times): the terms of one or more chunks.</summary>
internal sealed class Group
{
    /// <summary>Its terms, with a comma between chunks.</summary>
    public List<Term> Terms { get; } = [];

    /// <summary>The terms that its "no" and "skipped" denied.</summary>
    public List<Term> Denied { get; } = [];

    /// <summary>Its times; empty when none was written.</summary>
    public IReadOnlyList<ClockSpan> Times { get; set; } = [];

    /// <summary>The term of its times; null when none was written.</summary>
    public Term? TimeTerm { get; set; }

    /// <summary>Number of the sentence in which it starts.</summary>
    public int Sentence { get; init; }

    /// <summary>The first chunk of the line that it holds words of.</summary>
    public int FirstChunk { get; init; }

    /// <summary>The last chunk of the line that it holds words of.</summary>
    public int LastChunk { get; set; }

    /// <summary>A time written as impossible; null when there is none.</summary>
    public Term? BadTime { get; set; }

    /// <summary>The end of its event, where a "done" or "off" had a time of its own; null otherwise.</summary>
    public ClockSpan? EndTime { get; set; }

    /// <summary>A day other than the line's ("yesterday", "Fri"); null when it is the line's.</summary>
    public Term? Day { get; set; }

    /// <summary>A part of the day or a meal; null when none was written.</summary>
    public Term? Part { get; set; }

    /// <summary>All parts of the day or meals written in it.</summary>
    public List<Term> Parts { get; } = [];

    /// <summary>Whether it holds a term with the sense.</summary>
    public bool Has(Sense sense) => Terms.Carry(sense);
}
