using CareRecords.Import.Reading;
using CareRecords.Records;

namespace CareRecords.Import.Tables.Layouts;

/// <content>Rows of feeds.</content>
internal sealed partial class KindRows
{
    private void Feed(BlockRow row, WhatHappened what, UncertainTime at, RowWhen when)
    {
        var cells = WordsAndNumbers(row);
        var lasted = Lasted(row);
        var ml = Of(Role.Millilitres).Concat(Of(Role.Amount)).Concat(Of(Role.Minutes)).Where(c => lasted.IsNone || c != lasted.Column).Select(c => row[c]).FirstOrDefault(c => !c.Cell.IsEmpty);
        // "120 ml by syringe down the tube" is more than an amount.
        if (!ml.IsNone && VolumeReader.Read(ml.Cell.Text).Outcome == Outcome.Nothing && ml.Cell.Text.Any(char.IsLetter)) ml = default;
        var routeCell = Of(Role.Route).Select(c => row[c].Cell.Words).FirstOrDefault(r => r is not null);
        var free = cells.Where(c => ml.IsNone || c.Column != ml.Column).ToList();
        if (free.Any(c => SaysRefused(c.Cell.Text)))
        {
            reading.Into.SetAside.Add(new SetAsideLine(row.Source, "a feed that was not taken"));
            reading.Into.Ledger.Mark(row[0].Row.Line, row[0].Row.LineCount, Notes.LineFate.NotRecord);
            return;
        }

        // "What time did the feed finish" beside the row's own time.
        var finished = Of(Role.FeedEnd).Select(c => row[c]).FirstOrDefault(c => !c.Cell.IsEmpty);
        // "75 | mL/h" is how fast it ran.
        var rate = ml.IsNone ? default : cells.Find(c => c.Column != ml.Column && c.Cell.Text.Trim().ToLowerInvariant() is "ml/h" or "ml/hr" or "mls/hr" or "mls/h" or "ml/hour" or "per hour" or "cc/hr" or "/hr" or "ml per hour");
        double? perHour = rate.IsNone ? null : reading.Cells.Millilitres(ml);
        double? volume = ml.IsNone || !rate.IsNone ? null : reading.Millilitres(ml, reading.Block.Columns[ml.Column]);
        foreach (var run in Of(Role.Rate).Concat(Of(Role.Amount)).Concat(Of(Role.Minutes)).Concat(Of(Role.Millilitres)).Select(c => row[c]).Where(c => c.Cell.Kind == CellKind.Text))
            if (perHour is null && (run.Cell.Text.Contains("/h", StringComparison.OrdinalIgnoreCase) || reading.Block.Columns[run.Column].Role == Role.Rate) && RateReader.Read(run.Cell.Text).TryGet(out var ran))
            {
                perHour = ran;
                reading.Saw(run);
            }

        if (!rate.IsNone) free.RemoveAll(c => c.Column == rate.Column);
        var route = what.Route != FeedRoute.Unknown ? what.Route : routeCell is null ? ml.IsNone ? FeedRoute.Unknown : reading.Block.Columns[ml.Column].Route : SmallWords.ReadRoute(routeCell) ?? FeedRoute.Unknown;
        // Only an end is written.
        var ended = when is { Start: null, End: { } written } ? written : at;
        var (starts, ends) = (what.IsEnd && !what.IsStart ? null : at, what.IsEnd && !what.IsStart ? ended : when.End);
        if (ended != at) starts = null;
        // "120 ml tube feed, slow, till 14h00": began at the row's time.
        if (what.IsEnd && row[reading.Slots.Kind].Cell.Text.Any(char.IsAsciiDigit) && EndIn(row[reading.Slots.Kind].Cell.Text, at) is { } till && till != at) (starts, ends) = (at, till);
        if (!finished.IsNone && starts is not null && times.EndAfter(starts, finished, RowTimesReader.MostHours(TableKind.Feeds)) is { } finish)
        {
            ends = finish;
            reading.Use(finished);
        }

        if (starts is not null && ends is null && !lasted.IsNone && MinutesReader.Read(lasted.Cell.Words!).TryGet(out var took))
        {
            ends = UncertainTime.At(starts.Stated.PlusMinutes((long)Math.Round(took.Minutes)), TimePrecision.Reckoned);
            reading.Saw(lasted);
        }

        // The kind's own words may hold a range, and the remarks an end, a route or a volume.
        if (what is { IsEnd: false, IsStart: false } && (free.Select(c => OnOff.Ends(c.Cell.Text)).FirstOrDefault(e => e is not null) == true || free.Exists(c => BeginsWithEnd().IsMatch(c.Cell.Text)))) (starts, ends) = (null, ended);
        foreach (var text in free.Select(c => c.Cell.Words!).Prepend(row[reading.Slots.Kind].Cell.Words!))
        {
            var known = KindWords.Read(text, FamilyWords.None);
            if (known?.Kind == TableKind.Feeds && known.IsEnd && !known.IsStart && !text.Any(char.IsAsciiDigit) && what is { IsEnd: false, IsStart: false }) (starts, ends) = (null, ended);
            if (route == FeedRoute.Unknown && known?.Kind == TableKind.Feeds) route = known.Route;
            ends ??= EndIn(text, at);
            if (text.Any(char.IsAsciiDigit) && text != row[reading.Slots.Kind].Cell.Words && words.Told(text, "feed", at, row[0].Place.File) is [Feed told])
            {
                volume ??= told.Millilitres;
                ends ??= told.Start == at || told.Start is null ? told.End : null;
                if (route == FeedRoute.Unknown) route = told.Route;
            }

            if (volume is null) volume = VolumeIn(PerHour().Replace(text, ""));
            if (perHour is null && PerHour().Match(text) is { Success: true } rated && RateReader.Read(rated.Groups[1].Value).TryGet(out var speed)) perHour = speed;
        }

        if (route == FeedRoute.Unknown) route = reading.TitleRoute;
        reading.Add(new Feed { Sources = [row.Source], Start = starts, End = ends, Millilitres = volume, MillilitresPerHour = perHour, Route = route, By = By(row), Note = free.Count == 0 ? null : string.Join("; ", free.Select(c => c.Cell.Words)) }, [row[0], .. free, .. ml.IsNone ? [] : new[] { ml }]);
        // "Bolus, then sick: brought up about half".
        foreach (var cell in free.Where(c => c.Cell.Text.Contains(',', StringComparison.Ordinal)))
            foreach (var piece in cell.Cell.Text.Split(',', StringSplitOptions.TrimEntries).Skip(1).Where(p => !p.Any(char.IsAsciiDigit)))
                if (KindWords.Read(piece, FamilyWords.None) is { Kind: TableKind.Signs, Sign: SignKind.Vomit or SignKind.Cough or SignKind.Secretions } sign && !words.Read(cell, null, when.Day, at, keepAll: false, piece))
                    reading.Add(NewSign(row, sign.Sign, piece, null, at.IsExact ? Notes.TimesOfEvents.Borrowed(at.Stated, CheckPhase.None) : at), cell);
        // "by tube. sick at 12:50, about half of it"
        foreach (var cell in free.Where(c => c.Cell.Text.Contains(". ", StringComparison.Ordinal)))
            foreach (var piece in cell.Cell.Text.Split(". ", StringSplitOptions.TrimEntries).Skip(1))
                if (KindWords.Read(piece, FamilyWords.None) is { Kind: TableKind.Signs or TableKind.Medicines or TableKind.Checks }) words.Read(cell, null, when.Day, at, keepAll: false, piece);
        // "vomited 20 mins after" beside a feed is a sign of its own.
        foreach (var cell in free.Where(c => reading.Block.Columns[c.Column].Role is Role.Note or Role.Unknown && c.Cell.Text.Any(char.IsLetter) && KindWords.Read(c.Cell.Text, FamilyWords.None)?.Kind is TableKind.Signs or TableKind.Medicines or TableKind.Checks)) words.Read(cell, null, when.Day, at, keepAll: false);
    }

    // "Pump stopped, he got the full 480 ml", "off at last"
    [System.Text.RegularExpressions.GeneratedRegex(@"^\s*(?:(?:night |overnight )?(?:pump|feed|milk|machine) )?(?:was |came |turned |switched )?(?:stopped|off|finished|ended|disconnected|unplugged|taken down|came off)\b(?!\s*(?:at|@)?\s*\d|\s+(?:early|short|half|after|because|as)\b)", System.Text.RegularExpressions.RegexOptions.IgnoreCase)]
    private static partial System.Text.RegularExpressions.Regex BeginsWithEnd();

    [System.Text.RegularExpressions.GeneratedRegex(@"\b(\d+(?:[.,]\d+)?)\s*(?:mls?|ccs?)?\s*(?:/|per|an|a)\s*h(?:(?:ou)?rs?)?\b", System.Text.RegularExpressions.RegexOptions.IgnoreCase)]
    private static partial System.Text.RegularExpressions.Regex PerHour();

    [System.Text.RegularExpressions.GeneratedRegex(@"^(?:terminó|acabó|fini|terminé|fertig|klaar|all gone|all done|finished|ended|stopped)\b[^\d]{0,12}(\d{1,2}[:.h]\d{2}\s*(?:[ap]\.?m\.?)?)$", System.Text.RegularExpressions.RegexOptions.IgnoreCase)]
    private static partial System.Text.RegularExpressions.Regex EndsAt();

    // "120 ml by syringe", "pump feed 120 mL": the one number with its unit among the words.
    private static double? VolumeIn(string text)
    {
        if (VolumeReader.Read(text).TryGet(out var whole)) return whole > 0 ? whole : null;
        var words = text.Split([' ', ',', ';', '(', ')'], StringSplitOptions.RemoveEmptyEntries);
        var found = new List<double>();
        for (var i = 0; i < words.Length; i++)
        {
            var (word, next) = (words[i], i + 1 < words.Length ? words[i + 1].ToLowerInvariant().TrimEnd('.') : "");
            if (!char.IsAsciiDigit(word[0])) continue;
            var unit = next is "ml" or "mls" or "cc" or "ccs" or "oz" ? " " + next : "";
            if ((unit.Length > 0 || word.AsSpan().IndexOfAnyExceptInRange('0', '9') > 0) && !next.StartsWith("ml/", StringComparison.Ordinal) && VolumeReader.Read(word + unit).TryGet(out var one) && one > 0 && (unit.Length > 0 || word.TrimEnd('s', 'S')[^1] is 'l' or 'L' or 'c' or 'C' or 'z' or 'Z')) found.Add(one);
        }

        return found is [var only] ? only : null;
    }

    // Minutes beside a feed are how long it ran, unless their heading is of millilitres too.
    private CellAt Lasted(BlockRow row) =>
        Of(Role.Minutes).Where(c => !Lexicon.Find(reading.Block.Columns[c].Heading, out _).Any(k => k.Concept is Concept.Millilitres or Concept.Amount)).Select(c => row[c])
            .FirstOrDefault(c => !c.Cell.IsEmpty && MinutesReader.Read(c.Cell.Words!).TryGet(out _) && (VolumeReader.Read(row[reading.Slots.Kind].Cell.Text).TryGet(out _) || SaysVolume(row)));

    private bool SaysVolume(BlockRow row) => words.Told(row[reading.Slots.Kind].Cell.Words!, null, UncertainTime.Exactly(new NodaTime.LocalDateTime(2000, 1, 1, 9, 0)), row[0].Place.File) is [Feed { Millilitres: not null }]
        || Of(Role.Millilitres).Concat(Of(Role.Amount)).Any(c => !row[c].Cell.IsEmpty) || TextCells(row).Exists(c => VolumeIn(c.Cell.Text) is not null);

    // "bottle, finished 12.55", "took 20 min", "12:00-12:30".
    private static UncertainTime? EndIn(string text, UncertainTime start)
    {
        foreach (var piece in text.Split([',', ';', '(', ')'], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            var words = piece.Split(' ', StringSplitOptions.RemoveEmptyEntries);
            if (words.Length >= 2 && words[0].ToLowerInvariant() is "took" or "over" or "in" or "lasted" && MinutesReader.Read(string.Join(' ', words[1..])).TryGet(out var minutes))
                return UncertainTime.At(start.Stated.PlusMinutes((long)Math.Round(minutes.Minutes)), TimePrecision.Reckoned);
            if (words.Length >= 2 && words[0].ToLowerInvariant() is "by" or "finished" or "ended" or "till" or "until" or "stopped" or "done" or "off" or "end" or "fin" or "to"
                && CellTimes.Clock(string.Join(' ', words[1..])).TryGet(out var end)) return After(start, end.Start);
            if (EndsAt().Match(piece) is { Success: true } ended && CellTimes.Clock(ended.Groups[1].Value).TryGet(out var at)) return After(start, at.Start);
            if (words.Length == 3 && words[0].ToLowerInvariant() is "in" or "done" or "through" or "gone" or "finished" && words[1].ToLowerInvariant() is "by" or "at" && CellTimes.Clock(words[2]).TryGet(out var by)) return After(start, by.Start);
            foreach (var word in words)
                if (word.Contains('-') && CellTimes.Clock(word) is { Outcome: Outcome.Certain, Value.End: { } to }) return After(start, to);
        }

        return null;
    }

    private static UncertainTime After(UncertainTime start, ClockTime end) =>
        (end.Half == HalfOfDay.Unknown && end.In(HalfOfDay.Am).Time < start.Stated.TimeOfDay ? end.In(HalfOfDay.Pm) : end.In(HalfOfDay.Am)).On(start.Stated.Date);
}
