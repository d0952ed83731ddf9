using System.Security.Cryptography;
using System.Text;
using PdfSharp.Pdf;

namespace PatternShop.Print;

/// <summary>
/// The one place where a painted document becomes bytes, and those a pure function of what was painted. The library draws ids and dates
/// from the clock and from chance and leaves the checksum off compressed streams: so its objects are taken, not its file, and a writer
/// of our own puts down those that belong to the document.
/// </summary>
internal static class FinishedFile
{
    /// <param name="document">Owns all objects.</param>
    /// <param name="facts">What the file says of itself.</param>
    /// <param name="painted">The pages, the structure and the bookmarks.</param>
    public static byte[] Of(PdfDocument document, FileFacts facts, (PdfDictionary Pages, PdfDictionary Structure, PdfDictionary? Bookmarks) painted)
    {
        var catalog = new PdfDictionary(document);
        catalog.Elements.SetName("/Type", "/Catalog");
        catalog.Elements.SetReference("/Pages", painted.Pages);
        catalog.Elements.SetReference("/StructTreeRoot", painted.Structure);
        catalog.Elements["/MarkInfo"] = True(document, "/Marked");
        catalog.Elements["/ViewerPreferences"] = True(document, "/DisplayDocTitle");
        if (painted.Bookmarks is not null)
        {
            catalog.Elements.SetReference("/Outlines", painted.Bookmarks);
        }

        catalog.Elements.SetString("/Lang", facts.Language);
        catalog.Elements.SetName("/PageLayout", "/SinglePage");
        catalog.Elements.SetReference("/Metadata", Metadata(document, facts));
        return ObjectWriter.Write(catalog, Information(document, facts), Identity);
    }

    // The id of a file is a digest of its objects, so that equal files have equal ids and others do not.
    private static byte[] Identity(ReadOnlySpan<byte> objects) => SHA256.HashData(objects)[..16];

    private static PdfDictionary True(PdfDocument document, string name)
    {
        var dictionary = new PdfDictionary(document);
        dictionary.Elements.SetBoolean(name, true);
        return dictionary;
    }

    private static PdfDictionary Metadata(PdfDocument document, FileFacts facts)
    {
        var metadata = new PdfDictionary(document);
        metadata.Elements.SetName("/Type", "/Metadata");
        metadata.Elements.SetName("/Subtype", "/XML");
        metadata.CreateStream(Encoding.UTF8.GetBytes(Xmp.Packet(facts)));
        document.Internals.AddObject(metadata);
        return metadata;
    }

    private static PdfDictionary Information(PdfDocument document, FileFacts facts)
    {
        var information = new PdfDictionary(document);
        information.Elements.SetString("/Title", facts.Title);
        information.Elements.SetString("/Subject", facts.Subject);
        information.Elements.SetString("/Producer", Xmp.Producer);
        return information;
    }
}
