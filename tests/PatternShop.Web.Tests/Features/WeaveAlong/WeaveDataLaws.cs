using System.Globalization;
using System.Text.RegularExpressions;
using CsCheck;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>What weave-along hands to its script, read back by a reader of the tests and held against the definitions.</summary>
public sealed partial class WeaveDataLaws
{
    [Fact]
    public void Every_row_leads_to_the_runs_that_the_definitions_give() =>
        DocumentGen.Documents.Sample(document => Assert.Empty(Differences(Data(document), document)), iter: Effort.Of(1_000, 50_000));

    [Fact]
    public void Every_reading_and_every_note_stands_once() => DocumentGen.Documents.Sample(
        document =>
        {
            var data = Data(document);
            Assert.Distinct(data.Readings);
            Assert.Distinct(data.Notes);
            Assert.Distinct(data.StitchTexts);
            Assert.Equal(Enumerable.Range(0, data.Readings.Count), data.Bands.SelectMany(band => band.Readings).Distinct().Order());
        },
        iter: Effort.Of(1_000, 50_000));

    [Fact]
    public void Edge_stitches_stand_where_the_definitions_say() => DocumentGen.Documents.Sample(
        document =>
        {
            var data = Data(document);
            Assert.Equal(
                Oracle.Stitches(document).Select(stitch => (stitch.AfterRow, stitch.From == Side.Left ? 0 : 1)),
                data.Stitches.Select(stitch => (stitch[0], stitch[2])));
            Assert.All(
                Oracle.Stitches(document).Zip(data.Stitches),
                pair => Assert.StartsWith(pair.First.Stitch.Name, data.StitchTexts[pair.Second[1]], StringComparison.Ordinal));
        },
        iter: Effort.Of(1_000, 50_000));

    [Fact]
    public void A_chart_with_another_cell_would_be_noticed()
    {
        var document = Charts.Document(Charts.TenEndDiamond, 2, balance: 1, floating: Charts.AlikeOver);
        Assert.Empty(Differences(Data(document), document));
        Assert.Equal([3], Differences(Data(document), document with { Motif = document.Motif.With(2, 4, !document.Motif[2, 4]) }));
    }

    [Fact]
    public void Every_word_is_of_the_language_that_is_passed_in() => DocumentGen.Documents.Sample(
        document =>
        {
            var data = WeaveData.Of(Piece.Of(document with { Rows = document.Rows with { Steps = [new ChartRows(1, document.Motif.Rows, 1)] } }), new WeaveCopy("", 1, 1), new OtherWords());
            var forms = data.Words.GetType().GetProperties().Select(property => (string)property.GetValue(data.Words)!);
            Assert.All([.. forms.Select(form => Placeholder().Replace(form, "")), .. data.Notes], text => Assert.DoesNotMatch("[A-Za-z-[zqki]]", text));
        },
        iter: Effort.Of(200, 5_000));

    [Fact]
    public void A_reading_is_short_in_its_data()
    {
        var document = Charts.Document(Charts.TenEndDiamond, 2, balance: 1, floating: Charts.AlikeOver);
        // computed: whole piece 1 of the check values, with brackets
        Assert.Equal("l[o3u2o1u1o1u2]2o3", Data(document).Readings[4]);
    }

    [Fact]
    public void Every_row_leads_to_what_the_maker_says_of_its_chart_row() => DocumentGen.Documents.Sample(
        document =>
        {
            var data = Data(document);
            var own = data.Bands
                .SelectMany(band => Enumerable.Range(0, band.Each * band.Times).Select(into => band.Own is { } places ? data.Own![places[into % places.Count]] : null))
                .Select(said => (said?.Text ?? "", Videos: string.Join(' ', said?.Videos.Select(video => video.Caption) ?? [])));
            Assert.Equal(
                Oracle.Rows(document).Select(row => (
                    row.ChartRow is null ? "" : document.RowWords.SingleOrDefault(words => words.Row == row.ChartRow)?.Text ?? "",
                    Videos: string.Join(' ', document.Videos.Where(video => row.ChartRow is not null && video.Row == row.ChartRow).Select(video => video.Caption)))),
                own);
            Assert.Distinct(data.Own ?? []);
        },
        iter: Effort.Of(1_000, 50_000));

    [Fact]
    public void A_maker_who_says_nothing_costs_nothing() =>
        Assert.DoesNotContain("\"own\":[", Data(Charts.Document(Charts.TenEndDiamond)).Json(), StringComparison.Ordinal);

    private static WeaveData Data(PatternDocument document) => WeaveData.Of(Piece.Of(document), new WeaveCopy("test", 1, 1), Wording.English);

    /// <summary>Numbers of rows that the data gives otherwise than the definitions.</summary>
    private static List<int> Differences(WeaveData data, PatternDocument document)
    {
        var rows = Oracle.Rows(document);
        var readings = data.Bands.SelectMany(band => Enumerable.Range(0, band.Each * band.Times).Select(into => data.Readings[band.Readings[into % band.Readings.Count]])).ToList();
        Assert.Equal((rows.Count, rows.Count), (readings.Count, data.Rows));
        return [.. rows.Where(row => readings[row.Number - 1] is var reading && ((reading[0] == 'l') != (row.From == Side.Left) || !Runs(reading[1..]).SequenceEqual(row.Runs))).Select(row => row.Number)];
    }

    private static IEnumerable<(bool Over, int Count)> Runs(string items)
    {
        var plain = items;
        while (Bracket().IsMatch(plain))
        {
            plain = Bracket().Replace(plain, match => string.Concat(Enumerable.Repeat(match.Groups["runs"].Value, int.Parse(match.Groups["times"].ValueSpan, CultureInfo.InvariantCulture))));
        }

        return Run().Matches(plain).Select(match => (match.Value[0] == 'o', int.Parse(match.ValueSpan[1..], CultureInfo.InvariantCulture)));
    }

    [GeneratedRegex(@"\[(?<runs>[^\[\]]*)\](?<times>\d+)", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Bracket();

    [GeneratedRegex(@"\{[a-z]+\}", RegexOptions.CultureInvariant, 1000)]
    private static partial Regex Placeholder();

    [GeneratedRegex(@"[ou]\d+", RegexOptions.CultureInvariant, 1000)]
    private static partial Regex Run();
}
