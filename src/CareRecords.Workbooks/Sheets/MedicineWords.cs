using CareRecords.Records;

namespace CareRecords.Workbooks.Sheets;

/// <summary>Medicine classes in words.</summary>
internal static class MedicineWords
{
    public static string Class(MedicineClass of) => of switch
    {
        MedicineClass.Bronchodilator => "opens the airways",
        MedicineClass.HypertonicSaline => "inhaled salt water",
        MedicineClass.Dornase => "dornase",
        MedicineClass.InhaledSteroid => "inhaled steroid",
        MedicineClass.InhaledAntibiotic => "inhaled antibiotic",
        MedicineClass.SystemicAntibiotic => "antibiotic by mouth, tube or vein",
        MedicineClass.SystemicSteroid => "steroid by mouth, tube or vein",
        MedicineClass.Antipyretic => "fever and pain",
        MedicineClass.Other => "other",
        _ => "not in the table",
    };
}
