using CareRecords.Import.Reading;
using CareRecords.Records;
using NodaTime;

namespace CareRecords.Import.Notes;

// Messages that answer the one before them.
internal sealed partial class DayTeller
{
    // "did you do him tonight?" — "aye 7 oclock, bases and tops": what was asked about, at the time of the answer or of the question.
    private bool AnswersQuestion()
    {
        if (_requested is not { Stamp: { } asked } question || _line.Stamp is not { } stamp || _line.Continues || Period.Between(asked, stamp, PeriodUnits.Minutes).Minutes is < 0 or > OpenMinutes) return false;
        var (words, reply) = (CellTerms.Read(question.Words), CellTerms.Read(_line.Words));
        var yes = reply.Count > 0 && reply[0].Text is "yes" or "yep" or "yeah" or "aye" or "yup" or "ya" or "ja" or "oo" or "yes love" or "done";
        var mention = _line.Mentions is [{ After: null, Settled: not null } own] ? own : null;
        if (!words.Exists(t => t.Is(Sense.Asking) || t.IsSymbol("?")) || !yes && mention is null || _line.Told.Exists(t => t.Happenings.Exists(h => h.Kind is HappeningKind.Session or HappeningKind.Feed or HappeningKind.Dose or HappeningKind.Check))) return false;
        if (reply.Exists(t => t.Is(Sense.Skip) || t.Text is "will" or "going to" or "no" && reply.IndexOf(t) == 0)) return false;
        if (mention is null && Asked(words, stamp) is null && words.Exists(t => t.Is(Sense.Session)) && words.Exists(t => t.Text == "done"))
        {
            // "chest done?" — "yes": done, nobody says when.
            Ask(Doubts.Untimed(_line.Index, _file, "A session"));
            _requested = null;
            return true;
        }
        if ((mention is { Unsettled: false } ? TimesOfEvents.Of(new TimeRef(mention)) : mention is null ? Asked(words, stamp) : null) is not { } at || at.Stated > stamp) return false;
        var doses = DoseGrammar.Read(words, question.Words, []);
        var how = $"'{_line.Words.Trim()}' read as the answer to '{question.Words.Trim()}'.";
        _requested = null;
        if (doses.Count > 0)
        {
            var happening = new Happening { Kind = HappeningKind.Dose, Line = _line.Index, Medicine = doses[0].Medicine, MedicineWritten = doses[0].Written, Amount = doses[0].Amount, DoseRoute = doses[0].Route, IsGiven = true };
            AddDose(happening, _doses.Name(happening) with { How = how }, at, null);
        }
        else if (words.Exists(t => t.NamesFeed))
        {
            var route = words.Exists(t => t.Is(Sense.Pump)) ? FeedRoute.PumpedTube : words.Exists(t => t.Is(Sense.Route)) ? FeedRoute.Tube : FeedRoute.Unknown;
            var ended = reply.Exists(t => t.Is(Sense.Stop)) || words.Exists(t => t.Is(Sense.Stop));
            Add(new Feed { Sources = Source, Start = ended ? null : at, End = ended ? at : null, Route = route, By = _line.By, HowRead = how });
        }
        else if (words.Exists(t => t.Is(Sense.Session) || t.Is(Sense.Technique) || t.Text is "him" or "her" or "his" or "hers") && !words.Exists(t => t.Is(Sense.SatLabel) || t.Is(Sense.TempLabel)))
        {
            var areas = AreaGrammar.Read(CellTerms.Read(_line.Words));
            var happening = new Happening { Kind = HappeningKind.Session, Line = _line.Index, Areas = areas };
            AddSession(happening, mention is null ? TimesOfEvents.Borrowed(at.Stated, CheckPhase.None) : at, Areas(happening, at.Stated, null, out _), how, 1);
        }
        else return false;
        return true;
    }

    // "did you manage his 6 o clock?": the last such time before the answer.
    private static UncertainTime? Asked(List<Term> words, LocalDateTime answered)
    {
        if (words.FindAll(t => t is { Kind: TermKind.Time, Clock: not null, Times.Count: 0 }) is not [{ Clock.Start: { } clock }]) return null;
        var times = clock.Half == HalfOfDay.Unknown ? new[] { clock.In(HalfOfDay.Am).Time, clock.In(HalfOfDay.Pm).Time } : [clock.Time];
        var before = times.Select(t => answered.Date.At(t)).Where(t => t <= answered).ToList();
        return before.Count == 0 ? null : UncertainTime.Exactly(before.Max());
    }

    // "please give paracetamol 5 ml" — "Given": the dose that was asked for a little before.
    private void Answer()
    {
        if ((_line.Marks & LineMarks.Answer) == 0) return;
        if (_requested is { Stamp: { } asked, Prescribed: [{ Medicine: not Medicines.Unknown } dose] } && _line.Stamp is { } stamp && Period.Between(asked, stamp, PeriodUnits.Minutes).Minutes is >= 0 and <= OpenMinutes)
        {
            var words = _requested.Text.Trim();
            // "Given, 7.5 ml"
            var given = CellTerms.Read(_line.Words).Find(t => t is { Kind: TermKind.Quantity, Unit: Unit.Ml or Unit.Mg or Unit.Puffs or Unit.Mcg }) is { } amount ? _line.Words[amount.Start..amount.End] : null;
            _requested = null;
            AddDose(new Happening { Kind = HappeningKind.Dose, Line = _line.Index, Medicine = dose.Medicine, MedicineWritten = dose.Written, Amount = given ?? dose.Amount, DoseRoute = dose.Route }, new DoseMemory.Known(dose.Medicine, dose.Written, given ?? dose.Amount, $"'{_line.Text.Trim()}' read as the answer to '{words}'."), TimesOfEvents.Stamped(stamp), null);
            return;
        }
        Ask(Doubts.Unclear(_line.Index, _file, $"'{_line.Text.Trim()}' does not say what was done."));
    }
}
