using Xunit;

namespace PatternShop.EndToEnd;

/// <summary>Keys of the chart, what is told of them, and the cells that stand in the page.</summary>
public sealed class KeyScriptTests(ScriptPage page) : IClassFixture<ScriptPage>
{
    [Theory]
    [InlineData("' '", "mark")]
    [InlineData("'o'", "mark over")]
    [InlineData("'U'", "mark under")]
    [InlineData("'p'", "mark opposite")]
    [InlineData("' ', shift: true", "chooseRow")]
    [InlineData("' ', far: true", "chooseEnd")]
    [InlineData("'a', far: true", "chooseAll")]
    [InlineData("'c', far: true", "copy")]
    [InlineData("'v', far: true", "putDown")]
    [InlineData("'ArrowUp'", "move")]
    [InlineData("'ArrowUp', shift: true", "grow")]
    [InlineData("'ArrowUp', alt: true", "carry")]
    [InlineData("'Home', far: true", "move")]
    [InlineData("'3'", "way box")]
    [InlineData("'6'", "way choose")]
    [InlineData("'m'", "mirror")]
    [InlineData("'Delete'", "clear")]
    [InlineData("'Escape'", "giveUp")]
    [InlineData("'7'", "none")]
    [InlineData("'o', far: true", "none")]
    [InlineData("'z', far: true", "none")]
    [InlineData("'Tab'", "none")]
    [InlineData("'Home', alt: true", "none")]
    public async Task A_key_does_one_thing(string key, string act) => Assert.Equal(act, await page.RunAsync<string>($$"""
        const { actionOf } = await editor('keys');
        const action = actionOf({ key: {{key}} });
        return action ? [action.act, action.mark, action.way].filter(Boolean).join(' ') : 'none';
        """));

    [Fact]
    public async Task The_keyboard_can_do_whatever_keys_ask_for() => Assert.Empty(await page.RunAsync<string[]>("""
        const { actionOf } = await editor('keys');
        const { Keyboard } = await editor('keyboard');
        const keys = ['ArrowUp', 'Home', 'PageDown', 'Delete', 'Escape', 'Backspace', ...' abcdefghijklmnopqrstuvwxyz0123456789'];
        const acts = keys.flatMap(key => [{}, { shift: true }, { far: true }, { alt: true }].map(with_ => actionOf({ key, ...with_ })?.act)).filter(Boolean);
        return acts.length < 20 ? ['too few'] : acts.filter(act => typeof Keyboard.prototype[act] !== 'function');
        """));

    [Fact]
    public async Task However_fast_things_happen_little_is_said_and_the_last_of_it() => Assert.Equal("a | b 1 | c 1 | d 0", await page.RunAsync<string>("""
        const { Sayer } = await editor('sayer');
        const said = [], waiting = [];
        const sayer = new Sayer(text => said.push(text), (pause, then) => { if (pause !== 100) { throw new Error(pause); } waiting.push(then); });
        const pass = () => { waiting.shift()(); return waiting.length; };
        const steps = [];
        sayer.say('a');
        steps.push(said.join());
        sayer.say('x');
        sayer.say('y');
        sayer.say('b');
        let left = pass();
        steps.push(`${said.at(-1)} ${left}`);
        sayer.say('c');
        left = pass();
        steps.push(`${said.at(-1)} ${left}`);
        pass();
        sayer.say('d');
        left = pass();
        steps.push(`${said.at(-1)} ${left}`);
        return said.length === 4 ? steps.join(' | ') : said.join();
        """));

    [Fact]
    public async Task The_cells_in_the_page_are_few_in_the_motif_and_hold_the_cursor() => Assert.Equal("0 row 3, end 4, over", await page.RunAsync<string>("""
        const { cellWords, windowAround } = await editor('cell-window');
        const next = random(14), pick = count => Math.floor(next() * count);
        let faults = 0;
        for (let time = 0; time < 2000; time++) {
          const size = { rows: 1 + pick(30), ends: 1 + pick(30) };
          const at = { row: pick(size.rows), end: pick(size.ends) };
          const box = windowAround(at, size);
          const holds = at.row >= box.row && at.row <= box.lastRow && at.end >= box.end && at.end <= box.lastEnd;
          const full = box.lastRow - box.row + 1 === Math.min(5, size.rows) && box.lastEnd - box.end + 1 === Math.min(9, size.ends);
          faults += holds && full && box.row >= 0 && box.end >= 0 && box.lastRow < size.rows && box.lastEnd < size.ends ? 0 : 1;
        }
        return `${faults} ${cellWords({ row: 2, end: 3 }, true)}`;
        """));

    [Fact]
    public async Task What_was_copied_is_there_after_the_page_and_nothing_else_is_taken_for_it() => Assert.Equal("x.x | x.x | null null", await page.RunAsync<string>("""
        const { Copied } = await editor('copied');
        const { Grid } = await editor('grid');
        const text = grid => grid && [0, 1, 2].map(end => grid.get(0, end) ? 'x' : '.').join('');
        const piece = new Grid(1, 3);
        piece.set(0, 0, true);
        piece.set(0, 2, true);
        const held = storage(), full = storage(0);
        new Copied(held).keep(piece);
        const small = new Copied(full);
        small.keep(piece);
        const spoilt = storage();
        spoilt.setItem('patternshop:copied', '{"rows":9,"ends":3,"cells":"BQ=="}');
        return `${text(new Copied(held).piece)} | ${text(small.piece)} | ${new Copied(storage()).piece} ${new Copied(spoilt).piece}`;
        """));
}
