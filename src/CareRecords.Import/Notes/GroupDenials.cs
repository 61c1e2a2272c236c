using CareRecords.Import.Reading;

namespace CareRecords.Import.Notes;

/// <summary>Takes out of the groups of a line what its words deny: "physio - not done", "no tops", "no shakes on the 6pm".</summary>
internal static class GroupDenials
{
    /// <summary>What a chunk denied: it goes to the group that holds the rest of the chunk, or to the last one before it.</summary>
    /// <param name="Chunk">The chunk.</param>
    /// <param name="Index">Its number in the line.</param>
    /// <param name="Denial">What it denies.</param>
    internal sealed record OfChunk(Chunk Chunk, int Index, Modality.Denial Denial);

    /// <summary>Marks times of which it is not said which was left out.</summary>
    internal const string LeftOut = "left out";

    /// <summary>Takes what a chunk denies out of the groups of its line.</summary>
    public static void Take(List<Group> groups, OfChunk denied)
    {
        var (chunk, index, denial) = denied;
        var holder = groups.Find(g => g.FirstChunk <= index && index <= g.LastChunk) ?? groups.FindLast(g => g.LastChunk < index);
        // "physio - skipped am": what stands before the dash.
        if (denial.SkipsAll && denial.Denied.Count == 0)
        {
            var before = groups.FindLast(g => g.FirstChunk < index && g.Times.Count == 0 && g.Sentence == chunk.Sentence) ?? (holder is { Times.Count: > 0 } own && own.FirstChunk == index ? null : groups.FindLast(g => g.FirstChunk < index && IsLeftOut(g, chunk, index)));
            if (before is { Times.Count: > 1, TimeTerm: { } times })
            {
                // "physio 11.15, 3pm - not done": both of them, or the last?
                before.BadTime ??= times with { Kind = TermKind.BadTime, Meanings = [new Meaning(Sense.Clock, LeftOut)] };
                return;
            }
            if (before is not null)
            {
                before.Denied.AddRange(before.Terms.Where(Modality.IsDeniable));
                before.Terms.RemoveAll(Modality.IsDeniable);
            }
            holder = before ?? holder;
        }
        if (!denial.SkipsAll && denial.Denied.Count > 0 && denial.Denied.TrueForAll(t => t.Is(Sense.Technique) || t.Is(Sense.Area) || t.Is(Sense.SideArea)) && OfOne(groups, holder, chunk) is { } one) holder = one;
        if (holder is null) groups.Add(holder = new Group { Sentence = chunk.Sentence, FirstChunk = index, LastChunk = index });
        holder.Denied.AddRange(denial.Denied);
    }

    // "7pm physio - not done": nothing else is told of it, and the words after it speak of nothing else ("missed the bus" does).
    private static bool IsLeftOut(Group group, Chunk chunk, int index) => group.LastChunk >= index - 1 && group.Times.Count > 0 && (group.Sentence == chunk.Sentence || chunk.Terms.Count <= 2)
        && group.Terms.Exists(t => t.Is(Sense.Session) || t.Is(Sense.Technique)) && !group.Terms.Exists(t => t.Kind is TermKind.Number or TermKind.Quantity or TermKind.Parts or TermKind.Range or TermKind.Times)
        && chunk.Terms[0].Is(Sense.Skip) && (chunk.Terms.Count == 1 || chunk.Terms[1].Text is "it" or "again" or "today" or "tonight" or "because" or "as" or "so" or "cos" or "due to" or "and" or "he" or "she" or "yet" or "this time" or "by" or "at all");

    private static bool SameClock(ClockSpan one, ClockSpan other) => one.Start.Time.Hour % 12 == other.Start.Time.Hour % 12 && one.Start.Time.Minute == other.Start.Time.Minute;

    // "no shakes on the 6pm", "the last had no vibrations": of one of the sessions that a group before tells together; it becomes a group of its own.
    private static Group? OfOne(List<Group> groups, Group? holder, Chunk chunk)
    {
        var named = chunk.Terms.FindAll(t => t.Kind == TermKind.Time && t.Clock is not null && t.Times.Count == 0);
        var last = named.Count == 0 && chunk.Terms.Exists(t => t.Text is "last" or "last one" or "the last");
        if (!last && named.Count != 1) return null;
        // Each told with its own time: the one at that time.
        if (named.Count == 1 && groups.FindLast(g => g.Times.Count == 1 && g.TimeTerm!.Start < named[0].Start && SameClock(g.Times[0], named[0].Clock!) && g.Terms.Exists(t => t.Is(Sense.Session) || t.Is(Sense.Technique) || t.Areas is not null)) is { } alone) return alone;
        var several = groups.FindLast(g => g.Times.Count > 1 && g.FirstChunk <= (holder?.FirstChunk ?? int.MaxValue) && g.Terms.Exists(t => t.Is(Sense.Session) || t.Is(Sense.Technique) || t.Kind == TermKind.Reference || t.Areas is not null));
        var at = several is null ? -1 : last ? several.Times.Count - 1 : several.Times.ToList().FindIndex(t => SameClock(t, named[0].Clock!));
        if (at < 0 || several!.Times[at].End is not null) return null;
        var span = last ? several.Times[at] : named[0].Clock!.Start.Half != HalfOfDay.Unknown ? named[0].Clock! : several.Times[at];
        var one = new Group { Sentence = several.Sentence, FirstChunk = several.FirstChunk, LastChunk = several.LastChunk, Times = [span], TimeTerm = several.TimeTerm! with { Clock = span, Times = [] }, Part = several.Times.Count == several.Parts.Count ? several.Parts[at] : null, Day = several.Day };
        one.Terms.AddRange(several.Terms);
        one.Denied.AddRange(several.Denied);
        several.Times = [.. several.Times.Where((_, i) => i != at)];
        if (several.TimeTerm is { } time) several.TimeTerm = time with { Clock = several.Times[0], Times = several.Times.Count > 1 ? several.Times : [] };
        groups.Insert(groups.IndexOf(several) + 1, one);
        // The time was only named, and nothing else stands beside it.
        if (holder is not null && holder != several && !holder.Terms.Exists(t => t.NamesEvent)) groups.Remove(holder);
        return one;
    }
}
