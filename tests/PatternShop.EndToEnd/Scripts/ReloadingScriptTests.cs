using Xunit;

namespace PatternShop.EndToEnd;

/// <summary>That a page whose other half is gone is loaded anew: by itself, never round and round, and never at the price of a stroke.</summary>
public sealed class ReloadingScriptTests(ScriptPage page) : IClassFixture<ScriptPage>
{
    // loads of one page after another over one storage; each says how long it waited
    private const string Pages = """
        const { Reloading, LATER, AWAY, UNKEPT } = await editor('reloading');
        const store = storage(), said = [];
        const tick = async () => { for (let turn = 0; turn < 20; turn++) { await null; } };
        const begin = (facts = {}) => {
          let waited = 0;
          const page = { age: () => 500, worked: () => false, keeps: () => true, answers: async () => true, reload: () => said.push(`after ${waited}`), ...facts };
          return new Reloading(page, store, words => said.push({ [LATER]: 'later', [AWAY]: 'away', [UNKEPT]: 'unkept' }[words]), facts.wait ?? (async pause => { waited += pause; }));
        };
        const load = async facts => { begin(facts).loadAnew(); await tick(); };
        """;

    [Fact]
    public async Task Each_page_that_breaks_at_once_is_loaded_later_than_the_last() => Assert.Equal(
        "after 0, later, after 3000, later, after 10000, later, after 30000, later, after 60000, later, after 60000",
        await page.RunAsync<string>(Pages + "for (let time = 0; time < 6; time++) { await load(); } return said.join(', ');"));

    [Theory]
    [InlineData("age: () => 60001")]
    [InlineData("worked: () => true")]
    public async Task A_page_that_was_of_use_is_loaded_at_once(string facts) => Assert.Equal(
        "after 0, later, after 3000, after 0, later, after 3000",
        await page.RunAsync<string>(Pages + $$"""await load(); await load(); await load({ {{facts}} }); await load(); return said.join(', ');"""));

    [Fact]
    public async Task However_often_it_is_asked_a_page_is_loaded_once() => Assert.Equal("after 0", await page.RunAsync<string>(Pages + """
        const one = begin();
        one.loadAnew();
        one.loadAnew();
        await tick();
        one.loadAnew();
        await tick();
        return said.join(', ');
        """));

    [Fact]
    public async Task While_the_server_does_not_give_the_page_out_it_stays_as_it_is() => Assert.Equal("away, away, after 6000", await page.RunAsync<string>(Pages + """
        let asked = 0;
        await load({ answers: async () => ++asked > 2 });
        return said.join(', ');
        """));

    [Fact]
    public async Task Strokes_that_the_browser_cannot_keep_are_not_given_up_unasked() => Assert.Equal("unkept | unkept, after 0", await page.RunAsync<string>(Pages + """
        const one = begin({ keeps: () => false });
        one.loadAnew();
        await tick();
        const before = said.join(', ');
        one.hurry();
        await tick();
        return `${before} | ${said.join(', ')}`;
        """));

    [Fact]
    public async Task Whoever_does_not_want_to_wait_need_not() => Assert.Equal("after 0, later | after 0, later, after 0", await page.RunAsync<string>(Pages + """
        await load();
        const one = begin({ wait: () => new Promise(() => { }) });
        one.loadAnew();
        await tick();
        const before = said.join(', ');
        one.hurry();
        await tick();
        return `${before} | ${said.join(', ')}`;
        """));

    [Theory]
    [InlineData("reconnect = async () => true", "drop()", "down, up")]
    [InlineData("reconnect = async () => false", "drop()", "down, load")]
    [InlineData("reconnect = async () => { throw new Error(); }", "drop()", "down, load")]
    [InlineData("reconnect = async () => { well = !well; throw new Error(); }", "drop()", "down, up")]
    [InlineData("start = async () => { throw new Error(); }", "0", "down, up")]
    [InlineData("0", "fault.style.display = 'block'", "down, load")]
    [InlineData("0", "dispatchEvent(new PageTransitionEvent('pageshow', { persisted: true }))", "down, load")]
    [InlineData("0", "dispatchEvent(new PageTransitionEvent('pageshow'))", "")]
    [InlineData("over = true", "drop()", "down")]
    [InlineData("over = true", "fault.style.display = 'block'", "")]
    [InlineData("over = true", "dispatchEvent(new PageTransitionEvent('pageshow', { persisted: true }))", "down, load")]
    public async Task A_lost_connection_is_taken_up_again_and_a_page_without_its_other_half_loaded_anew(string before, string happens, string heard) =>
        Assert.Equal(heard, await page.RunAsync<string>($$"""
            const { connect } = await editor('connection');
            const said = [], fault = document.createElement('div');
            let well = true, over = false, drop, reconnect = async () => true, start = async options => { drop = options.circuit.reconnectionHandler.onConnectionDown; };
            globalThis.fetch = async () => {
              const status = well ? 200 : 503;
              if (!well) { reconnect = async () => true; }
              well = true;
              return { status };
            };
            {{before}};
            let ended;
            const end = new Promise(done => { ended = done; });
            const note = word => { said.push(word); if (word !== 'down') { ended(); } };
            await connect({ start: options => start(options), reconnect: () => reconnect() }, fault, () => { note('load'); return new Promise(() => { }); }, { down: () => note('down'), up: () => note('up'), ended: () => over });
            {{happens}};
            await Promise.race([end, new Promise(done => setTimeout(done, {{(heard is "" or "down" ? 50 : 20000)}}))]);
            return said.join(', ');
            """));

    [Fact]
    public async Task What_the_browser_had_no_room_for_is_kept_as_soon_as_it_has() => Assert.Equal("false 2 true 2", await page.RunAsync<string>("""
        const { Outbox } = await editor('outbox');
        const store = storage(1);
        store.setItem('another', 'page');
        const outbox = new Outbox(store, 'p', 'me');
        outbox.add('2.2 o0:0', 1);
        outbox.add('2.2 o0:1', 1);
        const before = `${outbox.keepAll()} ${outbox.all().length}`;
        const roomy = storage();
        outbox.storage = roomy;
        return `${before} ${outbox.keepAll()} ${new Outbox(roomy, 'p', 'other').all().length}`;
        """));
}
