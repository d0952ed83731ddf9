using Xunit;

namespace PatternShop.EndToEnd;

/// <summary>That what is typed beside the chart is not lost, and that the state of saving is true for it too.</summary>
public sealed class FieldScriptTests(ScriptPage page) : IClassFixture<ScriptPage>
{
    private const string Form = """
        const { Fields } = await editor('fields');
        const { Drafts } = await editor('drafts');
        document.body.innerHTML = '<div><input data-field="title" value="Old"><input id="count" value="3"><button>add</button></div>';
        const [title, count] = document.querySelectorAll('input');
        const store = storage();
        let answers = [];
        let again = null;
        const heard = [];
        document.addEventListener('change', event => heard.push(event.target.value), true);
        const fields = new Fields([document.querySelector('div')], new Drafts(store, 'p'), () => new Promise(done => answers.push(done)), () => { }, then => { again = then; });
        const type = (field, text) => { field.value = text; field.dispatchEvent(new Event('input', { bubbles: true })); };
        const leave = field => field.dispatchEvent(new Event('change', { bubbles: true }));
        const settle = async outcome => { answers.splice(0).forEach(done => done(outcome)); for (let i = 0; i < 5; i++) { await null; } };
        const state = () => `typing ${fields.typing} busy ${fields.busy} unsent ${fields.unsent.size} kept ${fields.kept} draft ${store.getItem('patternshop:words:p:title')}`;
        """;

    [Fact]
    public async Task Typed_words_are_kept_until_they_are_in_the_store() => Assert.Equal(
        [
            "typing true busy false unsent 0 kept true draft New",
            "typing false busy true unsent 1 kept true draft New",
            "typing false busy false unsent 0 kept true draft null",
        ],
        await page.RunAsync<string[]>(Form + """
            fields.open(true);
            const said = [];
            type(title, 'New');
            said.push(state());
            leave(title);
            await null;
            said.push(state());
            await settle('settled');
            return [...said, state()];
            """));

    [Fact]
    public async Task What_was_asked_over_a_connection_that_went_is_asked_again() => Assert.Equal(
        [
            "typing false busy false unsent 1 kept true draft New",
            "heard New,New",
            "typing false busy false unsent 0 kept true draft null",
        ],
        await page.RunAsync<string[]>(Form + """
            fields.open(true);
            type(title, 'New');
            leave(title);
            await null;
            answers = [];
            fields.open(false);
            for (let i = 0; i < 5; i++) { await null; }
            const said = [state()];
            fields.open(true);
            await null;
            said.push(`heard ${heard}`);
            await settle('settled');
            return [...said, state()];
            """));

    [Fact]
    public async Task A_change_without_a_connection_waits_and_the_framework_hears_nothing_of_it() => Assert.Equal(
        ["heard  inert true unsent 1 kept false", "heard 4 unsent 0"],
        await page.RunAsync<string[]>(Form + """
            fields.open(false);
            type(count, '4');
            leave(count);
            await null;
            const said = [`heard ${heard} inert ${document.querySelector('div').inert} unsent ${fields.unsent.size} kept ${fields.kept}`];
            fields.open(true);
            await null;
            await settle('settled');
            return [...said, `heard ${heard} unsent ${fields.unsent.size}`];
            """));

    [Fact]
    public async Task A_store_that_cannot_save_is_asked_again_later() => Assert.Equal(
        ["failing true unsent 1 heard New", "failing false unsent 0 heard New,New"],
        await page.RunAsync<string[]>(Form + """
            fields.open(true);
            type(title, 'New');
            leave(title);
            await null;
            await settle('unsaved');
            const said = [`failing ${fields.failing} unsent ${fields.unsent.size} heard ${heard}`];
            again();
            await null;
            await settle('settled');
            return [...said, `failing ${fields.failing} unsent ${fields.unsent.size} heard ${heard}`];
            """));

    [Fact]
    public async Task Words_of_a_page_that_is_gone_are_taken_up() => Assert.Equal(
        "Typed before heard Typed before draft Typed before, then null",
        await page.RunAsync<string>(Form + """
            store.setItem('patternshop:words:p:title', 'Typed before');
            fields.open(true);
            fields.restore();
            await null;
            const said = `${title.value} heard ${heard} draft ${store.getItem('patternshop:words:p:title')}`;
            await settle('settled');
            return `${said}, then ${store.getItem('patternshop:words:p:title')}`;
            """));

    [Fact]
    public async Task Signing_out_elsewhere_leaves_the_words_in_the_browser() => Assert.Equal(
        "signedOut true unsent 1 draft New",
        await page.RunAsync<string>(Form + """
            fields.open(true);
            type(title, 'New');
            leave(title);
            await null;
            await settle('signedOut');
            return `signedOut ${fields.signedOut} unsent ${fields.unsent.size} draft ${store.getItem('patternshop:words:p:title')}`;
            """));
}
