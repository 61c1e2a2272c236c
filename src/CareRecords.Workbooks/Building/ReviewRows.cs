using CareRecords.Findings;
using CareRecords.Records;

namespace CareRecords.Workbooks.Building;

/// <summary>A record with its row id and its place in the workbook.</summary>
internal sealed record Numbered<T>(string Id, T Item, string Link);

/// <summary>The rows of the data sheets, numbered, so that any sheet can lead to any of them.</summary>
internal sealed class ReviewRows
{
    private readonly Dictionary<object, (string Id, string Link)> _places = new(ReferenceEqualityComparer.Instance);
    private readonly Dictionary<string, string> _links = [];
    private readonly Dictionary<NodaTime.LocalDate, Session> _firstSessions = [];

    public ReviewRows(CareLog log, ChildFindings findings)
    {
        Log = log;
        Findings = findings;
        foreach (var session in findings.Sessions) _firstSessions.TryAdd(session.CareDay, session.Session);
        Sessions = Number(log.Entries.OfType<Session>(), "SE", WorkbookLayout.Sheet.Sessions);
        Feeds = Number(log.Entries.OfType<Feed>(), "FE", WorkbookLayout.Sheet.Feeds);
        Doses = Number(log.Entries.OfType<Dose>(), "ME", WorkbookLayout.Sheet.Medicines);
        Checks = Number(log.Entries.OfType<Check>(), "CH", WorkbookLayout.Sheet.Checks);
        Signs = Number(log.Entries.OfType<Sign>(), "SI", WorkbookLayout.Sheet.Signs);
        Omitted = Number(log.Omitted, "ND", WorkbookLayout.Sheet.NotDone);
        Plan = Number(log.Plan.Rows, "PL", WorkbookLayout.Sheet.Plan);
        Questions = Number(log.Questions, "QC", WorkbookLayout.Sheet.QuestionsToCheck);
        FamilyQuestions = Number(log.FamilyQuestions, "QF", WorkbookLayout.Sheet.QuestionsForClinic);
        Read = new ReadLines(this);
        var (from, to) = ClockTable.DaysTouched(log, findings.Span.From, findings.Span.To);
        TimeLine = new TimeLine(ClockTable.For(NodaTime.DateTimeZoneProviders.Tzdb[log.Zone], from, to), findings.Span.DayStarts);
        Twins = new FormulaTwins(this);
    }

    /// <summary>What the formulas will work out, where that is not plain.</summary>
    public FormulaTwins Twins { get; }

    /// <summary>Minutes on the time line, for the hidden working columns.</summary>
    public TimeLine TimeLine { get; }

    public CareLog Log { get; }

    public ChildFindings Findings { get; }

    public IReadOnlyList<Numbered<Session>> Sessions { get; }

    public IReadOnlyList<Numbered<Feed>> Feeds { get; }

    public IReadOnlyList<Numbered<Dose>> Doses { get; }

    public IReadOnlyList<Numbered<Check>> Checks { get; }

    public IReadOnlyList<Numbered<Sign>> Signs { get; }

    public IReadOnlyList<Numbered<OmittedSession>> Omitted { get; }

    public IReadOnlyList<Numbered<PlanRow>> Plan { get; }

    public IReadOnlyList<Numbered<Question>> Questions { get; }

    public IReadOnlyList<Numbered<SourceLine>> FamilyQuestions { get; }

    public ReadLines Read { get; }

    /// <summary>The row id of a record; null when it is not in the workbook.</summary>
    public string? IdOf(object? record) => record is not null && _places.TryGetValue(record, out var place) ? place.Id : null;

    /// <summary>The place of a record; null when it is not in the workbook.</summary>
    public string? LinkOf(object? record) => record is not null && _places.TryGetValue(record, out var place) ? place.Link : null;

    /// <summary>The place of a row id; null when there is none.</summary>
    public string? LinkOfId(string? id) => id is not null ? _links.GetValueOrDefault(id) : null;

    /// <summary>The place of a care day's first session; null when none was written.</summary>
    public string? FirstSessionOn(NodaTime.LocalDate day) => _firstSessions.TryGetValue(day, out var session) ? LinkOf(session) : null;

    private List<Numbered<T>> Number<T>(IEnumerable<T> records, string letters, string sheet)
        where T : class
    {
        List<Numbered<T>> numbered = [];
        foreach (var record in records)
        {
            var n = numbered.Count;
            var row = new Numbered<T>(
                FormattableString.Invariant($"{letters}{n + 1}"), record, FormattableString.Invariant($"'{sheet}'!A{WorkbookLayout.HeadingRow + 1 + n}"));
            numbered.Add(row);
            _places.TryAdd(record, (row.Id, row.Link));
            _links[row.Id] = row.Link;
        }

        return numbered;
    }
}
