using Xunit;

namespace PatternShop.EndToEnd;

/// <summary>The whole piece as the script draws it.</summary>
public sealed class PieceScriptTests(ScriptPage page) : IClassFixture<ScriptPage>
{
    private const string Piece = """
        const { PieceMap } = await editor('piece-map');
        const { Grid } = await editor('grid');
        const motif = new Grid(2, 3);
        [[0, 0], [0, 1], [1, 2]].forEach(([row, end]) => motif.set(row, end, true));
        const map = new PieceMap({
          readings: [[0, 0, 0, 0], [1, 1, 1, 1], [-1, 0, 0, 0], [-2, 1, 0, 1]],
          rows: [0, 1, 2, 3, 0], numbers: [1, 2, 3, 4, 5],
          motifEnds: 3, offset: 1, patternEnds: 7, floating: 1, balance: 1, bands: [],
        });
        const row = at => Array.from({ length: map.ends }, (_, column) => map.isOver(at, column, motif) ? 'x' : '.').join('');
        """;

    // By hand: the motif xx. / ..x from its end 2 on, seven ends, a floating end each side; plain rows alternate.
    [Theory]
    [InlineData(0, ".x.xx.xx.")]
    [InlineData(1, "x.x..x..x")]
    [InlineData(2, "..x.x.x..")]
    [InlineData(3, "xx.x.x.x.")]
    [InlineData(4, ".x.xx.xx.")]
    public async Task Every_row_shows_what_its_reading_says(int row, string cells) =>
        Assert.Equal(cells, await page.RunAsync<string>(Piece + $"return row({row});"));

    [Fact]
    public async Task A_cell_of_the_motif_shows_at_its_places_and_nowhere_else() => Assert.Empty(await page.RunAsync<string[]>(Piece + """
        const faults = [];
        for (let motifRow = 0; motifRow < 2; motifRow++) {
          for (let motifEnd = 0; motifEnd < 3; motifEnd++) {
            const picture = () => [0, 1, 2, 3, 4].flatMap(at => [...row(at)]);
            const before = picture();
            motif.set(motifRow, motifEnd, !motif.get(motifRow, motifEnd));
            const changed = picture().flatMap((cell, at) => (cell === before[at] ? [] : [`${Math.floor(at / map.ends)},${at % map.ends}`]));
            const places = [...map.placesOf(motifRow, motifEnd)].map(place => `${place.row},${place.column}`);
            if (changed.sort().join(' ') !== places.sort().join(' ') || changed.length === 0) {
              faults.push(`${motifRow},${motifEnd}: ${changed} is not ${places}`);
            }
          }
        }
        return faults;
        """));

    [Fact]
    public async Task Floating_and_balance_ends_are_known() => Assert.Equal("F......BF", await page.RunAsync<string>(Piece + """
        return Array.from({ length: map.ends }, (_, column) => map.isFloating(column) ? 'F' : map.isBalance(column) ? 'B' : '.').join('');
        """));
}
