using System.Xml.Linq;

namespace PatternShop.Print;

/// <summary>The file's description of itself in XMP (ISO 16684-1), with the mark of ISO 14289-1.</summary>
internal static class Xmp
{
    public const string Producer = "PatternShop";

    private static readonly XNamespace Meta = "adobe:ns:meta/";
    private static readonly XNamespace Rdf = "http://www.w3.org/1999/02/22-rdf-syntax-ns#";
    private static readonly XNamespace Dc = "http://purl.org/dc/elements/1.1/";
    private static readonly XNamespace Pdf = "http://ns.adobe.com/pdf/1.3/";
    private static readonly XNamespace Rights = "http://ns.adobe.com/xap/1.0/rights/";
    private static readonly XNamespace Accessibility = "http://www.aiim.org/pdfua/ns/id/";

    /// <summary>The packet, without a date: a date would make equal documents differ.</summary>
    public static string Packet(FileFacts facts)
    {
        var description = new XElement(
            Rdf + "Description",
            new XAttribute(Rdf + "about", string.Empty),
            new XAttribute(XNamespace.Xmlns + "dc", Dc),
            new XAttribute(XNamespace.Xmlns + "pdf", Pdf),
            new XAttribute(XNamespace.Xmlns + "xmpRights", Rights),
            new XAttribute(XNamespace.Xmlns + "pdfuaid", Accessibility),
            new XElement(Accessibility + "part", 1),
            new XElement(Dc + "format", "application/pdf"),
            new XElement(Dc + "title", Alternative(facts.Title)),
            new XElement(Dc + "description", Alternative(facts.Subject)),
            new XElement(Dc + "language", new XElement(Rdf + "Bag", new XElement(Rdf + "li", facts.Language))),
            new XElement(Dc + "identifier", Clean(facts.Version)),
            new XElement(Pdf + "Producer", Producer));
        if (facts.Licence.Length > 0)
        {
            description.Add(new XElement(Dc + "rights", Alternative(facts.Licence)), new XElement(Rights + "UsageTerms", Alternative(facts.Licence)));
        }

        var root = new XElement(
            Meta + "xmpmeta",
            new XAttribute(XNamespace.Xmlns + "x", Meta),
            new XElement(Rdf + "RDF", new XAttribute(XNamespace.Xmlns + "rdf", Rdf), description));
        return $"<?xpacket begin=\"\uFEFF\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n{root.ToString(SaveOptions.DisableFormatting)}\n<?xpacket end=\"w\"?>";
    }

    private static XElement Alternative(string text) =>
        new(Rdf + "Alt", new XElement(Rdf + "li", new XAttribute(XNamespace.Xml + "lang", "x-default"), Clean(text)));

    // XML 1.0 knows no control characters and no half surrogates.
    private static string Clean(string text) =>
        string.Concat(text.EnumerateRunes().Select(rune => rune.Value is >= 0x20 and not (0xFFFE or 0xFFFF) or '\t' or '\n' ? rune.ToString() : " "));
}
