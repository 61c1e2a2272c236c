using System.Text.Json;
using CareRecords.Records;
using NodaTime;
using NodaTime.Text;

namespace CareRecords.Import;

/// <summary>Writes what was read as records.json (docs/file-formats.md).</summary>
public static class RecordsJson
{
    private static readonly LocalDateTimePattern Minute = LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm");
    private static readonly LocalDatePattern Day = LocalDatePattern.Iso;

    /// <summary>Writes the account as UTF-8 JSON. Local times are <c>yyyy-MM-ddTHH:mm</c>; what is unknown is null. The stream stays open.</summary>
    public static void Write(CareLog log, Stream output)
    {
        ArgumentNullException.ThrowIfNull(log);
        ArgumentNullException.ThrowIfNull(output);
        using var json = new Utf8JsonWriter(output, new JsonWriterOptions
        {
            Indented = true,
            Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        });
        json.WriteStartObject();
        json.WriteString("zone", log.Zone);
        json.WriteString("zoneFrom", log.ZoneFrom);
        Array(json, "records", log.Entries, Record);
        Array(json, "notRecords", log.NotRecords, SetAside);
        Array(json, "problems", log.Problems, Problem);
        Array(json, "merged", log.Merged, Merged);
        Lines(json, log.Lines);
        Array(json, "plan", log.Plan.Rows, PlanRow);
        Array(json, "omitted", log.Omitted, Omitted);
        Array(json, "questions", log.Questions, Question);
        Array(json, "familyQuestions", log.FamilyQuestions, (j, s) => SourceValue(j, s));
        Array(json, "corrections", log.Corrections, Correction);
        Array(json, "inputs", log.Inputs, Input);
        json.WriteEndObject();
    }

    private static void Record(Utf8JsonWriter json, CareEntry entry)
    {
        json.WriteStartObject();
        json.WriteString("kind", entry switch
        {
            Session => "session",
            Feed => "feed",
            Dose => "dose",
            Check => "check",
            Sign => "sign",
            _ => throw new System.Diagnostics.UnreachableException(),
        });
        Time(json, "start", entry.Start?.Stated);
        Time(json, "end", entry.End?.Stated);
        Time(json, "startEarliest", entry.Start?.Earliest);
        Time(json, "startLatest", entry.Start?.Latest);
        if (entry.End is { IsExact: false } end)
        {
            Time(json, "endEarliest", end.Earliest);
            Time(json, "endLatest", end.Latest);
        }

        json.WriteBoolean("approximate", entry.When.IsApproximate);
        Array(json, "sources", entry.Sources, (j, s) => SourceValue(j, s));
        switch (entry)
        {
            case Session session: SessionFields(json, session); break;
            case Feed feed: FeedFields(json, feed); break;
            case Dose dose: DoseFields(json, dose); break;
            case Check check: CheckFields(json, check); break;
            case Sign sign: SignFields(json, sign); break;
        }

        Text(json, "by", entry.By);
        Text(json, "note", entry.Note);
        Text(json, "howRead", entry.HowRead);
        json.WriteEndObject();
    }

    private static void SessionFields(Utf8JsonWriter json, Session session)
    {
        Number(json, "minutesTotal", session.TotalMinutes);
        Array(json, "areas", session.Areas, (j, area) =>
        {
            j.WriteStartObject();
            j.WriteString("side", Lower(area.Side));
            j.WriteString("area", Lower(area.Area));
            j.WriteString("technique", Lower(area.Technique));
            Range(j, "minutes", "minutesRange", area.Minutes, area.MinutesHigh);
            j.WriteEndObject();
        });
        Text(json, "techniques", session.Techniques);
        Text(json, "cough", session.Cough);
        Text(json, "secretions", session.Secretions);
        Text(json, "colour", session.Colour);
        Text(json, "stoppedEarly", session.StoppedEarly);
        if (session.Vomited is { } vomited) json.WriteBoolean("vomited", vomited);
    }

    private static void FeedFields(Utf8JsonWriter json, Feed feed)
    {
        Number(json, "ml", feed.Millilitres);
        json.WriteString("route", feed.Route switch
        {
            FeedRoute.Oral => "oral",
            FeedRoute.Unknown => "unknown",
            _ => "tube",
        });
        if (feed.Route is FeedRoute.PumpedTube) json.WriteString("routeDetail", "pump");
        if (feed.Route is FeedRoute.BolusTube) json.WriteString("routeDetail", "bolus");
        if (feed.MillilitresPerHour is { } rate) json.WriteNumber("rateMlPerHour", rate);
    }

    private static void DoseFields(Utf8JsonWriter json, Dose dose)
    {
        json.WriteString("medicine", dose.Medicine);
        Text(json, "medicineAsWritten", dose.MedicineAsWritten);
        json.WriteString("amount", dose.Amount);
        Text(json, "route", dose.Route);
    }

    private static void CheckFields(Utf8JsonWriter json, Check check)
    {
        Range(json, "spo2", "spo2Range", check.SpO2, check.SpO2High);
        Number(json, "pulse", check.Pulse);
        Number(json, "oxygen", check.OxygenLitresPerMinute);
        json.WriteString("phase", Lower(check.Phase));
    }

    private static void SignFields(Utf8JsonWriter json, Sign sign)
    {
        json.WriteString("what", Tables.SignWords.InJson(sign));
        if (sign.Number is not { } number)
        {
            json.WriteString("value", sign.Value);
            return;
        }

        json.WriteNumber("value", number);
        if (sign.Kind is SignKind.Temperature) json.WriteString("unit", "C");
        Text(json, "asWritten", sign.Value);
    }

    private static void SetAside(Utf8JsonWriter json, SetAsideLine line)
    {
        json.WriteStartObject();
        Source(json, "source", line.Source);
        json.WriteString("why", line.Why);
        json.WriteEndObject();
    }

    private static void Problem(Utf8JsonWriter json, ImportProblem problem)
    {
        json.WriteStartObject();
        Source(json, "source", problem.Source);
        json.WriteString("why", problem.Why);
        json.WriteString("fix", problem.Fix);
        json.WriteString("severity", problem.Severity is ProblemSeverity.Ask ? "ask" : "refused");
        Text(json, "question", problem.Question);
        json.WriteEndObject();
    }

    private static void Merged(Utf8JsonWriter json, MergedEntry merged)
    {
        json.WriteStartObject();
        Source(json, "kept", merged.Kept);
        Array(json, "also", merged.Also, (j, s) => SourceValue(j, s));
        Array(json, "differences", merged.Differences, (j, d) =>
        {
            j.WriteStartObject();
            j.WriteString("field", d.Field);
            j.WriteString("kept", d.Kept);
            j.WriteString("other", d.Other);
            j.WriteEndObject();
        });
        json.WriteEndObject();
    }

    private static void Lines(Utf8JsonWriter json, LineCount lines)
    {
        json.WriteStartObject("lines");
        json.WriteNumber("read", lines.Read);
        json.WriteNumber("blank", lines.Blank);
        json.WriteNumber("inRecords", lines.InRecords);
        json.WriteNumber("notRecords", lines.NotRecords);
        json.WriteNumber("problems", lines.Problems);
        json.WriteEndObject();
    }

    private static void PlanRow(Utf8JsonWriter json, PlanRow row)
    {
        json.WriteStartObject();
        json.WriteString("from", row.From is { } from ? Day.Format(from) : null);
        json.WriteString("item", PlanItems.Describe(row.Item).Name);
        json.WriteString("value", row.Value);
        if (row.Source is { } source) Source(json, "source", source);
        json.WriteEndObject();
    }

    private static void Omitted(Utf8JsonWriter json, OmittedSession omitted)
    {
        json.WriteStartObject();
        Time(json, "due", omitted.When.Stated);
        Time(json, "dueEarliest", omitted.When.Earliest);
        Time(json, "dueLatest", omitted.When.Latest);
        json.WriteString("reason", omitted.Reason);
        Source(json, "source", omitted.Source);
        json.WriteEndObject();
    }

    private static void Question(Utf8JsonWriter json, Question question)
    {
        json.WriteStartObject();
        json.WriteString("name", question.Name);
        json.WriteString("text", question.Text);
        Array(json, "choices", question.Choices, (j, choice) => j.WriteStringValue(choice));
        Array(json, "sources", question.Sources, (j, s) => SourceValue(j, s));
        json.WriteString("answer", question.Answer);
        json.WriteEndObject();
    }

    private static void Correction(Utf8JsonWriter json, Correction correction)
    {
        json.WriteStartObject();
        Source(json, "source", correction.Source);
        json.WriteString("field", correction.Field);
        json.WriteString("old", correction.Old);
        json.WriteString("new", correction.New);
        json.WriteEndObject();
    }

    private static void Input(Utf8JsonWriter json, InputFile input)
    {
        json.WriteStartObject();
        json.WriteString("name", input.Name);
        json.WriteString("kind", input.Kind);
        json.WriteString("sha256", input.Sha256);
        json.WriteString("note", input.Note);
        json.WriteEndObject();
    }

    private static void Source(Utf8JsonWriter json, string name, SourceLine source)
    {
        json.WritePropertyName(name);
        SourceValue(json, source);
    }

    private static void SourceValue(Utf8JsonWriter json, SourceLine source)
    {
        json.WriteStartObject();
        json.WriteString("file", source.File);
        if (source.Line is { } line) json.WriteNumber("line", line);
        Text(json, "sheet", source.Sheet);
        Text(json, "cell", source.Cell);
        json.WriteString("text", source.Text);
        json.WriteEndObject();
    }

    private static void Array<T>(Utf8JsonWriter json, string name, IReadOnlyList<T> items, Action<Utf8JsonWriter, T> write)
    {
        json.WriteStartArray(name);
        foreach (var item in items) write(json, item);
        json.WriteEndArray();
    }

    // A range has no single value: the value is null and the range stands beside it.
    private static void Range(Utf8JsonWriter json, string name, string rangeName, double? low, double? high)
    {
        Number(json, name, high is null ? low : null);
        if (low is not { } from || high is not { } to) return;
        json.WriteStartArray(rangeName);
        json.WriteNumberValue(from);
        json.WriteNumberValue(to);
        json.WriteEndArray();
    }

    private static void Time(Utf8JsonWriter json, string name, LocalDateTime? at) =>
        json.WriteString(name, at is { } time ? Minute.Format(time) : null);

    private static void Number(Utf8JsonWriter json, string name, double? number)
    {
        if (number is { } value) json.WriteNumber(name, value);
        else json.WriteNull(name);
    }

    private static void Text(Utf8JsonWriter json, string name, string? text)
    {
        if (text is not null) json.WriteString(name, text);
    }

    private static string Lower<T>(T value) where T : struct, Enum => value.ToString().ToLowerInvariant();
}
