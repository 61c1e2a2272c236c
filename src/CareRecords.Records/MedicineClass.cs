namespace CareRecords.Records;

/// <summary>What a medicine is, as far as its place around a session goes.</summary>
public enum MedicineClass
{
    /// <summary>Not in the table, or not named.</summary>
    Unknown,

    /// <summary>Opens the airways: due before a session.</summary>
    Bronchodilator,

    /// <summary>Inhaled salt water: before or during.</summary>
    HypertonicSaline,

    /// <summary>Dornase alfa: before or during.</summary>
    Dornase,

    /// <summary>Inhaled steroid: after.</summary>
    InhaledSteroid,

    /// <summary>Inhaled antibiotic: after.</summary>
    InhaledAntibiotic,

    /// <summary>Antibiotic by mouth, tube or vein: a sign of illness, no place around a session.</summary>
    SystemicAntibiotic,

    /// <summary>Steroid by mouth, tube or vein.</summary>
    SystemicSteroid,

    /// <summary>Brings down fever and pain.</summary>
    Antipyretic,

    /// <summary>Anything else in the table.</summary>
    Other,
}
