namespace CareRecords.Pooling;

/// <summary>Codes of open vocabularies for what the tables measure.</summary>
internal static class OpenCodes
{
    private const string Loinc = "http://loinc.org";

    /// <summary>Oxygen saturation by pulse oximetry: both codes, as HL7's vital signs and pulse oximetry profiles ask.</summary>
    public static IReadOnlyList<OpenCode> Saturation { get; } =
    [
        new(Loinc, "2708-6", "Oxygen saturation in Arterial blood"),
        new(Loinc, "59408-5", "Oxygen saturation in Arterial blood by Pulse oximetry"),
    ];

    /// <summary>Inhaled oxygen flow rate.</summary>
    public static IReadOnlyList<OpenCode> OxygenFlow { get; } = [new(Loinc, "3151-8", "Inhaled oxygen flow rate")];
}
