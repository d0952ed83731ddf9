using Bunit;
using Microsoft.Extensions.DependencyInjection;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Web.Tests;

public sealed class ShaftSectionTests
{
    [Fact]
    public async Task The_plan_waits_closed_as_tables_with_heads()
    {
        await using var page = new BunitContext();
        page.Services.AddSingleton(Wording.English);
        var piece = Piece.Of(Charts.DiamondPiece);
        var section = page.Render<ShaftSection>(parameters => parameters.Add(shown => shown.Piece, piece));
        Assert.False(section.Find("details").HasAttribute("open"));
        var tables = ShaftTables.Of(piece, ShaftPlan.Of(piece), Wording.English).All(Wording.English).ToList();
        Assert.Equal(tables.Select(table => table.Title), section.FindAll("caption").Select(caption => caption.TextContent));
        Assert.Equal(
            tables.SelectMany(table => table.Lines),
            section.FindAll("tbody tr").Select(row => new HeadedLine(row.QuerySelector("th[scope=row]")!.TextContent, row.QuerySelector("td")!.TextContent)));
        Assert.All(section.FindAll("thead th"), head => Assert.Equal("col", head.GetAttribute("scope")));
    }

    [Fact]
    public async Task There_is_none_for_more_shafts_than_a_table_serves()
    {
        await using var page = new BunitContext();
        page.Services.AddSingleton(Wording.English);
        var rows = Enumerable.Range(0, 17).Select(row => string.Concat(Enumerable.Range(0, 17).Select(end => end == row ? 'x' : '.')));
        Assert.Empty(page.Render<ShaftSection>(parameters => parameters.Add(shown => shown.Piece, Piece.Of(Charts.Document(string.Join('/', rows))))).Markup.Trim());
    }
}
