using System.Net;
using System.Text.Json;
using CsCheck;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Web.Tests;

public sealed class MovesJsonTests
{
    [Fact]
    public void Looking_up_gives_the_place_the_side_and_what_is_passed_as_the_engine_says() =>
        Gen.Select(DocumentGen.Documents, DocumentGen.Documents).Sample(
            (old, @new) =>
            {
                var comparison = Comparison.Of(Piece.Of(old), Piece.Of(@new), Wording.English);
                using var json = JsonDocument.Parse(MovesJson.Write(comparison, comparison.Difference!, (1, 2), Wording.English));
                var moves = json.RootElement;
                var (shifts, changes) = (Numbers(moves, "shifts"), Numbers(moves, "changes"));
                var kinds = moves.GetProperty("kinds").EnumerateArray().Select(kind => (Old: kind[0].GetString(), New: kind[1].GetString())).ToList();
                for (var woven = 0; woven <= comparison.Old.Rows.Count; woven += 1 + (comparison.Old.Rows.Count / 12))
                {
                    var place = comparison.Difference!.Move(woven);
                    Assert.Equal(place.Next, woven + shifts.Last(shift => shift[0] <= woven)[1] + 1);
                    Assert.Equal(place.SideFits, moves.GetProperty("sides").GetString()![woven] == '=');
                    var passed = changes.Where(change => change[2] >= 0 && change[2] <= woven).Select(change => (change[0], change[1]));
                    Assert.Equal(place.Passed.Select(row => (row.Old ?? 0, row.New ?? 0)), passed);
                }

                Assert.All(changes, change =>
                {
                    Assert.Equal(change[0] == 0 ? "" : Wording.English.RowText(comparison.Old, change[0]), kinds[change[3]].Old);
                    Assert.Equal(change[1] == 0 ? "" : Wording.English.RowText(comparison.New, change[1]), kinds[change[3]].New);
                });
            },
            iter: Effort.Of(100, 2000));

    // Weft 1 waits while weft 2 weaves, and is taken across by a stitch then: nobody is to cut it.
    [Fact]
    public void A_weft_that_a_stitch_took_across_lies_where_its_next_row_starts()
    {
        var document = Charts.Document(
            "x./.x",
            steps: [new ChartRows(1, 1, 1), new ChartRows(2, 2, 2), new EdgeStitch("twining", StitchYarn.Working, 1, Side.Left, 1), new ChartRows(2, 2, 2), new ChartRows(1, 1, 1)]);
        var piece = Piece.Of(document with { Rows = document.Rows with { Wefts = [new Weft(Side.Left), new Weft(Side.Left)] } });
        var comparison = Comparison.Of(piece, piece, Wording.English);
        using var json = JsonDocument.Parse(MovesJson.Write(comparison, comparison.Difference!, (1, 2), Wording.English));
        Assert.Equal("=====", json.RootElement.GetProperty("sides").GetString());
    }

    [Fact]
    public async Task A_script_gets_it_for_two_versions_that_readers_see()
    {
        await using var shop = await IssuedShop.OpenAsync(Charts.Document(Charts.TenEndDiamond));
        await shop.ReissueAsync(Charts.Document("x.xx...xx./" + Charts.TenEndDiamond), "");
        var answer = await shop.Reader.GetAsync($"/p/{shop.Id}/moves/1/2.json");
        Assert.Equal((HttpStatusCode.OK, "application/json"), (answer.Status, answer.Headers["Content-Type"]));
        using var json = JsonDocument.Parse(answer.Body);
        Assert.Single(json.RootElement.GetProperty("changes").EnumerateArray(), change => change[0].GetInt32() == 0);
        foreach (var path in new[] { "2/1", "1/1", "1/3" })
        {
            Assert.Equal(HttpStatusCode.NotFound, (await shop.Reader.GetAsync($"/p/{shop.Id}/moves/{path}.json")).Status);
        }

        await shop.Maker.PostAsync("/studio", $"/studio/patterns/{shop.Id}/withdraw");
        Assert.Equal(HttpStatusCode.NotFound, (await shop.Reader.GetAsync($"/p/{shop.Id}/moves/1/2.json")).Status);
    }

    private static List<int[]> Numbers(JsonElement moves, string name) =>
        [.. moves.GetProperty(name).EnumerateArray().Select(line => line.EnumerateArray().Select(number => number.GetInt32()).ToArray())];
}
