using CsCheck;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class DocumentRulesTests
{
    private static readonly Gen<int> AnyNumber = Gen.OneOf(
        Gen.Int[-2, 20], Gen.OneOf(0, 1000, 1001, 100_000, 100_001, int.MinValue, int.MaxValue), Gen.Int[0, 2000]);

    private static readonly Gen<string> AnyText = Gen.OneOf(
        Gen.OneOf("", " ", "a", "en-", "x-1", "a\nb", "a\tb", "\uFFFF", "\u2028", "😀", new string('w', 61), new string('w', 121)),
        Gen.Int[1900, 20_100].Select(length => new string('t', length)));

    private static readonly Gen<Density> AnyDensity =
        Gen.Select(Gen.OneOf(0m, -1m, 0.0001m, 0.00001m, 1000m, 1000.0001m, 4.5m), Gen.OneOf(DensityUnit.PerInch, DensityUnit.PerCentimetre), (amount, unit) => new Density(amount, unit));

    /// <summary>An editor that asks the rules and a reader that reads the file afterwards must never disagree.</summary>
    [Fact]
    public void The_reader_refuses_exactly_what_the_rules_refuse()
    {
        var (kept, broken) = (0, 0);
        Gen.Select(Spoilt, Spoilt).SelectMany(pair => Gen.OneOf(pair.Item1, pair.Item2 with { Motif = pair.Item1.Motif })).SampleFixed(
            document =>
            {
                var expected = DocumentRules.Check(document).Select(problem => (problem.Code, problem.Pointer));
                var read = PatternReader.Read(PatternWriter.CanonicalBytes(document));
                var actual = read is ReadResult.Refused refused ? refused.Problems.Select(problem => (problem.Code, problem.Pointer)) : [];
                Assert.Equal(expected.Order(), actual.Order());
                Assert.True(read is not ReadResult.Read good || good.Document == document, "reading gives the document back");
                _ = read is ReadResult.Read ? Interlocked.Increment(ref kept) : Interlocked.Increment(ref broken);
            },
            Effort.Of(4_000, 100_000));
        Assert.True(kept > broken / 20 && broken > kept / 20, $"{kept} kept, {broken} broken");
    }

    [Fact]
    public void Half_a_pair_of_surrogates_is_refused()
    {
        var document = DocumentGen.Documents.Single() with { Title = "a" + '\uD83D', Notes = '\uDE00' + "b" };
        Assert.Equal(
            [("text-character", "/title"), ("text-character", "/notes")],
            DocumentRules.Check(document).Select(problem => (problem.Code, problem.Pointer)));
    }

    [Fact]
    public void Lines_are_not_known_without_a_file() =>
        Assert.All(DocumentRules.Check(DocumentGen.Documents.Single() with { Title = "", Language = "" }), problem => Assert.Equal((0, 0), (problem.Line, problem.Column)));

    /// <summary>Every bound itself is allowed.</summary>
    [Fact]
    public void The_largest_document_is_read()
    {
        var steps = Enumerable.Repeat<SimpleStep>(new EdgeStitch("s", StitchYarn.Own, Bounds.Across, Side.Left, 1), Bounds.Steps - 3).ToSequence();
        var document = new PatternDocument(
            new string('T', Bounds.Title),
            "en",
            new string('L', Bounds.Licence),
            new string('N', Bounds.Notes),
            BitGrid.Create(Bounds.MotifRows, Bounds.MotifEnds, (row, end) => (row + end) % 3 == 0),
            new WidthPlan(1, Bounds.MotifEnds - 1, 0, null),
            new RowPlan(
                Enumerable.Repeat(new Weft(Side.Right), Bounds.Wefts).ToSequence(),
                Stroke.Over,
                [new Repeat(Bounds.PieceRows / Bounds.MotifRows, [new ChartRows(Bounds.MotifRows, 1, Bounds.Wefts)]), new Repeat(100, steps)]),
            new Gauge(new Density(Bounds.Density, DensityUnit.PerInch), new Density(0.0001m, DensityUnit.PerInch)),
            GlyphStyle.Cells)
        {
            RowWords = Enumerable.Range(1, Bounds.MotifRows).Select(row => new RowWords(row, new string('中', Bounds.RowWords))).ToSequence(),
            Videos = Enumerable.Repeat(new Video("https://" + new string('v', 60) + ".example/" + new string('v', Bounds.VideoAddress - 77), new string('中', Bounds.Caption), 1000), Bounds.Videos).ToSequence(),
            Photos = Enumerable.Range(1, Bounds.Photos).Select(photo => new Photo(new string('a', 61) + (100 + photo), new string('中', Bounds.Caption), 1)).ToSequence(),
            Limits = new Limits(Bounds.LimitThreads, new Length(Bounds.LimitLength, LengthUnit.Centimetre)),
            Cloth = new ClothLook(
                new YarnLook(new Thickness(Bounds.Thickness, ThicknessUnit.WrapsPerInch), LongestName(0)),
                Enumerable.Repeat(new YarnLook(new Thickness(0.0001m, ThicknessUnit.Millimetres), "dark brown"), Bounds.Wefts).ToSequence(),
                Enumerable.Repeat(new ColourRun(Bounds.OrderThreads, "red"), 90).ToSequence(),
                Enumerable.Range(0, 25).Select(at => new ColourRun(1, LongestName(at))).ToSequence(),
                Enumerable.Range(0, Bounds.OwnColours).Select(at => new OwnColour(LongestName(at), default)).ToSequence()),
        };
        Assert.Equal(Bounds.VideoAddress, document.Videos[0].Address.Length);
        Assert.Equal(new ReadResult.Read(document, PatternWriter.Format), PatternReader.Read(PatternWriter.CanonicalBytes(document)));
        Assert.Equal(new ReadResult.Read(document, PatternWriter.Format), PatternReader.Read(PatternWriter.ReadableBytes(document)));
    }

    private static string LongestName(int at) => new string('ß', Bounds.ColourName - 3) + (100 + at);

    private static Gen<PatternDocument> Spoilt { get; } =
        from document in DocumentGen.Documents
        from part in Gen.Int[0, 27]
        from number in AnyNumber
        from text in AnyText
        from density in AnyDensity
        select Spoil(document, part, number, text, density);

    private static PatternDocument Spoil(PatternDocument d, int part, int number, string text, Density density) => part switch
    {
        0 => d with { Title = text },
        1 => d with { Language = text },
        2 => d with { Licence = text },
        3 => d with { Notes = text },
        4 => d with { Width = d.Width with { Repeats = number } },
        5 => d with { Width = d.Width with { Offset = number } },
        6 => d with { Width = d.Width with { Balance = number } },
        7 => d with { Gauge = d.Gauge with { Sett = density } },
        8 => d with { Gauge = d.Gauge with { Rows = density } },
        9 => d with { Rows = d.Rows with { Wefts = d.Rows.Wefts.Skip(1).ToSequence() } },
        10 => d with { Rows = d.Rows with { Wefts = Enumerable.Repeat(new Weft(Side.Right), Math.Clamp(number, 0, 20)).ToSequence() } },
        11 => WithStep(d, new ChartRows(number, 1, 1)),
        12 => WithStep(d, new ChartRows(1, 1, number)),
        13 => WithStep(d, new PlainRows(number, 1)),
        14 => WithStep(d, new EdgeStitch("s", StitchYarn.Own, number, Side.Right, 1)),
        15 => WithStep(d, new EdgeStitch(text, StitchYarn.Working, 1, number % 2 == 0 ? Side.Right : Side.Left, 1)),
        16 => WithStep(d, new EdgeStitch("s", StitchYarn.Own, 1, Side.Right, number)),
        17 => WithStep(d, new Repeat(number, [new ChartRows(1, 1, 1), new EdgeStitch("s", StitchYarn.Own, 1, Side.Left, 1)])),
        18 => d with { Rows = d.Rows with { Steps = [new Repeat(1, number % 2 == 0 ? [] : [new EdgeStitch("s", StitchYarn.Own, 1, Side.Left, 1)])] } },
        19 => d with { RowWords = d.RowWords.Append(new RowWords(number, "w")).ToSequence() },
        20 => d with { RowWords = [new RowWords(1, text)] },
        21 => d with { Videos = d.Videos.Append(new Video(AnyAddress(number), text, null)).ToSequence() },
        22 => d with { Videos = Enumerable.Repeat(new Video("https://films.example/", "v", number), Math.Clamp(number, 0, 40)).ToSequence() },
        23 => d with { Photos = d.Photos.Append(new Photo(new string('a', 64), text, number)).Append(new Photo(new string('b', Math.Clamp(number, 0, 70)), "p", null)).ToSequence() },
        24 => d with { Photos = Enumerable.Range(0, Math.Clamp(number, 0, 30)).Select(photo => new Photo(new string('c', 62) + (photo % 25 + 10), "p", null)).ToSequence() },
        25 => d with { Limits = new Limits(number, number % 2 == 0 ? null : new Length(density.Amount, LengthUnit.Inch)) },
        26 => d with { Limits = new Limits(null, number % 3 == 0 ? null : new Length(density.Amount, LengthUnit.Centimetre)) },
        _ => d,
    };

    private static string AnyAddress(int number) => (number & 7) switch
    {
        0 => "",
        1 => "http://films.example/",
        2 => "https://films.example/%zz",
        3 => "https://films.example/" + new string('f', Math.Clamp(number, 0, 600)),
        4 => "HTTPS://Films.Example?" + (number & 15),
        _ => "https://films.example/" + (uint)number,
    };

    private static PatternDocument WithStep(PatternDocument document, RowStep step) =>
        document with { Rows = document.Rows with { Steps = document.Rows.Steps.Append(step).ToSequence() } };
}
