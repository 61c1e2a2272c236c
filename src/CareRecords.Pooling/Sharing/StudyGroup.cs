namespace CareRecords.Pooling;

/// <summary>A study's group: one or two letters, then at most two digits, or one or two digits ("A", "B2", "12"). Too short to hold a name.</summary>
public readonly record struct StudyGroup
{
    private StudyGroup(string text) => Text = text;

    /// <summary>The group in capitals; "0" when none was set.</summary>
    public string Text { get => field ?? "0"; }

    /// <summary>What is accepted, in words for a message.</summary>
    public static string Accepted => "one or two letters and at most two digits, such as A, B2 or 12";

    /// <summary>Reads a group.</summary>
    /// <returns>False when it is not of the form of <see cref="Accepted"/>.</returns>
    public static bool TryRead(string? text, out StudyGroup group)
    {
        var capitals = (text ?? "").Trim().ToUpperInvariant();
        var letters = capitals.TakeWhile(char.IsAsciiLetterUpper).Count();
        var digits = capitals.Skip(letters).TakeWhile(char.IsAsciiDigit).Count();
        var well = capitals.Length > 0 && letters <= 2 && digits <= 2 && letters + digits == capitals.Length;
        group = well ? new(capitals) : default;
        return well;
    }

    /// <summary>The text.</summary>
    public override string ToString() => Text;
}
