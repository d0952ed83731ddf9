using Xunit;

namespace PatternShop.EndToEnd;

/// <summary>What pointers on the chart are taken for: taps, drags and gestures of two fingers.</summary>
public sealed class PointerScriptTests(ScriptPage page) : IClassFixture<ScriptPage>
{
    // cells of 4 pixels, which a finger hardly keeps to
    private const string Pointer = """
        const { Pointer } = await editor('pointer');
        const pointerFor = isTapped => {
          const done = [];
          const canvas = Object.assign(new EventTarget(), { setPointerCapture() { } });
          const stage = { scrollTop: 0, scrollBy() { } };
          const cellAt = ({ clientX, clientY }) => ({ row: Math.floor(clientY / 4), end: Math.floor(clientX / 4) });
          const name = ({ row, end }) => `${row},${end}`;
          new Pointer({ canvas, stage, cellAt, handIsNear() { }, isOnCells: () => true }, {
            get isTapped() { return isTapped; },
            press: cell => { done.push(`press ${name(cell)}`); return true; },
            drag: (last, cell) => done.push(`drag ${name(last)} ${name(cell)}`),
            release: () => done.push('release'),
            giveUpPress: () => done.push('give up'),
          }, () => { });
          const fire = (type, x, y, more = {}) => canvas.dispatchEvent(new PointerEvent(type, { pointerId: 1, pointerType: 'touch', isPrimary: true, button: 0, clientX: x, clientY: y, ...more }));
          return { done, fire };
        };
        """;

    [Theory]
    [InlineData("true", "press 5,5; release")]
    [InlineData("false", "press 5,5; drag 5,5 6,5; release")]
    public async Task A_finger_that_wobbles_taps_where_taps_mean_something(string isTapped, string expected) => Assert.Equal(expected, await page.RunAsync<string>(Pointer + $$"""
        const { done, fire } = pointerFor({{isTapped}});
        fire('pointerdown', 20, 23);
        fire('pointermove', 21, 25);
        fire('pointerup', 21, 25);
        return done.join('; ');
        """));

    [Fact]
    public async Task A_drag_begins_where_it_was_pressed_and_then_follows_every_cell() => Assert.Equal("press 5,5; drag 5,5 5,8; drag 5,8 5,5; release", await page.RunAsync<string>(Pointer + """
        const { done, fire } = pointerFor(true);
        fire('pointerdown', 20, 20);
        fire('pointermove', 25, 20);
        fire('pointermove', 32, 20);
        fire('pointermove', 20, 20);
        fire('pointerup', 20, 20);
        return done.join('; ');
        """));

    [Fact]
    public async Task A_second_finger_gives_up_the_press_alone() => Assert.Equal("press 5,5; give up", await page.RunAsync<string>(Pointer + """
        const { done, fire } = pointerFor(true);
        fire('pointerdown', 20, 20);
        fire('pointerdown', 60, 60, { pointerId: 2, isPrimary: false });
        fire('pointerup', 60, 60, { pointerId: 2, isPrimary: false });
        fire('pointerup', 20, 20);
        return done.join('; ');
        """));
}
