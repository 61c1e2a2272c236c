using System.Globalization;
using System.Xml.Linq;
using CareRecords.Workbooks.Building;

namespace CareRecords.Workbooks.Finishing;

/// <summary>The styles part: mended where the library writes it in a way that some programs read otherwise, and added to as cells need it.</summary>
internal sealed class StyleSheet
{
    private readonly XElement _root;
    private readonly XElement _formats;
    private readonly XElement _fonts;
    private readonly Dictionary<(int Style, bool Link, bool Quoted), int> _variants = [];

    public StyleSheet(XElement root)
    {
        _root = root;
        _formats = root.Element(X("cellXfs")) ?? throw new InvalidOperationException("The package has no cell formats.");
        _fonts = root.Element(X("fonts")) ?? throw new InvalidOperationException("The package has no fonts.");
        Mend();
    }

    public XElement Root => _root;

    /// <summary>The same style for a cell that leads elsewhere (underlined), or whose words must not be taken for a formula when they are typed again.</summary>
    public int Variant(int style, bool link, bool quoted)
    {
        if (!link && !quoted) return style;
        if (_variants.TryGetValue((style, link, quoted), out var made)) return made;
        var format = new XElement(_formats.Elements().ElementAt(style));
        if (quoted) format.SetAttributeValue("quotePrefix", "1");
        if (link)
        {
            format.SetAttributeValue("fontId", Underlined((int?)format.Attribute("fontId") ?? 0));
            format.SetAttributeValue("applyFont", "1");
        }

        return _variants[(style, link, quoted)] = Add(_formats, format);
    }

    private int Underlined(int fontId)
    {
        var font = new XElement(_fonts.Elements().ElementAt(fontId));
        font.Elements(X("u")).Remove();
        // The order of a font's parts is fixed: underline comes after bold, italic and strike.
        var before = font.Elements().LastOrDefault(e => e.Name.LocalName is "b" or "i" or "strike");
        if (before is null) font.AddFirst(new XElement(X("u"))); else before.AddAfterSelf(new XElement(X("u")));
        return Add(_fonts, font);
    }

    private static int Add(XElement list, XElement one)
    {
        list.Add(one);
        var count = list.Elements().Count();
        list.SetAttributeValue("count", count.ToString(CultureInfo.InvariantCulture));
        return count - 1;
    }

    /// <summary>
    /// The first font is the one that column widths are measured in; the library leaves its own there. It also writes an empty format for the
    /// built-in format 0.
    /// </summary>
    private void Mend()
    {
        var first = _fonts.Elements().FirstOrDefault() ?? throw new InvalidOperationException("The package has no font.");
        first.Element(X("name"))?.SetAttributeValue("val", Look.Font);
        first.Element(X("sz"))?.SetAttributeValue("val", Look.Size);
        if (_root.Element(X("numFmts")) is not { } numbers) return;
        numbers.Elements().Where(f => (string?)f.Attribute("numFmtId") == "0").Remove();
        numbers.SetAttributeValue("count", numbers.Elements().Count());
        if (!numbers.HasElements) numbers.Remove();
    }

    private static XName X(string name) => SheetPart.Namespace + name;
}
