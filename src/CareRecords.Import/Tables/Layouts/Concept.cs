namespace CareRecords.Import.Tables.Layouts;

/// <summary>What a word of a heading, or of a column that says what happened, stands for (headings.csv).</summary>
internal enum Concept
{
    Date, Day, Time, Start, End, Kind, Detail, Amount, Puffs, Note, By,
    Session, Percussion, Vibration, Technique, Feed, Pump, Bolus, Oral, Tube, Inhaler, Medicine,
    Saturation, Pulse, Oxygen, Temperature, Breathing, Before, After, During, Phase, Morning, Midday, Evening,
    Side, Left, Right, Lower, Upper, Middle, Both, LeftLower, LeftUpper, LeftMiddle, RightLower, RightUpper, RightMiddle,
    Minutes, Millilitres, Rate, Route, Cough, Secretions, Colour, Vomit, Stopped, Distress, Sign, Reason,
    Antibiotic, Admitted, Discharged, Unwell, Word, Means, Total, Ignore, OxygenChange, Withdrawn,
}
