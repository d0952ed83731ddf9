using System.Security.Cryptography;
using System.Text;
using PdfSharp.Pdf;
using PdfSharp.Pdf.IO;

namespace PatternShop.Print;

/// <summary>
/// The one place where a painted document becomes bytes, and those a pure function of what was painted. The library draws
/// its ids, dates and font names from the clock and from chance, and leaves the checksum off compressed streams. So its
/// output is read back into objects, the objects are set right, and a writer of our own puts them down.
/// </summary>
internal static class FinishedFile
{
    public static byte[] Of(PdfDocument painted, FileFacts facts, UsedCharacters used)
    {
        using var raw = new MemoryStream();
        painted.Save(raw, false);
        raw.Position = 0;
        using var document = PdfReader.Open(raw, PdfDocumentOpenMode.Modify);
        var catalog = document.Internals.Catalog;
        DescribeDocument(document, facts);
        FontNames.Settle(document, used);
        return ObjectWriter.Write(catalog, Information(document, facts), Identity);
    }

    // The id of a file is a digest of its objects, so that equal files have equal ids and others do not.
    private static byte[] Identity(ReadOnlySpan<byte> objects) => SHA256.HashData(objects)[..16];

    private static void DescribeDocument(PdfDocument document, FileFacts facts)
    {
        var catalog = document.Internals.Catalog;
        var metadata = new PdfDictionary(document);
        metadata.Elements.SetName("/Type", "/Metadata");
        metadata.Elements.SetName("/Subtype", "/XML");
        metadata.CreateStream(Encoding.UTF8.GetBytes(Xmp.Packet(facts)));
        document.Internals.AddObject(metadata);
        catalog.Elements.SetReference("/Metadata", metadata);
        catalog.Elements.SetString("/Lang", facts.Language);
        catalog.Elements.SetName("/PageLayout", "/SinglePage");
        catalog.Elements.Remove("/PageMode");
        foreach (var page in document.Pages)
        {
            page.Elements.SetName("/Tabs", "/S");
        }
    }

    private static PdfDictionary Information(PdfDocument document, FileFacts facts)
    {
        var information = new PdfDictionary(document);
        information.Elements.SetString("/Title", facts.Title);
        information.Elements.SetString("/Subject", facts.Subject);
        information.Elements.SetString("/Producer", Xmp.Producer);
        document.Internals.AddObject(information);
        return information;
    }
}
