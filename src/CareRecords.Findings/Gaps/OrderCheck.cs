using CareRecords.Records;
using NodaTime;

namespace CareRecords.Findings;

/// <summary>
/// The usual order of other inhaled medicines around a session: hypertonic saline and dornase before or during it, inhaled
/// steroid and inhaled antibiotic after it. Source of the order: a university hospital's sheet on the order of therapies
/// (docs/definitions.md). A dose is looked at with its nearest session, within two hours.
/// </summary>
internal sealed class OrderCheck
{
    private static readonly Duration Reach = Duration.FromHours(2);

    private readonly Dictionary<Session, List<OrderFinding>> _found = new(ReferenceEqualityComparer.Instance);

    public OrderCheck(IReadOnlyCollection<Session> sessions, IEnumerable<Dose> doses, ElapsedTime clock, Func<Dose, bool> isChecked)
    {
        var spans = new TimeIndex<(SessionSpan Span, Session Session)>(sessions.Select(s => (SessionSpan.Place(s, clock), s)).Select(p => (p.Item1.Whole, p)));
        foreach (var dose in doses)
        {
            if (!BelongsBefore(dose.Class) && !BelongsAfter(dose.Class) || isChecked(dose)) continue;
            var at = clock.Of(dose.When);
            var nearest = spans.Touching(at.Earliest - Reach, at.Latest + Reach).OrderBy(s => Distance(at, s.Span)).FirstOrDefault();
            if (nearest.Session is null) continue;
            if (!_found.TryGetValue(nearest.Session, out var list)) _found[nearest.Session] = list = [];
            list.Add(Judge(dose, at, nearest.Span));
        }
    }

    public IReadOnlyList<OrderFinding> Of(Session session) => _found.TryGetValue(session, out var list) ? list : [];

    private static bool BelongsBefore(MedicineClass c) => c is MedicineClass.HypertonicSaline or MedicineClass.Dornase;

    private static bool BelongsAfter(MedicineClass c) => c is MedicineClass.InhaledSteroid or MedicineClass.InhaledAntibiotic;

    private static Duration Distance(InstantRange dose, SessionSpan session) =>
        dose.Latest < session.Starts.Earliest ? session.Starts.Earliest - dose.Latest
        : dose.Earliest > session.Ends.Latest ? dose.Earliest - session.Ends.Latest
        : Duration.Zero;

    private static OrderFinding Judge(Dose dose, InstantRange at, SessionSpan session)
    {
        bool? beforeEnd = at.Latest <= session.Ends.Earliest ? true : at.Earliest > session.Ends.Latest ? false : null;
        bool? afterEnd = at.Earliest >= session.Ends.Latest ? true : at.Latest < session.Ends.Earliest ? false : null;
        var inOrder = BelongsBefore(dose.Class) ? beforeEnd : afterEnd;
        var usual = BelongsBefore(dose.Class) ? "usually before or during a session" : "usually after a session";
        var found = inOrder switch { true => "written so", false => "written the other way", null => "the times cannot tell" };
        return new(dose, dose.Class, inOrder, $"{dose.Medicine}: {usual}; {found}");
    }
}
