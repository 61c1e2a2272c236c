namespace CareRecords.Statistics;

/// <summary>One subject followed until the event or until it was last seen without it.</summary>
/// <param name="Time">Time from the start, 0 or more, in any one unit; an event at 0 counts.</param>
/// <param name="Happened">True: the event happened then. False: right-censored then.</param>
public readonly record struct FollowUp(double Time, bool Happened);
