using System.Collections.Frozen;
using CareRecords.Records;

namespace CareRecords.Import.Tables;

/// <summary>The names of signs in a <c>sign</c> column.</summary>
internal static class SignWords
{
    private static readonly FrozenDictionary<string, SignKind> Kinds = new Dictionary<string, SignKind>
    {
        ["unwell"] = SignKind.Unwell,
        ["ill"] = SignKind.Unwell,
        ["poorly"] = SignKind.Unwell,
        ["sick"] = SignKind.Unwell,
        ["temperature"] = SignKind.Temperature,
        ["temp"] = SignKind.Temperature,
        ["fever"] = SignKind.Temperature,
        ["vomit"] = SignKind.Vomit,
        ["vomited"] = SignKind.Vomit,
        ["vomiting"] = SignKind.Vomit,
        ["threwup"] = SignKind.Vomit,
        ["colourchange"] = SignKind.ColourChange,
        ["colorchange"] = SignKind.ColourChange,
        ["colour"] = SignKind.ColourChange,
        ["color"] = SignKind.ColourChange,
        ["distress"] = SignKind.Distress,
        ["workofbreathing"] = SignKind.Distress,
        ["breathless"] = SignKind.Distress,
        ["secretions"] = SignKind.Secretions,
        ["sputum"] = SignKind.Secretions,
        ["mucus"] = SignKind.Secretions,
        ["phlegm"] = SignKind.Secretions,
        ["cough"] = SignKind.Cough,
        ["breathingrate"] = SignKind.BreathingRate,
        ["respiratoryrate"] = SignKind.BreathingRate,
        ["respirations"] = SignKind.BreathingRate,
        ["antibiotic"] = SignKind.Antibiotic,
        ["antibiotics"] = SignKind.Antibiotic,
        ["antibioticstarted"] = SignKind.Antibiotic,
        ["admitted"] = SignKind.Admitted,
        ["admission"] = SignKind.Admitted,
        ["discharged"] = SignKind.Discharged,
        ["home"] = SignKind.Discharged,
        ["better"] = SignKind.Better,
        ["recovered"] = SignKind.Better,
        ["other"] = SignKind.Other,
    }.ToFrozenDictionary();

    private static readonly FrozenDictionary<SignKind, string> Names = new Dictionary<SignKind, string>
    {
        [SignKind.Other] = "other",
        [SignKind.Unwell] = "unwell",
        [SignKind.Temperature] = "temperature",
        [SignKind.Vomit] = "vomit",
        [SignKind.ColourChange] = "colour",
        [SignKind.Distress] = "distress",
        [SignKind.Secretions] = "secretions",
        [SignKind.Cough] = "cough",
        [SignKind.BreathingRate] = "breathing rate",
        [SignKind.Antibiotic] = "antibiotic",
        [SignKind.Admitted] = "admitted",
        [SignKind.Discharged] = "discharged",
        [SignKind.Better] = "better",
    }.ToFrozenDictionary();

    /// <summary>The sign that a word names; null when it names none.</summary>
    public static SignKind? KindOf(string word) => Kinds.TryGetValue(CanonicalHeader.Fold(word), out var kind) ? kind : null;

    /// <summary>The sign's name in the workbook; <see cref="InJson"/> is the one of records.json.</summary>
    public static string NameOf(SignKind kind) => Names[kind];

    /// <summary>The sign's name in records.json, where a name is one word.</summary>
    public static string InJson(Sign sign) => sign.Kind == SignKind.BreathingRate ? "breathingRate" : sign.What;
}
