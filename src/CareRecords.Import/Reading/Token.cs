namespace CareRecords.Import.Reading;

/// <summary>What a token is, before any meaning.</summary>
internal enum TokenKind
{
    /// <summary>A run of letters.</summary>
    Word,

    /// <summary>One number: "7.15", "0,5", "½", "2½".</summary>
    Number,

    /// <summary>Hours and minutes with a colon.</summary>
    Clock,

    /// <summary>Numbers joined by slashes ("3/3/2/2", "1/2", "14/03/2025"), or a date joined by hyphens or dots.</summary>
    Numbers,

    /// <summary>Anything else that carries meaning: punctuation, arrows, signs.</summary>
    Symbol,
}

/// <summary>A piece of a line.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Start">Zero-based position in the line.</param>
/// <param name="Length">Length in the line.</param>
/// <param name="Text">A word in lower case without apostrophes; a number as written; a symbol after unifying its variants ("→", "-", "~").</param>
/// <param name="Number">The value of a number; 0 for the rest.</param>
/// <param name="Parts">The numbers of a clock (hour, minute) or of joined numbers; null for the rest.</param>
/// <param name="Glued">True when it follows the token before it without a space.</param>
internal readonly record struct Token(TokenKind Kind, int Start, int Length, string Text, double Number, double[]? Parts, bool Glued)
{
    /// <summary>Position after its last character.</summary>
    public int End => Start + Length;

    /// <summary>Whether it is this symbol.</summary>
    public bool IsSymbol(string text) => Kind == TokenKind.Symbol && Text == text;
}
