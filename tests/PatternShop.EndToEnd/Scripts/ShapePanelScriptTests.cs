using Xunit;

namespace PatternShop.EndToEnd;

/// <summary>The fields from which and to which rows and ends are chosen.</summary>
public sealed class ShapePanelScriptTests(ScriptPage page) : IClassFixture<ScriptPage>
{
    // the panel on a motif of 8 rows of 6 ends
    private const string Panel = """
        const { ShapePanel } = await editor('shape-panel');
        document.body.innerHTML = '<div>' + ['row', 'lastRow', 'end', 'lastEnd'].map(name => `<input data-bound="${name}">`).join('')
          + '<button data-choose="all"></button><button data-choose="none"></button><p data-bounds-wrong hidden></p><p data-aim></p></div>';
        const root = document.querySelector('div');
        const field = name => root.querySelector(`[data-bound=${name}]`);
        const hand = { size: { rows: 8, ends: 6 }, chosen: null, choose(box) { this.chosen = box; panel.show(); }, chooseBox(box) { this.choose(box); } };
        const panel = new ShapePanel(root, hand, () => { });
        panel.show();
        const write = (name, text) => { field(name).value = text; field(name).dispatchEvent(new Event('input', { bubbles: true })); };
        const leave = name => { field(name).dispatchEvent(new Event('change', { bubbles: true })); field(name).dispatchEvent(new Event('focusout', { bubbles: true })); };
        const type = (name, text) => { write(name, text); leave(name); };
        const press = choose => root.querySelector(`[data-choose=${choose}]`).click();
        const shown = () => ['row', 'lastRow', 'end', 'lastEnd'].map(name => field(name).value + (field(name).getAttribute('aria-invalid') ? '!' : '')).join(' ');
        const box = () => hand.chosen ? `${hand.chosen.row + 1}-${hand.chosen.lastRow + 1},${hand.chosen.end + 1}-${hand.chosen.lastEnd + 1}` : 'nothing';
        const wrong = () => root.querySelector('[data-bounds-wrong]').hidden ? '' : root.querySelector('[data-bounds-wrong]').textContent;
        const state = () => `${shown()} | ${box()} | ${wrong()}`;
        """;

    [Fact]
    public async Task From_and_to_stay_as_typed_and_choose_once_they_fit() => Assert.Equal(
        [
            "1 3 1 6 | 1-3,1-6 | ",
            "5! 3! 1 6 | 1-3,1-6 | Rows from 5 to 3 can't be chosen: the second number must be 5 or more.",
            "5 8 1 6 | 5-8,1-6 | ",
            "5 8 4! 2! | 5-8,4-6 | Ends from 4 to 2 can't be chosen: the second number must be 4 or more.",
            "5 8 1 2 | 5-8,1-2 | ",
        ],
        await page.RunAsync<string[]>(Panel + """
            const said = [];
            for (const [name, text] of [['lastRow', '3'], ['row', '5'], ['lastRow', '8']]) {
              type(name, text);
              said.push(state());
            }
            write('end', '4');
            field('end').dispatchEvent(new Event('change', { bubbles: true }));
            type('lastEnd', '2');
            said.push(state());
            type('end', '1');
            return [...said, state()];
            """));

    [Fact]
    public async Task What_is_typed_is_not_overwritten_by_what_is_chosen_elsewhere_meanwhile() => Assert.Equal(
        ["2 12 1 3 | 2-4,1-3 | ", "2 12! 1 3 | 2-4,1-3 | There is no row 12: the motif has 8 rows.", "3 5 2 2 | 3-5,2-2 | "],
        await page.RunAsync<string[]>(Panel + """
            write('lastRow', '1');
            write('lastRow', '12');
            hand.choose({ row: 1, lastRow: 3, end: 0, lastEnd: 2 });
            const said = [state()];
            leave('lastRow');
            said.push(state());
            hand.choose({ row: 2, lastRow: 4, end: 1, lastEnd: 1 });
            return [...said, state()];
            """));

    [Fact]
    public async Task What_cannot_be_chosen_is_said_and_the_buttons_begin_anew() => Assert.Equal(
        [
            "0! x!   | nothing | There is no row 0: the motif has 8 rows. “x” is not a number. Write digits only.",
            "    | nothing | ",
            "2 8 1 6 | 2-8,1-6 | ",
            "1 8 1 6 | 1-8,1-6 | ",
        ],
        await page.RunAsync<string[]>(Panel + """
            type('row', '0');
            type('lastRow', 'x');
            const said = [state()];
            press('none');
            said.push(state());
            type('row', '2');
            said.push(state());
            press('all');
            return [...said, state()];
            """));
}
