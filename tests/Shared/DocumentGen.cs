using CsCheck;
using PatternShop.Weave;

namespace PatternShop.Tests.Shared;

/// <summary>Makes pattern documents that keep every rule, small unless asked otherwise. <see cref="DocumentTraits"/> says which kinds are among them.</summary>
public static class DocumentGen
{
    private static readonly Gen<Side> SideGen = Gen.OneOf(Side.Left, Side.Right);
    private static readonly Gen<Stroke> StrokeGen = Gen.OneOf(Stroke.Under, Stroke.Over);

    /// <summary>Documents of at most 10 × 12 motifs.</summary>
    public static Gen<PatternDocument> Documents { get; } = Of(10, 12);

    /// <summary>Documents whose motif has at most so many rows and ends.</summary>
    public static Gen<PatternDocument> Of(int maxRows, int maxEnds) =>
        from motif in Motifs(maxRows, maxEnds)
        from width in Widths(motif.Columns)
        from rows in RowPlans(motif.Rows)
        from words in Words
        from gauge in Gen.Select(Densities, Densities, (sett, rows) => new Gauge(sett, rows))
        from glyphs in Gen.OneOf(GlyphStyle.Cells, GlyphStyle.Bars)
        from own in Own(motif.Rows)
        from cloth in Gen.Frequency((1, Gen.Const(ClothLook.Plain)), (2, Cloths(rows.Wefts.Count)))
        from after in Gen.Frequency((2, Gen.Const(AfterChart.All)), (1, AfterCharts))
        select new PatternDocument(words.Title, words.Language, words.Licence, words.Notes, motif, width, rows, gauge, glyphs)
        {
            RowWords = own.Words,
            Videos = own.Videos,
            Photos = own.Photos,
            Limits = own.Limits,
            Cloth = cloth,
            AfterChart = after,
        };

    /// <summary>What is printed after the chart.</summary>
    public static Gen<AfterChart> AfterCharts { get; } = Gen.Select(Gen.Bool, Gen.Bool, Gen.Bool, (making, corrections, notes) => new AfterChart(making, corrections, notes));

    /// <summary>Thicknesses and colours of a warp and at most so many wefts.</summary>
    public static Gen<ClothLook> Cloths(int wefts) =>
        from own in Gen.Int[0, 3]
        from warp in Looks(own)
        from looks in Looks(own).Array[0, wefts]
        from ends in Orders(own)
        from rows in Orders(own)
        from value in Gen.Byte
        select new ClothLook(
            warp,
            looks.ToSequence(),
            ends,
            rows,
            Enumerable.Range(0, own).Select(i => new OwnColour(OwnNames[i], new Rgb(value, (byte)(i * 40), 200))).ToSequence());

    private static readonly string[] OwnNames = ["sea", "dark straw 2", "grün-grau"];

    private static Gen<string> ColourNames(int own) =>
        Gen.Int[0, NamedColours.All.Count + own - 1].Select(at => at < own ? OwnNames[at] : NamedColours.All[at - own].Name);

    private static Gen<YarnLook> Looks(int own) =>
        from thickness in Gen.Select(Gen.Int[0, 60], Gen.OneOf(ThicknessUnit.Millimetres, ThicknessUnit.WrapsPerInch), (eighths, unit) => eighths == 0 ? null : new Thickness(eighths / 8m, unit))
        from colour in Gen.Frequency((1, Gen.Const((string?)null)), (2, ColourNames(own).Select(name => (string?)name)))
        select new YarnLook(thickness, colour);

    private static Gen<Sequence<ColourRun>> Orders(int own) => Gen.Frequency(
        (1, Gen.Const(Sequence<ColourRun>.Empty)),
        (1, Gen.Select(Gen.Int[1, 7], ColourNames(own), (count, name) => new ColourRun(count, name)).Array[1, 4].Select(runs => runs.ToSequence())));

    /// <summary>Words for single rows of a motif, upwards.</summary>
    public static Gen<Sequence<RowWords>> RowWords(int motifRows) =>
        from chosen in Gen.Int[0, 3].Array[motifRows]
        from text in Text(Gen.Frequency((4, Letters), (1, Gen.Const("\n"))), 0, 12)
        select chosen.Index().Where(row => row.Item == 0).Select(row => new RowWords(row.Index + 1, $"{row.Index}{text}")).ToSequence();

    /// <summary>Videos of the whole pattern and of single rows.</summary>
    public static Gen<Sequence<Video>> Videos(int motifRows) =>
        (from path in Gen.Char['a', 'z'].Array[0, 6].Select(string.Concat)
         from caption in Text(Letters, 0, 8)
         from row in AnyRow(motifRows)
         select new Video($"https://films.example/{path}", "v" + caption, row)).Array[0, 3].Select(videos => videos.ToSequence());

    /// <summary>Photos of the whole pattern and of single rows.</summary>
    public static Gen<Sequence<Photo>> Photos(int motifRows) =>
        (from digits in Gen.Int[0, 5]
         from caption in Text(Letters, 0, 8)
         from row in AnyRow(motifRows)
         select new Photo(new string((char)('a' + digits), 64), "p" + caption, row)).Array[0, 3].Select(photos => photos.DistinctBy(photo => photo.Hash).ToSequence());

    public static Gen<Limits?> AnyLimits { get; } =
        from kind in Gen.Int[0, 3]
        from threads in Gen.Int[1, 12]
        from length in Gen.Select(Gen.Int[1, 100], Gen.OneOf(LengthUnit.Inch, LengthUnit.Centimetre), (amount, unit) => new Length(amount / 8m, unit))
        select kind == 0 ? null : new Limits(kind == 2 ? null : threads, kind == 1 ? null : length);

    private static Gen<(Sequence<RowWords> Words, Sequence<Video> Videos, Sequence<Photo> Photos, Limits? Limits)> Own(int motifRows) => Gen.Select(
        Gen.Frequency((1, Gen.Const(Sequence<RowWords>.Empty)), (1, RowWords(motifRows))),
        Gen.Frequency((2, Gen.Const(Sequence<Video>.Empty)), (1, Videos(motifRows))),
        Gen.Frequency((2, Gen.Const(Sequence<Photo>.Empty)), (1, Photos(motifRows))),
        AnyLimits);

    private static Gen<int?> AnyRow(int motifRows) => Gen.Int[0, motifRows].Select(row => row == 0 ? (int?)null : row);

    /// <summary>Grids of any cells, some of them mirrored left to right, some of them twills.</summary>
    public static Gen<BitGrid> Motifs(int maxRows, int maxEnds) =>
        from rows in Gen.Int[1, maxRows]
        from ends in Gen.Int[1, maxEnds]
        from cells in Gen.Bool.Array[rows * ends]
        from kind in Gen.Int[0, 9]
        select BitGrid.Create(rows, ends, (row, end) => kind switch
        {
            0 or 1 => cells[(row * ends) + Math.Min(end, ends - 1 - end)],
            2 => (row + end) % ends < (ends + 1) / 2,
            _ => cells[(row * ends) + end],
        });

    public static Gen<WidthPlan> Widths(int motifEnds) =>
        from repeats in Gen.Int[1, 4]
        from offset in Gen.Int[0, motifEnds - 1]
        from balance in Gen.Int[0, motifEnds + 2]
        from floating in Gen.Frequency((1, Gen.Const((FloatingSelvedges?)null)), (3, Floatings))
        select new WidthPlan(repeats, offset, balance, floating);

    public static Gen<RowPlan> RowPlans(int motifRows) =>
        from starts in SideGen.Array[1, 3]
        from firstPlain in StrokeGen
        from steps in Steps(motifRows, starts.Length).Array[1, 4]
        from all in Chart(motifRows, starts.Length)
        select new RowPlan(
            starts.Select(side => new Weft(side)).ToSequence(),
            firstPlain,
            steps.Any(Weaves) ? steps.ToSequence() : steps.Append(all).ToSequence());

    private static Gen<FloatingSelvedges?> Floatings { get; } =
        from edges in Gen.OneOf(EdgeWay.Alike, EdgeWay.Entering)
        from first in StrokeGen
        select (FloatingSelvedges?)new FloatingSelvedges(edges, first);

    private static Gen<Density> Densities { get; } =
        from tenThousandths in Gen.OneOf(Gen.Int[1, 40].Select(n => n * 10_000), Gen.Int[1, 200].Select(n => n * 2_500), Gen.Int[1, 10_000_000])
        from unit in Gen.OneOf(DensityUnit.PerInch, DensityUnit.PerCentimetre, DensityUnit.PerTenCentimetres)
        select new Density(tenThousandths / 10_000m, unit);

    private static Gen<string> Letters { get; } = Gen.OneOf(
        Gen.Char['a', 'z'].Select(c => c.ToString()),
        Gen.OneOf(" ", "\"", "\\", "/", "<", "&", "é", "ß", "Ω", "א", "中", "\u0301", "\uE000", "😀", "𝄞"));

    private static Gen<(string Title, string Language, string Licence, string Notes)> Words { get; } =
        from title in Text(Letters, 0, 20)
        from language in Gen.OneOf("en", "de", "pt-BR", "zh-Hant")
        from licence in Text(Letters, 0, 10)
        from notes in Text(Gen.Frequency((4, Letters), (1, Gen.Const("\n"))), 0, 30)
        select ("T" + title, language, licence, notes);

    private static Gen<string> Text(Gen<string> letters, int least, int most) => letters.Array[least, most].Select(string.Concat);

    private static Gen<RowStep> Steps(int motifRows, int wefts) => Gen.Frequency(
        (2, Simple(motifRows, wefts).Select(step => (RowStep)step)),
        (2, Gen.Select(Gen.Int[1, 4], Simple(motifRows, wefts).Array[1, 3], (times, steps) => (RowStep)new Repeat(times, steps.ToSequence()))));

    private static Gen<SimpleStep> Simple(int motifRows, int wefts) => Gen.Frequency(
        (4, Chart(motifRows, wefts)),
        (2, Gen.Select(Gen.Int[1, 3], Gen.Int[1, wefts], (count, weft) => (SimpleStep)new PlainRows(count, weft))),
        (2, Stitches(wefts)));

    private static Gen<SimpleStep> Chart(int motifRows, int wefts) =>
        from first in Gen.Int[1, motifRows]
        from last in Gen.Int[1, motifRows]
        from weft in Gen.Int[1, wefts]
        select (SimpleStep)new ChartRows(first, last, weft);

    private static Gen<SimpleStep> Stitches(int wefts) =>
        from name in Text(Letters, 0, 8)
        from yarn in Gen.OneOf(StitchYarn.Own, StitchYarn.Working)
        from across in Gen.Int[1, 4]
        from side in SideGen
        from weft in Gen.Int[1, wefts]
        select (SimpleStep)(yarn == StitchYarn.Own
            ? new EdgeStitch("s" + name, yarn, across, side, 1)
            : new EdgeStitch("s" + name, yarn, across, Side.Left, weft));

    private static bool Weaves(RowStep step) => step switch
    {
        Repeat repeat => repeat.Steps.Any(Weaves),
        _ => step is ChartRows or PlainRows,
    };
}
