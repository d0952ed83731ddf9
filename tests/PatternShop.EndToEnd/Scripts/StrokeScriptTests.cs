using Xunit;

namespace PatternShop.EndToEnd;

/// <summary>Strokes as the script writes, keeps and sends them.</summary>
public sealed class StrokeScriptTests(ScriptPage page) : IClassFixture<ScriptPage>
{
    [Fact]
    public async Task A_stroke_is_written_as_the_server_reads_it() => Assert.Equal("8.8 o0:3-5/2,7 u4:0", await page.RunAsync<string>("""
        const { Stroke, writeStroke } = await editor('stroke');
        const stroke = new Stroke(8, 8);
        [[0, 4], [0, 3], [1, 7], [0, 5], [1, 2]].forEach(([row, end]) => stroke.add(row, end, true));
        stroke.add(4, 0, false);
        return writeStroke(stroke).join('|');
        """));

    [Fact]
    public async Task What_is_written_is_read_again_in_parts_of_any_length() => Assert.Empty(await page.RunAsync<string[]>("""
        const { Stroke, readStroke, writeStroke } = await editor('stroke');
        const next = random(4), faults = [];
        const text = cells => [...cells].sort().join(' ');
        for (let time = 0; time < 3000; time++) {
          const stroke = new Stroke(1 + Math.floor(next() * 60), 1 + Math.floor(next() * 60));
          for (let cell = 0; cell < 1 + next() * 80; cell++) {
            stroke.add(Math.floor(next() * stroke.rows), Math.floor(next() * stroke.ends), next() < 0.5);
          }
          const most = time % 2 === 0 ? 16000 : 40;
          const parts = writeStroke(stroke, most);
          const read = parts.flatMap(part => [...readStroke(part)].map(cell => JSON.stringify(cell)));
          if (text(read) !== text([...stroke].map(cell => JSON.stringify(cell))) || parts.some(part => part.length > most)) {
            faults.push(parts.join('|'));
          }
        }
        return faults;
        """));

    [Fact]
    public async Task A_stroke_across_200_by_200_takes_less_than_a_kilobyte() => Assert.InRange(await page.RunAsync<int>("""
        const { Stroke, writeStroke } = await editor('stroke');
        const { cellsBetween } = await editor('line');
        const lengths = [[199, 199], [199, 120], [60, 199], [0, 199], [199, 0]].map(([row, end]) => {
          const stroke = new Stroke(200, 200);
          cellsBetween({ row: 0, end: 0 }, { row, end }).forEach(cell => stroke.add(cell.row, cell.end, true));
          return writeStroke(stroke)[0].length;
        });
        return Math.max(...lengths);
        """), 400, 1000);

    /// <summary>One message is one step of undo.</summary>
    [Fact]
    public async Task The_largest_motif_is_covered_with_one_message() => Assert.Equal("1 message, the same: true", await page.RunAsync<string>("""
        const { Stroke, readStroke, writeStroke } = await editor('stroke');
        const { Grid } = await editor('grid');
        const next = random(9), piece = new Grid(1000, 1000);
        piece.bytes.forEach((_, at) => { piece.bytes[at] = 256 * next(); });
        const stroke = Stroke.covering(piece, { row: 0, end: 0, lastRow: 999, lastEnd: 999 }, piece);
        const texts = writeStroke(stroke);
        const read = readStroke(texts[0]);
        return `${texts.length} message, the same: ${read.size === 1000000 && read.over.bytes.every((byte, at) => byte === piece.bytes[at])}`;
        """));

    [Theory]
    [InlineData("")]
    [InlineData("8.8 x0:1")]
    [InlineData("8.8 o8:1")]
    [InlineData("8.8 o0:8")]
    [InlineData("8.8 o1")]
    [InlineData("8.8 o0:5-3")]
    [InlineData("0.8 o0:1")]
    public async Task What_is_no_stroke_is_none(string text) => Assert.True(await page.RunAsync<bool>($$"""
        const { readStroke } = await editor('stroke');
        return readStroke('{{text}}') === null;
        """));

    [Fact]
    public async Task A_stroke_sets_cells_to_the_opposite_of_the_one_it_began_on_and_can_be_taken_back() => Assert.Equal(
        "begin xx.. drawn xxxx back .x.. outside false saved 1 .xx.",
        await page.RunAsync<string>("""
            const { Grid } = await editor('grid');
            const { Echo } = await editor('echo');
            const { Desk } = await editor('desk');
            const { Outbox } = await editor('outbox');
            const { Sender } = await editor('sender');
            const motif = new Grid(1, 4);
            motif.set(0, 1, true);
            const sender = new Sender(new Outbox(storage(), 'p', 'c'), () => { }, () => { });
            const desk = new Desk(new Echo(1, motif), sender, { cell() { }, all() { }, resized() { } });
            const text = () => [0, 1, 2, 3].map(end => desk.motif.get(0, end) ? 'x' : '.').join('');
            const said = [];
            desk.begin({ row: 0, end: 0 });
            said.push('begin', text());
            desk.extend([1, 2, 3, 4, 5].map(end => ({ row: 0, end })));
            said.push('drawn', text());
            desk.takeBack();
            said.push('back', text());
            said.push('outside', String(desk.begin({ row: 0, end: 4 })));
            desk.toggle({ row: 0, end: 2 });
            said.push('saved', String(sender.waiting), text());
            return said.join(' ');
            """));
}
