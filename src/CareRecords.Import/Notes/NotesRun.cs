using CareRecords.Import.Reading;
using CareRecords.Import.Reading.Keys;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Notes;

/// <summary>One reading of one text: legends and days first, then the lines, a day at a time.</summary>
internal sealed class NotesRun
{
    private const int LongestDay = 500;
    private readonly SourceText _text;
    private readonly ReadingContext _context;
    private readonly TermReader _reader;
    private readonly LineFate[] _fates;
    private readonly List<CareEntry> _entries = [];
    private readonly List<OmittedSession> _omitted = [];
    private readonly List<SourceLine> _questions = [];
    private readonly List<FamilyWord> _words = [];
    private readonly List<SetAsideLine> _setAside = [];
    private readonly List<ImportProblem> _problems = [];
    private readonly Dictionary<string, AskedQuestion> _asked = [];
    private readonly HashSet<(int, string)> _told = [];
    private readonly LineMarks?[] _marks;
    private readonly List<LineRead> _late = [];
    private readonly UnknownWords _unknown = new();
    private readonly DayTimes _times = new();
    private readonly Arrangements _arrangements = new();
    private readonly DayTeller _teller;

    /// <summary>A run over a text.</summary>
    public NotesRun(SourceText text, ReadingContext context)
    {
        (_text, _context) = (text, context);
        _explained = KeyLine.Of(text.Lines);
        // What this text explains itself is learnt from it, in its order, also when it is read a second time with all that was learnt.
        _reader = new TermReader(CellTerms.Vocabulary, context.Words.Without(_explained.SelectMany(e => e.Words)));
        _fates = new LineFate[text.Lines.Count];
        _marks = new LineMarks?[text.Lines.Count];
        _teller = new DayTeller(text.File, context.Answers, _arrangements, Doubt);
    }

    /// <summary>Whether lines have no headings of their own (a cell).</summary>
    public bool IgnoresHeadings { get; init; }

    /// <summary>Reads the text.</summary>
    public NotesReading Read()
    {
        var legends = Legends();
        if (!IgnoresHeadings) (_clocks, _speakers) = Messages.Find(_text.Lines);
        _pairs = PairMeanings.Of(_text.Lines);
        _twentyFour = ClockStyle.IsTwentyFour(_text.Lines);
        if (PatientWord.IsPatient(_text.Lines)) _reader.Ignore("pt");
        else if (PatientWord.IsFriday(_text.Lines)) _reader.Learn(new FamilyWord("pt", "friday"));
        if (!_words.Exists(w => w.Word.Equals("pump", StringComparison.OrdinalIgnoreCase)) && _context.Words.MeaningOf("pump") is null && PumpWord.Inhaler(_text.Lines) is { } pump)
        {
            // Their feed runs on a machine, unless a key says what that is.
            _reader.Learn(new FamilyWord("pump", pump));
            if (!_words.Exists(w => w.Word.Equals("machine", StringComparison.OrdinalIgnoreCase))) _reader.Learn(new FamilyWord("machine", "feeding pump"));
        }
        // Where "breathing treatment" is a nebuliser, "treatment" alone is too.
        if (_text.Lines.Any(l => l.Contains("breathing treatment", StringComparison.OrdinalIgnoreCase))) _reader.Learn(new FamilyWord("treatment", "breathing treatment"));
        if (!IgnoresHeadings) (_headings, _hint) = DayHeadings.Find(_text.Lines, legends, _clocks, _reader, _context.NotAfter);
        Arrange(legends);
        var resolved = DayResolver.Resolve(_text.File, [.. _headings.Select(h => new DatedLine(h.Key, h.Value.Date, h.Value.Written, h.Value.HasContent, h.Value.Late))], _context, _hint);
        foreach (var doubt in resolved.Doubts) Doubt(doubt);
        Lines(legends, resolved);
        Account();
        return new NotesReading
        {
            Entries = _entries,
            Omitted = _omitted,
            FamilyQuestions = _questions,
            Words = _words,
            SetAside = _setAside,
            Problems = _problems,
            Questions = _asked,
            Late = IgnoresHeadings ? [.. _late.Select(l => l.Late!)] : [],
            Fates = _fates,
        };
    }

    private bool _headed;
    private bool _twentyFour;
    private bool _nightAlone;
    private PairMeaning _pairs;
    private HashSet<int> _clocks = [];
    private HashSet<string> _speakers = [];
    private readonly WriterInitials _initials = new();
    private SortedDictionary<int, Heading> _headings = [];
    private (LocalDate Day, bool IsDay)? _hint;

    // Lines that explain words, or explain one in passing, in order.
    private readonly List<KeyLine> _explained;

    private HashSet<int> Legends()
    {
        var lines = new HashSet<int>();
        var later = new List<FamilyWord>();
        foreach (var (line, words, inPassing) in _explained)
        {
            // "4 mins clapping low left, low right. Calling that the full works from here on": tells a session too.
            if (!inPassing && !SessionNames.TellsToo(_text.Lines[line])) lines.Add(line);
            _words.AddRange(words);
            foreach (var word in words)
            {
                if (!inPassing) _initials.Take(word);
                if (!_reader.Learn(Arrangements.WithoutOrder(word)) && !inPassing) later.Add(word);
                foreach (var whole in SessionNames.WholeOf(word)) _reader.Learn(whole);
            }
        }

        // A word may be explained by one that is explained further down.
        foreach (var word in later) _reader.Learn(Arrangements.WithoutOrder(word));
        foreach (var device in Devices.Alone(_words)) _reader.Learn(device);
        if (_context.Answers.TryGetValue(AreasTwice.Question(_text.File), out var answer))
            foreach (var word in AreasTwice.Explained(answer)) _reader.Learn(Arrangements.WithoutOrder(word));
        return lines;
    }

    private void Arrange(HashSet<int> legends)
    {
        var first = _headings.Count > 0 ? _headings.Keys.First() : 0;
        for (var i = 0; i < _text.Lines.Count; i++)
        {
            var line = KeyLine.WithoutStamp(_text.Lines[i]);
            if (line.Contains(" always ", StringComparison.OrdinalIgnoreCase)) _arrangements.TakeAlways(line);
            if (!(i < first || legends.Contains(i)) || line.Length > LineReader.LongestLine) continue;
            _arrangements.Take(_reader, line, legends.Contains(i));
        }
    }

    private void Lines(HashSet<int> legends, ResolvedDays resolved)
    {
        var day = new List<LineRead>();
        var (night, opened) = (false, false);
        var lines = Place(legends, resolved);
        if (NewestFirst.Is(_text.Lines, resolved.Days)) lines = NewestFirst.Turn(lines);
        foreach (var (placed, read) in ParallelLines.Read(_text.File, _reader, _context.Answers, lines))
        {
            if (placed.Begins is { } begins) { Tell(day, night); (night, _headed, _nightAlone) = (begins.Night, begins.Headed, begins.NightAlone); }
            else if (day.Count >= LongestDay) Tell(day, night);
            opened |= placed.OpensSection;
            if (opened && read.Mentions.Count > 0) { read.Mentions[0].OpensSection = true; opened = false; }
            _marks[placed.Index] = (_marks[placed.Index] ?? LineMarks.None) | read.Marks;
            if ((read.Marks & LineMarks.Question) != 0) { _questions.Add(Source(placed.Index)); _setAside.Add(new SetAsideLine(Source(placed.Index), "a question for the visit")); _fates[placed.Index] = LineFate.NotRecord; continue; }
            if (read.Late is not null) _late.Add(read);
            _unknown.Take(read);
            day.Add(read);
        }
        Tell(day, night);
        TellOpening();
        foreach (var doubt in _unknown.Ask()) if (!_context.Answers.ContainsKey(doubt.Cause!)) Doubt(doubt);
        // What a cell puts right stands in other cells of its table.
        if (!IgnoresHeadings) foreach (var line in _late) Correct(line);
    }

    /// <summary>The lines that may tell of care, each with its day, message and section; the fates of the others are settled here.</summary>
    private IEnumerable<PlacedLine> Place(HashSet<int> legends, ResolvedDays resolved)
    {
        var table = new TableLines();
        var letters = !IgnoresHeadings && MailHeaders.Are(_text.Lines);
        var date = resolved.Days.Count > 0 && _headings.Count > 0 && _headings.Keys.First() > 0 && _context.Date is null ? null : _context.Date;
        if (_context.Date is null && resolved.Days.Count > 0 && _context.NotAfter is null) date = null;
        // A title that names the first day.
        if (_context.Date is null && _hint is { IsDay: true } hint) date = hint.Day;
        var (section, opened) = ((IReadOnlyList<Term>)[], false);
        Term? part = null;
        var (message, writer) = ((LocalDateTime?)null, (string?)null);
        DayStart? begins = null;
        var (quoted, overnight, afterEvening) = (false, false, false);
        for (var i = 0; i < _text.Lines.Count; i++)
        {
            var line = _text.Lines[i];
            if (string.IsNullOrWhiteSpace(line) || !line.Any(c => !char.IsWhiteSpace(c) && !char.IsControl(c))) { _fates[i] = LineFate.Blank; continue; }
            if (legends.Contains(i)) { _fates[i] = LineFate.InRecords; _marks[i] = LineMarks.Legend; continue; }
            if (table.IsHeading(line)) { _marks[i] = LineMarks.TableHeading; continue; }
            if (_clocks.Contains(i))
            {
                // "06:41" alone above the messages of that minute.
                message = Messages.Clock(line) is { } clock ? date?.At(clock) : null;
                _marks[i] = LineMarks.Section;
                continue;
            }
            var content = table.Rewrite(line, out var pairs);
            var prefix = ReferenceEquals(content, line) ? LinePrefix.Read(line, _reader) : new LinePrefix(0, null, null);
            var (from, own) = (prefix.ContentStart, date);
            LocalDateTime? stamp = null;
            if (_headings.TryGetValue(i, out var heading))
            {
                from = heading.ContentStart;
                (section, part, afterEvening) = ([], null, false);
                overnight = heading.Overnight;
                own = resolved.Days.GetValueOrDefault(i);
                if (prefix.Stamp is { } chat) stamp = own?.At(chat.Time);
                (message, writer) = prefix.Stamp is null ? (null, null) : (stamp, prefix.Stamp.By);
                if (!resolved.OneOff.Contains(i))
                {
                    if (own != date || own is null || prefix.Stamp is null) begins = new DayStart(heading.Night, prefix.Stamp is null, heading is { Night: true, HasContent: false });
                    date = own;
                }
                if (prefix.Stamp is null) _marks[i] = LineMarks.Heading;
                if (heading.Clock is { } clock) (content, from) = ($"{clock} {content[from..]}", 0);
            }
            else
            {
                // A message may run over several lines.
                stamp = message;
            }
            if (letters && MailHeaders.Is(line) && !MailHeaders.TellsCare(line, from)) { _marks[i] = LineMarks.Heading; continue; }
            if (TakenBack.ByNext(_text.Lines, i)) { _marks[i] = LineMarks.TakenBack; continue; }
            // What was not ticked, what a messenger program says by itself, and what somebody else is quoted as saying, below "Anna says:".
            if (Messages.IsUnticked(line) || Messages.IsOfProgram(line)) { _marks[i] = (_marks[i] ?? LineMarks.None) | LineMarks.Unreal; continue; }
            if (prefix.Stamp is not null || heading is not null) quoted = false;
            if (quoted && stamp is not null) { _marks[i] = (_marks[i] ?? LineMarks.None) | LineMarks.Unreal; continue; }
            quoted |= stamp is not null && Messages.IsQuoteAhead(content[Math.Min(from, content.Length)..]);
            var speaker = _speakers.Count > 0 ? Messages.Speaker(content[Math.Min(from, content.Length)..], _speakers) : null;
            if (speaker is not null)
            {
                writer = speaker.Trim();
                from += content.IndexOf(':', from) - from + 1;
                while (from < content.Length && char.IsWhiteSpace(content[from])) from++;
            }
            else if (stamp is null && _initials.Of(content, from) is { } initials) (writer, from) = initials;
            if (stamp is null && from < content.Length && Sections.PartOfDay(content[from..], _reader) is { } time)
            {
                afterEvening = part is not null && GroupReader.PartKind(time) == "night";
                part = time;
                _marks[i] = (_marks[i] ?? LineMarks.None) | LineMarks.Section;
                continue;
            }
            if (stamp is null && from < content.Length && Sections.Read(content[from..], _reader) is { } opening)
            {
                (section, opened) = (opening, true);
                _marks[i] = (_marks[i] ?? LineMarks.None) | LineMarks.Section;
                continue;
            }
            yield return new PlacedLine
            {
                Index = i,
                Line = line,
                Words = content[Math.Min(from, content.Length)..],
                Item = prefix.Item,
                Date = own,
                Stamp = stamp,
                By = prefix.Stamp?.By ?? speaker?.Trim() ?? (stamp is null && _initials.Of(content, 0) is null ? null : writer),
                Pairs = pairs ? PairMeaning.Phase : _pairs,
                Section = section,
                PartOfDay = part,
                OpensSection = opened,
                Begins = begins,
                Continues = prefix.Stamp is null && stamp is not null && speaker is null,
                AboveFirstDay = own is null && _headings.Count > 0,
                Overnight = overnight,
                AfterEvening = afterEvening,
            };
            (opened, begins) = (false, null);
        }
    }

    // What a later day put right is put right once every day is told.
    private void Correct(LineRead line)
    {
        if (line.Date is { } date && LateCorrections.Apply(_entries, line.Late!, date, Source(line.Index))) { _fates[line.Index] = LineFate.InRecords; return; }
        Doubt(Doubts.Unclear(line.Index, _text.File, $"'{_text.Lines[line.Index].Trim()}' puts an earlier day right, and it is not certain which record."));
    }

    /// <summary>The lines of one day, with what its heading says of it.</summary>
    private sealed record DayOfLines(List<LineRead> Lines, bool Night, bool Headed, bool NightAlone);

    // The first days wait until there are some of them: what the family does at which hour is learnt from all of these before any of them is told.
    private List<DayOfLines>? _opening = [];
    private int _openingLines;
    private const int LongestOpening = 1_000;

    private void Tell(List<LineRead> day, bool night)
    {
        if (day.Count == 0) return;
        foreach (var line in day) Answer(line);
        var told = new DayOfLines([.. day], night, _headed, _nightAlone);
        day.Clear();
        if (_opening is null) { Tell(told); return; }
        _opening.Add(told);
        _openingLines += told.Lines.Count;
        if (_openingLines >= LongestOpening) TellOpening();
    }

    private void TellOpening()
    {
        if (_opening is not { } opening) return;
        _opening = null;
        if (opening.Count > 1) foreach (var day in opening) Settle(day);
        foreach (var day in opening) Tell(day);
    }

    private void Settle(DayOfLines day)
    {
        var mentions = day.Lines.SelectMany(l => l.Mentions).ToList();
        if (_twentyFour) foreach (var mention in mentions.Where(m => m.Written is { Half: HalfOfDay.Unknown, Time.Hour: >= 10 and <= 12 or 0 })) mention.Written = mention.Written.In(mention.Written.Time.Hour is 12 or 0 ? HalfOfDay.Pm : HalfOfDay.Am);
        _times.Settle(mentions, day.Night, day.Headed, day.NightAlone);
    }

    private void Tell(DayOfLines day)
    {
        Settle(day);
        foreach (var told in _teller.Tell(day.Lines))
        {
            if (told.Entry is { } entry) _entries.Add(entry);
            if (told.Omitted is { } omitted) _omitted.Add(omitted);
            foreach (var line in told.Lines) if (_fates[line] != LineFate.InRecords) _fates[line] = LineFate.InRecords;
        }
    }

    /// <summary>The answer of a table whose clock is of 24 hours: 12.05 is just after noon.</summary>
    public const string TwentyFourHours = "24 hours";

    // An answered "am or pm" settles the times of its line.
    private void Answer(LineRead line)
    {
        if (_context.Answers.Count == 0 || !_context.Answers.TryGetValue($"am-or-pm:{_text.File}:{line.Index + 1}", out var answer)) return;
        if (answer == TwentyFourHours)
        {
            // "12.40" of neither half is kept as 0:40: of 24 hours it is after noon.
            foreach (var mention in line.Mentions.Where(m => m.Written.Half == HalfOfDay.Unknown)) mention.Written = mention.Written.In(mention.Written.Time.Hour is > 0 and < 12 ? HalfOfDay.Am : HalfOfDay.Pm);
            return;
        }
        foreach (var mention in line.Mentions) mention.Part = answer.StartsWith("am", StringComparison.OrdinalIgnoreCase) ? "morning" : "afternoon";
    }

    private void Doubt(Doubt doubt)
    {
        if (!_told.Add((doubt.Line, doubt.Cause ?? doubt.Why))) return;
        _problems.Add(new ImportProblem(Source(doubt.Line), doubt.Why, doubt.Fix, doubt.Severity, doubt.Cause));
        if (doubt is { Cause: { } cause, Question: { } question }) _asked.TryAdd(cause, question);
        if (_fates[doubt.Line] == LineFate.Blank) _fates[doubt.Line] = LineFate.Problem;
    }

    private SourceLine Source(int line) => SourceLine.InText(_text.File, line + 1, _text.Lines[line]);

    /// <summary>Sets aside every line that gave nothing, with its reason.</summary>
    private void Account()
    {
        for (var i = 0; i < _fates.Length; i++)
        {
            if (_fates[i] != LineFate.Blank || _marks[i] is not { } marks) continue;
            _fates[i] = LineFate.NotRecord;
            _setAside.Add(new SetAsideLine(Source(i), (marks & LineMarks.Heading) != 0 ? "a day heading" : (marks & LineMarks.Section) != 0 ? "a heading" : (marks & LineMarks.TableHeading) != 0 ? "a heading of a table"
                : (marks & LineMarks.TakenBack) != 0 ? "taken back by the line after it"
                : (marks & LineMarks.Unreal) != 0 ? "a plan, advice or a list" : (marks & LineMarks.Care) != 0 ? "speaks of care, with no time or value to keep" : "a remark"));
        }
    }
}
