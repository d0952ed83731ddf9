using System.Buffers.Binary;
using System.IO.Compression;
using System.Text;
using System.Xml.Linq;
using PatternShop.Weave;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Graphics.Operations;
using UglyToad.PdfPig.Graphics.Operations.MarkedContent;
using UglyToad.PdfPig.Graphics.Operations.TextObjects;
using UglyToad.PdfPig.Tokens;
using Xunit;

namespace PatternShop.Print.Tests;

/// <summary>The file as strict readers see it: qpdf, poppler and PdfPig, none of which has a part in writing it.</summary>
public sealed class FinishedFileTests
{
    private static readonly XNamespace Rdf = "http://www.w3.org/1999/02/22-rdf-syntax-ns#";

    public static TheoryData<string> Names { get; } = new(Samples.Names.Append("many scripts").Append("large").Concat(EveryEdition.All.Keys));

    [Theory]
    [MemberData(nameof(Names))]
    public void Strict_readers_find_nothing_to_complain_about(string name)
    {
        var (said, code) = OutsideTool.Run("PATTERNSHOP_QPDF", "qpdf", FileOf(name), "--check", "FILE");
        Assert.Equal(0, code);
        Assert.DoesNotContain("WARNING", said, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("No syntax or stream encoding errors found", said, StringComparison.Ordinal);
    }

    [Fact]
    public void A_damaged_page_would_be_found()
    {
        var file = FileOf("many scripts");
        var text = Encoding.Latin1.GetString(file);
        var compressed = text.IndexOf("/FlateDecode", StringComparison.Ordinal);
        // the head of what is packed
        file[text.IndexOf("stream\n", compressed, StringComparison.Ordinal) + "stream\n".Length] ^= 0x55;
        Assert.NotEqual(0, OutsideTool.Run("PATTERNSHOP_QPDF", "qpdf", file, "--check", "FILE").Code);
    }

    /// <summary>Readers differ in how much they mind, so it is looked at here: a zlib stream ends with the Adler-32 of its content (RFC 1950).</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void Every_compressed_stream_ends_with_its_checksum(string name)
    {
        using var file = PdfDocument.Open(FileOf(name));
        var streams = file.Structure.CrossReferenceTable.ObjectOffsets.Keys
            .Select(reference => file.Structure.GetObject(reference).Data)
            .OfType<StreamToken>()
            .Where(stream => stream.StreamDictionary.ContainsKey(NameToken.Filter))
            .ToList();
        Assert.True(streams.Count > file.NumberOfPages);
        Assert.All(streams, stream => Assert.True(EndsWithChecksum(stream.Data.Span)));
    }

    [Fact]
    public void A_wrong_or_missing_checksum_would_be_seen()
    {
        using var packed = new MemoryStream();
        using (var zlib = new ZLibStream(packed, CompressionLevel.Optimal, true))
        {
            zlib.Write("over 2, under 2, over 2, under 2"u8);
        }

        var bytes = packed.ToArray();
        Assert.True(EndsWithChecksum(bytes));
        Assert.False(EndsWithChecksum(bytes.AsSpan(0, bytes.Length - 4)));
        bytes[^1] ^= 1;
        Assert.False(EndsWithChecksum(bytes));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_font_is_embedded_as_a_subset_and_maps_to_unicode(string name)
    {
        var (said, code) = OutsideTool.Run("PATTERNSHOP_PDFFONTS", "pdffonts", FileOf(name), "FILE");
        Assert.Equal(0, code);
        var fonts = said.Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(2).ToList();
        Assert.NotEmpty(fonts);
        Assert.All(fonts, font => Assert.Matches(@"^[A-Z]{6}\+\S+ +CID TrueType +Identity-H +yes yes yes ", font));
    }

    /// <summary>ISO 32000-1, table 122: below the baseline is negative.</summary>
    [Fact]
    public void Fonts_descend_below_the_baseline()
    {
        using var file = PdfDocument.Open(FileOf("many scripts"));
        var descriptors = file.Structure.CrossReferenceTable.ObjectOffsets.Keys.Select(reference => file.Structure.GetObject(reference).Data).OfType<DictionaryToken>()
            .Where(token => token.TryGet(NameToken.Create("Descent"), out _)).ToList();
        Assert.Equal(3, descriptors.Count);
        Assert.All(descriptors, descriptor => Assert.True(((NumericToken)descriptor.Data["Descent"]).Double < 0));
    }

    [Fact]
    public void The_file_says_what_it_is()
    {
        using var file = PdfDocument.Open(FileOf("many scripts"));
        var catalog = file.Structure.Catalog.CatalogDictionary;
        Assert.Equal("en", Text(catalog, "Lang"));
        Assert.Equal(Samples.ManyScripts.Title, file.Information.Title);
        Assert.True(((BooleanToken)Inner(file, catalog, "MarkInfo").Data["Marked"]).Data);
        Assert.True(((BooleanToken)Inner(file, catalog, "ViewerPreferences").Data["DisplayDocTitle"]).Data);
        Assert.All(file.GetPages(), page => Assert.Equal("S", ((NameToken)page.Dictionary.Data["Tabs"]).Data));
        Assert.Null(file.Information.CreationDate);
        Assert.Null(file.Information.ModifiedDate);
    }

    [Fact]
    public void The_metadata_names_title_language_version_licence_and_the_standard()
    {
        using var file = PdfDocument.Open(FileOf("many scripts"));
        Assert.True(file.TryGetXmpMetadata(out var metadata));
        var xmp = XDocument.Parse(Encoding.UTF8.GetString(metadata.GetXmlBytes()));
        string Value(string name) => xmp.Descendants().Single(element => element.Name.LocalName == name).Value;
        Assert.Equal("1", xmp.Descendants(XName.Get("part", "http://www.aiim.org/pdfua/ns/id/")).Single().Value);
        Assert.Equal(Samples.ManyScripts.Title, xmp.Descendants(XName.Get("title", "http://purl.org/dc/elements/1.1/")).Descendants(Rdf + "li").Single().Value);
        Assert.Equal("en", Value("language"));
        Assert.Equal("Version: not issued", Value("identifier"));
        Assert.Equal(Samples.ManyScripts.Licence, Value("rights"));
        Assert.DoesNotContain(xmp.Descendants(), element => element.Name.LocalName.EndsWith("Date", StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Marked_content_and_text_objects_are_nested_properly(string name)
    {
        using var file = PdfDocument.Open(FileOf(name));
        Assert.All(file.GetPages(), page => Assert.Null(NestingFault(page.Operations)));
    }

    [Fact]
    public void Improper_nesting_would_be_seen() => Assert.NotNull(NestingFault([BeginText.Value, new BeginMarkedContent(NameToken.Create("P")), EndText.Value, EndMarkedContent.Value]));

    [Theory]
    [MemberData(nameof(Names))]
    public void Everything_painted_is_tagged_or_decoration(string name)
    {
        using var file = PdfDocument.Open(FileOf(name));
        Assert.All(file.GetPages(), page => Assert.Null(UnmarkedPainting(page.Operations)));
    }

    private static readonly System.Collections.Concurrent.ConcurrentDictionary<string, Lazy<byte[]>> Made = new(StringComparer.Ordinal);

    // made once for all that look at it; each gets its own copy
    private static byte[] FileOf(string name) => [.. Made.GetOrAdd(name, _ => new Lazy<byte[]>(() => MakeFile(name))).Value];

    private static byte[] MakeFile(string name) => EveryEdition.All.TryGetValue(name, out var edition) ? edition() : Samples.Print(name switch
    {
        "many scripts" => Samples.ManyScripts,
        "large" => Samples.Large,
        _ => Samples.All[name],
    });

    private static bool EndsWithChecksum(ReadOnlySpan<byte> packed)
    {
        using var content = new DeflateStream(new MemoryStream(packed[2..].ToArray()), CompressionMode.Decompress);
        var (a, b) = (1u, 0u);
        for (var value = content.ReadByte(); value >= 0; value = content.ReadByte())
        {
            a = (a + (uint)value) % 65_521;
            b = (b + a) % 65_521;
        }

        return BinaryPrimitives.ReadUInt32BigEndian(packed[^4..]) == ((b << 16) | a);
    }

    private static string? NestingFault(IReadOnlyList<IGraphicsStateOperation> operations)
    {
        var open = new Stack<string>();
        foreach (var operation in operations)
        {
            switch (operation.Operator)
            {
                case "BT" or "BDC" or "BMC":
                    open.Push(operation.Operator == "BT" ? "ET" : "EMC");
                    break;
                case "ET" or "EMC" when open.Count == 0 || open.Pop() != operation.Operator:
                    return $"{operation.Operator} where it does not belong";
            }
        }

        return open.Count == 0 ? null : $"{open.Peek()} is missing";
    }

    private static string? UnmarkedPainting(IReadOnlyList<IGraphicsStateOperation> operations)
    {
        string[] painting = ["Tj", "TJ", "'", "\"", "f", "F", "f*", "B", "B*", "b", "b*", "s", "S", "Do", "sh"];
        var depth = 0;
        foreach (var operation in operations)
        {
            depth += operation.Operator switch { "BDC" or "BMC" => 1, "EMC" => -1, _ => 0 };
            if (depth == 0 && painting.Contains(operation.Operator, StringComparer.Ordinal))
            {
                return $"{operation.Operator} outside of marked content";
            }
        }

        return null;
    }

    private static DictionaryToken Inner(PdfDocument file, DictionaryToken from, string name) =>
        (DictionaryToken)(from.Data[name] is IndirectReferenceToken reference ? file.Structure.GetObject(reference.Data).Data : from.Data[name]);

    private static string Text(DictionaryToken from, string name) => from.Data[name] switch
    {
        HexToken text => text.Data,
        StringToken text => text.Data,
        var other => throw new InvalidOperationException($"{other} is no text."),
    };
}
