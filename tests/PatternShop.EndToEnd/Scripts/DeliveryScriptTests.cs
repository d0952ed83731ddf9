using Xunit;

namespace PatternShop.EndToEnd;

/// <summary>That nothing is lost between the hand and the store: echo, outbox, sender and what is said of them.</summary>
public sealed class DeliveryScriptTests(ScriptPage page) : IClassFixture<ScriptPage>
{
    // A server in a few lines: it takes strokes as the real one does, tells what changed, and loses and delays what it likes.
    private const string Server = """
        const { Grid } = await editor('grid');
        const { Echo } = await editor('echo');
        const { Desk } = await editor('desk');
        const { Outbox } = await editor('outbox');
        const { Sender } = await editor('sender');
        const { readStroke } = await editor('stroke');
        const base64 = bytes => btoa(String.fromCharCode(...bytes));
        const picture = grid => Array.from({ length: grid.rows }, (_, row) => Array.from({ length: grid.ends }, (_, end) => grid.get(row, end) ? 'x' : '.').join('')).join('/');
        class Server {
          constructor(rows, ends) {
            this.motif = new Grid(rows, ends);
            this.revision = 1;
            this.settled = new Map();
            this.had = new Set();
          }
          take({ client, sequence, text }, after) {
            const highest = this.settled.get(client) ?? 0;
            if (after > highest) { return { client, sequence, outcome: 'early', words: '' }; }
            const key = `${client}:${sequence}`;
            if (this.had.has(key)) { return { client, sequence, outcome: 'had', words: '' }; }
            const stroke = readStroke(text);
            this.settled.set(client, Math.max(highest, sequence));
            if (stroke.rows !== this.motif.rows || stroke.ends !== this.motif.ends) { return { client, sequence, outcome: 'refused', words: 'It does not fit.' }; }
            stroke.applyTo(this.motif);
            this.had.add(key);
            this.revision++;
            return { client, sequence, outcome: 'saved', words: '' };
          }
          whole(settled = []) {
            return { revision: this.revision, motif: { rows: this.motif.rows, ends: this.motif.ends, cells: base64(this.motif.bytes) }, rows: [], settled };
          }
        }
        """;

    [Fact]
    public async Task Whatever_the_connection_does_the_browser_and_the_server_end_with_the_same_chart() => Assert.Empty(await page.RunAsync<string[]>(Server + """
        const faults = [];
        for (let seed = 1; seed <= 150; seed++) {
          const next = random(seed), pick = count => Math.floor(next() * count);
          const server = new Server(6, 9);
          const way = [];
          let later = [];
          const outbox = new Outbox(storage(), 'p', 'me');
          const sender = new Sender(outbox, (entry, after) => { way.push([entry, after]); }, () => { }, (pause, then) => later.push(then));
          const desk = new Desk(new Echo(1, server.motif.copy()), sender, { cell() { }, all() { }, resized() { } });
          const tick = () => Promise.resolve().then(() => { });
          const add = sender.add.bind(sender), texts = [];
          sender.add = (text, cells) => { texts.push(text); return add(text, cells); };
          sender.connect();
          const alone = seed % 2 === 1;
          let drawn = 0;
          for (let step = 0; step < 400 && (drawn < 20 || sender.waiting > 0); step++) {
            const what = drawn < 20 ? pick(9) : 3 + pick(6);
            if (what < 3) {
              drawn++;
              desk.begin({ row: pick(6), end: pick(9) });
              desk.extend([{ row: pick(6), end: pick(9) }, { row: pick(6), end: pick(9) }]);
              desk.end();
            } else if (what === 3) {
              sender.disconnect();
              way.length = 0;
              desk.receive(server.whole());
              sender.connect();
            } else if (what === 4) {
              later.splice(0).forEach(then => then());
            } else if (what === 5 && drawn < 20 && !alone) {
              server.take({ client: 'other', sequence: step + 1, text: `6.9 ${next() < 0.5 ? 'o' : 'u'}${pick(6)}:${pick(9)}` }, 0);
            } else if (way.length > 0) {
              const at = next() < 0.8 ? 0 : pick(way.length);
              const [entry, after] = next() < 0.2 ? way[at] : way.splice(at, 1)[0];
              const answer = server.take(entry, after);
              if (next() < 0.8) {
                desk.receive(server.whole([answer]));
              }
            }
            await tick();
          }
          desk.receive(server.whole());
          const inOrder = new Grid(6, 9);
          texts.forEach(text => readStroke(text).applyTo(inOrder));
          if (alone && picture(inOrder) !== picture(server.motif)) {
            faults.push(`seed ${seed}: drawn ${picture(inOrder)}, stored ${picture(server.motif)}`);
          }
          if (sender.waiting > 0 || outbox.all().length > 0 || picture(desk.motif) !== picture(server.motif)) {
            faults.push(`seed ${seed}: ${sender.waiting} waiting, ${picture(desk.motif)} is not ${picture(server.motif)}`);
          }
        }
        return faults;
        """));

    [Fact]
    public async Task A_stroke_is_kept_in_the_browser_before_it_is_sent_and_until_it_is_settled() => Assert.Equal(
        "sent 1 kept 1, saved 0 kept 0, refused 0 kept 1 It does not fit.",
        await page.RunAsync<string>(Server + """
            const server = new Server(2, 2);
            let keptWhenSent = 0, sent = 0;
            const outbox = new Outbox(storage(), 'p', 'me');
            const sender = new Sender(outbox, () => { sent++; keptWhenSent = outbox.all().length; }, () => { });
            sender.connect();
            const entry = sender.add('2.2 o0:0', 1);
            await null; await null;
            const said = [`sent ${sent} kept ${keptWhenSent}`];
            sender.settle(server.take(entry, 0));
            said.push(`saved ${sender.waiting} kept ${outbox.all().length}`);
            sender.settle(server.take(sender.add('3.3 o0:0', 1), 0));
            said.push(`refused ${sender.waiting} kept ${outbox.all().length} ${outbox.refused()[0].refused}`);
            return said.join(', ');
            """));

    [Fact]
    public async Task A_message_names_the_stroke_that_must_come_before_it() => Assert.Equal(
        "1 after 0, 2 after 1, 3 after 2 | 3 after 2, 4 after 3 | 3 after 0, 4 after 3",
        await page.RunAsync<string>(Server + """
            let sent = [];
            const said = [];
            const sender = new Sender(new Outbox(storage(), 'p', 'me'), ({ sequence }, after) => { sent.push(`${sequence} after ${after}`); }, () => { });
            const note = async () => { await null; await null; said.push(sent.join(', ')); sent = []; };
            sender.connect();
            ['2.2 o0:0', '2.2 o0:1', '2.2 o1:0'].forEach(text => sender.add(text, 1));
            await note();
            sender.settle({ client: 'me', sequence: 1, outcome: 'saved', words: '' });
            sender.add('2.2 o1:1', 1);
            sender.send(sender.entries[1]);
            await note();
            said[1] = said[1].split(', ').sort().join(', ');
            sender.settle({ client: 'me', sequence: 2, outcome: 'saved', words: '' });
            sender.sendAll();
            await note();
            return said.join(' | ');
            """));

    [Fact]
    public async Task Strokes_of_a_page_that_is_gone_are_sent_again_under_their_own_name() => Assert.Equal(
        "others gone,alive before 3 sent gone:7 after 0,gone:9 after 7 waiting 2 kept alive:1",
        await page.RunAsync<string>(Server + """
            const { goneClients } = await editor('clients');
            const store = storage();
            const gone = new Outbox(store, 'p', 'gone');
            gone.next = 7;
            gone.add('2.2 o0:0', 1);
            gone.next = 9;
            gone.add('2.2 o0:1', 1);
            new Outbox(store, 'p', 'alive').add('2.2 o1:1', 1);
            new Outbox(store, 'another pattern', 'gone').add('2.2 o1:1', 1);
            const outbox = new Outbox(store, 'p', 'me');
            const sent = [];
            const sender = new Sender(outbox, ({ client, sequence }, after) => { sent.push(`${client}:${sequence} after ${after}`); }, () => { });
            sender.connect();
            const others = outbox.others().sort((a, b) => (a === 'gone' ? -1 : 1));
            const before = sender.waiting;
            const locks = { query: async () => ({ held: [{ name: 'patternshop:client:alive' }] }) };
            sender.adopt(await goneClients(others, locks));
            await null; await null;
            const waiting = sender.waiting;
            sender.settle({ client: 'gone', sequence: 7, outcome: 'saved', words: '' });
            sender.settle({ client: 'gone', sequence: 9, outcome: 'had', words: '' });
            return `others ${others} before ${before} sent ${sent} waiting ${waiting} kept ${outbox.all().map(entry => `${entry.client}:${entry.sequence}`)}`;
            """));

    [Fact]
    public async Task A_full_browser_store_stops_nobody_from_drawing() => Assert.Equal("kept false waiting 2 all 2", await page.RunAsync<string>(Server + """
        const sender = new Sender(new Outbox(storage(1), 'p', 'me'), () => { }, () => { });
        sender.add('2.2 o0:0', 1);
        sender.add('2.2 o0:1', 1);
        return `kept ${sender.kept} waiting ${sender.waiting} all ${sender.outbox.all().length}`;
        """));

    [Theory]
    [InlineData("connected: true", "saved: saved")]
    [InlineData("connected: true, waiting: 1", "busy: saving…")]
    [InlineData("connected: true, fields: true", "busy: saving…")]
    [InlineData("connected: true, typing: true", "busy: not saved yet: still typing")]
    [InlineData("connected: true, cornered: true", "busy: first corner set: now the other one")]
    [InlineData("connected: true, waiting: 1, cornered: true", "busy: saving…")]
    [InlineData("connected: false, waiting: 2, kept: true", "stopped: not saved yet: no connection, kept in this browser")]
    [InlineData("connected: false, waiting: 2", "stopped: not saved yet: no connection, kept only while this page stays open")]
    [InlineData("connected: false, kept: true", "stopped: no connection: what you draw is kept in this browser")]
    [InlineData("connected: true, waiting: 1, kept: true, failing: true", "stopped: not saved yet: the server cannot store it now, kept in this browser")]
    [InlineData("connected: true, waiting: 1, kept: true, signedOut: true", "stopped: signed out: not saved, kept in this browser")]
    [InlineData("connected: true, signedOut: true", "stopped: signed out: nothing can be saved")]
    [InlineData("connected: false, unsent: true, kept: true", "stopped: not saved yet: no connection, kept in this browser")]
    [InlineData("connected: true, unsent: true, kept: true", "busy: saving…")]
    [InlineData("connected: false, typing: true, kept: true", "stopped: no connection: what you draw is kept in this browser")]
    public async Task The_state_of_saving_is_true(string facts, string state) => Assert.Equal(state, await page.RunAsync<string>($$"""
        const { savingState } = await editor('saving');
        const { kind, text } = savingState({ waiting: 0, kept: false, {{facts}} });
        return `${kind}: ${text}`;
        """));

    [Fact]
    public async Task A_store_that_refuses_is_tried_again_later_and_later() => Assert.Equal("1000,2000,5000,10000,10000 failing true then false", await page.RunAsync<string>(Server + """
        const pauses = [];
        let again = null;
        const sender = new Sender(new Outbox(storage(), 'p', 'me'), () => { }, () => { }, (pause, then) => { pauses.push(pause); again = then; });
        sender.connect();
        sender.add('2.2 o0:0', 1);
        for (let time = 0; time < 5; time++) {
          sender.settle({ client: 'me', sequence: 1, outcome: 'unsaved', words: '' });
          again();
        }
        const { failing } = sender;
        sender.settle({ client: 'me', sequence: 1, outcome: 'saved', words: '' });
        return `${pauses} failing ${failing} then ${sender.failing}`;
        """));
}
