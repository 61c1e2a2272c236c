namespace CareRecords.Import.Tables;

/// <summary>What a column of a table states.</summary>
internal enum Field
{
    Unknown, Started, Ended, Earliest, Latest,
    LeftLower, LeftUpper, LeftVibration, RightLower, RightUpper, RightVibration, Minutes,
    Techniques, By, Cough, Secretions, Colour, StoppedEarly, Vomited, Note,
    Millilitres, Route, Medicine, Amount, SpO2, Pulse, Oxygen, Phase, Sign, Value,
    Reason, From, Item, Word, Means, Question, Answer,
    SourceFile, SourcePlace, SourceText, HowRead, RowId,
}

/// <summary>Kinds of table that the contract names (docs/file-formats.md).</summary>
internal enum TableKind
{
    Sessions, Feeds, Medicines, Checks, Signs, NotDone, Plan, Words, Answers, FamilyQuestions,
}
