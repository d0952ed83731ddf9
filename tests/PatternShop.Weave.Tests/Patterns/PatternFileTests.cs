using System.Globalization;
using System.Text;
using CsCheck;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class PatternFileTests
{
    private static readonly PatternDocument Diamond = new(
        "Diamond \"A\"",
        "en",
        "Free to weave",
        "One line\nand another",
        GridText.Read("x..x", ".xx."),
        new WidthPlan(3, 2, 1, new FloatingSelvedges(EdgeWay.Entering, Stroke.Over)),
        new RowPlan(
            [new Weft(Side.Right), new Weft(Side.Left)],
            Stroke.Over,
            [
                new EdgeStitch("twining", StitchYarn.Own, 1, Side.Right, 1),
                new Repeat(2, [new ChartRows(2, 1, 1), new PlainRows(3, 2)]),
                new EdgeStitch("hemming", StitchYarn.Working, 2, Side.Left, 2),
            ]),
        new Gauge(new Density(4, DensityUnit.PerInch), new Density(17.5m, DensityUnit.PerTenCentimetres)),
        GlyphStyle.Bars)
    {
        RowWords = [new RowWords(1, "Beat gently"), new RowWords(2, "The edge\nagain")],
        Videos = [new Video("https://films.example/a?b=1", "How the row begins", 2), new Video("https://films.example/", "All of it", null)],
        Photos = [new Photo("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", "The woven sample", null)],
        Limits = new Limits(3, new Length(0.5m, LengthUnit.Inch)),
        Cloth = new ClothLook(
            new YarnLook(new Thickness(2.5m, ThicknessUnit.Millimetres), "white"),
            [YarnLook.Plain, new YarnLook(new Thickness(12, ThicknessUnit.WrapsPerInch), null)],
            [new ColourRun(6, "blue"), new ColourRun(2, "white")],
            [new ColourRun(1, "sea"), new ColourRun(3, "dark blue")],
            [new OwnColour("sea", new Rgb(0x3A, 0x6B, 0x7E))]),
    };

    [Fact]
    public void The_canonical_form_is_written_as_it_is_documented() => Assert.Equal(
        """
        {"cloth":{"colours":[{"name":"sea","value":"#3a6b7e"}],"ends":"6 blue, 2 white","rows":"1 sea, 3 dark blue",
        "warp":{"colour":"white","thickness":{"amount":"2.5","unit":"mm"}},"wefts":[{},{"thickness":{"amount":"12","unit":"wraps per in"}}]},
        "format":4,"gauge":{"rows":{"amount":"17.5","unit":"10 cm"},"sett":{"amount":"4","unit":"in"}},"glyphs":"bars","language":"en",
        "licence":"Free to weave","limits":{"length":{"amount":"0.5","unit":"in"},"threads":3},"motif":["x..x",".xx."],"notes":"One line\nand another",
        "photos":[{"caption":"The woven sample","hash":"ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"}],
        "rowWords":[{"row":1,"text":"Beat gently"},{"row":2,"text":"The edge\nagain"}],"rows":{"firstPlain":"over","steps":[
        {"across":1,"from":"right","name":"twining","step":"stitch","yarn":"own"},
        {"step":"repeat","steps":[{"first":2,"last":1,"step":"chart","weft":1},{"count":3,"step":"plain","weft":2}],"times":2},
        {"across":2,"name":"hemming","step":"stitch","weft":2,"yarn":"working"}],"wefts":[{"start":"right"},{"start":"left"}]},
        "title":"Diamond \"A\"",
        "videos":[{"address":"https://films.example/a?b=1","caption":"How the row begins","row":2},{"address":"https://films.example/","caption":"All of it"}],
        "width":{"balance":1,"floating":{"edges":"entering","first":"over"},"offset":2,"repeats":3}}
        """.ReplaceLineEndings(""),
        Encoding.UTF8.GetString(PatternWriter.CanonicalBytes(Diamond)));

    [Fact]
    public void The_form_for_people_is_indented_in_the_order_of_the_readme() => Assert.Equal(
        """
        {
          "format": 4,
          "title": "Diamond \"A\"",
          "language": "en",
          "licence": "Free to weave",
          "notes": "One line\nand another",
          "rowWords": [
            {"row": 1, "text": "Beat gently"},
            {"row": 2, "text": "The edge\nagain"}
          ],
          "videos": [
            {"address": "https://films.example/a?b=1", "caption": "How the row begins", "row": 2},
            {"address": "https://films.example/", "caption": "All of it"}
          ],
          "photos": [
            {"hash": "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", "caption": "The woven sample"}
          ],
          "motif": [
            "x..x",
            ".xx."
          ],
          "width": {
            "repeats": 3,
            "offset": 2,
            "balance": 1,
            "floating": {"edges": "entering", "first": "over"}
          },
          "rows": {
            "wefts": [
              {"start": "right"},
              {"start": "left"}
            ],
            "firstPlain": "over",
            "steps": [
              {"step": "stitch", "name": "twining", "yarn": "own", "across": 1, "from": "right"},
              {
                "step": "repeat",
                "times": 2,
                "steps": [
                  {"step": "chart", "first": 2, "last": 1, "weft": 1},
                  {"step": "plain", "count": 3, "weft": 2}
                ]
              },
              {"step": "stitch", "name": "hemming", "yarn": "working", "across": 2, "weft": 2}
            ]
          },
          "gauge": {
            "sett": {"amount": "4", "unit": "in"},
            "rows": {"amount": "17.5", "unit": "10 cm"}
          },
          "limits": {
            "threads": 3,
            "length": {"amount": "0.5", "unit": "in"}
          },
          "cloth": {
            "colours": [
              {"name": "sea", "value": "#3a6b7e"}
            ],
            "warp": {
              "thickness": {"amount": "2.5", "unit": "mm"},
              "colour": "white"
            },
            "wefts": [
              {},
              {
                "thickness": {"amount": "12", "unit": "wraps per in"}
              }
            ],
            "ends": "6 blue, 2 white",
            "rows": "1 sea, 3 dark blue"
          },
          "glyphs": "bars"
        }

        """,
        Encoding.UTF8.GetString(PatternWriter.ReadableBytes(Diamond)));

    // FIPS 180-2, appendix B.1, the message "abc" (from memory, and agreed by coreutils sha256sum)
    [Fact]
    public void The_hash_is_sha256_in_lower_case() =>
        Assert.Equal("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", PatternWriter.Hash("abc"u8));

    [Fact]
    public void What_is_left_out_has_the_documented_default()
    {
        const string json = """
            {"format":4,"title":"T","motif":["x.",".x","xx"],"width":{"repeats":1},
             "gauge":{"sett":{"amount":"4.50","unit":"cm"},"rows":{"amount":"10","unit":"in"}}}
            """;
        Assert.Equal(
            new PatternDocument(
                "T",
                "en",
                "",
                "",
                GridText.Read("x.", ".x", "xx"),
                new WidthPlan(1, 0, 0, null),
                new RowPlan([new Weft(Side.Left)], Stroke.Under, [new ChartRows(1, 3, 1)]),
                new Gauge(new Density(4.5m, DensityUnit.PerCentimetre), new Density(10, DensityUnit.PerInch)),
                GlyphStyle.Cells),
            Read(json));
    }

    [Fact]
    public void Steps_have_the_documented_defaults()
    {
        var rows = ReadRows("""
            "rows":{"steps":[{"step":"chart","first":1,"last":1},{"step":"plain","count":2},
              {"step":"stitch","name":"s","yarn":"own","across":1},{"step":"stitch","name":"s","yarn":"working","across":1}]}
            """);
        Assert.Equal(
            new RowPlan(
                [new Weft(Side.Left)],
                Stroke.Under,
                [
                    new ChartRows(1, 1, 1),
                    new PlainRows(2, 1),
                    new EdgeStitch("s", StitchYarn.Own, 1, Side.Left, 1),
                    new EdgeStitch("s", StitchYarn.Working, 1, Side.Left, 1),
                ]),
            rows);
    }

    [Fact]
    public void A_byte_order_mark_is_passed_over() =>
        Assert.Equal(new ReadResult.Read(Diamond, 4), PatternReader.Read([0xEF, 0xBB, 0xBF, .. PatternWriter.CanonicalBytes(Diamond)]));

    [Fact]
    public void Reading_what_was_written_gives_the_same_document() =>
        DocumentGen.Documents.Sample(
            document =>
            {
                Assert.Equal(new ReadResult.Read(document, PatternWriter.Format), PatternReader.Read(PatternWriter.CanonicalBytes(document)));
                Assert.Equal(new ReadResult.Read(document, PatternWriter.Format), PatternReader.Read(PatternWriter.ReadableBytes(document)));
            },
            iter: Effort.Of(2_000, 50_000));

    [Fact]
    public void Generated_documents_keep_every_rule() =>
        DocumentGen.Documents.Sample(document => Assert.Equal([], DocumentRules.Check(document)), iter: Effort.Of(2_000, 50_000));

    /// <summary>Pairs differ in one part, or in nothing but having been built twice.</summary>
    [Fact]
    public void Canonical_bytes_are_equal_exactly_when_documents_are()
    {
        var (same, other) = (0, 0);
        Gen.Select(DocumentGen.Documents, DocumentGen.Documents, Gen.Int[0, 23]).SampleFixed(
            made =>
            {
                var (one, two, part) = made;
                var changed = WithPartOf(one, two, part);
                var bytesEqual = PatternWriter.CanonicalBytes(one).AsSpan().SequenceEqual(PatternWriter.CanonicalBytes(changed));
                Assert.Equal(one.Equals(changed), bytesEqual);
                Assert.True(!bytesEqual || one.GetHashCode() == changed.GetHashCode(), "equal documents have equal hash codes");
                _ = bytesEqual ? Interlocked.Increment(ref same) : Interlocked.Increment(ref other);
            },
            Effort.Of(4_000, 100_000));
        Assert.True(same > other / 20 && other > same / 20, $"{same} same, {other} other");
    }

    [Fact]
    public void Amounts_typed_with_other_zeros_are_the_same_document()
    {
        var typed = Encoding.UTF8.GetString(PatternWriter.CanonicalBytes(Diamond)).Replace("\"17.5\"", "\"017.5000\"", StringComparison.Ordinal);
        Assert.Equal(Diamond, Read(typed));
        var scaled = Diamond with { Gauge = Diamond.Gauge with { Rows = Diamond.Gauge.Rows with { Amount = 17.5000m } } };
        Assert.Equal(Diamond, scaled);
        Assert.Equal("17.5", scaled.Gauge.Rows.Amount.ToString(CultureInfo.InvariantCulture));
        Assert.Equal("400", new Density(400.00m, DensityUnit.PerInch).Amount.ToString(CultureInfo.InvariantCulture));
        Assert.Equal(PatternWriter.CanonicalBytes(Diamond), PatternWriter.CanonicalBytes(scaled));
    }

    [Fact]
    public void Format_1_is_brought_up_to_the_current_one()
    {
        const string json = """
            {"format":1,"title":"T","motif":["x."],"width":{"repeats":1},
             "rows":{"start":"right","steps":[{"step":"chart","first":1,"last":1},{"step":"repeat","times":2,"steps":[{"step":"plain","count":1,"weft":3}]}]},
             "gauge":{"sett":{"amount":"4","unit":"in"},"rows":{"amount":"4","unit":"in"}}}
            """;
        var read = Assert.IsType<ReadResult.Read>(PatternReader.Read(Encoding.UTF8.GetBytes(json)));
        Assert.Equal(1, read.Format);
        Assert.Equal([new Weft(Side.Right), new Weft(Side.Right), new Weft(Side.Right)], read.Document.Rows.Wefts);
        Assert.Equal(new Repeat(2, [new PlainRows(1, 3)]), read.Document.Rows.Steps[1]);
    }

    [Theory]
    [InlineData("""{"format":1,"title":"T","motif":["x."],"width":{"repeats":1},"gauge":G}""", 1, Side.Left)]
    [InlineData("""{"format":1,"title":"T","motif":["x."],"width":{"repeats":1},"rows":{},"gauge":G}""", 1, Side.Left)]
    [InlineData("""{"format":1,"title":"T","motif":["x."],"width":{"repeats":1},"rows":{"start":"right"},"gauge":G}""", 1, Side.Right)]
    public void Format_1_without_a_plan_has_one_weft(string json, int wefts, Side start)
    {
        var document = Read(json.Replace("G", """{"sett":{"amount":"4","unit":"in"},"rows":{"amount":"4","unit":"in"}}""", StringComparison.Ordinal));
        Assert.Equal(Enumerable.Repeat(new Weft(start), wefts), document.Rows.Wefts);
    }

    /// <summary>What format 3 could say means the same in format 4, and its bytes differ by the number and the one new member alone.</summary>
    [Fact]
    public void Format_3_is_brought_up_to_the_current_one() => DocumentGen.Documents.Sample(
        document =>
        {
            var plain = document with { Cloth = ClothLook.Plain, AfterChart = AfterChart.All };
            var canonical = Encoding.UTF8.GetString(PatternWriter.CanonicalBytes(plain));
            Assert.StartsWith("{\"cloth\":null,\"format\":4,", canonical, StringComparison.Ordinal);
            var third = "{\"format\":3," + canonical["{\"cloth\":null,\"format\":4,".Length..];
            Assert.Equal(new ReadResult.Read(plain, 3), PatternReader.Read(Encoding.UTF8.GetBytes(third)));
        },
        iter: Effort.Of(500, 10_000));

    [Theory]
    [InlineData("6 blue, 2 white", "6 blue, 2 white")]
    [InlineData("  6   Blue ,2 WHITE,", "6 blue, 2 white")]
    [InlineData("dark  blue; 3 cream\n2red", "1 dark blue, 3 cream, 2 red")]
    [InlineData(" ", "")]
    public void Orders_are_read_as_makers_write_them(string typed, string written)
    {
        var read = ColourOrder.Read(typed);
        Assert.Null(read.What);
        Assert.Equal(written, ColourOrder.Text(read.Runs));
    }

    [Theory]
    [InlineData("6 blue, 2", "Part 2 of the order is \"2\", which is not a count and a colour.")]
    [InlineData("6 blue,, 2 white", "Part 2 of the order is \"\", which is not a count and a colour.")]
    [InlineData("6.5 blue", "Part 1 of the order is \"6.5 blue\", which is not a count and a colour.")]
    [InlineData("99999999999 blue", "Part 1 of the order is \"99999999999 blue\", which is not a count and a colour.")]
    [InlineData("6 blue (2 white)", "Part 1 of the order is \"6 blue (2 white)\", which is not a count and a colour.")]
    public void An_order_that_cannot_be_read_is_refused_with_its_part(string typed, string what)
    {
        var read = ColourOrder.Read(typed);
        Assert.Equal((what, "Write counts and colours with commas between, such as \"6 blue, 2 white\"."), (read.What, read.Remedy));
        Assert.Empty(read.Runs);
    }

    /// <summary>What was written before there was a choice keeps its bytes, and says that everything is printed.</summary>
    [Fact]
    public void What_is_printed_after_the_chart_is_written_only_where_something_is_left_out()
    {
        var all = Encoding.UTF8.GetString(PatternWriter.CanonicalBytes(Diamond));
        Assert.DoesNotContain("afterChart", all, StringComparison.Ordinal);
        Assert.Equal(AfterChart.All, Read(all).AfterChart);
        var some = Diamond with { AfterChart = new AfterChart(false, true, false) };
        var written = Encoding.UTF8.GetString(PatternWriter.CanonicalBytes(some));
        Assert.Equal("{\"afterChart\":{\"makingUp\":false,\"notes\":false}," + all[1..], written);
        Assert.Equal(some, Read(written));
        Assert.Equal(Diamond, Read(written.Replace("false", "true", StringComparison.Ordinal)));
        Assert.Equal(Diamond, Read(written.Replace("\"makingUp\":false,\"notes\":false", "", StringComparison.Ordinal)));
        Assert.Contains("\"afterChart\": {\"makingUp\": false, \"notes\": false}", Encoding.UTF8.GetString(PatternWriter.ReadableBytes(some)), StringComparison.Ordinal);
    }

    /// <summary>What format 2 could say means the same in later formats.</summary>
    [Fact]
    public void Format_2_is_brought_up_to_the_current_one() => DocumentGen.Documents.Sample(
        document =>
        {
            var plain = document with { RowWords = [], Videos = [], Photos = [], Limits = null, Cloth = ClothLook.Plain, AfterChart = AfterChart.All };
            var second = Encoding.UTF8.GetString(PatternWriter.CanonicalBytes(plain))
                .Replace("{\"cloth\":null,\"format\":4,", "{\"format\":2,", StringComparison.Ordinal)
                .Replace("\"limits\":null,", "", StringComparison.Ordinal)
                .Replace("\"photos\":[],\"rowWords\":[],", "", StringComparison.Ordinal)
                .Replace("\"videos\":[],", "", StringComparison.Ordinal);
            Assert.Equal(new ReadResult.Read(plain, 2), PatternReader.Read(Encoding.UTF8.GetBytes(second)));
        },
        iter: Effort.Of(500, 10_000));

    [Theory]
    [InlineData("https://films.example/a", "films.example")]
    [InlineData("HTTPS://Films.Example?x", "films.example")]
    [InlineData("https://a.b-c.example#t=3", "a.b-c.example")]
    [InlineData("https://films.example@other.example/", "")]
    public void The_host_of_a_video_is_what_readers_are_shown(string address, string host) => Assert.Equal(host, new Video(address, "v", null).Host);

    private static PatternDocument Read(string json) => Assert.IsType<ReadResult.Read>(PatternReader.Read(Encoding.UTF8.GetBytes(json))).Document;

    private static RowPlan ReadRows(string rows) => Read(
        """
        {"format":4,"title":"T","motif":["x."],"width":{"repeats":1},ROWS,
         "gauge":{"sett":{"amount":"4","unit":"in"},"rows":{"amount":"4","unit":"in"}}}
        """.Replace("ROWS", rows, StringComparison.Ordinal)).Rows;

    private static PatternDocument WithPartOf(PatternDocument one, PatternDocument two, int part) => part switch
    {
        0 => one with { Title = two.Title },
        1 => one with { Language = two.Language },
        2 => one with { Licence = two.Licence },
        3 => one with { Notes = two.Notes },
        4 => one with { Motif = BitGrid.Create(one.Motif.Rows, one.Motif.Columns, (row, end) => two.Motif[row % two.Motif.Rows, end % two.Motif.Columns]) },
        5 => one with { Width = one.Width with { Repeats = two.Width.Repeats } },
        6 => one with { Width = one.Width with { Offset = two.Width.Offset } },
        7 => one with { Width = one.Width with { Balance = two.Width.Balance } },
        8 => one with { Width = one.Width with { Floating = two.Width.Floating } },
        9 => one with { Rows = one.Rows with { Wefts = two.Rows.Wefts } },
        10 => one with { Rows = one.Rows with { FirstPlain = two.Rows.FirstPlain } },
        11 => one with { Rows = one.Rows with { Steps = two.Rows.Steps } },
        12 => one with { Gauge = one.Gauge with { Sett = two.Gauge.Sett } },
        13 => one with { Gauge = one.Gauge with { Rows = one.Gauge.Rows with { Unit = two.Gauge.Rows.Unit } } },
        14 => one with { Glyphs = two.Glyphs },
        15 => one with { RowWords = two.RowWords },
        16 => one with { Videos = two.Videos },
        17 => one with { Photos = two.Photos },
        18 => one with { Limits = two.Limits },
        19 => one with { Cloth = two.Cloth },
        20 => one with { Cloth = one.Cloth with { Ends = two.Cloth.Ends } },
        21 => one with { Rows = one.Rows with { Steps = one.Rows.Steps.Select(Unruly).ToSequence() } },
        _ => one with { Motif = one.Motif.Transpose().Transpose(), Rows = one.Rows with { Steps = one.Rows.Steps.ToArray().ToSequence() } },
    };

    // breaks the rules on purpose: the law holds of every document that can be made
    private static RowStep Unruly(RowStep step) => step is EdgeStitch { Yarn: StitchYarn.Own } stitch ? stitch with { Weft = 2 } : step;
}
