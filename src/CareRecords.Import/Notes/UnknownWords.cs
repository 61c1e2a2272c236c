using CareRecords.Import.Reading;
using NodaTime;

namespace CareRecords.Import.Notes;

/// <summary>
/// Words of a family's own that stand beside a clock time again and again ("full 7.05", "round done at 06h50") and that nobody explained: most likely what was done at that time.
/// Each is asked about once for all of its lines.
/// </summary>
internal sealed class UnknownWords
{
    private const int FewestLines = 2;
    private const int FewestDays = 2;
    private const int ShortestWord = 3;
    private readonly Dictionary<string, List<(int Line, LocalDate? Day)>> _lines = new(StringComparer.Ordinal);

    /// <summary>Takes in a line that was read.</summary>
    public void Take(LineRead line)
    {
        foreach (var word in line.AtTimes)
        {
            if (!_lines.TryGetValue(word, out var lines)) _lines.Add(word, lines = []);
            lines.Add((line.Index, line.Date));
        }
    }

    /// <summary>The questions, one for each line that has such a word.</summary>
    public IEnumerable<Doubt> Ask() => _lines
        .Where(w => w.Value.Count >= FewestLines && w.Value.Select(l => l.Day).Distinct().Count() >= FewestDays)
        .SelectMany(w => w.Value.Select(l => Doubts.WhatMeans(l.Line, w.Key)));

    /// <summary>The words without a meaning that stand alone beside a time; none where the line tells of plans or advice.</summary>
    public static IReadOnlyList<string> Of(IReadOnlyList<Term> terms)
    {
        List<string>? found = null;
        for (var i = 0; i < terms.Count; i++)
        {
            if (terms[i].Kind != TermKind.Time) continue;
            var before = i - 1;
            while (before >= 0 && (terms[before].Is(Sense.At) || terms[before].Is(Sense.About) || terms[before].Is(Sense.Given) || terms[before].Text is "done" or "was" or "on")) before--;
            if (before >= 0 && IsUnknown(terms[before]) && Opens(terms, before)) (found ??= []).Add(terms[before].Text);
            else if (i + 1 < terms.Count && IsUnknown(terms[i + 1]) && Ends(terms, i + 2)) (found ??= []).Add(terms[i + 1].Text);
        }

        return found ?? (IReadOnlyList<string>)[];
    }

    private static bool IsUnknown(Term term) => term is { Kind: TermKind.Word, Meanings.Length: 0, Text.Length: >= ShortestWord } && term.Text.All(char.IsLetter) && !OfTheHousehold.Contains(term.Text);

    private static bool Opens(IReadOnlyList<Term> terms, int at) => at == 0 || terms[at - 1].Kind is TermKind.Symbol or TermKind.Time || terms[at - 1].Is(Sense.Then) || terms[at - 1].Is(Sense.And)
        || terms[at - 1].Text is "did" or "the" or "did the" or "then" or "a" or "another" or "had";

    private static bool Ends(IReadOnlyList<Term> terms, int at) => at >= terms.Count || terms[at].Kind == TermKind.Symbol || terms[at].Is(Sense.And) || terms[at].Is(Sense.Then) || terms[at].Text is "done" or "again";

    // What a household does at an hour and nobody asks about.
    private static readonly HashSet<string> OfTheHousehold = new(StringComparer.Ordinal)
    {
        "awake", "woke", "asleep", "sleep", "sleeping", "slept", "nap", "napped", "bed", "bedtime", "bath", "bathed", "shower", "school", "nursery", "creche", "playgroup", "bus", "taxi", "car", "train", "work",
        "home", "back", "out", "left", "arrived", "here", "gone", "till", "until", "til", "from", "since", "before", "after", "this", "that", "and", "but", "then", "between", "around", "nearly", "almost", "again", "only", "too", "also",
        "phone", "phoned", "rang", "called", "call", "visit", "visited", "appointment", "appt", "clinic", "dentist", "shop", "shops", "walk", "park", "church", "mass", "telly", "settled", "shift", "handover", "started", "finished",
        "him", "her", "his", "she", "they", "was", "were", "had", "for", "the", "not", "all", "both", "one", "two", "three", "today", "yesterday", "tonight", "morning", "evening", "afternoon", "night",
        "mum", "mam", "mom", "mummy", "dad", "daddy", "nan", "nana", "nanna", "gran", "granny", "grandma", "grandad", "grandpa", "pop", "poppa", "auntie", "aunty", "uncle", "sister", "brother",
    };
}
