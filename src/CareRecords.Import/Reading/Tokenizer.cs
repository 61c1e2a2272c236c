using System.Collections.Frozen;
using System.Globalization;

namespace CareRecords.Import.Reading;

/// <summary>Cuts a line into tokens, once, from left to right: the work is linear in the line's length.</summary>
internal sealed class Tokenizer
{
    private readonly WordPool _pool;
    private readonly List<Token> _tokens = [];
    private string _line = "";
    private int _at;

    /// <summary>A tokenizer that keeps its words in <paramref name="pool"/>.</summary>
    public Tokenizer(WordPool pool) => _pool = pool;

    /// <summary>The tokens of a line. The list is reused: it holds until the next call.</summary>
    public List<Token> Read(string line)
    {
        (_line, _at) = (line, 0);
        _tokens.Clear();
        while (_at < line.Length)
        {
            var c = line[_at];
            if (char.IsAsciiDigit(c) || (c is '.' or ',' && IsDigit(_at + 1) && !IsDigit(_at - 1) && !IsLetter(_at - 1))) ReadNumber();
            else if (char.IsLetter(c) || c == '°') ReadWord();
            else if (GlyphValue(c) is { } fraction) { ReadGlyph(fraction); }
            else if (char.IsSurrogate(c) || IsPictureSign(c)) ReadPicture();
            else ReadSymbol(c);
        }
        return _tokens;
    }

    private bool IsDigit(int at) => at >= 0 && at < _line.Length && char.IsAsciiDigit(_line[at]);

    private bool IsLetter(int at) => at >= 0 && at < _line.Length && char.IsLetter(_line[at]);

    private char Char(int at) => at >= 0 && at < _line.Length ? _line[at] : '\0';

    private void Add(TokenKind kind, int start, string text, double number = 0, double[]? parts = null) =>
        _tokens.Add(new Token(kind, start, _at - start, text, number, parts, _tokens.Count > 0 && _tokens[^1].End == start));

    private void ReadWord()
    {
        var start = _at;
        while (_at < _line.Length && (char.IsLetter(_line[_at]) || _line[_at] == '°' || IsApostropheInside())) _at++;
        var letters = _line.AsSpan(start, _at - start);
        // "o2", "spo2", "sp02": the figure belongs to the word.
        if (letters.Length <= 3 && TakesTwo(letters) && TwoAt(_at) is var two and > 0 && !char.IsAsciiLetter(Char(_at + two)))
            _at += two;
        // "a.m.", "p.m.", "b.d.": single letters with stops are one word.
        else if (letters.Length == 1)
        {
            while (Char(_at) == '.' && char.IsLetter(Char(_at + 1)) && !char.IsLetter(Char(_at + 2)) && !IsDigit(_at + 2)) _at += 2;
            if (_at - start > 1 && Char(_at) == '.') _at++;
        }
        var end = _at;
        if (Char(_at) == '.' && IsShortened(letters) && GoesOn(_at + 1)) _at++;
        Add(TokenKind.Word, start, _pool.Fold(_line.AsSpan(start, end - start)));
    }

    // "ox. 1/2", "temp. 38.1": the stop belongs to the word.
    private static bool IsShortened(ReadOnlySpan<char> word) => word.Length is >= 2 and <= 6 && Shortened.GetAlternateLookup<ReadOnlySpan<char>>().Contains(word);

    private static readonly FrozenSet<string> Shortened = FrozenSet.ToFrozenSet(["ox", "oxy", "temp", "resp", "approx"], StringComparer.OrdinalIgnoreCase);

    private bool GoesOn(int at)
    {
        while (Char(at) == ' ') at++;
        return IsDigit(at) || char.IsLower(Char(at));
    }

    private bool IsApostropheInside() => _line[_at] is '\'' or '’' or '`' && IsLetter(_at + 1);

    private static bool TakesTwo(ReadOnlySpan<char> letters) =>
        letters.Equals("o", StringComparison.OrdinalIgnoreCase) || letters.Equals("spo", StringComparison.OrdinalIgnoreCase)
        || letters.Equals("sao", StringComparison.OrdinalIgnoreCase) || letters.Equals("sp", StringComparison.OrdinalIgnoreCase);

    private int TwoAt(int at) =>
        Char(at) == '2' && !IsDigit(at + 1) ? 1 : Char(at) == '0' && Char(at + 1) == '2' && !IsDigit(at + 2) ? 2 : 0;

    private void ReadGlyph(double fraction)
    {
        var start = _at++;
        if (_tokens.Count > 0 && _tokens[^1] is { Kind: TokenKind.Number } whole && whole.End == start && whole.Number == Math.Floor(whole.Number))
        {
            _tokens.RemoveAt(_tokens.Count - 1);
            Add(TokenKind.Number, whole.Start, _line[whole.Start.._at], whole.Number + fraction);
        }
        else Add(TokenKind.Number, start, _line[start.._at], fraction);
    }

    private static double? GlyphValue(char c) => c switch
    {
        '½' => 0.5,
        '¼' => 0.25,
        '¾' => 0.75,
        '⅛' => 0.125,
        '⅓' => 1 / 3d,
        '⅔' => 2 / 3d,
        '⅜' => 0.375,
        '⅝' => 0.625,
        '⅞' => 0.875,
        _ => null,
    };

    private void ReadNumber()
    {
        var start = _at;
        var first = Decimal();
        if (Char(_at) == ':' && IsDigit(_at + 1) && first.Whole && first.Digits <= 2) { ReadClock(start, first.Value); return; }
        if (Char(_at) == '/' && (IsDigit(_at + 1) || (Char(_at + 1) == '.' && IsDigit(_at + 2)))) { ReadJoined(start, first.Value, '/'); return; }
        if (Char(_at) is '-' or '.' && first.Whole && first.Digits is 1 or 2 or 4 && JoinsDate(_at, Char(_at))) { ReadJoined(start, first.Value, Char(_at)); return; }
        if (Char(_at) == '.' && IsDigit(_at + 1) && !first.Whole && IsDigit(start) && JoinsYear(_at)) { _at = start; ReadDotted(start); return; }
        var negative = Char(start - 1) is '-' or '−' && (start == 1 || char.IsWhiteSpace(Char(start - 2)) || Char(start - 2) is '(' or ':')
            && !(_tokens.Count > 1 && _tokens[^2].Kind is TokenKind.Number or TokenKind.Clock) && start > 1;
        if (negative && _tokens.Count > 0 && _tokens[^1].IsSymbol("-"))
        {
            _tokens.RemoveAt(_tokens.Count - 1);
            Add(TokenKind.Number, start - 1, _line[(start - 1).._at], -first.Value);
        }
        else Add(TokenKind.Number, start, _line[start.._at], first.Value);
    }

    private (double Value, bool Whole, int Digits) Decimal()
    {
        var start = _at;
        while (IsDigit(_at)) _at++;
        var digits = _at - start;
        var whole = true;
        if (Char(_at) is '.' or ',' && IsDigit(_at + 1))
        {
            // "0,5" and "7.15"; but "1,000" is a thousand, and "92,93,94" is a list.
            whole = false;
            _at++;
            while (IsDigit(_at)) _at++;
        }
        return (Value(_line.AsSpan(start, _at - start)), whole, digits);
    }

    private static double Value(ReadOnlySpan<char> digits)
    {
        Span<char> copy = digits.Length <= 64 ? stackalloc char[digits.Length] : new char[digits.Length];
        digits.CopyTo(copy);
        copy.Replace(',', '.');
        return double.TryParse(copy, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) ? value : 0;
    }

    private void ReadClock(int start, double hour)
    {
        _at++;
        var minute = Decimal();
        // Seconds, as message stamps have them, are dropped.
        if (Char(_at) == ':' && IsDigit(_at + 1)) { _at++; Decimal(); }
        Add(TokenKind.Clock, start, _line[start.._at], 0, [hour, minute.Whole ? minute.Value : 99]);
    }

    private void ReadJoined(int start, double first, char by)
    {
        var parts = new List<double> { first };
        while (Char(_at) == by && (IsDigit(_at + 1) || (by == '/' && Char(_at + 1) == '.' && IsDigit(_at + 2))))
        {
            _at++;
            parts.Add(by == '/' ? Decimal().Value : Whole());
        }
        // "3-3-2-2" is no date, and the same as "3/3/2/2".
        Add(TokenKind.Numbers, start, by != '/' && parts.Count > LongestDate ? _line[start.._at].Replace(by, '/') : _line[start.._at], 0, [.. parts]);
    }

    // Day, month and year.
    private const int LongestDate = 3;

    private void ReadDotted(int start)
    {
        var parts = new List<double> { Whole() };
        while (Char(_at) == '.' && IsDigit(_at + 1)) { _at++; parts.Add(Whole()); }
        Add(TokenKind.Numbers, start, _line[start.._at], 0, [.. parts]);
    }

    private double Whole()
    {
        var start = _at;
        while (IsDigit(_at)) _at++;
        return Value(_line.AsSpan(start, _at - start));
    }

    // "01-08-2025", "2025-02-14", "1-8-25": three numbers joined by the same sign.
    private bool JoinsDate(int at, char by)
    {
        var second = at + 1;
        while (IsDigit(second)) second++;
        if (second - at is not (2 or 3) || Char(second) != by) return false;
        var third = second + 1;
        while (IsDigit(third)) third++;
        return third - second is 2 or 3 or 5 && !(Char(third) is '.' or ',' or ':' && IsDigit(third + 1));
    }

    private bool JoinsYear(int at)
    {
        var end = at + 1;
        while (IsDigit(end)) end++;
        return end - at is 3 or 5 && !IsDigit(end);
    }

    // Signs such as a heart that may stand for a word of the family's.
    private static bool IsPictureSign(char c) => c is >= '\u2600' and <= '\u27BF' and not ('✓' or '✔' or '➔' or '➜' or '➡');

    // An emoji with its joiners and variants is one word: a family's key may explain it.
    private void ReadPicture()
    {
        var start = _at;
        while (_at < _line.Length && (char.IsSurrogate(_line[_at]) || IsPictureSign(_line[_at]) || _line[_at] is '\uFE0F' or '\u200D' or '\u20E3'))
        {
            var length = char.IsHighSurrogate(_line[_at]) && _at + 1 < _line.Length && char.IsLowSurrogate(_line[_at + 1]) ? 2 : 1;
            // Two pictures side by side are two words, unless a joiner binds them.
            if (_at > start && _line[_at - 1] != '\u200D' && _line[_at] is not ('\uFE0F' or '\u200D' or '\u20E3') && !IsSkinTone(_at)) break;
            _at += length;
        }
        if (_at == start) _at++;
        Add(TokenKind.Word, start, _line[start.._at].Replace("\uFE0F", "", StringComparison.Ordinal));
    }

    private bool IsSkinTone(int at) => _line[at] == '\uD83C' && at + 1 < _line.Length && _line[at + 1] is >= '\uDFFB' and <= '\uDFFF';

    private void ReadSymbol(char c)
    {
        var start = _at++;
        if (char.IsWhiteSpace(c) || char.IsControl(c)) return;
        switch (c)
        {
            case '–' or '—' or '−' or '‒' or '-':
                if (Char(_at) == '-' && Char(_at + 1) == '>') { _at += 2; Add(TokenKind.Symbol, start, "→"); }
                else if (Char(_at) == '>') { _at++; Add(TokenKind.Symbol, start, "→"); }
                else Add(TokenKind.Symbol, start, c is '—' ? "—" : "-");
                break;
            case '=' when Char(_at) == '>':
                _at++;
                Add(TokenKind.Symbol, start, "→");
                break;
            case '→' or '➔' or '⇒' or '➜' or '▶' or '⟶' or '>' or '»' or '➡':
                Add(TokenKind.Symbol, start, "→");
                break;
            case '↑' or '↗' or '⬆' or '^': Add(TokenKind.Symbol, start, "↑"); break;
            case '↓' or '↘' or '⬇': Add(TokenKind.Symbol, start, "↓"); break;
            case '~' or '≈' or '∼': Add(TokenKind.Symbol, start, "~"); break;
            case '×': Add(TokenKind.Word, start, "x"); break;
            case '“' or '”' or '"' or '„' or '〃' or '″' or '〞': Add(TokenKind.Symbol, start, "\""); break;
            case '+':
                while (Char(_at) == '+') _at++;
                Add(TokenKind.Symbol, start, _at - start > 1 ? "++" : "+");
                break;
            case '•' or '·' or '*' or '▪' or '●' or '◦': Add(TokenKind.Symbol, start, "*"); break;
            case '.' or ',' or ';' or ':' or '!' or '?' or '/' or '(' or ')' or '[' or ']' or '&' or '@' or '%' or '=' or '#' or '|' or '$' or '£' or '€' or '<' or '\\' or '\'' or '’':
                Add(TokenKind.Symbol, start, Symbols[c]);
                break;
        }
    }

    private static readonly Dictionary<char, string> Symbols =
        ".,;:!?/()[]&@%=#|$£€<\\'’".ToDictionary(c => c, c => c == '’' ? "'" : c.ToString());
}
