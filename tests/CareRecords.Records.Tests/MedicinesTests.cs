namespace CareRecords.Records.Tests;

public sealed class MedicinesTests
{
    [Theory]
    [InlineData("salbutamol", "salbutamol")]
    [InlineData("Albuterol", "salbutamol")]
    [InlineData("salbutmol", "salbutamol")]
    [InlineData("acetaminophen", "paracetamol")]
    [InlineData("co-amoxiclav", "amoxicillin/clavulanate")]
    public void GenericNameFor_OtherNameOrMisspelling_GivesTheGenericName(string words, string name) => Assert.Equal(name, Medicines.GenericNameFor(words));

    [Fact]
    public void GenericNameFor_AColour_NamesNoMedicine() => Assert.Null(Medicines.GenericNameFor("blue inhaler"));

    /// <summary>Bronchodilators go before a session; hypertonic saline must not stand in for one (common practice, no source).</summary>
    [Theory]
    [InlineData("salbutamol", MedicineClass.Bronchodilator)]
    [InlineData("ipratropium", MedicineClass.Bronchodilator)]
    [InlineData("hypertonic saline 3%", MedicineClass.HypertonicSaline)]
    [InlineData("budesonide", MedicineClass.InhaledSteroid)]
    [InlineData("unknown", MedicineClass.Unknown)]
    public void ClassOf_GenericName_GivesItsClass(string name, MedicineClass expected) => Assert.Equal(expected, Medicines.ClassOf(name));
}
