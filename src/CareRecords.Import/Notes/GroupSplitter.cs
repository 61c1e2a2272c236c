using CareRecords.Import.Reading;

namespace CareRecords.Import.Notes;

/// <summary>
/// Gathers a line's chunks into groups, each about one time. A time at the start of its chunk opens a group; a time at the end closes
/// the one before it; a chunk without a time goes on with the group before, or waits for the time that follows.
/// </summary>
internal static class GroupSplitter
{
    /// <summary>The groups of a line, in order.</summary>
    public static List<Group> Split(List<Chunk> chunks)
    {
        var groups = new List<Group>();
        foreach (var chunk in chunks)
        {
            if (chunk.Unreal) continue;
            var denial = Modality.Deny(chunk.Terms);
            // "physio - skipped am": what stands before the dash.
            if (denial.SkipsAll && denial.Denied.Count == 0 && groups.Count > 0 && groups[^1].Times.Count == 0 && groups[^1].Sentence == chunk.Sentence)
            {
                groups[^1].Denied.AddRange(groups[^1].Terms.Where(Modality.IsDeniable));
                groups[^1].Terms.RemoveAll(Modality.IsDeniable);
            }
            var pieces = Pieces(denial.Terms);
            for (var p = 0; p < pieces.Count; p++)
            {
                var piece = pieces[p];
                var group = Place(groups, piece, chunk, p);
                if (group.Terms.Count > 0 && p == 0) group.Terms.Add(Comma(piece, chunk));
                group.Terms.AddRange(piece.Terms);
                if (p == 0) { group.Denied.AddRange(denial.Denied); group.SkipsAll |= denial.SkipsAll; }
                group.Day ??= piece.Day;
                group.Parts.AddRange(piece.Parts);
                group.Part ??= piece.Parts.Count > 0 ? piece.Parts[0] : null;
                group.BadTime ??= piece.BadTime;
            }
            if (pieces.Count == 0 && denial.Denied.Count > 0)
            {
                var holder = groups.Count > 0 ? groups[^1] : Add(groups, chunk);
                holder.Denied.AddRange(denial.Denied);
                holder.SkipsAll |= denial.SkipsAll;
            }
        }
        return groups;
    }

    private static Term Comma(Piece piece, Chunk chunk) => new()
    {
        Kind = TermKind.Symbol,
        Text = chunk.Before is "." or "/" or "|" or "?" ? ";" : chunk.Before is "(" ? "(" : ",",
        Start = piece.Start,
        End = piece.Start,
    };

    private static Group Place(List<Group> groups, Piece piece, Chunk chunk, int index)
    {
        var last = groups.Count > 0 ? groups[^1] : null;
        if (piece.BadTime is not null) return Add(groups, chunk);
        if (piece.Time is null)
        {
            // "4th 7pm same, inhaler 6.40. Pulse 130 sats 93": a sentence of readings goes with the session of its line.
            if (last is not null && chunk.Before == "." && piece.Terms.Exists(t => t.Is(Sense.SatLabel) || t.Is(Sense.PulseLabel)) && !last.Terms.Exists(t => t.Is(Sense.Session) || t.Is(Sense.Technique) || t.Kind == TermKind.Reference)
                && groups.FindLast(g => g.Times.Count == 1 && g.Terms.Exists(t => t.Is(Sense.Session) || t.Is(Sense.Technique) || t.Kind == TermKind.Reference)) is { } session) return session;
            if (last is null) return Add(groups, chunk);
            // "CPT 7.30. RA all day 95-97": a part of the day opens a group of its own.
            if (chunk.Before == "." && index == 0 && last.Times.Count > 0 && piece.Parts.Count > 0 && piece.Terms.Exists(t => t.Is(Sense.Session) || t.Is(Sense.Technique) || t.Is(Sense.Medicine) || t.Is(Sense.Device))) return Add(groups, chunk);
            if (chunk.Before is "." or "/" && last.Times.Count > 0 && piece.Parts.Exists(p => p.Is(Sense.DayPart)) && piece.Terms.Exists(t => t.Is(Sense.SatLabel) || t.Is(Sense.Air) || t.Kind == TermKind.Range || t.Is(Sense.TempLabel))) return Add(groups, chunk);
            // A new sentence without a time of its own still speaks of the time before it.
            return index > 0 && last.Times.Count > 0 && piece.StartsEvent ? Add(groups, chunk) : last;
        }
        // "Physio 4x: 7am, 11am" and "Four physios. They were at 7, at 11": the times of the sessions named before.
        if (last is not null && last.Times.Count == 0 && last.Terms.Exists(t => t.Is(Sense.Session) || t.Is(Sense.Technique)) && (!piece.HasHead && (chunk.Before == ":" || piece.Time.Times.Count > 1) || chunk.Before == ":" && piece.Time.Times.Count > 1))
        {
            Set(last, piece);
            return last;
        }
        // "3 L, 3 R - 10am": a time alone after words that had none.
        var alone = !piece.HasContent;
        if (last is not null && last.Times.Count == 0 && last.Terms.Count > 0 && (alone || piece.IsEndOnly || (piece.Trails && !piece.HasHead)))
        {
            Set(last, piece);
            return last;
        }
        // "7:25 done", "0745 finished", "off 0600": the end of what the group before began.
        if (last is not null && piece.IsEndOnly && last.EndTime is null && last.Times.Count == 1 && last.Terms.Exists(IsLasting))
        {
            last.EndTime = piece.Time.Clock;
            return last;
        }
        var group = Add(groups, chunk);
        Set(group, piece);
        return group;
    }

    private static bool IsLasting(Term term) => term.Is(Sense.Session) || term.Is(Sense.Technique) || IsFeed(term);

    private static bool IsFeed(Term term) => term.Is(Sense.Feed) || term.Is(Sense.Bolus) || term.Is(Sense.Route) || term.Is(Sense.Pump) || term.Is(Sense.Bottle) || term.Is(Sense.Milk);

    private static void Set(Group group, Piece piece)
    {
        var time = piece.Time!;
        group.TimeTerm = time;
        group.Times = time.Times.Count > 0 ? time.Times : [time.Clock!];
        group.EndTime ??= piece.End?.Clock;
    }

    private static Group Add(List<Group> groups, Chunk chunk)
    {
        var group = new Group { Sentence = chunk.Sentence };
        groups.Add(group);
        return group;
    }

    private sealed class Piece
    {
        public List<Term> Terms { get; } = [];

        public Term? Time { get; set; }

        public Term? End { get; set; }

        public Term? Day { get; set; }

        public List<Term> Parts { get; } = [];

        public Term? BadTime { get; set; }

        public bool Trails { get; set; }

        public int Start => Terms.Count > 0 ? Terms[0].Start : Time?.Start ?? 0;

        public bool HasContent => Terms.Exists(t => t.Kind is not (TermKind.Symbol or TermKind.Word) || t.Meanings.Any(m => m.Sense is not (Sense.Article or Sense.At or Sense.Feeling or Sense.And or Sense.Now or Sense.NewTime or Sense.None or Sense.Only)));

        public bool HasHead => Terms.Exists(IsHead);

        public bool StartsEvent => HasHead;

        public bool IsEndOnly => Time is not null && Time.Times.Count == 0 && Terms.Exists(t => t.Is(Sense.Stop)) && !HasHead
            && Terms.TrueForAll(t => t.Is(Sense.Stop) || t.Kind == TermKind.Symbol || (t.Kind == TermKind.Word && !t.Is(Sense.Unit) && t.Meanings.All(m => m.Sense is Sense.Stop or Sense.Start or Sense.Article or Sense.At or Sense.Feeling or Sense.And or Sense.Then or Sense.None or Sense.Going or Sense.Over or Sense.Past or Sense.Per)));
    }

    /// <summary>Whether the term names an event.</summary>
    internal static bool IsHead(Term term) => term.Is(Sense.Session) || term.Is(Sense.Technique) || IsFeed(term) || term.Is(Sense.FeedRunning) || term.Is(Sense.Medicine) || term.Is(Sense.Device)
        || term.Is(Sense.Antibiotic) || term.Is(Sense.SatLabel) || term.Is(Sense.Desat) || term.Is(Sense.PulseLabel) && term.Text != "p" || term.Is(Sense.TempLabel) || term.Is(Sense.BreathLabel)
        || term.Is(Sense.Sign) || term.Is(Sense.OxygenLabel) || term.Is(Sense.Air) || term.Is(Sense.Mouth) || term.Is(Sense.Food) || term.Kind == TermKind.Reference || term.Is(Sense.MedicineWord);

    private static List<Piece> Pieces(List<Term> terms)
    {
        var pieces = new List<Piece>();
        var current = new Piece();
        var leading = FirstTime(terms) is var first && first >= 0 && !terms.Take(first).Any(t => IsHead(t) || t.Kind is TermKind.Number or TermKind.Quantity or TermKind.Parts or TermKind.Range);
        for (var i = 0; i < terms.Count; i++)
        {
            var term = terms[i];
            if (term.Kind == TermKind.Time && term.Clock is not null)
            {
                if (current.Time is null) { current.Time = term; current.Trails = current.HasContent; continue; }
                if (IsEndOf(terms, i, current)) { current.End = term; current.Terms.RemoveAll(t => t == terms[i - 1] && t.Is(Sense.Stop)); continue; }
                if (leading || !current.HasContent) { Close(); current.Time = term; continue; }
                CutAtHead(term);
                continue;
            }
            if (term.Kind == TermKind.BadTime) { current.BadTime = term; continue; }
            if (term.Kind == TermKind.Reference) { current.Terms.Add(term); continue; }
            if (i > 0 && terms[i - 1].Is(Sense.Since) && (term.Is(Sense.DayRef) || term.Is(Sense.Weekday))) continue;
            if (current.Time is not null && current.HasHead && term.Is(Sense.And) && PartWithEvent(terms, i + 1)) { Close(); continue; }
            if ((term.Is(Sense.DayRef) && !term.Is(Sense.DayRef, "0")) || term.Is(Sense.Weekday) || (term.Text == "sat" && i == terms.Count - 1 && i > 0 && terms[i - 1].Kind == TermKind.Time)) { current.Day = term; continue; }
            if (term.Is(Sense.DayPart) || term.Is(Sense.Meal) || (term.Is(Sense.AmPm) && (term.Text.Length > 2 || terms.Count == 1 || (i > 0 && terms[i - 1] is { Kind: TermKind.Number, Number: >= 60 })))) { current.Parts.Add(i > 0 && (terms[i - 1].Is(Sense.After) || terms[i - 1].Is(Sense.Before)) ? term with { Text = terms[i - 1].Text + " " + term.Text } : term); }
            current.Terms.Add(term);
        }
        Close();
        return pieces;

        void Close()
        {
            if (current.Terms.Count > 0 || current.Time is not null || current.BadTime is not null || current.Day is not null) pieces.Add(current);
            current = new Piece();
        }

        // Trailing style: the second time belongs to the last head (or reading) after the first time.
        void CutAtHead(Term time)
        {
            var cut = current.Terms.FindIndex(t => t.Start > current.Time!.Start && (IsHead(t) || t.Kind is TermKind.Number or TermKind.Quantity));
            if (cut < 0) { Close(); current.Time = time; return; }
            var rest = current.Terms.GetRange(cut, current.Terms.Count - cut);
            current.Terms.RemoveRange(cut, rest.Count);
            Close();
            current.Terms.AddRange(rest);
            current.Time = time;
            current.Trails = true;
        }
    }

    // "8 morn left 3 right 3 and about tea time same": another event at a part of the day.
    private static bool PartWithEvent(List<Term> terms, int at)
    {
        while (at < terms.Count && (terms[at].Is(Sense.About) || terms[at].Is(Sense.At) || terms[at].Is(Sense.Again) || terms[at].Text is "again" or "the")) at++;
        return at + 1 < terms.Count && (terms[at].Is(Sense.Meal) || terms[at].Is(Sense.DayPart)) && (terms[at + 1].Kind == TermKind.Reference || terms[at + 1].Is(Sense.Session));
    }

    private static int FirstTime(List<Term> terms) => terms.FindIndex(t => t.Kind == TermKind.Time && t.Clock is not null);

    private static bool IsEndOf(List<Term> terms, int at, Piece piece) => at > 0 && piece.End is null && (terms[at - 1].Is(Sense.Stop) || terms[at - 1].Is(Sense.To))
        && piece.Terms.Exists(IsLasting) && terms[at].Times.Count == 0
        // "0605 pump off 0625 blue": the second time opens what follows it.
        && !(at + 1 < terms.Count && (IsHead(terms[at + 1]) || terms[at + 1].Kind is TermKind.Number));
}
