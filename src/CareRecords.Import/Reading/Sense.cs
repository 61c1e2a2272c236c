namespace CareRecords.Import.Reading;

/// <summary>What a word of the vocabulary (vocabulary.csv) stands for. The file says which words; a term may carry several senses.</summary>
internal enum Sense
{
    None, Session, Technique, Side, EachSide, Area, SideArea, AnyArea, Spots, Each, Only, Minus,
    Feed, FeedRunning, Pump, Bolus, Bottle, Milk, Meal, Food, Mouth, Route, Flush, Start, Stop, OnHold,
    Medicine, Device, Antibiotic, MedicineWord, DoseRoute, Given, First,
    SatLabel, Desat, PulseLabel, BreathLabel, TempLabel, OxygenLabel, Air, Before, After, During, Going,
    Unit, RateWord, AmPm, DayPart, Clock, NumberWord, Half, Quarter, Eighth, Article, OClock, Past, To, At, About, Ish, Since, Per, Ago, Over,
    And, Then, Month, Weekday, DayRef, Same, SameAs, Again, Usual, Not, Skip, Plan, Advice, Question, Shopping, Visit, OtherTherapy,
    Rumour, NewTime, Correction, Discount, Retry, Sign, Quality, Times, Frequency, Course, AllDone, StoppedEarly, Feeling, Now, JustNow,
    WakeCue, Person, Asking, Unsure,
}
